//! A panel that rises over the pad and is put away by its button, the Escape key or a tap beside it.

use crate::device::events::on_key;
use leptos::prelude::*;

/// A panel with a title and a button that puts it away.
#[component]
pub fn Panel(
    /// Title.
    #[prop(into)]
    title: String,
    /// Hook for tests and styles.
    part: &'static str,
    /// Puts it away.
    close: Callback<()>,
    children: Children,
) -> impl IntoView {
    let keys = StoredValue::new_local(Some(on_key(move |key| {
        let escape = key == "Escape";
        if escape {
            close.run(());
        }
        escape
    })));
    on_cleanup(move || keys.set_value(None));
    let heading = title.clone();
    view! {
        <div class="panel-back" on:click=move |_| close.run(())></div>
        <section class="panel" role="dialog" aria-modal="true" aria-label=title data-part=part>
            <header class="panel-head">
                <h2>{heading}</h2>
                <button class="plain" data-part="panel-close" on:click=move |_| close.run(())>"Close"</button>
            </header>
            {children()}
        </section>
    }
}
