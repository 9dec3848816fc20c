//! No session is under way: which sheet shall be done?

use crate::session::SessionId;
use crate::sheet::Sheet;
use crate::ui::model::Model;
use crate::ui::place::Place;
use crate::ui::stanchion::stanchion;
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
                .find(|heading| heading.sheet == sheet.name);
            Offer {
                sheet: sheet.clone(),
                last: last.map(|heading| {
                    (
                        heading.began.format("%-d %b %Y").to_string(),
                        heading.session,
                    )
                }),
            }
        })
        .collect();
    // The one that was longest ago comes first: it is most likely meant.
    offers.sort_by_key(|offer| {
        let session = offer.last.as_ref().map(|(_, session)| *session);
        (session, offer.sheet.name.clone())
    });
    offers
}

/// The choice of a sheet.
#[component]
pub fn Choose() -> impl IntoView {
    let app = stanchion();
    let list = app.of(offers);
    view! {
        <div class="page" data-part="choose">
            <h1>"Which sheet today?"</h1>
            <Show when=move || list.with(Vec::is_empty)>
                <p class="quiet" data-part="no-sheets">
                    "There is no sheet yet. Open one from a file in "
                    <a href=Place::Sheets.href()>"Sheets"</a>
                    "."
                </p>
            </Show>
            <ul class="offers">
                <For each=move || list.get() key=|offer| (offer.sheet.version, offer.last.clone()) let:offer>
                    <Offered offer/>
                </For>
            </ul>
            <p class="quiet caution">
                "Stop at pain, dizziness or a tight chest. A physician or a qualified coach knows more than a program."
            </p>
        </div>
    }
}

#[component]
fn Offered(offer: Offer) -> impl IntoView {
    let app = stanchion();
    let Offer { sheet, last } = offer;
    let id = sheet.id;
    let names: Vec<String> = sheet
        .blocks()
        .map(|block| block.exercise.name.to_string())
        .collect();
    view! {
        <li class="offer" data-part="offer">
            <button
                class="offer-begin"
                data-part="begin"
                aria-label=format!("Begin {}", sheet.name)
                on:click=move |_| {
                    // Inside the tap, or the browser stays silent.
                    app.sound.with_value(crate::device::sound::Sound::unlock);
                    app.begin(id);
                }
            >
                <span class="offer-name">{sheet.name.to_string()}</span>
                <span class="offer-word">"begin"</span>
            </button>
            <p class="quiet">{names.join(" · ")}</p>
            <p class="quiet">
                {last.map_or_else(|| "not done yet".to_owned(), |(day, _)| format!("last on {day}"))}
                " · "
                <a href=Place::Sheet(id).href() data-part="offer-look">"look at it"</a>
            </p>
        </li>
    }
}
