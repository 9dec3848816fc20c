//! The loaded end of a bar: plates drawn to scale, the heaviest inside, their masses written on them.

use crate::kit::Loading;
use crate::say;
use crate::ui::kit::competition_discs;
use crate::ui::parts::svg;
use crate::units::{Load, Unit};
use crate::words::decimal;
use leptos::prelude::*;
use rust_decimal::prelude::ToPrimitive;

/// Height of the tallest plate in the drawing: 450 mm.
const TALLEST: f64 = 62.0;
/// Mass in kilograms whose plate is as tall as the drawing, where sizes are not published.
const TALLEST_KG: f64 = 25.0;

/// Lengths in the drawing, in tenths: whole numbers, because writing out fractions takes kilobytes.
type Tenths = u32;

const MIDDLE: Tenths = 330;

/// How many letters of a written mass the narrowest plate has room for, and what each one more needs.
const FITS: usize = 4;
const LETTER: Tenths = 70;

/// The class of the colour that a competition disc of this mass has, and whether it has the largest diameter, 450 mm.
///
/// International Weightlifting Federation, Technical and Competition Rules & Regulations, 3.3 (sport equipment, discs):
/// 25 red, 20 blue, 15 yellow, 10 green, 5 white, 2.5 red, 2 blue, 1.5 yellow, 1 green, 0.5 white; the largest discs,
/// those of 10 kg and more, have 450 mm. The International Powerlifting Federation has the same colours for 25, 20
/// and 15 and leaves the lighter ones free.
fn competition(mass: Load) -> Option<(&'static str, bool)> {
    if mass.unit() != Unit::Kg {
        return None;
    }
    Some(
        match mass.amount().round_dp(2).normalize().to_string().as_str() {
            "25" => ("disc-red", true),
            "20" => ("disc-blue", true),
            "15" => ("disc-yellow", true),
            "10" => ("disc-green", true),
            "5" | "0.5" => ("disc-white", false),
            "2.5" => ("disc-red", false),
            "2" => ("disc-blue", false),
            "1.5" => ("disc-yellow", false),
            "1" => ("disc-green", false),
            _ => return None,
        },
    )
}

/// What is written on a plate: what is stamped on the one in the hand, in its own unit, whatever unit the screen is in.
fn stamped(mass: Load) -> String {
    decimal(&mass.amount().normalize().to_string())
}

/// Height and width of a plate.
///
/// The height is the diameter, to the scale of 450 mm. Where the real diameter is not published the rule of the drawing
/// is that it grows with the mass to the power of 0.35, so that a plate twice as heavy looks so. The width is no
/// thickness: it is as wide as its written mass needs, and a little more for a heavier plate.
fn size(mass: Load, largest: bool) -> (Tenths, Tenths) {
    let share = (mass.kg().to_f64().unwrap_or(0.0) / TALLEST_KG).clamp(0.02, 1.0);
    let height = if largest {
        TALLEST
    } else {
        (TALLEST * share.powf(0.35)).max(18.0)
    };
    let longer = stamped(mass).len().saturating_sub(FITS);
    (
        tenths(height),
        tenths(27.0 + 6.0 * share) + LETTER * longer as Tenths,
    )
}

/// Never below zero, and far below what fits.
fn tenths(length: f64) -> Tenths {
    (length * 10.0).round() as Tenths
}

fn written(length: Tenths) -> String {
    format!("{}.{}", length / 10, length % 10)
}

/// One side of the bar.
pub fn plates(loading: &Loading) -> AnyView {
    let coloured = competition_discs();
    let mut x = 540;
    let mut drawn: Vec<AnyView> = Vec::new();
    for mass in &loading.per_side {
        let disc = competition(*mass).filter(|_| coloured);
        let (class, largest) = disc.unwrap_or(("disc", false));
        let (height, width) = size(*mass, largest);
        drawn.push(plate(class, x, height, width, stamped(*mass)));
        x += width + 30;
    }
    let end = (x + 200) / 10;
    svg("svg")
        .class("plates")
        .set("role", "img")
        .set("aria-label", say!("on the bar: {loading}", loading))
        .part("plates")
        .set("viewBox", format!("0 0 {end} 66"))
        .child(
            svg("rect")
                .class("bar")
                .set("x", "0")
                .set("y", "29")
                .set("width", end.to_string())
                .set("height", "8"),
        )
        .child(
            svg("rect")
                .class("collar")
                .set("x", "46")
                .set("y", "25")
                .set("width", "6")
                .set("height", "16"),
        )
        .child(drawn)
        .view()
}

/// A plate seen from its edge, its mass written on it.
fn plate(class: &'static str, x: Tenths, height: Tenths, width: Tenths, figure: String) -> AnyView {
    let size = match figure.len() {
        0..=2 => "plate-mass",
        3 => "plate-mass three",
        _ => "plate-mass small",
    };
    svg("g")
        .class(class)
        .child(
            svg("rect")
                .class("plate")
                .set("x", written(x))
                .set("y", written(MIDDLE - height / 2))
                .set("width", written(width))
                .set("height", written(height)),
        )
        .child(
            svg("text")
                .class(size)
                .set("x", written(x + width / 2))
                .set("y", "33")
                .child(figure),
        )
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(text: &str) -> Load {
        text.parse().unwrap()
    }

    #[test]
    fn competition_discs_have_the_published_colours_and_diameter() {
        for (mass, class, largest) in [
            ("25 kg", "disc-red", true),
            ("20 kg", "disc-blue", true),
            ("15 kg", "disc-yellow", true),
            ("10.0 kg", "disc-green", true),
            ("5 kg", "disc-white", false),
            ("2.5 kg", "disc-red", false),
            ("2 kg", "disc-blue", false),
            ("1.5 kg", "disc-yellow", false),
            ("1 kg", "disc-green", false),
            ("0.5 kg", "disc-white", false),
        ] {
            assert_eq!(competition(of(mass)), Some((class, largest)), "{mass}");
        }
        // 55 lb is 24.95 kg and no competition disc; 1.25 kg is none either.
        assert_eq!(competition(of("55 lb")), None);
        assert_eq!(competition(of("1.25 kg")), None);
        assert_eq!(size(of("10 kg"), true).0, size(of("25 kg"), true).0);
    }

    #[test]
    fn a_plate_bears_what_is_stamped_on_it_and_has_room_for_it() {
        for (mass, says) in [
            ("20 kg", "20"),
            ("1.25 kg", "1.25"),
            ("10.0 kg", "10"),
            ("45 lb", "45"),
            ("2.5 lb", "2.5"),
            ("0.125 kg", "0.125"),
        ] {
            assert_eq!(stamped(of(mass)), says);
        }
        let wide = |mass: &str| size(of(mass), false).1;
        assert!(wide("0.125 kg") >= wide("0.25 kg") + LETTER - 1);
    }

    #[test]
    fn a_heavier_plate_is_never_drawn_smaller() {
        let sizes: Vec<_> = [
            "0.25", "0.5", "1.25", "2.5", "5", "10", "15", "20", "25", "50",
        ]
        .iter()
        .map(|kg| size(of(&format!("{kg} kg")), false))
        .collect();
        assert!(sizes.is_sorted());
        assert!(sizes.iter().all(|(height, _)| *height <= 620));
    }
}
