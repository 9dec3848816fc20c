//! The words of the reasons for a work load; those for the load of one set are in `set_words.rs`.

use super::because::{Because, Proposal};
use super::load_words::Words;
use super::moved::{Moved, Wish};
use super::turn_words::body_unknown;
use crate::say;
use crate::sheet::{Equipment, LoadBasis};
use crate::units::{Load, Reps, Share, Unit};
use crate::words::t;
use std::fmt;

impl Because {
    /// The sentence, its loads in the unit on display and on the block's basis.
    #[must_use]
    pub fn said(&self, unit: Unit, basis: &LoadBasis) -> String {
        Words::of(unit, basis).because(self)
    }
}

impl Proposal {
    /// The because, after the load where it does not end in that itself.
    #[must_use]
    pub fn said(&self, unit: Unit, basis: &LoadBasis) -> String {
        // A band has no figure, but it is a load.
        if let (Because::NoLoad {}, Some(band)) = (&self.because, basis.band()) {
            return band;
        }
        let because = self.because.said(unit, basis);
        let Some(load) = self.load else {
            return because;
        };
        let shown = basis.shown(load, unit);
        // Of nothing at all a language may have another word where it is what something was done with.
        let nothing = || load.is_zero() && because.contains(&Words::of(unit, basis).at(load));
        if says(&because, &shown) || nothing() {
            because
        } else {
            format!("{}: {because}", basis.told(load, unit))
        }
    }
}

impl fmt::Display for Because {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Words::PLAIN.because(self))
    }
}

/// Whether a sentence says a load, not just the end of a longer figure: 7.5 kg does not say 5 kg.
fn says(sentence: &str, load: &str) -> bool {
    let of_longer = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '–');
    let mut found = sentence.match_indices(load);
    found.any(|(at, _)| !sentence[..at].ends_with(of_longer))
}

/// A range of reps, or its one number.
pub(super) fn range(low: Reps, top: Reps) -> String {
    if low == top {
        low.to_string()
    } else {
        format!("{low}–{top}")
    }
}

pub(super) fn on(equipment: Equipment) -> &'static str {
    t(match equipment {
        Equipment::Barbell => "on this bar",
        Equipment::Dumbbell => "in these dumbbells",
        Equipment::Handle => "on these handles",
        Equipment::Stack => "on this stack",
        Equipment::Band | Equipment::Body | Equipment::Other => "in this kit",
    })
}

