//! All words of the reasons, in one place so that they can be put into another language.

use super::because::{Because, Moved, Wish};
use super::set_because::{OutcomeStep, SetBecause, ShareOf};
use super::turn_words::BODY_UNKNOWN;
use crate::sheet::Equipment;
use crate::units::{Load, Reps, Share, Unit};
use std::fmt;

/// How loads are written: in the unit on display, or each in the unit it was typed in.
#[derive(Clone, Copy)]
pub(super) struct Words(Option<Unit>);

impl Because {
    /// The sentence, its loads in the unit on display.
    #[must_use]
    pub fn said(&self, unit: Unit) -> String {
        Words(Some(unit)).because(self)
    }
}

impl fmt::Display for Because {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Words(None).because(self))
    }
}

impl SetBecause {
    /// The sentence, its loads in the unit on display.
    #[must_use]
    pub fn said(&self, unit: Unit) -> String {
        Words(Some(unit)).set(self)
    }
}

impl fmt::Display for SetBecause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Words(None).set(self))
    }
}

/// A range of reps, or its one number.
fn range(low: Reps, top: Reps) -> String {
    if low == top {
        low.to_string()
    } else {
        format!("{low}–{top}")
    }
}

pub(super) fn on(equipment: Equipment) -> &'static str {
    match equipment {
        Equipment::Barbell => "on this bar",
        Equipment::Dumbbell => "in these dumbbells",
        Equipment::Handle => "on these handles",
        Equipment::Stack => "on this stack",
        Equipment::Band | Equipment::Body | Equipment::Other => "in this kit",
    }
}

impl Words {
    pub(super) fn load(self, load: Load) -> String {
        load.shown(self.0.unwrap_or(load.unit()))
    }

    /// What a load came to, where the kit does not make just the wanted one.
    pub(super) fn fitted(self, wanted: Load, to: Load) -> String {
        if to == wanted {
            return String::new();
        }
        let to_said = self.load(to);
        if to < wanted {
            format!(", nearest below is {to_said}")
        } else {
            format!(", nearest above is {to_said}")
        }
    }

    /// What follows for the load, as the end of a sentence.
    pub(super) fn follows(self, moved: &Moved) -> String {
        let Moved {
            at, to, assists, ..
        } = *moved;
        let to_said = self.load(to);
        let place = on(moved.on);
        match moved.wish {
            Wish::Same if to == at => "same load again".to_owned(),
            Wish::Same => format!("same load again{}", self.fitted(at, to)),
            // The kit was smaller than last time's load all along.
            Wish::Harder if to != at && assists == (to > at) => {
                format!("nothing as hard {place}, {to_said}")
            }
            Wish::Harder if to == at && assists => {
                format!("no less assistance {place}, {to_said} again")
            }
            Wish::Harder if to == at => format!("nothing heavier {place}, {to_said} again"),
            Wish::Harder if assists => format!("less assistance, next step {place} is {to_said}"),
            Wish::Harder => {
                format!("next step {place} is {to_said}{}", self.bound(moved.bound))
            }
            Wish::Easier if to == at && assists => {
                format!("no more assistance {place}, {to_said} again")
            }
            Wish::Easier if to == at => format!("nothing lighter {place}, {to_said} again"),
            Wish::Easier if assists => format!("more assistance, back to {to_said}"),
            Wish::Easier => format!("a step down to {to_said}"),
        }
    }

    /// "7, 7, 7 at 82.5 kg".
    fn done(self, reps: &[Reps], at: Load) -> String {
        let reps: Vec<String> = reps.iter().map(Reps::to_string).collect();
        format!("{} at {}", reps.join(", "), self.load(at))
    }

