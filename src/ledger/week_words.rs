//! Weeks in words. They describe and never judge: how much is right for a body is for its physician and a qualified
//! coach to say.

use super::week::{Balance, Budgeted, Week};
use super::week_load::Spread;
use crate::say;
use crate::words::{decimal, many, t};
use std::cmp::Ordering;

/// How the weeks are counted, formula by formula with its source: what stands behind *How this is counted*.
#[must_use]
pub fn formulas() -> [&'static str; 9] {
    [
        t(
            "A week begins on Monday (ISO 8601). A session counts on the day it began, by the clock of that place.",
        ),
        t(
            "Sets: all that were done but ramp-ups; each drop of a drop set is one. Hard: said to leave 4 reps or fewer, or to failure with nothing said. Any other set without a word on its reserve is not counted as hard, one of 5+ reps neither (where hard begins is common practice, no source).",
        ),
        t(
            "A set counts 1 for a main muscle of its exercise and 0.5 for one that also works (Pelland et al. 2024, preprint).",
        ),
        t(
            "Under 5, 5 to 9, 10 and more sets a week are the groups that Schoenfeld et al. 2017 compared (J Sports Sci 35(11):1073–1082). More sets went with more growth on average there. That is no rule for you: recovery differs from lifter to lifter.",
        ),
        t(
            "Volume load: sets × reps × load of work sets (Essentials of Strength Training and Conditioning).",
        ),
        t(
            "Session load: session RPE × minutes (Foster et al. 2001, J Strength Cond Res 15(1):109–115), in arbitrary units. A session without a rating has no load, and is said to be missing.",
        ),
        t(
            "Monotony: mean of the seven daily loads over their standard deviation, rest days being 0. Strain: the week's total × monotony (Foster 1998). The standard deviation is that of a sample (n − 1). Where all seven days are equal it is 0, and there is neither.",
        ),
        t(
            "Patterns: pulls and pushes both ways, hinges, squats, in sets. Exercises of one joint, trunk, carries and jumps are in neither.",
        ),
        t(
            "This describes what was done. It does not diagnose. Ask a physician about pain or exhaustion, and a qualified coach about how much to do.",
        ),
    ]
}

/// The groups of weekly sets a muscle that Schoenfeld et al. 2017 compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Band {
    /// Fewer than 5.
    Under5,
    /// 5 to 9; up to, and not, 10 where halves count.
    From5,
    /// 10 and more.
    From10,
}

impl Band {
    /// The group of so many halves of a set.
    #[must_use]
    pub fn of_halves(halves: u32) -> Band {
        match halves {
            0..10 => Band::Under5,
            10..20 => Band::From5,
            _ => Band::From10,
        }
    }

    /// Its name.
    #[must_use]
    pub fn name(self) -> &'static str {
        t(match self {
            Band::Under5 => "under 5",
            Band::From5 => "5 to 9",
            Band::From10 => "10 and more",
        })
    }
}

/// Half sets of so many days as sets a week, in tenths, rounded to the nearest; fewer days than a week are one. Weeks of the
/// calendar that the days touch are more than they make.
#[must_use]
pub fn tenths_a_week(halves: u32, days: u32) -> u32 {
    let days = days.max(7);
    (halves * 70 + days) / (2 * days)
}

/// So many halves of a set: `7.5`.
#[must_use]
pub fn halves_said(halves: u32) -> String {
    let half = if halves % 2 == 1 { ".5" } else { "" };
    decimal(&format!("{}{half}", halves / 2))
}

/// A figure to so many hundredths: `1.03`.
fn hundredths(figure: f64) -> String {
    let all = (figure * 100.0).round() as i64;
    decimal(&format!("{}.{:02}", all / 100, all % 100))
}

/// A figure of this week beside those of the weeks before it, in one sentence: how many they were at least, at most and
/// on average, each as `said` writes it. Weeks without a session are among them; those whose figure is not known (`None`)
/// are left out, and told.
#[must_use]
pub fn beside(before: &[Option<i64>], said: &dyn Fn(i64) -> String) -> Option<String> {
    let known: Vec<i64> = before.iter().copied().flatten().collect();
    let left_out = before.len() - known.len();
    let unrated = (left_out > 0).then(|| {
        many(
            left_out,
            "{n} week with an unrated session left out",
            "{n} weeks with unrated sessions left out",
        )
    });
    let figures = beside_known(&known, left_out == 0, said);
    let both: Vec<String> = figures.into_iter().chain(unrated).collect();
    (!both.is_empty()).then(|| both.join(", "))
}

