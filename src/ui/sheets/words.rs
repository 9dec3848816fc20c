//! A prescription in words: its lines of sets, and what holds for a block as a whole.

use crate::say;
use crate::sheet::{Block, LoadBasis, LoadPolicy, SetKind, Sets, Step};
use crate::units::Unit;
use crate::words::{decimal, many, t, t_in};
use std::fmt::Display;

/// A figure as the reader writes it.
fn figure(figure: &impl Display) -> String {
    decimal(&figure.to_string())
}

/// Figures one after the other.
fn listed(figures: &[impl Display]) -> String {
    let figures: Vec<String> = figures.iter().map(figure).collect();
    figures.join(", ")
}

/// One line of a prescription in the trade's notation, its loads in the unit on display; `basis` says what they are.
pub fn sets_line(sets: &Sets, basis: &LoadBasis, unit: Unit) -> String {
    let target = sets.target.said();
    let mut line = match sets.kind {
        // Brackets: the reps are those of one portion.
        SetKind::Cluster { portions, .. } => format!("{} × ({portions} × {target})", sets.count),
        _ => format!("{} × {target}", sets.count),
    };
    match &sets.kind {
        SetKind::Work => {}
        SetKind::RampUp { shares } => {
            line = say!("ramp-up {line} at {shares}", line, shares = listed(shares));
        }
        SetKind::BackOff { share } => {
            line = say!(
                "back-off {line} at {share} of the top set",
                line,
                share = figure(share),
            );
        }
        SetKind::Drop { drops, keep } => {
            let drops = many(usize::from(*drops), "{n} drop", "{n} drops");
            let keep = figure(keep);
            line = say!("{line}, then {drops} to {keep}", line, drops, keep);
        }
        SetKind::Cluster { pause, .. } => line = say!("{line}, {pause} s between", line, pause),
        SetKind::ToFailure => line = say!("{line} to technical failure", line),
    }
    match sets.reserve.as_slice() {
        [] => {}
        // To failure none is left anyway.
        [none] if none.get() == 0 && sets.kind == SetKind::ToFailure => {}
        [reserve] => line = say!("{line}, {reserve} in reserve", line, reserve),
        // Said first: behind the reps they would be read as more of them.
        several => {
            let reserves = listed(several);
            line = say!("{line}, in reserve {reserves}", line, reserves);
        }
    }
    let policy = policy_words(&sets.load, basis, unit);
    if !policy.is_empty() {
        line.push_str(&format!(", {policy}"));
    }
    // On a narrow phone the line breaks, and a figure keeps its sign.
    line.replace(" %", "\u{a0}%")
}

/// What holds for a block as a whole, in one line.
pub fn block_head(block: &Block) -> String {
    let mut parts = vec![block.role.name().to_owned()];
    if let Some(tempo) = block.tempo {
        parts.push(say!("tempo {tempo}", tempo));
    }
    parts.extend(block.sides.said().map(str::to_owned));
    match &block.basis {
        LoadBasis::External | LoadBasis::Unloaded => {}
        LoadBasis::BodyMassPlus => parts.push(t("body mass and more").to_owned()),
        LoadBasis::BodyMassMinus => parts.push(t("body mass less assistance").to_owned()),
        LoadBasis::BodyMassShare(share) => {
            parts.push(say!("{share} of body mass", share = figure(share)));
        }
        LoadBasis::Band(_) => parts.extend(block.basis.band()),
    }
    parts.push(if block.rest_after == block.rest {
        say!("rest {time}", time = block.rest.clock())
    } else {
        say!(
            "rest {time} then {after}",
            time = block.rest.clock(),
            after = block.rest_after.clock(),
        )
    });
    parts.join(" · ")
}

/// The rule of a block with the steps that it names; none where it names none and goes by the kit's smallest. A step up is
/// harder: of assistance there is less then.
pub fn rule_line(block: &Block, unit: Unit) -> Option<String> {
    let (rule, assists) = (&block.progression, block.basis.assists());
    let named = rule.steps().map(|step| match step {
        Some(Step::By(load)) => Some(load.shown(unit)),
        Some(Step::Smallest) | None => None,
    });
    let [up, down] = named;
    let mut parts = vec![rule.name().to_owned()];
    parts.extend(up.map(|load| match assists {
        true => say!("{load} less assistance", load),
        false => say!("{load} up", load),
    }));
    parts.extend(down.map(|load| match assists {
        true => say!("{load} more assistance", load),
        false => say!("{load} down", load),
    }));
    let rule = parts.join(", ");
    (parts.len() > 1).then(|| say!("next time: {rule}", rule))
}

