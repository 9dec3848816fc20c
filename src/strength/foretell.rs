//! What the estimate says of a set before it is done: the reps to be expected with its load, and whether the last weeks
//! support it.

use super::above::{Above, above};
use super::change::plateau;
use super::curves::Curve;
use super::estimate::maximum_said;
use super::history::Performance;
use super::level::{Estimate, RepsAhead, Strength, Support};
use super::system::system_load;
use crate::say;
use crate::sheet::{Block, LoadBasis, RepTarget};
use crate::units::{Load, Unit, day};
use crate::words::t;
use chrono::{DateTime, FixedOffset};

/// What a set is held against: what its exercise's history tells, and the day.
#[derive(Debug, Clone, Copy)]
pub struct Known {
    /// What is known of it after what was done of the exercise.
    pub strength: Option<Strength>,
    /// Body mass of the day, where it is known.
    pub body_mass: Option<Load>,
    /// The day.
    pub now: DateTime<FixedOffset>,
}

/// What the estimate says of a set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foretold {
    /// The estimated maximum of what is moved, the body's share in it.
    pub e1rm: Estimate,
    /// Reps to failure to be expected in one fresh set; none where the load is too light for the curve.
    pub reps: Option<RepsAhead>,
    /// How likely the fewest reps that are asked for come, 0 to 1. A set ends at the top of its range, so more in the muscles
    /// than that is no miss.
    pub reached: f64,
    /// Whether the fewest reps that are asked for are supported.
    pub support: Support,
    /// True where the body is moved too.
    pub with_body: bool,
}

impl Foretold {
    /// What is known of a set of the reps `asked` for with the written `load` on `basis`. None where nothing feeds the
    /// estimate or it is not known what is moved.
    ///
    /// A lower bound says what is within reach, and of nothing that it is beyond it: where all that is known is one, no most
    /// reps are foretold, no fewer than are asked for, and nothing at all of a set that it does not support.
    #[must_use]
    pub fn of(known: &Known, basis: &LoadBasis, load: Load, asked: RepTarget) -> Option<Foretold> {
        let moved = system_load(basis, Some(load), known.body_mass).ok()?;
        let strength = known.strength?.on(known.now);
        let support = strength.supported(moved, asked.low());
        let bound = strength.is_bound();
        if bound && support != Support::Supported {
            return None;
        }
        let ahead = strength.reps_at(moved).ok().map(|ahead| match bound {
            true => RepsAhead {
                low: ahead.low.max(asked.low()),
                high: None,
                ..ahead
            },
            false => ahead,
        });
        Some(Foretold {
            e1rm: strength.e1rm(),
            reps: ahead,
            reached: strength.probability_at_least(moved, asked.low()),
            support,
            with_body: *basis != LoadBasis::External,
        })
    }

    /// The reps in a few words, for the end of the because: `6–9 reps likely`; empty where the load is too light to say.
    #[must_use]
    pub fn reps_said(&self) -> String {
        match self.reps {
            None => String::new(),
            Some(RepsAhead {
                low,
                high: Some(high),
                ..
            }) if low == high => say!("{reps} reps likely", reps = low),
            Some(RepsAhead {
                low,
                high: Some(high),
                ..
            }) => say!("{low}–{high} reps likely", low, high),
            Some(RepsAhead { low, .. }) => say!("{reps} or more reps likely", reps = low),
        }
    }

    /// The estimate with its doubt in one sentence.
    #[must_use]
    pub fn said(&self, unit: Unit) -> String {
        let Estimate { low, middle, high } = self.e1rm;
        let [load, low, high] = [middle, low, high].map(|load| maximum_said(load, unit));
        let said = if self.with_body {
            say!(
                "Estimated maximum {load}, the body in it ({low} to {high} in 8 of 10 cases).",
                load,
                low,
                high
            )
        } else {
            say!(
                "Estimated maximum {load} ({low} to {high} in 8 of 10 cases).",
                load,
                low,
                high
            )
        };
        let reps = self.reps_said();
        if reps.is_empty() {
            return said;
        }
        let tenths = (self.reached * 10.0).round().clamp(0.0, 10.0) as u8;
        let fresh = say!(
            "{reps} in a fresh set; what is asked for comes in about {tenths} of 10.",
            reps,
            tenths
        );
        format!("{said} {fresh}")
    }

    /// A caution where the last weeks do not support the set of that block.
    #[must_use]
    pub fn caution(&self, block: &Block) -> Option<&'static str> {
        (self.support == Support::Beyond).then(|| {
            if above(block) == Some(Above::Bar) {
                t(
                    "Beyond what your last weeks support: less than 1 in 10 that the reps come. Take less, or safety bars or a spotter.",
                )
            } else {
                t(
                    "Beyond what your last weeks support: less than 1 in 10 that the reps come. Take less, or have help at hand.",
                )
            }
        })
    }
}

