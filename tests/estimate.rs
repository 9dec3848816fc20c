//! From sessions built by hand to the estimate: what feeds it, what does not and why, and rows of older versions.

use crate::common;

use common::built::{block, done, key, plain, record, reps, sets, work};
use stanchion::kit::Kit;
use stanchion::ledger::{SessionRecord, performances_of, unfed_of};
use stanchion::session::{Amount, Done, Event, StageAmount, State, What};
use stanchion::sheet::{
    Block, LoadBasis, LoadPolicy, Progression, RepTarget, SetKind, Sets, SideMode, Stage, Step,
    Target,
};
use stanchion::store::LifterRecord;
use stanchion::strength::{
    Curve, Performance, Strength, Today, Unfed, best_e1rm, body_mass_words, unfed,
};
use stanchion::units::{Load, Metres, Rir, Seconds, Share, Unit};

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
    let why = unfed(&performance, &performance.sets[0]);
    // What a reason keeps out, the estimate does not see.
    let strength = Strength::of(&[performance], Curve::Epley);
    assert_eq!(strength.is_some(), why.is_none());
    why
}

fn five() -> Target {
    Target::Reps(RepTarget::fixed(reps(5)).unwrap())
}

/// What a rule is shown of a set: whether it is plain work, whether it went to the limit, and what was asked for.
#[test]
fn a_rule_is_shown_each_kind_of_set_for_what_it_is() {
    let half = Share::percent(50);
    let range = || Target::Reps(RepTarget::range(reps(2), reps(3)).unwrap());
    let least = || Target::Reps(RepTarget::at_least(reps(2)).unwrap());
    let cluster = || SetKind::Cluster {
        portions: 3,
        pause: Seconds::new(15).unwrap(),
    };
    let shown = |kind, target| {
        let did = done(Some("60 kg"), Amount::Reps(reps(5)));
        let of = performance(sets(kind, 1, target), LoadBasis::External, None, did);
        let set = &of.sets[0];
        (set.work, set.to_limit, set.low.get(), set.top.get())
    };
    assert_eq!(shown(SetKind::Work, range()), (true, false, 2, 3));
    assert_eq!(shown(SetKind::Work, least()), (true, true, 2, 2));
    assert_eq!(shown(SetKind::ToFailure, range()), (true, true, 2, 3));
    // Of a cluster all portions are asked for.
    assert_eq!(shown(cluster(), range()), (true, false, 6, 9));
    let ramp_up = SetKind::RampUp { shares: vec![half] };
    assert!(!shown(ramp_up, range()).0);
    assert!(!shown(SetKind::BackOff { share: half }, range()).0);
    let drop = SetKind::Drop {
        drops: 1,
        keep: half,
    };
    assert!(!shown(drop, range()).0);
}

/// So many and more with some to be left is no set to the limit, whether the set or the rule asks for it.
#[test]
fn a_set_that_is_to_leave_some_does_not_go_to_the_limit() {
    let least = || Target::Reps(RepTarget::at_least(reps(8)).unwrap());
    let two = Rir::new(2).unwrap();
    let shown = |reserve: &[Rir], progression| {
        let mut line = sets(SetKind::Work, 1, least());
        line.reserve = reserve.to_vec();
        let mut block = block(vec![line], LoadBasis::External, SideMode::Both);
        block.progression = progression;
        let did = (key(0, 0), done(Some("60 kg"), Amount::Reps(reps(9))));
        performances_of(&record(1, &block, None, &[did]))[0].1.sets[0].to_limit
    };
    let by_reserve = || Progression::ByReserve {
        aim: two,
        step: Step::Smallest,
    };
    assert!(shown(&[], Progression::AsWritten));
    assert!(!shown(&[two], Progression::AsWritten));
    assert!(!shown(&[], by_reserve()));
    assert!(shown(&[Rir::new(0).unwrap()], by_reserve()));
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
        None
    );
}

