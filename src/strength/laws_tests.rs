//! Laws of the proposals, whatever was logged before: loads of the kit, bounded steps, more for more.

use super::tests::{block, performed, propose};
use super::*;
use crate::kit::KitParts;
use crate::units::{Rir, Unit};
use chrono::TimeDelta;
use proptest::prelude::*;
use serde_json::json;

fn kit() -> Kit {
    Kit::starter(Unit::Kg)
}

fn some_rule() -> impl Strategy<Value = serde_json::Value> {
    prop::sample::select(vec![
        json!({"double": {}}),
        json!({"double": {"reach": "last_set", "up": {"by": "9 kg"}, "down": {"by": "9 kg"}}}),
        json!({"two_for_two": {"up": {"by": "30 kg"}}}),
        json!({"fixed": {"up": {"by": "0.5 kg"}}}),
        json!({"share_of_e1rm": {"share": "77.5 %"}}),
        json!({"by_reserve": {"aim": 2, "step": {"by": "10 kg"}}}),
        json!("as_written"),
    ])
}

fn deloads(proposal: &Proposal) -> bool {
    matches!(proposal.because, Because::Deload { .. })
}

/// The sets of one session: their loads in tenths of a kilogram, near one another more often than not, and their reps.
fn some_session() -> impl Strategy<Value = Vec<(i64, u16)>> {
    let tenths = prop_oneof![1 => 200..1900_i64, 3 => (32..40_i64).prop_map(|n| n * 25)];
    prop::collection::vec((tenths, 0..=12_u16), 1..5)
}

fn session(block: &Block, sets: &[(i64, u16)]) -> Performance {
    let loads: Vec<String> = sets
        .iter()
        .map(|(n, _)| format!("{}.{} kg", n / 10, n % 10))
        .collect();
    let sets: Vec<(&str, u16)> = loads
        .iter()
        .zip(sets)
        .map(|(l, (_, r))| (l.as_str(), *r))
        .collect();
    let mut performance = performed(&sets, (5, 7));
    performance.shape = block.shape();
    performance
}

/// Sessions of one load each, in quarters of a kilogram or of a pound, with reps and reserve of each set.
type Sessions = Vec<(u16, bool, Vec<(u16, Option<i64>)>)>;

fn some_sessions() -> impl Strategy<Value = Sessions> {
    let set = (0..15_u16, prop::option::of(0..10_i64));
    prop::collection::vec(
        (0..1600_u16, any::<bool>(), prop::collection::vec(set, 1..4)),
        0..6,
    )
}

fn history(block: &Block, sessions: &Sessions) -> Vec<Performance> {
    let one = |(quarters, pounds, sets): &(u16, bool, Vec<(u16, Option<i64>)>)| {
        let unit = if *pounds { "lb" } else { "kg" };
        let at = format!("{}.{} {unit}", quarters / 4, quarters % 4 * 25);
        let plain: Vec<(&str, u16)> = sets.iter().map(|(reps, _)| (at.as_str(), *reps)).collect();
        let mut performance = performed(&plain, (5, 7));
        for (result, (_, reserve)) in performance.sets.iter_mut().zip(sets) {
            result.reserve = reserve.map(|n| Rir::new(n).unwrap());
        }
        performance.shape = block.shape();
        performance
    };
    sessions.iter().map(one).collect()
}

