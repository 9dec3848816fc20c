//! What is typed and tapped of an exercise, before it is kept.

use crate::exercises::{Catalogue, KnownExercise, Muscle, Muscles, OwnExercise};
use crate::say;
use crate::sheet::{Equipment, ExerciseId, LoadBasis, Pattern, SideMode};
use crate::ui::parts::{read_lines, read_name, under_each_other};
use crate::words::{decimal, t};
use chrono::{DateTime, FixedOffset};
use uuid::Uuid;

/// How many load bases there are.
pub const BASES: i64 = 6;

/// The word of a load base, by its place in [`Draft::basis`].
pub fn base(at: i64) -> &'static str {
    t(match at {
        0 => "load alone",
        1 => "body + load",
        2 => "body − assistance",
        SHARE => "share of body",
        BAND => "band",
        _ => "no load",
    })
}
/// The base that needs a share.
pub const SHARE: i64 = 3;
/// The base that needs a label.
pub const BAND: i64 = 4;

/// What is typed and tapped so far.
#[derive(Clone, PartialEq)]
pub struct Draft {
    /// Name.
    pub name: String,
    /// Movement pattern.
    pub pattern: Pattern,
    /// What the load is made of.
    pub equipment: Equipment,
    /// Main muscles.
    pub main: Muscles,
    /// Muscles that help.
    pub also: Muscles,
    /// Place among the bases ([`base`]).
    pub basis: i64,
    /// Share of the body mass, as typed.
    pub share: String,
    /// Label of the band, as typed.
    pub band: String,
    /// How the sides share a set.
    pub sides: SideMode,
    /// Caution lines, as typed.
    pub cautions: String,
}

impl Draft {
    /// Nothing said yet: one joint and any load, as for an exercise that a line names and nobody knows.
    pub fn new() -> Draft {
        Draft {
            name: String::new(),
            pattern: Pattern::SingleJoint,
            equipment: Equipment::Other,
            main: Muscles::default(),
            also: Muscles::default(),
            basis: 0,
            share: "100 %".to_owned(),
            band: t("band").to_owned(),
            sides: SideMode::Both,
            cautions: String::new(),
        }
    }

    /// What is known of an exercise.
    pub fn of(known: KnownExercise) -> Draft {
        let mut draft = Draft {
            name: known.name().to_owned(),
            pattern: known.pattern(),
            equipment: known.equipment(),
            main: known.main(),
            also: known.also(),
            sides: known.sides(),
            ..Draft::new()
        };
        draft.basis = match known.basis() {
            LoadBasis::External => 0,
            LoadBasis::BodyMassPlus => 1,
            LoadBasis::BodyMassMinus => 2,
            LoadBasis::BodyMassShare(share) => {
                draft.share = decimal(&share.to_string());
                SHARE
            }
            LoadBasis::Band(label) => {
                draft.band = label.to_string();
                BAND
            }
            LoadBasis::Unloaded => 5,
        };
        draft.cautions = under_each_other(&known.cautions());
        draft
    }

    /// A tap on a muscle of one of the lists: on or off; on one list it is off the other.
    pub fn tap(&mut self, muscle: Muscle, as_main: bool) {
        let (list, other) = if as_main {
            (&mut self.main, &mut self.also)
        } else {
            (&mut self.also, &mut self.main)
        };
        *list = if list.has(muscle) {
            list.without(muscle)
        } else {
            list.with(muscle)
        };
        *other = other.without(muscle);
    }

    fn load_basis(&self) -> Result<LoadBasis, String> {
        Ok(match self.basis {
            1 => LoadBasis::BodyMassPlus,
            2 => LoadBasis::BodyMassMinus,
            SHARE => {
                // Either decimal mark, as in a load.
                let typed = self.share.trim().trim_end_matches('%').replace(',', ".");
                let share = format!("{typed} %").parse();
                LoadBasis::BodyMassShare(share.map_err(|error| format!("{error}"))?)
            }
            BAND => LoadBasis::Band(read_name(&self.band)?),
            5 => LoadBasis::Unloaded,
            _ => LoadBasis::External,
        })
    }

