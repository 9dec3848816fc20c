//! The floor: the session under way, or the choice of a sheet to begin, or the summary after the end.

mod board;
mod choose;
mod finish;
mod more;
mod pad;
mod panels;
mod plates;
mod rail;
mod screen;
mod tempo;

use super::stanchion::stanchion;
use choose::Choose;
use finish::Finish;
use leptos::prelude::*;
use screen::Screen;

pub use board::logged_line;
pub use finish::rpe_word;

/// What the floor is showing.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Showing {
    Choice,
    Session,
    Summary,
}

/// The floor.
#[component]
pub fn FloorPlace() -> impl IntoView {
    let app = stanchion();
    let showing = app.of(|model| match &model.session {
        None => Showing::Choice,
        Some(session) if session.state().has_ended() => Showing::Summary,
        Some(_) => Showing::Session,
    });
    move || match showing.get() {
        Showing::Choice => view! { <Choose/> }.into_any(),
        Showing::Session => view! { <Screen/> }.into_any(),
        Showing::Summary => view! { <Finish/> }.into_any(),
    }
}
