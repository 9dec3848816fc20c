//! The summary after the end: time, sets, volume, what moved; and the session RPE, asked once.

use crate::ledger::{Gained, Heading, SessionRecord, Volume, beaten_in, gained, moved};
use crate::session::{Session, What};
use crate::ui::model::{Keeping, Model};
use crate::ui::parts::{
    button, choices, dynamic, h1, h2, line, list, page, quiet, text, toggles_of,
};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
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
    predicted: Option<String>,
    bests: Vec<String>,
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
        predicted: model
            .heading(record.session)
            .and_then(Heading::predicted_and_taken),
        bests: beaten_in(&record, &model.summaries, model.curve())
            .into_iter()
            .map(|(name, best)| format!("{name}: {}", best.sentence(unit)))
            .collect(),
        moved: if record.light {
            vec!["A light week: the next loads do not follow from it.".to_owned()]
        } else {
            let gained = gained(&record, &model.summaries, model.curve());
            let moved = moved(&record, &model.summaries);
            let moved = moved.iter().map(|moved| moved.sentence(unit));
            moved.chain(gained.iter().map(Gained::sentence)).collect()
        },
        rpe: record.rpe,
    })
}

/// A sum with its name.
fn sum(name: &'static str, part: &'static str, value: String) -> AnyView {
    view! { <div><dt>{name}</dt><dd data-part=part>{value}</dd></div> }.into_any()
}

fn sums(summed: &Summed) -> AnyView {
    let inside = vec![
        sum("time", "sum-time", summed.time.clone()),
        sum("sets", "sum-sets", summed.sets.to_string()),
        sum(
            "volume load, work sets",
            "sum-volume",
            summed.volume.clone(),
        ),
    ];
    view! { <dl class="sums" data-part="sums">{inside}</dl> }.into_any()
}

/// Sentences under each other.
fn sentences(part: &'static str, lines: Vec<String>) -> AnyView {
    let lines = lines.into_iter().map(IntoAny::into_any);
    list("moved", Some(part), lines.collect())
}

/// Predicted and actual length side by side, where there was a prediction.
pub fn predicted(said: Option<String>) -> AnyView {
    said.map(|said| line("quiet", "sum-predicted", said))
        .into_any()
}

/// Buttons for the session RPE.
pub fn ratings(
    rated: Signal<Option<i64>>,
    rate: impl Fn(Rpe) + Copy + Send + Sync + 'static,
) -> AnyView {
    let labels = (0..=10).map(|n| (n.to_string(), rpe_word(n)));
    let inside = toggles_of("rpe", labels, rated, move |n| rate(Rpe::saturating(n)));
    choices("choices", "session RPE", inside)
}

/// The summary after the end.
pub fn summary(app: Stanchion) -> AnyView {
    let summed = app.of(|model| {
        model
            .session
            .as_ref()
            .and_then(|session| sum_up(model, session))
    });
    let saved = app.of(|model| match (&model.keeping, model.unsaved) {
        (Keeping::Nothing(_), _) => "in memory only: export it in Kit before you close this page",
        (_, 0) => "saved in the ledger",
        _ => "saving",
    });
    let rated = Signal::derive(move || summed.get().and_then(|summed| summed.rpe).map(i64::from));
    let rate = move |rpe| {
        app.act(What::Rated { rpe });
    };
    let away = move || {
        let next = app.put_away();
        app.go(if next { Place::Floor } else { Place::Ledger });
    };
    let along = app.of(|model| {
        let other = model.partner()?.person()?;
        Some(format!("Put away, on with {}", other.name))
    });
    let word = text(move || along.get().unwrap_or_else(|| "To the ledger".to_owned()));
    let head = dynamic(move || match summed.get() {
        None => ().into_any(),
        Some(summed) => {
            let mut inside = vec![
                h1(format!("{}, done", summed.name)),
                sums(&summed),
                predicted(summed.predicted),
            ];
            if !summed.bests.is_empty() {
                inside.extend([h2("Bests"), sentences("bests", summed.bests)]);
            }
            inside.extend([h2("What moved"), sentences("moved", summed.moved)]);
            inside.into_any()
        }
    });
    let saved = text(move || saved.get().to_owned());
    page(
        "finish",
        vec![
            head,
            h2("How hard was the whole session?"),
            quiet("Session RPE, 0 to 10. Best asked half an hour after the end; now is good too."),
            ratings(rated, rate),
            line("quiet", "finish-saved", saved),
            button("wide strong", "put-away", word, away),
        ],
    )
}
