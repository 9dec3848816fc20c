//! The looks by their numbers: contrast of the tokens, size of the figures at two metres, light of the night look.
//!
//! What is computed from the style sheets here is measured on the screen by `tests/e2e/sight.rs`.

use std::collections::BTreeMap;

const TOKENS: &str = include_str!("../style/tokens.css");
const PLATES: &str = include_str!("../style/plates.css");
const MANIFEST: &str = include_str!("../assets/manifest.webmanifest");

/// The looks and the selector of their tokens; what a look does not name it has from the first.
const LOOKS: [(&str, &str); 5] = [
    ("dark", "\n:root {"),
    ("light", ":root[data-theme=\"light\"] {"),
    ("phone's light", ":root:not([data-theme]) {"),
    ("sun", ":root[data-theme=\"sun\"] {"),
    ("night", ":root[data-theme=\"night\"] {"),
];

/// The tokens of a block that begins with `selector`.
fn block(selector: &str) -> BTreeMap<String, String> {
    let (_, rest) = TOKENS.split_once(selector).expect("the look has tokens");
    let (inside, _) = rest.split_once('}').expect("the block ends");
    inside
        .lines()
        .filter_map(|line| line.trim().strip_prefix("--")?.split_once(':'))
        .map(|(name, value)| {
            let value = value.trim().trim_end_matches(';');
            (name.to_owned(), value.to_owned())
        })
        .collect()
}

fn tokens(selector: &str) -> BTreeMap<String, String> {
    let mut all = block(LOOKS[0].1);
    all.extend(block(selector));
    all
}

/// The channels of `#rrggbb`, red first.
fn channels(colour: &str) -> [u8; 3] {
    let hex = colour.strip_prefix('#').expect("colours are #rrggbb");
    assert_eq!(hex.len(), 6, "{colour}");
    [0, 2, 4].map(|at| u8::from_str_radix(&hex[at..at + 2], 16).expect("hex"))
}

