//! Ids that rise: UUIDv7 from a clock and random bytes that the shell hands in.

use uuid::Uuid;

/// Makes UUIDv7 ids, each greater than the one before, even when the clock is set back.
#[derive(Debug, Clone, Default)]
pub struct Mint {
    last: Option<Uuid>,
}

impl Mint {
    /// A mint whose first id is greater than `last`.
    #[must_use]
    pub fn after(last: Option<Uuid>) -> Mint {
        Mint { last }
    }

    /// Moves the mint on, so that later ids are greater than `seen`.
    pub fn see(&mut self, seen: Uuid) {
        self.last = self.last.max(Some(seen));
    }

    /// The next id, from Unix time in milliseconds and ten random bytes.
    pub fn next(&mut self, unix_ms: u64, random: [u8; 10]) -> Uuid {
        let mut id = uuid::Builder::from_unix_timestamp_millis(unix_ms, &random).into_uuid();
        if let Some(last) = self.last
            && id <= last
        {
            // The clock stands or went back: one millisecond after the last id it is.
            let ms = (last.as_u128() >> 80) as u64 + 1;
            id = uuid::Builder::from_unix_timestamp_millis(ms, &random).into_uuid();
        }
        self.last = Some(id);
        id
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
}
