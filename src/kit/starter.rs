//! A plausible garage to start from; the person edits it.

use super::parts::{Bar, KitParts, PlatePairs};
use super::reach::Kit;
use crate::sheet::Line;
use crate::units::{Load, Unit};
use crate::words::t;

/// One bar and a modest set of plates; every step from the empty bar to the fullest can be made.
const PLATES_KG: [(&str, u8); 6] = [
    ("20", 2),
    ("15", 1),
    ("10", 1),
    ("5", 2),
    ("2.5", 1),
    ("1.25", 1),
];
const PLATES_LB: [(&str, u8); 6] = [
    ("45", 2),
    ("35", 1),
    ("25", 1),
    ("10", 2),
    ("5", 1),
    ("2.5", 1),
];
const DUMBBELLS_KG: [&str; 8] = ["4", "6", "8", "10", "12.5", "15", "17.5", "20"];
const DUMBBELLS_LB: [&str; 8] = ["10", "15", "20", "25", "30", "35", "40", "45"];

impl Kit {
    /// A plausible garage in `unit`: a 20-kg or 45-lb bar, a limited set of plates, a few dumbbells and bands.
    #[must_use]
    pub fn starter(unit: Unit) -> Kit {
        let (bar, plates, dumbbells, step) = match unit {
            Unit::Kg => ("20", PLATES_KG, DUMBBELLS_KG, "1.25"),
            Unit::Lb => ("45", PLATES_LB, DUMBBELLS_LB, "2.5"),
        };
        let load = |text: &str| Load::parse_in(text, unit).expect("a written load is in range");
        let line = |text: &str| Line::new(text).expect("a written line is fit");
        let parts = KitParts {
            unit,
            bars: vec![Bar {
                name: line(t("straight bar")),
                mass: load(bar),
                collars: None,
            }],
            plates: plates
                .iter()
                .map(|&(mass, pairs)| PlatePairs {
                    mass: load(mass),
                    pairs,
                })
                .collect(),
            dumbbells: dumbbells.iter().map(|mass| load(mass)).collect(),
            handles: None,
            stacks: Vec::new(),
            bands: [t("light band"), t("middle band"), t("strong band")]
                .map(line)
                .to_vec(),
            smallest_step: load(step),
        };
        Kit::new(parts).expect("the starter kit is fit")
    }
}
