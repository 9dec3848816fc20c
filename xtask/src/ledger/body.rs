//! The invented body: how heavy, how strong, on which day. All of it is made up.

use rust_decimal::Decimal;
use stanchion::sheet::{Block, LoadBasis};
use stanchion::units::{Load, Unit};

use crate::simulate::Chance;

/// How much stronger than at the start the lifter becomes in the end, as a share.
const GAIN: f64 = 0.55;

/// In so many weeks two thirds of that are there.
const GAIN_WEEKS: f64 = 160.0;

/// What the seasons take and give, as a share.
const SEASON: f64 = 0.03;

/// What a day takes or gives, as a share.
const DAY: f64 = 0.03;

/// How much more than the load to start from the first maximum is, as a share.
const AT_FIRST: f64 = 1.45;

/// The lifter's body.
pub struct Body {
    /// Kilograms of the last week.
    kg: f64,
    /// How many weeks have gone.
    week: i64,
}

impl Body {
    pub fn new() -> Body {
        Body { kg: 78.0, week: 0 }
    }

    /// The body mass of a week, to a tenth of a kilogram.
    pub fn mass(&mut self, week: i64, chance: &mut Chance) -> Load {
        self.week = week;
        // It drifts, and is drawn back to a body that grows a little heavier with the years.
        let usual = 78.0 + 4.0 * self.grown();
        self.kg += 0.1 * (usual - self.kg) + chance.normal(0.35);
        let tenths = (self.kg.clamp(60.0, 110.0) * 10.0).round() as i64;
        Load::new(Decimal::new(tenths, 1), Unit::Kg).unwrap_or(Load::ZERO)
    }

    fn grown(&self) -> f64 {
        1.0 - (-(self.week as f64) / GAIN_WEEKS).exp()
    }

    /// How strong the lifter is on a day against the first day.
    pub fn form(&self, chance: &mut Chance) -> f64 {
        let season = (self.week as f64 * std::f64::consts::TAU / 52.0).sin() * SEASON;
        (1.0 + GAIN * self.grown()) * (1.0 + season) * (1.0 + chance.normal(DAY))
    }
}

/// Reps to failure of a fresh set in that form: w(1 + r/30) turned round, with the body where it is moved.
pub fn reps_to_failure(block: &Block, load: Option<Load>, mass: Load, form: f64) -> f64 {
    let kg = |load: Load| load.kg().to_string().parse().unwrap_or(0.0);
    let (body, start): (f64, f64) = (kg(mass), block.start.map_or(0.0, kg));
    let written = load.map_or(start, kg);
    let moved = |written: f64| match &block.basis {
        LoadBasis::External => written,
        LoadBasis::BodyMassPlus => body + written,
        LoadBasis::BodyMassMinus => (body - written).max(1.0),
        LoadBasis::BodyMassShare(share) => {
            body * share.factor().to_string().parse().unwrap_or(0.64) + written
        }
        LoadBasis::Band(_) | LoadBasis::Unloaded => 1.0,
    };
    let maximum = moved(start) * AT_FIRST * form;
    (30.0 * (maximum / moved(written).max(1.0) - 1.0)).clamp(0.0, 40.0)
}
