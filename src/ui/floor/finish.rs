//! The summary after the end: time, sets, volume, what moved; and the session RPE, asked once.

use crate::ledger::{Gained, Heading, SessionRecord, Volume, beaten_in, gained, moved};
use crate::say;
use crate::session::{Session, What};
use crate::ui::model::Model;
use crate::ui::parts::{
    button, choices, dynamic, el, h1, h2, line, list, page, quiet, text, toggles_of, when,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::{Rpe, minutes_said};
use crate::words::{t, t_in};
use leptos::prelude::*;

/// The word of a rating, empty where the scale has none: the CR-10 words of Foster et al. 2001, J Strength Cond Res
/// 15(1):109–115.
pub fn rpe_word(rpe: i64) -> &'static str {
    t_in(
        "effort",
        match rpe {
            0 => "rest",
            1 => "very, very easy",
            2 => "easy",
            3 => "moderate",
            4 => "somewhat hard",
            5 => "hard",
            7 => "very hard",
            10 => "maximal",
            _ => return Default::default(),
        },
    )
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
        time: minutes_said(record.minutes()),
        sets: record.lines().count(),
        volume: Volume::of(&record).work.shown(unit),
        predicted: model
            .heading(record.session)
            .and_then(Heading::predicted_and_taken),
        bests: beaten_in(&record, &model.summaries, model.curve())
            .into_iter()
            .map(|(name, best)| format!("{name}: {}", best.sentence(unit)))
            .collect(),
        moved: if record.light && record.lines().next().is_some() {
            vec![t("A light week: the next loads do not follow from it.").to_owned()]
        } else {
            let gained = gained(&record, &model.summaries, model.curve());
            let moved = moved(&record, &model.summaries);
            let moved = moved.iter().map(|moved| moved.sentence(unit));
            moved.chain(gained.iter().map(Gained::sentence)).collect()
        },
        rpe: record.rpe,
    })
}

/// What is over, and whether anything was done.
fn title(summed: &Summed) -> String {
    let name = &summed.name;
    if summed.sets == 0 {
        say!("{name}: nothing done", name)
    } else {
        say!("{name}, done", name)
    }
}

/// A sum with its name.
fn sum(name: &'static str, part: &'static str, value: String) -> AnyView {
    el("div")
        .child(el("dt").child(name))
        .child(el("dd").part(part).child(value))
        .view()
}

fn sums(summed: &Summed) -> AnyView {
    let inside = vec![
        sum(t("time"), "sum-time", summed.time.clone()),
        sum(t("sets, ramp-ups too"), "sum-sets", summed.sets.to_string()),
        sum(
            t("volume load, work sets"),
            "sum-volume",
            summed.volume.clone(),
        ),
    ];
    el("dl").class("sums").part("sums").child(inside).view()
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
    rated: Seen<Option<i64>>,
    rate: impl Fn(Rpe) + Copy + Send + Sync + 'static,
) -> AnyView {
    let labels = (0..=10).map(|n| (n.to_string(), rpe_word(n)));
    let inside = toggles_of("rpe", labels, rated, move |n| rate(Rpe::saturating(n)));
    choices("choices", t("session RPE"), inside)
}

/// The summary after the end.
pub fn summary(app: Stanchion) -> AnyView {
    let summed = app.of(|model| {
        model
            .session
            .as_ref()
            .and_then(|session| sum_up(model, session))
    });
    let in_memory = app.of(Model::keeps_nothing);
    let saved = Seen::new(move || match app.unsaved.get() {
        _ if in_memory.get() => t("in memory only: export it in Kit before you close this page"),
        0 => t("saved in the ledger"),
        _ => t("saving"),
    });
    let rated = Seen::new(move || summed.get().and_then(|summed| summed.rpe).map(i64::from));
    let rate = move |rpe| {
        app.act(What::Rated { rpe });
    };
    let away = move || {
        let next = app.put_away();
        app.go(if next { Place::Floor } else { Place::Ledger });
    };
    let along = app.of(|model| {
        let other = model.partner()?.person()?;
        Some(say!("Put away, on with {name}", name = other.name))
    });
    let word = text(move || along.get().unwrap_or_else(|| t("To the ledger").to_owned()));
    let head = dynamic(move || match summed.get() {
        None => ().into_any(),
        Some(summed) => {
            let mut inside = vec![
                h1(title(&summed)),
                sums(&summed),
                predicted(summed.predicted),
            ];
            if !summed.bests.is_empty() {
                inside.extend([h2(t("Bests")), sentences("bests", summed.bests)]);
            }
            if summed.sets == 0 {
                inside.push(quiet(t(
                    "No set was logged: it counts nowhere and moves no programme on. It can be removed in the ledger.",
                )));
            }
            if !summed.moved.is_empty() {
                inside.extend([h2(t("What moved")), sentences("moved", summed.moved)]);
            }
            inside.into_any()
        }
    });
    let saved = text(move || saved.get().to_owned());
    // How hard nothing was is not asked.
    let any =
        Seen::new(move || summed.with(|summed| summed.as_ref().is_some_and(|it| it.sets > 0)));
    let asked = when(any, move || {
        vec![
            h2(t("How hard was the whole session?")),
            quiet(t(
                "Session RPE, 0 to 10. Best asked half an hour after the end; now is good too.",
            )),
            ratings(rated, rate),
        ]
        .into_any()
    });
    page(
        "finish",
        vec![
            head,
            asked,
            line("quiet", "finish-saved", saved),
            button("wide strong", "put-away", word, away),
        ],
    )
}