    fn because(self, because: &Because) -> String {
        match because {
            Because::StartOfSheet { wanted, to } => format!(
                "start of the sheet: {}{}",
                self.load(*wanted),
                self.fitted(*wanted, *to)
            ),
            Because::NothingKnown {} => {
                "nothing is known yet: choose a load that feels light".to_owned()
            }
            Because::GuidedStart { to } => self.guided_start(*to),
            Because::NoLoad {} => "no load".to_owned(),
            Because::OutOfKit { wanted, easiest } => self.not_made(*wanted, *easiest),
            Because::AsWritten { wanted, to } => format!(
                "as written: {}{}",
                self.load(*wanted),
                self.fitted(*wanted, *to)
            ),
            Because::ShareOfE1rm { share, e1rm, to } => self.share(
                &format!("{share} of the estimated maximum {}", self.load(*e1rm)),
                e1rm.times(share.factor()),
                *to,
            ),
            Because::ShareWithBody(taken) => self.with_body(taken),
            Because::LightWeek { share, usual, to } => self.light_week(*share, *usual, *to),
            Because::SameAsLast { moved } => {
                format!("{} last time: {}", self.load(moved.at), self.follows(moved))
            }
            Because::Lightened { down_to, moved } => format!(
                "went from {} to {} within the work sets: {}",
                self.load(moved.at),
                self.load(*down_to),
                self.follows(moved)
            ),
            Because::TopReached {
                reps,
                low,
                top,
                moved,
            } => format!(
                "{}: top of {} reached, {}",
                self.done(reps, moved.at),
                range(*low, *top),
                self.follows(moved)
            ),
            Because::InRange {
                reps,
                low,
                top,
                moved,
            } => format!(
                "{}: inside {}, {}",
                self.done(reps, moved.at),
                range(*low, *top),
                self.follows(moved)
            ),
            Because::BelowRange {
                reps,
                low,
                top,
                moved,
            } => format!(
                "{}: below {}, {}",
                self.done(reps, moved.at),
                range(*low, *top),
                self.follows(moved)
            ),
            Because::TwoOverTwice { reps, goal, moved } => format!(
                "{} in the last sets: two over {goal} twice running, {}",
                self.done(reps, moved.at),
                self.follows(moved)
            ),
            Because::NotTwiceYet { reps, goal, moved } => format!(
                "{} in the last set: not yet two over {goal} twice running, {}",
                self.done(&[*reps], moved.at),
                self.follows(moved)
            ),
            Because::AllDone { moved } => format!(
                "every rep done at {}: {}",
                self.load(moved.at),
                self.follows(moved)
            ),
            Because::NotAllDone { moved } => format!(
                "not every rep done at {}: {}",
                self.load(moved.at),
                self.follows(moved)
            ),
            Because::NoEstimate { moved } => {
                format!("no estimate of the maximum yet: {}", self.follows(moved))
            }
            Because::BodyMassUnknown { moved } => {
                format!("{BODY_UNKNOWN}: {}", self.follows(moved))
            }
            Because::MoreInReserve {
                reserve,
                aim,
                moved,
            } => format!(
                "{reserve} left at {}, {aim} aimed at: {}",
                self.load(moved.at),
                self.follows(moved)
            ),
            Because::AsAimed { reserve, moved } => format!(
                "{reserve} left at {}, as aimed at: {}",
                self.load(moved.at),
                self.follows(moved)
            ),
            Because::LessInReserve {
                reserve,
                aim,
                moved,
            } => format!(
                "only {reserve} left at {}, {aim} aimed at: {}",
                self.load(moved.at),
                self.follows(moved)
            ),
            Because::NoReserveSaid { moved } => format!(
                "no reps in reserve were said at {}: {}",
                self.load(moved.at),
                self.follows(moved)
            ),
            Because::Disagrees {
                reps,
                low,
                reserve,
                moved,
            } => self.disagrees(*reps, *low, *reserve, moved),
            Because::AfterBreak { days, less, moved } => self.after_break(*days, *less, moved),
            Because::LiesAhead { days, moved } => self.lies_ahead(*days, moved),
            Because::Deload {
                missed,
                less,
                moved,
            } => self.deload(missed, *less, moved),
        }
    }

    /// "light week: 90 % of 82.5 kg, nearest below is 72.5 kg".
    fn light_week(self, share: Share, usual: Load, to: Load) -> String {
        let usual_said = self.load(usual);
        if to == usual {
            format!("light week: {usual_said} as usual")
        } else if to > usual {
            format!(
                "light week: more assistance than {usual_said}, {}",
                self.load(to)
            )
        } else {
            let of = format!("light week: {share} of {usual_said}");
            self.share(&of, usual.times(share.factor()), to)
        }
    }

