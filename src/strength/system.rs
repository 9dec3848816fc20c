//! What is really moved: the written load together with what the body adds to it.

use super::unfed::Unfed;
use crate::sheet::{Block, LoadBasis, LoadPolicy, Progression};
use crate::units::Load;
use crate::words::t;

/// The whole load that a set moves, exactly: share × body mass of that day + external load − assistance.
///
/// Without a body mass only an external load alone can be worked with; there nothing of the body counts. A load that is
/// not written counts as none where the body is moved anyway.
///
/// # Errors
/// [`Unfed`] says why there is none: no load, a band, a body mass that is not known, or an assistance as heavy as the
/// body.
pub fn system_load(
    basis: &LoadBasis,
    load: Option<Load>,
    body_mass: Option<Load>,
) -> Result<Load, Unfed> {
    let body = || body_mass.filter(|mass| !mass.is_zero());
    let body = || body().ok_or(Unfed::BodyMassUnknown);
    let written = load.unwrap_or(Load::ZERO);
    let moved = match basis {
        LoadBasis::External => written,
        LoadBasis::BodyMassPlus => body()?.plus(written),
        LoadBasis::BodyMassMinus => body()?.minus(written),
        LoadBasis::BodyMassShare(share) => body()?.times(share.factor()).plus(written),
        LoadBasis::Band(_) => return Err(Unfed::Band),
        LoadBasis::Unloaded => Load::ZERO,
    };
    if moved.is_zero() {
        Err(Unfed::NoLoad)
    } else {
        Ok(moved)
    }
}

/// What is said where [`lacks_body_mass`] is true.
#[must_use]
pub fn body_mass_words() -> &'static str {
    t(
        "Body mass unknown, so the maximum cannot be estimated: this goes by the written load alone. Give yours in Kit.",
    )
}

/// Whether `block` moves the body and wants the estimate, by its rule or by a line of its sets, while the body mass of the
/// day is not known. What is proposed then goes by the written load alone.
#[must_use]
pub fn lacks_body_mass(block: &Block, body_mass: Option<Load>) -> bool {
    let by_rule = matches!(block.progression, Progression::ShareOfE1rm { .. });
    let by_line = || {
        let mut lines = block.sets.iter();
        lines.any(|sets| matches!(sets.load, LoadPolicy::ShareOfE1rm(_)))
    };
    (by_rule || by_line())
        && system_load(&block.basis, None, body_mass) == Err(Unfed::BodyMassUnknown)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::propose::tests::block;
    use crate::units::Share;
    use serde_json::json;

    fn kg(text: &str) -> Load {
        text.parse().unwrap()
    }

    #[test]
    fn without_a_body_mass_only_what_is_moved_alone_counts() {
        let load = Some(kg("20 kg"));
        let share = LoadBasis::BodyMassShare(Share::percent(64));
        assert_eq!(
            system_load(&LoadBasis::External, load, None),
            Ok(kg("20 kg"))
        );
        for basis in [LoadBasis::BodyMassPlus, LoadBasis::BodyMassMinus, share] {
            assert_eq!(
                system_load(&basis, load, None),
                Err(Unfed::BodyMassUnknown),
                "{basis:?}"
            );
        }
    }

    #[test]
    fn only_who_wants_the_estimate_lacks_a_body_mass() {
        let share = json!({"share_of_e1rm": {"share": "75 %"}});
        let lacks = |basis: &str, rule: &serde_json::Value, mass: Option<&str>| {
            let block = block(json!({"basis": basis, "progression": rule}));
            lacks_body_mass(&block, mass.map(kg))
        };
        assert!(lacks("body_mass_plus", &share, None));
        assert!(lacks("body_mass_minus", &share, None));
        assert!(lacks("body_mass_plus", &share, Some("0 kg")));
        assert!(!lacks("body_mass_plus", &share, Some("80 kg")));
        assert!(!lacks("external", &share, None));
        assert!(!lacks("body_mass_plus", &json!({"double": {}}), None));
        let mut by_line = block(json!({"basis": "body_mass_plus"}));
        assert!(!lacks_body_mass(&by_line, None));
        by_line.sets[0].load = LoadPolicy::ShareOfE1rm(Share::percent(75));
        assert!(lacks_body_mass(&by_line, None));
    }

    #[test]
    fn where_nothing_is_moved_there_is_no_load() {
        let body = Some(kg("80 kg"));
        let none = |basis, load| system_load(basis, load, body);
        assert_eq!(none(&LoadBasis::External, None), Err(Unfed::NoLoad));
        assert_eq!(none(&LoadBasis::Unloaded, None), Err(Unfed::NoLoad));
        let all = Some(kg("80 kg"));
        assert_eq!(none(&LoadBasis::BodyMassMinus, all), Err(Unfed::NoLoad));
        assert_eq!(none(&LoadBasis::BodyMassPlus, None), Ok(kg("80 kg")));
    }
}
