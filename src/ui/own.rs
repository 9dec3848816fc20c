//! What the lifter names and plans, and how it is kept: exercises and programmes.

use super::keep::{put, sheet_key};
use super::stanchion::Stanchion;
use crate::device::clock;
use crate::device::db::Write;
use crate::exercises::{KnownExercise, OwnExercise, renamed};
use crate::programme::{LightWeek, Plan, Programme, ProgrammeId};
use crate::sheet::{Exercise, ExerciseId, Line, SheetVersion};
use crate::store::{ExerciseRecord, ProgrammeRecord, Removed, SheetRecord, Shelf};
use crate::words::t;

impl Stanchion {
    /// Keeps what is known of an exercise, and calls it by its name on every sheet that holds it. False where this tab
    /// may not write.
    pub fn keep_exercise(self, own: OwnExercise) -> bool {
        if !self.may_write() {
            return false;
        }
        let record = ExerciseRecord::Written(Box::new(own.clone()));
        let mut writes = vec![exercise_write(&record)];
        writes.extend(self.call(&own.exercise()));
        self.model.update(|model| {
            model.exercises = std::mem::take(&mut model.exercises).with(own);
        });
        self.write(writes);
        true
    }

    /// Calls an exercise something else; history goes by its id and stays.
    pub fn rename_exercise(self, known: KnownExercise, name: Line) -> bool {
        self.keep_exercise(OwnExercise {
            id: known.id(),
            version: self.id(),
            written: clock::wall(),
            name,
            pattern: known.pattern(),
            equipment: known.equipment(),
            main: known.main(),
            also: known.also(),
            basis: known.basis(),
            sides: known.sides(),
            cautions: known.cautions(),
        })
    }

    /// Takes one's own exercise away. A listed one of its id is itself again, on the sheets too; sheets and history of
    /// any other stay as they are.
    pub fn remove_exercise(self, id: ExerciseId) {
        if !self.may_write() {
            return;
        }
        let removed = Removed::new(id.clone(), self.id(), clock::wall());
        let mut writes = vec![exercise_write(&ExerciseRecord::Removed(removed))];
        self.model.update(|model| {
            model.exercises = std::mem::take(&mut model.exercises).without(&id);
        });
        let listed = self.model.with_untracked(|model| {
            let known = model.exercises.of(id.as_str());
            known.map(KnownExercise::exercise)
        });
        writes.extend(listed.iter().flat_map(|exercise| self.call(exercise)));
        self.write(writes);
    }

    /// Calls `exercise` by its name on every sheet, and gives what is to be written: a new version of each.
    fn call(self, exercise: &Exercise) -> Vec<Write> {
        let mut sheets = self.model.with_untracked(|model| model.sheets.clone());
        let mut writes = Vec::new();
        for sheet in &mut sheets {
            let Some(mut other) = renamed(sheet, exercise) else {
                continue;
            };
            other.version = SheetVersion(self.id());
            other.written = clock::wall();
            *sheet = other.clone();
            let record = SheetRecord::Written(Box::new(other));
            writes.push(put(Shelf::Sheets, &sheet_key(&record), &record));
        }
        self.model.update(|model| {
            model.sheets = sheets;
            // One that is brought back comes under the new name.
            let removed = model.removed.as_ref();
            if let Some(other) = removed.and_then(|sheet| renamed(sheet, exercise)) {
                model.removed = Some(other);
            }
        });
        self.call_in_drafts(exercise);
        writes
    }

    /// Calls `exercise` by its name on the sheets that are being written, so that keeping one does not bring the old
    /// name back.
    fn call_in_drafts(self, exercise: &Exercise) {
        let drafts = self.model.with_untracked(|model| {
            let drafts = model.drafts.iter();
            let others = drafts.filter_map(|(id, draft)| {
                let sheet = renamed(draft.sheet(), exercise)?;
                Some((*id, sheet, draft.is_changed()))
            });
            others.collect::<Vec<_>>()
        });
        for (id, sheet, is_changed) in drafts {
            if !is_changed {
                // It was only opened: it begins again from the sheet.
                self.model.update(|model| _ = model.drafts.remove(&id));
                continue;
            }
            let changed = self.change_draft(id, &mut |draft| {
                draft.replace(t("the name of an exercise"), sheet.clone());
                Ok(())
            });
            if let Err(why) = changed {
                self.complain(why);
            }
        }
    }

    /// Keeps a programme: another version of the one that is followed, or the first. False where this tab may not
    /// write.
    pub fn keep_programme(self, name: Line, plan: Plan, light: Option<LightWeek>) -> bool {
        if !self.may_write() {
            return false;
        }
        let known = self
            .model
            .with_untracked(|model| model.programme().map(|programme| programme.id));
        let programme = Programme {
            id: known.unwrap_or_else(|| ProgrammeId(self.id())),
            version: self.id(),
            written: clock::wall(),
            name,
            plan,
            light,
        };
        let record = ProgrammeRecord::Written(Box::new(programme.clone()));
        self.model.update(|model| {
            model.programmes.retain(|other| other.id != programme.id);
            model.programmes.push(programme);
        });
        self.write(vec![programme_write(&record)]);
        true
    }

    /// Takes the programme away that is followed; its sheets stay.
    pub fn remove_programme(self) {
        if !self.may_write() {
            return;
        }
        let mut followed = None;
        self.model.update(|model| followed = model.programmes.pop());
        if let Some(programme) = followed {
            let removed = Removed::new(programme.id, self.id(), clock::wall());
            self.write(vec![programme_write(&ProgrammeRecord::Removed(removed))]);
        }
    }
}

fn exercise_write(record: &ExerciseRecord) -> Write {
    put(Shelf::Exercises, &record.version().to_string(), record)
}

fn programme_write(record: &ProgrammeRecord) -> Write {
    put(Shelf::Programmes, &record.version().to_string(), record)
}
