//! Body mass over time, measures of one's own, and every entry to be corrected.

use super::correct::correction;
use crate::device::clock;
use crate::pictures::{Asked, Period, body_mass, own_measure, own_measures};
use crate::say;
use crate::sheet::Line;
use crate::store::{BodyEntry, BodyValue};
use crate::ui::charts::{chart, periods};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, button, checked_field, choices, dynamic, field, group, h1, list, page, quiet, read_name,
    row_opener, section, text, toggles_of, way, when, wrong_word,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{Load, Measure, MeasureUnit, Unit, day_and_time};
use crate::words::{decimal, t};
use leptos::prelude::*;

/// Entries that are listed at first, and that each further tap adds.
const ENTRIES: usize = 8;

/// A value in words.
pub fn value_words(value: &BodyValue, unit: Unit) -> String {
    match value {
        BodyValue::Mass(mass) => say!("body mass {mass}", mass = mass.shown(unit)),
        BodyValue::Measure { name, measure } => format!("{name} {}", decimal(&measure.to_string())),
    }
}

/// Body mass and measures.
pub fn body_place() -> AnyView {
    let app = stanchion();
    let period = Live::new(Period::Year);
    let correcting = Live::new(None::<BodyEntry>);
    let gone = Live::new(None::<BodyEntry>);
    let unit = app.of(Model::unit);
    let asked = move || Asked {
        unit: unit.get(),
        period: period.get(),
        today: clock::wall().date_naive(),
    };
    let mass = Seen::new(move || {
        let asked = asked();
        app.model.with(|model| body_mass(&model.body, asked))
    });
    let own = app.of(|model| own_measures(&model.body));
    let pictures = dynamic(move || {
        let own = own.get().into_iter();
        let all: Vec<AnyView> = own
            .map(|(name, measured_in)| {
                let of = name.clone();
                let picture = Seen::new(move || {
                    let asked = asked();
                    let entries = app.model;
                    entries.with(|model| own_measure(&model.body, &of, measured_in, asked))
                });
                let again = again(app, name, measured_in);
                vec![chart("body-own", picture), again].into_any()
            })
            .collect();
        all.into_any()
    });
    let inside = page(
        "body",
        vec![
            way(Place::Ledger.href(), t("Ledger")),
            h1(t("Body")),
            periods("body-period", period),
            chart("body-mass-chart", mass),
            weigh(app, unit),
            quiet(t(
                "A session goes by the newest body mass that was typed before it began, and keeps it: what is corrected here \
                 changes no session that was done.",
            )),
            pictures,
            another(app),
            entries(app, unit, correcting, gone),
        ],
    );
    let panel = dynamic(move || match correcting.get() {
        Some(entry) => correction(
            app,
            &entry,
            gone,
            Callback::new(move |()| correcting.set(None)),
        ),
        None => ().into_any(),
    });
    vec![inside, panel].into_any()
}

/// A field and a button beside it that keeps what was typed.
fn keeping(
    part: &'static str,
    label: impl Fn() -> String + Send + Sync + 'static,
    keep: impl Fn(&str) -> Result<(), String> + Send + Sync + 'static,
) -> AnyView {
    let typed = Live::new(String::new());
    let wrong = Live::new(None::<String>);
    let keep = move || match typed.with_untracked(|typed| keep(typed)) {
        Ok(()) => {
            wrong.set(None);
            typed.set(String::new());
        }
        Err(why) => wrong.set(Some(why)),
    };
    let type_in = move |text| typed.set(text);
    let field = checked_field(
        part,
        Mode::Decimal,
        text(label),
        typed,
        true,
        type_in,
        wrong,
    );
    group(
        None,
        vec![
            field,
            button("wide", format!("{part}-keep"), t("Keep it"), keep),
        ],
    )
}

/// A body mass as typed.
pub fn mass_of(typed: &str, unit: Unit) -> Result<BodyValue, String> {
    let mass = Load::parse_in(typed, unit).map_err(|error| error.to_string())?;
    if mass.is_zero() {
        return Err(t("a body mass is above 0").to_owned());
    }
    Ok(BodyValue::Mass(mass))
}

fn weigh(app: Stanchion, unit: Seen<Unit>) -> AnyView {
    let label = move || say!("body mass today, {unit}", unit = unit.get());
    keeping("body-weigh", label, move |typed| {
        if let BodyValue::Mass(mass) = mass_of(typed, unit.get_untracked())? {
            app.keep_body_mass(mass);
        }
        Ok(())
    })
}

