//! Warnings about the order of a sheet's blocks, each with its reason, and the way to leave it as it is. The first stands open;
//! the others are folded behind it, so that the sheet itself is not far below.

use crate::exercises::{Catalogue, order_check};
use crate::say;
use crate::sheet::{OrderWarning, Sheet};
use crate::ui::parts::{Text, el, group, quiet, section, tap, text, words};
use crate::words::t;
use leptos::prelude::*;

/// What speaks against the order of a sheet, open and settled; nothing where nothing does. A tap hands `on_change` the
/// sheet with the warning settled or open again; version and time of writing are still those of `sheet`.
pub fn order_view(sheet: &Sheet, exercises: &Catalogue, on_change: Callback<Sheet>) -> AnyView {
    let warnings = order_check(sheet, exercises);
    if warnings.is_empty() {
        return ().into_any();
    }
    let (settled, open): (Vec<_>, Vec<_>) = warnings
        .into_iter()
        .partition(|warning| sheet.settled.contains(warning));
    let mut inside: Vec<AnyView> = Vec::new();
    for warning in open {
        let settle = settle(sheet, warning, true, on_change);
        inside.push(group(
            Some("warning"),
            vec![
                words("caution", warning.said(sheet, exercises)),
                quiet(say!("From: {source}.", source = warning.source())),
                tap(
                    "wide",
                    "leave-so",
                    name(t("Leave it so"), sheet, exercises, warning),
                    t("Leave it so").into_any(),
                    settle,
                ),
            ],
        ));
    }
    for warning in settled {
        let open = settle(sheet, warning, false, on_change);
        inside.push(group(
            Some("left-so"),
            vec![
                quiet(say!(
                    "Left so: {warning}",
                    warning = warning.said(sheet, exercises),
                )),
                tap(
                    "wide",
                    "warn-again",
                    name(t("Warn again"), sheet, exercises, warning),
                    t("Warn again").into_any(),
                    open,
                ),
            ],
        ));
    }
    let mut inside = inside.into_iter();
    let first = inside.next();
    let others: Vec<AnyView> = inside.collect();
    let folded = (!others.is_empty()).then(|| {
        let summary = say!("{n} more on the order", n = others.len());
        el("details")
            .class("adder")
            .part("order-more")
            .child(el("summary").child(summary))
            .child(others)
            .view()
    });
    let inside = first.into_iter().chain(folded).collect();
    section(Some("order-check"), t("Order"), inside)
}

/// The accessible name of a button: its words, and which warning it is for.
fn name(label: &str, sheet: &Sheet, exercises: &Catalogue, warning: OrderWarning) -> Option<Text> {
    let name = format!("{label}: {}", warning.said(sheet, exercises));
    Some(text(move || name.clone()))
}

/// Hands the sheet on with the warning settled, or open again.
fn settle(
    sheet: &Sheet,
    warning: OrderWarning,
    settled: bool,
    on_change: Callback<Sheet>,
) -> Callback<()> {
    let mut changed = sheet.clone();
    changed.settle(warning, settled);
    Callback::new(move |()| on_change.run(changed.clone()))
}
