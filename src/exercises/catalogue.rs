//! All exercises that are known: the list, and the lifter's own over it.

use super::entry::Entry;
use super::means::{Moved, stands_for};
use super::muscle::Muscles;
use super::own::OwnExercise;
use super::{all, entry, search};
use crate::kit::Kit;
use crate::order;
use crate::sheet::{
    Equipment, Exercise, ExerciseId, Line, LoadBasis, Named, Pattern, SideMode, is_any_band,
};
use crate::words::{small, t_name};

/// An exercise that is known, whoever wrote it down.
#[derive(Debug, Clone, Copy)]
pub enum KnownExercise<'a> {
    /// Of the list.
    Listed(&'static Entry),
    /// Of the lifter's own; where the list has its id, in place of that entry.
    Own(&'a OwnExercise),
}

impl<'a> KnownExercise<'a> {
    /// The lasting id.
    #[must_use]
    pub fn id(self) -> ExerciseId {
        match self {
            KnownExercise::Listed(entry) => entry.id(),
            KnownExercise::Own(own) => own.id.clone(),
        }
    }

    /// The name on screen, in the language that is spoken where the list has it.
    #[must_use]
    pub fn name(self) -> &'a str {
        match self {
            KnownExercise::Listed(entry) => t_name(entry.name()),
            KnownExercise::Own(own) => own.id.said(&own.name),
        }
    }

    /// True when the lifter wrote it.
    #[must_use]
    pub fn is_own(self) -> bool {
        matches!(self, KnownExercise::Own(_))
    }

    /// The entry of the list with its id.
    #[must_use]
    pub fn listed(self) -> Option<&'static Entry> {
        match self {
            KnownExercise::Listed(entry) => Some(entry),
            KnownExercise::Own(own) => entry(own.id.as_str()),
        }
    }

    /// The movement pattern.
    #[must_use]
    pub fn pattern(self) -> Pattern {
        match self {
            KnownExercise::Listed(entry) => entry.pattern(),
            KnownExercise::Own(own) => own.pattern,
        }
    }

    /// What the load is made of.
    #[must_use]
    pub fn equipment(self) -> Equipment {
        match self {
            KnownExercise::Listed(entry) => entry.equipment(),
            KnownExercise::Own(own) => own.equipment,
        }
    }

    /// The muscles that do most of the work.
    #[must_use]
    pub fn main(self) -> Muscles {
        match self {
            KnownExercise::Listed(entry) => Muscles::of_bits(entry.main),
            KnownExercise::Own(own) => own.main,
        }
    }

    /// The muscles that help or hold.
    #[must_use]
    pub fn also(self) -> Muscles {
        match self {
            KnownExercise::Listed(entry) => Muscles::of_bits(entry.also),
            KnownExercise::Own(own) => own.also,
        }
    }

    /// What the load usually means together with the body.
    #[must_use]
    pub fn basis(self) -> LoadBasis {
        match self {
            KnownExercise::Listed(entry) => entry.basis(),
            KnownExercise::Own(own) => own.basis.clone(),
        }
    }

    /// What the load usually means where it is done with `kit`. Of its bands, which stand in order of strength, the one to
    /// begin with: the strongest where a band takes some of the body off, else the lightest.
    #[must_use]
    pub fn basis_with(self, kit: &Kit) -> LoadBasis {
        let helps = self
            .listed()
            .is_some_and(|entry| entry.moved == Moved::BandHelp);
        match self.basis() {
            LoadBasis::Band(label) if is_any_band(&label) => {
                LoadBasis::Band(kit.easiest_band(helps).cloned().unwrap_or(label))
            }
            basis => basis,
        }
    }

    /// How the sides usually share a set.
    #[must_use]
    pub fn sides(self) -> SideMode {
        match self {
            KnownExercise::Listed(entry) => entry.sides(),
            KnownExercise::Own(own) => own.sides,
        }
    }

    /// The cautions for a new block: those of the list in English, [`Line::said`] says them in the language that is spoken.
    #[must_use]
    pub fn cautions(self) -> Vec<Line> {
        match self {
            KnownExercise::Listed(entry) => entry.cautions(),
            KnownExercise::Own(own) => own.cautions.clone(),
        }
    }

    /// The exercise as a block names it.
    #[must_use]
    pub fn exercise(self) -> Exercise {
        match self {
            KnownExercise::Listed(entry) => entry.exercise(),
            KnownExercise::Own(own) => own.exercise(),
        }
    }

    /// The exercise as it is done with `kit`; none where the kit lacks what it takes.
    #[must_use]
    pub fn exercise_with(self, kit: &Kit) -> Option<Exercise> {
        match self {
            KnownExercise::Listed(entry) => entry.exercise_with(kit),
            KnownExercise::Own(own) => Some(Exercise {
                equipment: stands_for(own.equipment, kit)?,
                ..own.exercise()
            }),
        }
    }
}

/// All exercises that are known.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Catalogue {
    /// By name and then by id, each id once.
    own: Vec<OwnExercise>,
}

