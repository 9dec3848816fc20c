//! One block of the sheet that is being written: everything that it prescribes.

use super::hand::{At, Hand};
use super::lines::set_lines;
use super::load::{basis, start};
use super::next::progression;
use super::sheet::{change, nothing_begun};
use crate::say;
use crate::sheet::{Block, BlockId, Digit, Equipment, Role, SheetId, SideMode, Tempo};
use crate::ui::parts::{
    Mode, button, dynamic, el, h1, line, page, quiet, read_lines, read_name, section, text,
    under_each_other, way,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::sheets::doubts::{doubt_list, doubts_said};
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{Seconds, Unit};
use crate::words::{t, t_in};
use leptos::prelude::*;

/// Roles in the order of fatigue.
const ROLES: [Role; 4] = [Role::Power, Role::Strength, Role::Hypertrophy, Role::Pump];
/// Side modes in the order of the choices.
const SIDES: [SideMode; 3] = [SideMode::Both, SideMode::EachInTurn, SideMode::OneHolds];

/// Seconds that a rest is stepped by.
const REST_STEP: i64 = 15;

/// One block of the sheet that is being written.
pub fn draft_block_place(sheet: SheetId, block: BlockId) -> AnyView {
    let app = stanchion();
    let there = app.of(move |model| {
        let draft = model.drafts.get(&sheet);
        draft.is_some_and(|draft| draft.sheet().block(block).is_some())
    });
    dynamic(move || match there.get() {
        true => written(app, sheet, block),
        false => nothing_begun(),
    })
}

fn written(app: Stanchion, sheet: SheetId, id: BlockId) -> AnyView {
    let hand = Hand::on(app, sheet, id);
    let at = At::default();
    let name = hand.text(|block, _| block.exercise.said(), at);
    let other = text(move || {
        let equipment = hand
            .it
            .with(|block| block.as_ref().map(|block| block.exercise.equipment));
        let equipment = equipment.map_or("", Equipment::name);
        say!("Another exercise than this ({equipment})", equipment)
    });
    let back = || way(Place::Draft(sheet).href(), t("Back to the sheet"));
    page(
        "draft-one",
        vec![
            back(),
            h1(name),
            doubts(hand),
            hand.wrong_word(),
            role(hand),
            section(None, t("Sets"), vec![set_lines(hand)]),
            section(None, t("Load"), vec![basis(hand), start(hand)]),
            tempo(hand),
            rest(hand),
            sides(hand),
            section(None, t("Next time"), vec![progression(hand)]),
            said(hand),
            exercise_name(hand),
            button("wide", "draft-exercise-other", other, move || {
                app.go(Place::DraftExercise(sheet, Some(id)));
            }),
            ways(app, sheet, id),
            button(
                "wide strong",
                "draft-back",
                t("Back to the sheet"),
                move || {
                    app.go(Place::Draft(sheet));
                },
            ),
        ],
    )
}

/// What contradicts itself in the block.
fn doubts(hand: Hand) -> AnyView {
    let doubts = Seen::new(move || {
        hand.it.with(|block| {
            let block = block.as_ref()?;
            Some(doubts_said(hand.app, block))
        })
    });
    let inside = dynamic(move || doubt_list("draft-doubts", doubts.get().unwrap_or_default()));
    el("div").set("role", "status").child(inside).view()
}

fn role(hand: Hand) -> AnyView {
    let at = At::default();
    let chosen = hand.pick(
        at,
        "role",
        t("what it is for"),
        &ROLES.map(Role::name),
        |block, _| {
            ROLES
                .iter()
                .position(|role| *role == block.role)
                .map(|n| n as i64)
        },
        |block, _, n| block.set_role(ROLES[n as usize]),
    );
    let source = hand.text(|block, _| block.role.usual_source().to_owned(), at);
    section(
        None,
        t("What it is for"),
        vec![chosen, line("quiet", "role-source", source)],
    )
}

/// The digit one step on: X, which is the fastest, then 0, 1, … 20.
fn stepped(digit: Digit, by: i64) -> Digit {
    match (digit, by) {
        (Digit::Seconds(s), 1) => Digit::Seconds((s + 1).min(20)),
        (Digit::Seconds(0) | Digit::Fast, -1) => Digit::Fast,
        (Digit::Seconds(s), _) => Digit::Seconds(s - 1),
        (Digit::Fast, _) => Digit::Seconds(0),
    }
}

/// The tempo with one of its digits stepped; the same where that would leave no time at all.
pub fn step_tempo(tempo: Tempo, digit: usize, by: i64) -> Tempo {
    let mut next = tempo;
    let digit = match digit {
        0 => &mut next.eccentric,
        1 => &mut next.stretch,
        2 => &mut next.concentric,
        _ => &mut next.squeeze,
    };
    *digit = stepped(*digit, by);
    if next.rep_seconds() == 0 { tempo } else { next }
}

/// The tempo that begins where none was.
pub fn first_tempo(role: Role) -> Tempo {
    let usual = role.usual().tempo.or(Role::Hypertrophy.usual().tempo);
    usual.unwrap_or(Tempo {
        eccentric: Digit::Seconds(3),
        stretch: Digit::Seconds(0),
        concentric: Digit::Seconds(1),
        squeeze: Digit::Seconds(0),
    })
}

/// Names of the digits for their buttons.
pub fn phases() -> Vec<String> {
    let names = [
        t_in("tempo", "lower"),
        t_in("tempo", "pause"),
        t_in("tempo", "lift"),
        t_in("tempo", "pause"),
    ];
    names.map(str::to_owned).into()
}

fn tempo(hand: Hand) -> AnyView {
    let at = At::default();
    let has = hand.pick(
        at,
        "tempo-has",
        t("tempo"),
        &[t("no tempo"), t("by tempo")],
        |block, _| Some(i64::from(block.tempo.is_some())),
        |block, _, n| {
            block.tempo = match (n, block.tempo) {
                (0, _) => None,
                (_, Some(tempo)) => Some(tempo),
                (_, None) => Some(first_tempo(block.role)),
            };
        },
    );
    let digits = hand.only_while(
        at,
        |block, _| block.tempo.is_some(),
        |hand, at| {
            let spin = hand.spin(
                at,
                "tempo",
                phases(),
                |block, at| {
                    block
                        .tempo
                        .map(|tempo| tempo.digits()[at.item].to_string())
                        .unwrap_or_default()
                },
                |block, at, by| {
                    block.tempo = block.tempo.map(|tempo| step_tempo(tempo, at.item, by))
                },
            );
            vec![
                spin,
                quiet(t(
                    "Seconds each way; X is as fast as you can, with control.",
                )),
            ]
            .into_any()
        },
    );
    section(None, t("Tempo"), vec![has, digits])
}

/// A rest stepped up or down, to whole steps.
pub fn step_rest(rest: Seconds, by: i64) -> Seconds {
    let steps = i64::from(rest.get()) / REST_STEP;
    Seconds::saturating((steps + by) * REST_STEP)
}

fn rest(hand: Hand) -> AnyView {
    let at = At::default();
    section(
        None,
        t("Rest"),
        vec![
            hand.step(
                at,
                "rest-between",
                t("between sets"),
                |block, _| block.rest.clock(),
                |block, _, by| block.rest = step_rest(block.rest, by),
            ),
            hand.step(
                at,
                "rest-after",
                t("after the last set"),
                |block, _| block.rest_after.clock(),
                |block, _, by| block.rest_after = step_rest(block.rest_after, by),
            ),
        ],
    )
}

fn sides(hand: Hand) -> AnyView {
    let chosen = hand.pick(
        At::default(),
        "sides",
        t("sides"),
        &[
            t("both together"),
            t("each in turn"),
            t("one holds, one works"),
        ],
        |block, _| {
            SIDES
                .iter()
                .position(|sides| *sides == block.sides)
                .map(|n| n as i64)
        },
        |block, _, n| block.sides = SIDES[n as usize],
    );
    section(None, t("Sides"), vec![chosen])
}

/// Cues and cautions.
fn said(hand: Hand) -> AnyView {
    section(
        None,
        t("Said on the floor"),
        vec![
            hand.many_lines(
                "draft-cues",
                t("form cues, one line each"),
                |block, _| under_each_other(&block.cues),
                |block, _, typed, _| {
                    block.cues = read_lines(typed, &block.cues)?;
                    Ok(())
                },
            ),
            hand.many_lines(
                "draft-cautions",
                t("cautions, one line each"),
                |block, _| under_each_other(&block.cautions),
                |block, _, typed, _| {
                    block.cautions = read_lines(typed, &block.cautions)?;
                    Ok(())
                },
            ),
        ],
    )
}

/// What the exercise is called here. Its history goes by its id, so a name can change.
fn exercise_name(hand: Hand) -> AnyView {
    fn take(block: &mut Block, _: At, typed: &str, _: Unit) -> Result<(), String> {
        let name = read_name(typed)?;
        // What is only said in another language stays as it is kept.
        if block.exercise.said() != name.as_str() {
            block.exercise.name = name;
        }
        Ok(())
    }
    let named = hand.typed(
        At::default(),
        "draft-called",
        Mode::Text,
        t("called on this sheet (its history stays with it)"),
        |block, _| block.exercise.said(),
        take,
    );
    let id = hand.text(|block, _| block.exercise.id.to_string(), At::default());
    let known = text(move || {
        let id = id.get();
        hand.app
            .model
            .with_untracked(|model| match model.exercises.of(&id) {
                Some(known) => say!("In your exercises: {name}.", name = known.name()),
                None => t("Not in your exercises: write it there to say its muscles.").to_owned(),
            })
    });
    section(None, t("Exercise"), vec![named, quiet(known)])
}

/// The block doubled or taken off.
fn ways(app: Stanchion, sheet: SheetId, id: BlockId) -> AnyView {
    let double = button("", "draft-double", t("Double it"), move || {
        let copy = BlockId(app.id());
        change(app, sheet, &mut |draft| draft.duplicate(id, copy));
        app.go(Place::Draft(sheet));
    });
    let off = button("", "draft-remove", t("Remove it"), move || {
        change(app, sheet, &mut |draft| draft.remove(id));
        app.go(Place::Draft(sheet));
    });
    el("div").class("more").child(double).child(off).view()
}
