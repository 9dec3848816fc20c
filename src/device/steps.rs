//! The steps that the back gesture takes. Each entry of the browser's history bears a name, so that a place to which one
//! returns is shown where it was left; and what lies over a place, such as a panel, has an entry too, so that the gesture
//! puts it away and leaves the place open.
//!
//! No entry can be taken off at once: the browser goes back some time later, and would leave what was opened meanwhile. So
//! the entry of a panel that was put away by its button stays. The next panel takes it over, and whoever goes back from it
//! goes on to the place before.

use super::events::{Listener, is_visible, on_window};
use super::painted::once_painted;
use super::{clock, dom, place};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use web_sys::History;

/// The element in which places are scrolled.
const SCROLLS: &str = "place";

/// For so long a place that is returned to may grow until it is as long as it was, in milliseconds.
const GROWS_MS: f64 = 2_000.0;

thread_local! {
    static STEPS: RefCell<Steps> = RefCell::default();
}

/// An entry of the history, by its name.
#[derive(Clone, PartialEq)]
struct Entry {
    name: String,
    /// Of a panel: the entry of the place that it lies over.
    over: Option<String>,
}

/// What is put away by the back gesture: its number and how.
type Lies = (u32, Rc<dyn Fn()>);

#[derive(Default)]
struct Steps {
    here: Option<Entry>,
    /// How many names and numbers this page has given.
    given: u32,
    /// How far each place was scrolled when it was left.
    left_at: Vec<(String, i32)>,
    /// What lies over the place, the topmost last.
    lie: Vec<Lies>,
}

impl Steps {
    fn number(&mut self) -> u32 {
        self.given += 1;
        self.given
    }

    /// A name that no other entry bears, from this page or from before a reload.
    fn name(&mut self) -> String {
        format!("{}-{}", clock::run_id(), self.number())
    }

    /// Looks at which entry one is, and names one that is new. The place of the entry before is still on the page.
    fn look(&mut self) -> Entry {
        let here = named().unwrap_or_else(|| {
            let entry = Entry {
                name: self.name(),
                over: None,
            };
            // It refuses only when flooded; then one returns to the top of the place.
            let _ = history().map(|history| history.replace_state(&entry.state(), ""));
            entry
        });
        self.is_at(here.clone());
        here
    }

    fn is_at(&mut self, entry: Entry) {
        let before = self.here.replace(entry.clone());
        if let Some(before) = before.filter(|before| *before != entry) {
            self.left_at.retain(|(name, _)| *name != before.name);
            self.left_at.push((before.name, dom::scrolled(SCROLLS)));
        }
    }
}

impl Entry {
    fn state(&self) -> JsValue {
        match &self.over {
            Some(over) => JsValue::from_str(&format!("{} {over}", self.name)),
            None => JsValue::from_str(&self.name),
        }
    }
}

fn history() -> Option<History> {
    web_sys::window()?.history().ok()
}

/// The entry one is at, where it was named.
fn named() -> Option<Entry> {
    let state = history()?.state().ok()?.as_string()?;
    Some(match state.split_once(' ') {
        Some((name, over)) => Entry {
            name: name.to_owned(),
            over: Some(over.to_owned()),
        },
        None => Entry {
            name: state,
            over: None,
        },
    })
}

/// Follows the back gesture from now on.
pub fn follow() -> Listener {
    STEPS.with_borrow_mut(|steps| steps.look());
    on_window("popstate", |_| went())
}

/// One is at another entry: forward, back, or at a new one.
fn went() {
    dom::leave_field();
    let (before, here, top) = STEPS.with_borrow_mut(|steps| {
        let before = steps.here.clone();
        let here = steps.look();
        let top = steps.lie.last().map(|(_, put_away)| Rc::clone(put_away));
        (before, here, top)
    });
    if before.and_then(|before| before.over) == Some(here.name) {
        match top {
            Some(put_away) => put_away(),
            None => place::back(),
        }
    }
}

/// Shows the place that was just opened: one that is returned to where it was left, any other from its top. Called once it
/// is drawn.
pub fn show_place() {
    let (here, top) = STEPS.with_borrow_mut(|steps| {
        let here = steps.look();
        let mut left_at = steps.left_at.iter();
        let top = left_at.find_map(|(name, top)| (*name == here.name).then_some(*top));
        (here, top.unwrap_or(0))
    });
    dom::scroll(SCROLLS, top);
    dom::scroll_to_top();
    return_to(here, top, clock::monotonic_ms() + GROWS_MS);
}

/// Scrolls to `top` with the next picture where the place was too short for it, `until` that moment at the most: one that
/// reads first what it shows grows then. Whoever scrolls meanwhile, or goes elsewhere, is left alone.
fn return_to(here: Entry, top: i32, until: f64) {
    let reached = dom::scrolled(SCROLLS);
    if reached >= top || !is_visible() || clock::monotonic_ms() > until {
        return;
    }
    once_painted(move || {
        let is_here = STEPS.with_borrow(|steps| steps.here.as_ref() == Some(&here));
        if is_here && dom::scrolled(SCROLLS) == reached {
            dom::scroll(SCROLLS, top);
            return_to(here, top, until);
        }
    });
}

/// Something that lies over the place; dropping it says that it was put away.
#[must_use = "the back gesture leaves the place once it is dropped"]
pub struct Over(u32);

/// From now on the back gesture calls `put_away`, and stays at the place.
pub fn over(put_away: impl Fn() + 'static) -> Over {
    STEPS.with_borrow_mut(|steps| {
        let number = steps.number();
        steps.lie.push((number, Rc::new(put_away)));
        let here = steps.look();
        if here.over.is_none() {
            let entry = Entry {
                name: steps.name(),
                over: Some(here.name),
            };
            let pushed = history().map(|history| history.push_state(&entry.state(), ""));
            // Refused when flooded: then the gesture leaves the place.
            if let Some(Ok(())) = pushed {
                steps.is_at(entry);
            }
        }
        Over(number)
    })
}

impl Drop for Over {
    fn drop(&mut self) {
        STEPS.with_borrow_mut(|steps| steps.lie.retain(|(number, _)| *number != self.0));
    }
}
