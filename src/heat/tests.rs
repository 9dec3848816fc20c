//! What typed air, its categories and the stretched rests promise.

use super::*;
use crate::units::Seconds;

fn air(temperature: &str, scale: Scale, humidity: &str) -> Air {
    Air {
        temperature: Temperature::parse(temperature, scale).unwrap(),
        humidity: Humidity::parse(humidity).unwrap(),
    }
}

fn seconds(n: i64) -> Seconds {
    Seconds::new(n).unwrap()
}

#[test]
fn what_is_typed_is_kept_in_its_scale_to_the_tenth() {
    for (typed, scale, kept) in [
        ("35", Scale::Celsius, "35 °C"),
        (" 31,5 ", Scale::Celsius, "31.5 °C"),
        ("0", Scale::Celsius, "0 °C"),
        ("88.0", Scale::Fahrenheit, "88 °F"),
        ("140", Scale::Fahrenheit, "140 °F"),
    ] {
        let read = Temperature::parse(typed, scale).unwrap();
        assert_eq!(read.to_string(), kept);
        assert_eq!(Temperature::try_from(kept.to_owned()), Ok(read));
    }
    assert_eq!(Humidity::parse(" 60 % ").unwrap().get(), 60);
}

#[test]
fn what_is_no_air_is_refused_with_the_range() {
    for typed in ["", "-1", "60.1", "35.25", "warm", ".5", "35.", "9999"] {
        let error = Temperature::parse(typed, Scale::Celsius).unwrap_err();
        assert!(error.to_string().contains("from 0 to 60 °C"), "{typed}");
    }
    assert!(Temperature::parse("31.9", Scale::Fahrenheit).is_err());
    for typed in ["", "101", "-1", "60.5"] {
        let error = Humidity::parse(typed).unwrap_err();
        assert!(error.to_string().contains("0 to 100 percent"), "{typed}");
    }
    for kept in ["35", "35°C", "035 °C", "35.0 °C", "61 °C", "35 K"] {
        assert!(Temperature::try_from(kept.to_owned()).is_err(), "{kept}");
    }
}

#[test]
fn both_scales_give_one_index() {
    let celsius = heat_index(air("35", Scale::Celsius, "60"));
    assert_eq!(celsius, heat_index(air("95", Scale::Fahrenheit, "60")));
    assert_eq!(celsius.shown(Scale::Fahrenheit), "113 °F");
    assert_eq!(celsius.shown(Scale::Celsius), "45 °C");
}

#[test]
fn beyond_the_chart_no_figure_is_made_up() {
    let index = heat_index(air("60", Scale::Celsius, "100"));
    assert_eq!(index.shown(Scale::Fahrenheit), "over 136 °F");
    assert_eq!(index.shown(Scale::Celsius), "over 58 °C");
    assert_eq!(Category::of(index), Category::ExtremeDanger);
}

#[test]
fn the_largest_value_of_the_chart_is_still_a_figure() {
    // 110 °F at 40 % is the last cell of the row, 136 (National Weather Service chart, published).
    let index = heat_index(air("110", Scale::Fahrenheit, "40"));
    assert_eq!(index.shown(Scale::Fahrenheit), "136 °F");
}

#[test]
fn every_heat_that_asks_for_something_says_what_and_who_goes_before() {
    let hot = [
        (Category::Caution, "caution"),
        (Category::ExtremeCaution, "extreme caution"),
        (Category::Danger, "danger"),
        (Category::ExtremeDanger, "extreme danger"),
    ];
    for (category, name) in hot {
        // The public names (National Weather Service, published).
        assert_eq!(category.name(), name);
        let brief = category.brief().unwrap();
        assert!(brief.starts_with(&format!("Heat, {name}:")), "{brief}");
        assert!(category.advice().contains("physician"), "{name}");
    }
    assert_eq!(Category::None.brief(), None);
    assert!(grip_words().contains("put the load down"));
}

#[test]
fn rests_grow_with_the_heat_to_whole_five_seconds() {
    for (category, rest) in [
        (Category::None, 132),
        (Category::Caution, 150),
        (Category::ExtremeCaution, 165),
        (Category::Danger, 200),
        (Category::ExtremeDanger, 200),
    ] {
        assert_eq!(category.stretched(seconds(132)), seconds(rest));
        assert_eq!(category.stretched(seconds(0)), seconds(0));
    }
    assert_eq!(Category::Danger.stretched(Seconds::MAX), Seconds::MAX);
    assert_eq!(Category::None.because(seconds(90)), None);
    assert_eq!(
        Category::ExtremeCaution.because(seconds(165)).unwrap(),
        "rest 2:45: a quarter longer in the heat"
    );
    assert_eq!(
        Category::Danger.because(seconds(180)).unwrap(),
        "rest 3:00: half as long again in the heat"
    );
}
