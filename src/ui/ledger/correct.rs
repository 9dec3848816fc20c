//! The panel of one set of the ledger: its correction, its note, taking it out; and that of a set that was forgotten.
//! Each is an event; what was logged first is kept too.

use super::changed::Changing;
use super::notes::{note_area, noted};
use crate::say;
use crate::session::{Amount, Done, EventId, Slot, State, Status, What};
use crate::sheet::{BlockId, SetKey};
use crate::strength::jump_caution;
use crate::ui::floor::{amount_line, side_stepped, side_steppers, sides_of, stage_steppers};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, button, field, panel, stepper, text, wrong_word};
use crate::ui::seen::Seen;
use crate::units::{Load, Rir, Unit};
use crate::words::t;
use leptos::prelude::*;

/// What a panel is open for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Open {
    /// The note on the session.
    Note,
    /// A set that was logged.
    Set(SetKey),
    /// A set of that block that was forgotten.
    Forgotten(BlockId),
}

/// A set as a panel finds it.
struct Before {
    done: Done,
    sided: bool,
    most: Option<Load>,
    note: String,
    event: EventId,
}

fn state_of(model: &Model, changing: Changing) -> Option<&State> {
    let session = model.opened.as_ref()?;
    (session.state().began.session == changing.id).then(|| session.state())
}

fn before(model: &Model, changing: Changing, key: SetKey) -> Option<Before> {
    let slot = state_of(model, changing)?.slot(key)?;
    let logged = slot.logged()?;
    let note = slot.note.as_ref().map(|note| note.as_str().to_owned());
    Some(Before {
        done: logged.done.clone(),
        sided: is_sided(slot, &logged.done.amount),
        most: most(state_of(model, changing)?, key.block),
        note: note.unwrap_or_default(),
        event: logged.event,
    })
}

/// Whether each side has reps of its own: where the sides go one after the other, also while both did as many.
fn is_sided(slot: &Slot, amount: &Amount) -> bool {
    let apart = slot.planned.sides.rounds() > 1 || matches!(amount, Amount::Sides { .. });
    apart && sides_of(amount).is_some()
}

/// The most that was done in a session's block; none where more is easier.
fn most(state: &State, block: BlockId) -> Option<Load> {
    let slots = state.slots.iter();
    let slots = slots.filter(|slot| slot.planned.key.block == block);
    let harder = slots.filter(|slot| !state.block_of(slot).basis.assists());
    harder.filter_map(|slot| slot.logged()?.done.load).max()
}

/// What the panel holds, as typed.
#[derive(Clone, Copy)]
struct Typed {
    /// The load of which it was asked whether it was so.
    asked: Live<Option<Load>>,
    amount: Live<Amount>,
    /// Each side is put right by itself.
    sided: bool,
    load: Live<String>,
    reserve: Live<String>,
    wrong: Live<Option<String>>,
}

impl Typed {
    fn of(done: &Done, sided: bool, unit: Unit) -> Typed {
        let load = done.load.map(|load| load.figure(unit));
        let reserve = done.reserve.map(|reserve| reserve.to_string());
        Typed {
            amount: Live::new(done.amount.clone()),
            sided,
            load: Live::new(load.unwrap_or_default()),
            reserve: Live::new(reserve.unwrap_or_default()),
            wrong: Live::new(None),
            asked: Live::new(None),
        }
    }

    /// A slip of the thumb is soon a load that nobody moved, from which the next ones would follow: one that jumps above
    /// the `most` done in the block is asked about once.
    fn is_so(self, load: Load, most: Option<Load>, unit: Unit) -> Result<(), String> {
        if !jump_caution(most, load) || self.asked.get_untracked() == Some(load) {
            return Ok(());
        }
        self.asked.set(Some(load));
        Err(say!(
            "{load} is more than 10\u{a0}% above what was done here. Keep it once more if it was so.",
            load = load.shown(unit)
        ))
    }

