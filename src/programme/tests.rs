//! What is offered next, by hand and for random histories.

use super::*;
use crate::sheet::{Line, SheetId};
use crate::units::Share;
use chrono::{DateTime, FixedOffset, NaiveDate, TimeDelta};
use proptest::prelude::*;
use uuid::Uuid;

fn sheet(n: u128) -> SheetId {
    SheetId(Uuid::from_u128(n))
}

fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn programme(plan: Plan) -> Programme {
    Programme {
        id: ProgrammeId(Uuid::from_u128(1)),
        version: Uuid::from_u128(2),
        written: at("2026-01-05T09:00:00+01:00"),
        name: Line::new("Winter").unwrap(),
        plan,
        light: None,
    }
}

fn rotation(sheets: &[u128]) -> Programme {
    let sheets = sheets.iter().map(|&n| sheet(n)).collect();
    programme(Plan::Rotation(Rotation::new(sheets).unwrap()))
}

/// Sheets on days, Monday first; 0 is none.
fn week(days: [u128; 7]) -> Programme {
    let days = days.map(|n| (n > 0).then(|| sheet(n)));
    programme(Plan::Weekdays(Weekdays::new(days).unwrap()))
}

fn done(n: u128, began: &str) -> DoneSheet {
    DoneSheet {
        sheet: sheet(n),
        began: at(began),
    }
}

/// The number of the sheet that is offered, and why; sheets below 100 exist.
fn offered(programme: &Programme, history: &[DoneSheet], now: &str) -> (u128, String) {
    let exists = |sheet: SheetId| sheet.0.as_u128() < 100;
    let offer = next(programme, &exists, history, at(now)).unwrap();
    let name = |sheet: SheetId| exists(sheet).then(|| format!("sheet {}", sheet.0.as_u128()));
    (offer.sheet.0.as_u128(), offer.because.said(&name))
}

const MONDAY: &str = "2026-01-05T18:00:00+01:00";
const TUESDAY: &str = "2026-01-06T18:00:00+01:00";
const WEDNESDAY: &str = "2026-01-07T18:00:00+01:00";
const THURSDAY: &str = "2026-01-08T18:00:00+01:00";
const SUNDAY: &str = "2026-01-11T18:00:00+01:00";

#[test]
fn a_rotation_goes_on_after_what_was_done_last() {
    let abc = rotation(&[1, 2, 3]);
    let last = |history: &[DoneSheet]| offered(&abc, history, SUNDAY);
    assert_eq!(last(&[]), (1, "first of the rotation".to_owned()));
    let mut history = vec![done(1, MONDAY)];
    let after_a = "follows on sheet 1, done on 5 Jan 2026".to_owned();
    assert_eq!(last(&history), (2, after_a));
    // Twice the same, then out of order, then a sheet that is not in it: it goes on after what was done last.
    history.push(done(1, TUESDAY));
    assert_eq!(last(&history).0, 2);
    history.push(done(3, WEDNESDAY));
    assert_eq!(last(&history).0, 1);
    history.push(done(50, THURSDAY));
    assert_eq!(last(&history).0, 1);
    // The order in which sessions are told does not matter.
    history.reverse();
    assert_eq!(last(&history).0, 1);
}

#[test]
fn a_sheet_that_stands_twice_in_a_rotation_is_told_apart_by_what_came_before() {
    let abac = rotation(&[1, 2, 1, 3]);
    let mut history = vec![done(1, MONDAY), done(2, TUESDAY)];
    assert_eq!(offered(&abac, &history, SUNDAY).0, 1);
    history.push(done(1, WEDNESDAY));
    assert_eq!(offered(&abac, &history, SUNDAY).0, 3);
}

#[test]
fn sheets_that_were_removed_are_passed_over() {
    let with_gone = rotation(&[1, 102, 3]);
    assert_eq!(offered(&with_gone, &[done(1, MONDAY)], SUNDAY).0, 3);
    let (next_one, why) = offered(&with_gone, &[done(102, MONDAY)], SUNDAY);
    assert_eq!(next_one, 3);
    assert_eq!(
        why,
        "follows on a sheet that was removed, done on 5 Jan 2026"
    );
    let exists = |_| false;
    assert_eq!(next(&with_gone, &exists, &[], at(SUNDAY)), None);
    let days = week([101, 0, 2, 0, 0, 0, 0]);
    assert_eq!(offered(&days, &[], MONDAY).0, 2);
    assert_eq!(next(&days, &exists, &[], at(SUNDAY)), None);
}

