//! One session: every set as it was done.

use super::correct::correction;
use crate::ledger::{DoneLine, Heading, SessionRecord, Volume, unfed_of};
use crate::session::{Done, Session, SessionId, What};
use crate::sheet::{LoadBasis, SetKey};
use crate::store::{SessionLog, Shelf};
use crate::strength::Curve;
use crate::ui::away::remove_session;
use crate::ui::floor::{logged_line, predicted, rpe_word};
use crate::ui::model::Model;
use crate::ui::parts::{
    choices, counted, dynamic, h1, line, list, page, quiet, row_opener, section, sure_button,
    toggles_of, way, words,
};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{Rpe, Unit, clock, long_day_and_time};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Reads the session into the model.
fn open(app: Stanchion, id: SessionId) {
    let is_open = app.model.with_untracked(|model| {
        model
            .opened
            .as_ref()
            .is_some_and(|session| session.state().began.session == id)
    });
    if is_open {
        return;
    }
    app.model.update(|model| model.opened = None);
    let keep = app.keep();
    spawn_local(async move {
        let found = keep
            .get::<SessionLog>(Shelf::Sessions, &id.0.to_string())
            .await;
        if app.has_left(&keep) {
            return;
        }
        match found {
            Ok(log) => {
                let session = log.and_then(|log| Session::replay(log.events()).ok());
                if session.is_none() {
                    app.complain("This session is not stored here, or cannot be read.");
                }
                app.model.update(|model| model.opened = session);
            }
            Err(error) => app.complain(error.to_string()),
        }
    });
}

fn record(model: &Model, id: SessionId) -> Option<SessionRecord> {
    let session = model
        .opened
        .as_ref()
        .filter(|session| session.state().began.session == id)?;
    SessionRecord::from_events(session.events()).ok()
}

/// One session of the ledger.
#[component]
pub fn SessionPlace(id: SessionId) -> impl IntoView {
    let app = stanchion();
    open(app, id);
    let record = app.of(move |model| record(model, id));
    let shown = app.of(|model| (model.unit(), model.curve()));
    let predicted = app.of(move |model| {
        let heading = model.heading(id);
        heading.and_then(Heading::predicted_and_taken)
    });
    let correcting = RwSignal::new(None::<SetKey>);
    vec![
        dynamic(move || match record.get() {
            Some(record) => look(app, &record, shown.get(), predicted.get(), correcting),
            None => ().into_any(),
        }),
        dynamic(move || match correcting.get() {
            Some(key) => correction(app, id, key, Callback::new(move |()| correcting.set(None))),
            None => ().into_any(),
        }),
    ]
}

fn look(
    app: Stanchion,
    record: &SessionRecord,
    (unit, curve): (Unit, Curve),
    took: Option<String>,
    correcting: RwSignal<Option<SetKey>>,
) -> AnyView {
    let facts = format!(
        "{} · {} · {} volume load of work sets{}",
        clock((record.duration_ms / 1000) as i64),
        counted(record.lines().count(), "set"),
        Volume::of(record).work.shown(unit),
        if record.light { " · light week" } else { "" },
    );
    let mut inside = vec![
        way(Place::Ledger.href(), "All sessions"),
        h1(record.sheet_name.to_string()),
        quiet(long_day_and_time(record.began)),
        line("", "facts", facts),
        predicted(took),
    ];
    let note = record.note.as_ref();
    inside.extend(note.map(|note| words("because", note.as_str().to_owned())));
    for block in record.blocks.iter().filter(|block| !block.lines.is_empty()) {
        let basis = &block.block.basis;
        let why = unfed_of(record, block, curve);
        let sets = block.lines.iter().zip(why).map(|(set, why)| {
            let key = set.key;
            let correct = Callback::new(move |()| correcting.set(Some(key)));
            let (done, facts) = set_words(set, basis, unit);
            let mut inside = vec![row_opener("set", done, facts, correct)];
            inside.extend(why.map(|why| line("quiet", "unfed", why.to_string())));
            inside.into_any()
        });
        let name = block.block.exercise.name.to_string();
        inside.push(section(
            None,
            name,
            vec![list("rows", None, sets.collect())],
        ));
    }
    inside.push(rating(app, record.rpe));
    inside.push(removal(app, record));
    page("session-record", inside)
}

/// One set: what was done, and the facts about it.
fn set_words(line: &DoneLine, basis: &LoadBasis, unit: Unit) -> (String, String) {
    let done = Done {
        load: line.load,
        amount: line.amount.clone(),
        reserve: line.reserve,
    };
    let mut facts = vec![line.kind.name().to_owned()];
    if let Some(reserve) = line.reserve {
        facts.push(format!("{reserve} in reserve"));
    }
    if let Some(rest) = line.rest_taken {
        facts.push(format!("rest {}", clock(i64::from(rest))));
    }
    if let Some(proposed) = line
        .proposed
        .filter(|proposed| Some(*proposed) != line.load)
    {
        facts.push(format!("proposed was {}", proposed.shown(unit)));
    }
    for (n, earlier) in line.earlier.iter().enumerate() {
        let word = if n == 0 {
            "first logged as"
        } else {
            "then corrected to"
        };
        facts.push(format!("{word} {}", logged_line(earlier, basis, unit)));
    }
    (logged_line(&done, basis, unit), facts.join(" · "))
}

/// The way to remove the session, with what goes.
fn removal(app: Stanchion, record: &SessionRecord) -> AnyView {
    let id = record.session;
    let goes = format!(
        "What goes: {}, with notes and corrections, and what the next loads learn from them. An import does not \
         bring it back. Undo is in the ledger until this page is left.",
        counted(record.lines().count(), "set"),
    );
    let sure = Callback::new(move |()| remove_session(app, id));
    let remove = sure_button(
        "session-remove",
        "Remove this session",
        "Yes, remove it",
        sure,
    );
    section(None, "Remove", vec![quiet(goes), remove])
}

/// The rating, given or still to be given.
fn rating(app: Stanchion, rpe: Option<Rpe>) -> AnyView {
    let labels = (0..=10).map(|n: i64| (n.to_string(), rpe_word(n)));
    let given = rpe.map(|rpe| i64::from(rpe.get()));
    let inside = toggles_of("rpe", labels, Signal::stored(given), move |n| {
        app.correct(What::Rated {
            rpe: Rpe::saturating(n),
        });
    });
    let inside = choices("choices", "session RPE", inside);
    section(None, "Session RPE", vec![inside])
}
