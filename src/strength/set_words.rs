//! The words of the reasons for the load of one set.

use super::load_words::Words;
use super::set_because::{OutcomeStep, SetBecause, ShareOf};
use super::turn_words::body_unknown;
use super::words::range;
use crate::say;
use crate::sheet::LoadBasis;
use crate::units::{Share, Unit};
use crate::words::{many_of, t};
use std::fmt;

impl SetBecause {
    /// The sentence, its loads in the unit on display and on the block's basis.
    #[must_use]
    pub fn said(&self, unit: Unit, basis: &LoadBasis) -> String {
        Words::of(unit, basis).set(self)
    }
}

impl fmt::Display for SetBecause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&Words::PLAIN.set(self))
    }
}

impl Words<'_> {
    fn set(self, because: &SetBecause) -> String {
        match because {
            SetBecause::NoLoad => t("no load").to_owned(),
            SetBecause::NothingKnown => {
                t("nothing is known yet: choose a load that feels light").to_owned()
            }
            SetBecause::OutOfKit { wanted } => self.out_of_kit(*wanted),
            SetBecause::WorkLoad { to } => say!("work load: {load}", load = self.told(*to)),
            SetBecause::AsDone { at, to } => say!(
                "as in the set before: {load}{fitted}",
                load = self.told(*at),
                fitted = self.fitted(*at, *to)
            ),
            SetBecause::Shared { whole, to, .. } if whole.is_zero() && to.is_zero() => {
                say!("work load: {load}", load = self.told(*to))
            }
            SetBecause::Shared {
                of,
                share,
                whole,
                to,
                on,
            } => {
                let wanted = whole.times(share.factor());
                let whole = self.load(*whole);
                let of = match of {
                    ShareOf::WorkLoad => say!("ramp-up: {share} of {load}", share, load = whole),
                    ShareOf::BackOff => say!("back-off: {share} of {load}", share, load = whole),
                    ShareOf::Drop => say!("drop: {share} of {load}", share, load = whole),
                    ShareOf::Top => of_top(*share, &whole),
                    ShareOf::Base => of_work_load(*share, &whole),
                    ShareOf::InsteadOfE1rm => no_estimate(&of_work_load(*share, &whole)),
                    ShareOf::InsteadOfE1rmTop => no_estimate(&of_top(*share, &whole)),
                    ShareOf::E1rm => say!(
                        "{share} of the estimated maximum {load}",
                        share,
                        load = whole
                    ),
                };
                // The other sets keep to the bar of the work load: a lighter one may stand beside it.
                if *to > wanted {
                    return self.lightest(&of, *on, *to);
                }
                self.share(&of, wanted, *to)
            }
            SetBecause::ShareWithBody(taken) => self.with_body(taken),
            SetBecause::MoreAssistance { from, to } if from == to => {
                say!("same assistance: {load}", load = self.load(*to))
            }
            SetBecause::MoreAssistance { from, to } => say!(
                "easier than {at}: {load}",
                at = self.at(*from),
                load = self.load(*to)
            ),
            SetBecause::Stepped {
                from,
                steps,
                harder,
                to,
            } => {
                let (n, from, load) = (usize::from(*steps), self.load(*from), self.told(*to));
                let places: [(&str, &dyn fmt::Display); 2] = [("from", &from), ("load", &load)];
                if *harder {
                    many_of(
                        n,
                        "planned step harder than {from}: {load}",
                        "{n} planned steps harder than {from}: {load}",
                        &places,
                    )
                } else {
                    many_of(
                        n,
                        "planned step easier than {from}: {load}",
                        "{n} planned steps easier than {from}: {load}",
                        &places,
                    )
                }
            }
            SetBecause::KitEnds { at, heavier } => {
                let load = self.told(*at);
                if *heavier {
                    say!("the kit makes nothing heavier than {load}", load)
                } else {
                    say!("the kit makes nothing lighter than {load}", load)
                }
            }
            SetBecause::Listed { number, wanted, to } => say!(
                "load {number} of the sheet’s list: {load}{fitted}",
                number,
                load = self.told(*wanted),
                fitted = self.fitted(*wanted, *to)
            ),
            SetBecause::Outcome {
                reps,
                low,
                top,
                step,
                to,
            } => {
                // Of a number without width nothing is inside.
                let one = low == top;
                let range = range(*low, *top);
                let to = self.told(*to);
                match step {
                    OutcomeStep::Large if one => say!(
                        "{reps} is more than {range}: large step to {load}",
                        reps,
                        range,
                        load = to
                    ),
                    OutcomeStep::Planned if one => say!(
                        "{reps} done as asked: planned step to {load}",
                        reps,
                        load = to
                    ),
                    OutcomeStep::Large => {
                        say!(
                            "{reps} reaches the top of {range}: large step to {load}",
                            reps,
                            range,
                            load = to
                        )
                    }
                    OutcomeStep::Planned => {
                        say!(
                            "{reps} is inside {range}: planned step to {load}",
                            reps,
                            range,
                            load = to
                        )
                    }
                    OutcomeStep::Stay => say!(
                        "{reps} is below {range}: {load} again",
                        reps,
                        range,
                        load = to
                    ),
                    OutcomeStep::Down => {
                        say!(
                            "{reps} is far below {range}: planned step down to {load}",
                            reps,
                            range,
                            load = to
                        )
                    }
                }
            }
            SetBecause::Guided {
                from,
                reps,
                reserve,
                weighed,
                aim,
                step,
                to,
            } => {
                let said = (*reserve, *weighed, *aim);
                self.guided(*from, *reps, said, *step, *to)
            }
            SetBecause::GuideUnsaid { to } => self.guide_unsaid(*to),
            SetBecause::BodyMassUnknown { to } => {
                say!(
                    "{why}: work load {load}",
                    why = body_unknown(),
                    load = self.load(*to)
                )
            }
            SetBecause::InsteadWithBody { share, whole, to } => no_estimate(&say!(
                "{share} of the body {at}: {to}",
                share,
                at = self.at(*whole),
                to = self.load(*to)
            )),
            SetBecause::NoEstimateAgain { to } => {
                no_estimate(&say!("{load} again", load = self.load(*to)))
            }
            SetBecause::NoEstimate { to } => {
                say!(
                    "no estimate of the maximum yet: work load {load}",
                    load = self.load(*to)
                )
            }
        }
    }
}

fn of_work_load(share: Share, load: &str) -> String {
    say!("{share} of the work load {load}", share, load)
}

fn of_top(share: Share, load: &str) -> String {
    say!("{share} of the heaviest, {load}", share, load)
}

/// What is done while nothing tells the maximum.
fn no_estimate(follows: &str) -> String {
    say!("no estimate of the maximum yet: {follows}", follows)
}