#[test]
fn a_day_has_its_sheet_until_it_is_done() {
    let days = week([1, 0, 2, 0, 1, 0, 0]);
    let said = |n, why: &str| (n, why.to_owned());
    assert_eq!(
        offered(&days, &[], MONDAY),
        said(1, "the sheet of Monday, today")
    );
    assert_eq!(
        offered(&days, &[done(1, MONDAY)], MONDAY),
        said(2, "next is the sheet of Wednesday")
    );
    assert_eq!(
        offered(&days, &[done(1, MONDAY)], TUESDAY),
        said(2, "next is the sheet of Wednesday")
    );
    // Twice on one day: the second one was Friday's, early.
    let twice = [done(1, MONDAY), done(1, MONDAY), done(2, WEDNESDAY)];
    assert_eq!(
        offered(&days, &twice, THURSDAY),
        said(1, "next is the sheet of Monday")
    );
}

#[test]
fn a_missed_day_is_offered_within_its_week_only() {
    let days = week([0, 1, 0, 2, 0, 0, 0]);
    let said = |n, why: &str| (n, why.to_owned());
    assert_eq!(offered(&days, &[], WEDNESDAY), said(1, "missed on Tuesday"));
    // Today's comes first, then what was missed.
    assert_eq!(
        offered(&days, &[], THURSDAY),
        said(2, "the sheet of Thursday, today")
    );
    assert_eq!(
        offered(&days, &[done(2, THURSDAY)], THURSDAY),
        said(1, "missed on Tuesday")
    );
    // Done late it is done.
    let late = [done(2, THURSDAY), done(1, SUNDAY)];
    assert_eq!(
        offered(&days, &late, SUNDAY),
        said(1, "next is the sheet of Tuesday")
    );
    assert_eq!(
        offered(&days, &[], "2026-01-12T08:00:00+01:00"),
        said(1, "next is the sheet of Tuesday")
    );
}

#[test]
fn a_day_is_that_of_the_place_where_one_is() {
    let days = week([1, 2, 0, 0, 0, 0, 0]);
    // Half past eleven on Monday evening, one hour and a journey later it is Tuesday.
    let history = [done(1, "2026-03-30T23:30:00-05:00")];
    assert_eq!(offered(&days, &history, "2026-03-31T00:30:00-05:00").0, 2);
    assert_eq!(offered(&days, &history, "2026-03-31T18:30:00+13:00").0, 2);
    // The clocks go forward in the night to 29 March 2026: the week and its days stay.
    let sunday = week([0, 0, 0, 0, 0, 0, 1]);
    assert_eq!(
        offered(&sunday, &[], "2026-03-29T03:00:00+02:00").1,
        "the sheet of Sunday, today"
    );
}

#[test]
fn limits_are_told() {
    assert_eq!(
        Rotation::new(vec![]).unwrap_err().to_string(),
        "a rotation has 1 to 14 sheets, not 0"
    );
    assert!(Rotation::new(vec![sheet(1); 14]).is_ok());
    assert!(Rotation::new(vec![sheet(1); 15]).is_err());
    assert!(Weekdays::new([None; 7]).is_err());
    let monday = Monday::of(NaiveDate::from_ymd_opt(2026, 1, 7).unwrap());
    assert_eq!(monday.date().to_string(), "2026-01-05");
    let light = |every, load, sets| {
        LightWeek::new(every, monday, Share::percent(load), Share::percent(sets))
            .map_err(|unfit| unfit.to_string())
    };
    assert!(light(2, 40, 30).is_ok() && light(12, 100, 100).is_ok());
    assert!(
        light(1, 90, 50)
            .unwrap_err()
            .contains("every 2 to 12 weeks")
    );
    assert!(light(13, 90, 50).is_err());
    assert!(light(4, 39, 50).unwrap_err().contains("40 % to 100 %"));
    assert!(light(4, 90, 29).unwrap_err().contains("30 % to 100 %"));
    assert!(Monday::try_from(NaiveDate::from_ymd_opt(2026, 1, 6).unwrap()).is_err());
}

