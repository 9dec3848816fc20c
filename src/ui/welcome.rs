//! The first start: unit, body mass if one likes, the usual caution once, and two sheets to begin with; or everything
//! from another phone.

use super::app::in_use_elsewhere;
use super::away::import_file;
use super::kit::show_in;
use super::model::{Notice, Stage};
use super::parts::{
    Mode, button, checked_field, choices, dynamic, file_field, h1, h2, quiet, text, toggle,
    unit_choices, when, words,
};
use super::people::bar;
use super::seen::Seen;
use super::stanchion::{Stanchion, stanchion};
use crate::kit::Kit;
use crate::say;
use crate::store::demo;
use crate::ui::live::Live;
use crate::ui::parts::el;
use crate::units::{Load, Unit};
use crate::words::t;
use leptos::prelude::*;

/// The caution, once.
fn before() -> &'static str {
    t(
        "Ask a physician first if you have a heart, blood-pressure or joint trouble, are pregnant, were injured or operated \
        on lately, take medicine that bears on effort, or have not trained for long. Learn heavy lifts from a qualified \
        coach. Alone, use safety bars or lift only what you can put down. Stop at pain, dizziness or a tight chest, and get \
        help. Rules of your place and the word of your physician come before anything written here.",
    )
}

/// The body mass typed; none where the field is empty.
fn body_mass(typed: &str, unit: Unit) -> Result<Option<Load>, String> {
    if typed.trim().is_empty() {
        return Ok(None);
    }
    let mass = Load::parse_in(typed, unit).map_err(|error| error.to_string())?;
    if mass.is_zero() {
        return Err(t("a body mass of 0 is none: leave the field empty").to_owned());
    }
    Ok(Some(mass))
}

/// Writes the first records and opens the app.
fn open(app: Stanchion, unit: Unit, mass: Option<Load>, kit: Kit, with_demo: bool) {
    // A kit that a file brought stays; where there is none, the model holds a usual garage that is not written yet.
    let brought = app
        .model
        .with_untracked(|model| *model.kit != Kit::starter(Unit::Kg));
    if !brought {
        app.keep_kit(kit);
    }
    show_in(app, unit);
    if let Some(mass) = mass {
        app.keep_body_mass(mass);
    }
    if with_demo {
        for sheet in demo().current_sheets() {
            app.keep_sheet(sheet.clone());
        }
    }
    app.model.update(|model| model.stage = Stage::Open);
}

/// Whether the garage is the one of whoever was here before.
fn whose_kit(name: &str, shares: Live<bool>) -> AnyView {
    let is = move |shared: bool| Seen::new(move || shares.get() == shared);
    let both = vec![
        toggle(
            "welcome-kit-shared",
            say!("as {name} has it", name),
            "",
            is(true),
            move || shares.set(true),
        ),
        toggle(
            "welcome-kit-usual",
            t("the usual, to change later"),
            "",
            is(false),
            move || shares.set(false),
        ),
    ];
    vec![h2(t("Kit")), choices("choices two", t("Kit"), both)].into_any()
}

/// What an import said: the banner of the open app is not there yet.
fn notice(app: Stanchion) -> AnyView {
    let notice = app.of(|model| model.notice.clone());
    let class = move || match notice.get() {
        Some(Notice { wrong: true, .. }) => "said wrong-word",
        _ => "said",
    };
    el("p")
        .follow("class", class)
        .set("role", "status")
        .part("notice")
        .says(move || {
            notice
                .get()
                .map(|Notice { text, .. }| text)
                .unwrap_or_default()
        })
        .view()
}

/// The ways into the app: with sheets or without, or with what was done on another phone.
fn ways_in(app: Stanchion, go: impl Fn(bool) + Copy + Send + Sync + 'static) -> Vec<AnyView> {
    vec![
        button(
            "wide strong",
            "welcome-open",
            t("Understood, open with two sheets to try"),
            move || go(true),
        ),
        button(
            "plain",
            "welcome-skip",
            t("Understood, open without sheets"),
            move || go(false),
        ),
        file_field(
            "welcome-import",
            t("I have a file from another phone"),
            move |event| import_file(app, &event),
        ),
    ]
}

/// The first start.
pub fn welcome() -> AnyView {
    let app = stanchion();
    let there = app.model.with_untracked(|model| model.kit_before.clone());
    let unit = Live::new(there.as_ref().map_or(Unit::Kg, |(_, kit)| kit.unit()));
    let shares = Live::new(there.is_some());
    let body = Live::new(String::new());
    let wrong = Live::new(None::<String>);
    let go = move |with_demo: bool| {
        let unit = unit.get_untracked();
        let shared = app.model.with_untracked(|model| {
            let (_, kit) = model.kit_before.as_ref()?;
            shares.get_untracked().then(|| Kit::clone(kit))
        });
        let kit = shared.unwrap_or_else(|| Kit::starter(unit));
        match body_mass(&body.get_untracked(), unit) {
            Ok(mass) => open(app, unit, mass, kit, with_demo),
            Err(why) => wrong.set(Some(why)),
        }
    };
    let label = text(move || say!("body mass in {unit}, if you like", unit = unit.get()));
    let typed = move |text| body.set(text);
    let link_waits = app.of(|model| model.shared.is_some());
    let name = text(move || {
        app.model.with(|model| match model.person() {
            Some(person) => format!("Stanchion, {}", person.name),
            None => "Stanchion".to_owned(),
        })
    });
    // What this tab would write is not kept while another one writes.
    let follows = app.of(|model| model.follows);
    let caution = vec![h2(t("Before you lift")), words("", before())];
    let inside = vec![
        h1(name),
        words(
            "",
            t(
                "A training log for the phone on your rack. It works without a network, and what you log stays with you.",
            ),
        ),
        when(link_waits, || {
            quiet(t("The sheet of your link is shown after this page."))
        }),
        h2(t("Loads in")),
        unit_choices(
            t("Loads in"),
            unit.into(),
            Callback::new(move |chosen| unit.set(chosen)),
        ),
        checked_field("body-mass", Mode::Decimal, label, body, true, typed, wrong),
        there.map(|(name, _)| whose_kit(&name, shares)).into_any(),
        el("section")
            .class("caution-box")
            .part("caution")
            .child(caution)
            .view(),
        dynamic(move || {
            if follows.get() {
                in_use_elsewhere(app)
            } else {
                ways_in(app, go).into_any()
            }
        }),
        notice(app),
    ];
    let people = bar(app);
    vec![
        people,
        el("main")
            .class("page welcome")
            .part("welcome")
            .child(inside)
            .view(),
    ]
    .into_any()
}
