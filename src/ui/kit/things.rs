//! The kinds of things in the garage: how each is named, listed, read from fields and taken away.

use crate::kit::{Bar, Handle, KitParts, PlatePairs, Stack};
use crate::say;
use crate::sheet::is_same_band;
use crate::ui::parts::read_name;
use crate::units::{Load, Unit};
use crate::words::{many, t, t_in};

/// A field: its hook behind that of the kind, and its label.
pub type Field = (&'static str, fn() -> &'static str);

/// A kind of things in the garage.
pub struct Things {
    /// Heading of the list.
    pub title: fn() -> &'static str,
    /// What to know about it; empty for nothing.
    pub hint: fn() -> &'static str,
    /// What opens the fields that make a new one.
    pub new: fn() -> &'static str,
    /// Those fields.
    pub fields: &'static [Field],
    /// The things, each in words.
    pub shown: fn(&KitParts, Unit) -> Vec<String>,
    /// Takes one away, by its place in the list.
    pub remove: fn(&mut KitParts, usize),
    /// Moves one a place up, where the order means something; a place that is not there changes nothing.
    pub raise: Option<fn(&mut KitParts, usize)>,
    /// Adds one, from what was typed into the fields; or says why not.
    pub add: fn(&mut KitParts, &[String], Unit) -> Result<(), String>,
}

/// Bars.
pub const BARS: Things = Things {
    title: || t("Bars"),
    hint: || {
        t(
            "Weigh yours: bars of home gyms differ from what is written on them. Collars that you weighed apart go in as a \
           pair; they are a part of every load.",
        )
    },
    new: || t("Add a bar"),
    fields: &[
        ("name", || t("name")),
        ("mass", || t("mass")),
        ("collars", || t("collars as a pair, if apart")),
    ],
    shown: |kit, unit| {
        let line = |bar: &Bar| {
            let collars = bar.collars;
            let collars = collars.map(|pair| say!(" + collars {mass}", mass = pair.shown(unit)));
            let mass = bar.mass.shown(unit);
            format!("{} · {mass}{}", bar.name, collars.unwrap_or_default())
        };
        kit.bars.iter().map(line).collect()
    },
    remove: |kit, at| take_out(&mut kit.bars, at),
    raise: None,
    add: |kit, typed, unit| {
        let collars = match typed[2].trim() {
            "" => None,
            pair => Some(mass(pair, unit)?),
        };
        kit.bars.push(Bar {
            name: read_name(&typed[0])?,
            mass: mass(&typed[1], unit)?,
            collars,
        });
        Ok(())
    },
};

/// Plates.
pub const PLATES: Things = Things {
    title: || t("Plates, in pairs"),
    hint: || t("Pairs of a mass that is there already are added to it."),
    new: || t("Add a plate"),
    fields: &[("mass", || t("mass of one")), ("pairs", || t("pairs"))],
    shown: |kit, unit| {
        let line = |plate: &PlatePairs| {
            let pairs = many(usize::from(plate.pairs), "{n} pair", "{n} pairs");
            format!("{} · {pairs}", plate.mass.shown(unit))
        };
        kit.plates.iter().map(line).collect()
    },
    remove: |kit, at| take_out(&mut kit.plates, at),
    raise: None,
    add: |kit, typed, unit| {
        let pairs = typed[1].trim().parse().ok();
        let pairs = pairs.filter(|pairs| *pairs > 0).ok_or_else(|| {
            t("pairs are a number from 1 to 20: one plate alone goes on no bar").to_owned()
        })?;
        let mass = mass(&typed[0], unit)?;
        match kit.plates.iter_mut().find(|plate| plate.mass == mass) {
            // More than fit are refused by the kit.
            Some(plate) => plate.pairs = plate.pairs.saturating_add(pairs),
            None => kit.plates.push(PlatePairs { mass, pairs }),
        }
        Ok(())
    },
};

/// Fixed dumbbells and kettlebells.
pub const DUMBBELLS: Things = Things {
    title: || t("Dumbbells and kettlebells"),
    hint: || "",
    new: || t("Add a dumbbell or kettlebell"),
    fields: &[("mass", || t("mass of one"))],
    shown: |kit, unit| {
        let loads = kit.dumbbells.iter();
        loads.map(|load| load.shown(unit)).collect()
    },
    remove: |kit, at| take_out(&mut kit.dumbbells, at),
    raise: None,
    add: |kit, typed, unit| {
        let mass = mass(&typed[0], unit)?;
        if kit.dumbbells.contains(&mass) {
            return Err(say!("{mass} is in the list already", mass));
        }
        kit.dumbbells.push(mass);
        Ok(())
    },
};

