//! Finding entries by any of their words.

use super::entry::Entry;
use super::table::all;
use crate::order;
use crate::sheet::Pattern;

/// Most bytes of a text that are looked at; longer ones can be no name of the list.
const TEXT_BYTES_MAX: usize = 200;

/// The entries of which some word holds every word of `text`, at most `most`. Words are those of names, muscles,
/// equipment and pattern; hyphens and the case of ASCII letters do not count. First come those whose name begins with
/// the text, then those whose name holds it, then those with it in an other name, then the rest; among equals the order
/// of the list. A text without a letter or digit finds all.
#[must_use]
pub fn search(text: &str, most: usize) -> Vec<&'static Entry> {
    if text.len() > TEXT_BYTES_MAX {
        return Vec::new();
    }
    let text = plain(text);
    let words: Vec<&str> = text.split_whitespace().collect();
    let joined = words.concat();
    let mut found: Vec<(usize, &Entry)> = all()
        .iter()
        .filter(|entry| {
            let known = plain(&words_of(entry));
            let mut each = words.iter();
            each.all(|word| known.split_whitespace().any(|whole| whole.contains(word)))
        })
        .map(|entry| (rank(entry, &joined), entry))
        .collect();
    order::by_key(&mut found, |(rank, _)| *rank);
    found.truncate(most);
    found.into_iter().map(|(_, entry)| entry).collect()
}

fn rank(entry: &Entry, joined: &str) -> usize {
    let name = together(entry.name());
    if name.starts_with(joined) {
        0
    } else if name.contains(joined) {
        1
    } else if entry.names().any(|name| together(name).contains(joined)) {
        2
    } else {
        3
    }
}

/// Everything that finds an entry.
fn words_of(entry: &Entry) -> String {
    let mut words: Vec<&str> = entry.names().collect();
    words.extend(
        entry
            .main()
            .chain(entry.also())
            .map(|muscle| muscle.words()),
    );
    words.push(entry.means.words());
    words.push(pattern_words(entry.pattern()));
    if entry.is_unilateral() {
        words.push("unilateral");
    }
    words.join(" ")
}

/// Small letters, words parted by spaces; hyphens and apostrophes go, so that “push-up” and “pushup” are one word.
fn plain(text: &str) -> String {
    text.chars()
        .filter(|c| !matches!(c, '-' | '\'' | '’'))
        .map(|c| if c.is_alphanumeric() { c } else { ' ' })
        .map(|c| c.to_ascii_lowercase())
        .collect()
}

fn together(text: &str) -> String {
    let plain = plain(text);
    plain.split_whitespace().collect()
}

fn pattern_words(pattern: Pattern) -> &'static str {
    match pattern {
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
    }
}
