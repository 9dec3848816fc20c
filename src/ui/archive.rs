//! An ended session goes into the ledger.

use super::keep::{put, put_json};
use super::model::Model;
use crate::device::db::Write;
use crate::ledger::{
    ExerciseSummary, Heading, SessionRecord, newest_first, performances_of, update,
};
use crate::session::{Session, SessionId};
use crate::sheet::ExerciseId;
use crate::store::{SessionLog, Shelf};
use crate::ui::change::delete;

/// Takes an ended session into the ledger: its record, its heading and what it says of its exercises, and its rows of
/// the floor away, all in one write.
pub fn archive(model: &mut Model, session: &Session) -> Vec<Write> {
    let Ok(record) = SessionRecord::from_events(session.events()) else {
        return Vec::new();
    };
    let key = record.session.0.to_string();
    let heading = Heading::of(&record, &model.headings);
    let Ok(log) = SessionLog::new(record.session, session.events().iter().cloned()) else {
        return Vec::new();
    };
    let mut writes = vec![
        put_json(Shelf::Sessions, &key, &log.to_json()),
        put(Shelf::Headings, &key, &heading),
    ];
    if model
        .session
        .as_ref()
        .is_some_and(|own| own.state().began.session == record.session)
    {
        // Each by its key: a row that could not be read stays where it is.
        writes.extend(session.events().iter().map(|event| Write::Delete {
            shelf: Shelf::Events.name().to_owned(),
            key: event.id.0.to_string(),
        }));
    }
    model
        .headings
        .retain(|other| other.session != heading.session);
    model.headings.push(heading);
    newest_first(&mut model.headings);
    // What it said before of an exercise that it says nothing of now is taken back too.
    let mut touched = said_of(model, record.session);
    update(&mut model.summaries, &record);
    let said = performances_of(&record).into_iter();
    touched.extend(said.map(|(exercise, _)| exercise));
    writes.extend(summary_writes(model, &touched));
    writes
}

/// The exercises of which the session is in the summary.
pub fn said_of(model: &Model, session: SessionId) -> Vec<ExerciseId> {
    let of_session = |summary: &&ExerciseSummary| {
        let mut performances = summary.performances.iter();
        performances.any(|performance| performance.session == session.0)
    };
    let summaries = model.summaries.values().filter(of_session);
    summaries.map(|summary| summary.exercise.clone()).collect()
}

/// The writes that keep the summaries of these exercises as they are now.
pub fn summary_writes(model: &Model, exercises: &[ExerciseId]) -> Vec<Write> {
    let write = |exercise: &ExerciseId| match model.summaries.get(exercise) {
        Some(summary) => put(Shelf::Summaries, exercise.as_str(), summary),
        None => delete(Shelf::Summaries, exercise.as_str()),
    };
    exercises.iter().map(write).collect()
}
