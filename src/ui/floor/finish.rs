//! The summary after the end: time, sets, volume, what moved; and the session RPE, asked once.

use crate::ledger::{SessionRecord, Volume, moved};
use crate::session::{Session, What};
use crate::ui::model::Model;
use crate::ui::place::Place;
use crate::ui::stanchion::stanchion;
use crate::units::{Rpe, clock};
use leptos::prelude::*;

/// The CR-10 words of Foster et al. 2001, J Strength Cond Res 15(1):109–115; numbers without a word have none there.
const RPE_WORDS: [&str; 11] = [
    "rest",
    "very, very easy",
    "easy",
    "moderate",
    "somewhat hard",
    "hard",
    "",
    "very hard",
    "",
    "",
    "maximal",
];

/// The word of a rating, empty where the scale has none.
pub fn rpe_word(rpe: i64) -> &'static str {
    usize::try_from(rpe)
        .ok()
        .and_then(|rpe| RPE_WORDS.get(rpe))
        .copied()
        .unwrap_or("")
}

/// What is shown of an ended session.
#[derive(Clone, PartialEq)]
struct Summed {
    name: String,
    time: String,
    sets: usize,
    volume: String,
    moved: Vec<String>,
    rpe: Option<Rpe>,
}

fn sum_up(model: &Model, session: &Session) -> Option<Summed> {
    let record = SessionRecord::from_events(session.events()).ok()?;
    let unit = model.unit();
    Some(Summed {
        name: record.sheet_name.to_string(),
        time: clock((record.duration_ms / 1000) as i64),
        sets: record.lines().count(),
        volume: Volume::of(&record).work.shown(unit),
        moved: moved(&record, &model.summaries)
            .iter()
            .map(|moved| moved.sentence(unit))
            .collect(),
        rpe: record.rpe,
    })
}

/// The summary after the end.
#[component]
pub fn Finish() -> impl IntoView {
    let app = stanchion();
    let summed = app.of(|model| {
        model
            .session
            .as_ref()
            .and_then(|session| sum_up(model, session))
    });
    let saved = app.of(|model| {
        if model.unsaved == 0 {
            "saved in the ledger"
        } else {
            "saving"
        }
    });
    view! {
        <div class="page" data-part="finish">
            {move || summed.get().map(|summed| view! {
                <h1>{format!("{}, done", summed.name)}</h1>
                <dl class="sums" data-part="sums">
                    <div><dt>"time"</dt><dd data-part="sum-time">{summed.time.clone()}</dd></div>
                    <div><dt>"sets"</dt><dd data-part="sum-sets">{summed.sets}</dd></div>
                    <div><dt>"volume load, work sets"</dt><dd data-part="sum-volume">{summed.volume.clone()}</dd></div>
                </dl>
                <h2>"What moved"</h2>
                <ul class="moved" data-part="moved">
                    {summed.moved.iter().map(|line| view! { <li>{line.clone()}</li> }).collect_view()}
                </ul>
                <h2 id="rpe-title">"How hard was the whole session?"</h2>
                <p class="quiet">"Session RPE, 0 to 10. Best asked half an hour after the end; now is good too."</p>
                <div class="choices" role="group" aria-labelledby="rpe-title">
                    {(0..=10).map(|n| {
                        let rpe = Rpe::saturating(n);
                        let word = rpe_word(n);
                        view! {
                            <button
                                class="choice"
                                data-part=format!("rpe-{n}")
                                aria-pressed=(summed.rpe == Some(rpe)).to_string()
                                aria-label=if word.is_empty() { n.to_string() } else { format!("{n}, {word}") }
                                on:click=move |_| { app.act(What::Rated { rpe }); }
                            >
                                {n}
                                <small>{word}</small>
                            </button>
                        }
                    }).collect_view()}
                </div>
            })}
            <p class="quiet" role="status" data-part="finish-saved">{move || saved.get()}</p>
            <button
                class="wide strong"
                data-part="put-away"
                on:click=move |_| {
                    app.put_away();
                    app.go(Place::Ledger);
                }
            >
                "To the ledger"
            </button>
        </div>
    }
}
