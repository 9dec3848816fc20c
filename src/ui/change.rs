//! From one state of what is kept to another: all of it in one write.

use super::model::Model;
use crate::device::db::Write;
use crate::ledger::{Heading, SessionRecord, newest_first, summaries_of};
use crate::order;
use crate::session::SessionId;
use crate::store::{Archive, Change, Shelf, changes};
use crate::ui::keep::{put, put_json};

/// The write that takes a row away.
pub fn delete(shelf: Shelf, key: &str) -> Write {
    Write::Delete {
        shelf: shelf.name().to_owned(),
        key: key.to_owned(),
    }
}

/// The writes that make `to` of `from`, with headings and summaries made anew where sessions changed.
///
/// The session `running` on the floor stays there: its events are rows of their own.
pub fn writes(
    model: &Model,
    from: &Archive,
    to: &Archive,
    running: Option<SessionId>,
) -> Vec<Write> {
    let rows = changes(from, to, running);
    let sessions_change = rows.iter().any(|row| row.shelf == Shelf::Sessions);
    let mut writes: Vec<Write> = rows.into_iter().map(write).collect();
    if sessions_change {
        writes.extend(derived(model, from, to, running));
    }
    writes
}

fn write(Change { shelf, key, json }: Change) -> Write {
    match json {
        Some(json) => put_json(shelf, &key, &json),
        None => delete(shelf, &key),
    }
}

/// Headings and summaries of `to`, where they are not known so.
fn derived(model: &Model, from: &Archive, to: &Archive, running: Option<SessionId>) -> Vec<Write> {
    let logs = to.sessions.values().filter(|log| running != Some(log.id()));
    let mut records: Vec<SessionRecord> = logs
        .filter_map(|log| SessionRecord::from_events(&log.events()).ok())
        .collect();
    // The oldest first: what a session shows of the lifter's pace counts for those after it.
    order::by_key(&mut records, |record| (record.began, record.session));
    let mut writes = Vec::new();
    // A session that cannot be read keeps the heading that it has.
    let stays = |heading: &&Heading| !to.sessions.contains_key(&heading.session);
    let gone = |heading: &&Heading| from.sessions.contains_key(&heading.session);
    let mut headings: Vec<Heading> = Vec::new();
    for heading in model.headings.iter().filter(stays) {
        if gone(&heading) {
            writes.push(delete(Shelf::Headings, &heading.session.0.to_string()));
        } else {
            headings.push(heading.clone());
        }
    }
    newest_first(&mut headings);
    for record in &records {
        let heading = Heading::of(record, &headings);
        if model.heading(record.session) != Some(&heading) {
            let key = record.session.0.to_string();
            writes.push(put(Shelf::Headings, &key, &heading));
        }
        let place = headings.partition_point(|other| {
            (other.began, other.session) > (heading.began, heading.session)
        });
        headings.insert(place, heading);
    }
    let summaries = summaries_of(&records);
    for (exercise, summary) in &summaries {
        if model.summaries.get(exercise) != Some(summary) {
            writes.push(put(Shelf::Summaries, exercise.as_str(), summary));
        }
    }
    let gone = model
        .summaries
        .keys()
        .filter(|exercise| !summaries.contains_key(*exercise));
    writes.extend(gone.map(|exercise| delete(Shelf::Summaries, exercise.as_str())));
    writes
}
