//! Finding entries by any of their words.

use super::catalogue::KnownExercise;
use super::entry::Entry;
use super::means::equipment_words;
use super::muscle::Muscle;
use super::table::all;
use crate::order;
use crate::sheet::{Pattern, SideMode};
use crate::words::{SOFT_HYPHEN, later, small, spoken, t};

/// Most bytes of a text that are looked at; longer ones can be no name of the list.
const TEXT_BYTES_MAX: usize = 200;

/// The entries of which some word holds every word of `text`, at most `most`. Words are those of names, muscles,
/// equipment and pattern, in English and in the language that is spoken; hyphens and the case of letters do not count.
/// First come those whose name begins with the text, then those whose name holds it, then those with it in an other
/// name, then the rest; among equals the order of the list. A text without a letter or digit finds all.
#[must_use]
pub fn search(text: &str, most: usize) -> Vec<&'static Entry> {
    let listed = all().iter().map(KnownExercise::Listed);
    let found = among(listed, text, most).into_iter();
    found.filter_map(KnownExercise::listed).collect()
}

/// The search through any exercises.
pub(super) fn among<'a>(
    exercises: impl Iterator<Item = KnownExercise<'a>>,
    text: &str,
    most: usize,
) -> Vec<KnownExercise<'a>> {
    if text.len() > TEXT_BYTES_MAX {
        return Vec::new();
    }
    let text = plain(text);
    let words: Vec<&str> = text.split_whitespace().collect();
    let joined = words.concat();
    let mut found: Vec<(usize, KnownExercise)> = exercises
        .filter(|exercise| {
            let known = plain(&words_of(*exercise));
            let mut each = words.iter();
            each.all(|word| known.split_whitespace().any(|whole| whole.contains(word)))
        })
        .map(|exercise| (rank(exercise, &joined), exercise))
        .collect();
    order::by_key(&mut found, |(rank, _)| *rank);
    found.truncate(most);
    found.into_iter().map(|(_, exercise)| exercise).collect()
}

/// What else an exercise is called, in both languages; one's own goes by the listed names of its id too.
fn other_names(exercise: KnownExercise) -> impl Iterator<Item = &'static str> + use<> {
    exercise.listed().into_iter().flat_map(Entry::names_said)
}

fn rank(exercise: KnownExercise, joined: &str) -> usize {
    let name = together(exercise.name());
    if name.starts_with(joined) {
        0
    } else if name.contains(joined) {
        1
    } else if other_names(exercise).any(|name| together(name).contains(joined)) {
        2
    } else {
        3
    }
}

/// Everything that finds an exercise, in English and in the language that is spoken.
fn words_of(exercise: KnownExercise) -> String {
    let muscles = exercise.main().iter().chain(exercise.also().iter());
    let mut about: Vec<&'static str> = muscles.map(Muscle::words).collect();
    about.push(match exercise {
        KnownExercise::Listed(entry) => entry.means.words(),
        KnownExercise::Own(own) => equipment_words(own.equipment),
    });
    about.push(pattern_words(exercise.pattern()));
    if exercise.sides() != SideMode::Both {
        about.push(later("unilateral"));
    }
    let mut words: Vec<&str> = other_names(exercise).collect();
    // What its row reads finds it too.
    words.extend([exercise.name(), exercise.equipment().name()]);
    let translated = spoken().is_some();
    for word in about {
        words.push(word);
        if translated {
            words.push(t(word));
        }
    }
    words.join(" ")
}

/// Small letters, words parted by spaces; hyphens and apostrophes go, so that “push-up” and “pushup” are one word.
fn plain(text: &str) -> String {
    let letters = text
        .chars()
        .filter(|c| !matches!(*c, '-' | '\'' | '’' | SOFT_HYPHEN))
        .map(|c| if c.is_alphanumeric() { c } else { ' ' });
    small(&letters.collect::<String>())
}

/// Small letters and digits without what parts words.
pub(super) fn together(text: &str) -> String {
    let plain = plain(text);
    plain.split_whitespace().collect()
}

fn pattern_words(pattern: Pattern) -> &'static str {
    later(match pattern {
        Pattern::Squat => "squat knee",
        Pattern::Hinge => "hinge hip",
        Pattern::PushAcross => "push horizontal press",
        Pattern::PushUpward => "push vertical press",
        Pattern::PullAcross => "pull horizontal row",
        Pattern::PullDownward => "pull vertical",
        Pattern::Carry => "carry loaded",
        Pattern::Explosive => "explosive power",
        Pattern::Trunk => "trunk core",
        Pattern::SingleJoint => "single-joint isolation",
    })
}
