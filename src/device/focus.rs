//! Keeps the keyboard on the page. What was pressed may be gone once it has done its work: a row that was moved or taken off, a
//! place that was left. A browser then gives the keyboard to nothing: the next key begins at the top, and a reader says nothing.
//!
//! Nothing is moved that has the keyboard. Where it is lost, it goes to the same control where that was only drawn anew, else
//! to what takes back what was done, to the panel that is open, to the control that took its place, to the pad of the floor, or to the heading above.

use super::dom;
use super::events::{Listener, on_press_first, press_once};
use super::painted::once_painted;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Document, Element, HtmlElement};

/// For so many pictures it is looked whether the keyboard was lost: what is read first comes after some.
const PICTURES: u32 = 12;

/// What takes back what was just done.
const BACK: &str = "[data-part='draft-undo'], [data-part='changed-undo'], [data-part='thing-back'], \
                    [data-part='session-back'], [data-part='body-back'], [data-part='bring-back'], [data-part='lifter-back']";

/// What the floor does next.
const PAD: &str = ".pad-main";

/// Words in the hooks of controls after which the next of their kind is not to be pressed by the same key held too long.
const LAST_STEPS: [&str; 6] = ["remove", "off", "out", "now", "sure", "away"];

thread_local! {
    /// Which press, or change of place, is followed.
    static TURN: Cell<u32> = const { Cell::new(0) };
    /// The name of the app, which the title of the page begins as.
    static NAME: RefCell<Option<String>> = const { RefCell::new(None) };
}

/// Follows what is pressed from now on. A key that is held down presses once: what comes in the place of a control was not meant.
pub fn keep() -> [Listener; 2] {
    let follow = on_press_first(|event| {
        let target = event.target().and_then(|target| target.dyn_into().ok());
        if let Some(pressed) = target.and_then(|target| Pressed::of(&target)) {
            settle(Rc::new(move |document| match dom::focus_is_lost() {
                true => pressed.heirs(document),
                false => Vec::new(),
            }));
        }
    });
    [follow, press_once()]
}

/// The first screen is there: the page is called by its heading. The keyboard stays where a page begins.
pub fn begin() {
    once_painted(|| {
        if let Some(document) = dom::document() {
            call_page(&document);
        }
    });
}

/// The rest of the app is there, and with it the place where one `waited` for it.
pub fn come(waited: bool) {
    // Where nothing was pressed yet, the keyboard is where a page begins.
    match waited && TURN.get() > 0 {
        true => arrive(),
        false => begin(),
    }
}

/// A place was opened: the page is called by its heading, and that has the keyboard where nothing else has.
pub fn arrive() {
    let heads = [PAD, "#place h1", "#place"].into_iter();
    settle(Rc::new(move |document| {
        call_page(document);
        // The place itself has it until its heading is there, which is read first.
        let place = document
            .active_element()
            .filter(|active| active.id() == "place");
        if place.is_none() && !dom::focus_is_lost() {
            return Vec::new();
        }
        let found = heads.clone();
        let found = found.filter_map(|head| document.query_selector(head).ok()?);
        found.collect()
    }));
}

fn call_page(document: &Document) {
    let name = NAME.with_borrow_mut(|name| name.get_or_insert_with(|| document.title()).clone());
    // The floor's heading is what is lifted, which changes as one goes on.
    let heading = document.query_selector("#place .page h1").ok().flatten();
    let heading = heading.and_then(|heading| heading.text_content());
    let title = heading.map_or_else(|| name.clone(), |heading| format!("{heading} · {name}"));
    if document.title() != title {
        document.set_title(&title);
    }
}

/// Gives those who may have the keyboard, the first first; none where it is not lost.
type Heirs = Rc<dyn Fn(&Document) -> Vec<Element>>;

/// Looks with each of the next pictures.
fn settle(heirs: Heirs) {
    let turn = TURN.get().wrapping_add(1);
    TURN.set(turn);
    look(turn, PICTURES, heirs);
}

fn look(turn: u32, pictures: u32, heirs: Heirs) {
    once_painted(move || {
        let Some(document) = dom::document().filter(|_| TURN.get() == turn) else {
            return;
        };
        let _ = heirs(&document).iter().any(take);
        match pictures {
            0 => call_page(&document),
            more => look(turn, more - 1, heirs),
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
    /// How many of its part had its name, and how many of those stood before it.
    named: (usize, usize),
    /// What took something back before it was pressed.
    back: Vec<Element>,
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
        let name = name_of(&control);
        let alike = dom::all_of(&document, &part);
        let nth = alike.iter().position(|one| *one == control)?;
        let same: Vec<&Element> = alike.iter().filter(|one| name_of(one) == name).collect();
        let before = same.iter().position(|one| **one == control)?;
        let around =
            std::iter::successors(control.parent_element(), |inner| inner.parent_element());
        Some(Pressed {
            nth,
            named: (same.len(), before),
            back: dom::all(&document, BACK),
            around: around.collect(),
            part,
            name,
        })
    }

    fn heirs(&self, document: &Document) -> Vec<Element> {
        let alike = dom::all_of(document, &self.part);
        let mut heirs: Vec<Element> = Vec::new();
        let is_last_step = self.part.split('-').any(|word| LAST_STEPS.contains(&word));
        let mut same = alike.iter().filter(|one| name_of(one) == self.name);
        let (count, before) = self.named;
        // One fewer is left: those are others of the same name.
        let is_gone = is_last_step && same.clone().count() < count;
        if let Some(same) = same.nth(before).filter(|_| !is_gone) {
            heirs.push(same.clone());
            // One that can go no further stands beside what goes the other way: up before down, and first of all.
            let before = same.previous_element_sibling();
            let beside = before.or_else(|| same.next_element_sibling());
            heirs.extend(beside.filter(|_| same.has_attribute("disabled")));
        }
        let back = dom::all(document, BACK).into_iter();
        heirs.extend(back.filter(|one| !self.back.contains(one)).take(1));
        heirs.extend(document.query_selector("[role='dialog']").ok().flatten());
        if !is_last_step {
            heirs.extend(alike.get(self.nth).or(alike.last()).cloned());
        }
        heirs.extend(document.query_selector(PAD).ok().flatten());
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
