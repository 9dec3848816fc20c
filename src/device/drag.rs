//! A finger or pointer that drags something over the page: told over what it is, and where it was let go.

use super::events::{Listener, listen};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Element, Event, PointerEvent};

/// What a drag has come to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Drag {
    /// The pointer is over the element whose attribute has this value, or over none.
    Over(Option<String>),
    /// It was let go there.
    Dropped(Option<String>),
}

/// Follows a pointer that went down on an element until it goes up again. Elements that can be dragged over are told by
/// `attribute`, a word in small letters and hyphens.
///
/// The element that was touched needs `touch-action: none`, or the page scrolls instead.
pub fn follow(down: &Event, attribute: &'static str, told: impl FnMut(Drag) + 'static) {
    let Some(down) = down.dyn_ref::<PointerEvent>() else {
        return;
    };
    let Some(target) = down
        .target()
        .and_then(|target| target.dyn_into::<Element>().ok())
    else {
        return;
    };
    down.prevent_default();
    // Without capture a fast finger leaves the element, and its end is never told; refused only for a pointer that is
    // gone already.
    let _ = target.set_pointer_capture(down.pointer_id());
    let told = Rc::new(RefCell::new(told));
    let listeners: Rc<RefCell<Vec<Listener>>> = Rc::default();
    let mut attached = Vec::new();
    for kind in ["pointermove", "pointerup", "pointercancel"] {
        let (told, all) = (Rc::clone(&told), Rc::clone(&listeners));
        attached.push(listen(&target, kind, move |event| {
            let Some(pointer) = event.dyn_ref::<PointerEvent>() else {
                return;
            };
            if kind == "pointermove" {
                told.borrow_mut()(Drag::Over(under(pointer, attribute)));
                return;
            }
            let at = under(pointer, attribute).filter(|_| kind == "pointerup");
            told.borrow_mut()(Drag::Dropped(at));
            let all = Rc::clone(&all);
            // Later: a closure must not be dropped while it runs.
            spawn_local(async move { all.borrow_mut().clear() });
        }));
    }
    *listeners.borrow_mut() = attached;
}

/// The value of `attribute` of what lies under the pointer.
fn under(pointer: &PointerEvent, attribute: &str) -> Option<String> {
    let document = web_sys::window()?.document()?;
    let (x, y) = (pointer.client_x() as f32, pointer.client_y() as f32);
    let element = document.element_from_point(x, y)?;
    let row = element.closest(&format!("[{attribute}]")).ok()??;
    row.get_attribute(attribute)
}
