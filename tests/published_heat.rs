//! The heat index against the US National Weather Service. P: published; D: derived by hand from the published formula.

use stanchion::heat::{Air, Category, HeatIndex, Humidity, Scale, Temperature, heat_index};

fn index(fahrenheit: &str, humidity: &str) -> HeatIndex {
    heat_index(Air {
        temperature: Temperature::parse(fahrenheit, Scale::Fahrenheit).unwrap(),
        humidity: Humidity::parse(humidity).unwrap(),
    })
}

/// NWS heat index chart, cells without an adjustment (P): air in °F, humidity in percent, index in °F.
#[test]
fn the_cells_of_the_chart() {
    for (air, humidity, cell) in [
        ("80", "40", 80),
        ("84", "60", 88),
        ("88", "75", 103),
        ("90", "65", 103),
        ("92", "70", 112),
        ("96", "65", 121),
        ("100", "40", 109),
        ("110", "40", 136),
    ] {
        assert_eq!(index(air, humidity).whole(), cell, "{air} °F, {humidity} %");
    }
}

/// The chart prints 93 for 90 °F and 45 % (P); the formula of the same service gives 92.49 (D). We follow the formula.
#[test]
fn the_cell_where_chart_and_formula_differ() {
    assert_eq!(index("90", "45").tenths(), 925);
    assert_eq!(index("90", "45").whole(), 93);
}

/// With the adjustments of the NWS for dry and for damp air, which the chart lacks (formula P, values D).
#[test]
fn the_adjustments() {
    for (air, humidity, tenths) in [
        ("95", "10", 894),  // 89.4496
        ("100", "10", 941), // 94.1225
        ("90", "5", 845),   // 84.4517
        ("82", "90", 920),  // 91.9917
        ("85", "95", 1046), // 104.6123
    ] {
        assert_eq!(
            index(air, humidity).tenths(),
            tenths,
            "{air} °F, {humidity} %"
        );
    }
}

/// The simple formula, averaged with the temperature, where that stays below 80 °F (formula P, values D):
/// 70 °F and 50 %: 0.5(70 + 61 + 2.4 + 4.7) = 69.05, averaged 69.525.
#[test]
fn mild_air_has_the_simple_formula() {
    assert_eq!(index("70", "50").tenths(), 695);
    assert_eq!(Category::of(index("70", "50")), Category::None);
}

/// From 80 °F on the regression holds (formula P, values D): at 80.2 °F and 40 % the average is 80 exactly,
/// (0.5(80.2 + 61 + 14.64 + 3.76) + 80.2) / 2, and the regression gives 80.0677.
#[test]
fn where_the_average_is_80_the_regression_holds() {
    assert_eq!(index("80.2", "40").tenths(), 801);
}

/// Bands of the NWS (P): caution 80–90, extreme caution 90–103, danger 103–124, extreme danger from 125 °F.
#[test]
fn the_bands() {
    for (air, humidity, category) in [
        ("78", "40", Category::None),
        ("80", "40", Category::Caution),        // 80
        ("84", "60", Category::Caution),        // 88
        ("82", "90", Category::ExtremeCaution), // 92
        ("88", "75", Category::Danger),         // 103
        ("96", "65", Category::Danger),         // 121
        ("110", "40", Category::ExtremeDanger), // 136
    ] {
        assert_eq!(
            Category::of(index(air, humidity)),
            category,
            "{air} °F, {humidity} %"
        );
    }
}
