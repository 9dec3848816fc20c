//! Small things done to the page as a whole.

use super::js;
use wasm_bindgen::JsCast;
use web_sys::{Document, Element, Event, FocusOptions, HtmlElement, MouseEvent};

pub(super) fn document() -> Option<Document> {
    web_sys::window()?.document()
}

/// Shows the top of the page.
pub fn scroll_to_top() {
    if let Some(window) = web_sys::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// How far the element of this id is scrolled, in pixels.
#[must_use]
pub fn scrolled(id: &str) -> i32 {
    let element = document().and_then(|document| document.get_element_by_id(id));
    element.map_or(0, |element| element.scroll_top())
}

/// Scrolls the element of this id so far, or as far as it goes.
pub fn scroll(id: &str, top: i32) {
    if let Some(element) = document().and_then(|document| document.get_element_by_id(id)) {
        element.set_scroll_top(top);
    }
}

/// Opens the browser's print dialog.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // A browser without one does nothing.
        let _ = window.print();
    }
}

/// Gives the keyboard to the element of this id; whether there is one that takes it.
pub fn focus(id: &str) -> bool {
    let Some(document) = document() else {
        return false;
    };
    let target = document
        .get_element_by_id(id)
        .and_then(|element| element.dyn_into::<HtmlElement>().ok());
    target.is_some_and(|target| {
        target.focus().is_ok()
            && document
                .active_element()
                .is_some_and(|active| *target == active)
    })
}

/// Gives the keyboard to the first element that a selector finds; whether there is one that takes it.
pub fn focus_on(selector: &str) -> bool {
    let target = document().and_then(|document| document.query_selector(selector).ok()?);
    target.is_some_and(|target| Focused(target).again())
}

/// Gives the keyboard to the first element that `to` finds, where something in an element that `from` finds has it.
pub fn hand_on(from: &str, to: &str) {
    let active = document().and_then(|document| document.active_element());
    if active.is_some_and(|active| matches!(active.closest(from), Ok(Some(_)))) {
        focus_on(to);
    }
}

/// Whether nothing on the page has the keyboard: what had it is gone, or nothing ever had.
#[must_use]
pub fn focus_is_lost() -> bool {
    let active = document().and_then(|document| document.active_element());
    active.is_none_or(|active| active.tag_name() == "BODY")
}

/// Leaves a field that is being typed into, as a tap beside it does: what was typed is told before its place goes.
pub fn leave_field() {
    let active = document().and_then(|document| document.active_element());
    let active =
        active.filter(|active| matches!(&*active.tag_name(), "INPUT" | "TEXTAREA" | "SELECT"));
    if let Some(field) = active.and_then(|active| active.dyn_into::<HtmlElement>().ok()) {
        // It refuses nothing; what cannot be left stays.
        let _ = field.blur();
    }
}

/// Gives the keyboard to an element and scrolls nothing.
pub(super) fn focus_in_place(element: &HtmlElement) {
    let options = FocusOptions::new();
    options.set_prevent_scroll(true);
    // Refused, it stays where it was.
    let _ = element.focus_with_options(&options);
}

/// All elements of that `data-part`, in their order on the page.
pub(super) fn all_of(document: &Document, part: &str) -> Vec<Element> {
    all(document, &format!("[data-part='{part}']"))
}

/// All elements that a selector finds, in their order on the page.
pub(super) fn all(document: &Document, selector: &str) -> Vec<Element> {
    let Ok(found) = document.query_selector_all(selector) else {
        return Vec::new();
    };
    let at = |n| found.get(n)?.dyn_into().ok();
    (0..found.length()).filter_map(at).collect()
}

/// The element that has the keyboard.
#[must_use]
pub fn focused() -> Option<Focused> {
    document()?.active_element().map(Focused)
}

/// All that a reader can reach and that is neither in nor around the element that a selector finds, in as few elements as
/// can be. What is out of reach already is left out, and so is what has no words or controls (`aria-hidden`).
pub(super) fn beside(selector: &str) -> Vec<Element> {
    let mut beside = Vec::new();
    let found = document().and_then(|document| document.query_selector(selector).ok()?);
    let mut inner = found;
    while let Some(element) = inner {
        let Some(outer) = element.parent_element() else {
            break;
        };
        let mut sibling = outer.first_element_child();
        while let Some(one) = sibling {
            let reached = !one.has_attribute("inert") && !one.has_attribute("aria-hidden");
            if one != element && reached && outer.tag_name() != "HTML" {
                beside.push(one.clone());
            }
            sibling = one.next_element_sibling();
        }
        inner = Some(outer);
    }
    beside
}

/// An element that had the keyboard.
#[derive(Clone)]
pub struct Focused(Element);

impl Focused {
    /// Gives it the keyboard again; whether it is still there and takes it.
    pub fn again(&self) -> bool {
        let taken = self.0.dyn_ref::<HtmlElement>().map(HtmlElement::focus);
        matches!(taken, Some(Ok(())))
            && document()
                .and_then(|document| document.active_element())
                .as_ref()
                == Some(&self.0)
    }
}

/// How wide an element is, in pixels of ordinary text size: with text twice as large there are half as many. None where it
/// is not on the page.
#[must_use]
pub fn width_in_units(id: &str) -> Option<i64> {
    let element = document()?.get_element_by_id(id)?;
    let root = document()?.document_element()?;
    let window = js::global("window")?;
    let style = js::call(&window, "getComputedStyle", &[root.into()]).ok();
    let size = style.and_then(|style| js::get(&style, "fontSize")?.as_string());
    let size = size.map_or(16.0, |size| js_sys::parse_float(&size));
    let size = if size >= 1.0 { size } else { 16.0 };
    let width = f64::from(element.client_width()) * 16.0 / size;
    (width > 0.0).then_some(width as i64)
}

/// Where in the element that listens a tap went down, as tenths of so many units that it is wide; none for another event.
#[must_use]
pub fn tenths_in(tap: &Event, units: i64) -> Option<(i64, i64)> {
    let element = tap.current_target()?.dyn_into::<Element>().ok()?;
    let tap = tap.dyn_ref::<MouseEvent>()?;
    let wide = i64::from(element.client_width()).max(1);
    let tenths = |pixels: i32| i64::from(pixels) * units * 10 / wide;
    Some((tenths(tap.offset_x()), tenths(tap.offset_y())))
}

/// Sets `data-theme` on the root element, or takes it off.
pub fn set_theme(theme: Option<&str>) {
    if let Some(root) = document().and_then(|document| document.document_element()) {
        // Refused only for a name that is no attribute name, and this one is.
        let _ = match theme {
            Some(theme) => root.set_attribute("data-theme", theme),
            None => root.remove_attribute("data-theme"),
        };
    }
}

/// Removes the element of this id, if it is there.
pub fn remove(id: &str) {
    if let Some(element) = document().and_then(|document| document.get_element_by_id(id)) {
        element.remove();
    }
}

/// Leaves a mark on the browser's timeline, for measuring.
pub fn mark(name: &str) {
    if let Some(performance) = web_sys::window().and_then(|window| window.performance()) {
        // An unmeasured moment is no loss to the person.
        let _ = performance.mark(name);
    }
}
