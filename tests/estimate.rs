//! From sessions built by hand to the estimate: what feeds it, what does not and why, and rows of before.

mod common;

use common::built::{block, done, key, plain, record, reps, sets, work};
use stanchion::ledger::performances_of;
use stanchion::session::{Amount, Done, StageAmount};
use stanchion::sheet::{LoadBasis, RepTarget, SetKind, Sets, SideMode, Stage, Target};
use stanchion::strength::{Curve, Performance, Strength, Unfed, best_e1rm, unfed};
use stanchion::units::{Load, Metres, Seconds, Share};

fn performance(line: Sets, basis: LoadBasis, body_mass: Option<&str>, did: Done) -> Performance {
    let block = block(vec![line], basis, SideMode::Both);
    performances_of(&record(1, &block, body_mass, &[(key(0, 0), did)]))
        .remove(0)
        .1
}

fn why(kind: SetKind, target: Target, amount: Amount) -> Option<Unfed> {
    let line = sets(kind, 1, target);
    let did = done(Some("60 kg"), amount);
    let performance = performance(line, LoadBasis::External, None, did);
    let why = unfed(&performance, &performance.sets[0], Curve::Epley);
    // What a reason keeps out, the estimate does not see.
    let strength = Strength::of(&[performance], Curve::Epley);
    assert_eq!(strength.is_some(), why.is_none());
    why
}

fn five() -> Target {
    Target::Reps(RepTarget::fixed(reps(5)).unwrap())
}

#[test]
fn every_kind_of_set_that_says_nothing_gives_its_reason() {
    let fifty = Share::percent(50);
    let did = || Amount::Reps(reps(5));
    let kind = |kind| why(kind, five(), did());
    assert_eq!(kind(SetKind::Work), None);
    assert_eq!(kind(SetKind::ToFailure), None);
    let ramp_up = SetKind::RampUp {
        shares: vec![fifty],
    };
    assert_eq!(kind(ramp_up), Some(Unfed::RampUp));
    let back_off = SetKind::BackOff { share: fifty };
    assert_eq!(kind(back_off), Some(Unfed::BackOff));
    let drop = SetKind::Drop {
        drops: 2,
        keep: fifty,
    };
    assert_eq!(kind(drop), Some(Unfed::Drop));
    let cluster = SetKind::Cluster {
        portions: 3,
        pause: Seconds::new(15).unwrap(),
    };
    assert_eq!(kind(cluster), Some(Unfed::Cluster));

    let seconds = Seconds::new(40).unwrap();
    let target = |target, amount| why(SetKind::Work, target, amount);
    assert_eq!(
        target(Target::Timed(seconds), Amount::Timed(seconds)),
        Some(Unfed::Timed)
    );
    let metres = Metres::new(30).unwrap();
    assert_eq!(
        target(Target::Distance(metres), Amount::Distance(metres)),
        Some(Unfed::Distance)
    );
    let stages = Target::Stages(vec![Stage::Partials {
        reps: RepTarget::fixed(reps(8)).unwrap(),
    }]);
    let partials = Amount::Stages(vec![StageAmount::Partials(reps(8))]);
    assert_eq!(target(stages, partials), Some(Unfed::Staged));
    // A burn-out.
    assert_eq!(
        why(SetKind::ToFailure, five(), Amount::Reps(reps(40))),
        Some(Unfed::OffTheCurve { reps: reps(40) })
    );
}

#[test]
fn reasons_are_sentences() {
    assert_eq!(
        Unfed::BodyMassUnknown.to_string(),
        "not in the estimate: the body mass of that day is not known; say yours in Kit"
    );
    assert_eq!(
        Unfed::OffTheCurve { reps: reps(40) }.to_string(),
        "not in the estimate: 40 reps with the reserve, the curve ends before"
    );
}

#[test]
fn the_body_mass_of_the_day_is_in_the_estimate() {
    let pull_up = |body_mass, basis| {
        let did = done(Some("10 kg"), Amount::Reps(reps(1)));
        let performance = performance(work(1, 5, 7), basis, body_mass, did);
        Strength::of(&[performance], Curve::Epley).map(|strength| strength.e1rm().middle)
    };
    let kg = |kg| Some(Load::whole_kg(kg));
    assert_eq!(pull_up(Some("80 kg"), LoadBasis::BodyMassPlus), kg(90));
    assert_eq!(pull_up(Some("80 kg"), LoadBasis::BodyMassMinus), kg(70));
    assert_eq!(pull_up(None, LoadBasis::BodyMassPlus), None);
    assert_eq!(pull_up(None, LoadBasis::External), kg(10));
}

#[test]
fn a_cluster_is_no_best() {
    let line = |kind| {
        performance(
            sets(kind, 1, five()),
            LoadBasis::External,
            None,
            five_at_60(),
        )
    };
    let cluster = SetKind::Cluster {
        portions: 3,
        pause: Seconds::new(15).unwrap(),
    };
    assert!(best_e1rm(&[line(SetKind::Work)]).is_some());
    assert_eq!(best_e1rm(&[line(cluster)]), None);
}

fn five_at_60() -> Done {
    done(Some("60 kg"), Amount::Reps(reps(5)))
}

#[test]
fn a_row_of_before_reads_and_says_what_it_lacks() {
    let text = r#"{"session":"00000000-0000-0000-0000-000000000001","at":"2026-01-05T18:00:00+01:00","shape":"x",
        "sets":[{"load":"60 kg","reps":5,"low":5,"top":7,"work":true}]}"#;
    let before: Performance = serde_json::from_str(text).unwrap();
    let set = &before.sets[0];
    assert_eq!(unfed(&before, set, Curve::Epley), Some(Unfed::BasisUnknown));
    assert_eq!(best_e1rm(std::slice::from_ref(&before)), None);
    // What is not known is left out when it is written again.
    let written = serde_json::to_value(&before).unwrap();
    assert_eq!(
        written,
        serde_json::from_str::<serde_json::Value>(text).unwrap()
    );
}

#[test]
fn a_performance_survives_its_row() {
    let block = block(vec![work(2, 5, 7)], LoadBasis::BodyMassPlus, SideMode::Both);
    let mut performance = performances_of(&plain(1, &block, &[("10 kg", 6)]))
        .remove(0)
        .1;
    performance.body_mass = Some(Load::whole_kg(80));
    performance.sets[0].unfed = Some(Unfed::OffTheCurve { reps: reps(40) });
    performance.sets[0].to_limit = true;
    let text = serde_json::to_string(&performance).unwrap();
    assert_eq!(
        serde_json::from_str::<Performance>(&text).unwrap(),
        performance
    );
}
