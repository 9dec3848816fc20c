//! Hands: presses with all that is known of them, pointers, the keyboard's place, the keys of a headset.

use crate::help::run;
use stanchion::device::dom;
use stanchion::device::events::{On, Pointer, Press, on_pointer, on_press};
use stanchion::device::media::{MediaKey, MediaKeys};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn a_press_is_told_with_what_holds_it_back() {
    let heard: Rc<RefCell<Vec<Press>>> = Rc::default();
    let told = Rc::clone(&heard);
    let listener = on_press(move |press| {
        told.borrow_mut().push(press.clone());
        press.held
    });
    let script = "
        const press = (parent, options) => {
          const target = document.body.appendChild(document.createElement(parent));
          const event = new KeyboardEvent('keydown', { bubbles: true, cancelable: true, ...options });
          target.dispatchEvent(event);
          target.remove();
          return event.defaultPrevented;
        };
        return [
          press('input', { key: 'u' }),
          press('button', { key: 'Enter', repeat: true }),
          press('div', { key: 'l', ctrlKey: true, shiftKey: true }),
        ].join();";
    assert_eq!(run(script).as_string().as_deref(), Some("false,true,false"));
    drop(listener);
    let press = |key: &str, held, modified, shifted, on| Press {
        key: key.to_owned(),
        held,
        modified,
        shifted,
        on,
    };
    assert_eq!(
        *heard.borrow(),
        [
            press("u", false, false, false, On::Field),
            press("Enter", true, false, false, On::Button),
            press("l", false, true, true, On::Page),
        ]
    );
}

#[wasm_bindgen_test]
fn pointers_are_told_with_what_they_cover() {
    let heard: Rc<RefCell<Vec<Pointer>>> = Rc::default();
    let told = Rc::clone(&heard);
    let listeners = on_pointer(move |pointer| told.borrow_mut().push(pointer));
    let script = "
        const tell = (kind, options) => document.body.dispatchEvent(new PointerEvent(kind, { bubbles: true, ...options }));
        tell('pointerdown', { pointerId: 3, width: 20, height: 44 });
        tell('pointerup', { pointerId: 3 });
        tell('pointercancel', { pointerId: 4 });
        return true;";
    run(script);
    drop(listeners);
    run(script);
    assert_eq!(
        *heard.borrow(),
        [
            Pointer::Down(3, 44.0),
            Pointer::Up(3),
            Pointer::Cancelled(4)
        ]
    );
}

#[wasm_bindgen_test]
fn the_keyboard_goes_where_it_is_sent_and_back() {
    run("document.body.insertAdjacentHTML('beforeend', '<div id=\"hands\"><button class=\"one\">1</button><button class=\"two\">2</button></div>');
         document.activeElement?.blur?.(); return true");
    assert!(dom::focus_is_lost());
    assert!(dom::focus_on(".one"));
    assert!(!dom::focus_is_lost());
    let one = dom::focused().expect("the first button has it");
    assert!(dom::focus_on(".two"));
    assert!(one.again());
    run("document.getElementById('hands').remove(); return true");
    assert!(!one.again(), "it is gone");
    assert!(dom::focus_is_lost());
    assert!(!dom::focus_on(".one"));
}

#[wasm_bindgen_test]
fn the_keys_of_a_headset_are_ours_until_they_are_given_back() {
    run("window.asked = {};
         navigator.mediaSession.setActionHandler = (name, f) => { window.asked[name] = f; };
         return true");
    let heard: Rc<RefCell<Vec<MediaKey>>> = Rc::default();
    let told = Rc::clone(&heard);
    let keys = MediaKeys::claim(move |key| told.borrow_mut().push(key));
    let keys = keys.expect("this browser has a media session");
    keys.play();
    run(
        "for (const name of ['play', 'pause', 'nexttrack', 'previoustrack']) window.asked[name](); return true",
    );
    assert_eq!(
        *heard.borrow(),
        [
            MediaKey::PlayPause,
            MediaKey::PlayPause,
            MediaKey::Next,
            MediaKey::Previous
        ]
    );
    drop(keys);
    let left = run("return Object.values(window.asked).every((f) => f === null)");
    assert!(left.is_truthy());
}
