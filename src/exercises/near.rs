//! The known name that a name with a slip in it most likely means.

use super::catalogue::Catalogue;
use super::entry::Entry;
use super::search::together;
use crate::words::small;

/// Most letters of a name that is looked at; no known one has more.
const LETTERS_MAX: usize = 60;

impl Catalogue {
    /// The known name nearest to `name`, as it stands on a sheet, in English or in the language that is spoken. Hyphens,
    /// spaces and the case of letters do not count. None where more than a slip lies between: one letter in four, at
    /// most three; a choice, no source. Where there is none, the first known name that ends in the word that was written:
    /// the list has the plainest of a kind first.
    #[must_use]
    pub fn nearest(&self, name: &str) -> Option<String> {
        let typed: Vec<char> = together(name).chars().collect();
        let most = (typed.len() / 4).min(3);
        if typed.len() > LETTERS_MAX {
            return None;
        }
        let word = small(name.trim());
        let mut of_kind = None;
        let mut nearest = None;
        let mut below = most + 1;
        let mut look_at = |known: &str| {
            if of_kind.is_none() && small(known).rsplit(' ').next() == Some(&word) {
                of_kind = Some(capital(known));
            }
            let letters: Vec<char> = together(known).chars().collect();
            if letters.len().abs_diff(typed.len()) >= below {
                return;
            }
            let slips = slips(&typed, &letters);
            if slips < below {
                below = slips;
                nearest = Some(capital(known));
            }
        };
        for known in self.all() {
            look_at(known.name());
            known
                .listed()
                .into_iter()
                .flat_map(Entry::names_said)
                .for_each(&mut look_at);
        }
        nearest.or(of_kind)
    }
}

/// How many letters were put in, left out, mistaken or swapped with their neighbour between two words: the distance of
/// optimal string alignment.
fn slips(a: &[char], b: &[char]) -> usize {
    let mut before_last = vec![0; b.len() + 1];
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (i, of_a) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, of_b) in b.iter().enumerate() {
            let mistaken = last[j] + usize::from(of_a != of_b);
            let mut least = mistaken.min(last[j + 1] + 1).min(row[j] + 1);
            if i > 0 && j > 0 && a[i - 1] == *of_b && b[j - 1] == *of_a {
                least = least.min(before_last[j - 1] + 1);
            }
            row.push(least);
        }
        before_last = std::mem::replace(&mut last, row);
    }
    last[b.len()]
}

/// The name as it stands on a sheet.
fn capital(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_counted() {
        let slips = |a: &str, b: &str| {
            let letters = |word: &str| word.chars().collect::<Vec<char>>();
            slips(&letters(a), &letters(b))
        };
        assert_eq!(slips("row", "row"), 0);
        assert_eq!(slips("frotn", "front"), 1);
        assert_eq!(slips("squatt", "squat"), 1);
        assert_eq!(slips("dedlift", "deadlift"), 1);
        assert_eq!(slips("bench", "lunge"), 4);
        assert_eq!(slips("", "row"), 3);
        assert_eq!(slips("row", ""), 3);
    }

    #[test]
    fn a_kind_alone_finds_the_plainest_of_it() {
        let near = |name: &str| Catalogue::default().nearest(name);
        assert_eq!(near("Curl").as_deref(), Some("Barbell curl"));
        assert_eq!(near("row").as_deref(), Some("Bent-over row"));
        assert_eq!(near("rl"), None);
    }

    #[test]
    fn a_slip_of_the_finger_finds_the_name_that_was_meant() {
        let near = |name: &str| Catalogue::default().nearest(name);
        let some = |name: &str| Some(name.to_owned());
        assert_eq!(near("Frotn squat"), some("Front squat"));
        assert_eq!(near("front sqaut"), some("Front squat"));
        assert_eq!(near("Dedlift"), some("Deadlift"));
        assert_eq!(near("Push ups"), some("Push-up"));
        for far in [
            "Banana",
            "Sandbag toss",
            "Row up",
            "",
            "x",
            &"squat".repeat(20),
        ] {
            assert_eq!(near(far), None, "{far}");
        }
    }
}
