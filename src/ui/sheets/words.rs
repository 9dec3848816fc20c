//! A prescription in words: its lines of sets, and what holds for a block as a whole.

use crate::say;
use crate::sheet::{Block, LoadBasis, LoadPolicy, SetKind, Sets, Step};
use crate::words::{decimal, many, t};
use std::fmt::Display;

/// A figure as the reader writes it.
fn figure(figure: &impl Display) -> String {
    decimal(&figure.to_string())
}

/// Figures one after the other.
fn listed(figures: &[impl Display]) -> String {
    let figures: Vec<String> = figures.iter().map(figure).collect();
    figures.join(", ")
}

/// One line of a prescription in the trade's notation.
pub fn sets_line(sets: &Sets) -> String {
    let mut line = format!("{} × {}", sets.count, sets.target.said());
    match &sets.kind {
        SetKind::Work => {}
        SetKind::RampUp { shares } => {
            line = say!("ramp-up {line} at {shares}", line, shares = listed(shares));
        }
        SetKind::BackOff { share } => {
            line = say!(
                "back-off {line} at {share} of the top set",
                line,
                share = figure(share),
            );
        }
        SetKind::Drop { drops, keep } => {
            let drops = many(usize::from(*drops), "{n} drop", "{n} drops");
            let keep = figure(keep);
            line = say!("{line}, then {drops} to {keep}", line, drops, keep);
        }
        SetKind::Cluster { portions, pause } => {
            let portions = many(usize::from(*portions), "{n} portion", "{n} portions");
            line = say!(
                "{line}, {portions} with {pause} s between",
                line,
                portions,
                pause,
            );
        }
        SetKind::ToFailure => line = say!("{line} to technical failure", line),
    }
    if !sets.reserve.is_empty() {
        line = say!(
            "{line}, {reserves} in reserve",
            line,
            reserves = listed(&sets.reserve),
        );
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
        parts.push(say!("tempo {tempo}", tempo));
    }
    parts.extend(block.sides.said().map(str::to_owned));
    match &block.basis {
        LoadBasis::External | LoadBasis::Unloaded => {}
        LoadBasis::BodyMassPlus => parts.push(t("body mass and more").to_owned()),
        LoadBasis::BodyMassMinus => parts.push(t("body mass less assistance").to_owned()),
        LoadBasis::BodyMassShare(share) => {
            parts.push(say!("{share} of body mass", share = figure(share)));
        }
        LoadBasis::Band(_) => parts.extend(block.basis.band()),
    }
    parts.push(if block.rest_after == block.rest {
        say!("rest {time}", time = block.rest.clock())
    } else {
        say!(
            "rest {time} then {after}",
            time = block.rest.clock(),
            after = block.rest_after.clock(),
        )
    });
    parts.join(" · ")
}

/// The policy in words; none for the same load in every set.
fn policy_words(load: &LoadPolicy) -> String {
    let step = |step: &Step| match step {
        Step::Smallest => t("the smallest step").to_owned(),
        Step::By(load) => figure(load),
    };
    match load {
        LoadPolicy::Same => String::new(),
        LoadPolicy::Rising(by) => say!("rising by {step}", step = step(by)),
        LoadPolicy::Falling(by) => say!("falling by {step}", step = step(by)),
        LoadPolicy::List(loads) => listed(loads),
        LoadPolicy::ShareOfTop(list) => {
            say!("{shares} of the heaviest set", shares = listed(list))
        }
        LoadPolicy::ShareOfE1rm(share) => {
            say!("{share} of the e1RM", share = figure(share))
        }
        LoadPolicy::RisingByOutcome { planned, large } => say!(
            "rising by outcome: {planned} in the range, {large} at its top",
            planned = step(planned),
            large = step(large),
        ),
    }
}