impl Words<'_> {
    /// What follows for the load, as the end of a sentence.
    pub(super) fn follows(self, moved: &Moved) -> String {
        let Moved {
            at, to, assists, ..
        } = *moved;
        if let Some(step) = moved.named {
            return self.named(step, moved);
        }
        let to_said = self.load(to);
        let place = on(moved.on);
        match moved.wish {
            Wish::Same if to == at && assists => t("same assistance again").to_owned(),
            Wish::Same if to == at => t("same load again").to_owned(),
            Wish::Same if assists => {
                say!(
                    "same assistance again{fitted}",
                    fitted = self.fitted(at, to)
                )
            }
            Wish::Same => say!("same load again{fitted}", fitted = self.fitted(at, to)),
            // The kit was smaller than last time's load all along.
            Wish::Harder if to != at && assists == (to > at) => {
                say!("nothing as hard {place}, {load}", place, load = to_said)
            }
            Wish::Harder if to == at && assists => {
                say!(
                    "no less assistance {place}, {load} again",
                    place,
                    load = to_said
                )
            }
            Wish::Harder if to == at => say!(
                "nothing heavier {place}, {load} again",
                place,
                load = to_said
            ),
            Wish::Harder if assists => say!(
                "less assistance, next step {place} is {load}",
                place,
                load = to_said
            ),
            Wish::Harder => {
                say!(
                    "next step {place} is {load}{bound}",
                    place,
                    load = to_said,
                    bound = self.bound(moved.bound)
                )
            }
            Wish::Easier if to == at && assists => {
                say!(
                    "no more assistance {place}, {load} again",
                    place,
                    load = to_said
                )
            }
            Wish::Easier if to == at => say!(
                "nothing lighter {place}, {load} again",
                place,
                load = to_said
            ),
            Wish::Easier if assists => say!("more assistance, back to {load}", load = to_said),
            Wish::Easier => self.down_to(to),
        }
    }

    /// "7, 7, 7 at 82.5 kg".
    fn done(self, reps: &[Reps], moved: &Moved) -> String {
        let reps: Vec<String> = reps.iter().map(Reps::to_string).collect();
        say!(
            "{reps} {at}",
            reps = reps.join(", "),
            at = self.lifted(moved)
        )
    }

    fn because(self, because: &Because) -> String {
        match because {
            Because::StartOfSheet { wanted, to } => say!(
                "start of the sheet: {load}{fitted}",
                load = self.told(*wanted),
                fitted = self.fitted(*wanted, *to)
            ),
            Because::NothingKnown {} => {
                t("nothing is known yet: choose a load that feels light").to_owned()
            }
            Because::GuidedStart { to } => self.guided_start(*to),
            Because::NoLoad {} => t("no load").to_owned(),
            Because::OutOfKit { wanted, easiest } => self.not_made(*wanted, *easiest),
            Because::AsWritten { wanted, to } => say!(
                "as written: {load}{fitted}",
                load = self.told(*wanted),
                fitted = self.fitted(*wanted, *to)
            ),
            Because::ShareOfE1rm { share, e1rm, to } => self.share(
                &say!(
                    "{share} of the estimated maximum {load}",
                    share,
                    load = self.load(*e1rm)
                ),
                e1rm.times(share.factor()),
                *to,
            ),
            Because::FromEstimate {
                reps,
                reserve,
                share,
                e1rm,
                below,
                to,
            } => {
                let of = say!(
                    "not done like this yet: {reps} reps with {reserve} left are {share} of the estimated maximum {load}",
                    reps,
                    reserve,
                    share,
                    load = self.load(*e1rm)
                );
                match below {
                    0 => self.share(&of, e1rm.times(share.factor()), *to),
                    1 => say!(
                        "{of}, a step below it to begin with: {load}",
                        of,
                        load = self.load(*to)
                    ),
                    _ => say!(
                        "{of}, {below} steps below it to begin with: {load}",
                        of,
                        below,
                        load = self.load(*to)
                    ),
                }
            }
            Because::ShareWithBody(taken) => self.with_body(taken),
            Because::LightWeek { share, usual, to } => self.light_week(*share, *usual, *to),
            Because::SameAsLast { moved } => {
                say!(
                    "{load} last time: {follows}",
                    load = self.told(moved.at),
                    follows = self.follows(moved)
                )
            }
            Because::Lightened {
                tried,
                down_to,
                moved,
            } => say!(
                "went from {load} to {lighter} within the work sets: {follows}",
                load = self.told(tried.unwrap_or(moved.at)),
                lighter = self.load(*down_to),
                // Of three loads it is said which one.
                follows = match moved.to == moved.at {
                    true => say!("{load} again", load = self.load(moved.to)),
                    false => self.follows(moved),
                }
            ),
            // Of a number, and of "so many and more", nothing is the top.
            Because::TopReached {
                reps,
                low,
                top,
                moved,
            } if low == top => say!(
                "{done}: as many as asked for, {follows}",
                done = self.done(reps, moved),
                follows = self.follows(moved)
            ),
            Because::TopReached {
                reps,
                low,
                top,
                moved,
            } => say!(
                "{done}: top of {range} reached, {follows}",
                done = self.done(reps, moved),
                range = range(*low, *top),
                follows = self.follows(moved)
            ),
            Because::InRange {
                reps,
                low,
                top,
                moved,
            } => say!(
                "{done}: inside {range}, {follows}",
                done = self.done(reps, moved),
                range = range(*low, *top),
                follows = self.follows(moved)
            ),
            Because::StepWaits {
                reps,
                aim,
                last,
                next,
                moved,
                ..
            } => self.step_waits(&self.done(reps, moved), (*aim, *last), *next, moved),
            Because::BelowRange {
                reps,
                low,
                top,
                moved,
            } => say!(
                "{done}: below {range}, {follows}",
                done = self.done(reps, moved),
                range = range(*low, *top),
                follows = self.follows(moved)
            ),
            Because::TwoOverTwice { reps, goal, moved } => say!(
                "{done} in the last sets: two over {goal} twice running, {follows}",
                done = self.done(reps, moved),
                goal,
                follows = self.follows(moved)
            ),
            Because::NotTwiceYet { reps, goal, moved } => {
                self.not_twice_yet(&self.done(&[*reps], moved), *reps, *goal, moved)
            }
            Because::AllDone { moved } => say!(
                "every rep done {at}: {follows}",
                at = self.lifted(moved),
                follows = self.follows(moved)
            ),
            Because::NotAllDone { moved } => say!(
                "not every rep done {at}: {follows}",
                at = self.lifted(moved),
                follows = self.follows(moved)
            ),
            Because::CutShort {
                done,
                planned,
                moved,
            } => say!(
                "{done} of {planned} work sets done {at}: {follows}",
                done,
                planned,
                at = self.lifted(moved),
                follows = self.follows(moved)
            ),
            Because::NoEstimate { moved } => {
                say!(
                    "no estimate of the maximum yet: {follows}",
                    follows = self.follows(moved)
                )
            }
            Because::BodyMassUnknown { moved } => {
                format!("{}: {}", body_unknown(), self.follows(moved))
            }
            Because::MoreInReserve {
                reserve,
                aim,
                moved,
            } => say!(
                "{reserve} left {at}, {aim} aimed at: {follows}",
                reserve,
                at = self.lifted(moved),
                aim,
                follows = self.follows(moved)
            ),
            Because::AsAimed { reserve, moved } => say!(
                "{reserve} left {at}, as aimed at: {follows}",
                reserve,
                at = self.lifted(moved),
                follows = self.follows(moved)
            ),
            Because::LessInReserve {
                reserve,
                aim,
                moved,
            } => say!(
                "only {reserve} left {at}, {aim} aimed at: {follows}",
                reserve,
                at = self.lifted(moved),
                aim,
                follows = self.follows(moved)
            ),
            Because::NoReserveSaid { moved } => say!(
                "no reps in reserve were said {at}: {follows}",
                at = self.lifted(moved),
                follows = self.follows(moved)
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
            say!("light week: {load} as usual", load = usual_said)
        } else if to > usual {
            say!(
                "light week: more assistance than {usual}, {load}",
                usual = usual_said,
                load = self.load(to)
            )
        } else {
            let of = say!("light week: {share} of {load}", share, load = usual_said);
            self.share(&of, usual.times(share.factor()), to)
        }
    }

    pub(super) fn out_of_kit(self, wanted: Load) -> String {
        say!("the kit makes nothing for {load}", load = self.told(wanted))
    }
}

#[cfg(test)]
#[path = "words_tests.rs"]
mod tests;
