//! The board's caution: a load more than 10 % above the best done lately wants a second tap, whoever chose it.

use crate::common;

use common::built::{block, done, key, reps, sheet, work};
use common::events::event;
use common::{id, time};
use proptest::prelude::*;
use stanchion::kit::Kit;
use stanchion::session::{Amount, Began, Board, Done, SessionId, State, What};
use stanchion::sheet::{
    Block, LoadBasis, LoadPolicy, Progression, RepTarget, SideMode, Step, Target,
};
use stanchion::strength::{Curve, Performance, SetResult, Today, propose};
use stanchion::units::{Load, Reps, Rir, Unit};

fn load(text: &str) -> Load {
    text.parse().unwrap()
}

fn squat() -> Block {
    block(vec![work(4, 5, 7)], LoadBasis::External, SideMode::Both)
}

fn performance(block: &Block, sets: &[(&str, i64)]) -> Performance {
    Performance {
        session: id(0, 9),
        at: time(0),
        shape: block.shape(),
        basis: None,
        body_mass: None,
        left: 0,
        sets: sets
            .iter()
            .map(|(at, n)| SetResult {
                stretch: None,
                stages: Vec::new(),
                load: Some(load(at)),
                reps: reps(*n),
                low: reps(5),
                top: reps(7),
                reserve: None,
                work: true,
                to_limit: false,
                to_spare: false,
                unfed: None,
            })
            .collect(),
    }
}

/// The board of the next set of a session on `block` a day after its history, after these sets, with a chosen load.
fn board(
    block: &Block,
    history: &[Performance],
    body_mass: Option<&str>,
    dones: &[Done],
    chosen: Option<&str>,
) -> Board {
    const DAY_MS: u64 = 86_400_000;
    let kit = Kit::starter(Unit::Kg);
    let began = What::Began(Box::new(Began {
        curve: Curve::default(),
        session: SessionId(id(1, 1)),
        sheet: sheet(block.clone()),
        body_mass: body_mass.map(load),
        proposals: vec![propose(
            block,
            &Today {
                history,
                kit: &kit,
                now: time(DAY_MS),
                curve: Curve::default(),
                body_mass: body_mass.map(load),
            },
        )],
        light: false,
        along: None,
    }));
    let sets = (0..).map(|set| key(0, set));
    let logs = sets.clone().zip(dones).map(|(set, done)| What::SetDone {
        set,
        done: done.clone(),
        proposed: None,
    });
    let chosen = chosen.map(|chosen| What::LoadChosen {
        set: key(0, dones.len() as u8),
        load: load(chosen),
        proposed: None,
    });
    let events: Vec<_> = std::iter::once(began)
        .chain(logs)
        .chain(chosen)
        .enumerate()
        .map(|(n, what)| event(1, DAY_MS + n as u64 * 60_000, 1, what))
        .collect();
    let state = State::fold(&events).unwrap();
    state.board(state.current().unwrap(), &kit, history)
}

fn six(at: &str) -> Done {
    done(Some(at), Amount::Reps(reps(6)))
}

fn left(done: &Done, n: i64) -> Done {
    done.with_reserve(Some(Rir::new(n).unwrap()))
}

#[test]
fn a_chosen_load_more_than_a_tenth_above_the_best_is_a_jump() {
    let squat = squat();
    let history = [performance(
        &squat,
        &[("75 kg", 6), ("80 kg", 6), ("120 kg", 0)],
    )];
    let jump = |chosen| {
        board(&squat, &history, None, &[], Some(chosen))
            .jump
            .is_some()
    };
    assert!(!jump("88 kg"));
    assert!(jump("88.1 kg"));
    // The set that was tried and missed is no best.
    assert!(jump("110 kg"));
}

#[test]
fn a_plain_proposal_asks_for_nothing() {
    let squat = squat();
    let history = [performance(&squat, &[("80 kg", 7)])];
    let board = board(&squat, &history, None, &[], None);
    assert_eq!(board.load, Some(load("82.5 kg")));
    assert!(board.jump.is_none() && !board.asks_reserve);
}

#[test]
fn the_smallest_step_of_the_kit_has_its_caution_and_is_not_asked_about() {
    let squat = squat();
    let history = [performance(&squat, &[("20 kg", 12)])];
    let proposed = board(&squat, &history, None, &[], None);
    assert_eq!(proposed.load, Some(load("22.5 kg")));
    assert!(proposed.jump.is_some() && !proposed.asks_twice());
    // One that was typed is, and so is one that the sheet goes on to.
    let typed = board(&squat, &history, None, &[], Some("25 kg"));
    assert!(typed.jump.is_some() && typed.asks_twice());
    let mut rising = squat;
    rising.sets[0].load = LoadPolicy::Rising(Step::By(load("10 kg")));
    let history = [performance(&rising, &[("80 kg", 6)])];
    let next = board(&rising, &history, None, &[six("80 kg")], None);
    assert!(next.asks_twice());
}

