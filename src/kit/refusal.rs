//! What is said of a load that the kit cannot make: the two nearest that it makes.

use super::reach::Kit;
use crate::say;
use crate::sheet::{Equipment, Line, is_same_band};
use crate::units::{Load, Unit};
use crate::words::t;
use std::fmt;

/// A load that the kit cannot make, with the nearest that it makes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotLoadable {
    /// The load.
    pub wanted: Load,
    /// The heaviest lighter one; none where there is none.
    pub below: Option<Load>,
    /// The lightest heavier one; none where there is none.
    pub above: Option<Load>,
    /// On what.
    pub equipment: Equipment,
    /// True where there are loadable handles: they stand in for dumbbells where an exercise asks for them.
    pub handles: bool,
    /// Unit on display.
    pub unit: Unit,
}

impl Kit {
    /// What to say of `load` where the kit cannot make it; none where it can, and for bands, which have no loads.
    #[must_use]
    pub fn not_loadable(&self, equipment: Equipment, load: Load) -> Option<NotLoadable> {
        let choices = self.choices(equipment);
        if equipment == Equipment::Band || choices.contains(load) {
            return None;
        }
        Some(NotLoadable {
            wanted: load,
            below: choices.next_below(load),
            above: choices.next_above(load),
            equipment,
            handles: self.parts().handles.is_some(),
            unit: self.unit(),
        })
    }

    /// That it has nothing at all to load for `equipment`, in a sentence; none where it has something.
    #[must_use]
    pub fn lacks(&self, equipment: Equipment) -> Option<String> {
        let has = || self.choices(equipment).at_or_above(Load::ZERO).is_some();
        if equipment == Equipment::Band || has() {
            return None;
        }
        if equipment == Equipment::Dumbbell && self.parts().handles.is_some() {
            return Some(
                t("Kit has no dumbbells: where a loadable handle will do, write (handle) behind the exercise in the lines of the sheet.")
                    .to_owned(),
            );
        }
        Some(say!(
            "Nothing can be loaded for it: {nothing} in Kit.",
            nothing = nothing(equipment)
        ))
    }

    /// The band that makes it easiest: the strongest where it `helps`, else the lightest; none where there is none.
    #[must_use]
    pub fn easiest_band(&self, helps: bool) -> Option<&Line> {
        let bands = &self.parts().bands;
        if helps { bands.last() } else { bands.first() }
    }

    /// The next band in order of strength, lighter or heavier than the one of that label; none at the end of the
    /// list, and where the kit has no such band. `light` finds `light band` too.
    #[must_use]
    pub fn band_beside(&self, label: &Line, heavier: bool) -> Option<&Line> {
        let bands = &self.parts().bands;
        let at = bands.iter().position(|band| is_same_band(band, label))?;
        let next = if heavier {
            at.checked_add(1)
        } else {
            at.checked_sub(1)
        };
        bands.get(next?)
    }
}

/// What there is none of.
fn nothing(equipment: Equipment) -> &'static str {
    t(match equipment {
        Equipment::Barbell => "there is no bar",
        Equipment::Handle => "there is no loadable handle",
        Equipment::Dumbbell => "there is no dumbbell",
        Equipment::Stack => "there is no weight stack",
        Equipment::Band | Equipment::Body | Equipment::Other => "there is nothing for it",
    })
}

