//! When a load asks for a word of caution.

use crate::units::Load;
use rust_decimal::Decimal;

/// A load above this multiple of the best so far is a jump.
///
/// The usual step is 2–10 % (American College of Sports Medicine position stand, Ratamess et al. 2009, Med Sci Sports
/// Exerc 41(3):687–708).
const JUMP: Decimal = Decimal::from_parts(110, 0, 0, false, 2);

/// True when `load` is more than 10 % above the heaviest load done so far.
///
/// Without an earlier load, or from no load at all, there is no share to speak of and the answer is no. Not meant for
/// loads that assist.
#[must_use]
pub fn jump_caution(previous_best: Option<Load>, load: Load) -> bool {
    previous_best.is_some_and(|best| !best.is_zero() && load.kg() > best.kg() * JUMP)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_more_than_a_tenth_is_a_jump() {
        let best = Some(Load::whole_kg(100));
        assert!(!jump_caution(best, Load::whole_kg(110)));
        assert!(jump_caution(best, "110.01 kg".parse().unwrap()));
        assert!(!jump_caution(None, Load::whole_kg(110)));
        assert!(!jump_caution(Some(Load::ZERO), Load::whole_kg(5)));
    }
}