    /// The set as typed, or why it cannot be so. `has_load` says that a load belongs to it; `most` see [`Typed::is_so`].
    fn done(
        self,
        before: &Done,
        unit: Unit,
        has_load: bool,
        most: Option<Load>,
    ) -> Result<Done, String> {
        let mut done = before.clone();
        done.amount = self.amount.get_untracked();
        let typed = self.load.get_untracked();
        let untouched = before
            .load
            .map(|load| load.figure(unit))
            .unwrap_or_default();
        // Untouched, it stays as exact as it was logged.
        if has_load && typed != untouched {
            let load = Load::parse_in(&typed, unit).map_err(|error| error.to_string())?;
            self.is_so(load, most, unit)?;
            done = done.with_load(Some(load));
        }
        let reserve = match self.reserve.get_untracked().trim() {
            "" => None,
            typed => Some(Rir::parse(typed).map_err(|error| error.to_string())?),
        };
        Ok(done.with_reserve(reserve))
    }

    /// The steppers of how much was done.
    fn count(self) -> AnyView {
        let amount = self.amount;
        if matches!(amount.get_untracked(), Amount::Stages(_)) {
            let step = Callback::new(move |(at, more): (usize, bool)| {
                amount.update(|amount| *amount = amount.stage_stepped(at, more));
            });
            return stage_steppers(Seen::new(move || Some(amount.get())), step);
        }
        if self.sided {
            let reps = Seen::new(move || amount.with(sides_of));
            let step = Callback::new(move |(second, more): (bool, bool)| {
                amount.update(|amount| {
                    *amount = side_stepped(amount, second, more).unwrap_or(amount.clone());
                });
            });
            return side_steppers(reps, step).into_any();
        }
        let figure = text(move || match self.amount.get() {
            Amount::Reps(reps) => reps.to_string(),
            other => amount_line(&other),
        });
        let name = match self.amount.get_untracked() {
            Amount::Timed(_) => t("five seconds"),
            Amount::Distance(_) => t("five metres"),
            _ => t("rep"),
        };
        let step = move |more| {
            self.amount.update(|amount| {
                let one = Done {
                    load: None,
                    amount: amount.clone(),
                    reserve: None,
                };
                *amount = one.stepped(more).amount;
            });
        };
        stepper(name, "correct-reps", figure, step)
    }

    fn fields(self, unit: Unit, has_load: bool) -> Vec<AnyView> {
        let mut inside = vec![self.count()];
        if has_load {
            let label = say!("load, {unit}", unit);
            let typed = move |text| self.load.set(text);
            inside.push(field(
                "correct-load",
                Mode::Decimal,
                label,
                self.load,
                true,
                typed,
            ));
        }
        let typed = move |text| self.reserve.set(text);
        let label = t("reps in reserve, if known");
        inside.push(field(
            "correct-reserve",
            Mode::Whole,
            label,
            self.reserve,
            true,
            typed,
        ));
        inside
    }
}

/// The panel of a set that was logged.
pub fn correction(changing: Changing, key: SetKey, close: Callback<()>) -> AnyView {
    let model = changing.app.model;
    let unit = model.with_untracked(Model::unit);
    let Some(before) = model.with_untracked(|model| before(model, changing, key)) else {
        return ().into_any();
    };
    let has_load = before.done.load.is_some();
    let typed = Typed::of(&before.done, before.sided, unit);
    let note = Live::new(before.note.clone());
    let mut inside = typed.fields(unit, has_load);
    inside.push(note_area("correct-note", t("note on this set"), note));
    inside.push(wrong_word("correct-wrong", typed.wrong));
    let event = before.event;
    let keep = move || match changes(typed, &before, key, &note.get_untracked(), unit) {
        Ok(whats) => {
            if whats.is_empty() || changing.make(t("The set is changed."), whats) {
                close.run(());
            }
        }
        Err(why) => typed.wrong.set(Some(why)),
    };
    inside.push(button("wide strong", "correct-keep", t("Keep"), keep));
    let out = move || {
        if changing.make(t("The set is removed."), vec![What::Undone { event }]) {
            close.run(());
        }
    };
    inside.push(button(
        "wide",
        "correct-out",
        t("It was not done: remove it"),
        out,
    ));
    panel("correct-panel", t("Correct this set"), close, inside)
}

