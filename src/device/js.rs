//! Reaching into JavaScript without trusting it: every step may be absent or throw.

use js_sys::{Array, Function, JsString, Object, Promise, Reflect};
use std::cell::RefCell;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

#[wasm_bindgen]
extern "C" {
    /// The browser's writer of UTF-8.
    type TextEncoder;
    #[wasm_bindgen(constructor)]
    fn new() -> TextEncoder;
    #[wasm_bindgen(method, js_name = encodeInto)]
    fn encode_into(this: &TextEncoder, text: &JsString, bytes: &mut [u8]) -> Encoded;

    /// How far the writer came.
    type Encoded;
    #[wasm_bindgen(method, getter)]
    fn read(this: &Encoded) -> u32;
    #[wasm_bindgen(method, getter)]
    fn written(this: &Encoded) -> u32;
}

/// Most bytes of UTF-8 that a unit of the browser's texts takes.
const UNIT_BYTES: usize = 3;

/// Takes long texts over from the browser: each at once, where wasm-bindgen goes from character to character, and all of
/// them to the same place, where the browser writes at once: bytes of its own would be made and thrown away.
pub(super) struct Texts {
    encoder: TextEncoder,
    bytes: RefCell<Vec<u8>>,
}

impl Texts {
    pub(super) fn new() -> Self {
        Self {
            encoder: TextEncoder::new(),
            bytes: RefCell::default(),
        }
    }

    /// What `f` says of a text; `None` where it is none.
    pub(super) fn with<T>(&self, value: &JsValue, f: impl FnOnce(&str) -> T) -> Option<T> {
        let text: &JsString = value.dyn_ref()?;
        // A length fits.
        let units = text.length() as usize;
        let mut bytes = self.bytes.borrow_mut();
        // Most of what is kept has a byte a unit.
        for room in [units, units * UNIT_BYTES] {
            if bytes.len() < room {
                bytes.resize(room, 0);
            }
            let encoded = self.encoder.encode_into(text, &mut bytes);
            if encoded.read() as usize == units {
                let written = bytes.get(..encoded.written() as usize)?;
                // What the browser writes is UTF-8.
                return std::str::from_utf8(written).ok().map(f);
            }
        }
        None
    }

    /// A text; `None` where it is none.
    pub(super) fn text(&self, value: &JsValue) -> Option<String> {
        self.with(value, str::to_owned)
    }
}

/// A property that is there: `None` where it is absent, null, or its getter throws.
pub(super) fn get(object: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(object, &JsValue::from_str(name))
        .ok()
        .filter(|value| !value.is_undefined() && !value.is_null())
}

/// Sets a property.
///
/// # Errors
/// What its setter threw.
pub(super) fn set(object: &JsValue, name: &str, value: &JsValue) -> Result<(), JsValue> {
    Reflect::set(object, &JsValue::from_str(name), value).map(|_| ())
}

/// A global such as `AudioContext`, which `window` may not have.
pub(super) fn global(name: &str) -> Option<JsValue> {
    get(&js_sys::global(), name)
}

/// A part of `navigator`, which the browser may not have.
pub(super) fn navigator(name: &str) -> Option<JsValue> {
    get(&global("navigator")?, name)
}

/// Whether `object` has a function of this name.
pub(super) fn can(object: &JsValue, name: &str) -> bool {
    get(object, name).is_some_and(|found| found.is_function())
}

/// A new object of a class that `window` may not have; `None` also where it refuses.
pub(super) fn construct(class: &str) -> Option<JsValue> {
    construct_with(class, &[])
}

/// As [`construct`], from these arguments.
pub(super) fn construct_with(class: &str, with: &[JsValue]) -> Option<JsValue> {
    let class: Function = global(class)?.dyn_into().ok()?;
    Reflect::construct(&class, &with.iter().collect::<Array>()).ok()
}

/// Calls a method by name.
///
/// # Errors
/// What was thrown, or a text saying that there is no such function.
pub(super) fn call(object: &JsValue, name: &str, with: &[JsValue]) -> Result<JsValue, JsValue> {
    let method: Function = get(object, name)
        .and_then(|found| found.dyn_into().ok())
        .ok_or_else(|| JsValue::from_str(&format!("no function {name} in this browser")))?;
    method.apply(object, &with.iter().collect::<Array>())
}

/// Calls a method that answers with a promise, and waits for it.
///
/// # Errors
/// What was thrown or what the promise was rejected with.
pub(super) async fn call_async(
    object: &JsValue,
    name: &str,
    with: &[JsValue],
) -> Result<JsValue, JsValue> {
    let promise: Promise = call(object, name, with)?.dyn_into()?;
    JsFuture::from(promise).await
}

/// An object with these properties.
pub(super) fn object(properties: &[(&str, JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in properties {
        // Defining a property on a fresh plain object can't fail.
        let _ = Reflect::set(&object, &JsValue::from_str(name), value);
    }
    object.into()
}

/// The `name` of a DOM exception or error, empty where it has none.
pub(super) fn error_name(error: &JsValue) -> String {
    get(error, "name")
        .and_then(|name| name.as_string())
        .unwrap_or_default()
}

/// An exception in words: `Name: message`, or what it is as a text.
pub(super) fn error_text(error: &JsValue) -> String {
    let message = get(error, "message")
        .and_then(|text| text.as_string())
        .unwrap_or_default();
    match (error_name(error), message) {
        (name, message) if name.is_empty() && message.is_empty() => {
            error.as_string().unwrap_or_else(|| format!("{error:?}"))
        }
        (name, message) if message.is_empty() => name,
        (name, message) if name.is_empty() => message,
        (name, message) => format!("{name}: {message}"),
    }
}
