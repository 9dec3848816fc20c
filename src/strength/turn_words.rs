//! Words of what turns a rule aside: a first time, a break, a deload, a step that the kit or the tenth bounds; and of a
//! share that counts the body.

use super::because::{Bound, Missed, Moved};
use super::maximum::WithBody;
use super::set_because::GuidedStep;
use super::words::{Words, on};
use crate::units::{Load, Reps, Rir, Share};

/// Why no share of the maximum was taken where the body is moved.
pub(super) const BODY_UNKNOWN: &str =
    "body mass unknown, so no share of the maximum can be taken (give yours in Kit)";

impl Words {
    /// "75 % of the estimated maximum 120 kg with the body is 90 kg, less 80 kg of body: 10 kg".
    pub(super) fn with_body(self, taken: &WithBody) -> String {
        let wanted = taken.wanted();
        let (moved, body) = (taken.moved(), self.load(taken.body));
        let left = match (wanted.is_zero(), taken.assists) {
            (true, true) => format!("and the body alone is {body}: no assistance"),
            (true, false) => format!("and the body alone is {body}: nothing added"),
            (false, true) => format!("of {body} of body: {} of assistance", self.load(wanted)),
            (false, false) => format!("less {body} of body: {}", self.load(wanted)),
        };
        let between = if taken.assists && !wanted.is_zero() {
            " "
        } else {
            ", "
        };
        let harder = taken.assists == (taken.to < wanted);
        let made = if taken.to != wanted && harder {
            format!(", the lightest there is: {}", self.load(taken.to))
        } else {
            self.fitted(wanted, taken.to)
        };
        format!(
            "{} of the estimated maximum {} with the body is {}{between}{left}{made}",
            taken.share,
            self.load(taken.e1rm),
            self.load(moved),
        )
    }

    pub(super) fn guided_start(self, to: Load) -> String {
        let with = if to.is_zero() {
            "nothing added".to_owned()
        } else {
            self.load(to)
        };
        format!(
            "first time: begin light with {with}, say how many reps were left, and the next load follows"
        )
    }

    /// What the kit makes in place of a load that it cannot make.
    pub(super) fn not_made(self, wanted: Load, easiest: Option<Load>) -> String {
        let wanted_said = self.load(wanted);
        match easiest {
            Some(load) if load > wanted => format!(
                "the kit makes nothing as light as {wanted_said}, its lightest is {}: take that only if it is light \
                 for you",
                self.load(load)
            ),
            Some(load) => format!(
                "the kit makes no assistance as large as {wanted_said}, its largest is {}",
                self.load(load)
            ),
            None => format!("the kit makes nothing for {wanted_said}: add what you have in Kit"),
        }
    }

    /// What a step up ran into, behind its load.
    pub(super) fn bound(self, bound: Option<Bound>) -> &'static str {
        match bound {
            None => "",
            Some(Bound::Tenth) => ", no more than 10 % up",
            Some(Bound::KitStep) => ", more than 10 % up but the kit has nothing smaller",
        }
    }

    pub(super) fn after_break(self, days: u32, less: Option<Share>, moved: &Moved) -> String {
        format!("last done {days} days ago: {}", self.eased(less, moved))
    }

    pub(super) fn lies_ahead(self, days: u32, moved: &Moved) -> String {
        let days = match days {
            1 => "a day".to_owned(),
            days => format!("{days} days"),
        };
        format!(
            "the last time lies {days} ahead by this clock, which may be wrong: {}",
            self.follows(moved)
        )
    }

    pub(super) fn deload(self, missed: &[Missed; 3], less: Share, moved: &Moved) -> String {
        let said = missed.map(|one| format!("{} at {}", one.reps, self.load(one.at)));
        let asked = missed[2].low;
        format!(
            "{}: below {asked} three times running, {}",
            said.join(", "),
            self.eased(Some(less), moved)
        )
    }

    /// How much easier it gets, to come back or to start anew.
    fn eased(self, less: Option<Share>, moved: &Moved) -> String {
        let Moved {
            at, to, assists, ..
        } = *moved;
        let to_said = self.load(to);
        match less {
            _ if to == at => {
                let none = if assists {
                    "no more assistance"
                } else {
                    "nothing lighter"
                };
                format!("{none} {}, {to_said} again", on(moved.on))
            }
            _ if assists == (to < at) => format!("nothing as light {}, {to_said}", on(moved.on)),
            _ if assists => format!("more assistance to come back, {to_said}"),
            None => format!("a step lighter to come back, {to_said}"),
            Some(less) => {
                let wanted = at.minus(at.times(less.factor()));
                let made = match self.fitted(wanted, to) {
                    made if made.is_empty() => format!(", {to_said}"),
                    made => made,
                };
                format!("{less} lighter to come back{made}")
            }
        }
    }

    pub(super) fn disagrees(self, reps: Reps, low: Reps, reserve: Rir, moved: &Moved) -> String {
        format!(
            "{reps} of {low} reps at {} and {reserve} left do not fit together: {}",
            self.load(moved.at),
            self.follows(moved)
        )
    }

    pub(super) fn guided(
        self,
        from: Load,
        reps: Option<Reps>,
        said: (Rir, Rir),
        step: GuidedStep,
        to: Load,
    ) -> String {
        let (reserve, aim) = said;
        let done = match reps {
            Some(reps) => format!("{reps} at {}", self.load(from)),
            None => self.load(from),
        };
        let left = match reserve.get() {
            5.. => "5 or more".to_owned(),
            n => n.to_string(),
        };
        let to_said = self.load(to);
        let follows = match step {
            _ if to == from => format!("{to_said} again, the kit ends there"),
            GuidedStep::Larger => format!("a larger step to {to_said}"),
            GuidedStep::Usual => format!("the usual step to {to_said}"),
            GuidedStep::Down => format!("a step down to {to_said}"),
        };
        format!("{done} with {left} left, {aim} aimed at: {follows}")
    }

    pub(super) fn guide_unsaid(self, to: Load) -> String {
        format!(
            "the reps left were not said: {} again; say them, and the next load follows",
            self.load(to)
        )
    }
}
