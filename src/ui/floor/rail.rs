//! The rail: the whole session as a row of notches, one a set, and the time.

use crate::session::Status;
use crate::ui::model::Model;
use crate::ui::stanchion::stanchion;
use crate::units::clock;
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

/// The rail with the time under it.
#[component]
pub fn Rail() -> impl IntoView {
    let app = stanchion();
    let notches = app.of(notches);
    let name = app.of(|model| {
        model
            .session
            .as_ref()
            .map(|session| session.state().began.sheet.name.to_string())
    });
    let said = Memo::new(move |_| {
        notches.with(|notches| {
            let done = notches
                .iter()
                .filter(|notch| notch.mark != "ahead" && notch.mark != "now")
                .count();
            format!("{done} of {} sets done or skipped", notches.len())
        })
    });
    let times = Memo::new(move |_| {
        let now = app.now.get();
        app.model.with(|model| {
            model.session.as_ref().map(|session| {
                let state = session.state();
                let gone = clock((now.since(&state.since) / 1000) as i64);
                let left = state.seconds_left(&now).div_ceil(60);
                if left == 0 {
                    gone
                } else {
                    format!("{gone} · {left} min left")
                }
            })
        })
    });
    view! {
        <div class="rail" role="img" aria-label=move || said.get() data-part="rail">
            {move || notches.get().into_iter().map(|notch| view! {
                <span class=format!("notch {}", notch.mark) class:gap=notch.gap></span>
            }).collect_view()}
        </div>
        <p class="rail-foot">
            <span data-part="sheet-name">{move || name.get()}</span>
            <span data-part="times" role="timer">{move || times.get()}</span>
        </p>
    }
}
