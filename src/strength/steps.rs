//! How large a step is usual, by region of the body and by training.

use super::history::{Performance, last_of_each_session};
use crate::sheet::Pattern;
use crate::units::{Load, Unit};
use rust_decimal::Decimal;

/// How trained the lifter is in an exercise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Training {
    /// Less trained.
    Less,
    /// More trained.
    More,
}

/// So many sessions of an exercise make a lifter more trained in it (common practice, no source).
pub const MORE_TRAINED_AFTER: usize = 24;

impl Training {
    /// By the sessions of the exercise that are known.
    #[must_use]
    pub fn of(history: &[Performance]) -> Training {
        let sessions = last_of_each_session(history).count();
        if sessions < MORE_TRAINED_AFTER {
            Training::Less
        } else {
            Training::More
        }
    }
}

/// The usual steps up, from the least to the most, in `unit`.
///
/// Less trained: upper body 1–2 kg or 2.5–5 lb, lower body 2–4 kg or 5–10 lb; more trained: upper body 2–4 kg or 5–10
/// lb, lower body 4–7 kg or 10–15 lb, of which the latter two may be more (National Strength and Conditioning
/// Association, Essentials of Strength Training and Conditioning; from memory).
#[must_use]
pub fn usual_steps(pattern: Pattern, training: Training, unit: Unit) -> [Load; 2] {
    let (kg, lb) = match (training, pattern.is_lower_body()) {
        (Training::Less, false) => ([1, 2], [25, 50]),
        (Training::Less, true) => ([2, 4], [50, 100]),
        (Training::More, false) => ([2, 4], [50, 100]),
        (Training::More, true) => ([4, 7], [100, 150]),
    };
    match unit {
        Unit::Kg => kg.map(Load::whole_kg),
        Unit::Lb => lb.map(|tenths| {
            Load::new(Decimal::new(tenths, 1), Unit::Lb).expect("a written load is in range")
        }),
    }
}

/// The step up that is suggested: the least of the usual ones, which is the safe side.
#[must_use]
pub fn usual_step(pattern: Pattern, training: Training, unit: Unit) -> Load {
    usual_steps(pattern, training, unit)[0]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::propose::tests::performed;

    #[test]
    fn as_many_sessions_as_are_named_make_more_trained() {
        let mut history = vec![performed(&[("60 kg", 5)], (5, 7)); MORE_TRAINED_AFTER];
        for (n, done) in (1..).zip(&mut history) {
            done.session = uuid::Uuid::from_u128(n);
        }
        assert_eq!(Training::of(&history), Training::More);
        assert_eq!(Training::of(&history[1..]), Training::Less);
        // A second block of a session is no session more.
        history[0].session = history[1].session;
        assert_eq!(Training::of(&history), Training::Less);
    }
}
