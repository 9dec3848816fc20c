//! The correction of one set of the ledger: kept as an event; what was logged first is kept too.

use crate::session::{Done, SessionId, What};
use crate::sheet::SetKey;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, button, field, panel, stepper, wrong_word};
use crate::ui::stanchion::Stanchion;
use crate::units::{Load, Reps, Rir, Unit};
use leptos::prelude::*;

/// What was logged of a set.
fn done_of(model: &Model, id: SessionId, key: SetKey) -> Option<Done> {
    let session = model
        .opened
        .as_ref()
        .filter(|session| session.state().began.session == id)?;
    Some(session.state().slot(key)?.logged()?.done.clone())
}

/// What the panel holds, as typed.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Typed {
    reps: String,
    load: String,
    reserve: String,
}

impl Typed {
    fn of(done: &Done, unit: Unit) -> Typed {
        let reps = done.amount.reps().map(|reps| reps.to_string());
        let load = done.load.map(|load| load.figure(unit));
        let reserve = done.reserve.map(|reserve| reserve.to_string());
        Typed {
            reps: reps.unwrap_or_default(),
            load: load.unwrap_or_default(),
            reserve: reserve.unwrap_or_default(),
        }
    }

    /// The set as corrected, or why it cannot be so.
    fn correct(&self, before: &Done, unit: Unit) -> Result<Done, String> {
        let was = Typed::of(before, unit);
        let mut done = before.clone();
        if before.amount.reps().is_some() {
            done = done.with_reps(Reps::parse(&self.reps).map_err(|error| error.to_string())?);
        }
        // Untouched, it stays as exact as it was logged.
        if before.load.is_some() && self.load != was.load {
            let load = Load::parse_in(&self.load, unit).map_err(|error| error.to_string())?;
            done = done.with_load(Some(load));
        }
        let reserve = match self.reserve.trim() {
            "" => None,
            typed => Some(Rir::parse(typed).map_err(|error| error.to_string())?),
        };
        Ok(done.with_reserve(reserve))
    }
}

/// The panel that corrects a set.
pub fn correction(app: Stanchion, id: SessionId, key: SetKey, close: Callback<()>) -> AnyView {
    let unit = app.model.with_untracked(Model::unit);
    let before = app.model.with_untracked(|model| done_of(model, id, key));
    let Some(before) = before else {
        return ().into_any();
    };
    let was = Typed::of(&before, unit);
    let reps = RwSignal::new(was.reps);
    let load = RwSignal::new(was.load);
    let reserve = RwSignal::new(was.reserve);
    let wrong = RwSignal::new(None::<String>);
    let mut inside = Vec::new();
    if before.amount.reps().is_some() {
        inside.push(stepper("rep", "correct-reps", reps, move |more| {
            let now = Reps::parse(&reps.get_untracked()).map_or(0, i64::from);
            let by = if more { 1 } else { -1 };
            reps.set(Reps::saturating(now + by).to_string());
        }));
    }
    if before.load.is_some() {
        let label = format!("load, {unit}");
        let typed = move |text| load.set(text);
        inside.push(field(
            "correct-load",
            Mode::Decimal,
            label,
            load,
            true,
            typed,
        ));
    }
    let typed = move |text| reserve.set(text);
    let label = "reps in reserve, if known";
    inside.push(field(
        "correct-reserve",
        Mode::Whole,
        label,
        reserve,
        true,
        typed,
    ));
    inside.push(wrong_word("correct-wrong", wrong));
    let keep = move || {
        let typed = Typed {
            reps: reps.get_untracked(),
            load: load.get_untracked(),
            reserve: reserve.get_untracked(),
        };
        match typed.correct(&before, unit) {
            Ok(done) => {
                if done != before {
                    app.correct(What::SetAmended { set: key, done });
                }
                close.run(());
            }
            Err(why) => wrong.set(Some(why)),
        }
    };
    inside.push(button(
        "wide strong",
        "correct-keep",
        "Keep the correction",
        keep,
    ));
    panel("correct-panel", "Correct this set", close, inside)
}
