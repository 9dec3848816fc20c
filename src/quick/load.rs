//! Reads loads, shares and steps, and lists of them.

use super::cursor::{Cursor, Read};
use crate::sheet::{LINE_SETS_MAX, Step};
use crate::units::{Load, Share, Unit};

const LOAD: &str = "a load up to 2000 kg like 82.5 kg or 45 lb";
const SHARE: &str = "a share from 1 % to 200 % like 80 %";

pub(super) fn load(c: &mut Cursor) -> Read<Load> {
    c.peek();
    let start = c.at;
    let amount = c.decimal().ok_or_else(|| c.fault(LOAD))?;
    let unit = if c.word("kg") {
        Unit::Kg
    } else if c.word("lb") || c.word("lbs") {
        Unit::Lb
    } else {
        return Err(c.fault("kg or lb after the number"));
    };
    Load::new(amount, unit).map_err(|_| c.fault_at(start, LOAD))
}

pub(super) fn share(c: &mut Cursor) -> Read<Share> {
    c.peek();
    let start = c.at;
    let percent = c.decimal().ok_or_else(|| c.fault(SHARE))?;
    if !c.eat(&['%']) {
        return Err(c.fault("% after the number"));
    }
    Share::new(percent).map_err(|_| c.fault_at(start, SHARE))
}

pub(super) fn loads(c: &mut Cursor) -> Read<Vec<Load>> {
    let mut list = vec![load(c)?];
    while c.list_goes_on() {
        bounded(c, list.len())?;
        list.push(load(c)?);
    }
    Ok(list)
}

pub(super) fn shares(c: &mut Cursor) -> Read<Vec<Share>> {
    let mut list = vec![share(c)?];
    while c.list_goes_on() {
        bounded(c, list.len())?;
        list.push(share(c)?);
    }
    Ok(list)
}

/// A list has at most as many members as a line has sets.
pub(super) fn bounded(c: &mut Cursor, members: usize) -> Read<()> {
    if members == usize::from(LINE_SETS_MAX) {
        return Err(c.fault("at most 20 in a list"));
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
