//! One session: every set as it was done, and what can still be done with it.

use super::changed::Changing;
use super::correct::{Open, correction, forgotten_panel};
use super::notes::note_panel;
use super::sets::{done_words, facts_of, proposed};
use crate::ledger::{BlockRecord, Heading, SessionRecord, Volume, unfed_of};
use crate::say;
use crate::session::{RESUME_MS_MAX, Session, SessionId, What};
use crate::sheet::Note;
use crate::store::{SessionLog, Shelf};
use crate::strength::Unfed;
use crate::ui::away::remove_session;
use crate::ui::floor::{predicted, rpe_word};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    button, choices, dynamic, el, h1, line, list, page, quiet, row_opener, section, sure_button,
    toggles_of, way,
};
use crate::ui::place::Place;
use crate::ui::reading::heading_of;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, moment, stanchion};
use crate::units::{Rpe, Unit, long_day_and_time, minutes_said};
use crate::words::{many, t};
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
                let began = session.as_ref().map(|session| session.state().since.at);
                let heading = match began {
                    Some(began) => heading_of(&app.keep(), began, id).await.unwrap_or_default(),
                    None => None,
                };
                match session.as_ref().and_then(|it| it.events().last()) {
                    // What is added to it comes after all that it holds, whatever the clock says.
                    Some(newest) => app.see_id(newest.id.0),
                    None => app.complain(t("This session is not stored here, or cannot be read.")),
                }
                app.model.update(|model| {
                    model.opened = session;
                    model.opened_heading = heading;
                });
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
pub fn session_place(id: SessionId) -> AnyView {
    let app = stanchion();
    open(app, id);
    let record = app.of(move |model| record(model, id));
    let unit = app.of(Model::unit);
    let predicted = app.of(move |model| {
        let heading = model.heading(id);
        heading.and_then(Heading::predicted_and_taken)
    });
    let changing = Changing::new(app, id);
    let opened = Live::new(None::<Open>);
    // Of another one's session nothing can be changed.
    let hands = app
        .model
        .with_untracked(|model| model.looks_at.is_none())
        .then_some(opened);
    let close = Callback::new(move |()| opened.set(None));
    let inside = dynamic(move || match record.get() {
        Some(record) => look(changing, &record, unit.get(), predicted.get(), hands),
        None => ().into_any(),
    });
    vec![
        inside,
        dynamic(move || match opened.get() {
            Some(Open::Note) => note_panel(changing, close),
            Some(Open::Set(key)) => correction(changing, key, close),
            Some(Open::Forgotten(block)) => forgotten_panel(changing, block, close),
            None => ().into_any(),
        }),
    ]
    .into_any()
}

fn look(
    changing: Changing,
    record: &SessionRecord,
    unit: Unit,
    took: Option<String>,
    hands: Hands,
) -> AnyView {
    let app = changing.app;
    let mut facts = say!(
        "{time} · {sets} · {volume} volume load of work sets",
        time = minutes_said(record.minutes()),
        sets = record.sets_said(),
        volume = Volume::of(record).work.shown(unit),
    );
    if record.light {
        facts.push_str(" · ");
        facts.push_str(t("light week"));
    }
    let mut inside = vec![
        way(Place::Ledger.href(), t("Ledger")),
        h1(record.sheet_name.to_string()),
        quiet(long_day_and_time(record.began)),
        line("", "facts", facts),
        predicted(took),
        changing.view(),
    ];
    if hands.is_some() {
        inside.push(going_on(app, record));
    }
    inside.push(note(record.note.as_ref(), hands));
    for block in record.blocks.iter().filter(|block| !block.lines.is_empty()) {
        inside.push(block_view(record, block, unit, hands));
    }
    inside.push(not_done(record, hands));
    if hands.is_some() {
        // How hard nothing was is not asked.
        if record.lines().next().is_some() {
            inside.push(rating(changing, record.rpe));
        }
        inside.extend([again(app), removal(app, record)]);
    } else {
        inside.extend(record.rpe.map(|rpe| {
            let said = format!("{rpe}: {word}", word = rpe_word(i64::from(rpe.get())));
            section(None, t("Session RPE"), vec![quiet(said)])
        }));
    }
    page("session-record", inside)
}

/// What opens the panels that change a session; none where it is another one's.
type Hands = Option<Live<Option<Open>>>;

/// A row that opens a panel, or only tells where nothing can be changed.
fn row_of(part: &'static str, strong: String, after: String, hands: Hands, open: Open) -> AnyView {
    match hands {
        Some(opened) => {
            let open = Callback::new(move |()| opened.set(Some(open)));
            row_opener(part, strong, after, open)
        }
        None => el("div")
            .class("row")
            .part(part)
            .child(el("strong").child(strong))
            .child(el("span").class("quiet").child(after))
            .view(),
    }
}

/// The note on the session, and the way to write it.
fn note(note: Option<&Note>, hands: Hands) -> AnyView {
    let word = if note.is_some() {
        t("Change the note")
    } else {
        t("Write a note")
    };
    let said = note.map(|note| line("said", "session-note", note.as_str().to_owned()));
    let write = hands.map(|opened| {
        button("plain", "annotate", word, move || {
            opened.set(Some(Open::Note));
        })
    });
    (said, write).into_any()
}

