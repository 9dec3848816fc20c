//! The plates on a bar, and what to change from one loading to the next.

use super::mass::{Fine, fine, load_of};
use super::side::Side;
use crate::say;
use crate::sheet::Line;
use crate::units::{Load, Unit};
use crate::words::t;
use std::fmt;

/// A bar or handle with its plates.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Loading {
    /// Name of the bar; none for a handle.
    pub bar: Option<Line>,
    /// Mass of the empty bar or handle.
    pub empty: Load,
    /// Plates of one side from the inside out. Both sides are alike.
    pub per_side: Vec<Load>,
    /// Unit on display: plates typed in it are shown bare.
    pub unit: Unit,
}

impl Loading {
    /// What it weighs, all together.
    #[must_use]
    pub fn load(&self) -> Load {
        load_of(self.mass(fine(self.empty)), self.unit).unwrap_or(self.empty)
    }

    /// Its mass on a bar of that mass.
    pub(super) fn mass(&self, empty: Fine) -> Fine {
        empty + 2 * self.per_side.iter().map(|&plate| fine(plate)).sum::<Fine>()
    }
}

impl fmt::Display for Loading {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.per_side.is_empty() {
            return match &self.bar {
                Some(_) => f.write_str(t("empty bar")),
                None => f.write_str(t("empty handle")),
            };
        }
        f.write_str(&say!(
            "{plates} a side",
            plates = listed(&self.per_side, self.unit)
        ))
    }
}

/// What to take off and put on at each side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// The bar to change to first, where it is another one; all plates then move.
    pub bar: Option<Line>,
    /// Plates that come off each side, in the order they come off: the outermost first.
    pub off: Vec<Load>,
    /// Plates that go onto each side, in the order they go on.
    pub on: Vec<Load>,
    /// Unit on display: plates typed in it are shown bare.
    pub unit: Unit,
}

/// What to change at each side from one loading to the next. A plate comes off only when all outside of it are off.
#[must_use]
pub fn change(from: &Loading, to: &Loading) -> Change {
    let same_bar = from.bar == to.bar && from.empty == to.empty;
    let both = from.per_side.iter().zip(&to.per_side);
    let stays = if same_bar {
        both.take_while(|(a, b)| a == b).count()
    } else {
        0
    };
    Change {
        bar: to.bar.clone().filter(|_| !same_bar),
        off: from.per_side[stays..].iter().rev().copied().collect(),
        on: to.per_side[stays..].to_vec(),
        unit: to.unit,
    }
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
        let (off, on) = (listed(&self.off, self.unit), listed(&self.on, self.unit));
        if let Some(bar) = &self.bar {
            return f.write_str(&match self.on[..] {
                [] => say!("change to {bar}, empty", bar),
                _ => say!("change to {bar}, on {on} each side", bar, on),
            });
        }
        f.write_str(&match (&self.off[..], &self.on[..]) {
            ([], []) => t("same as before").to_owned(),
            ([], _) => say!("+{on} each side", on),
            (_, []) => say!("off {off} each side", off),
            _ => say!("off {off}, on {on} each side", off, on),
        })
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
        assert_eq!(said(&["20 kg"], &["20 kg", "1.25 kg"]), "+1.25 each side");
        assert_eq!(
            said(&["20 kg", "1.25 kg"], &["20 kg", "2.5 kg"]),
            "off 1.25, on 2.5 each side"
        );
        assert_eq!(said(&["20 kg", "5 kg"], &["20 kg"]), "off 5 each side");
        assert_eq!(said(&["5 kg", "5 kg"], &["5 kg", "5 kg"]), "same as before");
        assert_eq!(said(&["5 kg"], &["5 kg", "5 kg"]), "+5 each side");
        assert_eq!(said(&[], &["45 lb", "1.25 kg"]), "+45 lb + 1.25 each side");
    }

    #[test]
    fn a_plate_under_others_comes_off_after_them() {
        let from = loaded("bar", &["20 kg", "5 kg", "2.5 kg"]);
        let to = loaded("bar", &["20 kg", "2.5 kg"]);
        assert_eq!(
            change(&from, &to).to_string(),
            "off 2.5 + 5, on 2.5 each side"
        );
    }

    #[test]
    fn another_bar_is_said() {
        let change = change(
            &loaded("straight bar", &["5 kg"]),
            &loaded("short bar", &["5 kg"]),
        );
        assert_eq!(change.to_string(), "change to short bar, on 5 each side");
    }
}
