//! Who may name whom. The compiler keeps the browser out of the core; this keeps the core's own arrows, and the ways
//! round the compiler, out too.

use super::files::{File, paths};

/// What every module may name: whoever says something says it in the language of the reader.
const WORDS: &str = "words";

/// The arrows: a module of the core, and the others that it may name beside [`WORDS`]. `device` is told tones, keeps
/// settings as JSON, and knows nothing else.
const ARROWS: &[(&str, &[&str])] = &[
    ("crc", &[]),
    ("json", &[]),
    ("order", &[]),
    (WORDS, &["order"]),
    ("units", &[]),
    ("charts", &["order", "units"]),
    ("sheet", &["json", "order", "units"]),
    ("kit", &["sheet", "order", "units"]),
    ("exercises", &["kit", "sheet", "order", "units"]),
    ("quick", &["sheet", "order", "units"]),
    ("draft", &["exercises", "sheet", "units"]),
    ("cues", &["sheet", "units"]),
    ("strength", &["kit", "sheet", "order", "units"]),
    // A light week makes proposals lighter.
    ("programme", &["strength", "kit", "sheet", "order", "units"]),
    ("heat", &["units"]),
    (
        "session",
        // The air of a session makes its rests longer; what was cued of a set is offered as done.
        &["heat", "cues", "strength", "kit", "sheet", "order", "units"],
    ),
    (
        "ledger",
        &[
            // The heat made rests longer.
            "heat",
            "session",
            "strength",
            // The muscles and patterns of what was done in a week.
            "exercises",
            "sheet",
            "order",
            "units",
        ],
    ),
    (
        "pictures",
        // What was done, drawn.
        &[
            "charts", "store", "ledger", "strength", "sheet", "order", "units",
        ],
    ),
    (
        "store",
        &[
            // Damage in a row is seen.
            "crc",
            "json",
            "session",
            // What is kept of its own: exercises and programmes.
            "exercises",
            "programme",
            // The sets as a table.
            "ledger",
            // The curve that the lifter chose.
            "strength",
            "kit",
            "sheet",
            "order",
            "units",
        ],
    ),
    // A sheet is sent as its lines, as JSON where lines cannot hold it, or as a file of the store.
    ("share", &["quick", "store", "crc", "json", "sheet"]),
    ("device", &["cues", "json", "order"]),
];

const BROWSER: [&str; 7] = [
    "web_sys",
    "js_sys",
    "wasm_bindgen",
    "wasm_bindgen_futures",
    "gloo_storage",
    "leptos",
    "console_error_panic_hook",
];

/// Clocks, chance and the machine: the core is given their readings.
const WORLD: [&str; 6] = ["Instant", "SystemTime", "Utc", "Local", "now_v7", "new_v4"];
const WORLD_OF_STD: [&str; 5] = ["fs", "env", "net", "thread", "process"];

/// Calls of the page that Leptos hands out; they belong in `device/`.
const PAGE: [&str; 7] = [
    "window",
    "document",
    "set_timeout",
    "set_interval",
    "request_animation_frame",
    "request_idle_callback",
    "window_event_listener",
];

/// Every arrow that points the wrong way in a file of `src/`.
pub fn faults(file: &File) -> Vec<String> {
    let Some(layer) = layer(&file.path) else {
        return Vec::new();
    };
    let mut faults = Vec::new();
    for (line, code) in file.code() {
        for (names, then) in paths(code) {
            let fault = match layer {
                "ui" => in_ui(&names, then),
                "device" => in_device(&names, then),
                core => in_core(core, &names, then),
            };
            faults.extend(fault.map(|what| file.fault(line, what)));
        }
    }
    faults
}

/// The folder of `src/` that a file lies in. `main.rs` and `lib.rs` lie in none.
fn layer(path: &str) -> Option<&str> {
    if !path.ends_with(".rs") {
        return None;
    }
    let (layer, _) = path.strip_prefix("src/")?.split_once('/')?;
    Some(layer)
}

fn in_core(layer: &str, names: &[&str], then: &str) -> Option<String> {
    let foreign = names.iter().find(|name| BROWSER.contains(*name));
    if let Some(name) = foreign {
        return Some(format!("the core names `{name}`"));
    }
    let of_std = names.len() > 1 && names[0] == "std" && WORLD_OF_STD.contains(&names[1]);
    if of_std || names.iter().any(|name| WORLD.contains(name)) {
        return Some(format!(
            "the core reads no clock, no chance and no machine: `{}`",
            names.join("::")
        ));
    }
    arrow(layer, names, then)
}

