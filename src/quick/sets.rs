//! Reads one line of sets: kind, how many, what each asks for, and their settings.

use super::cursor::{Cursor, Once, Read, Setting};
use super::load::{bounded, loads, share, shares, step, step_after};
use super::settings::KindSettings;
use super::target::{seconds, target, tempo};
use crate::sheet::{LoadPolicy, SetKind, Sets, Target};
use crate::units::Rir;
use crate::words::t;

/// The kind as the line names it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Named {
    RampUp,
    Work,
    BackOff,
    Drop,
    Cluster,
    ToFailure,
}

/// The kind, when the part begins with one.
fn named(c: &mut Cursor) -> Option<Named> {
    let names = [
        ("ramp up", Named::RampUp),
        ("ramp", Named::RampUp),
        ("work", Named::Work),
        ("back off", Named::BackOff),
        ("drop", Named::Drop),
        ("cluster", Named::Cluster),
        ("to failure", Named::ToFailure),
    ];
    let found = names.iter().find(|(word, _)| c.word(word))?;
    Some(found.1)
}

/// True when sets come next.
pub(super) fn at_sets(c: &mut Cursor) -> bool {
    let start = c.at;
    let found = named(c).is_some() || c.at_sets();
    c.at = start;
    found
}

pub(super) fn sets(c: &mut Cursor) -> Read<Sets> {
    let mut kind = KindSettings::new(named(c).unwrap_or(Named::Work));
    let count = c.whole(1, 20, t("a number of sets from 1 to 20"))?;
    if !c.cross() {
        return Err(c.fault(t("× after the number of sets")));
    }
    c.peek();
    let target_at = c.at;
    let mut sets = Sets {
        kind: SetKind::Work,
        count: count as u8,
        target: target(c)?,
        reserve: Vec::new(),
        load: LoadPolicy::Same,
        tempo: None,
        rest: None,
    };
    let mut once = Once::default();
    while !c.part_ends() {
        c.eat(&[',']);
        c.peek();
        let at = c.at;
        if kind.read(c)? {
            once.mark(Setting::Kind, c, at)?;
            continue;
        }
        let setting = setting(c, &mut sets)?;
        once.mark(setting, c, at)?;
    }
    sets.kind = kind.finish(c)?;
    let counted = matches!(sets.target, Target::Reps(_));
    if matches!(sets.kind, SetKind::Cluster { .. } | SetKind::Drop { .. }) && !counted {
        return Err(c.fault_at(target_at, t("reps: a drop set or a cluster is counted")));
    }
    Ok(sets)
}

fn setting(c: &mut Cursor, sets: &mut Sets) -> Read<Setting> {
    if c.eat(&['@']) || c.word("rir") {
        sets.reserve = reserve(c)?;
        Ok(Setting::Reserve)
    } else if c.word("tempo") {
        sets.tempo = Some(tempo(c)?);
        Ok(Setting::Tempo)
    } else if c.word("rest") {
        sets.rest = Some(seconds(c)?);
        Ok(Setting::Rest)
    } else {
        sets.load = policy(c)?;
        Ok(Setting::Policy)
    }
}

fn reserve(c: &mut Cursor) -> Read<Vec<Rir>> {
    let mut list = Vec::new();
    loop {
        bounded(c, list.len())?;
        let n = c.whole(0, 10, t("reps in reserve from 0 to 10"))?;
        list.push(Rir::saturating(n));
        if !c.list_goes_on() {
            return Ok(list);
        }
    }
}

fn policy(c: &mut Cursor) -> Read<LoadPolicy> {
    if c.word("same") {
        Ok(LoadPolicy::Same)
    } else if c.word("rising by outcome") {
        let planned = step_after(c, "step")?;
        let large = step_after(c, "large")?;
        Ok(LoadPolicy::RisingByOutcome { planned, large })
    } else if c.word("rising by") {
        Ok(LoadPolicy::Rising(step(c)?))
    } else if c.word("rising") {
        Ok(LoadPolicy::Rising(crate::sheet::Step::Smallest))
    } else if c.word("falling by") {
        Ok(LoadPolicy::Falling(step(c)?))
    } else if c.word("falling") {
        Ok(LoadPolicy::Falling(crate::sheet::Step::Smallest))
    } else if c.word("loads") {
        Ok(LoadPolicy::List(loads(c)?))
    } else if c.at_digit() && is_share(c) {
        shared(c)
    } else {
        Err(c.fault(t("a setting of these sets like @ 2, rising, tempo 3/1/1/0 or rest 60, or ; before the next part")))
    }
}

/// True when what is left of the part names a share. A number without one is more likely the next part, its semicolon
/// forgotten: `3 × 5 60 kg`.
fn is_share(c: &mut Cursor) -> bool {
    let start = c.at;
    let part = c.until(&[';']);
    c.at = start;
    part.contains('%')
}

/// `80 %, 70 % of top` or `80 % e1RM`.
fn shared(c: &mut Cursor) -> Read<LoadPolicy> {
    let start = c.at;
    let list = shares(c)?;
    if c.word("of top") {
        return Ok(LoadPolicy::ShareOfTop(list));
    }
    c.at = start;
    let one = share(c)?;
    if c.word("of e1rm") || c.word("e1rm") {
        Ok(LoadPolicy::ShareOfE1rm(one))
    } else {
        c.at = start;
        shares(c)?;
        Err(c.fault(t("of top or, after one share, e1RM")))
    }
}
