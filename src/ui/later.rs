//! What is read at the start and looked through when the first screen is painted: the choice of a sheet shows nothing of it
//! but what may be offered beside, as a light session. Whoever needs more completes the model first.

use super::model::{HEADINGS_NEWEST, Model, Stage};
use super::place::Place;
use super::stanchion::Stanchion;
use super::start::mend;
use crate::device::db::Answer;
use crate::device::prefs;
use crate::draft::Draft;
use crate::ledger::{ExerciseSummary, Heading, newest_first};
use crate::say;
use crate::sheet::Sheet;
use crate::store::{
    Archive, BodyMassRecord, BodyRecord, ExerciseRecord, KitRecord, Shelf, Unreadable, aside_line,
    body_entries, seal, shelved,
};
use crate::words::t;
use leptos::prelude::*;
use serde::de::DeserializeOwned;

/// The setting with the mark of what was said to be unreadable.
const TOLD: &str = "told";

/// The setting with the key of the oldest of the newest headings: where the next start begins to read them. Lost, or wrong
/// since sessions went, it costs a start some time.
pub const NEWEST: &str = "newest";

/// Form and checksum of a sealed text.
const MARK_CHARS: usize = 10;

/// Rows that could not be read.
pub type Lost = Vec<(Shelf, Unreadable)>;

/// What was read and not looked through.
pub struct Later {
    /// All versions of the kit.
    pub kits: Answer,
    /// All body masses.
    pub body_mass: Answer,
    /// All that was measured or corrected besides.
    pub body: Answer,
    /// All versions of one's own exercises.
    pub exercises: Answer,
    /// What is being written.
    pub drafts: Answer,
    /// What was set aside.
    pub aside: Answer,
    /// The newest headings.
    pub headings: Answer,
    /// All summaries.
    pub summaries: Answer,
    /// Rows that could not be read among those that were looked through.
    pub lost: Lost,
    /// Events of a session without a beginning, as lines of what is set aside.
    pub strays: Vec<String>,
}

impl Later {
    /// Whether nothing at all was read: there is no row, and none was spoiled.
    pub fn is_empty(&self) -> bool {
        let read = [
            &self.kits,
            &self.body_mass,
            &self.body,
            &self.exercises,
            &self.drafts,
            &self.aside,
            &self.headings,
            &self.summaries,
        ];
        self.lost.is_empty()
            && self.strays.is_empty()
            && read.into_iter().all(|rows| rows.count() == 0)
    }
}

/// Reads the rows of a shelf; those that cannot be read go to `lost`.
pub fn records<T: DeserializeOwned>(rows: Answer, shelf: Shelf, lost: &mut Lost) -> Vec<T> {
    let read = shelved(rows.rows());
    lost.extend(read.unreadable.into_iter().map(|row| (shelf, row)));
    read.records
}

/// Whether the choice of a sheet comes first, and for the only lifter of this phone. What a programme has come next
/// follows from the newest sessions, which are read later.
pub fn only_chooses(model: &Model) -> bool {
    model.stage == Stage::Opening
        && model.place == Place::Floor
        && model.session.is_none()
        && model.other.is_none()
        && model.programmes.is_empty()
        && model.people.here().next().is_none()
}

