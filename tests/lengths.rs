//! How long a sheet takes, against values worked by hand, and what is cut when that is too long.

use crate::common;

use common::events::event;
use common::sheets::sheet;
use common::{id, time};
use proptest::prelude::*;
use stanchion::quick::parse_sheet;
use stanchion::session::{Amount, Began, Done, Session, SessionId, What};
use stanchion::sheet::{
    Cut, Group, Off, Prediction, Role, Sheet, apply, cuts, gap_seconds, set_seconds, unroll,
};
use stanchion::store::demo;
use stanchion::strength::Curve;
use stanchion::units::{Reps, Seconds};

fn read(text: &str) -> Sheet {
    let mut n = 0;
    let mut ids = || {
        n += 1;
        id(n, n)
    };
    let text = format!("# Lower A\n{text}");
    parse_sheet(&text, &common::known::named, &mut ids, time(0))
        .unwrap_or_else(|wrong| panic!("{text}\n{wrong:?}"))
}

fn s(n: i64) -> Seconds {
    Seconds::new(n).unwrap()
}

/// Seconds of the first set of a line.
fn set(line: &str) -> u64 {
    set_seconds(&unroll(&read(line))[0])
}

fn whole(line: &str) -> u64 {
    Prediction::of(&read(line)).seconds(s(60))
}

#[test]
fn a_set_takes_its_reps_at_its_tempo() {
    // Seconds per repetition are the sum of the four digits: D, as in tests/published.rs.
    assert_eq!(set("Front squat: 1 × 8; tempo 3/1/1/0"), 40);
    assert_eq!(set("Front squat: 1 × 10; tempo 4/0/2/0"), 60);
    // Hand-worked: X is a second, a range counts its top, a rep without a tempo 3 s (common practice, no source).
    assert_eq!(set("Front squat: 1 × 5–7; tempo 3/1/X/0"), 35);
    assert_eq!(set("Front squat: 1 × 5+"), 15);
    assert_eq!(set("Plank: 1 × 30 s; no load"), 30);
    // Hand-worked: a metre a second (common practice, no source).
    assert_eq!(set("Farmer's carry: 1 × 20 m; both sides"), 20);
}

#[test]
fn a_set_takes_its_stages_pauses_and_sides() {
    // Hand-worked: 4 portions of 2 × 3 s, and 3 pauses of 15 s.
    let cluster = "Bench press: cluster 1 × 2 in 4 pause 15 s; tempo 2/0/1/0";
    assert_eq!(set(cluster), 4 * 6 + 3 * 15);
    // Hand-worked: 10 + 6 × 6 + 8 × 1 s; once more with the other side, 2 s to take over.
    let stages = "1 × [hold 10 s → 6 at 4/0/2/0 → 8 partials]";
    assert_eq!(set(&format!("Lateral raise: {stages}")), 54);
    assert_eq!(
        set(&format!("Lateral raise: {stages}; one side holds")),
        110
    );
    // Hand-worked: 8 × 4 s, 5 s to change sides, 8 × 4 s.
    assert_eq!(set("Split squat: 1 × 8; tempo 3/0/1/0; each side"), 69);
}

#[test]
fn a_sheet_takes_its_sets_rests_and_change_overs() {
    let squat = "Front squat: 3 × 8; tempo 3/1/1/0; rest 2:00 then 1:30";
    // Hand-worked: 3 × 40 s and 2 rests.
    assert_eq!(whole(squat), 360);
    // Hand-worked: a set of three drops has no rest within, 3 × 30 s; two of them and one rest.
    let drops = "Front squat: drop 2 × 10 drops 2 to 80 %; tempo 2/0/1/0; rest 1:00";
    assert_eq!(whole(drops), 240);
    // Hand-worked: 40, 30, 20, 60, 40, 30, 20.
    let pair = "A1 Front squat: 2 × 8; tempo 3/1/1/0; rest 1:30; between 30 s\nA2 Plank: 2 × 20 s; no load; rest 1:00";
    assert_eq!(whole(pair), 240);
    let both = read(&format!("{squat}\n{pair}"));
    let prediction = Prediction::of(&both);
    let blocks: Vec<u64> = both.blocks().map(|b| prediction.of_block(b)).collect();
    assert_eq!(blocks, [360, 140, 100]);
    // Hand-worked: 360, rest of 90, change-over, 240.
    assert_eq!(prediction.seconds(s(60)), 750);
    assert_eq!(prediction.seconds(s(45)), 735);
    assert_eq!(prediction.minutes(s(60)), 13);
    // Hand-worked: rounds of three, 15 s between: 3 × 20 + 2 × 15, twice, and 45 s.
    let round = "C1 Plank: 2 × 20 s; rest 0:45; between 15 s\nC2 Dead bug: 2 × 20 s; rest 0:45\nC3 Side plank: 2 × 20 s; rest 0:45; both sides";
    assert_eq!(whole(round), 225);
}

