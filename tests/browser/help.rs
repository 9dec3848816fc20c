//! Waiting for conditions, and changing the browser for the length of a test.

use js_sys::{Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// Generous for a loaded machine; a condition that holds ends the wait at once.
const LIMIT_MS: f64 = 10_000.0;

/// Runs the body of a script function.
pub fn run(body: &str) -> JsValue {
    Function::new_no_args(body)
        .call0(&JsValue::UNDEFINED)
        .expect(body)
}

/// A number from a script expression.
pub fn number(expression: &str) -> f64 {
    run(&format!("return Number({expression})"))
        .as_f64()
        .expect(expression)
}

/// A text from a script expression.
pub fn text(expression: &str) -> String {
    run(&format!("return String({expression})"))
        .as_string()
        .expect(expression)
}

/// Lets the browser do one round of what it has to do.
pub async fn turn() {
    let promise = Promise::new(&mut |resolve, _| {
        let channel = run("return new MessageChannel()");
        js_sys::Reflect::set(
            &js_sys::Reflect::get(&channel, &"port1".into()).expect("port1"),
            &"onmessage".into(),
            &resolve,
        )
        .expect("onmessage");
        let port = js_sys::Reflect::get(&channel, &"port2".into()).expect("port2");
        let post: Function = js_sys::Reflect::get(&port, &"postMessage".into())
            .expect("postMessage")
            .unchecked_into();
        post.call1(&port, &JsValue::NULL).expect("post");
    });
    JsFuture::from(promise).await.expect("turn");
}

/// Waits until it holds.
pub async fn until(what: &str, mut holds: impl FnMut() -> bool) {
    // Not the steady clock: a test may hold that one.
    let start = js_sys::Date::now();
    while !holds() {
        assert!(
            js_sys::Date::now() - start < LIMIT_MS,
            "waited in vain until {what}"
        );
        turn().await;
    }
}

/// A change to the browser that is undone when it is dropped.
pub struct Patch(Function);

/// Runs a script with `shadow(object, name, descriptor)` at hand, which redefines a property.
pub fn patch(body: &str) -> Patch {
    let script = format!(
        "const undo = [];
         const shadow = (object, name, descriptor) => {{
             const old = Object.getOwnPropertyDescriptor(object, name);
             Object.defineProperty(object, name, {{configurable: true, ...descriptor}});
             undo.unshift(() => old ? Object.defineProperty(object, name, old)
                                    : delete object[name]);
         }};
         {body}
         return () => undo.forEach(step => step());"
    );
    Patch(run(&script).unchecked_into())
}

impl Drop for Patch {
    fn drop(&mut self) {
        self.0.call0(&JsValue::UNDEFINED).expect("undoing a patch");
    }
}
