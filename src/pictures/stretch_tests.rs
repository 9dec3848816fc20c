//! What is pictured of holds, carries and bands, and what is said in place of an estimate.

use super::*;
use crate::charts::day_of;
use crate::ledger::ways_tests::{carried, held, reps};
use crate::pictures::{Period, both_loads, estimate};
use crate::strength::{Curve, Unfed};
use crate::units::Unit;
use chrono::{Datelike, NaiveDate};

/// What was done on a day of March.
fn past(day: u32, basis: LoadBasis, sets: Vec<SetResult>) -> Past {
    let id = uuid::Uuid::from_u128(u128::from(day));
    let text = format!(
        "{{\"name\":\"plank\",\"performance\":{{\"session\":\"{id}\",\"at\":\"2026-03-{day:02}T09:00:00Z\",\
         \"shape\":\"\",\"sets\":[],\"left\":0}},\"sheet\":\"{id}\",\"volume\":\"0 kg\"}}"
    );
    let mut past: Past = serde_json::from_str(&text).unwrap();
    past.performance.basis = Some(basis);
    past.performance.sets = sets;
    past
}

fn asked() -> Asked {
    Asked {
        unit: Unit::Kg,
        period: Period::Quarter,
        today: NaiveDate::from_ymd_opt(2026, 3, 20).unwrap(),
    }
}

/// Day of the month and value of each row, and what stands beside it.
fn shown(chart: &Chart) -> Vec<(i64, i64, String)> {
    let march = day_of(
        NaiveDate::from_ymd_opt(2026, 3, 1)
            .unwrap()
            .with_day(1)
            .unwrap(),
    );
    let rows = chart.rows.iter();
    rows.map(|row| (row.x - march + 1, row.y, chart.cell(row, 2)))
        .collect()
}

#[test]
fn the_longest_hold_of_each_session_is_shown() {
    let ramp_up = SetResult {
        unfed: Some(Unfed::RampUp),
        ..held(None, 90)
    };
    let all = [
        past(
            2,
            LoadBasis::Unloaded,
            vec![ramp_up, held(None, 30), held(None, 40)],
        ),
        past(9, LoadBasis::Unloaded, vec![held(None, 45)]),
    ];
    let history: Vec<&Past> = all.iter().collect();
    let chart = longest(&history, asked(), Counted::Seconds).unwrap();
    assert_eq!(chart.title, "Longest time");
    let none = String::new;
    assert_eq!(shown(&chart), [(2, 40, none()), (9, 45, none())]);
    assert_eq!(heaviest(&history, asked(), Counted::Seconds), None);
    assert_eq!(longest(&history, asked(), Counted::Metres), None);
    let chart = estimate(&history, asked(), Curve::default());
    assert_eq!(
        chart.about,
        "A hold has no maximum to estimate: what counts is its time."
    );
}

#[test]
fn a_carry_shows_how_far_and_how_heavy() {
    let all = [
        past(
            2,
            LoadBasis::External,
            vec![carried("24 kg", 20), carried("20 kg", 30)],
        ),
        past(9, LoadBasis::External, vec![carried("28 kg", 20)]),
    ];
    let history: Vec<&Past> = all.iter().collect();
    let chart = longest(&history, asked(), Counted::Metres).unwrap();
    assert_eq!(
        shown(&chart),
        [(2, 30, "20 kg".to_owned()), (9, 20, "28 kg".to_owned())]
    );
    let chart = heaviest(&history, asked(), Counted::Metres).unwrap();
    assert_eq!(
        shown(&chart),
        [(2, 2400, "20 m".to_owned()), (9, 2800, "20 m".to_owned())]
    );
    let said = estimate(&history, asked(), Curve::default()).about;
    assert!(said.starts_with("A carry has no maximum"), "{said}");
}

#[test]
fn of_assistance_the_least_is_shown() {
    let sets = vec![held(Some("20 kg"), 30), held(Some("10 kg"), 15)];
    let all = [past(2, LoadBasis::BodyMassMinus, sets)];
    let history: Vec<&Past> = all.iter().collect();
    let chart = heaviest(&history, asked(), Counted::Seconds).unwrap();
    assert_eq!(chart.title, "Least assistance");
    assert_eq!(shown(&chart), [(2, 1000, "15 s".to_owned())]);
    // The picture of what is moved with the body would only say that nothing is.
    assert_eq!(both_loads(&history, asked()), None);
}

#[test]
fn reps_with_a_band_name_it() {
    let band = LoadBasis::Band(crate::sheet::Line::new("green").unwrap());
    let all = [past(2, band, vec![reps(10), reps(12)])];
    let history: Vec<&Past> = all.iter().collect();
    let chart = longest(&history, asked(), Counted::Reps).unwrap();
    assert_eq!(shown(&chart), [(2, 12, "band: green".to_owned())]);
    let said = no_estimate(&history).unwrap();
    assert!(said.starts_with("A band has no load in figures"), "{said}");
    let loaded = [
        past(2, LoadBasis::External, vec![reps(5)]),
        past(3, LoadBasis::Unloaded, vec![held(None, 9)]),
    ];
    let history: Vec<&Past> = loaded.iter().collect();
    assert_eq!(no_estimate(&history), None, "reps with a load may have one");
    assert_eq!(longest(&history, asked(), Counted::Reps), None);
}
