//! The shares of the work load that ramp-up sets usually have.

use crate::units::Share;

/// Usual shares of `sets` ramp-up sets, rising to 80 %.
///
/// One set at 80 %, or two at 40 % and 80 %, served best before work at 80 % of the maximum (Ribeiro et al. 2020,
/// PMC7558980: squat and bench press). More sets: evenly between the two, to the nearest 5 %, common practice, no
/// source. None for no sets.
#[must_use]
pub fn usual_ramp(sets: u8) -> Vec<Share> {
    let last = u16::from(sets.max(2) - 1);
    let share = |index: u16| {
        // In fifths of a tenth, rounded to the nearest: 8 is 40 %, 16 is 80 %.
        let fives = 8 + (8 * index * 2 + last) / (last * 2);
        Share::percent(fives as u8 * 5)
    };
    match sets {
        1 => vec![share(1)],
        sets => (0..u16::from(sets)).map(share).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_rise_to_four_fifths_and_there_is_one_for_each_set() {
        let percent = |sets| {
            let shares: Vec<String> = usual_ramp(sets)
                .iter()
                .map(|s| s.in_percent().to_string())
                .collect();
            shares.join(" ")
        };
        assert_eq!(percent(0), "");
        assert_eq!(percent(1), "80");
        assert_eq!(percent(2), "40 80");
        assert_eq!(percent(3), "40 60 80");
        assert_eq!(percent(4), "40 55 65 80");
        assert_eq!(percent(5), "40 50 60 70 80");
        for sets in 1..=20 {
            let shares = usual_ramp(sets);
            assert_eq!(shares.len(), usize::from(sets));
            assert!(shares.is_sorted() && shares.last() == Some(&Share::percent(80)));
        }
    }
}
