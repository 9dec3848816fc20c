//! Another band for what is left of the block: those of the kit, and the one of the sheet.

use super::swap::{stop_first, under_way};
use crate::session::{Swap, What};
use crate::sheet::{Line, LoadBasis, SetKey, is_any_band, is_same_band};
use crate::ui::model::Model;
use crate::ui::parts::{choices, dynamic, panel, quiet, toggles_of};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// What the panel shows.
#[derive(Clone, PartialEq)]
struct Offer {
    /// The exercise.
    now: String,
    /// The set of the block that is under way, which must be stopped first.
    under_way: Option<SetKey>,
    bands: Vec<Line>,
    /// The place of the one that counts.
    at: Option<i64>,
}

/// The bands for the set that is to be done now or next.
fn offer(model: &Model) -> Option<Offer> {
    let state = model.session.as_ref()?.state();
    let slot = state.current()?;
    let block = state.block_of(slot);
    let LoadBasis::Band(used) = &block.basis else {
        return None;
    };
    let bands = state.bands(slot, model.rack());
    let mut places = (0..).zip(&bands);
    Some(Offer {
        now: block.exercise.said(),
        under_way: under_way(state, block.id),
        at: places
            .find(|(_, band)| is_same_band(band, used))
            .map(|(at, _)| at),
        bands,
    })
}

/// Another band for what is left of the block.
pub fn band_panel(app: Stanchion, close: Callback<()>) -> AnyView {
    let offer = app.of(offer);
    let inside = dynamic(move || match offer.get() {
        None => ().into_any(),
        Some(Offer {
            under_way: Some(set),
            now,
            ..
        }) => stop_first(app, set, now),
        Some(Offer { bands, at, .. }) => choice(app, bands, at, close),
    });
    panel("band-panel", t("Another band"), close, vec![inside])
}

fn choice(app: Stanchion, bands: Vec<Line>, at: Option<i64>, close: Callback<()>) -> AnyView {
    let labels = bands.iter().map(|band| {
        if is_any_band(band) {
            (t("a band").to_owned(), "")
        } else {
            (band.to_string(), "")
        }
    });
    let labels: Vec<_> = labels.collect();
    let bands = StoredValue::new(bands);
    let choose = move |n| {
        let swap = app.model.with_untracked(|model| {
            let state = model.session.as_ref()?.state();
            let band = bands.with_value(|bands| bands.get(usize::try_from(n).ok()?).cloned())?;
            Swap::to_band(state, state.current()?, &band)
        });
        if let Some(swap) = swap {
            app.act(What::BlockSwapped(Box::new(swap)));
        }
        close.run(());
    };
    let toggles = toggles_of("band-take", labels, Seen::new(move || at), choose);
    vec![
        quiet(t(
            "For the sets of this block that are left. Sets done stay as they are.",
        )),
        choices("choices", t("which band"), toggles),
    ]
    .into_any()
}
