//! Reps that come before a step of more than 10 %: their number worked by hand, what is said of them, and their laws.

use super::*;
use crate::kit::{Kit, KitParts};
use crate::sheet::Block;
use crate::strength::propose::tests::{block, performed, propose};
use crate::strength::{Because, Proposal};
use crate::units::Unit;
use proptest::prelude::*;
use serde_json::{Value, json};

fn dumbbells(pounds: &[u16]) -> Kit {
    let mut parts: KitParts = Kit::starter(Unit::Lb).parts().clone();
    let some = pounds.iter().copied().filter(|pounds| *pounds > 0);
    parts.dumbbells = some.map(lb).collect();
    Kit::new(parts).unwrap()
}

fn lb(n: u16) -> Load {
    format!("{n} lb").parse().unwrap()
}

/// Three sets of 8–12 with dumbbells.
fn curls(progression: Value) -> Block {
    block(json!({
        "exercise": {"id": "curl", "name": "Curl", "pattern": "single_joint", "equipment": "dumbbell"},
        "sets": [{"kind": "work", "count": 3, "target": {"reps": {"from": 8, "to": 12}}}],
        "progression": progression,
    }))
}

/// The reps that come before the step; none where it is no coarse one.
fn before(from: u16, to: u16, (low, top): (i64, i64), curve: Curve, reserve: i64) -> Option<u16> {
    let ladder = Ladder::new(
        &curls(json!({"double": {}})),
        &dumbbells(&[from, to]),
        Some(lb(from)),
    );
    let reserve = Rir::saturating(reserve);
    let coarse = Coarse::of(lb(from), Step::Smallest, &ladder, Worth { curve, reserve })?;
    Some(
        coarse
            .reps(Reps::saturating(low), Reps::saturating(top))
            .get(),
    )
}

/// By Epley, w(1 + r/30): r reps at one load stand for as many at another as (30 + r) times the loads' ratio less 30.
#[test]
fn the_reps_before_a_coarse_step_are_those_of_the_curve() {
    let epley = |from, to, range, reserve| before(from, to, range, Curve::Epley, reserve);
    // (30 + 8) · 20/15 − 30 = 20.7; with 2 left (30 + 10) · 20/15 − 32 = 21.3.
    assert_eq!(epley(15, 20, (8, 12), 0), Some(21));
    assert_eq!(epley(15, 20, (8, 12), 2), Some(22));
    // 40 · 40/35 − 32 = 13.7; 40 · 45/40 − 32 = 13.
    assert_eq!(epley(35, 40, (8, 12), 2), Some(14));
    assert_eq!(epley(40, 45, (8, 12), 2), Some(13));
    // Just a tenth is no coarse step.
    assert_eq!(epley(50, 55, (8, 12), 2), None);
    // Never fewer than the top: 37 · 45/40 − 32 = 9.6.
    assert_eq!(epley(40, 45, (5, 12), 2), Some(12));
    // Never more than twice the top, or 30 reps: 40 · 20/10 − 32 = 48, 44 · 30/20 − 32 = 34.
    assert_eq!(epley(10, 20, (8, 12), 2), Some(24));
    assert_eq!(epley(20, 30, (12, 20), 2), Some(30));
    assert_eq!(epley(20, 30, (20, 40), 2), Some(40));
    // 8 reps are 80 % of the chart, three quarters of that are 60 %: 2.5 % a rep below its 70 % for 12.
    assert_eq!(before(15, 20, (8, 12), Curve::NscaHandout, 0), Some(16));
    // From nothing at all there is no share.
    assert_eq!(epley(0, 20, (8, 12), 2), None);
}

