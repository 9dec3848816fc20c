//! Which touches count: one finger or knuckle at a time, no palm, no rain, no second tap of a bounce. Pure.

use crate::device::events::Pointer;

/// A second tap on the large button within this time, in milliseconds, is taken for an accident: a wet finger, a bounce.
/// Our own choice; twice the longest double click that desks allow by default (from memory).
pub const SLIP_MS: u64 = 600;

/// Two taps that count reps are at least so far apart, in milliseconds: five reps a second are none.
pub const REP_TAP_MS: u64 = 200;

/// What covers more than this, in CSS pixels, is a palm: some 2 cm at 160 pixels an inch. A knuckle is half of it. Our
/// own choice.
const PALM_PX: f64 = 130.0;

/// The touch under way or the last one, from the first finger down to the last one up.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Touches {
    down: Vec<i32>,
    spoiled: bool,
    moved_ms: Option<u64>,
}

impl Touches {
    /// Takes what a pointer did at `now_ms`.
    pub fn take(&mut self, pointer: Pointer, now_ms: u64) {
        match pointer {
            Pointer::Down(id, size) => {
                if self.down.is_empty() {
                    self.spoiled = false;
                }
                self.spoiled |= size > PALM_PX || !self.down.is_empty();
                self.down.retain(|other| *other != id);
                self.down.push(id);
            }
            Pointer::Up(id) => self.down.retain(|other| *other != id),
            Pointer::Cancelled(id) => {
                self.down.retain(|other| *other != id);
                self.spoiled = true;
            }
        }
        self.moved_ms = Some(now_ms);
    }

    /// Whether a tap at `now_ms` counts: not when it came out of a touch of several fingers, of a palm, or one that the
    /// system took. Keys, and helpers that press buttons without a pointer, always count.
    #[must_use]
    pub fn count(&self, now_ms: u64) -> bool {
        let of_touch = self
            .moved_ms
            .is_some_and(|moved| now_ms.saturating_sub(moved) < SLIP_MS);
        !(self.spoiled && of_touch)
    }
}

/// Whether a tap at `now_ms` is far enough from the one before.
#[must_use]
pub fn apart(last_ms: Option<u64>, now_ms: u64, gap_ms: u64) -> bool {
    last_ms.is_none_or(|last| now_ms.saturating_sub(last) >= gap_ms)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after(pointers: &[Pointer]) -> Touches {
        let mut touches = Touches::default();
        for pointer in pointers {
            touches.take(*pointer, 1000);
        }
        touches
    }

    use Pointer::{Cancelled, Down, Up};

    #[test]
    fn a_finger_and_a_knuckle_count() {
        assert!(Touches::default().count(0));
        assert!(after(&[Down(1, 24.0), Up(1)]).count(1001));
        assert!(after(&[Down(1, 64.0), Up(1)]).count(1001));
    }

    #[test]
    fn a_palm_a_second_finger_and_what_the_system_took_do_not() {
        assert!(!after(&[Down(1, 180.0), Up(1)]).count(1001));
        assert!(!after(&[Down(1, 24.0), Down(2, 24.0), Up(2), Up(1)]).count(1001));
        assert!(!after(&[Down(1, 24.0), Down(2, 24.0), Up(1)]).count(1001));
        assert!(!after(&[Down(1, 24.0), Cancelled(1)]).count(1001));
    }

    #[test]
    fn the_next_touch_is_judged_by_itself_and_a_key_is_no_touch() {
        assert!(after(&[Down(1, 180.0), Up(1), Down(2, 24.0), Up(2)]).count(1001));
        assert!(after(&[Down(1, 180.0), Up(1)]).count(1000 + SLIP_MS));
    }

    #[test]
    fn two_taps_in_a_row_are_one() {
        assert!(apart(None, 5, SLIP_MS));
        assert!(!apart(Some(1000), 1000 + SLIP_MS - 1, SLIP_MS));
        assert!(apart(Some(1000), 1000 + SLIP_MS, SLIP_MS));
        assert!(!apart(Some(1000), 900, SLIP_MS));
    }
}
