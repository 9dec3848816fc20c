//! The choice of a unit.

use super::controls::{choices, toggle};
use crate::ui::seen::Seen;
use crate::units::Unit;
use crate::words::t;
use leptos::prelude::*;

/// Kilograms or pounds.
pub fn unit_choices(name: &'static str, chosen: Seen<Unit>, choose: Callback<Unit>) -> AnyView {
    let one = move |unit: Unit, words: &'static str| {
        let pressed = Seen::new(move || chosen.get() == unit);
        toggle(format!("unit-{unit}"), words, "", pressed, move || {
            choose.run(unit)
        })
    };
    let inside = vec![one(Unit::Kg, t("kilograms")), one(Unit::Lb, t("pounds"))];
    choices("choices two", name, inside)
}