/// What is proposed after sets of these reps at these pounds.
fn after(progression: Value, kit: &[u16], sessions: &[(u16, &[u16])]) -> Proposal {
    let block = curls(progression);
    let one = |(load, reps): &(u16, &[u16])| {
        let load = format!("{load} lb");
        let sets: Vec<(&str, u16)> = reps.iter().map(|n| (load.as_str(), *n)).collect();
        let mut done = performed(&sets, (8, 12));
        done.shape = block.shape();
        done
    };
    let history: Vec<_> = sessions.iter().map(one).collect();
    propose(&block, &history, &dumbbells(kit))
}

const KIT: [u16; 6] = [10, 15, 20, 50, 55, 60];

#[test]
fn a_coarse_step_waits_for_the_reps_that_say_it_will_go() {
    let said = |sessions: &[(u16, &[u16])]| {
        let next = after(json!({"double": {}}), &KIT, sessions);
        next.because.to_string()
    };
    let waits = "12, 12, 14 at 15 lb: 22 reps a set come first, then 20 lb, 33 % up";
    assert_eq!(said(&[(15, &[12, 12, 14])]), waits);
    // After the next load was missed the same reps do not lead there again.
    let tried: [(u16, &[u16]); 3] = [(15, &[22, 22, 22]), (20, &[8, 7, 6]), (15, &[12, 12, 14])];
    assert_eq!(
        said(&tried[..1]),
        "22, 22, 22 at 15 lb: top of 8–12 reached, next step in these dumbbells is 20 lb, more than 10 % up but the \
         kit has nothing smaller"
    );
    assert_eq!(
        said(&tried[..2]),
        "8, 7, 6 at 20 lb: below 8–12, a step down to 15 lb"
    );
    assert_eq!(said(&tried), waits);
    // Below the top that comes first.
    assert_eq!(
        said(&[(15, &[22, 22, 11])]),
        "22, 22, 11 at 15 lb: inside 8–12, same load again"
    );
    // A step of a tenth waits for nothing, and where the kit ends there is none.
    assert_eq!(
        said(&[(50, &[12, 12, 12])]),
        "12, 12, 12 at 50 lb: top of 8–12 reached, next step in these dumbbells is 55 lb"
    );
    assert_eq!(
        said(&[(60, &[12, 12, 12])]),
        "12, 12, 12 at 60 lb: top of 8–12 reached, nothing heavier in these dumbbells, 60 lb again"
    );
    // A load that the kit does not make is fitted, and the sentence says so.
    assert_eq!(
        said(&[(16, &[12, 12, 12])]),
        "12, 12, 12 at 16 lb: 18 reps a set come first, then 20 lb, 25 % up; same load again, nearest below is 15 lb"
    );
}

#[test]
fn a_coarse_step_waits_for_the_sets_that_the_rule_asks() {
    let last = |reps: &[u16]| {
        let rule = json!({"double": {"reach": "last_set", "up": {"by": "5 lb"}}});
        after(rule, &KIT, &[(15, reps)])
    };
    let waits = last(&[12, 12, 14]);
    assert_eq!(waits.load, Some(lb(15)));
    assert_eq!(
        waits.because.to_string(),
        "12, 12, 14 at 15 lb: 22 reps in the last set come first, then 20 lb, 33 % up"
    );
    assert_eq!(last(&[12, 12, 22]).load, Some(lb(20)));
    let every = after(json!({"double": {}}), &KIT, &[(15, &[12, 12, 22])]);
    assert!(matches!(
        every.because,
        Because::StepWaits { last: false, .. }
    ));
}

/// After a break, or a step down that was taken back, the load of before is no unknown one. The newest try decides.
#[test]
fn a_load_that_was_held_lately_is_not_waited_for() {
    let load = |sessions: &[(u16, &[u16])]| after(json!({"double": {}}), &KIT, sessions).load;
    let held: [(u16, &[u16]); 2] = [(20, &[10, 10, 10]), (15, &[12, 12, 12])];
    assert_eq!(load(&held), Some(lb(20)));
    let heavier: [(u16, &[u16]); 2] = [(50, &[8, 8, 8]), (15, &[12, 12, 12])];
    assert_eq!(load(&heavier), Some(lb(20)));
    let missed: [(u16, &[u16]); 3] = [held[0], (20, &[8, 7, 6]), held[1]];
    assert_eq!(load(&missed), Some(lb(15)));
}