impl fmt::Display for NotLoadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let wanted = self.wanted;
        let shown = |load: Load| load.shown(self.unit);
        f.write_str(&match (self.below, self.above) {
            (Some(below), Some(above)) => say!(
                "{wanted} can't be loaded: {below} or {above}",
                wanted,
                below = below.figure(self.unit),
                above = shown(above)
            ),
            (Some(below), None) => say!(
                "{wanted} can't be loaded: the heaviest is {load}",
                wanted,
                load = shown(below)
            ),
            (None, Some(above)) => say!(
                "{wanted} can't be loaded: the lightest is {load}",
                wanted,
                load = shown(above)
            ),
            (None, None) if self.handles && self.equipment == Equipment::Dumbbell => say!(
                "{wanted} can't be loaded: Kit has no dumbbells; where a loadable handle will do, write (handle) behind the exercise in the lines of the sheet",
                wanted
            ),
            (None, None) => say!(
                "{wanted} can't be loaded: {nothing} in Kit",
                wanted,
                nothing = nothing(self.equipment)
            ),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kit::{Handle, KitParts, Plan};

    fn edited(edit: impl FnOnce(&mut KitParts)) -> Kit {
        let mut parts = Kit::starter(Unit::Kg).parts().clone();
        edit(&mut parts);
        Kit::new(parts).unwrap()
    }

    /// A kit of so many handles and no dumbbells.
    fn handles(count: u8) -> Kit {
        edited(|parts| {
            parts.dumbbells.clear();
            let mass = "2.3 kg".parse().unwrap();
            parts.handles = Some(Handle { mass, count });
        })
    }

    fn said(kit: &Kit, equipment: Equipment, load: &str) -> String {
        let told = kit.not_loadable(equipment, load.parse().unwrap());
        told.map_or("fine".to_owned(), |told| told.to_string())
    }

    fn planned(kit: &Kit, load: &str) -> Plan {
        kit.plan(Equipment::Barbell, None, &[load.parse().unwrap()])
    }

    #[test]
    fn the_two_nearest_are_said() {
        let kit = Kit::starter(Unit::Kg);
        let on_bar = |load| said(&kit, Equipment::Barbell, load);
        assert_eq!(on_bar("62.5 kg"), "fine");
        assert_eq!(on_bar("61 kg"), "61 kg can't be loaded: 60 or 62.5 kg");
        assert_eq!(
            said(&kit, Equipment::Dumbbell, "11 kg"),
            "11 kg can't be loaded: 10 or 12.5 kg"
        );
        assert_eq!(
            said(&kit, Equipment::Body, "1 kg"),
            "1 kg can't be loaded: 0 or 1.25 kg"
        );
        // Of a stone or a sandbag the kit knows nothing.
        assert_eq!(said(&kit, Equipment::Other, "1 kg"), "fine");
        assert_eq!(said(&kit, Equipment::Band, "1 kg"), "fine");
    }

    #[test]
    fn no_plates_and_a_bar_too_heavy_leave_the_empty_bar() {
        let kit = edited(|parts| parts.plates.clear());
        let on_bar = |load| said(&kit, Equipment::Barbell, load);
        assert_eq!(on_bar("20 kg"), "fine");
        assert_eq!(
            on_bar("60 kg"),
            "60 kg can't be loaded: the heaviest is 20 kg"
        );
        assert_eq!(
            on_bar("15 kg"),
            "15 kg can't be loaded: the lightest is 20 kg"
        );
        assert_eq!(planned(&kit, "60 kg").loadings, [None]);
        assert_eq!(planned(&kit, "15 kg").loadings, [None]);
        let empty = planned(&kit, "20 kg").loadings[0].clone().unwrap();
        assert_eq!(empty.to_string(), "empty bar");
    }

    #[test]
    fn without_a_bar_nothing_is_loaded() {
        let kit = edited(|parts| {
            parts.bars.clear();
            parts.dumbbells.clear();
        });
        for (equipment, why) in [
            (Equipment::Barbell, "there is no bar in Kit"),
            (Equipment::Handle, "there is no loadable handle in Kit"),
            (Equipment::Dumbbell, "there is no dumbbell in Kit"),
            (Equipment::Stack, "there is no weight stack in Kit"),
        ] {
            let told = said(&kit, equipment, "60 kg");
            assert_eq!(told, format!("60 kg can't be loaded: {why}"));
        }
        assert_eq!(planned(&kit, "60 kg").loadings, [None]);
        assert_eq!(planned(&kit, "60 kg").moved, 0);
    }

    #[test]
    fn handles_are_no_dumbbells_until_an_exercise_asks_for_them() {
        for count in [1, 2] {
            let kit = handles(count);
            assert_eq!(
                said(&kit, Equipment::Dumbbell, "7.3 kg"),
                "7.3 kg can't be loaded: Kit has no dumbbells; where a loadable handle will do, write (handle) behind the \
                 exercise in the lines of the sheet"
            );
            let lacks = kit.lacks(Equipment::Dumbbell).unwrap();
            assert!(
                lacks.contains("write (handle) behind the exercise"),
                "{lacks}"
            );
            assert_eq!(kit.lacks(Equipment::Handle), None, "it can be loaded");
        }
    }

    #[test]
    fn what_a_kit_lacks_is_said_before_a_load_is_wanted() {
        let kit = edited(|parts| {
            parts.bars.clear();
            parts.bands.clear();
        });
        let said = kit.lacks(Equipment::Barbell);
        assert_eq!(
            said.as_deref(),
            Some("Nothing can be loaded for it: there is no bar in Kit.")
        );
        for there in [Equipment::Dumbbell, Equipment::Other, Equipment::Band] {
            assert_eq!(kit.lacks(there), None, "{there:?}");
        }
    }

    #[test]
    fn bands_have_an_order_and_no_loads() {
        let kit = Kit::starter(Unit::Kg);
        let beside = |label: &str, heavier| {
            let label = Line::new(label).unwrap();
            kit.band_beside(&label, heavier).map(Line::to_string)
        };
        assert_eq!(beside("middle band", false).unwrap(), "light band");
        assert_eq!(beside("Middle", true).unwrap(), "strong band");
        assert_eq!(beside("light", false), None);
        assert_eq!(beside("strong band", true), None);
        assert_eq!(beside("rope", true), None);
    }
}