/// Relative luminance, WCAG 2.2.
fn luminance(colour: &str) -> f64 {
    let linear = |channel: u8| {
        let share = f64::from(channel) / 255.0;
        if share <= 0.04045 {
            share / 12.92
        } else {
            ((share + 0.055) / 1.055).powf(2.4)
        }
    };
    let [red, green, blue] = channels(colour).map(linear);
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/// Contrast ratio, WCAG 2.2.
fn contrast(a: &str, b: &str) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn contrast_is_computed_as_published() {
    // Worked values of the WCAG's formula: 1.4.3 and 1.4.6.
    assert!((contrast("#000000", "#ffffff") - 21.0).abs() < 1e-9);
    assert!((contrast("#767676", "#ffffff") - 4.542).abs() < 0.001);
    assert!((contrast("#595959", "#ffffff") - 7.005).abs() < 0.001);
}

/// WCAG 1.4.6 (AAA) for every text at every size, though large text may have less.
#[test]
fn every_text_has_seven_to_one_on_every_ground_in_every_look() {
    for (look, selector) in LOOKS {
        let tokens = tokens(selector);
        for text in ["chalk", "dust", "rust"] {
            for ground in ["ground", "slate", "slate-high"] {
                let ratio = contrast(&tokens[text], &tokens[ground]);
                assert!(ratio >= 7.0, "{look}: {text} on {ground} has {ratio:.2}");
            }
        }
        let ratio = contrast(&tokens["on-amber"], &tokens["amber"]);
        assert!(ratio >= 7.0, "{look}: on-amber on amber has {ratio:.2}");
    }
}

/// WCAG 1.4.11: what is drawn and means something.
#[test]
fn lines_and_the_accent_have_three_to_one() {
    for (look, selector) in LOOKS {
        let tokens = tokens(selector);
        for drawn in ["line", "amber", "dust"] {
            for ground in ["ground", "slate", "slate-high"] {
                let ratio = contrast(&tokens[drawn], &tokens[ground]);
                assert!(ratio >= 3.0, "{look}: {drawn} on {ground} has {ratio:.2}");
            }
        }
    }
}

#[test]
fn the_light_look_is_the_same_chosen_or_by_the_phone() {
    assert_eq!(tokens(LOOKS[1].1), tokens(LOOKS[2].1));
}

#[test]
fn full_sun_is_black_on_white() {
    let tokens = tokens(LOOKS[3].1);
    for text in ["chalk", "dust"] {
        assert!(contrast(&tokens[text], &tokens["ground"]) > 20.9);
        assert!(contrast(&tokens[text], &tokens["slate-high"]) > 15.0);
    }
}

/// Short waves hold the eye awake and blind it in the dark most: the blue channel stays below a quarter, and
/// what shines least is the ground, which is black.
#[test]
fn the_night_has_hardly_any_blue_and_less_light_than_the_dark_look() {
    let night = tokens(LOOKS[4].1);
    let dark = tokens(LOOKS[0].1);
    for (name, colour) in night.iter().filter(|(_, value)| value.starts_with('#')) {
        let [red, _, blue] = channels(colour);
        assert!(blue <= 0x3f && blue <= red, "{name} {colour} is too blue");
    }
    assert_eq!(night["ground"], "#000000");
    assert!(luminance(&night["chalk"]) < 0.6 * luminance(&dark["chalk"]));
}

/// The colours of competition discs as the style sheet has them, with the mass that is written on them.
#[test]
fn the_mass_on_a_coloured_plate_has_seven_to_one() {
    let discs = block(":root:not([data-theme=\"night\"]) {");
    let fills = |suffix: &str| -> BTreeMap<String, String> {
        let mut fills = BTreeMap::new();
        for rule in PLATES.split('}') {
            let Some((selectors, inside)) = rule.rsplit_once('{') else {
                continue;
            };
            let Some((_, colour)) = inside.split_once("fill: ") else {
                continue;
            };
            let token = colour.split(';').next().unwrap_or_default();
            let Some(token) = token
                .strip_prefix("var(--")
                .and_then(|token| token.strip_suffix(')'))
            else {
                continue;
            };
            for selector in selectors.split(['{', ',']) {
                let name = selector
                    .trim()
                    .strip_prefix(".disc-")
                    .and_then(|name| name.strip_suffix(suffix));
                if let Some(name) = name {
                    fills.insert(name.to_owned(), discs[token].clone());
                }
            }
        }
        fills
    };
    let (plates, masses) = (fills(" .plate"), fills(" .plate-mass"));
    assert_eq!(plates.len(), 5);
    assert_eq!(
        plates.keys().collect::<Vec<_>>(),
        masses.keys().collect::<Vec<_>>()
    );
    for (name, plate) in &plates {
        let ratio = contrast(plate, &masses[name]);
        assert!(ratio >= 7.0, "{name} has {ratio:.2}");
    }
}

// ---- size ----

/// Height in millimetres of what fills `minutes` of arc at `metres`.
///
/// NUREG-0700 rev. 2, 1.3.1-4: height = 6.283 D (minutes of arc) / 21600.
fn millimetres(minutes: f64, metres: f64) -> f64 {
    2.0 * std::f64::consts::PI * metres * 1000.0 * minutes / 21_600.0
}

/// The smallest CSS pixel of common phones in millimetres.
///
/// Three figures: Android's density-independent pixel is 1/160 inch = 0.159 mm by definition, and browsers take it for
/// the CSS pixel; a screen of 460 pixels an inch with three to a CSS pixel has 0.166 mm; one of 428 with 2.625 has 0.156.
const PIXEL_MM: f64 = 0.155;

/// Height of a digit as a share of the font size: 0.70 to 0.73 in the faces that phones have for `system-ui`.
const DIGIT: f64 = 0.7;

#[test]
fn arc_is_computed_as_published() {
    // Worked values at two metres, of the published checks.
    assert!((millimetres(16.0, 2.0) - 9.31).abs() < 0.01);
    assert!((millimetres(20.0, 2.0) - 11.64).abs() < 0.01);
    assert!((millimetres(22.0, 2.0) - 12.80).abs() < 0.01);
}

/// The font size in CSS pixels that a token `min(a rem, b vw, c dvb)` has on a screen.
fn pixels(token: &str, width: f64, height: f64) -> f64 {
    let inside = token
        .strip_prefix("min(")
        .and_then(|rest| rest.strip_suffix(')'))
        .expect("sizes of figures are min(…)");
    let length = |part: &str| {
        let part = part.trim();
        let units = [
            ("rem", 16.0),
            ("dvb", height / 100.0),
            ("vw", width / 100.0),
        ];
        let (unit, one) = units
            .into_iter()
            .find(|(unit, _)| part.ends_with(unit))
            .expect("rem, dvb or vw");
        let number: f64 = part
            .strip_suffix(unit)
            .and_then(|number| number.parse().ok())
            .expect("a number");
        number * one
    };
    inside.split(',').map(length).fold(f64::INFINITY, f64::min)
}

/// Minutes of arc at two metres of digits in a font of that size.
fn arc(font: f64) -> f64 {
    font * DIGIT * PIXEL_MM / millimetres(1.0, 2.0)
}

/// NUREG-0700 rev. 2, 1.3.1-4: at least 16 minutes of arc, 20 to 22 preferred for reading, at most 45. ISO 9241-303 has
/// the same bounds (from memory).
#[test]
fn the_main_figures_have_twenty_minutes_of_arc_at_two_metres() {
    let upright = tokens(LOOKS[0].1);
    let mut aside = upright.clone();
    aside.extend(block("(min-width: 34.01rem) {\n  :root {"));
    for (tokens, width, height) in [(&upright, 390.0, 844.0), (&aside, 844.0, 390.0)] {
        for (name, least) in [
            // A load of up to five characters (102.5), a rest, a count, the reps on the pad.
            ("figure-4", 20.0),
            ("figure-5", 20.0),
            ("figure-pad", 20.0),
            // Six characters (101.25) do not fit a narrow screen so large; the least still holds.
            ("figure-6", 16.0),
        ] {
            let arc = arc(pixels(&tokens[name], width, height));
            assert!(
                (least..=45.0).contains(&arc),
                "{name} has {arc:.1}′ at {width} × {height}"
            );
        }
    }
}

#[test]
fn the_way_one_holds_the_phone_is_free() {
    let manifest: serde_json::Value = serde_json::from_str(MANIFEST).expect("the manifest is JSON");
    let orientation = manifest.get("orientation");
    assert!(
        orientation.is_none_or(|way| way == "any"),
        "WCAG 1.3.4: the manifest locks the orientation to {orientation:?}"
    );
}
