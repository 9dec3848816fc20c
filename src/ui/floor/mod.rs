//! The floor: the session under way, or the choice of a sheet to begin, or the summary after the end.

mod band;
mod begin;
mod board;
mod choose;
mod end;
mod entry;
mod figures;
mod finish;
mod hands;
mod heat;
mod help;
mod keys;
mod more;
mod pad;
mod panels;
mod plates;
mod rail;
mod rehearse;
mod rest;
mod safety;
mod screen;
mod short;
mod sides;
mod stages;
mod swap;
mod tempo;
mod told;
mod touch;

use super::coach;
use super::parts::{apart, dynamic, when};
use super::stanchion::stanchion;
use crate::session::SessionId;
use leptos::prelude::*;

pub use begin::Beginning;
pub use figures::{amount_line, logged_line};
pub use finish::{predicted, rpe_word};
pub use rest::saved;
pub use screen::current_board;
pub use sides::{of as sides_of, stepped as side_stepped, steppers as side_steppers};
pub use stages::stage_steppers;

/// What the floor is showing.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Showing {
    Choice,
    /// One of two who take turns has an own screen: nothing that was asked on it goes over.
    Session(SessionId),
    Summary,
    /// Another one's ledger is looked at.
    NotHere,
}

/// The floor.
pub fn floor_place() -> AnyView {
    let app = stanchion();
    let showing = app.of(|model| match &model.session {
        _ if model.looks_at.is_some() => Showing::NotHere,
        None => Showing::Choice,
        Some(session) if session.state().has_ended() => Showing::Summary,
        Some(session) => Showing::Session(session.state().began.session),
    });
    dynamic(move || match showing.get() {
        Showing::Choice => apart(|| choose::choice(app)),
        Showing::Session(_) => apart(|| screen::screen(app)),
        Showing::Summary => when(app.whole, move || apart(|| finish::summary(app))),
        Showing::NotHere => when(app.whole, || apart(coach::floor)),
    })
}
