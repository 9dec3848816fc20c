//! Reads what a set asks for: reps, a time, a distance, stages; and tempo and seconds.

use super::cursor::{Cursor, Read};
use crate::sheet::{RepTarget, STAGES_MAX, Stage, Target, Tempo};
use crate::units::{Metres, Reps, Seconds};
use crate::words::t;

fn some_reps() -> &'static str {
    t("a number of reps like 5, 5–7 or 8+")
}

fn a_target() -> &'static str {
    t("a number of reps like 5, 5–7 or 8+, a time like 30 s, a distance like 20 m or stages in [ ]")
}

fn a_tempo() -> &'static str {
    t("a tempo of four parts like 3/1/X/0, each 0 to 20 seconds or X")
}

fn a_time() -> &'static str {
    t("a time up to an hour like 90 or 1:30")
}

pub(super) fn target(c: &mut Cursor) -> Read<Target> {
    if c.eat(&['[']) {
        return stages(c);
    }
    let start = c.at;
    let n = c.whole(0, 1_000_000, a_target())?;
    let is_clock = c.eat(&[':']);
    let is_time = is_clock || c.word("s") || c.word("sec") || c.word("min");
    if is_time {
        c.at = start;
        return Ok(Target::Timed(seconds(c)?));
    }
    if c.word("m") {
        let metres = Metres::new(n).map_err(|_| c.fault_at(start, t("1 to 10000 metres")))?;
        return Ok(Target::Distance(metres));
    }
    c.at = start;
    Ok(Target::Reps(reps(c)?))
}

pub(super) fn reps(c: &mut Cursor) -> Read<RepTarget> {
    let start = c.at;
    let low = c.whole(1, 500, some_reps())?;
    let low = Reps::saturating(low);
    let target = if c.eat(&['+']) {
        RepTarget::at_least(low)
    } else if c.eat(&['–', '-']) {
        let high = c.whole(1, 500, t("the top of a range of reps like 5–7"))?;
        RepTarget::range(low, Reps::saturating(high))
    } else {
        RepTarget::fixed(low)
    };
    target.map_err(|_| c.fault_at(start, t("a range of reps that rises like 5–7")))
}

fn stages(c: &mut Cursor) -> Read<Target> {
    let mut stages = Vec::new();
    loop {
        if stages.len() == STAGES_MAX {
            return Err(c.fault(t("at most 8 stages")));
        }
        stages.push(stage(c)?);
        if c.eat(&[']']) {
            return Ok(Target::Stages(stages));
        }
        let goes_on = c.eat(&['→']) || (c.eat(&['-']) && c.eat(&['>']));
        if !goes_on {
            return Err(c.fault(t("→ before the next stage, or ] after the last")));
        }
    }
}

fn stage(c: &mut Cursor) -> Read<Stage> {
    if c.word("hold") {
        let seconds = seconds(c)?;
        return Ok(Stage::Hold { seconds });
    }
    if !c.at_digit() {
        return Err(c.fault(t("a stage like hold 10 s, 6 at 4/0/2/0 or 8 partials")));
    }
    let reps = reps(c)?;
    if c.word("partials") {
        Ok(Stage::Partials { reps })
    } else if c.word("at") {
        let tempo = tempo(c)?;
        Ok(Stage::Reps { reps, tempo })
    } else {
        Err(c.fault(t("at and a tempo, or partials")))
    }
}

pub(super) fn tempo(c: &mut Cursor) -> Read<Tempo> {
    let start = c.at;
    let mut text = String::new();
    for part in 0..4 {
        if part > 0 {
            if !c.eat(&['/']) {
                return Err(c.fault(a_tempo()));
            }
            text.push('/');
        }
        if c.eat(&['X', 'x']) {
            text.push('X');
        } else {
            text.push_str(&c.whole(0, 20, a_tempo())?.to_string());
        }
    }
    text.parse().map_err(|_| c.fault_at(start, a_tempo()))
}

/// Seconds (`90`, `90 s`), minutes (`2 min`) or a clock (`1:30`).
pub(super) fn seconds(c: &mut Cursor) -> Read<Seconds> {
    let start = c.at;
    let n = c.whole(0, 3600, a_time())?;
    let seconds = if c.eat(&[':']) {
        n * 60 + c.whole(0, 59, t("seconds from 00 to 59"))?
    } else if c.word("min") {
        n * 60
    } else {
        let _unit = c.word("s") || c.word("sec");
        n
    };
    Seconds::new(seconds).map_err(|_| c.fault_at(start, a_time()))
}
