//! The loaded end of a bar: plates drawn to scale, their masses written on them.

use crate::kit::Loading;
use crate::units::{Load, Unit};
use leptos::prelude::*;
use rust_decimal::prelude::ToPrimitive;

/// Height of the heaviest plate in the drawing.
const TALLEST: f64 = 62.0;
/// Mass in kilograms whose plate is as tall as the drawing.
const TALLEST_KG: f64 = 25.0;

/// Height and width of a plate: the area grows with the mass, so that a plate twice as heavy looks so.
fn size(mass: Load) -> (f64, f64) {
    let share = (mass.kg().to_f64().unwrap_or(0.0) / TALLEST_KG).clamp(0.02, 1.0);
    let height = (TALLEST * share.powf(0.35)).max(22.0);
    let width = (26.0 * share.powf(0.25)).max(15.0);
    (height, width)
}

/// One side of the bar.
pub fn plates(loading: &Loading, unit: Unit) -> AnyView {
    let mut x = 54.0;
    let mut drawn: Vec<AnyView> = Vec::new();
    for mass in &loading.per_side {
        let (height, width) = size(*mass);
        drawn.push(plate(x, height, width, mass.figure(unit)));
        x += width + 4.0;
    }
    let end = x + 34.0;
    view! {
        <svg
            class="plates"
            role="img"
            aria-label=format!("on the bar: {loading}")
            data-part="plates"
            viewBox=format!("0 0 {end:.0} 66")
        >
            <rect class="bar" x="0" y="29" width=format!("{end:.0}") height="8"></rect>
            <rect class="collar" x="46" y="25" width="6" height="16"></rect>
            {drawn}
        </svg>
    }
    .into_any()
}

/// A plate seen from its edge, its mass written on it.
fn plate(x: f64, height: f64, width: f64, figure: String) -> AnyView {
    let middle = x + width / 2.0;
    let small = figure.len() > 2;
    view! {
        <rect
            class="plate"
            x=format!("{x:.1}")
            y=format!("{:.1}", 33.0 - height / 2.0)
            width=format!("{width:.1}")
            height=format!("{height:.1}")
        ></rect>
        <text
            class=if small { "plate-mass small" } else { "plate-mass" }
            x=format!("{middle:.1}")
            y="33"
            transform=format!("rotate(90 {middle:.1} 33)")
        >
            {figure}
        </text>
    }
    .into_any()
}