    /// The exercise, or what is wrong with it. `id` is that of the exercise that is changed; a new one gets the id of
    /// its name, so what was written under that name before belongs to it.
    pub fn read(
        &self,
        id: Option<&ExerciseId>,
        known: &Catalogue,
        version: Uuid,
        written: DateTime<FixedOffset>,
    ) -> Result<OwnExercise, String> {
        let name = read_name(&self.name)?;
        let new_id = || ExerciseId::of_name(name.as_str());
        let own_id = id.cloned().unwrap_or_else(new_id);
        let taken = known.find(name.as_str()).map(|found| found.id);
        let by_id = known.of(own_id.as_str()).map(KnownExercise::id);
        let other = taken
            .into_iter()
            .chain(by_id)
            .find(|other| Some(other) != id);
        if let Some(other) =
            other.and_then(|other| known.of(other.as_str()).map(|k| k.name().to_owned()))
        {
            return Err(say!(
                "there is {other} already: open it, or take another name",
                other
            ));
        }
        // What is only said in another language stays as it is kept.
        let kept = known.of(own_id.as_str()).map(|known| known.exercise());
        let kept = kept.filter(|kept| kept.said() == name.as_str());
        let name = kept.map_or(name, |kept| kept.name);
        let before = known.of(own_id.as_str()).map(KnownExercise::cautions);
        let cautions = read_lines(&self.cautions, &before.unwrap_or_default())?;
        let own = OwnExercise {
            id: own_id,
            version,
            written,
            name,
            pattern: self.pattern,
            equipment: self.equipment,
            main: self.main,
            also: self.also,
            basis: self.load_basis()?,
            sides: self.sides,
            cautions,
        };
        own.check().map_err(|error| error.to_string())?;
        Ok(own)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(draft: &Draft, id: Option<&str>) -> Result<OwnExercise, String> {
        let written = DateTime::parse_from_rfc3339("2026-01-05T09:00:00+01:00").unwrap();
        let id = id.map(|id| ExerciseId::new(id).unwrap());
        draft.read(id.as_ref(), &Catalogue::default(), Uuid::nil(), written)
    }

    #[test]
    fn what_is_known_and_kept_unchanged_says_the_same() {
        let known = Catalogue::default();
        for entry in known.all() {
            let own = read(&Draft::of(entry), Some(entry.id().as_str())).unwrap();
            assert_eq!(own.exercise(), entry.exercise());
            assert_eq!((own.main, own.also), (entry.main(), entry.also()));
            assert_eq!((own.basis, own.sides), (entry.basis(), entry.sides()));
            assert_eq!(own.cautions, entry.cautions());
        }
    }

    #[test]
    fn cautions_that_are_only_said_in_another_language_stay_as_they_are_kept() {
        let known = Catalogue::default();
        let caution = "The load is above the face: stop well before failure when alone.";
        let said = "Die Last ist über dem Gesicht.";
        let texts = vec![(format!("{caution}#line").into(), said.into())];
        let german = crate::words::Catalogue::new("de".into(), ",.".into(), texts);
        crate::words::speak(Some(Box::leak(Box::new(german))));
        let mut seen = 0;
        for entry in known.all() {
            let draft = Draft::of(entry);
            seen += usize::from(draft.cautions.contains(said));
            let own = read(&draft, Some(entry.id().as_str())).unwrap();
            assert_eq!(own.cautions, entry.cautions());
        }
        crate::words::speak(None);
        assert!(seen > 0, "one of them is said in German");
    }

    #[test]
    fn a_name_that_is_taken_or_missing_is_told() {
        let mut draft = Draft::new();
        assert!(
            read(&draft, None)
                .unwrap_err()
                .starts_with("give it a name")
        );
        draft.name = "back squat!".to_owned();
        let said = read(&draft, None).unwrap_err();
        assert!(said.starts_with("there is Back squat already"), "{said}");
        draft.name = "Boat pull".to_owned();
        assert_eq!(read(&draft, None).unwrap().id.as_str(), "boat-pull");
        draft.basis = SHARE;
        draft.share = "40".to_owned();
        assert!(matches!(
            read(&draft, None).unwrap().basis,
            LoadBasis::BodyMassShare(_)
        ));
        draft.share = "62,5 %".to_owned();
        assert_eq!(
            read(&draft, None).unwrap().basis,
            LoadBasis::BodyMassShare("62.5 %".parse().unwrap())
        );
        draft.share = "much".to_owned();
        assert!(read(&draft, None).is_err());
    }

    #[test]
    fn a_muscle_is_on_one_list_at_most() {
        let mut draft = Draft::new();
        draft.tap(Muscle::Lats, true);
        draft.tap(Muscle::Lats, false);
        assert!(draft.main.is_empty() && draft.also.has(Muscle::Lats));
        draft.tap(Muscle::Lats, false);
        assert!(draft.also.is_empty());
    }
}
