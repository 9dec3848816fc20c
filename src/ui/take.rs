//! Taking in what an import brought: all of it in one write.

use super::keep::{put, put_json, sheet_key};
use super::model::Model;
use crate::device::db::Write;
use crate::ledger::{Heading, SessionRecord, newest_first, performances_of, update};
use crate::order;
use crate::session::SessionId;
use crate::store::{Merged, Shelf};

/// The writes that keep what is new in `merged`, with headings and summaries made anew for its sessions.
///
/// Of two records with one id that differ, the one that is not kept is set aside, never thrown away.
///
/// The session `running` on the floor stays there: its events are rows of their own.
pub fn writes(model: &Model, merged: &Merged, running: Option<SessionId>) -> Vec<Write> {
    let news = &merged.news;
    let mut writes = Vec::new();
    writes.extend(merged.summary.conflicts.iter().map(|conflict| {
        let key = format!("{} {}", conflict.what, conflict.id);
        put_json(Shelf::Aside, &key, &conflict.dropped)
    }));
    writes.extend(
        news.lifter
            .iter()
            .map(|record| put(Shelf::Lifters, &record.version.to_string(), record)),
    );
    writes.extend(
        news.kit
            .iter()
            .map(|record| put(Shelf::Kits, &record.version.to_string(), record)),
    );
    writes.extend(
        news.body_mass
            .iter()
            .map(|record| put(Shelf::BodyMass, &record.id.to_string(), record)),
    );
    writes.extend(
        news.exercises
            .iter()
            .map(|record| put(Shelf::Exercises, &record.version().to_string(), record)),
    );
    writes.extend(
        news.programmes
            .iter()
            .map(|record| put(Shelf::Programmes, &record.version().to_string(), record)),
    );
    writes.extend(
        news.sheets
            .iter()
            .map(|record| put(Shelf::Sheets, &sheet_key(record), record)),
    );
    let mut summaries = model.summaries.clone();
    let mut records = Vec::new();
    let mut touched = std::collections::BTreeSet::new();
    for (id, log) in &news.sessions {
        let events = log.events();
        if running == Some(*id) {
            writes.extend(
                events
                    .iter()
                    .map(|event| put(Shelf::Events, &event.id.0.to_string(), event)),
            );
            continue;
        }
        let key = id.0.to_string();
        writes.push(put_json(Shelf::Sessions, &key, &log.to_json()));
        if let Ok(record) = SessionRecord::from_events(&events) {
            update(&mut summaries, &record);
            touched.extend(
                performances_of(&record)
                    .into_iter()
                    .map(|(exercise, _)| exercise),
            );
            records.push(record);
        }
    }
    // The oldest first: what a session shows of the lifter's pace counts for those after it.
    order::by_key(&mut records, |record| (record.began, record.session));
    let mut headings = model.headings.clone();
    for record in records {
        let heading = Heading::of(&record, &headings);
        let key = record.session.0.to_string();
        writes.push(put(Shelf::Headings, &key, &heading));
        headings.retain(|other| other.session != heading.session);
        headings.push(heading);
        newest_first(&mut headings);
    }
    for exercise in touched {
        if let Some(summary) = summaries.get(&exercise) {
            writes.push(put(Shelf::Summaries, exercise.as_str(), summary));
        }
    }
    writes
}
