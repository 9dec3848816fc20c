//! The correction or removal of one entry: kept as a new version of it; what was there stays on disk.

use super::page::{mass_of, value_words};
use crate::say;
use crate::store::{BodyEntry, BodyValue};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, button, checked_field, panel, quiet};
use crate::ui::stanchion::Stanchion;
use crate::units::{Measure, Unit, day_and_time};
use crate::words::{decimal, t};
use leptos::prelude::*;

fn typed_as(value: &BodyValue, unit: Unit) -> String {
    match value {
        BodyValue::Mass(mass) => mass.figure(unit),
        BodyValue::Measure { measure, .. } => decimal(&measure.amount().to_string()),
    }
}

/// The value as typed in place of another.
fn corrected(before: &BodyValue, typed: &str, unit: Unit) -> Result<BodyValue, String> {
    match before {
        // Untouched, it stays as exact as it was typed.
        before if typed_as(before, unit) == typed.trim() => Ok(before.clone()),
        BodyValue::Mass(_) => mass_of(typed, unit),
        BodyValue::Measure { name, measure } => {
            let measure = Measure::parse_in(typed, measure.unit());
            Ok(BodyValue::Measure {
                name: name.clone(),
                measure: measure.map_err(|error| error.to_string())?,
            })
        }
    }
}

/// The panel of an entry.
pub fn correction(
    app: Stanchion,
    entry: &BodyEntry,
    gone: Live<Option<BodyEntry>>,
    close: Callback<()>,
) -> AnyView {
    let unit = app.model.with_untracked(Model::unit);
    let typed = Live::new(typed_as(&entry.value, unit));
    let wrong = Live::new(None::<String>);
    let (before, removed) = (entry.clone(), entry.clone());
    let keep = move || match typed.with_untracked(|typed| corrected(&before.value, typed, unit)) {
        Ok(value) if value == before.value => close.run(()),
        Ok(value) => {
            app.keep_body(before.id, Some((before.at, value)));
            close.run(());
        }
        Err(why) => wrong.set(Some(why)),
    };
    let remove = move || {
        app.keep_body(removed.id, None);
        gone.set(Some(removed.clone()));
        close.run(());
    };
    let sign = match &entry.value {
        BodyValue::Mass(_) => unit.sign(),
        BodyValue::Measure { measure, .. } => measure.unit().sign(),
    };
    let label = say!("what it was, {sign}", sign);
    let type_in = move |text| typed.set(text);
    let inside = vec![
        quiet(format!(
            "{}, {}",
            value_words(&entry.value, unit),
            day_and_time(entry.at)
        )),
        checked_field(
            "body-correct",
            Mode::Decimal,
            label,
            typed,
            true,
            type_in,
            wrong,
        ),
        button(
            "wide strong",
            "body-correct-keep",
            t("Keep the correction"),
            keep,
        ),
        button("wide", "body-remove", t("Remove this entry"), remove),
    ];
    panel("body-panel", t("Correct this entry"), close, inside)
}
