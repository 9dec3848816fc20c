//! Reads the parts of a line between semicolons: sets, or what holds for the whole block.

use super::cursor::{Cursor, Once, Read, Setting};
use super::defaults::Said;
use super::load::{load, share, step_after};
use super::sets::{at_sets, sets};
use super::target::{seconds, tempo};
use crate::sheet::{
    LINES_MAX, Line, LoadBasis, Progression, Reach, Role, SET_LINES_MAX, Sets, SideMode, Tempo,
};
use crate::units::{Load, Rir, Seconds};
use crate::words::t;

/// What was read so far.
#[derive(Default)]
pub(super) struct Options {
    pub sets: Vec<Sets>,
    /// What is said of that which the load is added to.
    pub basis: Said,
    /// The load to start from.
    pub start: Option<Load>,
    pub tempo: Option<Tempo>,
    pub sides: SideMode,
    /// Rest within the block.
    pub rest: Option<Seconds>,
    /// Rest after the block.
    pub rest_after: Option<Seconds>,
    pub role: Option<Role>,
    pub progression: Progression,
    pub cues: Vec<Line>,
    pub cautions: Vec<Line>,
    /// Rest from block to block within a round.
    pub between: Option<Seconds>,
    /// Whether two lines make a circuit in place of a pair.
    pub circuit: bool,
    /// The place of a load with a minus that was not called assistance.
    pub bare_minus: Option<usize>,
    once: Once,
}

/// Reads one part. An empty one is fine: a line may end in a semicolon.
pub(super) fn part(c: &mut Cursor, to: &mut Options) -> Read<()> {
    if c.part_ends() {
        return Ok(());
    }
    let at = c.at;
    if c.at_quote() {
        while c.at_quote() {
            full(c, to.cues.len(), LINES_MAX, t("at most 20 cues"))?;
            to.cues.push(c.quoted()?);
        }
    } else if c.eat(&['!']) {
        full(c, to.cautions.len(), LINES_MAX, t("at most 20 cautions"))?;
        to.cautions.push(c.text()?);
    } else if !has_rule(c, to)? && at_sets(c) {
        full(
            c,
            to.sets.len(),
            SET_LINES_MAX,
            t("at most 12 lines of sets"),
        )?;
        to.sets.push(sets(c)?);
    } else if c.at == at && !has_load(c, to)? && !has_rest(c, to)? {
        return Err(c.fault(
            t("sets like 3 × 5–7, or a setting like 60 kg, rest 2:30, tempo 3/1/1/0, each side or strength"),
        ));
    }
    if c.part_ends() {
        Ok(())
    } else {
        Err(c.fault(t("; before the next part")))
    }
}

fn full(c: &mut Cursor, given: usize, most: usize, expected: &'static str) -> Read<()> {
    if given == most {
        return Err(c.fault(expected));
    }
    Ok(())
}

/// The rule that the load follows from one session to the next.
fn has_rule(c: &mut Cursor, to: &mut Options) -> Read<bool> {
    let at = c.at;
    to.progression = if c.word("double") {
        let reach = if c.word("last set") {
            Reach::LastSet
        } else {
            Reach::AllSets
        };
        let up = step_after(c, "up")?;
        let down = step_after(c, "down")?;
        Progression::Double { reach, up, down }
    } else if c.word("2 for 2") {
        let up = step_after(c, "up")?;
        Progression::TwoForTwo { up }
    } else if c.word("fixed") {
        let up = step_after(c, "up")?;
        Progression::Fixed { up }
    } else if c.word("by reserve") {
        let aim = c.whole(0, 10, t("reps in reserve from 0 to 10"))?;
        let step = step_after(c, "step")?;
        let aim = Rir::saturating(aim);
        Progression::ByReserve { aim, step }
    } else if c.word("follow") {
        let share = share(c)?;
        if !c.word("e1rm") && !c.word("of e1rm") {
            return Err(c.fault("e1RM"));
        }
        Progression::ShareOfE1rm { share }
    } else if c.word("as written") {
        Progression::AsWritten
    } else {
        return Ok(false);
    };
    to.once.mark(Setting::Rule, c, at)?;
    Ok(true)
}

