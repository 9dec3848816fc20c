//! Bests of holds, carries, stages and bands.

use super::super::bests::Bests;
use super::*;
use crate::ledger::TempoKept;
use crate::ledger::volume::VolumeLoad;
use crate::sheet::{Line, SheetId};
use crate::strength::{Curve, Performance, Stretch, Unfed};
use crate::units::{Metres, Seconds, Unit};

/// A set of no reps that was done with that load.
fn set(load: Option<&str>, stretch: Option<Stretch>, unfed: Option<Unfed>) -> SetResult {
    SetResult {
        load: load.map(|load| load.parse().unwrap()),
        reps: Reps::saturating(0),
        stretch,
        stages: Vec::new(),
        low: Reps::saturating(0),
        top: Reps::saturating(0),
        reserve: None,
        work: false,
        to_limit: false,
        to_spare: false,
        unfed,
    }
}

/// A set that was held for so many seconds.
pub(crate) fn held(load: Option<&str>, seconds: i64) -> SetResult {
    let stretch = Stretch::Held(Seconds::saturating(seconds));
    set(load, Some(stretch), Some(Unfed::Timed))
}

/// One that was carried so many metres.
pub(crate) fn carried(load: &str, metres: i64) -> SetResult {
    let stretch = Stretch::Carried(Metres::saturating(metres));
    set(Some(load), Some(stretch), Some(Unfed::Distance))
}

/// A plain work set without a load.
pub(crate) fn reps(n: i64) -> SetResult {
    SetResult {
        reps: Reps::saturating(n),
        work: true,
        ..set(None, None, None)
    }
}

/// Session `n` of these sets, by a prescription of that shape.
fn shaped(n: u32, shape: &str, basis: &LoadBasis, sets: Vec<SetResult>) -> Past {
    let id = uuid::Uuid::from_u128(u128::from(n));
    let at = DateTime::parse_from_rfc3339("2026-01-05T09:00:00Z").unwrap();
    Past {
        name: Line::new("Plank").unwrap(),
        performance: Performance {
            session: id,
            at: at + chrono::TimeDelta::weeks(i64::from(n)),
            shape: shape.to_owned(),
            basis: Some(basis.clone()),
            body_mass: None,
            left: 0,
            sets,
        },
        sheet: SheetId(id),
        light: false,
        volume: VolumeLoad::default(),
        tempo: TempoKept::default(),
    }
}

fn past(n: u32, basis: &LoadBasis, sets: Vec<SetResult>) -> Past {
    shaped(n, "", basis, sets)
}

/// What the last of these sessions beats, in a sentence and in short.
fn said(history: &[Past]) -> Vec<(String, String)> {
    let (before, last) = history.split_at(history.len() - 1);
    let beaten = Bests::of(before).beaten_by(&[], last);
    assert!(beaten.iter().all(|best| best.counts(Curve::default())));
    let both = |best: &Best| (best.sentence(Unit::Kg), best.brief(Unit::Kg));
    beaten.iter().map(both).collect()
}

/// The sentence of the one best of the last session.
fn only(history: &[Past]) -> String {
    let said = said(history);
    assert_eq!(said.len(), 1, "{said:?}");
    said[0].0.clone()
}

#[test]
fn a_longer_hold_is_a_best() {
    let plank = |n, seconds| past(n, &LoadBasis::Unloaded, vec![held(None, seconds)]);
    assert_eq!(
        said(&[plank(1, 30), plank(2, 45)]),
        [(
            "45 s: the longest, 30 s before".to_owned(),
            "45 s, longest".to_owned()
        )]
    );
    assert_eq!(
        only(&[plank(1, 50), plank(2, 75)]),
        "1:15: the longest, 50 s before"
    );
    assert!(said(&[plank(1, 45), plank(2, 45)]).is_empty());
    assert!(said(&[plank(1, 45)]).is_empty(), "the first beats nothing");
}

