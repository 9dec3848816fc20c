//! A panel that rises over the pad and is put away by its button, the Escape key, the back gesture or a tap beside it.

use super::controls::button;
use super::element::el;
use crate::device::events::on_key;
use crate::device::modal::Modal;
use crate::device::steps;
use crate::words::t;
use leptos::prelude::*;

/// A panel with a title and a button that puts it away.
pub fn panel(
    part: &'static str,
    title: &'static str,
    close: Callback<()>,
    inside: Vec<AnyView>,
) -> AnyView {
    let keys = StoredValue::new_local(Some(on_key(move |key| {
        let escape = key == "Escape";
        if escape {
            close.run(());
        }
        escape
    })));
    let back = StoredValue::new_local(Some(steps::over(move || close.run(()))));
    let under = StoredValue::new_local(Some(Modal::over(".panel")));
    on_cleanup(move || {
        keys.set_value(None);
        back.set_value(None);
        under.set_value(None);
    });
    vec![
        el("div")
            .class("panel-back")
            .set("aria-hidden", "true")
            .on_tap(close)
            .view(),
        el("section")
            .class("panel")
            .set("role", "dialog")
            .set("aria-modal", "true")
            .set("aria-label", title)
            .set("tabindex", "-1")
            .part(part)
            .child(
                el("header")
                    .class("panel-head")
                    .child(el("h2").child(title))
                    .child(button("plain", "panel-close", t("Close"), move || {
                        close.run(())
                    })),
            )
            .child(inside)
            .view(),
    ]
    .into_any()
}
