//! The tempo of a rep as a strip of four parts, the one under way lit.

use crate::cues::{Phase, Position};
use crate::say;
use crate::sheet::{Digit, Tempo};
use crate::ui::parts::el;
use crate::ui::seen::Seen;
use leptos::prelude::*;

/// The parts of a tempo as they are written on the strip.
fn parts(tempo: Tempo) -> [(Phase, String, &'static str); 4] {
    let grow = |digit: Digit| match digit.seconds() {
        0 | 1 => "grow-1",
        2 => "grow-2",
        3 => "grow-3",
        _ => "grow-4",
    };
    [
        (
            Phase::Eccentric,
            say!("{digit} down", digit = tempo.eccentric),
            grow(tempo.eccentric),
        ),
        (
            Phase::Stretch,
            tempo.stretch.to_string(),
            grow(tempo.stretch),
        ),
        (
            Phase::Concentric,
            say!("{digit} up", digit = tempo.concentric),
            grow(tempo.concentric),
        ),
        (
            Phase::Squeeze,
            tempo.squeeze.to_string(),
            grow(tempo.squeeze),
        ),
    ]
}

/// The strip.
pub fn tempo_strip(tempo: Tempo, position: Seen<Option<Position>>) -> AnyView {
    let parts: Vec<AnyView> = parts(tempo)
        .into_iter()
        .map(|(phase, said, grow)| part(phase, said, grow, position))
        .collect();
    let name = say!(
        "tempo {tempo}: seconds down, pause, up, pause; X is as fast as possible",
        tempo,
    );
    el("div")
        .class("tempo")
        .set("role", "img")
        .part("tempo")
        .set("aria-label", name)
        .child(parts)
        .view()
}

fn part(
    phase: Phase,
    said: String,
    grow: &'static str,
    position: Seen<Option<Position>>,
) -> AnyView {
    let class = move || match position.get() {
        Some(Position::Running { span, .. }) if span.what == phase => {
            format!("tempo-part {grow} lit")
        }
        _ => format!("tempo-part {grow}"),
    };
    el("span").follow("class", class).child(said).view()
}
