//! The estimated one-repetition maximum from what was done lately.

use super::curves::epley;
use super::history::{Performance, SetResult};
use crate::units::{Load, Reps, Rir};

/// Most reps in reserve with which a set still counts as near failure.
///
/// Reserve is told about a rep off at 0–5 left (Hackett et al. 2017, J Strength Cond Res 31(8):2162–2168); 3 keeps a
/// margin (common practice, no source).
pub const ESTIMATE_RESERVE_MAX: u8 = 3;

/// How many sessions back the estimate looks (common practice, no source).
pub const ESTIMATE_SESSIONS: usize = 6;

/// The best estimate of the newest sessions, newest last, of work sets near failure; none where there is none.
///
/// The reserve counts as reps that could have been done (common practice, no source). A set without a said reserve
/// counts as done to failure, so the estimate errs to the low side. Only sound for loads that are moved alone: of
/// loads added to the body, the body's mass is missing.
#[must_use]
pub fn best_e1rm(history: &[Performance]) -> Option<Load> {
    let recent = history.iter().rev().take(ESTIMATE_SESSIONS);
    recent
        .flat_map(|performance| &performance.sets)
        .filter_map(of_set)
        .max()
}

fn of_set(set: &SetResult) -> Option<Load> {
    let reserve = set.reserve.map_or(0, Rir::get);
    // A missed set has no reps in it to estimate from, a cluster more than could be done in one go.
    if !set.work || set.unfed.is_some() || reserve > ESTIMATE_RESERVE_MAX || set.reps.get() == 0 {
        return None;
    }
    let reps = Reps::saturating(i64::from(set.reps.get()) + i64::from(reserve));
    epley(set.load?, reps).ok().filter(|e1rm| !e1rm.is_zero())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::propose::tests::performed;

    fn reserved(load: &str, reps: u16, reserve: Option<i64>) -> Performance {
        let mut performance = performed(&[(load, reps)], (5, 7));
        performance.sets[0].reserve = reserve.map(|r| Rir::new(r).unwrap());
        performance
    }

    #[test]
    fn reserve_counts_as_reps_and_far_from_failure_counts_not() {
        let best = |reserve| best_e1rm(&[reserved("90 kg", 5, reserve)]);
        assert_eq!(best(None), Some("105 kg".parse().unwrap()));
        assert_eq!(best(Some(2)), Some("111 kg".parse().unwrap()));
        assert_eq!(best(Some(4)), None);
    }

    #[test]
    fn the_best_of_the_newest_sessions_counts() {
        let mut history = vec![reserved("200 kg", 5, None)];
        history.extend((0..ESTIMATE_SESSIONS).map(|_| reserved("90 kg", 5, None)));
        assert_eq!(best_e1rm(&history), Some("105 kg".parse().unwrap()));
        assert_eq!(best_e1rm(&[reserved("60 kg", 30, None)]), None);
    }
}
