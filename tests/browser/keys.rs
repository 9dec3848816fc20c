//! Keys: which are told, and which belong to the page.

use crate::help::run;
use stanchion::device::events::on_key;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

/// Presses a key on an element made for it; whether the browser was kept from using it.
fn press(element: &str, options: &str) -> bool {
    let script = format!(
        "const target = document.body.appendChild(document.createElement('{element}'));
         const event = new KeyboardEvent('keydown',
             {{bubbles: true, cancelable: true, {options}}});
         target.dispatchEvent(event);
         target.remove();
         return event.defaultPrevented;"
    );
    run(&script).is_truthy()
}

#[wasm_bindgen_test]
fn keys_are_told_unless_they_belong_to_someone_else() {
    let heard: Rc<RefCell<Vec<String>>> = Rc::default();
    let told = Rc::clone(&heard);
    let listener = on_key(move |key| {
        told.borrow_mut().push(key.to_owned());
        key != "z"
    });
    assert!(press("div", "key: 'u'"));
    assert!(
        !press("div", "key: 'z'"),
        "a key that was not used stays the browser's"
    );
    assert!(press("button", "key: 'ArrowUp'"));
    assert_eq!(*heard.borrow(), ["u", "z", "ArrowUp"]);

    for (element, options) in [
        ("input", "key: 'u'"),
        ("textarea", "key: 'u'"),
        ("select", "key: 'ArrowUp'"),
        ("button", "key: ' '"),
        ("button", "key: 'Enter'"),
        ("div", "key: 'u', repeat: true"),
        ("div", "key: 'u', ctrlKey: true"),
        ("div", "key: 'u', altKey: true"),
        ("div", "key: 'u', metaKey: true"),
    ] {
        assert!(!press(element, options), "{element} {options}");
    }
    assert_eq!(heard.borrow().len(), 3);

    drop(listener);
    assert!(!press("div", "key: 'u'"));
    assert_eq!(heard.borrow().len(), 3);
}
