//! A part of the page that takes all keys while it is there: what lies under it can be neither reached nor read.

use super::dom::{self, Focused};
use super::timer::{Timer, after};
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::Element;

/// What of the page was put out of reach; dropping it gives all of it back, and the keyboard to where it was.
#[must_use = "the page is given back when it is dropped"]
pub struct Modal {
    opener: Option<Focused>,
    under: Rc<RefCell<Vec<Element>>>,
    _laying: Timer,
}

impl Modal {
    /// Puts all of the page but the element that a selector finds out of reach, and gives that one the keyboard; once it is
    /// laid, and not before.
    pub fn over(selector: &'static str) -> Modal {
        let under = Rc::new(RefCell::new(Vec::new()));
        let laid = Rc::clone(&under);
        Modal {
            opener: dom::focused(),
            under,
            _laying: after(0, move || {
                let beside = dom::beside(selector);
                for element in &beside {
                    // Refused only for a name that is no attribute name, and this one is.
                    let _ = element.set_attribute("inert", "");
                }
                laid.replace(beside);
                dom::focus_on(selector);
            }),
        }
    }
}

impl Drop for Modal {
    fn drop(&mut self) {
        for element in self.under.borrow().iter() {
            let _ = element.remove_attribute("inert");
        }
        if let Some(opener) = &self.opener {
            opener.again();
        }
    }
}
