//! Short of time: what goes so that the rest of the session fits the minutes there are, and the tap that takes it off.

use super::hands::Hands;
use crate::say;
use crate::session::{self, Moment, Short, Slot, Status};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, line, list, panel, quiet, stepper, text};
use crate::ui::seen::Seen;
use crate::units::minutes_up;
use crate::words::{many, t};
use leptos::prelude::*;

/// Minutes by which the time there is is stepped.
const STEP_MINUTES: u64 = 5;

fn seconds_left(model: &Model, now: &Moment) -> u64 {
    let change_over = model.pace().change_over();
    let session = model.session.as_ref();
    session.map_or(0, |session| session.state().seconds_left(now, change_over))
}

/// Whole minutes by which the rest of the session is longer than the budget leaves; none where it fits, or where nothing
/// can go.
pub fn minutes_over(model: &Model, now: &Moment) -> Option<u64> {
    let state = model.session.as_ref()?.state();
    let over = state.over_budget(now, model.pace().change_over())?;
    let pending = |slot: &&Slot| slot.status == Status::Pending;
    let several = state.slots.iter().filter(pending).count() > 1;
    session::minutes_over(over).filter(|_| several)
}

/// The minutes that the panel begins with: what the budget leaves, or five fewer than the session would take.
fn first_minutes(model: &Model, now: &Moment) -> u64 {
    let left = minutes_up(seconds_left(model, now));
    let session = model.session.as_ref();
    let budget = session.and_then(|session| session.state().budget_left(now));
    budget.map_or(left.saturating_sub(STEP_MINUTES), |budget| budget / 60)
}

/// The panel of a session that is short of time.
pub fn short_panel(hands: Hands, close: Callback<()>) -> AnyView {
    let app = hands.app;
    let now = app.now.get_untracked();
    let minutes = Live::new(app.model.with_untracked(|model| first_minutes(model, &now)));
    let taken = Live::new(None::<Short>);
    // By the clock of when the panel was opened: a list that changes under the finger is no offer.
    let short = Seen::new(move || {
        let within = minutes.get() * 60;
        app.model.with(|model| {
            let state = model.session.as_ref()?.state();
            Some(state.short(&now, within, model.pace().change_over()))
        })
    });
    let step = move |more: bool| {
        minutes.update(|minutes| {
            *minutes = if more {
                *minutes + STEP_MINUTES
            } else {
                minutes.saturating_sub(STEP_MINUTES)
            };
        });
    };
    let take = move |short: Short| {
        if app.act_all(short.events()) {
            taken.set(Some(short));
        }
    };
    let inside = dynamic(move || match taken.get() {
        Some(short) => vec![
            quiet(t("Removed; everything else stays as it was.")),
            gone(&short),
            button("wide", "short-undo", t("Undo"), move || {
                app.undo();
                taken.set(None);
            }),
            button("wide strong", "short-done", t("Go on"), move || {
                close.run(())
            }),
        ]
        .into_any(),
        None => {
            let figure = text(move || format!("{} min", minutes.get()));
            let offer = dynamic(move || match short.get() {
                Some(short) => offer(short, minutes.get() * 60, Callback::new(take)),
                None => ().into_any(),
            });
            vec![stepper(t("time"), "short-minutes", figure, step), offer].into_any()
        }
    });
    panel("short-panel", t("Time that is left"), close, vec![inside])
}

/// What goes, line by line.
fn gone(short: &Short) -> AnyView {
    let lines = short.gone.iter().map(|gone| gone.said().into_any());
    list("short-gone", Some("short-gone"), lines.collect())
}

/// What would go, and the tap that takes it off.
fn offer(short: Short, within_s: u64, take: Callback<Short>) -> AnyView {
    let left = minutes_up(short.left);
    if short.gone.is_empty() {
        let said = if short.left > within_s {
            say!(
                "One set stays, and takes {left} min. To stop now, end the session.",
                left
            )
        } else {
            say!("All of it fits: {left} min.", left)
        };
        return line("quiet", "short-left", said);
    }
    let minutes = usize::try_from(left).unwrap_or(usize::MAX);
    let said = if short.left > within_s {
        many(
            minutes,
            "Then {n} min is left: one set stays.",
            "Then {n} min are left: one set stays.",
        )
    } else {
        many(
            minutes,
            "Then {n} min is left. What matters most is kept longest.",
            "Then {n} min are left. What matters most is kept longest.",
        )
    };
    let lines = gone(&short);
    vec![
        lines,
        line("quiet", "short-left", said),
        button(
            "wide strong stays",
            "short-take",
            t("Remove these"),
            move || {
                take.run(short.clone());
            },
        ),
    ]
    .into_any()
}
