//! The heat index: the steps of the US National Weather Service (Rothfusz regression with its adjustments).

use super::air::{Air, Scale};
use crate::say;

/// The largest value of the chart that is checked; beyond it the regression was never fitted.
const CHART_TOP: i16 = 136;

/// A heat index, in tenths of a degree Fahrenheit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct HeatIndex(i16);

impl HeatIndex {
    /// Tenths of a degree Fahrenheit.
    #[must_use]
    pub fn tenths(self) -> i16 {
        self.0
    }

    /// Whole degrees Fahrenheit, rounded.
    #[must_use]
    pub fn whole(self) -> i16 {
        (self.0 + 5).div_euclid(10)
    }

    /// As it is shown, in the scale asked for.
    #[must_use]
    pub fn shown(self, scale: Scale) -> String {
        let beyond = self.whole() > CHART_TOP;
        let whole = self.whole().min(CHART_TOP);
        let tenths = if beyond { CHART_TOP * 10 } else { self.0 };
        let figure = match scale {
            Scale::Celsius => whole_celsius(tenths),
            Scale::Fahrenheit => i32::from(whole),
        };
        let degrees = format!("{figure} {}", scale.symbol());
        if beyond {
            say!("over {degrees}", degrees)
        } else {
            degrees
        }
    }
}

/// Whole degrees Celsius, rounded, of tenths of a degree Fahrenheit. In whole numbers: writing out fractions takes
/// kilobytes.
fn whole_celsius(tenths: i16) -> i32 {
    // 5/9 of a degree each; halves are rounded up.
    (i32::from(tenths - 320) * 10 + 90).div_euclid(180)
}

/// The heat index of `air`, in the shade; full sun adds up to 15 °F (OSHA).
///
/// NWS, "The Heat Index Equation": first the simple formula, averaged with the temperature; where that comes to 80 °F
/// or more, the regression with its adjustments for dry and for damp air.
#[must_use]
pub fn heat_index(air: Air) -> HeatIndex {
    let t = air.temperature.fahrenheit();
    let r = f64::from(air.humidity.get());
    let simple = 0.5 * (t + 61.0 + 1.2 * (t - 68.0) + 0.094 * r);
    let averaged = f64::midpoint(simple, t);
    let index = if averaged < 80.0 {
        averaged
    } else {
        regression(t, r) + adjustment(t, r)
    };
    // At most some 650 °F at 140 °F and 100 %: it fits.
    HeatIndex((index * 10.0).round() as i16)
}

fn regression(t: f64, r: f64) -> f64 {
    -42.379 + 2.049_015_23 * t + 10.143_331_27 * r
        - 0.224_755_41 * t * r
        - 0.006_837_83 * t * t
        - 0.054_817_17 * r * r
        + 0.001_228_74 * t * t * r
        + 0.000_852_82 * t * r * r
        - 0.000_001_99 * t * t * r * r
}

fn adjustment(t: f64, r: f64) -> f64 {
    if r < 13.0 && (80.0..=112.0).contains(&t) {
        -((13.0 - r) / 4.0) * ((17.0 - (t - 95.0).abs()) / 17.0).sqrt()
    } else if r > 85.0 && (80.0..=87.0).contains(&t) {
        ((r - 85.0) / 10.0) * ((87.0 - t) / 5.0)
    } else {
        0.0
    }
}