/// What was done of a block, set by set.
fn block_view(record: &SessionRecord, block: &BlockRecord, unit: Unit, hands: Hands) -> AnyView {
    let basis = &block.block.basis;
    let mut why = unfed_of(record, block);
    // What holds for every set of a block is said once, above them.
    let of_all = why.first().copied().flatten();
    let of_all = of_all.filter(|it| why.len() > 1 && why.iter().all(|why| *why == Some(*it)));
    if of_all.is_some() {
        why.fill(None);
    }
    let sets = block.lines.iter().zip(why).map(|(set, why)| {
        let key = set.key;
        let (done, facts) = (done_words(set, basis, unit), facts_of(set, basis, unit));
        let mut inside = vec![row_of("set", done, facts, hands, Open::Set(key))];
        let note = set.note.as_ref().map(|note| note.as_str().to_owned());
        inside.extend(note.map(|note| line("said", "set-note", note)));
        inside.extend(why.map(unfed));
        inside.into_any()
    });
    let id = block.block.id;
    let because = proposed(block, unit).map(|because| line("because", "proposed", because));
    let inside = vec![
        because.into_any(),
        of_all.map(unfed).into_any(),
        list("rows", None, sets.collect()),
        hands
            .map(|opened| {
                let add = t("Add a set that was forgotten");
                button("plain", "forgotten", add, move || {
                    opened.set(Some(Open::Forgotten(id)));
                })
            })
            .into_any(),
        way(
            Place::History(block.block.exercise.id.clone()).href(),
            t("This exercise over time"),
        ),
    ];
    section(None, block.block.exercise.said(), inside)
}

/// Why what was done tells the estimate nothing.
fn unfed(why: Unfed) -> AnyView {
    line("quiet", "unfed", why.to_string())
}

/// The blocks of the sheet of which nothing was done, each with the way to add a set of it.
fn not_done(record: &SessionRecord, hands: Hands) -> AnyView {
    let left = record.blocks.iter().filter(|block| block.lines.is_empty());
    let items: Vec<AnyView> = left
        .map(|block| {
            let id = block.block.id;
            let name = block.block.exercise.said();
            let add = hands.map_or("", |_| t("add a set that was done"));
            row_of("not-done", name, add.to_owned(), hands, Open::Forgotten(id))
        })
        .collect();
    if items.is_empty() {
        return ().into_any();
    }
    section(None, t("Not done"), vec![list("rows", None, items)])
}

/// The way back onto the floor, within three hours of the end.
fn going_on(app: Stanchion, record: &SessionRecord) -> AnyView {
    let may = app.model.with_untracked(|model| {
        let opened = model.opened.as_ref();
        opened.is_some_and(|session| session.may_resume(&moment()).is_ok()) && !model.in_session()
    });
    let Some(ended) = record.ended.filter(|_| may) else {
        return ().into_any();
    };
    let until = ended + chrono::TimeDelta::milliseconds(RESUME_MS_MAX as i64);
    let said = say!(
        "Until {time} it can go on where it stopped. The time between does not count as trained.",
        time = crate::units::time(until)
    );
    let resume = button("wide", "resume", t("Go on with this session"), move || {
        app.resume();
    });
    vec![resume, quiet(said)].into_any()
}

/// The way to do the same once more.
fn again(app: Stanchion) -> AnyView {
    let said = t(
        "A new sheet with its exercises, sets, reps and loads as they were done; you can change it before you \
                keep it.",
    );
    let make = button(
        "wide",
        "again",
        t("Do this again: make it a sheet"),
        move || {
            app.sheet_again();
        },
    );
    section(None, t("Again"), vec![quiet(said), make])
}

/// The way to remove the session, with what goes.
fn removal(app: Stanchion, record: &SessionRecord) -> AnyView {
    let id = record.session;
    let goes = say!(
        "What goes: {sets}, with notes and corrections, and what the next loads learn from them. An import does not \
         bring it back. Undo is in the ledger until this page is left.",
        sets = many(record.lines().count(), "{n} set", "{n} sets"),
    );
    let sure = Callback::new(move |()| remove_session(app, id));
    let remove = sure_button(
        "session-remove",
        t("Remove this session"),
        t("Yes, remove it"),
        sure,
    );
    section(None, t("Remove"), vec![quiet(goes), remove])
}

/// The rating, given or still to be given.
fn rating(changing: Changing, rpe: Option<Rpe>) -> AnyView {
    let labels = (0..=10).map(|n: i64| (n.to_string(), rpe_word(n)));
    let given = rpe.map(|rpe| i64::from(rpe.get()));
    let inside = toggles_of("rpe", labels, Seen::fixed(given), move |n| {
        let rpe = Rpe::saturating(n);
        // Refused, it stays as it was: a tap is soon made again.
        let _ = changing.make(t("The rating is kept."), vec![What::Rated { rpe }]);
    });
    let inside = choices("choices", t("session RPE"), inside);
    section(None, t("Session RPE"), vec![inside])
}
