//! The panel of the air: temperature and humidity, what they come to, and what to do.

use crate::heat::{Air, AirError, Category, Humidity, Scale, Temperature, heat_index};
use crate::say;
use crate::session::What;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{Mode, button, dynamic, field, line, panel, quiet, wrong_word};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::Unit;
use crate::words::t;
use leptos::prelude::*;

/// The scale that goes with the unit of loads.
fn scale(model: &Model) -> Scale {
    match model.unit() {
        Unit::Kg => Scale::Celsius,
        Unit::Lb => Scale::Fahrenheit,
    }
}

/// What index, category and rests come to.
fn said(air: Air, scale: Scale) -> Vec<AnyView> {
    let index = heat_index(air);
    let category = Category::of(index);
    let reading = say!(
        "Heat index {index}: {category}",
        index = index.shown(scale),
        category = category.name(),
    );
    let class = match category {
        Category::None => "quiet",
        _ => "caution",
    };
    let mut inside = vec![
        line("", "heat-index", reading),
        line(class, "heat-caution", category.advice()),
    ];
    if category != Category::None {
        let longer = say!(
            "Rests from the next one on are {percent} % longer.",
            percent = category.stretch_percent(),
        );
        inside.push(line("quiet", "heat-rests", longer));
    }
    inside
}

/// Temperature and humidity where the session is done.
pub fn heat_panel(app: Stanchion, close: Callback<()>) -> AnyView {
    let (before, scale) = app.model.with_untracked(|model| {
        let air = model
            .session
            .as_ref()
            .and_then(|session| session.state().air);
        // What was noted stays in the scale that it was typed in.
        let scale = air.map_or_else(|| scale(model), |air| air.temperature.scale());
        (air, scale)
    });
    let (degrees, percent) = before.map_or_else(Default::default, |air| {
        (air.temperature.figure(), air.humidity.get().to_string())
    });
    let degrees = Live::new(degrees);
    let percent = Live::new(percent);
    let wrong = Live::new(None::<String>);
    let air = Seen::new(move || {
        Ok::<Air, AirError>(Air {
            temperature: Temperature::parse(&degrees.get(), scale)?,
            humidity: Humidity::parse(&percent.get())?,
        })
    });
    let take = move || match air.get_untracked() {
        Ok(air) => {
            app.act(What::AirNoted { air });
            close.run(());
        }
        Err(error) => wrong.set(Some(error.to_string())),
    };
    // What was said of the figures of before does not stand beside the new ones.
    let type_into = move |figure: Live<String>, typed: String| {
        wrong.set(None);
        figure.set(typed);
    };
    let reading = dynamic(move || match air.get() {
        Ok(air) => said(air, scale).into_any(),
        Err(_) => ().into_any(),
    });
    panel(
        "heat-panel",
        t("Heat"),
        close,
        vec![
            quiet(t("Read in the shade, where you train.")),
            field(
                "heat-temperature",
                Mode::Decimal,
                say!("temperature, {scale}", scale = scale.symbol()),
                degrees,
                true,
                move |typed| type_into(degrees, typed),
            ),
            field(
                "heat-humidity",
                Mode::Whole,
                t("humidity, %"),
                percent,
                true,
                move |typed| type_into(percent, typed),
            ),
            reading,
            wrong_word("heat-wrong", wrong),
            button("wide strong", "heat-use", t("Use it"), take),
        ],
    )
}
