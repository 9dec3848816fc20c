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
#[component]
pub fn Plates(
    /// What is on the bar.
    loading: Loading,
    /// The unit on display.
    unit: Unit,
) -> impl IntoView {
    let mut x = 54.0;
    let plates: Vec<_> = loading
        .per_side
        .iter()
        .map(|mass| {
            let (height, width) = size(*mass);
            let at = x;
            x += width + 4.0;
            (at, height, width, mass.figure(unit))
        })
        .collect();
    let end = x + 34.0;
    let said = if loading.per_side.is_empty() {
        loading.to_string()
    } else {
        let masses: Vec<String> = loading
            .per_side
            .iter()
            .map(|mass| mass.figure(unit))
            .collect();
        format!("on each side: {} {unit}", masses.join(", "))
    };
    view! {
        <svg
            class="plates"
            role="img"
            aria-label=said
            data-part="plates"
            viewBox=format!("0 0 {end:.0} 66")
        >
            <rect class="bar" x="0" y="29" width="50" height="8"></rect>
            <rect class="collar" x="46" y="25" width="6" height="16"></rect>
            <rect class="bar" x="52" y="29" width=format!("{:.0}", end - 52.0) height="8"></rect>
            {plates.into_iter().map(|(at, height, width, figure)| {
                let middle = at + width / 2.0;
                let small = figure.len() > 2;
                view! {
                    <rect
                        class="plate"
                        x=format!("{at:.1}")
                        y=format!("{:.1}", 33.0 - height / 2.0)
                        width=format!("{width:.1}")
                        height=format!("{height:.1}")
                    ></rect>
                    <text
                        class="plate-mass"
                        class:small=small
                        x=format!("{middle:.1}")
                        y="33"
                        transform=format!("rotate(90 {middle:.1} 33)")
                    >
                        {figure}
                    </text>
                }
            }).collect_view()}
        </svg>
    }
}
