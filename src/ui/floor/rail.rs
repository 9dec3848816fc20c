//! The rail: the whole session as a row of notches, one a set, and the time.

use crate::say;
use crate::session::{Moment, Status};
use crate::ui::model::Model;
use crate::ui::parts::{dynamic, el, line};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::clock;
use crate::words::t;
use leptos::prelude::*;

/// How one notch looks.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Notch {
    /// A gap stands before it: another group begins.
    gap: bool,
    mark: &'static str,
}

fn notches(model: &Model) -> Vec<Notch> {
    let Some(session) = &model.session else {
        return Vec::new();
    };
    let state = session.state();
    let current = state.current().map(|slot| slot.planned.key);
    let mut group = None;
    state
        .slots
        .iter()
        .map(|slot| {
            let gap = group.is_some_and(|group| group != slot.planned.group);
            group = Some(slot.planned.group);
            let mark = match &slot.status {
                Status::Pending if current == Some(slot.planned.key) => "now",
                Status::Pending => "ahead",
                Status::Done(_) => "done",
                Status::Skipped => "skipped",
            };
            Notch { gap, mark }
        })
        .collect()
}

/// Time gone, the budget where there is one, and the minutes that the rest of the session will take.
fn times(model: &Model, now: &Moment) -> String {
    let Some(session) = &model.session else {
        return String::new();
    };
    let state = session.state();
    let mut gone = clock((state.gone_ms(now) / 1000) as i64);
    if let Some(budget) = state.began.sheet.budget_minutes {
        gone = say!("{gone} of {budget} min", gone, budget);
    }
    match state
        .seconds_left(now, model.pace().change_over())
        .div_ceil(60)
    {
        0 => gone,
        left => say!("{gone} · {left} min left", gone, left),
    }
}

/// What the rail says in words.
fn said(notches: &[Notch]) -> String {
    let settled = notches
        .iter()
        .filter(|notch| notch.mark != "ahead" && notch.mark != "now")
        .count();
    say!(
        "{settled} of {all} sets done or skipped",
        settled,
        all = notches.len(),
    )
}

/// The rail with the time under it.
pub fn rail(app: Stanchion) -> AnyView {
    let notches = app.of(notches);
    let name = app.of(|model| {
        model
            .session
            .as_ref()
            .map(|session| session.state().began.sheet.name.to_string())
    });
    let times = Seen::new(move || {
        let now = app.now.get();
        app.model.with(|model| times(model, &now))
    });
    let row = dynamic(move || {
        let marks: Vec<AnyView> = notches.get().into_iter().map(mark).collect();
        marks.into_any()
    });
    vec![
        el("div")
            .class("rail")
            .set("role", "img")
            .follow("aria-label", move || notches.with(|notches| said(notches)))
            .part("rail")
            .child(row)
            .view(),
        el("p")
            .class("rail-foot")
            .child(
                el("span")
                    .class("rail-name")
                    .part("sheet-name")
                    .says(move || name.get().unwrap_or_default()),
            )
            .child(
                el("span")
                    .part("times")
                    .set("role", "timer")
                    .set("aria-label", t("time of the session"))
                    .text(times),
            )
            .view(),
    ]
    .into_any()
}

/// That the screen may go dark, where the browser does not keep it on. It stands below the board: what is to be done comes
/// first, and this stays as long as the session.
pub fn asleep(app: Stanchion) -> AnyView {
    dynamic(move || match app.awake.get().said() {
        Some(said) => line("may-sleep", "may-sleep", said),
        None => ().into_any(),
    })
}

fn mark(notch: Notch) -> AnyView {
    let class = format!(
        "notch {}{}",
        notch.mark,
        if notch.gap { " gap" } else { "" }
    );
    el("span").class(class).view()
}
