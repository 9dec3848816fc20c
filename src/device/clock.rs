//! Time and chance: wall clock, steady clock, random bytes. The core is given their readings.

use super::js;
use chrono::{DateTime, FixedOffset, Offset, TimeDelta, Utc};
use std::cell::Cell;

/// Now, by the phone's clock, with the offset that holds here and now.
#[must_use]
pub fn wall() -> DateTime<FixedOffset> {
    let date = js_sys::Date::new_0();
    // By its standard a browser's time is a whole number of milliseconds within ±8.64e15.
    let utc: DateTime<Utc> =
        DateTime::from_timestamp_millis(date.get_time() as i64).unwrap_or(DateTime::UNIX_EPOCH);
    utc.with_timezone(&offset(date.get_timezone_offset()))
}

thread_local! {
    /// By how much [`running_on`] is ahead of the phone's clock.
    static AHEAD_MS: Cell<i64> = const { Cell::new(0) };
}

/// [`wall`], or ahead of it by what [`run_on_from`] was told.
#[must_use]
pub fn running_on() -> DateTime<FixedOffset> {
    let now = wall();
    now.checked_add_signed(TimeDelta::milliseconds(AHEAD_MS.get()))
        .unwrap_or(now)
}

/// Lets [`running_on`] run on from `newest` if the phone's clock is behind it: it was set back since. Without this what
/// began before would stand still until the clock has caught up.
pub fn run_on_from(newest: DateTime<FixedOffset>) {
    let behind = (newest - running_on()).num_milliseconds();
    if behind > 0 {
        AHEAD_MS.set(AHEAD_MS.get().saturating_add(behind));
    }
}

/// Lets [`running_on`] be the phone's clock again.
pub fn go_by_the_phone() {
    AHEAD_MS.set(0);
}

/// JavaScript counts minutes *behind* UTC; chrono counts seconds ahead of it.
fn offset(minutes_behind: f64) -> FixedOffset {
    let ahead = -(minutes_behind * 60.0) as i32;
    FixedOffset::east_opt(ahead).unwrap_or_else(|| Utc.fix())
}

/// Milliseconds since the page was opened, by a clock that never steps back.
#[must_use]
pub fn monotonic_ms() -> f64 {
    web_sys::window()
        .and_then(|window| window.performance())
        .map_or_else(js_sys::Date::now, |performance| performance.now())
}

/// Random bytes from the browser's generator for secrets; from `Math.random` where there is none
/// (they serve as ids, not as secrets).
#[must_use]
pub fn random_bytes<const N: usize>() -> [u8; N] {
    let mut bytes = [0; N];
    let filled = js::global("crypto").is_some_and(|_| {
        web_sys::window()
            .and_then(|window| window.crypto().ok())
            .is_some_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok())
    });
    if !filled {
        for byte in &mut bytes {
            *byte = (js_sys::Math::random() * 256.0) as u8;
        }
    }
    bytes
}

thread_local! {
    static RUN: Cell<Option<u32>> = const { Cell::new(None) };
}

/// A random number that stays the same until the page is loaded again: intervals by
/// [`monotonic_ms`] may only be taken between readings of the same run.
#[must_use]
pub fn run_id() -> u32 {
    RUN.with(|run| {
        run.get().unwrap_or_else(|| {
            let drawn = u32::from_le_bytes(random_bytes());
            run.set(Some(drawn));
            drawn
        })
    })
}
