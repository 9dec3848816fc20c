//! The language of the page. Which one it is, is settled by `assets/boot.js`, which reads its file, before the app runs.

use super::{js, prefs};
use crate::words::{Catalogue, t};
use std::borrow::Cow;
use std::fmt;
use wasm_bindgen::JsValue;

/// Preference: the language that was chosen, as in BCP 47; none follows the browser.
const LANGUAGE: &str = "language";

/// Where `boot.js` leaves the texts of a language.
const TEXTS: &str = "stanchionWords";

/// The language that was chosen; none follows the browser.
#[must_use]
pub fn chosen() -> Option<String> {
    prefs::get(LANGUAGE).flatten()
}

/// Where `boot.js` leaves the function that says which file a language needs: given a choice or null, an address or null.
const TEXTS_OF: &str = "stanchionWordsOf";

/// Why a language was not chosen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ChoiceError {
    /// Its texts are not on this phone and could not be loaded.
    NoTexts,
    /// The choice could not be kept.
    NotKept(prefs::PrefError),
}

impl fmt::Display for ChoiceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ChoiceError::NoTexts => f.write_str(t(
                "The texts of this language could not be loaded. Connect to a network and choose it again.",
            )),
            ChoiceError::NotKept(why) => why.fmt(f),
        }
    }
}

impl std::error::Error for ChoiceError {}

/// The address of the file that a language needs; none for English. No language is the browser's.
#[must_use]
pub fn file_of(language: Option<&str>) -> Option<String> {
    let language = language.map_or(JsValue::NULL, JsValue::from_str);
    let file = js::call(&js_sys::global(), TEXTS_OF, &[language]);
    file.ok()?.as_string()
}

/// Keeps a choice; it holds from the next load of the page on. Its texts are brought first, so that they are there then: the
/// service worker keeps those that it passes on (`assets/sw.js`).
///
/// # Errors
/// [`ChoiceError`]; nothing was chosen then.
pub async fn choose(language: Option<&str>) -> Result<(), ChoiceError> {
    if let Some(file) = file_of(language) {
        let answer = js::call_async(&js_sys::global(), "fetch", &[file.into()]).await;
        let came =
            answer.is_ok_and(|answer| js::get(&answer, "ok").is_some_and(|ok| ok.is_truthy()));
        if !came {
            return Err(ChoiceError::NoTexts);
        }
    }
    prefs::set(LANGUAGE, &language).map_err(ChoiceError::NotKept)
}

/// The texts of the language of this page; none in English, and where its file could not be had or read.
#[must_use]
pub fn catalogue() -> Option<&'static Catalogue> {
    let text = js::global(TEXTS)?.as_string()?;
    // Held as long as the page.
    let catalogue = read(Box::leak(text.into_boxed_str()))?;
    Some(Box::leak(Box::new(catalogue)))
}

/// Reads what `boot.js` made of a file of `assets/words/`: its `language` (as in BCP 47), its marks, then each
/// English text and its text, all with a zero between them. None where something is missing.
#[must_use]
pub fn read(text: &'static str) -> Option<Catalogue> {
    let mut parts = text.split('\0').map(Cow::Borrowed);
    let (language, decimal_mark) = (parts.next()?, parts.next()?);
    let mut texts = Vec::new();
    while let Some(english) = parts.next() {
        texts.push((english, parts.next()?));
    }
    Some(Catalogue::new(language, decimal_mark, texts))
}
