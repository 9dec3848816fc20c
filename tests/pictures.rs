//! What the ledger's pictures show, counted another way from the raw events.

use crate::common;

use chrono::{Datelike, NaiveDate};
use common::built::{block, done, events, key, reps, work};
use common::events::event;
use common::time;
use proptest::collection::vec;
use proptest::prelude::*;
use rust_decimal::Decimal;
use stanchion::charts::{Cell, Chart, day_of};
use stanchion::ledger::{BEST_REPS_MAX, Bests, Heading, Past, SessionRecord, TempoKept, pasts_of};
use stanchion::pictures::{
    Asked, Peg, Period, best_at_reps, both_loads, chosen, estimate, hundredths, loads_done,
    reps_at_load, tempo_kept, volume, year,
};
use stanchion::session::{Amount, Event, What};
use stanchion::sheet::{Block, LoadBasis, SideMode};
use stanchion::strength::{Curve, Performance, Strength, Told, change_between};
use stanchion::units::{Load, Reps, Unit};

const DAY: u64 = 86_400_000;

/// What was done on a day: sets of half kilograms and reps, and whether the week was light.
#[derive(Debug, Clone)]
struct Did {
    day: u64,
    light: bool,
    sets: Vec<(i64, i64)>,
}

fn kg(halves: i64) -> String {
    Decimal::new(halves * 5, 1).normalize().to_string() + " kg"
}

fn squat() -> Block {
    block(vec![work(3, 5, 7)], LoadBasis::External, SideMode::Both)
}

fn events_of(did: &Did, block: &Block, body: Option<&str>) -> Vec<Event> {
    let sets: Vec<_> = (0..)
        .zip(&did.sets)
        .map(|(n, (load, count))| {
            let amount = Amount::Reps(reps(*count));
            (key(0, n), done(Some(&kg(*load)), amount))
        })
        .collect();
    let mut all = events(did.day, block, body, &sets);
    if let What::Began(began) = &mut all[0].what {
        began.light = did.light;
    }
    all
}

fn history(dids: &[Did]) -> Vec<Past> {
    let records = dids.iter().map(|did| {
        let events = events_of(did, &squat(), None);
        SessionRecord::from_events(&events).unwrap()
    });
    records
        .flat_map(|record| pasts_of(&record))
        .map(|(_, past)| past)
        .collect()
}

/// Some sessions on rising days.
fn dids() -> impl Strategy<Value = Vec<Did>> {
    let sets = vec((1..400_i64, 0..=20_i64), 1..=3);
    vec((1..40_u64, prop::bool::weighted(0.2), sets), 0..30).prop_map(|all| {
        let mut day = 0;
        let did = |(gap, light, sets)| {
            day += gap;
            Did { day, light, sets }
        };
        all.into_iter().map(did).collect()
    })
}

fn asked(period: Period) -> Asked {
    Asked {
        unit: Unit::Kg,
        period,
        today: time(700 * DAY).date_naive(),
    }
}

fn cell(chart: &Chart, row: usize, column: usize) -> i64 {
    match chart.rows[row].cells[column] {
        Cell::Of(value) => value,
        ref other => panic!("{other:?} is no number"),
    }
}

fn date(did: &Did) -> NaiveDate {
    time(did.day * DAY).date_naive()
}