/// 22 reps with two left are asked for: what was told to be left counts, more of it and less.
#[test]
fn what_was_left_beside_the_reps_counts_for_a_coarse_step() {
    let told = |reps: u16, left: i64| {
        let block = curls(json!({"double": {}}));
        let mut done = performed(&[("15 lb", reps); 3], (8, 12));
        done.shape = block.shape();
        for set in &mut done.sets {
            set.reserve = Some(Rir::saturating(left));
        }
        propose(&block, &[done], &dumbbells(&KIT)).load
    };
    assert_eq!((told(18, 5), told(19, 5)), (Some(lb(15)), Some(lb(20))));
    assert_eq!((told(22, 2), told(22, 0)), (Some(lb(20)), Some(lb(15))));
    // Twice the top is enough, whatever was left.
    assert_eq!(told(24, 0), Some(lb(20)));
}

/// The reps of a cluster are those of all its portions: no curve knows them.
#[test]
fn a_cluster_waits_for_nothing() {
    let block = curls(json!({"double": {}}));
    let mut done = performed(&[("15 lb", 12); 3], (8, 12));
    done.shape = block.shape();
    for set in &mut done.sets {
        set.unfed = Some(crate::strength::Unfed::Cluster);
    }
    let next = propose(&block, &[done], &dumbbells(&KIT));
    assert_eq!(next.load, Some(lb(20)));
}

/// A load added to the body is not the whole that is moved: there nothing waits.
#[test]
fn a_load_added_to_the_body_waits_for_nothing() {
    let mut block = curls(json!({"double": {}}));
    block.basis = crate::sheet::LoadBasis::BodyMassPlus;
    let ladder = Ladder::new(&block, &dumbbells(&KIT), Some(lb(15)));
    let worth = Worth {
        curve: Curve::default(),
        reserve: Rir::saturating(2),
    };
    assert!(Coarse::of(lb(15), Step::Smallest, &ladder, worth).is_none());
}

proptest! {
    /// Whatever the curve, the reps are within reach, and a larger step never asks for fewer.
    #[test]
    fn a_larger_step_asks_for_no_fewer_reps(
        curve in prop::sample::select(Curve::ALL.to_vec()),
        from in 5..50_u16,
        (less, more) in (1..40_u16, 0..40_u16),
        (low, wide) in (1..20_i64, 0..12_i64),
        reserve in 0..6_i64,
    ) {
        let range = (low, low + wide);
        let reps = |up| before(from, from + up, range, curve, reserve);
        let (a, b) = (reps(less), reps(less + more));
        prop_assert!(a <= b, "{a:?} then {b:?}");
        let top = (low + wide) as u16;
        prop_assert!(b.is_none_or(|b| b >= top && b <= top.max(MOST_REPS).min(2 * top)), "{b:?}");
    }

    /// More reps at a load, or the same at a heavier one, never give less; and with twice the top the load rises.
    #[test]
    fn more_never_gives_less_where_steps_are_coarse(
        last in prop::collection::vec(0..26_u16, 1..4),
        (load, heavier) in (10..60_u16, 0..20_u16),
        more in 0..14_u16,
        reach in prop::sample::select(vec!["all_sets", "last_set"]),
    ) {
        let next = |load, reps: &[u16]| after(json!({"double": {"reach": reach}}), &KIT, &[(load, reps)]).load;
        let better: Vec<u16> = last.iter().map(|reps| reps + more).collect();
        let (a, b) = (next(load, &last), next(load + heavier, &better));
        prop_assert!(b >= a, "{a:?} then {b:?}");
        prop_assert!(next(load, &[24, 24, 24]) > Some(lb(load)) || load >= 60);
    }
}