    fn out_of_kit(self, wanted: Load) -> String {
        format!("the kit makes nothing for {}", self.load(wanted))
    }

    /// "40 % of 80 kg, nearest below is 30 kg".
    fn share(self, of: &str, wanted: Load, to: Load) -> String {
        if to == wanted {
            format!("{of} is {}", self.load(to))
        } else if to > wanted {
            format!("{of}, the lightest there is: {}", self.load(to))
        } else {
            format!("{of}{}", self.fitted(wanted, to))
        }
    }

    fn set(self, because: &SetBecause) -> String {
        match because {
            SetBecause::NoLoad => "no load".to_owned(),
            SetBecause::NothingKnown => {
                "nothing is known yet: choose a load that feels light".to_owned()
            }
            SetBecause::OutOfKit { wanted } => self.out_of_kit(*wanted),
            SetBecause::WorkLoad { to } => format!("work load: {}", self.load(*to)),
            SetBecause::AsDone { at, to } => format!(
                "as in the set before: {}{}",
                self.load(*at),
                self.fitted(*at, *to)
            ),
            SetBecause::Shared {
                of,
                share,
                whole,
                to,
            } => {
                let wanted = whole.times(share.factor());
                let whole = self.load(*whole);
                let of = match of {
                    ShareOf::WorkLoad => format!("ramp-up: {share} of {whole}"),
                    ShareOf::BackOff => format!("back-off: {share} of {whole}"),
                    ShareOf::Drop => format!("drop: {share} of {whole}"),
                    ShareOf::Top => format!("{share} of the heaviest, {whole}"),
                    ShareOf::E1rm => format!("{share} of the estimated maximum {whole}"),
                };
                self.share(&of, wanted, *to)
            }
            SetBecause::ShareWithBody(taken) => self.with_body(taken),
            SetBecause::MoreAssistance { from, to } if from == to => {
                format!("same assistance: {}", self.load(*to))
            }
            SetBecause::MoreAssistance { from, to } => format!(
                "easier than with {} of assistance: {}",
                self.load(*from),
                self.load(*to)
            ),
            SetBecause::Stepped {
                from,
                steps,
                harder,
                to,
            } => {
                let steps = match steps {
                    1 => "planned step".to_owned(),
                    n => format!("{n} planned steps"),
                };
                let way = if *harder { "harder" } else { "easier" };
                format!(
                    "{steps} {way} than {}: {}",
                    self.load(*from),
                    self.load(*to)
                )
            }
            SetBecause::KitEnds { at, heavier } => {
                let way = if *heavier { "heavier" } else { "lighter" };
                let at = self.load(*at);
                format!("the kit makes nothing {way} than {at}")
            }
            SetBecause::Listed { number, wanted, to } => format!(
                "load {number} of the sheet’s list: {}{}",
                self.load(*wanted),
                self.fitted(*wanted, *to)
            ),
            SetBecause::Outcome {
                reps,
                low,
                top,
                step,
                to,
            } => {
                let range = range(*low, *top);
                let to = self.load(*to);
                match step {
                    OutcomeStep::Large => {
                        format!("{reps} reaches the top of {range}: large step to {to}")
                    }
                    OutcomeStep::Planned => {
                        format!("{reps} is inside {range}: planned step to {to}")
                    }
                    OutcomeStep::Stay => format!("{reps} is below {range}: {to} again"),
                    OutcomeStep::Down => {
                        format!("{reps} is far below {range}: planned step down to {to}")
                    }
                }
            }
            SetBecause::Guided {
                from,
                reps,
                reserve,
                aim,
                step,
                to,
            } => self.guided(*from, *reps, (*reserve, *aim), *step, *to),
            SetBecause::GuideUnsaid { to } => self.guide_unsaid(*to),
            SetBecause::BodyMassUnknown { to } => {
                format!("{BODY_UNKNOWN}: work load {}", self.load(*to))
            }
            SetBecause::NoEstimate { to } => {
                format!(
                    "no estimate of the maximum yet: work load {}",
                    self.load(*to)
                )
            }
        }
    }
}
