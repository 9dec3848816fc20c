//! Ids that rise: UUIDv7 from a clock and random bytes that the shell hands in.

use uuid::Uuid;

/// The first millisecond of Unix time that a mint is not moved to by an id it sees: some 35 years, 2^40 ms, before the
/// 48 bits of an id end, in the year 10854. An id from there on was made by no clock, and behind it there would soon
/// be none that is greater: what comes after such an id does not sort after it.
const SEEN_END_MS: u64 = (1 << 48) - (1 << 40);

/// Makes UUIDv7 ids, each greater than the one before, even when the clock is set back or far ahead.
///
/// Ids whose time lies beyond the year 10853 are passed over, as other ids that are no guide.
#[derive(Debug, Clone, Default)]
pub struct Mint {
    last: Option<Uuid>,
}

/// The time of an id.
fn ms(id: Uuid) -> u64 {
    (id.as_u128() >> 80) as u64
}

impl Mint {
    /// A mint whose first id is greater than `last`.
    #[must_use]
    pub fn after(last: Option<Uuid>) -> Mint {
        let mut mint = Mint::default();
        if let Some(last) = last {
            mint.see(last);
        }
        mint
    }

    /// Moves the mint on, so that later ids are greater than `seen`; not by an id from the end of time.
    pub fn see(&mut self, seen: Uuid) {
        if ms(seen) < SEEN_END_MS {
            self.last = self.last.max(Some(seen));
        }
    }

    /// The next id, from Unix time in milliseconds and ten random bytes. A clock beyond the year 10853 counts as that.
    pub fn next(&mut self, unix_ms: u64, random: [u8; 10]) -> Uuid {
        let at = |ms: u64| uuid::Builder::from_unix_timestamp_millis(ms, &random).into_uuid();
        let mut id = at(unix_ms.min(SEEN_END_MS - 1));
        if let Some(last) = self.last
            && id <= last
        {
            // The clock stands or went back: one millisecond after the last id it is. Before the 48 bits end, 2^40 ids
            // would have to be made so.
            id = at(ms(last) + 1);
        }
        self.last = Some(id);
        id
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn ids_rise_though_the_clock_stands_still_or_goes_back() {
        let mut mint = Mint::default();
        let mut last = mint.next(1_700_000_000_000, [9; 10]);
        for (ms, byte) in [
            (1_700_000_000_000, 1),
            (1_700_000_000_000, 200),
            (1_600_000_000_000, 0),
            (0, 255),
        ] {
            let id = mint.next(ms, [byte; 10]);
            assert!(id > last, "{id} after {last}");
            assert_eq!(id.get_version_num(), 7);
            last = id;
        }
    }

    #[test]
    fn ids_rise_above_what_was_stored() {
        let stored = Mint::default().next(1_900_000_000_000, [7; 10]);
        assert!(Mint::after(Some(stored)).next(1_800_000_000_000, [0; 10]) > stored);
        let mut mint = Mint::default();
        mint.see(stored);
        assert!(mint.next(0, [0; 10]) > stored);
    }

    #[test]
    fn an_id_at_the_end_of_time_does_not_make_the_next_one_begin_anew() {
        let mut mint = Mint::default();
        let before = mint.next(1_900_000_000_000, [7; 10]);
        mint.see(Uuid::from_u128(u128::MAX));
        mint.see(Uuid::from_u128(((1 << 48) - 1) << 80));
        let next = mint.next(1_900_000_000_001, [0; 10]);
        assert!(next > before);
        assert_eq!(ms(next), 1_900_000_000_001);
    }

    proptest! {
        /// Whatever was seen and whatever the clock says, ids rise, and above every id that was seen before the limit.
        #[test]
        fn ids_rise_whatever_was_seen(
            steps in prop::collection::vec((any::<u128>(), any::<u64>(), any::<[u8; 10]>()), 1..20),
            far in any::<bool>(),
        ) {
            let mut mint = Mint::default();
            let mut last = Uuid::nil();
            for (seen, clock, random) in steps {
                // Half of the runs end just before the limit.
                let seen = if far { (u128::from(SEEN_END_MS - 1) << 80) | (seen >> 48) } else { seen };
                let seen = Uuid::from_u128(seen);
                mint.see(seen);
                let id = mint.next(clock, random);
                prop_assert!(id > last);
                prop_assert!(id > seen || ms(seen) >= SEEN_END_MS);
                prop_assert_eq!(id.get_version_num(), 7);
                last = id;
            }
        }
    }
}
