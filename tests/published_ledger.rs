//! The ledger's sums against published figures. P2: published, seen quoted; P: published; D: derived by arithmetic.

use crate::common;

use common::built::{block, done, key, plain, record, reps, sets, work};
use stanchion::ledger::{DayLoads, Spread, Volume, VolumeLoad, session_load};
use stanchion::session::{Amount, StageAmount};
use stanchion::sheet::{LoadBasis, RepTarget, SetKind, SideMode, Target};
use stanchion::units::{Rpe, Seconds, Share};

fn volume(text: &str) -> VolumeLoad {
    text.parse().unwrap()
}

#[test]
fn volume_load_is_sets_by_reps_by_load() {
    // Volume load = sets × reps × load (Haff & Triplett, Essentials of Strength Training and Conditioning; P2);
    // 3 × 10 × 60 kg = 1800 kg (D).
    let block = block(vec![work(3, 8, 10)], LoadBasis::External, SideMode::Both);
    let record = plain(1, &block, &[("60 kg", 10); 3]);
    assert_eq!(Volume::of(&record).work, volume("1800 kg"));
}

#[test]
fn pounds_count_as_exact_kilograms() {
    // 1 lb = 0.45359237 kg exactly (agreement of 1 July 1959; NIST SP 811, P): 10 × 45 lb = 204.1165665 kg (D).
    let block = block(vec![work(1, 8, 10)], LoadBasis::External, SideMode::Both);
    let record = plain(1, &block, &[("45 lb", 10)]);
    assert_eq!(Volume::of(&record).work, volume("204.1165665 kg"));
}

#[test]
fn the_body_counts_where_it_is_moved() {
    // Pull-up, chin-up, dip: whole body mass ± external load (Johnson et al. 2009, J Strength Cond Res 23(3):1022–1028,
    // P). At 80 kg: chin-up + 10 → 90; − 20 of assistance → 60 (D). Push-up 0.64 of the body mass (Ebben et al. 2011,
    // J Strength Cond Res 25(10):2891–2894, P2): 51.2 (D).
    let push_up = LoadBasis::BodyMassShare(Share::percent(64));
    for (basis, load, one) in [
        (LoadBasis::BodyMassPlus, Some("10 kg"), "90 kg"),
        (LoadBasis::BodyMassMinus, Some("20 kg"), "60 kg"),
        (push_up, None, "51.2 kg"),
    ] {
        let block = block(vec![work(1, 4, 6)], basis, SideMode::Both);
        let dones = [(key(0, 0), done(load, Amount::Reps(reps(1))))];
        let known = Volume::of(&record(1, &block, Some("80 kg"), &dones));
        assert_eq!((known.work, known.unknown), (volume(one), 0));
        let unknown = Volume::of(&record(1, &block, None, &dones));
        assert_eq!((unknown.work, unknown.unknown), (volume("0 kg"), 1));
    }
}

#[test]
fn ramp_up_sets_are_summed_apart() {
    // Common practice, no source: warm-up sets are left out of the work.
    let shares = vec![Share::percent(60)];
    let five = Target::Reps(RepTarget::fixed(reps(5)).unwrap());
    let ramp = sets(SetKind::RampUp { shares }, 1, five);
    let block = block(
        vec![ramp, work(1, 5, 7)],
        LoadBasis::External,
        SideMode::Both,
    );
    let dones = [
        (key(0, 0), done(Some("36 kg"), Amount::Reps(reps(5)))),
        (key(1, 0), done(Some("60 kg"), Amount::Reps(reps(7)))),
    ];
    let sums = Volume::of(&record(1, &block, None, &dones));
    assert_eq!(sums.ramp_up, volume("180 kg"));
    assert_eq!(sums.work, volume("420 kg"));
}

#[test]
fn both_sides_count_and_only_full_reps() {
    // Common practice, no source: reps are logged for each side; holds and partials have no full repetition.
    let amount = Amount::Stages(vec![
        StageAmount::Hold(Seconds::new(10).unwrap()),
        StageAmount::Reps(reps(6)),
        StageAmount::Partials(reps(8)),
    ]);
    for (sides, sum) in [
        (SideMode::Both, "60 kg"),
        (SideMode::EachInTurn, "120 kg"),
        (SideMode::OneHolds, "120 kg"),
    ] {
        let block = block(vec![work(1, 5, 7)], LoadBasis::External, sides);
        let dones = [(key(0, 0), done(Some("10 kg"), amount.clone()))];
        assert_eq!(
            Volume::of(&record(1, &block, None, &dones)).work,
            volume(sum)
        );
    }
}

#[test]
fn bands_and_unloaded_sets_have_no_volume_and_are_not_unknown() {
    let label = LoadBasis::Band("light".to_owned().try_into().unwrap());
    for basis in [label, LoadBasis::Unloaded] {
        let block = block(vec![work(1, 15, 20)], basis, SideMode::Both);
        let dones = [(key(0, 0), done(None, Amount::Reps(reps(20))))];
        assert_eq!(
            Volume::of(&record(1, &block, Some("80 kg"), &dones)),
            Volume::default()
        );
    }
}

#[test]
fn session_load_is_rpe_by_minutes() {
    // Foster et al. 2001 (J Strength Cond Res 15(1):109–115, P2): session RPE (CR-10) × minutes. 7 × 60 = 420 (D).
    let rpe = |n| Rpe::new(n).unwrap();
    assert_eq!(session_load(rpe(7), 60), 420);
    assert_eq!(session_load(rpe(0), 60), 0);
    assert_eq!(session_load(rpe(10), 48), 480);
}

/// Days with one rated session each; 0 is rest.
fn week_of(days: [u32; 7]) -> DayLoads {
    DayLoads {
        days,
        rated: days.iter().filter(|day| **day > 0).count() as u32,
        unrated: 0,
    }
}

#[test]
fn monotony_is_mean_over_deviation_and_strain_is_total_by_monotony() {
    // Foster 1998 (P2): monotony = mean / SD of seven daily loads, rest = 0; strain = total × monotony. With the SD of a
    // sample, n − 1 (D).
    for (days, total, monotony, strain) in [
        ([0, 300, 420, 0, 360, 480, 0], 1560, 1.0340, 1612.96),
        ([420, 0, 420, 0, 420, 0, 0], 1260, 0.8018, 1010.25),
    ] {
        let week = week_of(days);
        assert_eq!(week.total(), total);
        let Spread::Known {
            monotony: m,
            strain: s,
        } = week.spread(true)
        else {
            panic!("known");
        };
        assert!((m - monotony).abs() < 5e-5, "{m}");
        assert!((s - strain).abs() < 5e-3, "{s}");
        assert_eq!(week.spread(false), Spread::NotOver);
    }
}

#[test]
fn where_all_days_are_equal_there_is_no_monotony() {
    // The deviation is 0 (D): undefined, and said to be.
    for days in [[0; 7], [300; 7]] {
        let spread = week_of(days).spread(true);
        assert_eq!(spread, Spread::AllEqual);
        assert!(spread.said().contains("undefined"));
    }
    // A session that was not rated is no day of rest.
    let unrated = DayLoads {
        unrated: 1,
        ..week_of([0, 300, 420, 0, 360, 480, 0])
    };
    assert_eq!(unrated.spread(true), Spread::Unrated(1));
}