#[test]
fn what_was_done_today_counts_as_lately() {
    let squat = squat();
    let history = [performance(&squat, &[("80 kg", 6)])];
    assert!(
        board(&squat, &history, None, &[six("90 kg")], Some("97.5 kg"))
            .jump
            .is_none()
    );
    let missed = done(Some("90 kg"), Amount::Reps(reps(0)));
    assert!(
        board(&squat, &history, None, &[missed], Some("97.5 kg"))
            .jump
            .is_some()
    );
}

#[test]
fn a_large_planned_step_within_the_session_is_a_jump() {
    let mut rising = squat();
    rising.sets[0].load = LoadPolicy::Rising(Step::By(load("10 kg")));
    let history = [performance(&rising, &[("80 kg", 6)])];
    let next = board(&rising, &history, None, &[six("80 kg")], None);
    assert_eq!(
        (next.load, next.jump.is_some()),
        (Some(load("90 kg")), true)
    );
    let history = [performance(&rising, &[("80 kg", 6), ("90 kg", 6)])];
    assert!(
        board(&rising, &history, None, &[six("80 kg")], None)
            .jump
            .is_none()
    );
}

#[test]
fn where_nothing_was_done_the_proposal_is_the_measure() {
    let mut squat = squat();
    squat.start = Some(load("60 kg"));
    assert!(board(&squat, &[], None, &[], None).jump.is_none());
    assert!(board(&squat, &[], None, &[], Some("65 kg")).jump.is_none());
    let first = board(&squat, &[], None, &[], Some("67.5 kg"));
    let words = first.jump.unwrap();
    let told = "More than 10 % above the load proposed, and no rep was done like this lately.";
    assert!(words.starts_with(told), "{words}");
    // Sets that were missed are no reps, though something was done here.
    let missed = [performance(&squat, &[("60 kg", 0)])];
    let again = board(&squat, &missed, None, &[], Some("67.5 kg"));
    assert!(again.jump.unwrap().starts_with(told));
    let history = [performance(&squat, &[("60 kg", 6)])];
    let later = board(&squat, &history, None, &[], Some("67.5 kg"));
    let words = later.jump.unwrap();
    assert!(words.starts_with("More than 10 % above what you have done here lately"));
}

#[test]
fn a_guided_start_asks_for_the_reserve_until_the_load_is_found() {
    let squat = squat();
    let first = board(&squat, &[], None, &[], None);
    assert!(first.asks_reserve && first.jump.is_none());
    // Who knows better is not asked twice: there is nothing to measure by.
    assert!(board(&squat, &[], None, &[], Some("60 kg")).jump.is_none());
    assert_eq!(
        first.because(Unit::Kg),
        "first time: begin light with 20 kg, say how much you had left, and the next load follows"
    );
    let second = board(&squat, &[], None, &[left(&six("60 kg"), 6)], None);
    assert_eq!(
        (second.load, second.jump.is_some()),
        (Some(load("70 kg")), true)
    );
    let third = board(&squat, &[], None, &[left(&six("60 kg"), 2)], None);
    assert_eq!(
        (third.load, third.asks_reserve),
        (Some(load("60 kg")), false)
    );
    assert_eq!(third.because(Unit::Kg), "as in the set before: 60 kg");
}

/// A rule that goes by reserve wants to know it of sets of so many and more too.
#[test]
fn a_rule_that_goes_by_reserve_asks_for_it_of_open_sets() {
    let mut row = squat();
    row.sets[0].target = Target::Reps(RepTarget::at_least(reps(8)).unwrap());
    assert!(!board(&row, &[], None, &[], None).asks_reserve);
    row.progression = Progression::ByReserve {
        aim: Rir::new(2).unwrap(),
        step: Step::Smallest,
    };
    assert!(board(&row, &[], None, &[], None).asks_reserve);
    let next = board(
        &row,
        &[],
        None,
        &[done(Some("40 kg"), Amount::Reps(reps(12)))],
        None,
    );
    assert_eq!((next.load, next.asks_reserve), (Some(load("40 kg")), true));
}

#[test]
fn a_load_that_the_kit_does_not_make_is_said_on_the_board() {
    let mut squat = squat();
    squat.start = Some(load("15 kg"));
    let board = board(&squat, &[], None, &[], None);
    assert_eq!(board.load, None);
    assert_eq!(
        board.because(Unit::Kg),
        "the kit makes nothing as light as 15 kg, its lightest is 20 kg: take that only if it is light for you"
    );
}

#[test]
fn after_a_guided_start_the_rule_goes_on_from_the_load_that_was_found() {
    let squat = squat();
    let first_time = performance(&squat, &[("20 kg", 7), ("30 kg", 7), ("40 kg", 7)]);
    let board = board(&squat, &[first_time], None, &[], None);
    assert_eq!(
        board.because(Unit::Kg),
        "7 at 40 kg: top of 5–7 reached, next step on this bar is 42.5 kg"
    );
}

