//! What an exercise of a sheet or of a record is called on the screen. That is asked wherever one is named, and stands here
//! because only the list knows which names are its own.

use super::all;
use crate::sheet::{Exercise, ExerciseId, Line};
use crate::words::name_in;

impl ExerciseId {
    /// What the exercise of this id, kept under `name`, is called on the screen. Where the list has this name for this id
    /// it is said in the language that is spoken. Any other is what a person wrote, though the list may have another
    /// exercise of that name, and is shown as it was written.
    #[must_use]
    pub fn said<'a>(&self, name: &'a Line) -> &'a str {
        let written = name.as_str();
        // In English nothing is looked for.
        name_in(written)
            .filter(|_| {
                all().iter().any(|entry| {
                    let mut names = entry.names();
                    names.any(|name| name.eq_ignore_ascii_case(written)) && entry.id() == *self
                })
            })
            .unwrap_or(written)
    }
}

impl Exercise {
    /// The name for the screen: see [`ExerciseId::said`].
    #[must_use]
    pub fn said(&self) -> String {
        self.id.said(&self.name).to_owned()
    }
}
