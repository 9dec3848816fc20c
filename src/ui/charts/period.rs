//! The choice of how far back pictures go.

use crate::pictures::Period;
use crate::ui::live::Live;
use crate::ui::parts::{choices, toggles_of};
use crate::ui::seen::Seen;
use crate::words::t;
use leptos::prelude::*;

/// The choice of a period; `part` is the stem of its hooks.
pub fn periods(part: &'static str, period: Live<Period>) -> AnyView {
    let at = Seen::new(move || {
        let found = (0..).zip(Period::ALL).find(|(_, one)| *one == period.get());
        found.map(|(n, _)| n)
    });
    let labels = Period::ALL.map(|period| (period.name().to_owned(), ""));
    let inside = toggles_of(part, labels, at, move |n| {
        let found = usize::try_from(n).ok().and_then(|n| Period::ALL.get(n));
        if let Some(found) = found {
            period.set(*found);
        }
    });
    choices("choices three", t("period"), inside)
}
