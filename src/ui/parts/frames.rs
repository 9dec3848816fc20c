//! What holds other views: pages, sections, lists, and parts that change as a whole.

use super::words::h2;
use leptos::prelude::*;
use std::sync::Arc;

/// A view that is laid anew when what it reads changes.
pub fn dynamic(f: impl Fn() -> AnyView + Send + Sync + 'static) -> AnyView {
    // One concrete closure type for all of them.
    let f: Arc<dyn Fn() -> AnyView + Send + Sync> = Arc::new(f);
    (move || f()).into_any()
}

/// A view that is there while `on` is true.
pub fn when(
    on: impl Into<Signal<bool>>,
    f: impl Fn() -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let on: Signal<bool> = on.into();
    // The view is laid anew when the answer changes, not whenever it is given again.
    let on = Memo::new(move |_| on.get());
    dynamic(move || if on.get() { f() } else { ().into_any() })
}

/// A scrolling page.
pub fn page(part: &'static str, inside: Vec<AnyView>) -> AnyView {
    view! { <div class="page" data-part=part>{inside}</div> }.into_any()
}

/// A section with its heading.
pub fn section(part: Option<&'static str>, title: &'static str, inside: Vec<AnyView>) -> AnyView {
    view! { <section class="group" data-part=part>{h2(title)}{inside}</section> }.into_any()
}

/// A list of that class; each view is an item.
pub fn list(class: &'static str, part: Option<&'static str>, items: Vec<AnyView>) -> AnyView {
    let items: Vec<AnyView> = items
        .into_iter()
        .map(|item| view! { <li>{item}</li> }.into_any())
        .collect();
    view! { <ul class=class data-part=part>{items}</ul> }.into_any()
}

/// A row that leads somewhere: a strong line, and quiet lines before and after it.
pub fn row_link(
    part: &'static str,
    href: String,
    before: String,
    strong: String,
    after: String,
) -> AnyView {
    view! {
        <a class="row" href=href data-part=part>
            <span class="row-date">{before}</span>
            <strong>{strong}</strong>
            <span class="quiet">{after}</span>
        </a>
    }
    .into_any()
}
