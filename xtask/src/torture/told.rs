//! What was said to be saved, and whether it was found again.

use std::collections::BTreeMap;

/// Records by id, as the screen said they were saved.
#[derive(Debug, Default)]
pub struct Tally {
    told: BTreeMap<String, String>,
    lost: usize,
    all: usize,
}

impl Tally {
    /// Takes down what is said to be saved now.
    pub fn said(&mut self, records: BTreeMap<String, String>) {
        for (id, text) in records {
            if self.told.insert(id, text).is_none() {
                self.all += 1;
            }
        }
    }

    /// Compares with what is found after a start; the number that is lost. What is found goes on to be looked for.
    pub fn found(&mut self, records: &BTreeMap<String, String>) -> usize {
        let before = self.told.len();
        self.told.retain(|id, text| records.get(id) == Some(text));
        let lost = before - self.told.len();
        self.lost += lost;
        // What was written and never said to be saved is known from here on: the screen shows it.
        self.said(records.clone());
        lost
    }

    /// How many records are known to be saved now.
    pub fn told(&self) -> usize {
        self.told.len()
    }

    /// How many were ever said to be saved.
    pub fn acknowledged(&self) -> usize {
        self.all
    }

    /// How many of them were lost.
    pub fn lost(&self) -> usize {
        self.lost
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn records(pairs: &[(&str, &str)]) -> BTreeMap<String, String> {
        let owned = |(id, text): &(&str, &str)| ((*id).to_owned(), (*text).to_owned());
        pairs.iter().map(owned).collect()
    }

    #[test]
    fn a_record_that_is_gone_or_changed_is_lost_once() {
        let mut tally = Tally::default();
        tally.said(records(&[("a", "1"), ("b", "2"), ("c", "3")]));
        tally.said(records(&[("a", "1"), ("b", "2"), ("c", "3"), ("d", "4")]));
        assert_eq!(
            tally.found(&records(&[("a", "1"), ("b", "x"), ("e", "5")])),
            3
        );
        assert_eq!(
            tally.found(&records(&[("a", "1"), ("b", "x"), ("e", "5")])),
            0
        );
        assert_eq!((tally.acknowledged(), tally.lost()), (6, 3));
    }
}