#[test]
fn every_fourth_week_is_light_and_none_before_the_count_begins() {
    let monday = Monday::of(at(MONDAY).date_naive());
    let light = LightWeek::new(4, monday, Share::percent(90), Share::percent(50)).unwrap();
    let weeks: Vec<i64> = (-8..13)
        .filter(|week| light.is_now(at(THURSDAY) + TimeDelta::weeks(*week)))
        .collect();
    assert_eq!(weeks, [3, 7, 11]);
    let next = |week: i64| light.next_from(at(THURSDAY) + TimeDelta::weeks(week));
    let dates: Vec<String> = [-8, 0, 2, 3, 6]
        .map(|week| next(week).date().to_string())
        .to_vec();
    let (first, second) = ("2026-01-26", "2026-02-23");
    assert_eq!(dates, [first, first, first, second, second]);
    let every_other = LightWeek::new(2, monday, Share::percent(90), Share::percent(50)).unwrap();
    let first = every_other.next_from(at(THURSDAY) - TimeDelta::weeks(8));
    assert_eq!(first.date().to_string(), "2026-01-12");
    // From Monday's first minute to Sunday's last.
    assert!(light.is_now(at("2026-01-26T00:00:00+01:00")));
    assert!(light.is_now(at("2026-02-01T23:59:59+01:00")));
    assert!(!light.is_now(at("2026-02-02T00:00:00+01:00")));
    assert!(!light.is_now(at("2026-01-25T23:59:59+01:00")));
}

fn plan() -> BoxedStrategy<Programme> {
    let days = proptest::array::uniform7(0..8_u128);
    prop_oneof![
        proptest::collection::vec(1..8_u128, 1..=14).prop_map(|sheets| rotation(&sheets)),
        days.prop_filter("some day", |days| days.iter().any(|n| *n > 0))
            .prop_map(week),
    ]
    .boxed()
}

/// Any time of 1900 to 2100, at any offset.
fn time() -> BoxedStrategy<DateTime<FixedOffset>> {
    (-2_208_988_800..4_102_444_800_i64, -86_399..86_400_i32)
        .prop_map(|(seconds, offset)| {
            let zone = FixedOffset::east_opt(offset).unwrap();
            DateTime::from_timestamp(seconds, 0)
                .unwrap()
                .with_timezone(&zone)
        })
        .boxed()
}

proptest! {
    /// Whatever was done, wherever and whenever: a sheet of the programme that exists, and none only where none does.
    #[test]
    fn what_is_offered_is_of_the_programme_and_exists(
        programme in plan(),
        exist in proptest::collection::btree_set(1..8_u128, 0..8),
        history in proptest::collection::vec((1..10_u128, time()), 0..20),
        now in time(),
    ) {
        let exists = |sheet: SheetId| exist.contains(&sheet.0.as_u128());
        let history: Vec<DoneSheet> = history
            .into_iter()
            .map(|(n, began)| DoneSheet { sheet: sheet(n), began })
            .collect();
        let sheets = programme.plan.sheets();
        match next(&programme, &exists, &history, now) {
            Some(offer) => {
                prop_assert!(sheets.contains(&offer.sheet) && exists(offer.sheet));
                prop_assert!(!offer.because.said(&|_| None).is_empty());
            }
            None => prop_assert!(!sheets.iter().any(|sheet| exists(*sheet))),
        }
    }

    /// Starting what is offered, time after time, walks the rotation, wherever it is begun.
    #[test]
    fn doing_what_is_offered_walks_the_rotation(
        sheets in proptest::collection::vec(1..8_u128, 1..=14),
        hours in proptest::collection::vec(1..200_i64, 1..40),
    ) {
        let programme = rotation(&sheets);
        let mut now = at(MONDAY);
        let mut history = Vec::new();
        for (n, hours) in hours.into_iter().enumerate() {
            let offer = next(&programme, &|_| true, &history, now).unwrap();
            prop_assert_eq!(offer.sheet, sheet(sheets[n % sheets.len()]));
            history.push(DoneSheet { sheet: offer.sheet, began: now });
            now += TimeDelta::hours(hours);
        }
    }

    /// Doing what is offered each day leaves nothing of the week undone.
    #[test]
    fn a_week_in_which_all_is_done_has_every_day_once(days in proptest::array::uniform7(0..4_u128)) {
        prop_assume!(days.iter().any(|n| *n > 0));
        let programme = week(days);
        let mut history = Vec::new();
        for day in 0..7 {
            let now = at(MONDAY) + TimeDelta::days(day);
            let offer = next(&programme, &|_| true, &history, now).unwrap();
            if offer.because == (Why::Today { day: day as usize }) {
                history.push(DoneSheet { sheet: offer.sheet, began: now });
            }
        }
        let planned: Vec<SheetId> = programme.plan.sheets();
        let done: Vec<SheetId> = history.iter().map(|session| session.sheet).collect();
        prop_assert_eq!(done, planned);
    }
}