#[test]
fn of_a_load_added_to_the_body_the_whole_counts_where_it_is_known() {
    let dip = block(vec![work(3, 5, 7)], LoadBasis::BodyMassPlus, SideMode::Both);
    let history = [performance(&dip, &[("10 kg", 6)])];
    let jump = |body_mass, chosen| {
        board(&dip, &history, body_mass, &[], Some(chosen))
            .jump
            .is_some()
    };
    // 90 → 97.5 kg and 90 → 100 kg.
    assert!(!jump(Some("80 kg"), "17.5 kg"));
    assert!(jump(Some("80 kg"), "20 kg"));
    // Unknown: the added load alone.
    assert!(jump(None, "12.5 kg"));
    let assisted = block(
        vec![work(3, 5, 7)],
        LoadBasis::BodyMassMinus,
        SideMode::Both,
    );
    let history = [performance(&assisted, &[("30 kg", 6)])];
    let jump = |body_mass, chosen| {
        board(&assisted, &history, body_mass, &[], Some(chosen))
            .jump
            .is_some()
    };
    // 50 → 55 kg and 50 → 60 kg.
    assert!(!jump(Some("80 kg"), "25 kg"));
    assert!(jump(Some("80 kg"), "20 kg"));
    assert!(!jump(None, "0 kg"));
    // More than the body leaves nothing to move.
    let asked = |body_mass, dones: &[Done], chosen| {
        let board = board(&assisted, &history, body_mass, dones, Some(chosen));
        let asked = |said: &String| said.contains("leaves nothing to move");
        board.cautions.iter().any(asked)
    };
    assert!(asked(Some("80 kg"), &[], "200 kg"));
    assert!(!asked(Some("80 kg"), &[], "40 kg"));
    assert!(!asked(None, &[], "200 kg"));
    // A set as it should be makes the slip no righter; one of which it was asked is an answer.
    assert!(asked(Some("80 kg"), &[six("20 kg")], "200 kg"));
    assert!(!asked(Some("80 kg"), &[six("200 kg")], "200 kg"));
}

/// One set as it may stand in a merged or meddled history.
fn any_result() -> impl Strategy<Value = SetResult> {
    let reps = common::quantities::reps;
    let load = proptest::option::of(common::quantities::load());
    let reserve = proptest::option::of(common::quantities::rir());
    let flags = (any::<bool>(), any::<bool>(), any::<bool>());
    (load, reps(), reps(), reps(), reserve, flags).prop_map(
        |(load, reps, low, top, reserve, (work, to_limit, to_spare))| SetResult {
            stretch: None,
            stages: Vec::new(),
            load,
            reps,
            low,
            top,
            reserve,
            work,
            to_limit,
            to_spare,
            unfed: None,
        },
    )
}

proptest! {
    /// Any block, any kit, any history at any time: a load of the kit or a sentence, and never a panic.
    #[test]
    fn any_history_on_any_kit_gives_a_load_of_it_or_a_sentence(
        sheet in common::sheets::sheet(),
        kit in common::kits::kit(),
        sessions in proptest::collection::vec(proptest::collection::vec(any_result(), 0..4), 0..5),
        hours in -10_000..10_000_i64,
        masses in [proptest::option::of(common::quantities::load()), proptest::option::of(common::quantities::load())],
    ) {
        for block in sheet.blocks() {
            let history: Vec<Performance> = sessions
                .iter()
                .map(|sets| Performance { sets: sets.clone(), body_mass: masses[0], ..performance(block, &[]) })
                .collect();
            let now = time(0) + chrono::TimeDelta::hours(hours);
            let proposal = propose(block, &Today { history: &history, kit: &kit, now, curve: Curve::default(), body_mass: masses[1] });
            prop_assert!(!proposal.because.said(kit.unit(), &LoadBasis::External).is_empty());
            if let Some(load) = proposal.load {
                prop_assert!(kit.choices(block.exercise.equipment).contains(load), "{}", proposal.because);
            }
        }
    }

    /// Whatever the history and the rule: a proposal above the best done lately by more than a tenth is never unasked.
    #[test]
    fn no_proposal_jumps_unasked(
        sets in proptest::collection::vec((80..640_u16, 1..12_u16), 1..5),
        share in 60..=120_u8,
        by_share in any::<bool>(),
    ) {
        let mut squat = squat();
        if by_share {
            squat.progression = Progression::ShareOfE1rm { share: stanchion::units::Share::percent(share) };
        }
        let mut history = performance(&squat, &[]);
        history.sets = sets
            .iter()
            .map(|(quarters, n)| SetResult { stretch: None, stages: Vec::new(),
                load: Some(load(&format!("{}.{} kg", quarters / 4, quarters % 4 * 25))),
                reps: Reps::new(i64::from(*n)).unwrap(),
                low: reps(5),
                top: reps(7),
                reserve: None,
                work: true,
                to_limit: false,
                to_spare: false,
                unfed: None,
            })
            .collect();
        let best = history.sets.iter().filter_map(|set| set.load).max().unwrap();
        let board = board(&squat, &[history], None, &[], None);
        if let Some(load) = board.load {
            let tenth = best.kg() * rust_decimal::Decimal::new(11, 1);
            prop_assert_eq!(board.jump.is_some(), load.kg() > tenth);
        }
    }
}
