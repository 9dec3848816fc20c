//! Reads loads, shares and steps, and lists of them.

use super::cursor::{Cursor, Read};
use crate::sheet::{LINE_SETS_MAX, Step};
use crate::units::{Load, Share, Unit};
use crate::words::t;

fn a_load() -> &'static str {
    t("a load up to 2000 kg like 82.5 kg or 45 lb")
}

fn a_share() -> &'static str {
    t("a share from 1 % to 200 % like 80 %")
}

pub(super) fn load(c: &mut Cursor) -> Read<Load> {
    c.peek();
    let start = c.at;
    let amount = c.decimal().ok_or_else(|| c.fault(a_load()))?;
    let unit = unit(c).ok_or_else(|| c.fault(t("kg or lb after the number")))?;
    Load::new(amount, unit).map_err(|_| c.fault_at(start, a_load()))
}

fn unit(c: &mut Cursor) -> Option<Unit> {
    if c.word("kg") {
        Some(Unit::Kg)
    } else if c.word("lb") || c.word("lbs") {
        Some(Unit::Lb)
    } else {
        None
    }
}

pub(super) fn share(c: &mut Cursor) -> Read<Share> {
    c.peek();
    let start = c.at;
    let percent = c.decimal().ok_or_else(|| c.fault(a_share()))?;
    if !c.eat(&['%']) {
        return Err(c.fault(t("% after the number")));
    }
    Share::new(percent).map_err(|_| c.fault_at(start, a_share()))
}

/// Loads in order. A number without a unit takes that of the next one that has it: `60, 62.5, 65 kg`.
pub(super) fn loads(c: &mut Cursor) -> Read<Vec<Load>> {
    let mut list = Vec::new();
    let mut bare = Vec::new();
    loop {
        bounded(c, list.len() + bare.len())?;
        c.peek();
        let start = c.at;
        let amount = c.decimal().ok_or_else(|| c.fault(a_load()))?;
        bare.push((start, amount));
        if let Some(unit) = unit(c) {
            for (start, amount) in bare.drain(..) {
                list.push(Load::new(amount, unit).map_err(|_| c.fault_at(start, a_load()))?);
            }
        }
        if !c.list_goes_on() {
            break;
        }
    }
    if bare.is_empty() {
        Ok(list)
    } else {
        Err(c.fault(t("kg or lb after the number")))
    }
}

/// Shares in order. The sign may stand behind the last one alone: `40, 60, 80 %`.
pub(super) fn shares(c: &mut Cursor) -> Read<Vec<Share>> {
    let mut list = Vec::new();
    loop {
        bounded(c, list.len())?;
        c.peek();
        let start = c.at;
        let percent = c.decimal().ok_or_else(|| c.fault(a_share()))?;
        list.push(Share::new(percent).map_err(|_| c.fault_at(start, a_share()))?);
        let has_sign = c.eat(&['%']);
        if c.list_goes_on() {
            continue;
        }
        return if has_sign {
            Ok(list)
        } else {
            Err(c.fault(t("% after the number")))
        };
    }
}

/// A list has at most as many members as a line has sets.
pub(super) fn bounded(c: &mut Cursor, members: usize) -> Read<()> {
    if members == usize::from(LINE_SETS_MAX) {
        return Err(c.fault(t("at most 20 in a list")));
    }
    Ok(())
}

/// A step: `smallest` or a load.
pub(super) fn step(c: &mut Cursor) -> Read<Step> {
    if c.word("smallest") {
        Ok(Step::Smallest)
    } else {
        load(c).map(Step::By)
    }
}

/// The step behind a word, or the smallest where the word is not written.
pub(super) fn step_after(c: &mut Cursor, word: &str) -> Read<Step> {
    if c.word(word) {
        step(c)
    } else {
        Ok(Step::Smallest)
    }
}
