//! The sheet that comes next.

use super::light::Monday;
use super::plan::{Plan, Rotation, Weekdays};
use super::record::Programme;
use crate::order;
use crate::sheet::SheetId;
use chrono::{DateTime, Datelike, FixedOffset};

/// A session that is over and in which a set was done, as far as a programme looks at it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DoneSheet {
    /// The sheet that it followed.
    pub sheet: SheetId,
    /// When it began, with the offset of where that was.
    pub began: DateTime<FixedOffset>,
}

/// The sheet that is offered, and why it is that one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Offer {
    /// The sheet.
    pub sheet: SheetId,
    /// Why it is that one.
    pub because: Why,
}

/// Why a sheet is offered. Days count from 0, Monday.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// Nothing of the rotation was done yet.
    First,
    /// It follows, in the rotation, on the one that was done last.
    After {
        /// The one that was done last.
        sheet: SheetId,
        /// When.
        on: DateTime<FixedOffset>,
    },
    /// Today is its day.
    Today {
        /// The day.
        day: usize,
    },
    /// Its day was earlier this week.
    Missed {
        /// The day.
        day: usize,
    },
    /// Its day comes next.
    Coming {
        /// The day.
        day: usize,
    },
}

/// The sheet that comes next in `programme`: always one of its sheets that `exists`; none when none of them does.
///
/// Of a rotation the one after what was done last, in whatever order and however often; of weekdays today's, then one
/// that was missed earlier this week, then the next to come. `done` may hold any sessions in any order; the day of each
/// is that of the place where it began, so a journey or a change of the clocks moves nothing.
#[must_use]
pub fn next(
    programme: &Programme,
    exists: &dyn Fn(SheetId) -> bool,
    done: &[DoneSheet],
    now: DateTime<FixedOffset>,
) -> Option<Offer> {
    let mut done: Vec<&DoneSheet> = done.iter().collect();
    order::by_key(&mut done, |session| session.began);
    match &programme.plan {
        Plan::Rotation(rotation) => in_rotation(rotation, exists, &done),
        Plan::Weekdays(days) => in_week(days, exists, &done, now),
    }
}

/// Indices of a list of `len`, from `start` on and round.
fn round(start: usize, len: usize) -> impl Iterator<Item = usize> {
    (0..len).map(move |step| (start + step) % len)
}

fn in_rotation(
    rotation: &Rotation,
    exists: &dyn Fn(SheetId) -> bool,
    done: &[&DoneSheet],
) -> Option<Offer> {
    let sheets = rotation.sheets();
    let mut place = 0;
    let mut because = Why::First;
    for session in done {
        // A sheet may stand in the rotation several times: the nearest ahead is the one that was done.
        if let Some(at) = round(place, sheets.len()).find(|&at| sheets[at] == session.sheet) {
            place = at + 1;
            because = Why::After {
                sheet: session.sheet,
                on: session.began,
            };
        }
    }
    let at = round(place, sheets.len()).find(|&at| exists(sheets[at]))?;
    Some(Offer {
        sheet: sheets[at],
        because,
    })
}

fn in_week(
    week: &Weekdays,
    exists: &dyn Fn(SheetId) -> bool,
    done: &[&DoneSheet],
    now: DateTime<FixedOffset>,
) -> Option<Offer> {
    let days = week.days();
    let today = weekday(now);
    let this_week = Monday::of(now.date_naive());
    let of_this_week = |session: &&&DoneSheet| Monday::of(session.began.date_naive()) == this_week;
    let covered = covered(days, done.iter().filter(of_this_week));
    let open = |day: usize| {
        let sheet = days[day].filter(|sheet| exists(*sheet));
        sheet.filter(|_| !covered[day])
    };
    let offer = |day: usize, because| open(day).map(|sheet| Offer { sheet, because });
    let missed = || (0..today).find_map(|day| offer(day, Why::Missed { day }));
    let ahead = || (today + 1..7).find_map(|day| offer(day, Why::Coming { day }));
    // Next week everything is open again.
    let later = || {
        let mut all = days.iter().enumerate();
        all.find_map(|(day, sheet)| {
            Some(Offer {
                sheet: sheet.filter(|sheet| exists(*sheet))?,
                because: Why::Coming { day },
            })
        })
    };
    offer(today, Why::Today { day: today })
        .or_else(missed)
        .or_else(ahead)
        .or_else(later)
}

/// The days whose sheet was done: each session stands for its own day, else for the last open day of its sheet before
/// (it was late), else for the first after (it was early).
fn covered<'a>(
    days: &[Option<SheetId>; 7],
    done: impl Iterator<Item = &'a &'a DoneSheet>,
) -> [bool; 7] {
    let mut covered = [false; 7];
    for session in done {
        let today = weekday(session.began);
        let late_then_early = (0..=today).rev().chain(today + 1..7);
        let mut fitting = late_then_early.filter(|&day| days[day] == Some(session.sheet));
        if let Some(day) = fitting.find(|&day| !covered[day]) {
            covered[day] = true;
        }
    }
    covered
}

fn weekday(at: DateTime<FixedOffset>) -> usize {
    at.weekday().num_days_from_monday() as usize
}
