//! Session load: how hard a session was to the one who did it, times how long; its sum, monotony and strain in a week.
//!
//! Session load = session RPE × minutes, in arbitrary units (Foster et al. 2001, J Strength Cond Res 15(1):109–115).
//! Monotony = mean / standard deviation of the seven daily loads, rest days 0; strain = total × monotony (Foster 1998,
//! Med Sci Sports Exerc 30(7):1164–1168). The source does not say which standard deviation: here it is that of a
//! sample, n − 1.

use crate::units::Rpe;

/// The load of a session: its RPE times its minutes, in arbitrary units.
#[must_use]
pub fn session_load(rpe: Rpe, minutes: u32) -> u32 {
    minutes.saturating_mul(u32::from(rpe.get()))
}

/// The loads of the seven days of a week, Monday first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct DayLoads {
    /// Of each day the sum of its sessions that were rated, in arbitrary units.
    pub days: [u32; 7],
    /// How many sessions were rated.
    pub rated: u32,
    /// How many were not: their load is not known, and in no sum.
    pub unrated: u32,
}

/// How evenly the load lies over the days of a week.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Spread {
    /// Days of the week are still to come: what they bring is not known.
    NotOver,
    /// So many sessions have no session RPE, so the load of their days is not known.
    Unrated(u32),
    /// All seven days had the same load: the standard deviation is 0, and nothing can be divided by it.
    AllEqual,
    /// It is known.
    Known {
        /// Mean of the seven daily loads over their standard deviation (n − 1).
        monotony: f64,
        /// The week's total times the monotony, in arbitrary units.
        strain: f64,
    },
}

impl DayLoads {
    /// Takes a session of that day of the week in, Monday 0.
    pub(super) fn add(&mut self, day: usize, rpe: Option<Rpe>, minutes: u32) {
        match (rpe, self.days.get_mut(day)) {
            (Some(rpe), Some(sum)) => {
                *sum = sum.saturating_add(session_load(rpe, minutes));
                self.rated += 1;
            }
            _ => self.unrated += 1,
        }
    }

    /// The week's total.
    #[must_use]
    pub fn total(&self) -> u32 {
        self.days
            .iter()
            .fold(0, |sum: u32, day| sum.saturating_add(*day))
    }

    /// The week's total; none where a session was not rated, and the total is less than the week was.
    #[must_use]
    pub fn whole(&self) -> Option<u32> {
        (self.unrated == 0).then(|| self.total())
    }

    /// Monotony and strain, or why there is none; `over` says that no day of the week is still to come.
    #[must_use]
    pub fn spread(&self, over: bool) -> Spread {
        if !over {
            return Spread::NotOver;
        }
        if self.unrated > 0 {
            return Spread::Unrated(self.unrated);
        }
        let days = self.days.map(f64::from);
        if self.days.iter().all(|day| *day == self.days[0]) {
            return Spread::AllEqual;
        }
        let total: f64 = days.iter().sum();
        let mean = total / 7.0;
        let squares: f64 = days.iter().map(|day| (day - mean) * (day - mean)).sum();
        let monotony = mean / (squares / 6.0).sqrt();
        Spread::Known {
            monotony,
            strain: total * monotony,
        }
    }
}
