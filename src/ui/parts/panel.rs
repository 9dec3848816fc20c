//! A panel that rises over the pad and is put away by its button, the Escape key or a tap beside it.

use super::controls::button;
use crate::device::events::on_key;
use crate::device::modal::Modal;
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
    let under = StoredValue::new_local(Some(Modal::over(".panel")));
    on_cleanup(move || {
        keys.set_value(None);
        under.set_value(None);
    });
    view! {
        <div class="panel-back" aria-hidden="true" on:click=move |_| close.run(())></div>
        <section class="panel" role="dialog" aria-modal="true" aria-label=title tabindex="-1" data-part=part>
            <header class="panel-head">
                <h2>{title}</h2>
                {button("plain", "panel-close", t("Close"), move || close.run(()))}
            </header>
            {inside}
        </section>
    }
    .into_any()
}