proptest! {
    #[test]
    fn best_loads_are_the_heaviest_of_all_sets_of_so_many_reps_or_more(dids in dids(), period in prop::sample::select(&Period::ALL[..])) {
        let asked = asked(period);
        let history = history(&dids);
        let chart = best_at_reps(&chosen(&history, false), asked);
        let within = || dids.iter().filter(|did| !did.light && period.holds(asked.today, date(did)));
        let mut rows = 0;
        for n in 1..=15 {
            let best = within().flat_map(|did| &did.sets).filter(|set| set.1 >= n).map(|set| set.0).max();
            let row = chart.rows.iter().find(|row| row.x == n);
            prop_assert_eq!(row.map(|row| row.y), best.map(|halves| halves * 50));
            if let (Some(row), Some(best)) = (row, best) {
                // The first day of that load, among those that did the most reps it is told for.
                let days: Vec<i64> = within()
                    .filter(|did| did.sets.iter().any(|set| set.0 == best && set.1 >= n))
                    .map(|did| day_of(date(did)))
                    .collect();
                prop_assert!(matches!(row.cells[2], Cell::Of(day) if days.contains(&day)));
                rows += 1;
            }
        }
        prop_assert_eq!(rows, chart.rows.len());
        if period == Period::All {
            // The bests that the floor goes by say the same.
            let bests = Bests::of(&history);
            let told: Vec<(i64, i64, i64)> = bests
                .ways
                .iter()
                .flat_map(|way| (1..=i64::from(BEST_REPS_MAX)).filter_map(|n| Some((n, way.at_reps(Reps::saturating(n))?))))
                .map(|(reps, set)| (reps, hundredths(set.load, Unit::Kg), day_of(set.when.at.date_naive())))
                .collect();
            let shown: Vec<(i64, i64, i64)> =
                (0..chart.rows.len()).map(|row| (cell(&chart, row, 0), cell(&chart, row, 1), cell(&chart, row, 2))).collect();
            prop_assert_eq!(shown, told);
        }
    }

    #[test]
    fn volume_is_reps_times_load_of_every_session(dids in dids()) {
        let history = history(&dids);
        let chart = volume(&chosen(&history, false), asked(Period::All));
        let sums: Vec<(i64, i64)> = dids
            .iter()
            .map(|did| (day_of(date(did)), did.sets.iter().map(|set| set.0 * set.1).sum::<i64>()))
            // Halves of a kilogram, rounded away from zero.
            .map(|(day, halves)| (day, (halves + 1) / 2))
            .filter(|(_, kg)| *kg > 0)
            .collect();
        let shown: Vec<(i64, i64)> = chart.rows.iter().map(|row| (row.x, row.y)).collect();
        prop_assert_eq!(shown, sums);
    }

    #[test]
    fn reps_at_a_load_are_the_most_of_the_day(dids in dids(), pick in 0..100_usize) {
        let history = history(&dids);
        let all = chosen(&history, false);
        let loads = loads_done(&all);
        prop_assume!(!loads.is_empty());
        let (load, count) = loads[pick % loads.len()];
        let halves = |did: &Did| -> Vec<i64> {
            let with_it = did.sets.iter().filter(|set| kg(set.0).parse::<Load>().unwrap() == load && set.1 > 0);
            with_it.map(|set| set.1).collect()
        };
        prop_assert_eq!(dids.iter().map(|did| halves(did).len()).sum::<usize>(), count);
        let chart = reps_at_load(&all, asked(Period::All), load);
        let most: Vec<(i64, i64)> = dids
            .iter()
            .filter_map(|did| Some((day_of(date(did)), halves(did).into_iter().max()?)))
            .collect();
        let shown: Vec<(i64, i64)> = chart.rows.iter().map(|row| (row.x, row.y)).collect();
        prop_assert_eq!(shown, most);
    }

    #[test]
    fn the_estimate_is_what_the_history_up_to_each_day_says(dids in dids()) {
        let history = history(&dids);
        let chart = estimate(&chosen(&history, false), asked(Period::All), Curve::Epley);
        let counting: Vec<Performance> =
            history.iter().filter(|past| !past.light).map(|past| past.performance.clone()).collect();
        let mut known: Vec<(i64, i64)> = Vec::new();
        let mut last: Option<Strength> = None;
        for n in 0..counting.len() {
            let now = Strength::of(&counting[..=n], Curve::Epley);
            if let Some(now) = now.filter(|now| last.is_none_or(|last| last.sessions() < now.sessions())) {
                let middle = now.e1rm().middle.round(1).kg() * Decimal::from(100);
                known.push((day_of(counting[n].at.date_naive()), i64::try_from(middle).unwrap()));
                last = Some(now);
            }
        }
        let shown: Vec<(i64, i64)> = chart.rows.iter().map(|row| (row.x, row.y)).collect();
        prop_assert_eq!(shown, known);
    }

    #[test]
    fn a_year_holds_every_minute_and_set_of_it(dids in dids(), of in 2026..2028_i32) {
        let mut headings: Vec<Heading> = Vec::new();
        let (mut minutes, mut sets) = (0, 0);
        for did in &dids {
            let record = SessionRecord::from_events(&events_of(did, &squat(), None)).unwrap();
            if date(did).year() == of {
                minutes += i64::from(record.minutes());
                sets += did.sets.len() as i64;
            }
            headings.push(Heading::of(&record, &[]));
        }
        for (peg, sum) in [(Peg::Minutes, minutes), (Peg::Sets, sets)] {
            let chart = year(&headings, of, peg, Unit::Kg);
            let spots = chart.marks.iter().flat_map(|mark| &mark.spots);
            prop_assert_eq!(spots.map(|spot| spot.x - spot.from).sum::<i64>(), sum);
            let in_year = dids.iter().filter(|did| date(did).year() == of).count();
            prop_assert_eq!(chart.rows.len(), in_year);
        }
    }
}