/// What differs from before, as events.
fn changes(
    typed: Typed,
    before: &Before,
    key: SetKey,
    note: &str,
    unit: Unit,
) -> Result<Vec<What>, String> {
    let has_load = before.done.load.is_some();
    let done = typed.done(&before.done, unit, has_load, before.most)?;
    let mut whats = Vec::new();
    if done != before.done {
        whats.push(What::SetAmended { set: key, done });
    }
    if note != before.note {
        whats.push(noted(Some(key), note)?);
    }
    Ok(whats)
}

/// A set to be added: its key, what stands in the fields at first, and what must happen before it.
struct Forgotten {
    key: SetKey,
    done: Done,
    sided: bool,
    most: Option<Load>,
    has_load: bool,
    first: Option<What>,
}

/// The set of a block that a person most likely forgot: the first of its plan that was not logged, else one more in the
/// line of its last one. What stands there at first is what was done last in the block.
fn forgotten(state: &State, block: BlockId) -> Option<Forgotten> {
    let slots = state
        .slots
        .iter()
        .filter(|slot| slot.planned.key.block == block);
    let last = slots.clone().rfind(|slot| slot.logged().is_some());
    let like = last.or_else(|| slots.clone().next())?;
    let has_load = state.block_of(like).basis.has_load();
    let load = last.and_then(|slot| slot.logged()?.done.load);
    let open = slots.clone().find(|slot| {
        slot.logged().is_none() && slot.planned.key.drop == 0 && slot.status != Status::Skipped
    });
    let open = open.or_else(|| slots.clone().find(|slot| slot.logged().is_none()));
    let done = |amount: Amount| Done {
        load,
        amount,
        reserve: None,
    };
    if let Some(slot) = open {
        let done = done(slot.as_prescribed(None).amount);
        return Some(Forgotten {
            key: slot.planned.key,
            sided: is_sided(slot, &done.amount),
            done,
            has_load,
            most: most(state, block),
            first: None,
        });
    }
    let line = like.planned.key.line;
    let sets = slots.filter(|slot| slot.planned.key.line == line);
    let next = sets
        .map(|slot| slot.planned.key.set)
        .max()?
        .checked_add(1)?;
    let key = SetKey {
        set: next,
        drop: 0,
        ..like.planned.key
    };
    let done = done(like.logged()?.done.amount.clone());
    Some(Forgotten {
        key,
        sided: is_sided(like, &done.amount),
        done,
        has_load,
        most: most(state, block),
        first: Some(What::SetAdded { block, line }),
    })
}

/// The panel of a set that was forgotten.
pub fn forgotten_panel(changing: Changing, block: BlockId, close: Callback<()>) -> AnyView {
    let model = changing.app.model;
    let unit = model.with_untracked(Model::unit);
    let found = model.with_untracked(|model| forgotten(state_of(model, changing)?, block));
    let Some(found) = found else {
        return ().into_any();
    };
    let typed = Typed::of(&found.done, found.sided, unit);
    let mut inside = typed.fields(unit, found.has_load);
    inside.push(wrong_word("correct-wrong", typed.wrong));
    let keep = move || match typed.done(&found.done, unit, found.has_load, found.most) {
        Ok(done) => {
            let logged = What::SetDone {
                set: found.key,
                done,
                proposed: None,
            };
            let whats = found.first.clone().into_iter().chain([logged]).collect();
            if changing.make(t("The set is added."), whats) {
                close.run(());
            }
        }
        Err(why) => typed.wrong.set(Some(why)),
    };
    inside.push(button(
        "wide strong",
        "forgotten-keep",
        t("Add the set"),
        keep,
    ));
    panel(
        "forgotten-panel",
        t("A set that was forgotten"),
        close,
        inside,
    )
}

#[cfg(test)]
#[path = "correct_tests.rs"]
mod tests;
