//! A place in the page where a view is drawn; it goes with the test.

use crate::help::{number, until};
use leptos::mount::{UnmountHandle, mount_to};
use leptos::prelude::*;
use leptos::tachys::view::any_view::AnyViewState;
use stanchion::ui::Live;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// What keeps a view on the stage.
type Shown = UnmountHandle<AnyViewState>;

/// A place in the page with a view in it.
pub struct Stage {
    place: HtmlElement,
    shown: Option<Shown>,
}

impl Stage {
    /// Draws a view.
    pub fn of(view: impl FnOnce() -> AnyView + 'static) -> Stage {
        let page = document();
        let place: HtmlElement = page.create_element("div").unwrap().unchecked_into();
        page.body().unwrap().append_child(&place).unwrap();
        let shown = mount_to(place.clone(), view);
        Stage {
            place,
            shown: Some(shown),
        }
    }

    /// Draws what follows `what`, which is redrawn whenever that is set.
    pub fn following(what: Live<u8>, lay: impl Fn(u8) -> AnyView + Send + Sync + 'static) -> Stage {
        Stage::of(move || (move || lay(what.get())).into_any())
    }

    /// What a selector finds.
    pub fn find(&self, css: &str) -> Element {
        let found = self.place.query_selector(css).unwrap();
        found.unwrap_or_else(|| panic!("no {css} in {}", self.drawn()))
    }

    /// All that was drawn.
    pub fn drawn(&self) -> String {
        // The library marks places by comments.
        let all = self.place.inner_html();
        all.split("<!---->")
            .flat_map(|part| part.split("<!-- -->"))
            .collect()
    }

    /// Takes the view off the stage.
    pub fn clear(&mut self) {
        self.shown = None;
    }
}

impl Drop for Stage {
    fn drop(&mut self) {
        self.clear();
        self.place.remove();
    }
}

/// Waits until the stage shows that.
pub async fn shows(stage: &Stage, wanted: &str) {
    until(wanted, || stage.drawn() == wanted).await;
}

/// Whether the element has the keyboard.
pub fn has_focus(element: &Element) -> bool {
    document().active_element().as_ref() == Some(element)
}

/// The element as one that takes taps and the keyboard.
pub fn hand_on(element: &Element) -> &HtmlElement {
    element.unchecked_ref()
}

/// How far an element was scrolled.
pub fn scrolled(css: &str) -> f64 {
    number(&format!("document.querySelector('{css}').scrollTop"))
}
