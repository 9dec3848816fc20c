//! What can be done instead.

use super::catalogue::{Catalogue, KnownExercise};
use super::entry::Entry;
use super::table::all;
use crate::kit::Kit;
use crate::order;
use crate::sheet::{Equipment, Exercise, Pattern, SideMode};
use std::cmp::Reverse;

/// The entries of one pattern that `kit` can do, in the order of the list; for exercises that are not in it.
pub fn of_pattern(pattern: Pattern, kit: &Kit) -> impl Iterator<Item = &'static Entry> {
    all()
        .iter()
        .filter(move |entry| entry.pattern() == pattern && entry.means.in_kit(kit).is_some())
}

/// The other entries with the pattern of the one with `id` that `kit` can do, nearest first: most main muscles in
/// common, then most of all muscles, then sides alike. What takes things that no kit lists (a sled, a sandbag) comes
/// last. None for an id that is not in the list: see [`of_pattern`].
#[must_use]
pub fn alike(id: &str, kit: &Kit) -> Vec<&'static Entry> {
    let Some(from) = super::entry(id) else {
        return Vec::new();
    };
    let from = KnownExercise::Listed(from);
    let listed = of_pattern(from.pattern(), kit).map(KnownExercise::Listed);
    let found = nearest_first(from, listed).into_iter();
    found.filter_map(KnownExercise::listed).collect()
}

impl Catalogue {
    /// The other exercises that `kit` can do in place of `exercise`, one's own among them, as [`alike`] orders them; by
    /// the pattern alone for an exercise that nobody knows.
    #[must_use]
    pub fn alike(&self, exercise: &Exercise, kit: &Kit) -> Vec<KnownExercise<'_>> {
        let from = self.of(exercise.id.as_str());
        let pattern = from.map_or(exercise.pattern, KnownExercise::pattern);
        let found = self
            .all()
            .filter(|known| known.pattern() == pattern && known.exercise_with(kit).is_some());
        match from {
            Some(from) => nearest_first(from, found),
            None => found.collect(),
        }
    }
}

/// The exercises but `from` itself, nearest first.
fn nearest_first<'a>(
    from: KnownExercise<'a>,
    others: impl Iterator<Item = KnownExercise<'a>>,
) -> Vec<KnownExercise<'a>> {
    let id = from.id();
    let mut found: Vec<KnownExercise> = others.filter(|other| other.id() != id).collect();
    let one_sided = |known: KnownExercise| known.sides() != SideMode::Both;
    order::by_key(&mut found, |known| {
        let unlisted = known.equipment() == Equipment::Other;
        let sides_differ = one_sided(*known) != one_sided(from);
        (unlisted, Reverse(common(from, *known)), sides_differ)
    });
    found
}

/// How much two exercises work the same muscles: main ones in common, less those that only one has, then any.
fn common(one: KnownExercise, other: KnownExercise) -> (i64, usize) {
    let mains = one.main().iter().chain(other.main().iter());
    let both = one.main().and(other.main());
    let apart = mains.filter(|muscle| !both.has(*muscle)).count();
    let works = |known: KnownExercise, muscle| known.main().has(muscle) || known.also().has(muscle);
    let of_one = one.main().iter().chain(one.also().iter());
    let any = of_one.filter(|muscle| works(other, *muscle)).count();
    let both = both.iter().count();
    (2 * both as i64 - apart as i64, any)
}