/// The figures that are known; `all` says that no week is left out.
fn beside_known(before: &[i64], all: bool, said: &dyn Fn(i64) -> String) -> Option<String> {
    match before {
        [only] if all => return Some(say!("the week before: {only}", only = said(*only))),
        [only] => return Some(say!("one week before: {only}", only = said(*only))),
        _ => {}
    }
    let least = before.iter().min()?;
    let most = before.iter().max()?;
    let count = i64::try_from(before.len()).unwrap_or(i64::MAX);
    if least == most {
        return Some(say!(
            "{count} weeks before: {each} each",
            count,
            each = said(*least)
        ));
    }
    let sum: i64 = before.iter().sum();
    // Rounded to the nearest.
    let mean = (2 * sum + count) / (2 * count);
    Some(say!(
        "{count} weeks before: {least} to {most}, {mean} on average",
        count,
        least = said(*least),
        most = said(*most),
        mean = said(mean)
    ))
}

fn sets(count: u32) -> String {
    many(count as usize, "{n} set", "{n} sets")
}

impl Spread {
    /// Monotony and strain, or why there is neither, in one sentence.
    #[must_use]
    pub fn said(self) -> String {
        match self {
            Spread::NotOver => {
                t("Monotony and strain are said when the week is over: they need all seven days.")
                    .to_owned()
            }
            Spread::Unrated(count) => many(
                count as usize,
                "No monotony and no strain: {n} session has no session RPE.",
                "No monotony and no strain: {n} sessions have no session RPE.",
            ),
            Spread::AllEqual => {
                t("Monotony and strain are undefined: all seven days have the same load.")
                    .to_owned()
            }
            Spread::Known { monotony, strain } => say!(
                "Monotony {monotony}, strain {strain}.",
                monotony = hundredths(monotony),
                strain = strain.round() as i64
            ),
        }
    }
}

impl Balance {
    /// Pulls against pushes, and hinges against squats, in two sentences.
    #[must_use]
    pub fn said(&self) -> [String; 2] {
        [
            against(t("pull"), self.pull, t("push"), self.push),
            against(t("hinge"), self.hinge, t("squat"), self.squat),
        ]
    }
}

/// One pattern against its counterpart.
fn against(one: &str, ones: u32, other: &str, others: u32) -> String {
    let ratio = match (ones, others) {
        (0, _) | (_, 0) => String::new(),
        _ => say!(
            " ({ratio} to 1)",
            ratio = hundredths(f64::from(ones) / f64::from(others))
        ),
    };
    format!("{one} {}, {other} {}{ratio}", sets(ones), sets(others))
}

impl Budgeted {
    /// Time trained against the budgets, in one sentence; none where no sheet had one.
    #[must_use]
    pub fn said(&self) -> Option<String> {
        if self.sessions == 0 {
            return None;
        }
        let of = many(
            self.sessions as usize,
            "{n} session with a budget",
            "{n} sessions with a budget",
        );
        let (taken, planned) = (self.taken, self.planned);
        let stands = match taken.cmp(&planned) {
            Ordering::Equal => t("as budgeted").to_owned(),
            Ordering::Greater => say!("{minutes} min over", minutes = taken - planned),
            Ordering::Less => say!("{minutes} min under", minutes = planned - taken),
        };
        Some(say!(
            "{sessions}: {taken} min of {planned} budgeted, {stands}.",
            sessions = of,
            taken,
            planned,
            stands
        ))
    }
}

impl Week {
    /// What its session loads come to, in one sentence, with what is missing.
    #[must_use]
    pub fn load_said(&self) -> String {
        let missing = match self.load.unrated {
            0 => String::new(),
            count => many(
                count as usize,
                " {n} session has no rating and is not in it.",
                " {n} sessions have no rating and are not in it.",
            ),
        };
        match self.sessions {
            0 => t("No session, so no load.").to_owned(),
            _ => say!(
                "Session load {load} in all.{missing}",
                load = self.load.total(),
                missing
            ),
        }
    }