/// What the load is added to, and the load to start from.
fn has_load(c: &mut Cursor, to: &mut Options) -> Read<bool> {
    let at = c.at;
    let basis = if c.word("start") {
        start(c, to)?;
        return Ok(true);
    } else if c.word("external") {
        Said::Basis(LoadBasis::External)
    } else if c.word("body mass") {
        Said::Basis(LoadBasis::BodyMassPlus)
    } else if c.word("assistance") {
        Said::Basis(LoadBasis::BodyMassMinus)
    } else if c.word("band") {
        Said::Basis(LoadBasis::Band(c.text()?))
    } else if c.word("no load") {
        Said::Basis(LoadBasis::Unloaded)
    } else if c.eat(&['+']) {
        start(c, to)?;
        Said::Added
    } else if c.eat(&['−', '-', '–']) {
        start(c, to)?;
        if !c.word("assistance") {
            to.bare_minus = Some(at);
        }
        Said::Basis(LoadBasis::BodyMassMinus)
    } else if c.at_digit() {
        c.decimal();
        let is_share = c.eat(&['%']);
        c.at = at;
        if is_share {
            Said::Basis(share_of_body(c, to)?)
        } else {
            start(c, to)?;
            Said::Load
        }
    } else {
        return Ok(false);
    };
    to.once.mark(Setting::Basis, c, at)?;
    to.basis = basis;
    Ok(true)
}

fn start(c: &mut Cursor, to: &mut Options) -> Read<()> {
    let at = c.at;
    to.start = Some(load(c)?);
    to.once.mark(Setting::Start, c, at)
}

fn share_of_body(c: &mut Cursor, to: &mut Options) -> Read<LoadBasis> {
    let share = share(c)?;
    if !c.word("body mass") && !c.word("body") {
        return Err(c.fault(t("body after a share of the body mass like 64 % body")));
    }
    if c.eat(&['+']) {
        start(c, to)?;
    }
    Ok(LoadBasis::BodyMassShare(share))
}

/// Rest, tempo, sides, role, and what holds for a pair or circuit.
fn has_rest(c: &mut Cursor, to: &mut Options) -> Read<bool> {
    let at = c.at;
    let setting = if c.word("rest") {
        to.rest = Some(seconds(c)?);
        if c.word("then") {
            to.rest_after = Some(seconds(c)?);
        }
        Setting::Rest
    } else if c.word("tempo") {
        to.tempo = Some(tempo(c)?);
        Setting::Tempo
    } else if c.word("between") {
        to.between = Some(seconds(c)?);
        Setting::Between
    } else if c.word("circuit") {
        to.circuit = true;
        Setting::Circuit
    } else if let Some(sides) = sides(c) {
        to.sides = sides;
        Setting::Sides
    } else if let Some(role) = role(c) {
        to.role = Some(role);
        Setting::Role
    } else {
        return Ok(false);
    };
    to.once.mark(setting, c, at)?;
    Ok(true)
}

fn sides(c: &mut Cursor) -> Option<SideMode> {
    let words = [
        ("both sides", SideMode::Both),
        ("each side", SideMode::EachInTurn),
        ("one side holds", SideMode::OneHolds),
    ];
    let found = words.iter().find(|(word, _)| c.word(word))?;
    Some(found.1)
}

fn role(c: &mut Cursor) -> Option<Role> {
    let words = [
        ("power", Role::Power),
        ("strength", Role::Strength),
        ("muscle building", Role::Hypertrophy),
        ("hypertrophy", Role::Hypertrophy),
        ("pump", Role::Pump),
        ("endurance", Role::Pump),
    ];
    let found = words.iter().find(|(word, _)| c.word(word))?;
    Some(found.1)
}
