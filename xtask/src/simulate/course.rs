//! One lifter through 40 weeks under one rule: every session is proposed, done and judged.

use std::collections::VecDeque;

use chrono::{DateTime, FixedOffset, TimeDelta};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use stanchion::kit::Kit;
use stanchion::ledger::PERFORMANCES_MAX;
use stanchion::sheet::Block;
use stanchion::strength::{
    Curve, PLATEAU_DAYS, Performance, SetResult, Strength, Support, Today, Told, change_since,
    plateau, propose,
};
use stanchion::units::{Load, Reps, Rir, Unit};
use uuid::Uuid;

use super::lifter::{Effort, Lifter, stimulus};
use super::rule::{Rule, SETS};
use super::tally::Tally;
use crate::say::{OrNext, Outcome};

/// Weeks of a course.
pub const WEEKS: u32 = 40;

/// Sessions that must have fed the estimate before it is judged.
const FED_FIRST: usize = 4;

/// How long back a change is asked for, in days.
const CHANGE_DAYS: i64 = 56;

/// A gain of this much or more over the weeks of a plateau makes calling it one wrong.
const GAINED: f64 = 0.02;

/// What is kept along a course.
struct Course<'a> {
    rule: &'a Rule,
    lifter: Lifter,
    block: Block,
    kit: Kit,
    history: VecDeque<Performance>,
    now: DateTime<FixedOffset>,
    /// When, and the true level then.
    truth: Vec<(DateTime<FixedOffset>, f64)>,
    tally: Tally,
}

/// Runs one course; `seed` is the lifter's, and the same under every rule.
pub fn run(rule: &Rule, seed: u64, modesty: f64) -> Outcome<Tally> {
    let mut lifter = Lifter::new(seed, modesty);
    lifter.tells &= rule.asks.is_none();
    let begun = lifter.level();
    let block = rule.block(lifter.first_load())?;
    let now = "2026-01-05T18:00:00+01:00".parse();
    let mut course = Course {
        rule,
        lifter,
        block,
        kit: kit()?,
        history: VecDeque::new(),
        now: now.or_next("the first day", "mend it in xtask/src/simulate/course.rs")?,
        truth: Vec::new(),
        tally: Tally::default(),
    };
    for week in 0..WEEKS {
        course.week(week)?;
    }
    course
        .tally
        .gain
        .add((course.lifter.level() - begun).exp_m1());
    Ok(course.tally)
}

/// Any load by steps of 2.5 kg, so that the kit is not what is tried.
fn kit() -> Outcome<Kit> {
    let mut parts = Kit::starter(Unit::Kg).parts().clone();
    let mend = "mend it in xtask/src/simulate/course.rs";
    parts.smallest_step = "2.5 kg".parse().or_next("the smallest step", mend)?;
    Kit::new(parts).or_next("the kit", mend)
}