#[test]
fn a_hold_is_compared_at_its_load() {
    let hold = |n, load, seconds| past(n, &LoadBasis::BodyMassPlus, vec![held(load, seconds)]);
    let first = hold(1, Some("10 kg"), 30);
    assert_eq!(
        only(&[first.clone(), hold(2, Some("10 kg"), 40)]),
        "40 s, +10 kg: the longest at it, 30 s before"
    );
    assert_eq!(
        only(&[first.clone(), hold(2, Some("15 kg"), 30)]),
        "30 s, +15 kg: the heaviest at 30 s, +10 kg before"
    );
    assert!(said(&[first.clone(), hold(2, Some("5 kg"), 20)]).is_empty());
    // Longer with less is a best beside it.
    assert_eq!(
        only(&[first, hold(2, None, 60)]),
        "1:00, nothing added: the longest at it, 30 s before"
    );
}

#[test]
fn of_assistance_less_is_better() {
    let hold = |n, load, seconds| {
        past(
            n,
            &LoadBasis::BodyMassMinus,
            vec![held(Some(load), seconds)],
        )
    };
    assert_eq!(
        said(&[hold(1, "20 kg", 30), hold(2, "15 kg", 30)]),
        [(
            "30 s with 15 kg of assistance: the least at 30 s, 20 kg of assistance before"
                .to_owned(),
            "30 s with 15 kg of assistance, least at 30 s".to_owned()
        )]
    );
    assert!(said(&[hold(1, "15 kg", 30), hold(2, "20 kg", 30)]).is_empty());
}

#[test]
fn a_carry_is_best_by_way_and_by_load() {
    let walk = |n, load, metres| past(n, &LoadBasis::External, vec![carried(load, metres)]);
    assert_eq!(
        said(&[walk(1, "24 kg", 20), walk(2, "24 kg", 30)]),
        [(
            "30 m at 24 kg: the farthest at it, 20 m before".to_owned(),
            "30 m at 24 kg, farthest".to_owned()
        )]
    );
    assert_eq!(
        said(&[walk(1, "24 kg", 20), walk(2, "28 kg", 20)]),
        [(
            "20 m at 28 kg: the heaviest at 20 m, 24 kg before".to_owned(),
            "20 m at 28 kg, most at 20 m".to_owned()
        )]
    );
    assert_eq!(
        only(&[walk(1, "24 kg", 20), walk(2, "28 kg", 30)]),
        "30 m at 28 kg: harder and farther than any before"
    );
}

/// Seconds and metres say nothing of each other, nor does one band of another.
#[test]
fn only_what_is_counted_alike_is_compared() {
    let by_time = past(1, &LoadBasis::External, vec![held(Some("24 kg"), 20)]);
    let by_way = past(2, &LoadBasis::External, vec![carried("24 kg", 60)]);
    let both = [by_time, by_way];
    assert!(said(&both).is_empty());
    assert_eq!(Bests::of(&both).ways.len(), 2);
    let band = |n, label: &str, count| {
        let band = LoadBasis::Band(Line::new(label).unwrap());
        past(n, &band, vec![reps(count)])
    };
    let all = [
        band(1, "green", 8),
        band(2, "red", 12),
        band(3, "green band", 10),
    ];
    assert_eq!(
        only(&all),
        "10 reps, band: green: the most reps, 8 before",
        "the two of one name are one band"
    );
    assert_eq!(Bests::of(&all).ways.len(), 2);
    assert!(said(&[band(1, "green", 8), band(2, "red", 12)]).is_empty());
}

#[test]
fn stages_are_compared_with_the_same_stages() {
    let staged = |n, shape, count| {
        let set = SetResult {
            reps: Reps::saturating(count),
            ..set(None, None, Some(Unfed::Staged))
        };
        shaped(n, shape, &LoadBasis::Unloaded, vec![set])
    };
    assert_eq!(
        only(&[staged(1, "a", 8), staged(2, "a", 10)]),
        "10 full reps in stages: the most reps, 8 before"
    );
    assert!(said(&[staged(1, "a", 8), staged(2, "b", 10)]).is_empty());
}

#[test]
fn what_only_leads_up_to_a_hold_is_no_best() {
    let ramp_up = SetResult {
        unfed: Some(Unfed::RampUp),
        ..held(None, 90)
    };
    let sets = vec![ramp_up, held(None, 30)];
    let bests = Bests::of(&[past(1, &LoadBasis::Unloaded, sets)]);
    assert_eq!(
        bests.ways[0].sets[0].much,
        Much::Held(Seconds::saturating(30))
    );
}
