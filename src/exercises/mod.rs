//! The exercises that a garage gym knows: names by the trade's usage, muscles, equipment, usual load basis, cautions.
//!
//! Muscles, means and cautions are common practice, no source; shares of body mass have theirs in `means.rs`. The
//! list helps to write a sheet; what is right for a body is for its physician and a qualified coach to say.

mod alike;
mod catalogue;
mod caution;
mod entry;
mod hold;
mod means;
mod muscle;
mod near;
mod order_check;
mod order_words;
mod own;
mod own_cautions;
mod rename;
mod said;
mod search;
mod table;

#[cfg(test)]
mod catalogue_tests;
#[cfg(test)]
mod tests;

#[cfg(test)]
mod order_tests;

pub use alike::{alike, of_pattern};
pub use catalogue::{Catalogue, KnownExercise};
pub use entry::Entry;
pub use hold::is_hold;
pub use muscle::{Muscle, Muscles};
pub use order_check::order_check;
pub(crate) use own::ExerciseForm;
pub use own::{CAUTIONS_MAX, OwnExercise, UnfitExercise};
pub use own_cautions::{add_cautions, give_back_cautions, without_cautions};
pub use rename::renamed;
pub use search::search;
pub use table::all;

use crate::sheet::Exercise;

/// The entry with this id.
#[must_use]
pub fn entry(id: &str) -> Option<&'static Entry> {
    all().iter().find(|entry| entry.id().as_str() == id)
}

/// The exercise with this name, other name or id, in English or the language that is spoken, whatever the case of the
/// letters; an other name stays the name on screen, over the same id and thus the same history. It comes under its
/// English name: what is kept is the same in every language.
#[must_use]
pub fn find(name: &str) -> Option<Exercise> {
    let name = name.trim();
    let named = all().iter().find_map(|entry| {
        entry
            .names()
            .find(|known| known.eq_ignore_ascii_case(name))
            .map(|known| entry.called(known))
            .or_else(|| entry.called_here(name))
    });
    named.or_else(|| entry(&name.to_ascii_lowercase()).map(Entry::exercise))
}