/// 2.772 times the typical error (Hopkins 2000, Sports Med 30(1):1–15): what is marked lies beyond it, what is not within.
#[test]
fn a_mark_stands_where_the_change_since_the_last_one_is_more_than_noise() {
    let did = |n: u64| Did {
        day: n * 4,
        light: false,
        sets: vec![(if n < 20 { 200 } else { 270 }, 7)],
    };
    let dids: Vec<Did> = (0..40).map(did).collect();
    let history = history(&dids);
    let chart = estimate(&chosen(&history, true), asked(Period::All), Curve::Epley);
    let marked: Vec<usize> = (0..chart.rows.len())
        .filter(|row| matches!(chart.rows[*row].cells[4], Cell::Words(_)))
        .collect();
    assert!(
        marked.first().is_some_and(|first| *first >= 20),
        "{marked:?}"
    );
    let known = |n: usize| {
        let performances: Vec<Performance> = history[..=n]
            .iter()
            .map(|past| past.performance.clone())
            .collect();
        Strength::of(&performances, Curve::Epley).unwrap()
    };
    let mut before = known(0);
    for n in 1..40 {
        let now = known(n);
        let variance = f64::midpoint(before.variance(), now.variance());
        let told = change_between(&before, &now).told;
        // Without the doubt about the lifter's own curve the bound is a little lower than by the whole variance.
        if (now.level() - before.level()).abs() > 2.772 * variance.sqrt() {
            assert_eq!(told, Told::Up);
        }
        assert_eq!(told != Told::Noise, marked.contains(&n), "{n}");
        if told != Told::Noise {
            before = now;
        }
    }
    assert!(chart.about.contains("more than noise"), "{}", chart.about);
}

#[test]
fn tempo_is_kept_from_the_start_to_the_tap_without_the_count_in() {
    // 3/1/1/0 for 6 reps are 30 s, and 3 s are counted in.
    let mut by_tempo = squat();
    by_tempo.tempo = Some("3/1/1/0".parse().unwrap());
    let of = |block: &Block, took: [Option<u64>; 3]| {
        let did = Did {
            day: 1,
            light: false,
            sets: vec![(100, 6); 3],
        };
        let mut all = events_of(&did, block, None);
        for (n, took) in (0..3_u8).zip(took) {
            if let Some(ms) = took {
                let log = DAY + (u64::from(n) + 1) * 60_000;
                let set = key(0, n);
                all.push(event(1, log - ms, 1, What::SetStarted { set }));
            }
        }
        let record = SessionRecord::from_events(&all).unwrap();
        pasts_of(&record).remove(0).1
    };
    let past = of(&by_tempo, [Some(33_000), Some(32_999), None]);
    assert_eq!(past.tempo, TempoKept { sets: 2, kept: 1 });
    let chart = tempo_kept(&[&past], asked(Period::All)).unwrap();
    assert_eq!(cell(&chart, 0, 1), 50);
    // Without a tempo, or never started by ear, nothing is said.
    let without = of(&squat(), [Some(33_000); 3]);
    assert!(without.tempo.is_empty());
    assert_eq!(tempo_kept(&[&without], asked(Period::All)), None);
    assert!(of(&by_tempo, [None; 3]).tempo.is_empty());
}

