//! Sessions found by what was done in them, by what was noted, and by their day.

use super::heading::Heading;
use crate::exercises::{Catalogue, Entry, KnownExercise};
use crate::order::Set;
use crate::sheet::{ExerciseId, Note};
use crate::words::small;
use chrono::NaiveDate;

/// Most characters of a note that say where something was found.
const SHOWN_CHARS: usize = 90;

/// What is looked for among the sessions.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Sought {
    /// The words typed, small.
    words: Vec<String>,
    /// The exercises that they stand for.
    exercises: Set<ExerciseId>,
    first: Option<NaiveDate>,
    last: Option<NaiveDate>,
}

impl Sought {
    /// Sessions with `text` in them, from the first day to the last, both among them; no text and no day is no bound.
    ///
    /// The text finds the exercises of which a name or another name holds all its words, those of `done` by the names
    /// they were done under, and the sessions of which sheet name or notes hold all its words.
    #[must_use]
    pub fn new<'a>(
        text: &str,
        catalogue: &Catalogue,
        done: impl Iterator<Item = (&'a ExerciseId, &'a str)>,
        first: Option<NaiveDate>,
        last: Option<NaiveDate>,
    ) -> Sought {
        let words: Vec<String> = text.split_whitespace().map(plain).collect();
        let words: Vec<String> = words.into_iter().filter(|word| !word.is_empty()).collect();
        let mut exercises = Set::new();
        if !words.is_empty() {
            let called = catalogue.all().filter(|known| is_called(*known, &words));
            exercises.extend(called.map(KnownExercise::id));
            let named = done.filter(|(_, name)| hold(name, &words));
            exercises.extend(named.map(|(id, _)| id.clone()));
        }
        Sought {
            words,
            exercises,
            first,
            last,
        }
    }

    /// True when every session is sought.
    #[must_use]
    pub fn is_everything(&self) -> bool {
        self.words.is_empty() && self.first.is_none() && self.last.is_none()
    }

    /// The last day on which one may lie; none without a bound.
    #[must_use]
    pub fn last(&self) -> Option<NaiveDate> {
        self.last
    }

    /// The first day on which one may lie; none without a bound.
    #[must_use]
    pub fn first(&self) -> Option<NaiveDate> {
        self.first
    }

    /// Whether the session of this heading is one of them.
    #[must_use]
    pub fn finds(&self, heading: &Heading) -> bool {
        let day = heading.began.date_naive();
        self.first.is_none_or(|first| first <= day)
            && self.last.is_none_or(|last| day <= last)
            && (self.words.is_empty() || self.has_words(heading))
    }

    fn has_words(&self, heading: &Heading) -> bool {
        let mut shares = heading.shares.iter();
        shares.any(|share| self.exercises.contains(&share.exercise))
            || hold(&texts(heading), &self.words)
    }

    /// Where it was found: the exercises, or else the note; empty where a name or nothing was typed.
    #[must_use]
    pub fn place(&self, heading: &Heading, name: impl Fn(&ExerciseId) -> String) -> String {
        if self.words.is_empty() {
            return String::new();
        }
        let found = heading.shares.iter();
        let found = found.filter(|share| self.exercises.contains(&share.exercise));
        let names: Vec<String> = found.map(|share| name(&share.exercise)).collect();
        if !names.is_empty() {
            return names.join(", ");
        }
        let notes = [
            heading.note.as_ref().map_or("", Note::as_str),
            &heading.set_notes,
        ];
        let lines = notes.into_iter().flat_map(str::lines);
        let of_word = |line: &&str| {
            self.words
                .iter()
                .any(|word| hold(line, std::slice::from_ref(word)))
        };
        let line = lines.into_iter().find(of_word).unwrap_or_default();
        line.chars().take(SHOWN_CHARS).collect()
    }
}

/// Everything of a heading that is text.
fn texts(heading: &Heading) -> String {
    let note = heading.note.as_ref().map_or("", Note::as_str);
    format!("{} {note} {}", heading.sheet, heading.set_notes)
}

/// Whether a name of the exercise, or another name for it, holds every word.
fn is_called(known: KnownExercise, words: &[String]) -> bool {
    let mut others = known.listed().into_iter().flat_map(Entry::names_said);
    hold(known.name(), words) || others.any(|name| hold(name, words))
}

/// Small letters without hyphens and apostrophes, so that “push-up” and “pushup” are one word.
fn plain(text: &str) -> String {
    let kept = text.chars().filter(|c| !matches!(c, '-' | '\'' | '’'));
    small(&kept.collect::<String>())
}

/// Whether `text` holds every word, whatever the case of its letters.
fn hold(text: &str, words: &[String]) -> bool {
    let text = plain(text);
    words.iter().all(|word| text.contains(word.as_str()))
}
