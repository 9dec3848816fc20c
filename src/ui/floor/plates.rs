//! The loaded end of a bar: plates drawn to scale, their masses written on them.

use crate::kit::Loading;
use crate::units::{Load, Unit};
use leptos::prelude::*;
use rust_decimal::prelude::ToPrimitive;

/// Height of the heaviest plate in the drawing.
const TALLEST: f64 = 62.0;
/// Mass in kilograms whose plate is as tall as the drawing.
const TALLEST_KG: f64 = 25.0;

/// Lengths in the drawing, in tenths: whole numbers, because writing out fractions takes kilobytes.
type Tenths = u32;

const MIDDLE: Tenths = 330;

/// Height and width of a plate: the area grows with the mass, so that a plate twice as heavy looks so.
fn size(mass: Load) -> (Tenths, Tenths) {
    let share = (mass.kg().to_f64().unwrap_or(0.0) / TALLEST_KG).clamp(0.02, 1.0);
    let height = (TALLEST * share.powf(0.35)).max(22.0);
    let width = (26.0 * share.powf(0.25)).max(15.0);
    (tenths(height), tenths(width))
}

/// Never below zero, and far below what fits.
fn tenths(length: f64) -> Tenths {
    (length * 10.0).round() as Tenths
}

fn written(length: Tenths) -> String {
    format!("{}.{}", length / 10, length % 10)
}

/// One side of the bar.
pub fn plates(loading: &Loading, unit: Unit) -> AnyView {
    let mut x = 540;
    let mut drawn: Vec<AnyView> = Vec::new();
    for mass in &loading.per_side {
        let (height, width) = size(*mass);
        drawn.push(plate(x, height, width, mass.figure(unit)));
        x += width + 40;
    }
    let end = (x + 345) / 10;
    view! {
        <svg
            class="plates"
            role="img"
            aria-label=format!("on the bar: {loading}")
            data-part="plates"
            viewBox=format!("0 0 {end} 66")
        >
            <rect class="bar" x="0" y="29" width=end.to_string() height="8"></rect>
            <rect class={"collar"} x="46" y="25" width="6" height="16"></rect>
            {drawn}
        </svg>
    }
    .into_any()
}

/// A plate seen from its edge, its mass written on it.
fn plate(x: Tenths, height: Tenths, width: Tenths, figure: String) -> AnyView {
    let middle = written(x + width / 2);
    let small = figure.len() > 2;
    view! {
        <rect
            class="plate"
            x=written(x)
            y=written(MIDDLE - height / 2)
            width=written(width)
            height=written(height)
        ></rect>
        <text
            class=if small { "plate-mass small" } else { "plate-mass" }
            x=middle.clone()
            y="33"
            transform=format!("rotate(90 {middle} 33)")
        >
            {figure}
        </text>
    }
    .into_any()
}
