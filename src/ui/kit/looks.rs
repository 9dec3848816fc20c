//! How the app looks: dark, light, for full sun or the night, or as the phone; and the colours of the plates.

use super::sound::tick_box;
use crate::device::{dom, prefs};
use crate::ui::live::Live;
use crate::ui::parts::{choices, quiet, section, toggle};
use crate::ui::seen::Seen;
use crate::words::t;
use leptos::prelude::*;

/// Preference: the name of a look, or none to follow the phone.
const THEME: &str = "theme";
/// Preference: the plates are competition discs.
const DISCS: &str = "discs";

/// How a look is called.
type Called = fn() -> &'static str;

/// The looks: name, and how it is called. The style sheets have the tokens of each under its name.
const LOOKS: [(&str, Called); 4] = [
    ("dark", || t("dark")),
    ("light", || t("bright")),
    ("sun", || t("full sun")),
    ("night", || t("night")),
];

/// The look that was chosen; none follows the phone.
pub fn theme() -> Option<String> {
    prefs::get(THEME).flatten()
}

/// Whether plates are drawn as competition discs.
pub fn competition_discs() -> bool {
    prefs::get(DISCS).unwrap_or(false)
}

/// The choice of a look, and of the colours of plates.
pub fn looks() -> AnyView {
    let chosen = Live::new(theme());
    let choice = move |name: Option<&'static str>, words: &'static str| {
        let pressed = Seen::new(move || chosen.get().as_deref() == name);
        let choose = move || {
            let name = name.map(str::to_owned);
            // What a preference cannot hold is chosen again next time; nothing else is lost.
            let _ = prefs::set(THEME, &name);
            dom::set_theme(name.as_deref());
            chosen.set(name);
        };
        let which = name.unwrap_or("phone");
        toggle(format!("look-{which}"), words, "", pressed, choose)
    };
    let mut inside = vec![choice(None, t("as the phone"))];
    inside.extend(LOOKS.map(|(name, words)| choice(Some(name), words())));
    section(
        None,
        t("Look"),
        vec![
            choices("choices words", t("Look"), inside),
            quiet(t(
                "Full sun is black on white; night is dark and has hardly any blue light.",
            )),
            tick_box(
                "competition-discs",
                t("my plates in kg have the competition colours"),
                competition_discs(),
                |on| {
                    let _ = prefs::set(DISCS, &on);
                },
            ),
        ],
    )
}