#[test]
fn with_the_body_both_loads_are_shown_as_of_that_day() {
    let chin = block(vec![work(3, 5, 8)], LoadBasis::BodyMassPlus, SideMode::Both);
    let did = Did {
        day: 1,
        light: false,
        sets: vec![(0, 8), (20, 6)],
    };
    let past = |body| {
        let record = SessionRecord::from_events(&events_of(&did, &chin, body)).unwrap();
        pasts_of(&record).remove(0).1
    };
    let known = past(Some("80.5 kg"));
    let chart = both_loads(&[&known], asked(Period::All)).unwrap();
    assert_eq!(
        [1, 2, 3].map(|column| cell(&chart, 0, column)),
        [9_050, 1_000, 8_050]
    );
    let best = best_at_reps(&[&known], asked(Period::All));
    assert_eq!(best.rows.last().map(|row| (row.x, row.y)), Some((8, 8_050)));
    // Without a body mass there is no whole, and that is said.
    let unknown = past(None);
    let chart = both_loads(&[&unknown], asked(Period::All)).unwrap();
    assert!(chart.is_empty() && chart.about.contains("body mass"));
    // An external load has but one.
    let record = SessionRecord::from_events(&events_of(&did, &squat(), None)).unwrap();
    let external = pasts_of(&record).remove(0).1;
    assert_eq!(both_loads(&[&external], asked(Period::All)), None);
}

#[test]
fn only_what_was_asked_for_alike_is_compared() {
    let mut history = history(&[
        Did {
            day: 1,
            light: false,
            sets: vec![(300, 5)],
        },
        Did {
            day: 9,
            light: false,
            sets: vec![(100, 5)],
        },
    ]);
    assert_eq!(chosen(&history, true).len(), 2);
    history[0].performance.shape.push_str(" at another tempo");
    let alike = chosen(&history, true);
    assert_eq!(alike, [&history[1]]);
    assert_eq!(best_at_reps(&alike, asked(Period::All)).rows[0].y, 5_000);
    assert_eq!(
        best_at_reps(&chosen(&history, false), asked(Period::All)).rows[0].y,
        15_000
    );
    assert!(chosen(&[], true).is_empty());
}

#[test]
fn the_best_loads_are_of_what_was_moved_as_the_last_time() {
    let one_by_one = Block {
        sides: SideMode::EachInTurn,
        ..squat()
    };
    let did = |day: u64, block: &Block, load: &str| {
        let sets = [(key(0, 0), done(Some(load), Amount::Reps(reps(5))))];
        let record = SessionRecord::from_events(&events(day, block, None, &sets)).unwrap();
        pasts_of(&record).remove(0).1
    };
    let both = [did(1, &squat(), "60 kg"), did(2, &one_by_one, "30 kg")];
    let chart = |history: &[Past]| best_at_reps(&chosen(history, false), asked(Period::All));
    assert_eq!(cell(&chart(&both), 0, 1), 3000);
    let left_out = "other sides than the last time is not in it.";
    assert!(chart(&both).about.ends_with(left_out));
    assert_eq!(cell(&chart(&both[..1]), 0, 1), 6000);
    assert!(!chart(&both[..1]).about.ends_with(left_out));
}

#[test]
fn ten_years_are_drawn_in_one_go() {
    let dids: Vec<Did> = (0..1_200)
        .map(|n| Did {
            day: n * 3,
            light: n % 20 == 0,
            sets: vec![(160 + (n / 8) as i64, 5 + (n % 3) as i64); 3],
        })
        .collect();
    let history = history(&dids);
    let all = chosen(&history, true);
    let asked = Asked {
        today: time(3_650 * DAY).date_naive(),
        ..asked(Period::All)
    };
    let charts = [
        estimate(&all, asked, Curve::Epley),
        best_at_reps(&all, asked),
        volume(&all, asked),
    ];
    for chart in charts {
        let drawing = stanchion::charts::lay_out(&chart, 390);
        let length: usize = drawing.strokes.iter().map(|stroke| stroke.path.len()).sum();
        assert!(length < 120_000, "{}: {length}", chart.title);
    }
}
