//! Checks of what a block is asked about.

use super::*;
use crate::sheet::tests::block;
use crate::sheet::{LoadBasis, Step};

fn said(json: &str) -> Vec<String> {
    let doubts = block(json).doubts(false);
    doubts.iter().map(ToString::to_string).collect()
}

#[test]
fn a_sound_block_raises_no_doubt() {
    let sets = r#"[{"kind":{"ramp_up":{"shares":["50 %","75 %"]}},"count":2,"target":{"reps":4}},
        {"kind":"work","count":3,"target":{"reps":{"from":5,"to":7}},"reserve":[2,2,1]},
        {"kind":{"back_off":{"share":"80 %"}},"count":1,"target":{"reps":10}}]"#;
    assert_eq!(said(sets), [""; 0]);
}

/// "rest 2" is two seconds where two minutes are meant; no rest at all is written on purpose.
#[test]
fn a_rest_of_a_few_seconds_is_asked_about() {
    let of = |rest: u16| {
        said(&format!(
            r#"[{{"kind":"work","count":3,"target":{{"reps":5}},"rest":{rest}}}]"#
        ))
    };
    assert_eq!(of(2), ["A rest of 2 s: 2 minutes would be 2:00."]);
    assert_eq!(of(0), [""; 0]);
    assert_eq!(of(10), [""; 0]);
}

#[test]
fn each_contradiction_is_explained() {
    let cases = [
        (
            r#"[{"kind":{"ramp_up":{"shares":["50 %","110 %"]}},"count":2,"target":{"reps":4}},{"kind":"work","count":1,"target":{"reps":5}}]"#,
            "110 % is heavier than the work sets",
        ),
        (
            r#"[{"kind":{"ramp_up":{"shares":["75 %","50 %"]}},"count":2,"target":{"reps":4}},{"kind":"work","count":1,"target":{"reps":5}}]"#,
            "falls from 75 % to 50 %",
        ),
        (
            r#"[{"kind":"work","count":1,"target":{"reps":5}},{"kind":{"ramp_up":{"shares":["50 %"]}},"count":1,"target":{"reps":4}}]"#,
            "comes after work sets",
        ),
        (
            r#"[{"kind":"work","count":1,"target":{"reps":5},"load":{"share_of_e1rm":"80 %"}}]"#,
            "give a load to start from",
        ),
        (
            r#"[{"kind":"work","count":1,"target":{"reps":5},"load":{"share_of_top":["80 %"]}}]"#,
            "no set comes before",
        ),
        (
            r#"[{"kind":"work","count":1,"target":{"reps":5},"load":{"list":["60 kg","65 kg"]}}]"#,
            "2 are listed for 1 set:",
        ),
        (
            r#"[{"kind":"work","count":3,"target":{"reps":5},"reserve":[4,3,2,1]}]"#,
            "4 are listed for 3 sets:",
        ),
        (
            r#"[{"kind":{"ramp_up":{"shares":["40 %","60 %","80 %"]}},"count":2,"target":{"reps":4}},{"kind":"work","count":1,"target":{"reps":5}}]"#,
            "3 are listed for 2 sets:",
        ),
        (
            r#"[{"kind":"work","count":2,"target":{"reps":5},"reserve":[1,3]}]"#,
            "The last set leaves 3 reps",
        ),
        (
            r#"[{"kind":{"drop":{"drops":2,"keep":"100 %"}},"count":1,"target":{"reps":5}}]"#,
            "takes nothing off",
        ),
        (
            r#"[{"kind":"to_failure","count":1,"target":{"reps":5}},{"kind":"work","count":1,"target":{"reps":5}}]"#,
            "put those to failure last",
        ),
        (
            r#"[{"kind":{"ramp_up":{"shares":["50 %"]}},"count":1,"target":{"reps":5}}]"#,
            "add the work",
        ),
    ];
    for (sets, words) in cases {
        let said = said(sets);
        assert!(
            said.iter().any(|said| said.contains(words)),
            "{words}: {said:?}"
        );
    }
}

#[test]
fn a_rule_by_reserve_has_none_to_go_by_in_sets_to_failure() {
    let of = |sets: &str| {
        let mut block = block(sets);
        block.progression = Progression::ByReserve {
            aim: Rir::saturating(2),
            step: Step::Smallest,
        };
        block.doubts(true)
    };
    let failure = r#"{"kind":"to_failure","count":2,"target":{"reps":8}}"#;
    let work = r#"{"kind":"work","count":3,"target":{"reps":8}}"#;
    let back_off = r#"{"kind":{"back_off":{"share":"80 %"}},"count":1,"target":{"reps":10}}"#;
    let cluster = r#"{"kind":{"cluster":{"portions":2,"pause":15}},"count":1,"target":{"reps":4}}"#;
    assert_eq!(of(&format!("[{failure}]")), [Doubt::NoReserveToGoBy]);
    assert_eq!(of(&format!("[{work},{failure}]")), [Doubt::NoReserveToGoBy]);
    assert_eq!(
        of(&format!("[{failure},{back_off}]")),
        [Doubt::NoReserveToGoBy]
    );
    assert_eq!(of(&format!("[{work},{back_off}]")), []);
    // The rule reads the reserve of clusters as that of plain sets.
    assert_eq!(of(&format!("[{failure},{cluster}]")), []);
    // As many as possible goes to the limit only where no reserve is asked for, not even by the rule.
    let open = |reserve: &str| {
        format!(r#"[{{"kind":"work","count":1,"target":{{"reps":{{"least":5}}}}{reserve}}}]"#)
    };
    assert_eq!(of(&open("")), []);
    assert_eq!(of(&open(r#","reserve":[0]"#)), [Doubt::NoReserveToGoBy]);
}

#[test]
fn a_set_to_failure_leaves_nothing() {
    let of = |reserve: &str| {
        said(&format!(
            r#"[{{"kind":"to_failure","count":2,"target":{{"reps":12}},"reserve":{reserve}}}]"#
        ))
    };
    let told = "A set to failure leaves nothing in reserve, but 2 is asked for: remove the reserve, or make it a plain set.";
    assert_eq!(of("[2]"), [told]);
    assert_eq!(of("[2,0]"), [told]);
    assert_eq!(of("[0]"), [""; 0]);
    assert_eq!(of("[]"), [""; 0]);
}

#[test]
fn a_bar_does_not_assist() {
    let mut block = block(r#"[{"kind":"work","count":1,"target":{"reps":5}}]"#);
    block.basis = LoadBasis::BodyMassMinus;
    assert_eq!(block.doubts(true), [Doubt::BarAssists]);
    block.exercise.equipment = Equipment::Handle;
    assert_eq!(block.doubts(true), [], "plates on a pulley do");
}

#[test]
fn a_share_of_the_maximum_is_fine_with_a_load_to_start_from() {
    let sets = r#"[{"kind":"work","count":1,"target":{"reps":5},"load":{"share_of_e1rm":"80 %"}}]"#;
    let mut block = block(sets);
    assert_eq!(block.doubts(false), [Doubt::NoStrengthKnown]);
    assert_eq!(block.doubts(true), []);
    block.start = Some(Load::whole_kg(60));
    assert_eq!(block.doubts(false), []);
}