/// Today's value of a measure that was taken before.
fn again(app: Stanchion, name: Line, measured_in: MeasureUnit) -> AnyView {
    let words = say!("{name} today, {unit}", name, unit = measured_in.sign());
    keeping(
        "body-again",
        move || words.clone(),
        move |typed| {
            let measure =
                Measure::parse_in(typed, measured_in).map_err(|error| error.to_string())?;
            let name = name.clone();
            app.keep_body(
                app.id(),
                Some((clock::wall(), BodyValue::Measure { name, measure })),
            );
            Ok(())
        },
    )
}

/// A measure that was not taken before.
fn another(app: Stanchion) -> AnyView {
    let open = Live::new(false);
    let ask = button(
        "wide",
        "body-another",
        t("Measure something of your own"),
        move || {
            open.update(|open| *open = !*open);
        },
    );
    let form = when(open, move || {
        let name = Live::new(String::new());
        let value = Live::new(String::new());
        let at = Live::new(0_i64);
        let wrong = Live::new(None::<String>);
        let keep = move || -> Result<(), String> {
            let name = name.with_untracked(|name| read_name(name))?;
            let place = usize::try_from(at.get_untracked()).unwrap_or(0);
            let measured_in = MeasureUnit::ALL.get(place).copied();
            let measured_in = measured_in.unwrap_or(MeasureUnit::Cm);
            let measure = value.with_untracked(|typed| Measure::parse_in(typed, measured_in));
            let measure = measure.map_err(|error| error.to_string())?;
            let value = BodyValue::Measure { name, measure };
            app.keep_body(app.id(), Some((clock::wall(), value)));
            open.set(false);
            Ok(())
        };
        let labels = MeasureUnit::ALL.map(|unit| (unit.sign().to_owned(), ""));
        let pressed = Seen::new(move || Some(at.get()));
        let units = toggles_of("body-unit", labels, pressed, move |n| at.set(n));
        let type_name = move |text| name.set(text);
        let type_value = move |text| value.set(text);
        group(
            Some("body-new"),
            vec![
                field(
                    "body-name",
                    Mode::Text,
                    t("what is measured: waist"),
                    name,
                    true,
                    type_name,
                ),
                choices("choices three", t("unit"), units),
                field(
                    "body-value",
                    Mode::Decimal,
                    t("how much"),
                    value,
                    true,
                    type_value,
                ),
                wrong_word("body-value-wrong", wrong),
                button("wide strong", "body-keep", t("Keep it"), move || {
                    wrong.set(keep().err())
                }),
            ],
        )
    });
    group(None, vec![ask, form])
}

/// The entries, the newest first, and the way back for the one that was removed last.
fn entries(
    app: Stanchion,
    unit: Seen<Unit>,
    correcting: Live<Option<BodyEntry>>,
    gone: Live<Option<BodyEntry>>,
) -> AnyView {
    let most = Live::new(ENTRIES);
    let all = app.of(|model| model.body.len());
    let some = Seen::new(move || all.get() > 0 || gone.with(Option::is_some));
    let more = Seen::new(move || all.get() > most.get());
    let back = Seen::new(move || gone.with(Option::is_some));
    let listed = move || {
        dynamic(move || {
            let most = most.get();
            let newest = app.model.with(|model| {
                let newest = model.body.iter().rev().take(most);
                newest.cloned().collect::<Vec<_>>()
            });
            let rows = newest.into_iter().map(|entry| {
                let (said, when) = (
                    value_words(&entry.value, unit.get()),
                    day_and_time(entry.at),
                );
                let open = Callback::new(move |()| correcting.set(Some(entry.clone())));
                row_opener("body-entry", said, when, open)
            });
            list("rows", None, rows.collect())
        })
    };
    when(some, move || {
        let undo = move || {
            if let Some(entry) = gone.get_untracked() {
                app.keep_body(entry.id, Some((entry.at, entry.value)));
                gone.set(None);
            }
        };
        let inside = vec![
            when(back, move || {
                let said = text(move || {
                    let gone = gone.get();
                    gone.map_or_else(String::new, |entry| {
                        say!(
                            "Removed: {what}.",
                            what = value_words(&entry.value, unit.get())
                        )
                    })
                });
                let undo = button("plain", "body-back", t("Undo"), undo);
                group(Some("body-gone"), vec![quiet(said), undo])
            }),
            listed(),
            when(more, move || {
                button("plain", "body-more", t("Show more"), move || {
                    most.update(|most| *most += ENTRIES)
                })
            }),
        ];
        section(None, t("Entries"), inside)
    })
}