    /// That some sets belong to no muscle, in one sentence; none where all do.
    #[must_use]
    pub fn unknown_said(&self) -> Option<String> {
        (self.unknown > 0).then(|| {
            say!(
                "{sets} of exercises without known muscles are in none of these. Write such an exercise down under Sheets, Exercises.",
                sets = sets(self.unknown)
            )
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::minutes_said;
    use crate::words::grouped;

    #[test]
    fn the_groups_begin_where_the_source_says() {
        for (halves, band) in [
            (0, Band::Under5),
            (9, Band::Under5),
            (10, Band::From5),
            (19, Band::From5),
            (20, Band::From10),
        ] {
            assert_eq!(Band::of_halves(halves), band, "{halves}");
        }
        assert_eq!(halves_said(15), "7.5");
        assert_eq!(halves_said(16), "8");
    }

    #[test]
    fn one_pattern_against_none_has_no_ratio() {
        let balance = Balance {
            pull: 12,
            push: 9,
            hinge: 1,
            squat: 0,
        };
        let [across, below] = balance.said();
        assert_eq!(across, "pull 12 sets, push 9 sets (1.33 to 1)");
        assert_eq!(below, "hinge 1 set, squat 0 sets");
    }

    fn figure(figure: i64) -> String {
        grouped(&figure.to_string())
    }

    #[test]
    fn what_stands_beside_a_time_is_said_as_a_time() {
        let said = beside(&[Some(95), Some(240)], &|n| {
            minutes_said(u32::try_from(n).unwrap())
        });
        assert_eq!(
            said.as_deref(),
            Some("2 weeks before: 1 h 35 min to 4 h 00 min, 2 h 48 min on average")
        );
    }

    #[test]
    fn a_week_stands_beside_those_before_it() {
        let told = |before: &[i64]| {
            let before: Vec<Option<i64>> = before.iter().copied().map(Some).collect();
            beside(&before, &figure)
        };
        assert_eq!(
            told(&[0, 30, 40]).as_deref(),
            Some("3 weeks before: 0 to 40, 23 on average")
        );
        assert_eq!(
            told(&[15_553, 28_859]).as_deref(),
            Some("2 weeks before: 15,553 to 28,859, 22,206 on average")
        );
        assert_eq!(told(&[38, 38]).as_deref(), Some("2 weeks before: 38 each"));
        assert_eq!(told(&[30]).as_deref(), Some("the week before: 30"));
        assert_eq!(told(&[]), None);
    }

    /// A week in which a session is unrated has a load that nobody knows: it pulls no mean down.
    #[test]
    fn weeks_of_which_the_figure_is_not_known_are_left_out_and_told() {
        let said = |before: &[Option<i64>]| beside(before, &figure).unwrap();
        assert_eq!(
            said(&[Some(900), None, Some(700), None]),
            "2 weeks before: 700 to 900, 800 on average, 2 weeks with unrated sessions left out"
        );
        assert_eq!(
            said(&[Some(900), None]),
            "one week before: 900, 1 week with an unrated session left out"
        );
        assert_eq!(said(&[None]), "1 week with an unrated session left out");
    }

    /// 45 sets in four weeks are 11.25 a week, whatever weeks of the calendar those four touch.
    #[test]
    fn sets_a_week_are_of_the_days_that_are_told() {
        assert_eq!(tenths_a_week(90, 28), 113);
        assert_eq!(tenths_a_week(90, 56), 56);
        assert_eq!(tenths_a_week(20, 3), 100);
        assert_eq!(tenths_a_week(0, 0), 0);
    }

    #[test]
    fn time_is_set_against_the_budget() {
        let said = |taken, planned| {
            let budgeted = Budgeted {
                sessions: 2,
                taken,
                planned,
            };
            budgeted.said().unwrap()
        };
        assert_eq!(
            said(100, 90),
            "2 sessions with a budget: 100 min of 90 budgeted, 10 min over."
        );
        assert!(said(80, 90).ends_with("10 min under."));
        assert!(said(90, 90).ends_with("as budgeted."));
        assert_eq!(Budgeted::default().said(), None);
    }
}
