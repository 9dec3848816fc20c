//! The proposals of a sheet of twenty sets after ten years of training, over summaries as the app keeps them.
//!
//! Cold is what the app does at its start: kit and summaries are read from their text, then all is proposed. Warm has
//! them in memory. The history itself is made of whole sessions by a seeded generator and read by neither.

use chrono::{DateTime, FixedOffset, TimeDelta};
use criterion::Criterion;
use serde_json::{Value, json};
use stanchion::json::{parse, text};
use stanchion::kit::Kit;
use stanchion::ledger::{ExerciseSummary, SessionRecord, summaries_of};
use stanchion::session::{Amount, Began, Done, Event, EventId, Mint, SessionId, Tick, What};
use stanchion::sheet::{Sheet, unroll};
use stanchion::strength::{Base, Curve, Today, best_e1rm, propose, set_load};
use stanchion::units::{Load, Reps, Rir, Unit};
use std::hint::black_box;
use uuid::Uuid;

/// Three sessions a week over ten years.
const SESSIONS: i64 = 3 * 52 * 10;

/// Five blocks of four sets, each by another rule.
fn sheet() -> Sheet {
    let ramp_up = json!({"kind": {"ramp_up": {"shares": ["60 %", "80 %"]}}, "count": 2, "target": {"reps": 3}});
    let work = |count: u8| {
        let target = json!({"reps": {"from": 5, "to": 7}});
        json!({"kind": "work", "count": count, "target": target})
    };
    let double = json!({"double": {"reach": "all_sets", "up": "smallest", "down": "smallest"}});
    let rules = [
        ("barbell", "60 kg", double),
        (
            "barbell",
            "80 kg",
            json!({"two_for_two": {"up": "smallest"}}),
        ),
        ("dumbbell", "10 kg", json!({"fixed": {"up": "smallest"}})),
        (
            "barbell",
            "40 kg",
            json!({"share_of_e1rm": {"share": "75 %"}}),
        ),
        (
            "barbell",
            "50 kg",
            json!({"by_reserve": {"aim": 2, "step": "smallest"}}),
        ),
    ];
    let groups: Vec<Value> = (0..)
        .zip(rules)
        .map(|(n, (equipment, start, rule))| {
            let name = format!("exercise-{n}");
            json!({"straight": {
                "id": Uuid::from_u128(100 + n),
                "exercise": {"id": name, "name": name, "pattern": "squat", "equipment": equipment},
                "role": "strength",
                "sets": [ramp_up, work(2)],
                "basis": "external",
                "start": start,
                "rest": 120,
                "rest_after": 120,
                "progression": rule,
            }})
        })
        .collect();
    let sheet = json!({
        "id": Uuid::from_u128(1),
        "version": Uuid::from_u128(2),
        "written": "2016-01-04T18:00:00+01:00",
        "name": "Lower A",
        "groups": groups,
    });
    serde_json::from_value(sheet).unwrap()
}

/// The next of a row of numbers that look random (a linear congruential generator, Knuth's constants).
fn next(seed: &mut u64) -> u64 {
    *seed = seed
        .wrapping_mul(6_364_136_223_846_793_005)
        .wrapping_add(1_442_695_040_888_963_407);
    *seed >> 33
}

/// Whole sessions, each set with a load that the kit makes and 4 to 8 reps, made into summaries.
fn summaries(sheet: &Sheet, kit: &Kit) -> Vec<ExerciseSummary> {
    let began: DateTime<FixedOffset> = "2016-01-04T18:00:00+01:00".parse().unwrap();
    let mut seed = 7;
    let mut mint = Mint::default();
    let mut records = Vec::new();
    for n in 0..SESSIONS {
        let at = began + TimeDelta::hours(56 * n);
        let mut events = Vec::new();
        let mut say = |what| {
            let ms = u64::try_from(at.timestamp_millis()).unwrap();
            events.push(Event {
                id: EventId(mint.next(ms, [0; 10])),
                at,
                tick: Tick { run: 1, ms: 0 },
                what,
            });
        };
        say(What::Began(Box::new(Began {
            curve: Curve::default(),
            session: SessionId(Uuid::from_u128(1000 + n.unsigned_abs() as u128)),
            sheet: sheet.clone(),
            light: false,
            body_mass: None,
            proposals: vec![],
            along: None,
        })));
        for planned in unroll(sheet) {
            let block = sheet.block(planned.key.block).unwrap();
            let about = 20 + n / 20 + (next(&mut seed) % 10) as i64;
            let load = Load::whole_kg(about as u16);
            let done = Done {
                load: kit.nearest(block.exercise.equipment, load),
                amount: Amount::Reps(Reps::saturating(4 + (next(&mut seed) % 5) as i64)),
                reserve: Some(Rir::saturating((next(&mut seed) % 4) as i64)),
            };
            say(What::SetDone {
                set: planned.key,
                done,
                proposed: None,
            });
        }
        say(What::Ended);
        records.push(SessionRecord::from_events(&events).unwrap());
    }
    summaries_of(&records).into_values().collect()
}

/// The work loads of all blocks and the loads of all sets; gives how many sets have one.
fn loads(sheet: &Sheet, summaries: &[ExerciseSummary], kit: &Kit) -> usize {
    let planned = unroll(sheet);
    let mut known = 0;
    // Two days after the last of the sessions.
    let last = summaries.iter().flat_map(|summary| &summary.performances);
    let last = last.map(|performance| performance.at).max().unwrap();
    let now = last + TimeDelta::days(2);
    for block in sheet.blocks() {
        let mut all = summaries.iter();
        let summary = all.find(|summary| summary.exercise == block.exercise.id);
        let history = summary.map_or(&[][..], |summary| &summary.performances);
        let proposal = propose(
            block,
            &Today {
                history,
                kit,
                now,
                curve: Curve::default(),
                body_mass: None,
            },
        );
        let e1rm = best_e1rm(history, Curve::default());
        let own = planned.iter().filter(|set| set.key.block == block.id);
        known += own
            .filter_map(|set| set_load(block, set, Base::from(&proposal), &[], e1rm, kit).load)
            .count();
    }
    known
}

/// `core.propose_sheet_us`, warm and cold.
pub fn propose_sheet(criterion: &mut Criterion) {
    let sheet = sheet();
    let kit = Kit::starter(Unit::Kg);
    let known = summaries(&sheet, &kit);
    assert_eq!(unroll(&sheet).len(), 20);
    assert_eq!(loads(&sheet, &known, &kit), 20);
    let kit_text = text(&kit);
    let known_texts: Vec<String> = known.iter().map(text).collect();

    let mut group = criterion.benchmark_group("propose_sheet");
    group.bench_function("warm", |bencher| {
        bencher.iter(|| loads(black_box(&sheet), black_box(&known), black_box(&kit)));
    });
    group.bench_function("cold", |bencher| {
        bencher.iter(|| {
            let kit: Kit = parse(black_box(&kit_text)).unwrap();
            let texts = known_texts.iter();
            let known: Vec<ExerciseSummary> = texts.map(|text| parse(text).unwrap()).collect();
            loads(black_box(&sheet), &known, &kit)
        });
    });
    group.finish();
}