/// Loadable handles.
pub const HANDLES: Things = Things {
    title: || t("Loadable handles"),
    hint: || "",
    new: || t("Add a handle"),
    fields: &[
        ("mass", || t("mass of one")),
        ("count", || t_in("handles", "count")),
    ],
    shown: |kit, unit| {
        let handles = kit.handles.iter();
        handles
            .map(|handle| format!("{} × {}", handle.count, handle.mass.shown(unit)))
            .collect()
    },
    remove: |kit, _| kit.handles = None,
    raise: None,
    add: |kit, typed, unit| {
        let count: Option<u8> = typed[1].trim().parse().ok();
        let count = count
            .filter(|count| *count > 0)
            .ok_or_else(|| t("handles are 1 or 2").to_owned())?;
        let mass = mass(&typed[0], unit)?;
        match &mut kit.handles {
            Some(there) if there.mass == mass => there.count = there.count.saturating_add(count),
            Some(there) => {
                return Err(say!(
                    "handles are of one kind: remove those of {mass} first",
                    mass = there.mass
                ));
            }
            None => kit.handles = Some(Handle { mass, count }),
        }
        Ok(())
    },
};

/// Weight stacks.
pub const STACKS: Things = Things {
    title: || t("Weight stacks"),
    hint: || "",
    new: || t("Add a stack"),
    fields: &[
        ("name", || t("name")),
        ("first", || t_in("stack", "first")),
        ("step", || t_in("stack", "step")),
        ("last", || t_in("stack", "last")),
        ("add-ons", || t("add-ons, parted by spaces")),
    ],
    shown: |kit, unit| {
        let line = |stack: &Stack| {
            let add_ons = stack.add_ons.iter();
            let add_ons: String = add_ons
                .map(|one| format!(" + {}", one.figure(unit)))
                .collect();
            say!(
                "{name} · {first} to {last} by {step}{add_ons}",
                name = stack.name,
                first = stack.first.figure(unit),
                last = stack.last.shown(unit),
                step = stack.step.figure(unit),
                add_ons,
            )
        };
        kit.stacks.iter().map(line).collect()
    },
    remove: |kit, at| take_out(&mut kit.stacks, at),
    raise: None,
    add: |kit, typed, unit| {
        kit.stacks.push(Stack {
            name: read_name(&typed[0])?,
            first: mass(&typed[1], unit)?,
            step: mass(&typed[2], unit)?,
            last: mass(&typed[3], unit)?,
            add_ons: masses(&typed[4], unit)?,
        });
        Ok(())
    },
};

/// Bands.
pub const BANDS: Things = Things {
    title: || t("Bands, the lightest first"),
    hint: || t("Only their order counts: no load is worked out from a band."),
    new: || t("Add a band"),
    fields: &[("label", || t("label"))],
    shown: |kit, _| kit.bands.iter().map(ToString::to_string).collect(),
    remove: |kit, at| take_out(&mut kit.bands, at),
    raise: Some(|kit, at| {
        if (1..kit.bands.len()).contains(&at) {
            kit.bands.swap(at - 1, at);
        }
    }),
    add: |kit, typed, _| {
        let label = read_name(&typed[0])?;
        if kit.bands.iter().any(|band| is_same_band(band, &label)) {
            return Err(say!("“{label}” is in the list already", label));
        }
        kit.bands.push(label);
        Ok(())
    },
};

/// Takes one out of a list; a second tap on a row that is already gone takes nothing.
fn take_out<T>(list: &mut Vec<T>, at: usize) {
    if at < list.len() {
        list.remove(at);
    }
}

/// Reads a load that must not be zero.
pub fn mass(text: &str, unit: Unit) -> Result<Load, String> {
    let load = Load::parse_in(text, unit).map_err(|error| error.to_string())?;
    if load.is_zero() {
        Err(t("a mass is above 0").to_owned())
    } else {
        Ok(load)
    }
}