#[test]
fn the_warm_up_is_not_counted() {
    let squat = "Front squat: 3 × 8; tempo 3/1/1/0; rest 2:00";
    assert_eq!(
        whole(&format!("- 5 min easy rowing\n{squat}")),
        whole(squat)
    );
}

#[test]
fn the_demo_sheets_keep_within_their_budgets() {
    for sheet in demo().current_sheets() {
        let budget = sheet.budget_minutes.unwrap().get();
        assert_eq!(cuts(sheet, budget, s(60)), [], "{}", sheet.name.as_str());
    }
}

/// Names of the blocks that are cut, and how.
fn named(sheet: &Sheet, minutes: u16) -> Vec<(String, Off, u64)> {
    cuts(sheet, minutes, s(60))
        .iter()
        .map(|cut| {
            let block = sheet.block(cut.block).unwrap();
            (block.exercise.name.to_string(), cut.off, cut.saves)
        })
        .collect()
}

#[test]
fn the_least_and_last_goes_first_and_no_more_than_needed() {
    // 3 × 60 s and 2 × 60 s of rest in each block: 300 s; 60 + 60 s between: 1,560 s, 26 min.
    let line = |name: &str, role: &str| format!("{name}: 3 × 60 s; rest 1:00; {role}; no load\n");
    let sheet = read(
        &[
            line("Front squat", "strength"),
            line("Calf raise", "pump; both sides"),
            line("Push-up", "hypertrophy"),
            line("Chin-up", "hypertrophy"),
        ]
        .concat(),
    );
    assert_eq!(Prediction::of(&sheet).seconds(s(60)), 1560);
    assert_eq!(named(&sheet, 26), []);
    let cut = |name: &str, off, saves| (name.to_owned(), off, saves);
    // Hand-worked: a set and its rest are 120 s; a block with the rest and change-over after it 420 s.
    assert_eq!(named(&sheet, 25), [cut("Calf raise", Off::Sets(1), 120)]);
    assert_eq!(named(&sheet, 22), [cut("Calf raise", Off::Sets(2), 240)]);
    assert_eq!(
        named(&sheet, 21),
        [cut("Calf raise", Off::Whole, 420),].to_vec(),
    );
    // Of one role the last first.
    assert_eq!(
        named(&sheet, 17),
        [
            cut("Calf raise", Off::Whole, 420),
            cut("Chin-up", Off::Sets(1), 120),
        ]
    );
    // What matters most stays with one set, though it is over.
    let last = named(&sheet, 0);
    assert_eq!(last.last(), Some(&cut("Front squat", Off::Sets(2), 240)));
    let left = apply(&sheet, &cuts(&sheet, 0, s(60)));
    assert_eq!(left.blocks().count(), 1);
    assert_eq!(Prediction::of(&left).seconds(s(60)), 60);
}

#[test]
fn a_partner_whose_going_saves_nothing_stays() {
    // Without the plank the squat would have its own long rest: the pair is shortened another way.
    let pair = read(
        "A1 Front squat: 4 × 5; rest 5:00; between 0 s\nA2 Plank: 4 × 10 s; no load; rest 0:10; pump",
    );
    let cuts = cuts(&pair, 1, s(60));
    let first = pair.blocks().next().unwrap().id;
    assert!(cuts.iter().any(|cut| cut.block == first), "{cuts:?}");
    assert!(Prediction::of(&apply(&pair, &cuts)).seconds(s(60)) <= 60);
}

#[test]
fn ramp_ups_stay_and_settled_warnings_go_with_their_block() {
    let mut sheet = read(
        "Calf raise: 2 × 15; pump\nFront squat: ramp 2 × 4 at 50 %, 75 %; 2 × 5; back-off 2 × 8 at 80 %; strength",
    );
    let warning = stanchion::exercises::order_check(&sheet, &Default::default())[0];
    sheet.settle(warning, true);
    let short = apply(&sheet, &cuts(&sheet, 0, s(60)));
    assert_eq!(short.settled, []);
    let lines: Vec<(bool, u8)> = short
        .blocks()
        .flat_map(|block| &block.sets)
        .map(|sets| (sets.kind.is_work(), sets.count))
        .collect();
    assert_eq!(lines, [(false, 2), (true, 1)]);
    assert_eq!(short.blocks().next().unwrap().role, Role::Strength);
}

