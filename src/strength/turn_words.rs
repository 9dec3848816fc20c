//! Words of what turns a rule aside: a first time, a break, a deload, a step that the kit or the tenth bounds.

use super::because::{Bound, Missed, Moved};
use super::set_because::GuidedStep;
use super::words::{Words, on};
use crate::units::{Load, Reps, Rir, Share};

impl Words {
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
