//! Looking back in the ledger: what is sought, how far it was read, and the reading itself, a stretch at a time.

use crate::ledger::{Heading, Sought};
use crate::session::SessionId;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::reading::headings_between;
use crate::ui::stanchion::Stanchion;
use crate::units::parse_date;
use chrono::{Days, NaiveDate};
use leptos::task::spawn_local;

/// A reading goes on until it found so many, or nothing is left.
const ENOUGH: usize = 40;

/// The first stretch that is read, in days. Where it holds nothing the next is twice as long.
const STRETCH_DAYS: u64 = 180;

/// What a person looks back for; stays while they look at one session and come back.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LookBack {
    /// True for the calendar, false for the list.
    pub calendar: bool,
    /// A day of the month that is shown; none is this month.
    pub month: Option<NaiveDate>,
    /// What was typed.
    pub text: String,
    /// The first day, as the field has it; empty for none.
    pub first: String,
    /// The last day, as the field has it; empty for none.
    pub last: String,
    /// Down to which day the list was read.
    pub until: Option<NaiveDate>,
}

impl LookBack {
    /// What is sought.
    pub fn sought(&self, model: &Model) -> Sought {
        let done = model.summaries.iter();
        let done = done.map(|(id, summary)| (id, summary.name.as_str()));
        let (first, last) = (parse_date(&self.first), parse_date(&self.last));
        Sought::new(&self.text, &model.exercises, done, first, last)
    }
}

/// What was found so far.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Found {
    /// The sessions, the newest first.
    pub headings: Vec<Heading>,
    /// The day before which nothing was read yet; none when all was read.
    pub before: Option<NaiveDate>,
    /// True while more is read.
    pub reading: bool,
    /// Which search it is: what an older one still brings is let go.
    turn: u32,
}

impl Found {
    /// What of `newest` is sought: the beginning of every search. `whole` says that there are no others.
    fn begin(newest: &[Heading], whole: bool, sought: &Sought, turn: u32) -> Found {
        let oldest = newest.last().map(|heading| heading.began.date_naive());
        // Of the oldest day there may be more.
        let before = oldest.and_then(|day| day.succ_opt()).filter(|_| !whole);
        let bound = sought.last().and_then(|last| last.succ_opt());
        Found {
            headings: newest
                .iter()
                .filter(|it| sought.finds(it))
                .cloned()
                .collect(),
            before: match (before, bound) {
                (Some(before), Some(bound)) => Some(before.min(bound)),
                (before, _) => before,
            },
            reading: false,
            turn,
        }
    }

    /// Takes in what was read of a stretch, the newest first.
    fn take(&mut self, read: Vec<Heading>, sought: &Sought) {
        let known: Vec<SessionId> = self.headings.iter().map(|it| it.session).collect();
        let more = read.into_iter().filter(|it| sought.finds(it));
        self.headings
            .extend(more.filter(|it| !known.contains(&it.session)));
    }
}

/// The stretch before `before` that is read next: its first and its last day. Nothing lies before 1970, as ids hold the
/// time since then.
fn stretch(before: NaiveDate, days: u64) -> Option<(NaiveDate, NaiveDate)> {
    let floor = NaiveDate::from_ymd_opt(1970, 1, 1)?;
    let last = before.pred_opt().filter(|last| *last >= floor)?;
    let first = before.checked_sub_days(Days::new(days)).unwrap_or(floor);
    Some((first.max(floor), last))
}

/// Begins a search again: from what is in the model, and where that is too little from what is kept.
pub fn search(app: Stanchion, found: Live<Found>) {
    let (begun, until) = app.model.with_untracked(|model| {
        let sought = model.back.sought(model);
        let turn = found.with_untracked(|found| found.turn.wrapping_add(1));
        let whole = model.sessions <= model.headings.len();
        (
            Found::begin(&model.headings, whole, &sought, turn),
            model.back.until,
        )
    });
    let few = begun.headings.len() < ENOUGH;
    let left = begun
        .before
        .is_some_and(|before| until.is_some_and(|until| until < before));
    let everything = app
        .model
        .with_untracked(|model| model.back.sought(model).is_everything());
    let goes_on = begun.before.is_some() && (left || (few && !everything));
    found.set(begun);
    if goes_on {
        read_on(app, found, until);
    }
}

/// Reads further back: as far as `until` where that is given, else until there is enough or nothing is left.
pub fn read_on(app: Stanchion, found: Live<Found>, until: Option<NaiveDate>) {
    if found.with_untracked(|found| found.reading) {
        return;
    }
    found.update(|found| found.reading = true);
    let turn = found.with_untracked(|found| found.turn);
    let sought = app.model.with_untracked(|model| model.back.sought(model));
    spawn_local(async move {
        let mut days = STRETCH_DAYS;
        let mut brought = 0;
        // The signal goes with the page that holds it.
        while let Some(before) = found.try_get_untracked().and_then(|now| now.before) {
            let reached = match until {
                Some(until) => before <= until,
                None => brought >= ENOUGH,
            };
            if reached || found.with_untracked(|now| now.turn) != turn {
                break;
            }
            let bounded = sought.first().is_some_and(|first| before <= first);
            let next = stretch(before, days).filter(|_| !bounded);
            let Some((first, last)) = next else {
                found.update(|now| now.before = None);
                break;
            };
            let first = until.map_or(first, |until| first.max(until));
            match headings_between(&app.keep(), first, last).await {
                Ok(read) => {
                    days = if read.is_empty() {
                        days * 2
                    } else {
                        STRETCH_DAYS
                    };
                    found.update(|now| {
                        if now.turn == turn {
                            let had = now.headings.len();
                            now.take(read, &sought);
                            now.before = Some(first);
                            brought += now.headings.len() - had;
                        }
                    });
                    // At once: whoever opens a session while more is read comes back to what was there.
                    if found
                        .try_get_untracked()
                        .is_some_and(|now| now.turn == turn)
                    {
                        app.model.update(|model| model.back.until = Some(first));
                    }
                }
                Err(error) => {
                    app.complain(error.to_string());
                    break;
                }
            }
        }
        found.update(|now| {
            if now.turn == turn {
                now.reading = false;
            }
        });
        if let Some(reached) = found.try_get_untracked().filter(|now| now.turn == turn) {
            let until = reached.before.or(NaiveDate::from_ymd_opt(1970, 1, 1));
            app.model.update(|model| model.back.until = until);
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        parse_date(text).unwrap()
    }

    #[test]
    fn stretches_follow_each_other_down_to_the_first_day_of_all() {
        let (first, last) = stretch(day("2026-11-25"), 180).unwrap();
        assert_eq!(last, day("2026-11-24"));
        assert_eq!(first, day("2026-05-29"));
        let (first, last) = stretch(day("1970-02-01"), 180).unwrap();
        assert_eq!((first, last), (day("1970-01-01"), day("1970-01-31")));
        assert_eq!(stretch(first, 180), None);
    }

    #[test]
    fn a_ledger_of_a_few_sessions_is_read_whole_at_once() {
        let found = Found::begin(&[], true, &Sought::default(), 1);
        assert_eq!((found.before, found.headings.len()), (None, 0));
    }
}
