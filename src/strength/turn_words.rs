//! Words of what turns a rule aside: a first time, a break, a deload, a step that the kit or the tenth bounds; and of a
//! share that counts the body.

use super::load_words::Words;
use super::maximum::WithBody;
use super::moved::{Bound, Missed, Moved};
use super::set_because::GuidedStep;
use super::words::on;
use crate::say;
use crate::units::{Load, Reps, Rir, Share};
use crate::words::{many_of, t};
use rust_decimal::Decimal;

/// How many percent the second load is above the first, to a whole one; none where that cannot be said.
fn up_percent(at: Load, next: Load) -> Option<Decimal> {
    let share = next.kg().checked_div(at.kg())? - Decimal::ONE;
    let percent = share.checked_mul(Decimal::ONE_HUNDRED)?.round();
    (percent > Decimal::ZERO).then_some(percent)
}

/// Why no share of the maximum was taken where the body is moved.
pub(super) fn body_unknown() -> &'static str {
    t("body mass unknown, so no share of the maximum can be taken (give yours in Kit)")
}

impl Words<'_> {
    /// "75 % of the estimated maximum 120 kg with the body is 90 kg, less 80 kg of body: 10 kg".
    pub(super) fn with_body(self, taken: &WithBody) -> String {
        let wanted = taken.wanted();
        let (moved, body) = (taken.moved(), self.load(taken.body));
        let left = match (wanted.is_zero(), taken.assists) {
            (true, true) => say!(", and the body alone is {body}: no assistance", body),
            (true, false) => say!(", and the body alone is {body}: nothing added", body),
            (false, true) => say!(
                " of {body} of body: {load} of assistance",
                body,
                load = self.load(wanted)
            ),
            (false, false) => say!(
                ", less {body} of body: {load}",
                body,
                load = self.load(wanted)
            ),
        };
        let harder = taken.assists == (taken.to < wanted);
        let made = if taken.to != wanted && harder {
            say!(
                ", the lightest with the same equipment: {load}",
                load = self.load(taken.to)
            )
        } else {
            self.fitted(wanted, taken.to)
        };
        say!(
            "{share} of the estimated maximum {load} with the body is {moved}{left}{made}",
            share = taken.share,
            load = self.load(taken.e1rm),
            moved = self.load(moved),
            left,
            made
        )
    }

    pub(super) fn guided_start(self, to: Load) -> String {
        say!(
            "first time: begin light with {load}, say how much you had left, and the next load follows",
            load = self.load(to)
        )
    }

    /// What the kit makes in place of a load that it cannot make.
    pub(super) fn not_made(self, wanted: Load, easiest: Option<Load>) -> String {
        let wanted_said = self.load(wanted);
        match easiest {
            Some(load) if load > wanted => say!(
                "the kit makes nothing as light as {wanted}, its lightest is {load}: take that only if it is light for you",
                wanted = wanted_said,
                load = self.load(load)
            ),
            Some(load) => say!(
                "the kit makes no assistance as large as {wanted}, its largest is {load}",
                wanted = wanted_said,
                load = self.load(load)
            ),
            None => say!(
                "the kit makes nothing for {load}: add what you have in Kit",
                load = self.told(wanted)
            ),
        }
    }

    /// "by the sheet 5 kg more, 105 kg".
    pub(super) fn named(self, step: Load, moved: &Moved) -> String {
        let Moved {
            at, to, assists, ..
        } = *moved;
        let by = step.shown(self.unit_of(step));
        let (said, wanted) = match (to > at, assists) {
            (true, false) => (say!("by the sheet {load} more", load = by), at.plus(step)),
            (true, true) => (
                say!("by the sheet {load} more assistance", load = by),
                at.plus(step),
            ),
            (false, false) => (say!("by the sheet {load} less", load = by), at.minus(step)),
            (false, true) => (
                say!("by the sheet {load} less assistance", load = by),
                at.minus(step),
            ),
        };
        format!("{said}{}", self.made(wanted, to))
    }

    /// What a step up ran into, behind its load.
    pub(super) fn bound(self, bound: Option<Bound>) -> &'static str {
        match bound {
            None => "",
            Some(Bound::Tenth) => t(", no more than 10 % up"),
            Some(Bound::KitStep) => t(", more than 10 % up but the kit has nothing smaller"),
        }
    }

    /// "12, 12, 12 at 15 lb: 22 reps a set come first, then 20 lb, 33 % up".
    pub(super) fn step_waits(
        self,
        done: &str,
        (aim, last): (Reps, bool),
        next: Load,
        moved: &Moved,
    ) -> String {
        let next_said = self.load(next);
        let next_said = match up_percent(moved.at, next) {
            Some(percent) => say!("{load}, {percent} % up", load = next_said, percent),
            None => next_said,
        };
        let waits = match last {
            true => say!(
                "{done}: {aim} reps in the last set come first, then {next}",
                done,
                aim,
                next = next_said
            ),
            false => say!(
                "{done}: {aim} reps a set come first, then {next}",
                done,
                aim,
                next = next_said
            ),
        };
        match moved.to == moved.at {
            true => waits,
            false => format!("{waits}; {}", self.follows(moved)),
        }
    }

    /// What the last set must have for a step up by the 2-for-2 rule, or that it must have it once more.
    pub(super) fn not_twice_yet(self, done: &str, reps: Reps, goal: Reps, moved: &Moved) -> String {
        let aim = goal.get().saturating_add(2);
        let follows = self.follows(moved);
        match reps.get() >= aim {
            true => say!(
                "{done} in the last set: two over {goal}, once more for the next step, {follows}",
                done,
                goal,
                follows
            ),
            false => say!(
                "{done} in the last set: {aim} or more twice running for the next step, {follows}",
                done,
                aim,
                follows
            ),
        }
    }

    pub(super) fn after_break(self, days: u32, less: Option<Share>, moved: &Moved) -> String {
        say!(
            "last done like this {days} days ago: {follows}",
            days,
            follows = self.eased(less, moved)
        )
    }

    pub(super) fn lies_ahead(self, days: u32, moved: &Moved) -> String {
        many_of(
            days as usize,
            "the last time lies a day ahead by this clock, which may be wrong: {follows}",
            "the last time lies {n} days ahead by this clock, which may be wrong: {follows}",
            &[("follows", &self.follows(moved))],
        )
    }

    pub(super) fn deload(self, missed: &[Missed; 3], less: Share, moved: &Moved) -> String {
        let said = missed.map(|one| say!("{reps} {at}", reps = one.reps, at = self.at(one.at)));
        let (done, newest) = (said.join(", "), missed[2]);
        let asked = match missed.iter().all(|one| one.low == newest.low) {
            true => newest.low.to_string(),
            false => t("what was asked").to_owned(),
        };
        let follows = self.eased(Some(less), moved);
        if newest.at == moved.at {
            return say!(
                "{done}: below {asked} three times running, {follows}",
                done,
                asked,
                follows
            );
        }
        // The sets that missed were heavier or lighter than the first one, by which the load goes.
        say!(
            "{done}: below {asked} three times running, work load {load}: {follows}",
            done,
            asked,
            load = self.load(moved.at),
            follows
        )
    }

    /// How much easier it gets, to come back or to start again.
    fn eased(self, less: Option<Share>, moved: &Moved) -> String {
        let Moved {
            at, to, assists, ..
        } = *moved;
        let to_said = self.load(to);
        match less {
            _ if to == at && assists => say!(
                "no more assistance {place}, {load} again",
                place = on(moved.on),
                load = to_said
            ),
            _ if to == at => say!(
                "nothing lighter {place}, {load} again",
                place = on(moved.on),
                load = to_said
            ),
            _ if assists == (to < at) => say!(
                "nothing as light {place}, {load}",
                place = on(moved.on),
                load = to_said
            ),
            _ if assists => say!("more assistance to come back, {load}", load = to_said),
            None => say!("a step lighter to come back, {load}", load = to_said),
            Some(less) => {
                let wanted = at.minus(at.times(less.factor()));
                say!(
                    "{share} lighter to come back{made}",
                    share = less,
                    made = self.made(wanted, to)
                )
            }
        }
    }

    pub(super) fn disagrees(self, reps: Reps, low: Reps, reserve: Rir, moved: &Moved) -> String {
        say!(
            "{reps} of {low} reps {at} and {reserve} left do not fit together: {follows}",
            reps,
            low,
            at = self.lifted(moved),
            reserve,
            follows = self.follows(moved)
        )
    }

    pub(super) fn guided(
        self,
        from: Load,
        reps: Option<Reps>,
        said: (Rir, Option<(Reps, Rir)>, Rir),
        step: GuidedStep,
        to: Load,
    ) -> String {
        let (reserve, weighed, aim) = said;
        let done = match reps {
            Some(reps) => say!("{reps} {at}", reps, at = self.at(from)),
            None => self.load(from),
        };
        let left = match reserve.get() {
            5.. => t("5 or more").to_owned(),
            n => n.to_string(),
        };
        let to_said = self.load(to);
        let follows = match step {
            GuidedStep::Same => say!("{load} again", load = to_said),
            _ if to == from => say!("{load} again, the kit ends there", load = to_said),
            GuidedStep::Larger => say!("a larger step to {load}", load = to_said),
            GuidedStep::Usual => say!("the usual step to {load}", load = to_said),
            GuidedStep::Down => self.down_to(to),
        };
        if let Some((of, weighed)) = weighed {
            return say!(
                "{done} with {left} left is {n} left in a set of {reps}, {aim} aimed at: {follows}",
                done,
                left,
                n = weighed,
                reps = of,
                aim,
                follows
            );
        }
        say!(
            "{done} with {left} left, {aim} aimed at: {follows}",
            done,
            left,
            aim,
            follows
        )
    }

    pub(super) fn guide_unsaid(self, to: Load) -> String {
        say!(
            "what you had left was not said: {load} again; say it, and the next load follows",
            load = self.load(to)
        )
    }
}
