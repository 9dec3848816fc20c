//! The progression rules that are tried, each with its sheet and what the lifter makes of it.

use serde_json::{Value, json};
use stanchion::sheet::Block;
use uuid::Uuid;

use crate::say::{OrNext, Outcome};

/// How many work sets a session has.
pub const SETS: u16 = 3;

/// A rule under trial.
pub struct Rule {
    /// Its key in the figures.
    pub key: &'static str,
    /// Its name in the report.
    pub name: &'static str,
    /// Fewest reps that are asked for.
    pub low: u16,
    /// Most.
    pub top: u16,
    /// True when the last set goes on as far as one rep before failure.
    pub last_goes_on: bool,
    /// The reserve that the sheet asks for, of a lifter who keeps to it and tells none; none where no sheet asks.
    pub asks: Option<u16>,
    /// What the first load is multiplied with: lighter for more reps.
    pub begins: f64,
    progression: Value,
}

/// All rules, the default first.
pub fn all() -> Vec<Rule> {
    let rule = |key, name, (low, top), progression| Rule {
        key,
        name,
        low,
        top,
        last_goes_on: key == "two_for_two",
        asks: None,
        begins: 1.0,
        progression,
    };
    vec![
        rule(
            "double",
            "double progression",
            (5, 7),
            json!({"double": {}}),
        ),
        rule("two_for_two", "2-for-2", (6, 6), json!({"two_for_two": {}})),
        rule("fixed", "fixed step", (6, 6), json!({"fixed": {}})),
        rule(
            "share_of_e1rm",
            "78 % of e1RM",
            (6, 6),
            json!({"share_of_e1rm": {"share": "78 %"}}),
        ),
        rule(
            "by_reserve",
            "by reserve, aim 2",
            (6, 6),
            json!({"by_reserve": {"aim": 2}}),
        ),
        rule("as_written", "never changed", (6, 6), json!("as_written")),
    ]
}

/// Sheets that ask for two in reserve, kept to by lifters who log with one tap: inside the range of the curve, and beyond it.
pub fn kept_to() -> Vec<Rule> {
    let rule = |key, name, (low, top), begins| Rule {
        key,
        name,
        low,
        top,
        last_goes_on: false,
        asks: Some(2),
        begins,
        progression: json!({"double": {}}),
    };
    vec![
        rule("kept_8_12", "8–12, 2 left asked", (8, 12), 0.9),
        rule("kept_12_15", "12–15, 2 left asked", (12, 15), 0.8),
    ]
}

impl Rule {
    /// The block that a lifter follows, with a load to start from in kilograms.
    pub fn block(&self, start: f64) -> Outcome<Block> {
        let reps = if self.low == self.top {
            json!(self.low)
        } else {
            json!({"from": self.low, "to": self.top})
        };
        let start = start * self.begins;
        let block = json!({
            "id": Uuid::from_u128(1),
            "exercise": {"id": "front-squat", "name": "Front squat", "pattern": "squat", "equipment": "other"},
            "role": "strength",
            "sets": [{"kind": "work", "count": SETS, "target": {"reps": reps}}],
            "basis": "external",
            "start": format!("{start:.1} kg"),
            "rest": 180,
            "rest_after": 180,
            "progression": self.progression,
        });
        serde_json::from_value(block).or_next(
            format!("the sheet of `{}`", self.key),
            "mend the rule in xtask/src/simulate/rule.rs",
        )
    }

    /// How many reps the lifter does in set `n`, from what could be done.
    ///
    /// To the top where that leaves a rep, or as many as are asked for; at least to the bottom where that can be done.
    pub fn wish(&self, n: u16, capacity: u16) -> u16 {
        let spare = capacity.saturating_sub(self.asks.unwrap_or(1));
        if self.last_goes_on && n + 1 == SETS {
            spare.max(self.low)
        } else {
            spare.min(self.top).max(self.low)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_has_its_sheet() {
        for rule in all() {
            let block = rule.block(72.5).unwrap();
            assert_eq!(block.start.unwrap().to_string(), "72.5 kg", "{}", rule.key);
        }
    }

    #[test]
    fn a_lifter_stops_a_rep_short_inside_the_range() {
        let rules = all();
        let wishes = |rule: &Rule, n| [4, 6, 7, 12].map(|capacity| rule.wish(n, capacity));
        assert_eq!(wishes(&rules[0], 0), [5, 5, 6, 7]);
        assert_eq!(wishes(&rules[1], 0), [6, 6, 6, 6]);
        assert_eq!(wishes(&rules[1], 2), [6, 6, 6, 11]);
        assert_eq!(wishes(&kept_to()[0], 0), [8, 8, 8, 10]);
    }
}