proptest! {
    #[test]
    fn a_proposal_can_always_be_loaded(
        rule in some_rule(),
        assisted in any::<bool>(),
        history in prop::collection::vec(some_session(), 0..3),
        pairs in prop::collection::vec(1..3_u8, 6),
    ) {
        let basis = if assisted { "body_mass_minus" } else { "external" };
        let block = block(serde_json::json!({"progression": rule, "basis": basis}));
        let mut parts: KitParts = kit().parts().clone();
        parts.plates.iter_mut().zip(&pairs).for_each(|(kind, n)| kind.pairs = *n);
        let kit = Kit::new(parts).unwrap();
        let history: Vec<Performance> = history.iter().map(|sets| session(&block, sets)).collect();
        let proposal = propose(&block, &history, &kit);
        match proposal.load {
            Some(load) => prop_assert!(kit.choices(block.exercise.equipment).contains(load)),
            None => { let refused = matches!(proposal.because, Because::OutOfKit { .. }); prop_assert!(refused, "{}", proposal.because) },
        }
    }

    #[test]
    fn more_reps_never_give_an_easier_proposal(
        rule in some_rule(),
        assisted in any::<bool>(),
        before in prop::collection::vec(some_session(), 0..3),
        last in some_session(),
        more in prop::collection::vec(0..4_u16, 5),
        one_load in any::<bool>(),
    ) {
        let basis = if assisted { "body_mass_minus" } else { "external" };
        let block = block(serde_json::json!({"progression": rule, "basis": basis}));
        let mut last = last;
        if one_load {
            let load = last[0].0;
            last.iter_mut().for_each(|set| set.0 = load);
        }
        let better: Vec<(i64, u16)> = last.iter().zip(&more).map(|(&(l, r), m)| (l, r + m)).collect();
        let next = |last: &[(i64, u16)]| {
            let sessions = before.iter().map(Vec::as_slice).chain([last]);
            let history: Vec<Performance> = sessions.map(|sets| session(&block, sets)).collect();
            propose(&block, &history, &kit())
        };
        let (less, more) = (next(&last), next(&better));
        // With a rep more another load can be the work load: see `more_done_never_gives_less`.
        if !one_load && deloads(&more) && !deloads(&less) {
            return Ok(());
        }
        match (less.load, more.load) {
            (Some(a), Some(b)) if assisted => prop_assert!(b <= a, "{a} then {b}"),
            (Some(a), Some(b)) => prop_assert!(b >= a, "{a} then {b}"),
            (a, b) => prop_assert!(a.is_none() || b.is_some()),
        }
    }

    /// Whatever was logged, in whatever units, however long ago: a load of this kit, or a sentence that says why not.
    #[test]
    fn any_history_gives_a_load_that_can_be_made_or_says_why_not(
        rule in some_rule(),
        basis in prop::sample::select(vec!["external", "body_mass_plus", "body_mass_minus"]),
        sessions in some_sessions(),
        days in -3000..3000_i64,
        mass in prop::option::of(0..200_u16),
    ) {
        let block = block(json!({"progression": rule, "basis": basis, "start": null}));
        let body_mass = mass.map(Load::whole_kg);
        let mut history = history(&block, &sessions);
        history.iter_mut().for_each(|performance| {
            performance.basis = Some(block.basis.clone());
            performance.body_mass = body_mass;
        });
        let now = performed(&[("1 kg", 1)], (1, 1)).at + TimeDelta::days(days);
        let proposal = super::propose(&block, &Today { history: &history, kit: &kit(), now, curve: Curve::default(), body_mass });
        prop_assert!(!proposal.because.to_string().is_empty());
        match proposal.load {
            Some(load) => prop_assert!(kit().choices(block.exercise.equipment).contains(load)),
            None => {
                let told = matches!(proposal.because, Because::OutOfKit { .. } | Because::NothingKnown {});
                prop_assert!(told, "{}", proposal.because);
            }
        }
    }

    /// A rule's step up is never above a tenth, but where the because says that the kit has nothing smaller.
    #[test]
    fn no_step_up_is_above_a_tenth_unsaid(rule in some_rule(), sessions in some_sessions()) {
        let block = block(json!({ "progression": rule }));
        let because = propose(&block, &history(&block, &sessions), &kit()).because;
        if let Some(moved) = because.moved().filter(|moved| moved.to > moved.at) {
            let tenth = moved.to.kg() <= moved.at.kg() * crate::strength::safety::JUMP;
            prop_assert!(tenth || moved.bound == Some(crate::strength::Bound::KitStep), "{because}");
        }
    }

    /// The longer the break, the lighter.
    #[test]
    fn a_longer_break_never_gives_more(
        rule in some_rule(),
        sessions in some_sessions(),
        days in 0..100_i64,
        longer in 0..100_i64,
    ) {
        let block = block(json!({ "progression": rule }));
        let history = history(&block, &sessions);
        let Some(at) = history.first().map(|first| first.at) else {
            return Ok(());
        };
        let after = |days| super::propose(&block, &Today { history: &history, kit: &kit(), now: at + TimeDelta::days(days), curve: Curve::default(), body_mass: None }).load;
        prop_assert!(after(days + longer) <= after(days));
    }

    /// More load with the same reps, or more reps with the same load, last time: never less this time.
    ///
    /// But where that is what makes a deload due: a session lightened by as much as one begins the count of misses again,
    /// and one a little less lightened is a miss more.
    #[test]
    fn more_done_never_gives_less(
        rule in some_rule(),
        sessions in some_sessions(),
        more_load in 0..40_u16,
        more_reps in 0..4_u16,
        days in 0..100_i64,
    ) {
        let block = block(json!({ "progression": rule }));
        // 2-for-2 asks for two sessions at one load: there a new load begins the count again.
        let counts = matches!(block.progression, Progression::TwoForTwo { .. });
        let mut better = sessions.clone();
        let Some(last) = better.last_mut() else {
            return Ok(());
        };
        // What was done with no load says nothing of strength; with some it does.
        let more_load = if counts || last.0 == 0 { 0 } else { more_load };
        last.0 += more_load;
        for (reps, _) in &mut last.2 {
            *reps += more_reps;
        }
        let now = performed(&[("1 kg", 1)], (1, 1)).at + TimeDelta::days(days);
        let next = |sessions: &Sessions| super::propose(&block, &Today { history: &history(&block, sessions), kit: &kit(), now, curve: Curve::default(), body_mass: None });
        let (less, more) = (next(&sessions), next(&better));
        let counted_anew = more_load > 0 && deloads(&more) && !deloads(&less);
        prop_assert!(counted_anew || more.load >= less.load, "{less:?} then {more:?}");
    }

    /// The unit on display changes how loads are written and not what is proposed.
    #[test]
    fn the_unit_on_display_changes_no_proposal_by_more_than_a_step(
        rule in some_rule(),
        sessions in some_sessions(),
    ) {
        let block = block(json!({ "progression": rule }));
        let history = history(&block, &sessions);
        let mut parts = kit().parts().clone();
        parts.unit = Unit::Lb;
        let (kg, lb) = (kit(), Kit::new(parts).unwrap());
        match (propose(&block, &history, &kg).load, propose(&block, &history, &lb).load) {
            (Some(a), Some(b)) => {
                let apart = (a.kg() - b.kg()).abs();
                let step = Load::parse_in("2.5", Unit::Kg).unwrap();
                prop_assert!(apart <= step.kg(), "{a} and {b}");
            }
            (a, b) => prop_assert_eq!(a, b),
        }
    }
}