#[test]
fn between_groups_the_change_over_runs_down_after_the_rest() {
    let sheet = read("Front squat: 1 × 8; tempo 3/1/1/0; rest 1:30\nPlank: 1 × 30 s; no load");
    let set = unroll(&sheet)[0].key;
    let began = What::Began(Box::new(Began {
        curve: Curve::default(),
        session: SessionId(id(1, 1)),
        sheet,
        body_mass: None,
        proposals: Vec::new(),
        light: false,
        along: None,
    }));
    let mut session = Session::begin(event(1, 0, 1, began)).unwrap();
    let done = Done {
        load: None,
        amount: Amount::Reps(Reps::new(8).unwrap()),
        reserve: None,
    };
    let proposed = None;
    let logged = event(
        1,
        40_000,
        1,
        What::SetDone {
            set,
            done,
            proposed,
        },
    );
    session.take(logged).unwrap();
    // Hand-worked: logged at 40 s; 90 s of rest, 60 s of change-over, 30 s of plank.
    for (at, left) in [(40, 180), (100, 120), (160, 60), (190, 30), (300, 30)] {
        let now = event(1, at * 1000, 1, What::RestHeld).moment();
        assert_eq!(session.state().seconds_left(&now, s(60)), left, "at {at} s");
    }
    // Held open 30 s before its end, those 30 s are still to come however long it is held; held again, no fewer.
    for at in [100, 160, 900] {
        let held = event(1, at * 1000, 1, What::RestHeld);
        let now = held.moment();
        session.take(held).unwrap();
        assert_eq!(session.state().seconds_left(&now, s(60)), 120, "at {at} s");
    }
}

/// 84 °F and 60 % are 88 °F, caution: rests a tenth longer, up to the next 5 s.
#[test]
fn the_time_left_counts_the_longer_rests_of_the_heat() {
    let sheet = read("Front squat: 2 × 8; tempo 3/1/1/0; rest 1:30\nPlank: 1 × 30 s; no load");
    let began = What::Began(Box::new(Began {
        curve: Curve::default(),
        session: SessionId(id(1, 1)),
        sheet,
        body_mass: None,
        proposals: Vec::new(),
        light: false,
        along: None,
    }));
    let began = event(1, 0, 1, began);
    let now = began.moment();
    let mut session = Session::begin(began).unwrap();
    let rests: i64 = i64::from(session.state().slots[1].planned.rest_after.get());
    let left = |session: &Session| session.state().seconds_left(&now, s(60)) as i64;
    // Two sets of 40 s and 30 s of plank; 90 s between the sets, a rest and 60 s of change-over before the plank.
    assert_eq!(left(&session), 110 + 90 + rests + 60);
    let air = serde_json::from_str(r#"{"temperature":"84 °F","humidity":60}"#).unwrap();
    let noted = event(1, 1000, 1, What::AirNoted { air });
    session.take(noted.clone()).unwrap();
    let longer = (rests * 11 + 49) / 50 * 5;
    assert_eq!(left(&session), 110 + 100 + longer + 60);
    let undone = event(1, 2000, 1, What::Undone { event: noted.id });
    session.take(undone).unwrap();
    assert_eq!(left(&session), 110 + 90 + rests + 60);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_whole_is_the_sum_of_its_sets_and_gaps(sheet in sheet(), change_over in 0..=300_i64) {
        let change_over = s(change_over);
        let prediction = Prediction::of(&sheet);
        let planned = unroll(&sheet);
        let sets: u64 = planned.iter().map(set_seconds).sum();
        let gaps: u64 = planned.windows(2).map(|p| gap_seconds(&p[0], &p[1], change_over)).sum();
        prop_assert_eq!(prediction.seconds(change_over), sets + gaps);
        let within: u64 = sheet.blocks().map(|block| prediction.of_block(block)).sum();
        let between: u64 = prediction.groups.iter().rev().skip(1)
            .map(|group| group.rest_after + u64::from(change_over.get())).sum();
        prop_assert_eq!(prediction.seconds(change_over), within + between);
        // A session that has just begun has the whole sheet ahead of it.
        let began = What::Began(Box::new(Began { curve: Curve::default(),
            session: SessionId(id(1, 1)),
            sheet: sheet.clone(),
            body_mass: None,
            proposals: Vec::new(),
            light: false,
along: None,
}));
        let begun = event(1, 0, 1, began);
        let now = begun.moment();
        let session = Session::begin(begun).unwrap();
        prop_assert_eq!(session.state().seconds_left(&now, change_over), sets + gaps);
    }

    #[test]
    fn cuts_bring_a_sheet_within_its_budget_and_none_is_needless(
        sheet in sheet(), budget in 0..=60_u16, change_over in 0..=300_i64,
    ) {
        let change_over = s(change_over);
        let seconds = |sheet: &Sheet| Prediction::of(sheet).seconds(change_over);
        let limit = u64::from(budget) * 60;
        let made = cuts(&sheet, budget, change_over);
        let short = apply(&sheet, &made);
        short.check().map_err(|error| TestCaseError::fail(error.to_string()))?;
        let saved: u64 = made.iter().map(|cut: &Cut| cut.saves).sum();
        prop_assert_eq!(seconds(&sheet) - seconds(&short), saved);
        prop_assert!(made.iter().all(|cut| cut.saves > 0));
        if let Some((_, needed)) = made.split_last() {
            prop_assert!(seconds(&apply(&sheet, needed)) > limit, "the last cut is needless");
        }
        let straight = sheet.groups.iter().all(|group| matches!(group, Group::Straight(_)));
        if seconds(&short) > limit {
            prop_assert_eq!(cuts(&short, budget, change_over), vec![]);
            if straight && change_over.get() > 0 {
                prop_assert_eq!(short.blocks().count(), 1);
            }
        }
    }
}
