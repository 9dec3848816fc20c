//! No session is under way: which sheet shall be done?

use super::begin::Beginning;
use crate::device::clock;
use crate::order;
use crate::programme::next;
use crate::say;
use crate::session::SessionId;
use crate::sheet::{Line, SheetId};
use crate::ui::away::nudge;
use crate::ui::model::Model;
use crate::ui::parts::{dynamic, el, h1, line, list, page, quiet, tap, words};
use crate::ui::people::{their_sheet, with_whom};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::units::day;
use crate::words::t;
use leptos::prelude::*;

/// A sheet as it is offered.
#[derive(Clone, PartialEq)]
struct Offer {
    id: SheetId,
    name: Line,
    /// Its exercises, in their order.
    exercises: String,
    last: Option<(String, SessionId)>,
    /// Why the programme has it come next.
    because: Option<String>,
    /// How it is begun today.
    beginning: Beginning,
}

fn offers(model: &Model) -> Vec<Offer> {
    let now = clock::wall();
    let coming = coming(model, now);
    let mut offers: Vec<Offer> = model
        .sheets
        .iter()
        .filter(|sheet| sheet.written_for.is_none())
        .map(|sheet| {
            let last = model.last_of(sheet.id);
            let because = coming.as_ref().filter(|(id, _)| *id == sheet.id);
            let names: Vec<String> = sheet.blocks().map(|block| block.exercise.said()).collect();
            Offer {
                id: sheet.id,
                name: sheet.name.clone(),
                exercises: names.join(" · "),
                last: last.map(|(began, session)| (day(began), session)),
                because: because.map(|(_, because)| because.clone()),
                beginning: Beginning::of(model, sheet, now),
            }
        })
        .collect();
    // What the programme offers comes first, then the one that was longest ago: it is most likely meant.
    order::by_key(&mut offers, |offer| {
        let session = offer.last.as_ref().map(|(_, session)| *session);
        (offer.because.is_none(), session, offer.name.clone())
    });
    offers
}

/// The sheet that comes next by the programme, and why.
fn coming(model: &Model, now: chrono::DateTime<chrono::FixedOffset>) -> Option<(SheetId, String)> {
    let exists = |id: SheetId| model.sheet(id).is_some();
    let offer = next(model.programme()?, &exists, &model.done_sheets(), now)?;
    let name = |id: SheetId| model.sheet(id).map(|sheet| sheet.name.to_string());
    Some((offer.sheet, offer.because.said(&name)))
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
            h1(t("Which sheet today?")),
            with_whom(app),
            inside,
            nudge(app),
            words(
                "quiet caution",
                t(
                    "Stop at pain, dizziness or a tight chest. A physician or a qualified coach knows more than a program.",
                ),
            ),
            their_sheet(app),
        ],
    )
}

fn none() -> AnyView {
    el("p")
        .class("quiet")
        .part("no-sheets")
        .child(t(
            "There is no sheet yet. Write one, or open one from a file, in ",
        ))
        .child(el("a").set("href", Place::Sheets.href()).child(t("Sheets")))
        .child(".")
        .view()
}

fn offered(app: Stanchion, offer: Offer) -> AnyView {
    let Offer {
        id,
        name,
        exercises,
        last,
        because,
        beginning,
    } = offer;
    let last = last.map_or_else(
        || t("not done yet").to_owned(),
        |(day, _)| say!("last on {day}", day),
    );
    let beside = beginning.beside(app, id);
    let light = beginning.light.is_some();
    let begin = Callback::new(move |()| beginning.begin(app, id));
    let word = if light { t("begin, light") } else { t("begin") };
    let face = vec![
        el("span")
            .class("offer-name")
            .child(name.to_string())
            .view(),
        " ".into_any(),
        el("span").class("offer-word").child(word).view(),
    ];
    let class = if because.is_some() {
        "offer-begin lead"
    } else {
        "offer-begin"
    };
    // It begins with what is read on it, for those who speak to their phone (WCAG 2.5.3).
    let name = format!("{name} {word}").into();
    let mut inside = vec![tap(class, "begin", Some(name), face.into_any(), begin)];
    inside.extend(because.map(|because| line("because", "offer-because", because)));
    inside.extend(beside);
    inside.extend([
        quiet(exercises),
        el("p")
            .class("quiet")
            .child(last)
            .child(" · ")
            .child(
                el("a")
                    .set("href", Place::Sheet(id).href())
                    .part("offer-look")
                    .child(t("look at it")),
            )
            .view(),
    ]);
    el("div").class("offer").part("offer").child(inside).view()
}