#[test]
fn sets_that_were_left_out_earn_no_step_up() {
    let said = |progression: serde_json::Value, sets: &[(&str, u16)], reserve: Option<i64>| {
        let block = block(serde_json::json!({ "progression": progression }));
        let mut last = performed(sets, (5, 7));
        last.shape = block.shape();
        last.left = 2;
        last.sets[0].reserve = reserve.map(Rir::saturating);
        propose(&block, &[last.clone(), last], &kit())
            .because
            .to_string()
    };
    let double = || serde_json::json!({"double": {}});
    let fixed = serde_json::json!({"fixed": {}});
    let twice = serde_json::json!({"two_for_two": {}});
    let reserve = serde_json::json!({"by_reserve": {"aim": 1}});
    let same = "1 of 3 work sets done at 80 kg: same load again";
    assert_eq!(said(double(), &[("80 kg", 7)], None), same);
    assert_eq!(said(fixed, &[("80 kg", 7)], None), same);
    assert_eq!(said(twice, &[("80 kg", 9)], None), same);
    assert_eq!(said(reserve, &[("80 kg", 7)], Some(4)), same);
    // What is judged by the sets that were done stays.
    assert_eq!(
        said(double(), &[("80 kg", 4)], None),
        "4 at 80 kg: below 5–7, a step down to 77.5 kg"
    );
    assert_eq!(
        said(double(), &[("80 kg", 6)], None),
        "6 at 80 kg: inside 5–7, same load again"
    );
}
