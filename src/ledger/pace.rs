//! The lifter's own pace: how long the change from one group of blocks to the next takes beyond the rest.

use super::heading::Heading;
use super::times::logged_sets;
use crate::heat::Category;
use crate::order;
use crate::say;
use crate::session::{Event, Moment, SessionId, Slot, State};
use crate::sheet::set_seconds;
use crate::units::Seconds;
use chrono::{DateTime, FixedOffset};

/// Change-over that is assumed until enough are measured, in seconds. Common practice, no source.
const ASSUMED_SECONDS: i64 = 60;
/// Fewest measured change-overs that are believed.
pub const CHANGE_OVERS_LEAST: usize = 5;
/// How many of the newest change-overs count.
pub const CHANGE_OVERS_NEWEST: usize = 20;
/// Only so many of the newest sessions are looked at, so that a start reads no more of them.
pub const PACE_SESSIONS: usize = 60;
/// A longer change-over is a pause and is not measured, in seconds.
const PAUSE_SECONDS: u64 = 15 * 60;

/// How long a change-over takes, and how that is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    /// 60 seconds: fewer than five were measured.
    Assumed,
    /// The median of the lifter's own newest change-overs.
    Measured {
        /// The median.
        change_over: Seconds,
        /// How many it is made of, 5 to 20.
        of: usize,
    },
}

impl Pace {
    /// The pace that `headings`, the newest first, tell.
    #[must_use]
    pub fn of(headings: &[Heading]) -> Pace {
        Pace::before(headings, None)
    }

    /// The pace that the sessions before that place tell, the newest [`PACE_SESSIONS`] of them; `headings` the newest
    /// first.
    #[must_use]
    pub fn before(headings: &[Heading], place: Option<(DateTime<FixedOffset>, SessionId)>) -> Pace {
        let before = |heading: &&Heading| place.is_none_or(|place| heading.place() < place);
        let before: Vec<&Heading> = headings.iter().filter(before).take(PACE_SESSIONS).collect();
        Pace::told(&before)
    }

    /// The same, all of `headings` counting; they come with the newest last.
    #[must_use]
    pub fn of_newest_last(headings: &[Heading]) -> Pace {
        let newest: Vec<&Heading> = headings.iter().rev().take(PACE_SESSIONS).collect();
        Pace::told(&newest)
    }

    fn told(headings: &[&Heading]) -> Pace {
        let mut newest: Vec<Seconds> = headings
            .iter()
            .flat_map(|heading| heading.change_overs.iter().rev())
            .take(CHANGE_OVERS_NEWEST)
            .copied()
            .collect();
        order::by_key(&mut newest, |seconds| *seconds);
        let of = newest.len();
        match (newest.get(of.saturating_sub(1) / 2), newest.get(of / 2)) {
            (Some(low), Some(high)) if of >= CHANGE_OVERS_LEAST => Pace::Measured {
                change_over: Seconds::saturating(i64::midpoint(
                    i64::from(low.get()),
                    i64::from(high.get()),
                )),
                of,
            },
            _ => Pace::Assumed,
        }
    }

    /// Seconds from group to group beyond the prescribed rest.
    #[must_use]
    pub fn change_over(self) -> Seconds {
        match self {
            Pace::Assumed => Seconds::saturating(ASSUMED_SECONDS),
            Pace::Measured { change_over, .. } => change_over,
        }
    }

    /// Which it is, in one sentence.
    #[must_use]
    pub fn said(self) -> String {
        match self {
            Pace::Assumed => say!(
                "From one exercise to the next {seconds} s beyond the rest, until {least} of your own are measured.",
                seconds = ASSUMED_SECONDS,
                least = CHANGE_OVERS_LEAST
            ),
            Pace::Measured { change_over, of } => say!(
                "From one exercise to the next {seconds} s beyond the rest: the middle of your last {of}.",
                seconds = change_over,
                of
            ),
        }
    }
}

/// The change-overs of a session, in the order they were made.
///
/// From the log of the last set of one group to the start of the first set of the next, less the prescribed rest,
/// stretched where it was begun in the heat, never below 0. Where no start was recorded, to the log less the predicted
/// length of that set. More than 15 minutes is a pause and does not count.
pub(super) fn change_overs(counting: &[&Event], state: &State) -> Vec<Seconds> {
    let mut measured = Vec::new();
    let mut before: Option<(&Slot, Moment, u64)> = None;
    for logged in logged_sets(counting) {
        if logged.after_pause {
            before = None;
        }
        let Some(slot) = logged.slot(state) else {
            continue;
        };
        let at = logged.event.moment();
        if let Some((last, since, rest)) = before
            && last.planned.group != slot.planned.group
        {
            let gap_ms = match logged.begun {
                Some(begun) => begun.since(&since),
                None => at
                    .since(&since)
                    .saturating_sub(set_seconds(&slot.planned) * 1000),
            };
            let seconds = (gap_ms / 1000).saturating_sub(rest);
            if seconds <= PAUSE_SECONDS {
                measured.push(Seconds::saturating(seconds as i64));
            }
        }
        let rest = u64::from(logged.heat.stretched(slot.planned.rest_after).get());
        before = Some((slot, at, rest));
    }
    measured
}

/// Seconds by which the rests between the sets done were longer than written: those begun after heat was noted.
pub(super) fn longer_rests(counting: &[&Event], state: &State) -> u64 {
    let mut longer = 0;
    let mut before: Option<(&Slot, Category)> = None;
    for logged in logged_sets(counting) {
        if logged.after_pause {
            before = None;
        }
        let Some(slot) = logged.slot(state) else {
            continue;
        };
        if let Some((last, heat)) = before {
            let rest = last.planned.rest_before(&slot.planned);
            longer += u64::from(heat.stretched(rest).get()) - u64::from(rest.get());
        }
        before = Some((slot, logged.heat));
    }
    longer
}
