//! The tempo of a rep as a strip of four parts, the one under way lit.

use crate::cues::{Phase, Position};
use crate::sheet::{Digit, Tempo};
use leptos::prelude::*;

/// The parts of a tempo as they are written on the strip.
fn parts(tempo: Tempo) -> [(Phase, String, &'static str); 4] {
    let said = |digit: Digit, word: &str| match digit {
        Digit::Fast => format!("X {word}"),
        Digit::Seconds(s) => format!("{s} {word}"),
    };
    let grow = |digit: Digit| match digit.seconds() {
        0 | 1 => "grow-1",
        2 => "grow-2",
        3 => "grow-3",
        _ => "grow-4",
    };
    [
        (
            Phase::Eccentric,
            said(tempo.eccentric, "down"),
            grow(tempo.eccentric),
        ),
        (
            Phase::Stretch,
            said(tempo.stretch, "wait").replace(" wait", ""),
            grow(tempo.stretch),
        ),
        (
            Phase::Concentric,
            said(tempo.concentric, "up"),
            grow(tempo.concentric),
        ),
        (
            Phase::Squeeze,
            said(tempo.squeeze, "wait").replace(" wait", ""),
            grow(tempo.squeeze),
        ),
    ]
}

/// The strip.
#[component]
pub fn TempoStrip(
    /// The tempo.
    tempo: Tempo,
    /// What is under way.
    position: Memo<Option<Position>>,
) -> impl IntoView {
    view! {
        <div
            class="tempo"
            role="img"
            data-part="tempo"
            aria-label=format!(
                "tempo {tempo}: seconds down, pause, up, pause; X is as fast as possible",
            )
        >
            {parts(tempo).into_iter().map(|(phase, said, grow)| view! {
                <span
                    class=format!("tempo-part {grow}")
                    class:lit=move || matches!(
                        position.get(),
                        Some(Position::Running { span, .. }) if span.what == phase
                    )
                >
                    {said}
                </span>
            }).collect_view()}
        </div>
    }
}
