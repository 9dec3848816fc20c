//! Prints one line of sets.

use crate::sheet::{LoadPolicy, SetKind, Sets, Stage, Step, Target};
use crate::units::Seconds;

pub(super) fn sets(sets: &Sets) -> String {
    let name = match sets.kind {
        SetKind::RampUp { .. } => "ramp ",
        SetKind::BackOff { .. } => "back-off ",
        SetKind::Drop { .. } => "drop ",
        SetKind::Cluster { .. } => "cluster ",
        SetKind::Work | SetKind::ToFailure => "",
    };
    let mut line = format!("{name}{} × {}", sets.count, target(&sets.target));
    match &sets.kind {
        SetKind::RampUp { shares } => {
            line += &format!(" at {}", list(shares, |share| share.plain()))
        }
        SetKind::BackOff { share } => line += &format!(" at {}", share.plain()),
        SetKind::Drop { drops, keep } => line += &format!(" drops {drops} to {}", keep.plain()),
        SetKind::Cluster { portions, pause } => {
            line += &format!(" in {portions} pause {}", time(*pause));
        }
        SetKind::ToFailure => line += " to failure",
        SetKind::Work => {}
    }
    if !sets.reserve.is_empty() {
        line += &format!(" @ {}", list(&sets.reserve, |reserve| reserve.to_string()));
    }
    line += &policy(&sets.load);
    if let Some(tempo) = sets.tempo {
        line += &format!(" tempo {tempo}");
    }
    if let Some(rest) = sets.rest {
        line += &format!(" rest {}", time(rest));
    }
    line
}

fn target(target: &Target) -> String {
    match target {
        Target::Reps(reps) => reps.to_string(),
        Target::Timed(seconds) => format!("{seconds} s"),
        Target::Distance(metres) => format!("{metres} m"),
        Target::Stages(stages) => {
            let stages: Vec<String> = stages.iter().map(Stage::to_string).collect();
            format!("[{}]", stages.join(" → "))
        }
    }
}

fn policy(policy: &LoadPolicy) -> String {
    match policy {
        LoadPolicy::Same => String::new(),
        LoadPolicy::Rising(step) => format!(" rising{}", after(" by", *step)),
        LoadPolicy::Falling(step) => format!(" falling{}", after(" by", *step)),
        LoadPolicy::List(loads) => format!(" loads {}", list(loads, |load| load.plain())),
        LoadPolicy::ShareOfTop(shares) => {
            format!(" {} of top", list(shares, |share| share.plain()))
        }
        LoadPolicy::ShareOfE1rm(share) => format!(" {} e1RM", share.plain()),
        LoadPolicy::RisingByOutcome { planned, large } => format!(
            " rising by outcome{}{}",
            after(" step", *planned),
            after(" large", *large)
        ),
    }
}

/// A step behind its word; of the smallest step both are left out.
pub(super) fn after(word: &str, step: Step) -> String {
    match step {
        Step::Smallest => String::new(),
        Step::By(load) => format!("{word} {}", load.plain()),
    }
}

/// Seconds up to a minute, a clock from there on.
pub(super) fn time(seconds: Seconds) -> String {
    match seconds.get() {
        s @ 0..60 => format!("{s} s"),
        s => format!("{}:{:02}", s / 60, s % 60),
    }
}

fn list<T>(items: &[T], plain: fn(&T) -> String) -> String {
    let items: Vec<String> = items.iter().map(plain).collect();
    items.join(", ")
}
