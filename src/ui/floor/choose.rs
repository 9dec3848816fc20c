//! No session is under way: which sheet shall be done?

use crate::device::sound::Sound;
use crate::order;
use crate::session::SessionId;
use crate::sheet::Sheet;
use crate::ui::model::Model;
use crate::ui::parts::{dynamic, h1, list, page, quiet, tap, text, words};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::units::day;
use leptos::prelude::*;

/// A sheet as it is offered.
#[derive(Clone, PartialEq)]
struct Offer {
    sheet: Sheet,
    last: Option<(String, SessionId)>,
}

fn offers(model: &Model) -> Vec<Offer> {
    let mut offers: Vec<Offer> = model
        .sheets
        .iter()
        .map(|sheet| {
            let last = model
                .headings
                .iter()
                .find(|heading| heading.sheet_id == sheet.id);
            Offer {
                sheet: sheet.clone(),
                last: last.map(|heading| (day(heading.began), heading.session)),
            }
        })
        .collect();
    // The one that was longest ago comes first: it is most likely meant.
    order::by_key(&mut offers, |offer| {
        let session = offer.last.as_ref().map(|(_, session)| *session);
        (session, offer.sheet.name.clone())
    });
    offers
}

/// The choice of a sheet.
pub fn choice(app: Stanchion) -> AnyView {
    let list_of = app.of(offers);
    let inside = dynamic(move || {
        let offers = list_of.get();
        if offers.is_empty() {
            return none();
        }
        list(
            "offers",
            None,
            offers
                .into_iter()
                .map(|offer| offered(app, offer))
                .collect(),
        )
    });
    page(
        "choose",
        vec![
            h1("Which sheet today?"),
            inside,
            words(
                "quiet caution",
                "Stop at pain, dizziness or a tight chest. A physician or a qualified coach knows more than a program.",
            ),
        ],
    )
}

fn none() -> AnyView {
    view! {
        <p class="quiet" data-part="no-sheets">
            "There is no sheet yet. Open one from a file in "
            <a href=Place::Sheets.href()>"Sheets"</a>
            "."
        </p>
    }
    .into_any()
}

fn offered(app: Stanchion, offer: Offer) -> AnyView {
    let Offer { sheet, last } = offer;
    let id = sheet.id;
    let names: Vec<String> = sheet
        .blocks()
        .map(|block| block.exercise.name.to_string())
        .collect();
    let last = last.map_or_else(
        || "not done yet".to_owned(),
        |(day, _)| format!("last on {day}"),
    );
    let begin = Callback::new(move |()| {
        // Inside the tap, or the browser stays silent.
        app.sound.with_value(Sound::unlock);
        app.begin(id);
    });
    let face = view! {
        <span class="offer-name">{sheet.name.to_string()}</span>
        <span class="offer-word">"begin"</span>
    };
    let name = text(move || format!("Begin {}", sheet.name));
    let inside = vec![
        tap("offer-begin", "begin", Some(name), face.into_any(), begin),
        quiet(names.join(" · ")),
        view! {
            <p class="quiet">
                {last}
                " · "
                <a href=Place::Sheet(id).href() data-part="offer-look">"look at it"</a>
            </p>
        }
        .into_any(),
    ];
    view! { <div class="offer" data-part="offer">{inside}</div> }.into_any()
}