#[test]
fn reasons_are_sentences() {
    assert_eq!(
        Unfed::BodyMassUnknown.to_string(),
        "not in the estimate: the body mass of that day is not known; say yours in Kit"
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
    assert!(best_e1rm(&[line(SetKind::Work)], Curve::Epley).is_some());
    assert_eq!(best_e1rm(&[line(cluster)], Curve::Epley), None);
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
    assert_eq!(unfed(&before, set), Some(Unfed::BasisUnknown));
    assert_eq!(best_e1rm(std::slice::from_ref(&before), Curve::Epley), None);
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
    performance.sets[0].unfed = Some(Unfed::Staged);
    performance.sets[0].to_limit = true;
    performance.sets[0].to_spare = true;
    let text = serde_json::to_string(&performance).unwrap();
    assert_eq!(
        serde_json::from_str::<Performance>(&text).unwrap(),
        performance
    );
}

/// A block of ten reps whose rule takes 75 % of the maximum, and what was done of it: 90 kg × 10.
fn by_share() -> (Block, Vec<Performance>) {
    let mut block = block(vec![work(2, 10, 12)], LoadBasis::External, SideMode::Both);
    block.progression = Progression::ShareOfE1rm {
        share: Share::percent(75),
    };
    let history = performances_of(&plain(1, &block, &[("90 kg", 10)]));
    let history = history.into_iter().map(|(_, done)| done).collect();
    (block, history)
}

#[test]
fn the_curve_that_was_chosen_makes_the_proposal() {
    let (block, history) = by_share();
    let kit = Kit::starter(Unit::Kg);
    let with = |curve| {
        let now = history[0].at + chrono::TimeDelta::days(2);
        let today = Today {
            history: &history,
            kit: &kit,
            now,
            curve,
            body_mass: None,
        };
        today.propose(&block).load
    };
    let kg = |text: &str| Some(text.parse::<Load>().unwrap());
    // 90 × 1.25 × 0.75 = 84.375 and 90 × (1 + 10/30) × 0.75 = 90, each nearest below.
    assert_eq!(with(Curve::OConner), kg("82.5 kg"));
    assert_eq!(with(Curve::Epley), kg("90 kg"));
}

/// The events of a session on `block` that began with that curve.
fn begun(block: &Block, curve: Curve) -> Vec<Event> {
    let mut events = common::built::events(2, block, None, &[]);
    events.pop();
    for event in &mut events {
        if let What::Began(began) = &mut event.what {
            began.curve = curve;
        }
    }
    events
}

#[test]
fn a_session_keeps_the_curve_that_it_began_with() {
    let (mut block, history) = by_share();
    block.sets[0].load = LoadPolicy::ShareOfE1rm(Share::percent(75));
    let kit = Kit::starter(Unit::Kg);
    let load = |curve| {
        let text = serde_json::to_string(&begun(&block, curve)).unwrap();
        assert_eq!(text.contains("\"curve\""), !curve.is_default());
        let events: Vec<Event> = serde_json::from_str(&text).unwrap();
        let state = State::fold(&events).unwrap();
        let slot = state.current().unwrap();
        state.board(slot, &kit, &history).load
    };
    assert_eq!(load(Curve::OConner), Some("82.5 kg".parse().unwrap()));
    assert_eq!(load(Curve::Epley), Some("90 kg".parse().unwrap()));
}

#[test]
fn the_settings_hold_a_curve_only_where_another_was_chosen() {
    let text = r#"{"version":"00000000-0000-0000-0000-000000000001","written":"2026-01-05T18:00:00+01:00","unit":"kg","welcomed":true}"#;
    let mut lifter: LifterRecord = serde_json::from_str(text).unwrap();
    assert_eq!(lifter.curve, Curve::Epley);
    assert_eq!(serde_json::to_string(&lifter).unwrap(), text);
    lifter.curve = Curve::NscaHandout;
    let written = serde_json::to_string(&lifter).unwrap();
    assert!(written.contains(r#""curve":"nsca_handout""#), "{written}");
    assert_eq!(
        serde_json::from_str::<LifterRecord>(&written).unwrap(),
        lifter
    );
}

#[test]
fn the_ledger_says_set_by_set_why_one_does_not_count() {
    let drop = SetKind::Drop {
        drops: 2,
        keep: Share::percent(50),
    };
    let block = block(
        vec![work(2, 5, 7), sets(drop, 1, five())],
        LoadBasis::External,
        SideMode::Both,
    );
    let did = |n| done(Some("60 kg"), Amount::Reps(reps(n)));
    let dones = [
        (key(0, 0), did(6)),
        (key(0, 1), did(30)),
        (key(1, 0), did(5)),
    ];
    let mut record = record(1, &block, None, &dones);
    let said = |record: &SessionRecord| unfed_of(record, &record.blocks[0]);
    assert_eq!(said(&record), [None, None, Some(Unfed::Drop)]);
    record.light = true;
    let light = Some(Unfed::LightWeek);
    assert_eq!(said(&record), [light; 3]);
}

#[test]
fn a_board_that_wants_the_estimate_says_that_the_body_mass_is_unknown() {
    let (mut block, _) = by_share();
    block.basis = LoadBasis::BodyMassPlus;
    let lacks = |body_mass| {
        let mut events = common::built::events(2, &block, body_mass, &[]);
        events.pop();
        let state = State::fold(&events).unwrap();
        let board = state.board(state.current().unwrap(), &Kit::starter(Unit::Kg), &[]);
        board.lacks_body_mass
    };
    assert!(lacks(None) && !lacks(Some("80 kg")));
    assert!(body_mass_words().ends_with("Give yours in Kit."));
}

/// Where the reason for the load asks for the body mass itself, nothing else on the board does.
#[test]
fn the_body_mass_is_asked_for_once() {
    let (mut block, _) = by_share();
    block.basis = LoadBasis::BodyMassPlus;
    let history = performances_of(&plain(1, &block, &[("30 kg", 6)]));
    let history: Vec<Performance> = history.into_iter().map(|(_, done)| done).collect();
    let kit = Kit::starter(Unit::Kg);
    let today = Today {
        history: &history,
        kit: &kit,
        now: history[0].at + chrono::TimeDelta::days(2),
        curve: Curve::default(),
        body_mass: None,
    };
    let proposal = today.propose(&block);
    let mut events = common::built::events(2, &block, None, &[]);
    events.pop();
    if let What::Began(began) = &mut events[0].what {
        began.proposals = vec![proposal];
    }
    let state = State::fold(&events).unwrap();
    let board = state.board(state.current().unwrap(), &kit, &history);
    assert!(board.because(Unit::Kg).contains("give yours in Kit"));
    assert!(!board.lacks_body_mass);
}
