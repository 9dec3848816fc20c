//! What a session says was gained or lost over weeks.

use crate::common;

use common::built::{block, plain, reps, sets, work};
use stanchion::ledger::{Gained, SessionRecord, gained, summaries_of};
use stanchion::sheet::{LoadBasis, RepTarget, SetKind, SideMode, Target};
use stanchion::strength::{Curve, Proposal};
use stanchion::units::{Load, Rir};

/// Twelve weeks at one load and four at a third more are a change beyond noise; of the same load none is told.
#[test]
fn a_gain_beyond_noise_is_said_of_each_exercise() {
    let block = block(vec![work(1, 5, 7)], LoadBasis::External, SideMode::Both);
    let gains = |loads: [&str; 2]| {
        let records: Vec<SessionRecord> = (0..16)
            .map(|n| {
                let load = loads[usize::from(n >= 12)];
                plain(7 * n + 7, &block, &[(load, 6)])
            })
            .collect();
        gained(
            records.last().unwrap(),
            &summaries_of(&records),
            Curve::default(),
        )
    };
    assert_eq!(gains(["100 kg", "100 kg"]), []);
    let up = gains(["100 kg", "130 kg"]);
    assert_eq!(up.len(), 1);
    assert!(
        up[0].sentence().contains("% stronger over 28 days"),
        "{}",
        up[0].sentence()
    );
    assert!(up[0].by > up[0].detectable);
    let down = gains(["130 kg", "100 kg"]);
    assert!(
        down[0].sentence().contains("% weaker over 28 days"),
        "{}",
        down[0].sentence()
    );
}

/// Goblet squats of 8–12 with two in reserve asked, logged by one tap: 40 lb × 10, and 30 lb so many days later.
fn come_back(days: u64, light: [i64; 3]) -> Vec<String> {
    let mut block = block(vec![work(3, 8, 12)], LoadBasis::External, SideMode::Both);
    block.sets[0].reserve = vec![Rir::saturating(2); 3];
    let squats = |n, load, reps: [i64; 3]| plain(n, &block, &reps.map(|reps| (load, reps)));
    let records = [
        squats(1, "40 lb", [10, 10, 10]),
        squats(1 + days, "30 lb", light),
    ];
    let last = records.last().unwrap();
    let gained = gained(last, &summaries_of(&records), Curve::default());
    gained.iter().map(Gained::sentence).collect()
}

#[test]
fn a_light_load_that_went_as_planned_makes_nobody_weaker() {
    for days in [35, 74] {
        assert_eq!(come_back(days, [12, 12, 12]), [""; 0]);
        assert_eq!(come_back(days, [12, 10, 8]), [""; 0]);
    }
    // Fewer than the range asks for is near failure: that shows it, where it is not a break ago.
    let weaker = come_back(35, [7, 7, 7]);
    assert!(weaker[0].contains("% weaker over 35 days"), "{weaker:?}");
    assert_eq!(come_back(74, [7, 7, 7]), [""; 0]);
}

#[test]
fn a_load_that_the_app_made_light_makes_nobody_weaker() {
    let block = block(vec![work(1, 5, 7)], LoadBasis::External, SideMode::Both);
    let mut records: Vec<SessionRecord> = (0..4)
        .map(|n| plain(7 * n, &block, &[("100 kg", 6)]))
        .collect();
    records.extend([40, 43].map(|days| plain(21 + days, &block, &[("60 kg", 6)])));
    let told = |records: &[SessionRecord]| {
        let last = records.last().unwrap();
        gained(last, &summaries_of(records), Curve::default()).len()
    };
    assert_eq!(told(&records), 1);
    let because = serde_json::json!({"after_break": {"days": 40, "less": "10 %", "moved":
        {"at": "100 kg", "to": "90 kg", "wish": "easier", "on": "barbell"}}});
    records.last_mut().unwrap().blocks[0].proposal = Some(Proposal {
        block: block.id,
        load: Some(Load::whole_kg(90)),
        because: serde_json::from_value(because).unwrap(),
    });
    assert_eq!(told(&records), 0);

    // The next time the load is light still, and its proposal says only that it stays.
    let mut later = |proposed: Option<u16>, count| {
        let mut next = plain(67, &block, &[("60 kg", count)]);
        next.blocks[0].lines[0].proposed = proposed.map(Load::whole_kg);
        records.push(next);
        let told = told(&records);
        records.pop();
        told
    };
    assert_eq!(later(Some(60), 6), 0);
    assert_eq!(later(Some(60), 5), 0);
    // Below the range, or with less than proposed, it is the lifter who shows it.
    assert_eq!(later(Some(60), 4), 1);
    assert_eq!(later(Some(80), 6), 1);
    assert_eq!(later(None, 6), 1);
}

/// Five or more, to the limit: fewer than before show it, though as many as were asked for.
#[test]
fn a_set_to_the_limit_shows_a_loss_at_the_load_proposed() {
    let target = Target::Reps(RepTarget::AtLeast(reps(5)));
    let lines = vec![sets(SetKind::Work, 1, target)];
    let block = block(lines, LoadBasis::External, SideMode::Both);
    let records: Vec<SessionRecord> = (0..16)
        .map(|n| {
            let count = if n < 12 { 12 } else { 5 };
            let mut record = plain(7 * n + 7, &block, &[("100 kg", count)]);
            record.blocks[0].lines[0].proposed = Some(Load::whole_kg(100));
            record
        })
        .collect();
    let last = records.last().unwrap();
    let told = gained(last, &summaries_of(&records), Curve::default());
    assert!(told[0].sentence().contains("% weaker"), "{told:?}");
}
