//! A set in stages: what was done of each is put right by itself.

use super::figures::amount_line;
use crate::say;
use crate::session::{Amount, StageAmount};
use crate::ui::parts::{dynamic, stepper_of, text};
use crate::ui::seen::Seen;
use leptos::prelude::*;

/// What each stage counts, by its place; nothing for an amount without stages.
fn names(amount: &Amount) -> Vec<String> {
    let Amount::Stages(stages) = amount else {
        return Vec::new();
    };
    let name = |(at, stage): (usize, &StageAmount)| {
        let number = at + 1;
        match stage {
            StageAmount::Hold(_) => say!("time held in stage {number}", number),
            StageAmount::Reps(_) => say!("reps of stage {number}", number),
            StageAmount::Partials(_) => say!("partials of stage {number}", number),
        }
    };
    stages.iter().enumerate().map(name).collect()
}

/// What was done of the stage in that place.
fn done(amount: &Amount, at: usize) -> Option<String> {
    let Amount::Stages(stages) = amount else {
        return None;
    };
    Some(amount_line(&Amount::Stages(vec![*stages.get(at)?])))
}

/// A stepper for each stage, one below the other; `step` is given the place of the stage, and whether it is more.
pub fn stage_steppers(amount: Seen<Option<Amount>>, step: Callback<(usize, bool)>) -> AnyView {
    let names = Seen::new(move || amount.with(|amount| amount.as_ref().map(names)));
    dynamic(move || {
        let names = names.get().unwrap_or_default().into_iter().enumerate();
        let steppers = names.map(|(at, name)| {
            let figure = text(move || {
                let said = amount.with(|amount| done(amount.as_ref()?, at));
                said.unwrap_or_default()
            });
            let step = Callback::new(move |more| step.run((at, more)));
            stepper_of(name, format!("done-stage-{}", at + 1), figure, step)
        });
        steppers.collect::<Vec<AnyView>>().into_any()
    })
}
