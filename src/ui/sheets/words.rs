//! A prescription in words: its lines of sets, and what holds for a block as a whole.

use crate::sheet::{Block, LoadBasis, LoadPolicy, SetKind, Sets, SideMode, Step};
use crate::ui::parts::counted;
use crate::units::Share;

/// One line of a prescription in the trade's notation.
pub fn sets_line(sets: &Sets) -> String {
    let mut line = format!("{} × {}", sets.count, sets.target);
    match &sets.kind {
        SetKind::Work => {}
        SetKind::RampUp { shares } => {
            let shares: Vec<String> = shares.iter().map(ToString::to_string).collect();
            line = format!("ramp-up {line} at {}", shares.join(", "));
        }
        SetKind::BackOff { share } => line = format!("back-off {line} at {share} of the top set"),
        SetKind::Drop { drops, keep } => {
            let drops = counted(usize::from(*drops), "drop");
            line = format!("{line}, then {drops} to {keep}");
        }
        SetKind::Cluster { portions, pause } => {
            let portions = counted(usize::from(*portions), "portion");
            line = format!("{line}, {portions} with {pause} s between");
        }
        SetKind::ToFailure => line.push_str(" to technical failure"),
    }
    if !sets.reserve.is_empty() {
        let reserves: Vec<String> = sets.reserve.iter().map(ToString::to_string).collect();
        line.push_str(&format!(", {} in reserve", reserves.join(", ")));
    }
    let policy = policy_words(&sets.load);
    if !policy.is_empty() {
        line.push_str(&format!(", {policy}"));
    }
    line
}

/// What holds for a block as a whole, in one line.
pub fn block_head(block: &Block) -> String {
    let mut parts = vec![block.role.name().to_owned()];
    if let Some(tempo) = block.tempo {
        parts.push(format!("tempo {tempo}"));
    }
    match block.sides {
        SideMode::Both => {}
        SideMode::EachInTurn => parts.push("each side in turn".to_owned()),
        SideMode::OneHolds => parts.push("one side holds while the other works".to_owned()),
    }
    match &block.basis {
        LoadBasis::External | LoadBasis::Unloaded => {}
        LoadBasis::BodyMassPlus => parts.push("body mass and more".to_owned()),
        LoadBasis::BodyMassMinus => parts.push("body mass less assistance".to_owned()),
        LoadBasis::BodyMassShare(share) => parts.push(format!("{share} of body mass")),
        LoadBasis::Band(label) => parts.push(format!("{label} band")),
    }
    parts.push(format!("rest {}", block.rest.clock()));
    parts.join(" · ")
}

/// The policy in words; none for the same load in every set.
fn policy_words(load: &LoadPolicy) -> String {
    let step = |step: &Step| match step {
        Step::Smallest => "the smallest step".to_owned(),
        Step::By(load) => load.to_string(),
    };
    let shares = |shares: &[Share]| {
        let shares: Vec<String> = shares.iter().map(ToString::to_string).collect();
        shares.join(", ")
    };
    match load {
        LoadPolicy::Same => String::new(),
        LoadPolicy::Rising(by) => format!("rising by {}", step(by)),
        LoadPolicy::Falling(by) => format!("falling by {}", step(by)),
        LoadPolicy::List(loads) => {
            let loads: Vec<String> = loads.iter().map(ToString::to_string).collect();
            loads.join(", ")
        }
        LoadPolicy::ShareOfTop(list) => format!("{} of the heaviest set", shares(list)),
        LoadPolicy::ShareOfE1rm(share) => format!("{share} of the e1RM"),
        LoadPolicy::RisingByOutcome { planned, large } => format!(
            "rising by outcome: {} in the range, {} at its top",
            step(planned),
            step(large)
        ),
    }
}
