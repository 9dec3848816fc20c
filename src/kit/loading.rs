//! The plates on a bar, and what to change from one loading to the next.

use super::side::Side;
use crate::sheet::Line;
use crate::units::{Load, Unit};
use std::fmt;

/// A bar or handle with its plates.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Loading {
    /// Name of the bar; none for a handle.
    pub bar: Option<Line>,
    /// Mass of the empty bar or handle.
    pub empty: Load,
    /// Plates of one side, heaviest first, which is the order from the inside out. Both sides are alike.
    pub per_side: Vec<Load>,
    /// Unit on display: plates typed in it are shown bare.
    pub unit: Unit,
}

impl fmt::Display for Loading {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.per_side.is_empty() {
            return match &self.bar {
                Some(_) => f.write_str("empty bar"),
                None => f.write_str("empty handle"),
            };
        }
        write!(f, "{} a side", listed(&self.per_side, self.unit))
    }
}

/// What to take off and put on at each side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// The bar to change to first, where it is another one; all plates then move.
    pub bar: Option<Line>,
    /// Plates that come off each side, heaviest first.
    pub off: Vec<Load>,
    /// Plates that go onto each side, heaviest first.
    pub on: Vec<Load>,
    /// Unit on display: plates typed in it are shown bare.
    pub unit: Unit,
}

/// What to change at each side from one loading to the next; plates that both have stay on.
#[must_use]
pub fn change(from: &Loading, to: &Loading) -> Change {
    if from.bar != to.bar || from.empty != to.empty {
        return Change {
            bar: to.bar.clone(),
            off: from.per_side.clone(),
            on: to.per_side.clone(),
            unit: to.unit,
        };
    }
    Change {
        bar: None,
        off: without(&from.per_side, &to.per_side),
        on: without(&to.per_side, &from.per_side),
        unit: to.unit,
    }
}

/// `plates` less those of `kept`, each as often as it is there.
fn without(plates: &[Load], kept: &[Load]) -> Vec<Load> {
    let mut kept = kept.to_vec();
    plates
        .iter()
        .filter(|&plate| match kept.iter().position(|k| k == plate) {
            Some(at) => {
                kept.swap_remove(at);
                false
            }
            None => true,
        })
        .copied()
        .collect()
}

fn listed(plates: &[Load], unit: Unit) -> String {
    let figures: Vec<String> = plates
        .iter()
        .map(|&plate| Side::figure(plate, unit))
        .collect();
    figures.join(" + ")
}

impl fmt::Display for Change {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let on = listed(&self.on, self.unit);
        if let Some(bar) = &self.bar {
            return match self.on[..] {
                [] => write!(f, "change to {bar}, empty"),
                _ => write!(f, "change to {bar}, each side: {on}"),
            };
        }
        let off = listed(&self.off, self.unit);
        match (&self.off[..], &self.on[..]) {
            ([], []) => f.write_str("same as before"),
            ([], _) => write!(f, "each side: add {on}"),
            (_, []) => write!(f, "each side: take off {off}"),
            _ => write!(f, "each side: swap {off} for {on}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn loaded(bar: &str, plates: &[&str]) -> Loading {
        Loading {
            bar: Some(Line::new(bar).unwrap()),
            empty: Load::whole_kg(20),
            per_side: plates.iter().map(|p| p.parse().unwrap()).collect(),
            unit: Unit::Kg,
        }
    }

    #[test]
    fn a_change_is_said_for_each_side() {
        let said = |from: &[&str], to: &[&str]| {
            change(&loaded("bar", from), &loaded("bar", to)).to_string()
        };
        assert_eq!(
            said(&["20 kg"], &["20 kg", "1.25 kg"]),
            "each side: add 1.25"
        );
        assert_eq!(
            said(&["20 kg", "1.25 kg"], &["20 kg", "2.5 kg"]),
            "each side: swap 1.25 for 2.5"
        );
        assert_eq!(
            said(&["20 kg", "5 kg"], &["20 kg"]),
            "each side: take off 5"
        );
        assert_eq!(said(&["5 kg", "5 kg"], &["5 kg", "5 kg"]), "same as before");
        assert_eq!(said(&["5 kg"], &["5 kg", "5 kg"]), "each side: add 5");
        assert_eq!(
            said(&[], &["45 lb", "1.25 kg"]),
            "each side: add 45 lb + 1.25"
        );
    }

    #[test]
    fn another_bar_is_said() {
        let change = change(
            &loaded("straight bar", &["5 kg"]),
            &loaded("short bar", &["5 kg"]),
        );
        assert_eq!(change.to_string(), "change to short bar, each side: 5");
    }
}