fn in_device(names: &[&str], then: &str) -> Option<String> {
    if names.contains(&"leptos") {
        return Some("device/ draws nothing: it may not name `leptos`".to_owned());
    }
    arrow("device", names, then)
}

fn arrow(layer: &str, names: &[&str], then: &str) -> Option<String> {
    if names == ["crate"] && then.starts_with("::{") {
        return Some("name each module in a `use` of its own: `use crate::module::…`".to_owned());
    }
    let up = names
        .iter()
        .take_while(|name| ["crate", "super"].contains(*name))
        .count();
    let wanted = *names.get(up).filter(|_| up > 0)?;
    let is_layer = wanted == "ui" || ARROWS.iter().any(|(name, _)| *name == wanted);
    let allowed = match ARROWS.iter().find(|(name, _)| *name == layer) {
        Some((_, allowed)) => *allowed,
        None => {
            return Some(format!(
                "`{layer}` is not on the map in tests/tidy/layers.rs"
            ));
        }
    };
    (is_layer && wanted != layer && wanted != WORDS && !allowed.contains(&wanted))
        .then(|| format!("`{layer}` may not name `{wanted}`"))
}

/// Views may hold the types of elements and files that an event hands them; what they want of the browser they ask
/// `device/` for.
fn in_ui(names: &[&str], then: &str) -> Option<String> {
    let said = || names.join("::");
    for (at, name) in names.iter().enumerate() {
        let wrong = match *name {
            "js_sys" | "gloo_storage" | "wasm_bindgen_futures" => true,
            "wasm_bindgen" => at == 0 || names[at - 1] != "leptos",
            "web_sys" => !names.get(at + 1).is_some_and(|held| {
                *held == "File" || (held.starts_with("Html") && held.ends_with("Element"))
            }),
            name => PAGE.contains(&name) && at + 1 == names.len() && then.starts_with('('),
        };
        if wrong {
            return Some(format!("browser calls live in device/: `{}`", said()));
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    fn caught(path: &str, line: &str) -> bool {
        !faults(&File::new(path, &format!("//! A file.\n{line}\n"))).is_empty()
    }

    #[test]
    fn browser_names_in_the_core_are_caught() {
        for line in [
            "use web_sys::Window;",
            "    let x = js_sys::Date::now();",
            "use leptos::prelude::*;",
            "let s = gloo_storage::LocalStorage::raw();",
        ] {
            assert!(caught("src/sheet/block.rs", line), "{line}");
        }
        assert!(!caught("src/sheet/block.rs", "// web_sys is not for here."));
        assert!(!caught("src/device/dom.rs", "use web_sys::Window;"));
    }

    #[test]
    fn clocks_and_the_machine_in_the_core_are_caught() {
        for line in [
            "let now = std::time::Instant::now();",
            "let now = chrono::Utc::now();",
            "let id = Uuid::now_v7();",
            "let text = std::fs::read_to_string(path);",
        ] {
            assert!(caught("src/session/mint.rs", line), "{line}");
        }
        assert!(!caught("src/session/mint.rs", "use std::fmt;"));
    }

    #[test]
    fn arrows_that_point_back_are_caught() {
        assert!(caught("src/sheet/block.rs", "use crate::session::Event;"));
        assert!(caught(
            "src/units/load.rs",
            "use super::super::sheet::Block;"
        ));
        assert!(caught("src/store/read.rs", "fn f(x: crate::ui::App) {}"));
        assert!(caught("src/kit/reach.rs", "use crate::{ledger, units};"));
        assert!(caught("src/device/db.rs", "use crate::store::Shelf;"));
        assert!(caught("src/newcomer/mod.rs", "use crate::units::Load;"));
        assert!(!caught(
            "src/ledger/record.rs",
            "use crate::session::Event;"
        ));
        assert!(!caught("src/sheet/block.rs", "use super::kind::Sets;"));
    }

    #[test]
    fn leptos_in_device_and_browser_calls_in_ui_are_caught() {
        assert!(caught("src/device/dom.rs", "use leptos::prelude::*;"));
        for line in [
            "use wasm_bindgen::JsCast;",
            "let now = js_sys::Date::now();",
            "let here = web_sys::window();",
            "let here = window().location();",
            "set_timeout(move || {}, wait);",
        ] {
            assert!(caught("src/ui/app.rs", line), "{line}");
        }
        for line in [
            "use leptos::wasm_bindgen::JsCast;",
            "let input: web_sys::HtmlInputElement = it;",
            "fn take_in(file: &web_sys::File) {}",
            "let window = 3;",
        ] {
            assert!(!caught("src/ui/app.rs", line), "{line}");
        }
    }
}