impl Course<'_> {
    fn week(&mut self, week: u32) -> Outcome<()> {
        let mut worth = 0.0;
        if self.lifter.misses_week() {
            self.now += TimeDelta::days(7);
        } else {
            for days in [3, 4] {
                self.now += TimeDelta::days(days);
                worth += self.session(days as f64)? / 2.0;
            }
            self.tally.wasted_weeks.count(worth == 0.0);
        }
        self.lifter.week_ends(week, worth);
        if week % 4 == 3 {
            self.judge_change();
        }
        Ok(())
    }

    /// One session; what it was worth, 0 to 1.
    fn session(&mut self, days: f64) -> Outcome<f64> {
        let history = self.history.make_contiguous();
        let load = propose(
            &self.block,
            &Today {
                history,
                kit: &self.kit,
                now: self.now,
                curve: Curve::default(),
                body_mass: None,
            },
        )
        .load;
        let load = load.or(self.block.start).unwrap_or(Load::ZERO);
        let kg = load.kg().to_f64().unwrap_or(0.0);
        let known = Strength::of(&*history, Curve::default())
            .filter(|strength| strength.sessions() >= FED_FIRST)
            .map(|strength| strength.on(self.now));
        let mut day = self.lifter.day(days);
        let mut done = Vec::new();
        let mut worth = 0.0;
        for n in 0..SETS {
            let mut could = 0;
            let effort = self.lifter.set(&mut day, kg, |capacity| {
                could = capacity;
                self.rule.wish(n, capacity)
            });
            if let (0, Some(known)) = (n, &known) {
                self.judge_reps(known, load, could);
            }
            self.tally.missed.count(effort.reps < self.rule.low);
            self.tally.ground.count(effort.left == 0);
            worth += stimulus(effort.left) / f64::from(SETS);
            done.push(self.result(load, &effort)?);
        }
        self.keep(done);
        self.judge_level();
        Ok(worth)
    }

    fn result(&self, load: Load, effort: &Effort) -> Outcome<SetResult> {
        let reps = |n: u16| Reps::saturating(i64::from(n));
        let told = effort.told.map(|told| Rir::new(i64::from(told)));
        Ok(SetResult {
            stretch: None,
            stages: Vec::new(),
            load: Some(load),
            reps: reps(effort.reps),
            low: reps(self.rule.low),
            top: reps(self.rule.top),
            reserve: told
                .transpose()
                .or_next("a told reserve", "mend it in xtask/src/simulate/lifter.rs")?,
            work: true,
            to_limit: false,
            to_spare: self.rule.asks.is_some(),
            unfed: None,
        })
    }

    fn keep(&mut self, sets: Vec<SetResult>) {
        self.history.push_back(Performance {
            session: Uuid::from_u128(self.truth.len() as u128),
            at: self.now,
            shape: self.block.shape(),
            basis: Some(self.block.basis.clone()),
            body_mass: None,
            left: 0,
            sets,
        });
        // No more than the app keeps of an exercise.
        if self.history.len() > PERFORMANCES_MAX {
            self.history.pop_front();
        }
        self.truth.push((self.now, self.lifter.level()));
    }

    /// Is the true maximum in the interval?
    fn judge_level(&mut self) {
        let history = self.history.make_contiguous();
        let Some(known) = Strength::of(&*history, Curve::default()) else {
            return;
        };
        if known.sessions() < FED_FIRST {
            return;
        }
        let off = (self.lifter.level() - known.level()) / known.variance().sqrt();
        // 80 % of a normal distribution lie within so many standard deviations.
        let inside = off.abs() <= 1.281_551_565_545;
        self.tally.level_inside.count(inside);
        self.tally.level_above.count(off > 1.281_551_565_545);
        if self.lifter.tells {
            self.tally.level_inside_told.count(inside);
        } else {
            self.tally.level_inside_untold.count(inside);
        }
        self.tally
            .level_error
            .add(known.level() - self.lifter.level());
        self.tally.level_spread.add(known.variance().sqrt());
    }

    /// Are the reps of the first set, had it gone to failure, as foretold?
    fn judge_reps(&mut self, known: &Strength, load: Load, could: u16) {
        let reps = |n: u16| Reps::saturating(i64::from(n));
        let (low, high) = (reps(self.rule.low), reps(self.rule.low + 2));
        if let Ok(ahead) = known.reps_at(load) {
            let below = ahead.high.is_none_or(|high| could <= high.get());
            self.tally
                .reps_inside
                .count(could >= ahead.low.get() && below);
            let chance = known.probability_in_range(load, low, high);
            let hit = (low.get()..=high.get()).contains(&could);
            self.tally.in_range(chance, hit);
        }
        // A load a tenth heavier, as a lifter in a hurry would choose it.
        let heavier = load.times(Decimal::new(11, 1));
        let asked = reps(self.rule.low);
        let day = self.lifter.day(0.0);
        let kg = heavier.kg().to_f64().unwrap_or(0.0);
        let could = self.lifter.capacity(&day, kg);
        if known.supported(heavier, asked) == Support::Beyond {
            self.tally.beyond_done.count(could >= self.rule.low);
        }
    }

    /// Is a change that is told one, and a plateau that is called one?
    fn judge_change(&mut self) {
        let at = |truth: &[(DateTime<FixedOffset>, f64)], since| {
            truth
                .iter()
                .rfind(|(at, _)| *at <= since)
                .map(|known| known.1)
        };
        let now = self.lifter.level();
        let history = self.history.make_contiguous();
        let since = self.now - TimeDelta::days(CHANGE_DAYS);
        if let (Some(change), Some(then)) = (
            change_since(&*history, Curve::default(), since),
            at(&self.truth, since),
        ) {
            self.tally.told_up.count(change.told == Told::Up);
            if change.told == Told::Up {
                self.tally.told_up_right.count(now > then);
            }
        }
        let called = plateau(&*history, Curve::default()).is_some();
        let since = self.now - TimeDelta::days(PLATEAU_DAYS);
        if self.truth.len() < PERFORMANCES_MAX {
            return;
        }
        if let Some(then) = at(&self.truth, since) {
            if (now - then).exp_m1() >= GAINED {
                self.tally.plateau_while_gaining.count(called);
            } else {
                self.tally.plateau_while_flat.count(called);
            }
        }
    }
}