/// Reads masses parted by spaces; a unit behind a space belongs to the number before it.
fn masses(text: &str, unit: Unit) -> Result<Vec<Load>, String> {
    let mut numbers: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match numbers.last_mut() {
            Some(number) if word.starts_with(char::is_alphabetic) => number.push_str(word),
            _ => numbers.push(word.to_owned()),
        }
    }
    numbers.iter().map(|number| mass(number, unit)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kit::Kit;

    #[test]
    fn one_pair_is_no_pairs() {
        let mut kit = Kit::starter(Unit::Kg).parts().clone();
        kit.plates.clear();
        (PLATES.add)(&mut kit, &["20".into(), "1".into()], Unit::Kg).unwrap();
        (PLATES.add)(&mut kit, &["10".into(), "2".into()], Unit::Kg).unwrap();
        assert_eq!(
            (PLATES.shown)(&kit, Unit::Kg),
            ["20 kg · 1 pair", "10 kg · 2 pairs"]
        );
    }

    #[test]
    fn what_is_there_already_is_added_to_or_refused() {
        let mut kit = Kit::starter(Unit::Kg).parts().clone();
        kit.plates.clear();
        kit.dumbbells.clear();
        kit.handles = None;
        let add = |kit: &mut KitParts, things: &Things, typed: &[&str]| {
            let typed: Vec<String> = typed.iter().map(|&one| one.to_owned()).collect();
            (things.add)(kit, &typed, Unit::Kg)
        };
        for pairs in ["2", "1"] {
            add(&mut kit, &PLATES, &["20", pairs]).unwrap();
        }
        assert_eq!((PLATES.shown)(&kit, Unit::Kg), ["20 kg · 3 pairs"]);
        assert!(add(&mut kit, &PLATES, &["20", "0"]).is_err());
        add(&mut kit, &PLATES, &["20", "18"]).unwrap();
        assert!(Kit::new(kit.clone()).is_err(), "21 pairs are too many");

        add(&mut kit, &DUMBBELLS, &["10"]).unwrap();
        let why = add(&mut kit, &DUMBBELLS, &["10"]).unwrap_err();
        assert_eq!(why, "10 kg is in the list already");

        for _ in 0..2 {
            add(&mut kit, &HANDLES, &["2", "1"]).unwrap();
        }
        assert_eq!((HANDLES.shown)(&kit, Unit::Kg), ["2 × 2 kg"]);
        let why = add(&mut kit, &HANDLES, &["2.5", "2"]).unwrap_err();
        assert_eq!(why, "handles are of one kind: remove those of 2 kg first");
    }

    #[test]
    fn a_band_of_a_name_that_is_there_is_refused() {
        let mut kit = Kit::starter(Unit::Kg).parts().clone();
        let before = kit.clone();
        for label in ["light band", "Light"] {
            let why = (BANDS.add)(&mut kit, &[label.into()], Unit::Kg).unwrap_err();
            assert_eq!(why, format!("“{label}” is in the list already"));
        }
        assert_eq!(kit, before);
        (BANDS.add)(&mut kit, &["long band".into()], Unit::Kg).unwrap();
        assert_eq!(kit.bands.len(), before.bands.len() + 1);
    }

    #[test]
    fn add_ons_have_their_units_with_a_space_or_without() {
        let read = |typed: &str| {
            let loads = masses(typed, Unit::Kg)?;
            Ok::<_, String>(loads.iter().map(ToString::to_string).collect::<Vec<_>>())
        };
        assert_eq!(read("1.25 kg"), Ok(vec!["1.25 kg".to_owned()]));
        let both = Ok(vec!["1.25 kg".to_owned(), "5 lb".to_owned()]);
        for typed in ["1.25 5lb", "1,25kg 5 LB", " 1.25  5 lbs "] {
            assert_eq!(read(typed), both, "{typed}");
        }
        assert_eq!(read(""), Ok(Vec::new()));
        assert!(read("1.25 spoons").unwrap_err().contains("1.25spoons"));
        assert!(read("kg 5").is_err());
    }

    #[test]
    fn one_plate_alone_is_refused() {
        let mut kit = Kit::starter(Unit::Kg).parts().clone();
        let before = kit.clone();
        let why = (PLATES.add)(&mut kit, &["20".into(), "0.5".into()], Unit::Kg).unwrap_err();
        assert!(why.contains("one plate alone"), "{why}");
        assert_eq!(kit, before);
    }

    #[test]
    fn collars_weighed_apart_are_a_part_of_the_bar() {
        let mut kit = Kit::starter(Unit::Kg).parts().clone();
        kit.bars.clear();
        let add = |kit: &mut KitParts, typed: [&str; 3]| {
            (BARS.add)(kit, &typed.map(str::to_owned), Unit::Kg)
        };
        add(&mut kit, ["long bar", "20", " "]).unwrap();
        add(&mut kit, ["short bar", "15", "0.6"]).unwrap();
        assert!(add(&mut kit, ["odd bar", "15", "0"]).is_err());
        assert_eq!(
            (BARS.shown)(&kit, Unit::Kg),
            ["long bar · 20 kg", "short bar · 15 kg + collars 0.6 kg"]
        );
    }

    #[test]
    fn a_band_moves_up_by_one_place() {
        let mut kit = Kit::starter(Unit::Kg).parts().clone();
        let raise = BANDS.raise.unwrap();
        raise(&mut kit, 2);
        raise(&mut kit, 0);
        raise(&mut kit, 3);
        assert_eq!(
            (BANDS.shown)(&kit, Unit::Kg),
            ["light band", "strong band", "middle band"]
        );
    }

    #[test]
    fn what_is_gone_is_not_taken_away_twice() {
        let mut kit = Kit::starter(Unit::Kg).parts().clone();
        kit.bars.truncate(1);
        (BARS.remove)(&mut kit, 0);
        (BARS.remove)(&mut kit, 0);
        assert!(kit.bars.is_empty());
    }
}
