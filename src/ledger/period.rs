//! A period in figures: what a report of it is made of.

use super::compare::{BestOfPeriod, Period, best};
use super::history::{Past, moved_as_newest};
use super::week::{MuscleSets, Week};
use crate::exercises::Muscle;
use crate::strength::{Change, Curve, Estimate, change_since, track};

/// What a period did to one exercise.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// In how many of its sessions it was done.
    pub sessions: usize,
    /// The best set of the period; none where nothing of one was done.
    pub best: Option<BestOfPeriod>,
    /// The estimate at its begin and at its end; none where too little is known. At its begin: what was known before it,
    /// or else after its first session that feeds the estimate.
    pub estimate: Option<(Estimate, Estimate)>,
    /// The change between the two, told apart from noise; none where there is but one.
    pub change: Option<Change>,
}

/// What a period did to an exercise; `pasts` is all that was done of it, the oldest first.
#[must_use]
pub fn course(pasts: &[Past], curve: Curve, period: Period) -> Course {
    let (first, last) = (period.first(), period.last());
    let day = |past: &Past| past.performance.at.date_naive();
    let within = pasts.iter().filter(|past| period.has(past.performance.at));
    let mut sessions: Vec<_> = within.map(Past::session).collect();
    sessions.dedup();
    let (known, _) = moved_as_newest(pasts.iter().filter(|past| day(past) <= last));
    let known = known.iter().map(|past| &past.performance);
    let track = track(known.clone(), curve);
    let before = track.iter().rfind(|it| it.at().date_naive() < first);
    let begin = before.or_else(|| track.iter().find(|it| it.at().date_naive() >= first));
    let end = track.last().filter(|end| end.at().date_naive() >= first);
    let ends = begin.zip(end);
    Course {
        sessions: sessions.len(),
        best: best(period, pasts),
        estimate: ends.map(|(begin, end)| (begin.e1rm(), end.e1rm())),
        change: ends.and_then(|(begin, _)| change_since(known, curve, begin.at())),
    }
}

/// The sets of each muscle in all these weeks, from the legs up; muscles without any are left out.
#[must_use]
pub fn muscles_of(weeks: &[Week]) -> Vec<MuscleSets> {
    let of_muscle = |muscle: Muscle| {
        let all = weeks.iter().flat_map(|week| &week.muscles);
        let of_it = all.filter(|sets| sets.muscle == muscle);
        of_it.fold(
            MuscleSets {
                muscle,
                main: 0,
                also: 0,
                hard_main: 0,
                hard_also: 0,
            },
            |sum, sets| MuscleSets {
                muscle,
                main: sum.main + sets.main,
                also: sum.also + sets.also,
                hard_main: sum.hard_main + sets.hard_main,
                hard_also: sum.hard_also + sets.hard_also,
            },
        )
    };
    let all = Muscle::ALL.into_iter().map(of_muscle);
    all.filter(|sets| sets.halves() > 0).collect()
}
