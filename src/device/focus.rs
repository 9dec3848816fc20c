//! Keeps the keyboard on the page. What was pressed may be gone once it has done its work: a row that was moved or taken off, a
//! place that was left. A browser then gives the keyboard to nothing: the next key begins at the top, and a reader says nothing.
//!
//! Nothing is moved that has the keyboard. Where it is lost, it goes to the same control where that was only drawn anew, else
//! to what takes back what was done, to the panel that is open, to the control that took its place, or to the heading above.

use super::dom;
use super::events::{Listener, on_press_first};
use super::painted::once_painted;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Document, Element, HtmlElement};

/// For so many pictures it is looked whether the keyboard was lost: what is read first comes after some.
const PICTURES: u32 = 12;

/// What takes back what was just done.
const BACK: &str = "[data-part$='-undo'], [data-part='thing-back'], [data-part='session-back'], [data-part='body-back'], \
                    [data-part='bring-back'], [data-part='lifter-back']";

/// Words in the hooks of controls after which the next of their kind is not to be pressed by the same key held too long.
const LAST_STEPS: [&str; 6] = ["remove", "off", "out", "now", "sure", "away"];

thread_local! {
    /// Which press, or change of place, is followed.
    static TURN: Cell<u32> = const { Cell::new(0) };
    /// The name of the app, which the title of the page begins as.
    static NAME: RefCell<Option<String>> = const { RefCell::new(None) };
}

/// Follows what is pressed from now on.
pub fn keep() -> Listener {
    on_press_first(|event| {
        let target = event.target().and_then(|target| target.dyn_into().ok());
        if let Some(pressed) = target.and_then(|target| Pressed::of(&target)) {
            settle(|_| (), Rc::new(move |document| pressed.heirs(document)));
        }
    })
}

/// A place was opened: the page is called by its heading, and that has the keyboard where nothing else has.
pub fn arrive() {
    let heads = ["#place h1", ".pad-main", "#place"].into_iter();
    settle(
        call_page,
        Rc::new(move |document| {
            let found = heads.clone();
            let found = found.filter_map(|head| document.query_selector(head).ok()?);
            found.collect()
        }),
    );
}

fn call_page(document: &Document) {
    let name = NAME.with_borrow_mut(|name| name.get_or_insert_with(|| document.title()).clone());
    let heading = document.query_selector("#place h1").ok().flatten();
    let heading = heading.and_then(|heading| heading.text_content());
    let title = heading.map_or_else(|| name.clone(), |heading| format!("{heading} · {name}"));
    if document.title() != title {
        document.set_title(&title);
    }
}

/// Gives those who may have the keyboard, the first first.
type Heirs = Rc<dyn Fn(&Document) -> Vec<Element>>;

/// Looks with each of the next pictures, at which `each` is done.
fn settle(each: fn(&Document), heirs: Heirs) {
    let turn = TURN.get().wrapping_add(1);
    TURN.set(turn);
    look(turn, PICTURES, each, heirs);
}

fn look(turn: u32, pictures: u32, each: fn(&Document), heirs: Heirs) {
    once_painted(move || {
        let Some(document) = dom::document().filter(|_| TURN.get() == turn) else {
            return;
        };
        each(&document);
        if dom::focus_is_lost() {
            let _ = heirs(&document).iter().any(take);
        }
        if pictures > 0 {
            look(turn, pictures - 1, each, heirs);
        }
    });
}

/// Gives the keyboard to an element; whether it takes it. One that is no control takes it only from here.
fn take(element: &Element) -> bool {
    let Some(html) = element.dyn_ref::<HtmlElement>() else {
        return false;
    };
    if html.tab_index() < 0 && !html.has_attribute("tabindex") {
        // Refused only for a name that is no attribute name, and this one is.
        let _ = html.set_attribute("tabindex", "-1");
    }
    dom::focus_in_place(html);
    !dom::focus_is_lost()
}

/// A control that was pressed, as it was then.
struct Pressed {
    part: String,
    name: String,
    /// How many of its part stood before it.
    nth: usize,
    around: Vec<Element>,
}

impl Pressed {
    /// The control around an element; none that has not the keyboard, as after a tap in some browsers, has it to lose.
    fn of(target: &Element) -> Option<Pressed> {
        let control = target.closest("button, a, summary").ok()??;
        let document = dom::document()?;
        if document.active_element().as_ref() != Some(&control) {
            return None;
        }
        let part = control.get_attribute("data-part")?;
        let nth = dom::all_of(&document, &part)
            .iter()
            .position(|one| *one == control)?;
        let around =
            std::iter::successors(control.parent_element(), |inner| inner.parent_element());
        Some(Pressed {
            name: name_of(&control),
            nth,
            around: around.collect(),
            part,
        })
    }

    fn heirs(&self, document: &Document) -> Vec<Element> {
        let alike = dom::all_of(document, &self.part);
        let mut heirs: Vec<Element> = Vec::new();
        if let Some(same) = alike.iter().find(|one| name_of(one) == self.name) {
            heirs.push(same.clone());
            // One that can go no further stands beside what goes the other way.
            let beside = same.next_element_sibling();
            heirs.extend(beside.filter(|_| same.has_attribute("disabled")));
        }
        let first = |selector: &str| document.query_selector(selector).ok().flatten();
        heirs.extend(first(BACK));
        heirs.extend(first("[role='dialog']"));
        if !self.part.split('-').any(|word| LAST_STEPS.contains(&word)) {
            heirs.extend(alike.get(self.nth).or(alike.last()).cloned());
        }
        let there = self.around.iter().filter(|around| around.is_connected());
        let heads = there.filter_map(|around| around.query_selector("h1, h2, h3").ok()?);
        heirs.extend(heads);
        heirs
    }
}

/// What a control is called.
fn name_of(control: &Element) -> String {
    let name = control.get_attribute("aria-label");
    name.or_else(|| control.text_content()).unwrap_or_default()
}
