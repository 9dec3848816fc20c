//! Laying cues and spans one behind the other.

use super::timeline::{Cue, Cued, Length, Phase, Span, Timeline};
use crate::sheet::{Digit, Tempo};

/// Shortest hold, in seconds, that has its middle marked.
const HALFWAY_FROM_S: u32 = 10;
/// How long before a stage its mark is heard. Beats fall on whole seconds, so it never meets one.
const STAGE_MARK_MS: u32 = 500;
/// The last seconds that are counted down.
const COUNTED_DOWN_S: u32 = 3;

/// A timeline under construction.
#[derive(Default)]
pub(super) struct Builder {
    now_ms: u32,
    cues: Vec<Cued>,
    phases: Vec<Span>,
    /// Side that is under way, from 0.
    pub side: u8,
    /// Portion of a cluster that is under way, from 0.
    pub portion: u8,
    /// Stage that is under way, from 0.
    pub stage: u8,
}

impl Builder {
    /// Sounds a cue that far after now.
    fn cue(&mut self, after_ms: u32, len_ms: u32, cue: Cue) {
        self.cues.push(Cued {
            at_ms: self.now_ms + after_ms,
            len_ms,
            cue,
        });
    }

    /// Lets a phase run, and time with it.
    fn run(&mut self, len_ms: u32, what: Phase, rep: u16, rep_total: u16) {
        if len_ms == 0 {
            return;
        }
        self.phases.push(Span {
            from_ms: self.now_ms,
            to_ms: self.now_ms + len_ms,
            what,
            rep,
            rep_total,
            side: self.side,
            portion: self.portion,
            stage: self.stage,
        });
        self.now_ms += len_ms;
    }

    /// The last seconds of a stretch that begins now, only those after its start.
    fn last_seconds(&mut self, seconds: u32) {
        for left in (1..=COUNTED_DOWN_S).rev().filter(|&left| left < seconds) {
            let cue = Cue::Left {
                seconds: left as u8,
            };
            self.cue((seconds - left) * 1000, 1000, cue);
        }
    }

    /// One beat a second to the start.
    pub(super) fn count_in(&mut self, seconds: u8) {
        for passed in 0..seconds {
            let left = seconds - passed;
            self.cue(u32::from(passed) * 1000, 1000, Cue::CountIn { left });
        }
        self.run(u32::from(seconds) * 1000, Phase::CountIn, 0, 0);
    }

    /// The start of a set that is not paced.
    pub(super) fn go(&mut self) {
        self.cue(0, 0, Cue::Go);
    }

    /// Repetitions at a tempo, each phase with its cue; phases of no length have none.
    pub(super) fn reps(&mut self, total: u16, tempo: Tempo, mark_last: bool) {
        let phases = [
            (Phase::Eccentric, tempo.eccentric),
            (Phase::Stretch, tempo.stretch),
            (Phase::Concentric, tempo.concentric),
            (Phase::Squeeze, tempo.squeeze),
        ];
        for rep in 1..=total {
            let mut last_rep = mark_last && rep == total;
            for (phase, digit) in phases {
                let len_ms = u32::from(digit.seconds()) * 1000;
                if len_ms > 0 {
                    let fast = digit == Digit::Fast;
                    let cue = Cue::Rep {
                        phase,
                        fast,
                        last_rep,
                    };
                    self.cue(0, len_ms, cue);
                    last_rep = false;
                }
                self.run(len_ms, phase, rep, total);
            }
        }
    }

    /// Partial repetitions, one beat each.
    pub(super) fn partials(&mut self, total: u16, beat_ms: u32, mark_last: bool) {
        for rep in 1..=total {
            let last_rep = mark_last && rep == total;
            self.cue(0, beat_ms, Cue::Partial { last_rep });
            self.run(beat_ms, Phase::Partial, rep, total);
        }
    }

    /// A hold: go, halfway, the last seconds.
    pub(super) fn hold(&mut self, seconds: u16) {
        let seconds = u32::from(seconds);
        if seconds == 0 {
            return;
        }
        self.cue(0, seconds * 1000, Cue::Go);
        if seconds >= HALFWAY_FROM_S {
            self.cue(seconds * 500, 0, Cue::Halfway);
        }
        self.last_seconds(seconds);
        self.run(seconds * 1000, Phase::Hold, 0, 0);
    }

    /// A stretch of waiting with its opening cue and its last seconds.
    pub(super) fn wait(&mut self, seconds: u16, what: Phase, opening: Cue) {
        let seconds = u32::from(seconds);
        if seconds == 0 {
            return;
        }
        self.cue(0, seconds * 1000, opening);
        self.last_seconds(seconds);
        self.run(seconds * 1000, what, 0, 0);
    }

    /// The mark before the next stage, unless the one before took no time.
    pub(super) fn stage_mark(&mut self, stage_began_ms: u32) {
        if self.now_ms > stage_began_ms {
            self.cues.push(Cued {
                at_ms: self.now_ms - STAGE_MARK_MS,
                len_ms: STAGE_MARK_MS,
                cue: Cue::StageChange,
            });
        }
    }

    /// A rest: perhaps its middle, a mark where so many seconds are left, the last seconds. The middle of a short rest
    /// would come with or after that mark and is left out.
    pub(super) fn rest(&mut self, seconds: u16, half: bool, soon: u16) {
        let whole = u32::from(seconds);
        if half && whole > 2 * u32::from(soon) {
            self.cue(whole * 500, whole * 500, Cue::RestHalf);
        }
        if seconds > soon {
            let cue = Cue::RestSoon;
            self.cue(
                (whole - u32::from(soon)) * 1000,
                u32::from(soon) * 1000,
                cue,
            );
        }
        self.last_seconds(whole);
        self.run(whole * 1000, Phase::Rest, 0, 0);
    }

    /// The time that is laid out so far.
    pub(super) fn now_ms(&self) -> u32 {
        self.now_ms
    }

    /// The end, with its cue.
    pub(super) fn end(mut self, cue: Cue) -> Timeline {
        self.cue(0, 0, cue);
        let at_ms = self.now_ms;
        self.finish(Length::Ends { at_ms })
    }

    /// Open from here on.
    pub(super) fn open(self) -> Timeline {
        let from_ms = self.now_ms;
        self.finish(Length::Open { from_ms })
    }

    fn finish(self, length: Length) -> Timeline {
        Timeline {
            cues: self.cues,
            length,
            phases: self.phases,
        }
    }
}