/// The policy in words, its loads in the unit on display; none for the same load in every set.
fn policy_words(load: &LoadPolicy, basis: &LoadBasis, unit: Unit) -> String {
    let step = |step: &Step| match step {
        Step::Smallest => t_in("by", "the smallest step").to_owned(),
        Step::By(load) => load.shown(unit),
    };
    match load {
        LoadPolicy::Same => String::new(),
        LoadPolicy::Rising(by) => say!("rising by {step}", step = step(by)),
        LoadPolicy::Falling(by) => say!("falling by {step}", step = step(by)),
        LoadPolicy::List(loads) => {
            let loads = loads.iter().map(|load| basis.shown(*load, unit));
            loads.collect::<Vec<_>>().join(", ")
        }
        LoadPolicy::ShareOfTop(list) => {
            say!("{shares} of the heaviest set", shares = listed(list))
        }
        LoadPolicy::ShareOfE1rm(share) => {
            say!("{share} of the estimated maximum", share = figure(share))
        }
        LoadPolicy::RisingByOutcome { planned, large } => say!(
            "rising by outcome: {planned} in the range, {large} at its top",
            planned = step(planned),
            large = step(large),
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::Progression;
    use crate::sheet::tests::block;
    use crate::units::Load;

    fn sets(text: &str) -> Sets {
        serde_json::from_str(text).expect("a line of sets that is sound")
    }

    #[test]
    fn the_portions_of_a_cluster_stand_with_its_reps() {
        let cluster = sets(
            r#"{"kind": {"cluster": {"portions": 2, "pause": 15}}, "count": 3, "target": {"reps": 4}}"#,
        );
        assert_eq!(
            sets_line(&cluster, &LoadBasis::External, Unit::Kg),
            "3 × (2 × 4), 15 s between"
        );
    }

    #[test]
    fn a_share_does_not_part_from_its_sign() {
        let ramp = sets(
            r#"{"kind": {"ramp_up": {"shares": ["40 %", "60 %"]}}, "count": 2, "target": {"reps": 4}}"#,
        );
        assert_eq!(
            sets_line(&ramp, &LoadBasis::External, Unit::Kg),
            "ramp-up 2 × 4 at 40\u{a0}%, 60\u{a0}%"
        );
    }

    #[test]
    fn reserves_of_several_sets_are_not_read_as_reps() {
        let said = |kind: &str, reserve: &str| {
            let text = format!(
                r#"{{"kind": "{kind}", "count": 3, "target": {{"reps": 5}}, "reserve": {reserve}}}"#
            );
            sets_line(&sets(&text), &LoadBasis::External, Unit::Kg)
        };
        assert_eq!(said("work", "[2, 2, 1]"), "3 × 5, in reserve 2, 2, 1");
        assert_eq!(said("work", "[2]"), "3 × 5, 2 in reserve");
        assert_eq!(said("to_failure", "[0]"), "3 × 5 to technical failure");
    }

    #[test]
    fn loads_of_a_policy_are_in_the_unit_on_display() {
        let said = |load: &str, unit| {
            let text = format!(
                r#"{{"kind": "work", "count": 2, "target": {{"reps": 5}}, "load": {load}}}"#
            );
            sets_line(&sets(&text), &LoadBasis::External, unit)
        };
        let outcome =
            r#"{"rising_by_outcome": {"planned": {"by": "2.5 kg"}, "large": {"by": "5 kg"}}}"#;
        assert_eq!(
            said(outcome, Unit::Lb),
            "2 × 5, rising by outcome: 5.51 lb in the range, 11.02 lb at its top"
        );
        assert_eq!(
            said(r#"{"rising": {"by": "2.5 kg"}}"#, Unit::Lb),
            "2 × 5, rising by 5.51 lb"
        );
        assert_eq!(
            said(r#"{"falling": {"by": "5 lb"}}"#, Unit::Kg),
            "2 × 5, falling by 2.27 kg"
        );
        assert_eq!(
            said(r#"{"list": ["60 kg", "62.5 kg"]}"#, Unit::Kg),
            "2 × 5, 60 kg, 62.5 kg"
        );
    }

    #[test]
    fn a_listed_load_that_hangs_on_the_body_is_no_figure_where_there_is_none() {
        let listed = sets(
            r#"{"kind": "work", "count": 2, "target": {"reps": 5}, "load": {"list": ["0 kg", "5 kg"]}}"#,
        );
        let said = |basis| sets_line(&listed, &basis, Unit::Kg);
        assert_eq!(said(LoadBasis::BodyMassPlus), "2 × 5, nothing added, 5 kg");
        assert_eq!(said(LoadBasis::BodyMassMinus), "2 × 5, no assistance, 5 kg");
        assert_eq!(said(LoadBasis::External), "2 × 5, 0 kg, 5 kg");
    }

    #[test]
    fn a_rule_is_told_where_it_names_a_step() {
        let by = Step::By(Load::whole_kg(5));
        let of = |basis: LoadBasis, rule: Progression| {
            let mut block = block(r#"[{"kind": "work", "count": 2, "target": {"reps": 5}}]"#);
            (block.basis, block.progression) = (basis, rule);
            rule_line(&block, Unit::Kg)
        };
        let said = |rule| of(LoadBasis::External, rule);
        assert_eq!(
            said(Progression::Fixed { up: by }).as_deref(),
            Some("next time: fixed step, 5 kg up")
        );
        let double = Progression::Double {
            reach: crate::sheet::Reach::AllSets,
            up: Step::Smallest,
            down: by,
        };
        assert_eq!(
            said(double.clone()).as_deref(),
            Some("next time: double progression, 5 kg down")
        );
        assert_eq!(said(Progression::default()), None);
        // A step up of one that is held up by assistance is less of that.
        assert_eq!(
            of(LoadBasis::BodyMassMinus, Progression::Fixed { up: by }).as_deref(),
            Some("next time: fixed step, 5 kg less assistance")
        );
        assert_eq!(
            of(LoadBasis::BodyMassMinus, double).as_deref(),
            Some("next time: double progression, 5 kg more assistance")
        );
    }
}
