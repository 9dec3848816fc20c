//! What holds other views: pages, sections, lists, and parts that change as a whole.

use super::Text;
use super::element::el;
use super::words::h2;
use crate::ui::seen::Seen;
use crate::ui::unfollow::leave_with_this;
use leptos::prelude::*;
use std::sync::Arc;

/// What lays a view, in one concrete type for all of them.
type Lay = Arc<dyn Fn() -> AnyView + Send + Sync>;

/// A view that is rebuilt when what it reads changes.
pub fn dynamic(f: impl Fn() -> AnyView + Send + Sync + 'static) -> AnyView {
    dynamic_of(Arc::new(f))
}

// A closure in a generic function is compiled for each of its uses: this one must not be generic.
fn dynamic_of(lay: Lay) -> AnyView {
    let lay = move || {
        leave_with_this();
        lay()
    };
    lay.into_any()
}

/// A view that is laid in a function of its own.
///
/// A browser compiles a function when it is called for the first time, and the build puts a function that is called from
/// one place alone into that one: so without this the start would wait until all places of the app are compiled.
#[inline(never)]
pub fn apart(lay: impl FnOnce() -> AnyView) -> AnyView {
    lay()
}

/// A view that is there while `on` is true.
pub fn when(on: impl Into<Seen<bool>>, f: impl Fn() -> AnyView + Send + Sync + 'static) -> AnyView {
    when_of(on.into(), Arc::new(f))
}

fn when_of(on: Seen<bool>, lay: Lay) -> AnyView {
    // The view is rebuilt when the answer changes, not whenever it is given again.
    let on = Seen::new(move || on.get());
    dynamic(move || if on.get() { lay() } else { ().into_any() })
}

/// A scrolling page.
pub fn page(part: &'static str, inside: Vec<AnyView>) -> AnyView {
    el("div").class("page").part(part).child(inside).view()
}

/// A section with its heading.
pub fn section(
    part: Option<&'static str>,
    title: impl Into<Text>,
    inside: Vec<AnyView>,
) -> AnyView {
    let mut all = vec![h2(title)];
    all.extend(inside);
    group(part, all)
}

/// A section without a heading.
pub fn group(part: Option<&'static str>, inside: Vec<AnyView>) -> AnyView {
    el("section").class("group").part(part).child(inside).view()
}

/// A list of that class; each view is an item.
pub fn list(class: &'static str, part: Option<&'static str>, items: Vec<AnyView>) -> AnyView {
    let items: Vec<AnyView> = items
        .into_iter()
        .map(|item| el("li").child(item).view())
        .collect();
    el("ul").class(class).part(part).child(items).view()
}