/// That nothing was gained for weeks, and what may help; none while something was. See [`plateau`].
#[must_use]
pub fn plateau_said<'a>(
    history: impl IntoIterator<Item = &'a Performance> + Clone,
    curve: Curve,
) -> Option<String> {
    let plateau = plateau(history, curve)?;
    Some(say!(
        "No gain to be seen in {sessions} sessions since {day}: a lighter week, other reps or another exercise may help.",
        sessions = plateau.sessions,
        day = day(plateau.since)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::propose::tests::{block, performed};
    use crate::units::{Reps, Rir};
    use chrono::TimeDelta;

    fn kg(text: &str) -> Load {
        text.parse().unwrap()
    }

    fn reps(n: i64) -> Reps {
        Reps::saturating(n)
    }

    /// So many sessions of five reps to failure with 90 kg, three days apart.
    fn history(sessions: i64) -> Vec<Performance> {
        (0..sessions)
            .map(|n| {
                let mut done = performed(&[("90 kg", 5)], (5, 7));
                done.sets[0].reserve = Some(Rir::saturating(0));
                done.at += TimeDelta::days(7 * n);
                done
            })
            .collect()
    }

    fn foretold(history: &[Performance], load: &str, low: i64, top: i64) -> Option<Foretold> {
        let known = Known {
            strength: Strength::of(history, Curve::default()),
            body_mass: None,
            now: history.last()?.at,
        };
        Foretold::of(
            &known,
            &LoadBasis::External,
            kg(load),
            RepTarget::range(reps(low), reps(top)).unwrap(),
        )
    }

    #[test]
    fn the_load_that_was_done_is_supported_and_a_far_heavier_one_is_not() {
        let history = history(4);
        let same = foretold(&history, "90 kg", 4, 6).unwrap();
        assert_eq!(same.support, Support::Supported);
        let squat = block(serde_json::json!({}));
        assert_eq!(same.caution(&squat), None);
        assert!(same.reached > 0.5, "{}", same.reached);
        let ahead = same.reps.unwrap();
        assert!(ahead.low <= reps(5) && ahead.high.is_none_or(|high| high >= reps(5)));
        let heavier = foretold(&history, "110 kg", 5, 7).unwrap();
        assert_eq!(heavier.support, Support::Beyond);
        assert!(heavier.caution(&squat).unwrap().contains("spotter"));
        let row = block(serde_json::json!({
            "exercise": {"id": "row", "name": "Row", "pattern": "pull_across", "equipment": "dumbbell"},
        }));
        let said = heavier.caution(&row).unwrap();
        assert!(said.ends_with("or have help at hand."), "{said}");
    }

    #[test]
    fn a_load_that_is_light_for_its_range_is_sure_to_reach_it() {
        let light = foretold(&history(4), "75 kg", 5, 7).unwrap();
        assert!(light.reached > 0.95, "{}", light.reached);
        let said = light.said(Unit::Kg);
        assert!(
            said.ends_with("what is asked for comes in about 10 of 10."),
            "{said}"
        );
        // The lighter, the surer; a range is reached at its bottom.
        let same = foretold(&history(4), "90 kg", 5, 7).unwrap();
        assert!(same.reached < light.reached);
        assert_eq!(
            same.reached,
            foretold(&history(4), "90 kg", 5, 12).unwrap().reached
        );
    }

    #[test]
    fn the_sentence_names_estimate_interval_and_chance() {
        let said = foretold(&history(4), "90 kg", 5, 7).unwrap().said(Unit::Kg);
        assert!(said.starts_with("Estimated maximum 105 kg ("), "{said}");
        assert!(said.contains("of 10 cases"), "{said}");
        assert!(said.contains("reps likely in a fresh set"), "{said}");
    }

    #[test]
    fn reps_and_chance_are_said_as_they_are() {
        let mut told = foretold(&history(4), "90 kg", 5, 7).unwrap();
        let ahead = |low, high: Option<i64>| {
            Some(RepsAhead {
                low: reps(low),
                middle: reps(low),
                high: high.map(reps),
            })
        };
        told.reached = 0.34;
        for (reps, said) in [
            (ahead(3, Some(3)), "3 reps likely"),
            (ahead(3, Some(5)), "3–5 reps likely"),
            (ahead(9, None), "9 or more reps likely"),
        ] {
            told.reps = reps;
            assert_eq!(told.reps_said(), said);
            let end = format!("{said} in a fresh set; what is asked for comes in about 3 of 10.");
            assert!(told.said(Unit::Kg).ends_with(&end));
        }
    }

    #[test]
    fn nothing_is_said_where_nothing_is_known() {
        assert_eq!(foretold(&[], "90 kg", 5, 7), None);
        let history = history(3);
        let known = Known {
            strength: Strength::of(&history, Curve::default()),
            body_mass: None,
            now: history[0].at,
        };
        let asked = RepTarget::at_least(reps(5)).unwrap();
        let added = Foretold::of(&known, &LoadBasis::BodyMassPlus, kg("5 kg"), asked);
        assert_eq!(added, None);
    }

    /// Ten reps as planned, begun light with nothing said, are no ceiling.
    #[test]
    fn what_only_says_at_least_puts_nothing_beyond_reach() {
        let planned = |load, reps, day| {
            let mut done = performed(&[(load, reps)], (10, 10));
            done.at += TimeDelta::days(day);
            done
        };
        let mut history = vec![planned("4 kg", 10, 0)];
        assert_eq!(foretold(&history, "6 kg", 10, 12), None);
        assert_eq!(foretold(&history, "20 kg", 10, 12), None);
        let lighter = foretold(&history, "4 kg", 8, 10).unwrap();
        assert_eq!(lighter.reps_said(), "8 or more reps likely");
        // As soon as one session tells how near the end was, it is known where that is.
        history.push(planned("6 kg", 10, 3));
        assert_eq!(foretold(&history, "10 kg", 10, 12), None);
        history.push(planned("10 kg", 9, 6));
        let told = foretold(&history, "10 kg", 8, 10).unwrap();
        assert_eq!(told.e1rm.middle, kg("13 kg"));
        assert_eq!(told.support, Support::Supported);
        let beyond = foretold(&history, "16 kg", 10, 12).unwrap();
        assert_eq!(beyond.support, Support::Beyond);
    }

    #[test]
    fn weeks_without_a_gain_are_said() {
        let said = |sessions| plateau_said(&history(sessions), Curve::default());
        assert_eq!(said(4), None);
        assert!(said(14).unwrap().starts_with("No gain to be seen in"));
    }
}
