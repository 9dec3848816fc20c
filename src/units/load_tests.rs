//! Loads as they are typed, stored, compared and reckoned with.

use super::*;

#[test]
fn a_load_is_read_and_written_as_typed() {
    let load: Load = "82.5 kg".parse().unwrap();
    assert_eq!(load.to_string(), "82.5 kg");
    assert_eq!(Load::parse_in("82,5", Unit::Kg).unwrap(), load);
    assert_eq!("45lb".parse::<Load>().unwrap().to_string(), "45 lb");
}

#[test]
fn a_typed_load_may_bear_its_unit() {
    let read = |text: &str| Load::parse_in(text, Unit::Lb).unwrap().plain();
    assert_eq!(read("65"), "65 lb");
    assert_eq!(read("65 kg"), "65 kg");
    assert_eq!(read(" 62,5KG "), "62.5 kg");
    assert_eq!(read("45 lbs"), "45 lb");
    // A field takes what it shows.
    let shown = Load::parse_in("62.5", Unit::Kg).unwrap().to_string();
    assert_eq!(read(&shown), "62.5 kg");
    for unfit in ["kg", "5 stone", "5 kg kg", "5 kg 2"] {
        let said = Load::parse_in(unfit, Unit::Kg).unwrap_err().to_string();
        assert!(said.contains("is no plain number"), "{unfit}: {said}");
    }
    // What is stored bears one unit, in small letters.
    assert!("5 kg kg".parse::<Load>().is_err());
    assert!("5 KG".parse::<Load>().is_err());
    assert!("5 lbs".parse::<Load>().is_err());
}

#[test]
fn what_is_no_load_is_refused_with_a_sentence() {
    let said = |text: &str| text.parse::<Load>().unwrap_err().to_string();
    assert!(said("-5 kg").contains("below zero"));
    assert!(said("5 stone").contains("write kg or lb"));
    assert!(said("1e3 kg").contains("is no plain number"));
    assert!(said("+5 kg").contains("is no plain number"));
    let none = Load::parse_in(" ", Unit::Kg).unwrap_err().to_string();
    assert_eq!(none, "a number is missing: write one like 82.5");
    assert!("5.0000000000000000000".parse::<Load>().is_err());
    assert!(said("82.5000000000000000000 kg").contains("is no plain number"));
    assert!(said("99999999999999999999999999999 kg").contains("is no plain number"));
    assert!(said("2001 kg").contains("too heavy"));
    assert!(said("4500 lb").contains("too heavy"));
    assert!(said("1.0000000001 kg").contains("digits after the point"));
}

#[test]
fn equal_masses_are_equal_loads_whatever_the_unit() {
    assert_eq!("20 kg".parse::<Load>().unwrap(), "20.0 kg".parse().unwrap());
    assert_eq!(
        "45 lb".parse::<Load>().unwrap(),
        "20.41165665 kg".parse().unwrap()
    );
    assert!("45 lb".parse::<Load>().unwrap() > Load::whole_kg(20));
}

#[test]
fn arithmetic_stays_in_range() {
    let heavy = Load::whole_kg(1900);
    assert_eq!(heavy.plus(heavy), Load::whole_kg(2000));
    assert_eq!(Load::whole_kg(10).minus(heavy), Load::ZERO);
    assert_eq!(heavy.times(Decimal::from(9)), Load::whole_kg(2000));
}