impl Stanchion {
    /// Looks through what was read and not looked through yet, if there is any. False where a row of the books cannot be
    /// read: then some of what is known of the exercises is missing.
    pub fn complete(self) -> bool {
        let Some(later) = self.later.try_update_value(Option::take).flatten() else {
            return true;
        };
        let mut lost = later.lost;
        let kits: Vec<KitRecord> = records(later.kits, Shelf::Kits, &mut lost);
        let body_mass: Vec<BodyMassRecord> = records(later.body_mass, Shelf::BodyMass, &mut lost);
        let body: Vec<BodyRecord> = records(later.body, Shelf::Body, &mut lost);
        let exercises: Vec<ExerciseRecord> = records(later.exercises, Shelf::Exercises, &mut lost);
        let drafts: Vec<Sheet> = records(later.drafts, Shelf::Drafts, &mut lost);
        let headings = shelved::<Heading>(self.newest(later.headings.rows()));
        let summaries = shelved::<ExerciseSummary>(later.summaries.rows());
        // Later ids are greater than all stored ones, even if the clock was set back since.
        for id in kits
            .iter()
            .map(|record| record.version)
            .chain(exercises.iter().map(ExerciseRecord::version))
            .chain(body.iter().map(|record| record.version))
        {
            self.see_id(id);
        }
        let mut named = Archive::default();
        for record in exercises {
            named.exercises.put(record);
        }
        self.model.update(|model| {
            let newest_kit = kits.into_iter().max_by_key(|record| record.version);
            model.kit = newest_kit
                .map(|record| record.kit.into())
                .unwrap_or_default();
            model.body = body_entries(&body_mass, &body);
            model.exercises = named.catalogue();
            let begun = drafts
                .into_iter()
                .map(|sheet| (sheet.id, Draft::resumed(sheet)));
            model.drafts = begun.collect();
            model.headings = headings.records;
            newest_first(&mut model.headings);
            for summary in summaries.records {
                model.summaries.insert(summary.exercise.clone(), summary);
            }
        });
        let newer = lost.iter().filter(|(_, row)| row.newer).count();
        let broken = lost.len() - newer;
        self.model.update(|model| model.aside = later.strays);
        self.set_aside(lost);
        let aside = self.model.with_untracked(|model| model.aside.clone());
        tell(self, &aside, broken, newer);
        let aside = later.aside.rows().into_iter();
        let aside: Vec<String> = aside
            .map(|(key, row)| aside_line(Shelf::Aside, &key, &row))
            .collect();
        if !aside.is_empty() {
            self.model.update(|model| model.aside.extend(aside));
        }
        headings.unreadable.is_empty() && summaries.unreadable.is_empty()
    }

    /// The newest of these headings, and for the next start the key of the first of them.
    fn newest(self, mut rows: Vec<(String, String)>) -> Vec<(String, String)> {
        let surplus = rows.len().saturating_sub(HEADINGS_NEWEST);
        rows.drain(..surplus);
        let first = rows.first().filter(|_| rows.len() == HEADINGS_NEWEST);
        if let Some((key, _)) = first {
            let newest = self.model.with_untracked(|model| model.pref(NEWEST));
            if prefs::get::<String>(&newest).as_ref() != Some(key) {
                // Not kept, the next start walks there.
                let _ = prefs::set(&newest, key);
            }
        }
        rows
    }

    /// Completes the model, then does `then`: at once, but where the books have to be rebuilt before.
    pub fn completed(self, then: impl FnOnce() + 'static) {
        if self.complete() {
            return then();
        }
        self.change(async move {
            if let Err(error) = mend(self).await {
                self.complain(error.to_string());
            }
            then();
        });
    }
}

/// Says once what could not be read: again only when it is something else.
fn tell(app: Stanchion, aside: &[String], broken: usize, newer: usize) {
    let mark: String = seal(&aside.join("\n")).chars().take(MARK_CHARS).collect();
    let told = app.model.with_untracked(|model| model.pref(TOLD));
    if aside.is_empty() || prefs::get::<String>(&told).as_ref() == Some(&mark) {
        return;
    }
    // Not kept, it is said again at the next start.
    let _ = prefs::set(&told, &mark);
    let broken = aside.len().saturating_sub(newer).max(broken);
    let mut said = String::new();
    if broken > 0 {
        said.push_str(&say!(
            "{broken} of the stored records could not be read.",
            broken,
        ));
        said.push(' ');
    }
    if newer > 0 {
        said.push_str(&say!(
            "{newer} of the stored records were written by a newer version: close all tabs of this page and open it again to get that version.",
            newer,
        ));
        said.push(' ');
    }
    said.push_str(t(
        "They stay as they are; in Kit they can be saved to a file.",
    ));
    app.complain(said);
}