impl Catalogue {
    /// The list with `own` over it; of one id the newest version counts.
    #[must_use]
    pub fn new(own: impl IntoIterator<Item = OwnExercise>) -> Catalogue {
        let mut all: Vec<OwnExercise> = own.into_iter().collect();
        order::by(&mut all, |a, b| (&a.id, b.version).cmp(&(&b.id, a.version)));
        all.dedup_by(|a, b| a.id == b.id);
        order::by(&mut all, |a, b| (&a.name, &a.id).cmp(&(&b.name, &b.id)));
        Catalogue { own: all }
    }

    /// The lifter's own, by name.
    #[must_use]
    pub fn own(&self) -> &[OwnExercise] {
        &self.own
    }

    /// This catalogue with another version of one's own exercise in it.
    #[must_use]
    pub fn with(self, own: OwnExercise) -> Catalogue {
        Catalogue::new(self.own.into_iter().chain([own]))
    }

    /// This catalogue without one's own exercise of that id; a listed one of that id is itself again.
    #[must_use]
    pub fn without(mut self, id: &ExerciseId) -> Catalogue {
        self.own.retain(|own| own.id != *id);
        self
    }

    /// What is known of the exercise with this id.
    #[must_use]
    pub fn of(&self, id: &str) -> Option<KnownExercise<'_>> {
        let own = self.own.iter().find(|own| own.id.as_str() == id);
        own.map(KnownExercise::Own)
            .or_else(|| entry(id).map(KnownExercise::Listed))
    }

    /// What the exercise of this id is called on the screen wherever no sheet or record names it: as one called it
    /// oneself, else as it was called when it was done last, else as the list has it.
    #[must_use]
    pub fn called(&self, id: &ExerciseId, last: Option<&Line>) -> String {
        let known = self.of(id.as_str());
        let own = known.filter(|known| known.is_own());
        let mut name = match (own.or(known.filter(|_| last.is_none())), last) {
            (Some(known), _) => known.name().to_owned(),
            (None, Some(last)) => id.said(last).to_owned(),
            (None, None) => id.to_string(),
        };
        name.get_mut(..1).map(str::make_ascii_uppercase);
        name
    }

    /// Everything that is known: one's own first, by name, then the list.
    pub fn all(&self) -> impl Iterator<Item = KnownExercise<'_>> {
        let stands = |entry: &&Entry| {
            let id = entry.id();
            !self.own.iter().any(|own| own.id == id)
        };
        let listed = all().iter().filter(stands).map(KnownExercise::Listed);
        self.own.iter().map(KnownExercise::Own).chain(listed)
    }

    /// The exercise with this name, other name or id, whatever the case of the letters. A listed exercise that was
    /// renamed is found by its old names too, and comes under its new one.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<Exercise> {
        let lower = small(name.trim());
        let own = self
            .own
            .iter()
            .find(|own| small(own.name.as_str()) == lower || own.id.as_str() == lower);
        if let Some(own) = own {
            return Some(own.exercise());
        }
        let listed = super::find(name)?;
        let renamed = self.own.iter().find(|own| own.id == listed.id);
        Some(renamed.map_or(listed, OwnExercise::exercise))
    }

    /// The exercise that [`Catalogue::find`] finds, and what its load usually means, both as it is done with `kit`: where
    /// that lacks what it takes, with what the list says.
    #[must_use]
    pub fn named(&self, name: &str, kit: &Kit) -> Option<Named> {
        let mut exercise = self.find(name)?;
        let known = self.of(exercise.id.as_str())?;
        if let Some(done) = known.exercise_with(kit) {
            exercise.equipment = done.equipment;
        }
        Some(Named {
            exercise,
            basis: known.basis_with(kit),
        })
    }

    /// The exercises of which some word holds every word of `text`, at most `most`, as [`super::search`] finds them in
    /// the list; a renamed one is found by its old names too.
    #[must_use]
    pub fn search(&self, text: &str, most: usize) -> Vec<KnownExercise<'_>> {
        search::among(self.all(), text, most)
    }

    /// All that [`Catalogue::search`] finds, what `kit` can do and what is one's own first.
    #[must_use]
    pub fn search_with(&self, text: &str, kit: &Kit) -> Vec<KnownExercise<'_>> {
        fitting_first(self.search(text, usize::MAX), kit)
    }

    /// All of one pattern, what `kit` can do and what is one's own first.
    #[must_use]
    pub fn of_pattern_with(&self, pattern: Pattern, kit: &Kit) -> Vec<KnownExercise<'_>> {
        let all = self.all().filter(|known| known.pattern() == pattern);
        fitting_first(all.collect(), kit)
    }
}

/// What `kit` can do and what is one's own, then the rest, each in its order.
fn fitting_first<'a>(found: Vec<KnownExercise<'a>>, kit: &Kit) -> Vec<KnownExercise<'a>> {
    let (mut fit, unfit): (Vec<_>, Vec<_>) = found
        .into_iter()
        .partition(|known| known.is_own() || known.exercise_with(kit).is_some());
    fit.extend(unfit);
    fit
}
