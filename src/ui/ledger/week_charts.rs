//! Weeks as pictures: bars a week, and bars a muscle.

use crate::charts::{
    Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot, TO_THURSDAY, day_of,
};
use crate::ledger::{MuscleSets, Week};
use crate::units::Unit;
use crate::words::{t, t_in};

/// Days of a bar, the gap to the next among them.
const BAR_DAYS: i64 = 7;

/// Of a week the day that a bar stands on: its Thursday.
fn middle(week: &Week) -> i64 {
    day_of(week.monday) + TO_THURSDAY
}

fn bars(weeks: &[Week], ink: Ink, name: &str, value: impl Fn(&Week) -> i64) -> Mark {
    let spot = |week: &Week| Spot {
        x: middle(week),
        y: value(week),
        from: 0,
    };
    Mark::new(Shape::Bars, ink, name, weeks.iter().map(spot).collect()).wide(BAR_DAYS)
}

/// Bars of one figure a week.
fn of_weeks(
    weeks: &[Week],
    title: &str,
    about: &str,
    grain: &Grain,
    label: &str,
    value: impl Fn(&Week) -> i64,
) -> Chart {
    let row = |week: &Week| Row {
        x: middle(week),
        y: value(week),
        cells: vec![Cell::Of(day_of(week.monday)), Cell::Of(value(week))],
    };
    Chart {
        title: title.to_owned(),
        about: about.to_owned(),
        x: Axis::of(Grain::Weeks, ""),
        y: Axis::from_zero(grain.clone(), label),
        marks: vec![bars(weeks, Ink::Main, "", &value)],
        columns: vec![
            Column::new(t("week from"), Grain::Days),
            Column::unsaid(title, grain.clone()),
        ],
        rows: weeks.iter().map(row).collect(),
    }
}

/// Sets a week, the hard ones filled.
pub fn sets_chart(weeks: &[Week]) -> Chart {
    let (all, hard) = (
        |week: &Week| i64::from(week.sets),
        |week: &Week| i64::from(week.hard),
    );
    let row = |week: &Week| Row {
        x: middle(week),
        y: all(week),
        cells: vec![
            Cell::Of(day_of(week.monday)),
            Cell::Of(all(week)),
            Cell::Of(hard(week)),
        ],
    };
    let count = Grain::count();
    Chart {
        title: t("Sets a week").to_owned(),
        about: t("All sets but ramp-ups; filled are the hard ones.").to_owned(),
        x: Axis::of(Grain::Weeks, ""),
        y: Axis::from_zero(count.clone(), t("sets")),
        marks: vec![
            bars(weeks, Ink::Second, t("all sets"), all),
            bars(weeks, Ink::Main, t("hard sets"), hard),
        ],
        columns: vec![
            Column::new(t("week from"), Grain::Days),
            Column::new(t("sets"), count.clone()),
            Column::new(t("hard"), count),
        ],
        rows: weeks.iter().map(row).collect(),
    }
}

/// Session load a week.
pub fn load_chart(weeks: &[Week]) -> Chart {
    let about =
        t("Session RPE × minutes, in arbitrary units. Sessions without a rating are not in it.");
    let count = Grain::count();
    of_weeks(
        weeks,
        t("Session load a week"),
        about,
        &count,
        t_in("of a session", "load"),
        |week| i64::from(week.load.total()),
    )
}

/// Volume load a week.
pub fn volume_chart(weeks: &[Week], unit: Unit) -> Chart {
    let (name, label) = match unit {
        Unit::Kg => ("kg", "kg"),
        Unit::Lb => ("lb", "lb"),
    };
    let grain = Grain::Number {
        decimals: 0,
        unit: name,
    };
    let about = t("Sets × reps × load of work sets.");
    of_weeks(
        weeks,
        t("Volume load a week"),
        about,
        &grain,
        label,
        |week| week.volume.whole(unit),
    )
}

/// Sets of each muscle, the hard ones filled; the most at the top.
pub fn muscle_chart(muscles: &[MuscleSets]) -> Chart {
    let mut sorted = muscles.to_vec();
    crate::order::by_key(&mut sorted, MuscleSets::halves);
    let tenths = |halves: u32| i64::from(halves) * 5;
    let names = Grain::Names(
        sorted
            .iter()
            .map(|sets| sets.muscle.name().to_owned())
            .collect(),
    );
    let grain = Grain::Number {
        decimals: 1,
        unit: "",
    };
    let mark = |ink, name: &str, value: &dyn Fn(&MuscleSets) -> u32| {
        let spot = |(y, sets): (i64, &MuscleSets)| Spot {
            x: tenths(value(sets)),
            y,
            from: 0,
        };
        let spots = (0..).zip(&sorted).map(spot).collect();
        Mark::new(Shape::Lying, ink, name, spots).wide(1)
    };
    let row = |(y, sets): (i64, &MuscleSets)| Row {
        x: tenths(sets.halves()),
        y,
        cells: vec![
            Cell::Of(y),
            Cell::Of(tenths(sets.halves())),
            Cell::Of(tenths(sets.hard_halves())),
            Cell::Of(i64::from(sets.main) * 10),
            Cell::Of(i64::from(sets.also) * 10),
        ],
    };
    let about = if sorted.is_empty() {
        t("No sets in this week.")
    } else {
        t(
            "A set counts 1 for a main muscle and 0.5 for one that also works; filled are the hard ones.",
        )
    };
    Chart {
        title: t("Sets of each muscle").to_owned(),
        about: about.to_owned(),
        x: Axis::from_zero(grain.clone(), t("sets")),
        y: Axis::of(names.clone(), ""),
        marks: vec![
            mark(Ink::Second, t("all sets"), &MuscleSets::halves),
            mark(Ink::Main, t("hard sets"), &MuscleSets::hard_halves),
        ],
        columns: vec![
            Column::new(t("muscle"), names),
            Column::new(t("sets"), grain.clone()),
            Column::new(t("hard"), grain.clone()),
            Column::new(t("as main"), grain.clone()),
            Column::new(t("also"), grain),
        ],
        rows: (0..).zip(&sorted).map(row).collect(),
    }
}
