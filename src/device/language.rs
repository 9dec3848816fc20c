//! The language of the page. Which one it is, is settled by `assets/boot.js`, which reads its file, before the app runs.

use super::{js, prefs};
use crate::words::Catalogue;
use std::borrow::Cow;

/// Preference: the language that was chosen, as in BCP 47; none follows the browser.
const LANGUAGE: &str = "language";

/// Where `boot.js` leaves the texts of a language.
const TEXTS: &str = "stanchionWords";

/// The language that was chosen; none follows the browser.
#[must_use]
pub fn chosen() -> Option<String> {
    prefs::get(LANGUAGE).flatten()
}

/// Keeps a choice; it holds from the next load of the page on.
///
/// # Errors
/// [`prefs::PrefError`]; nothing was chosen then.
pub fn choose(language: Option<&str>) -> Result<(), prefs::PrefError> {
    prefs::set(LANGUAGE, &language)
}

/// The texts of the language of this page; none in English, and where its file could not be had or read.
#[must_use]
pub fn catalogue() -> Option<&'static Catalogue> {
    let text = js::global(TEXTS)?.as_string()?;
    // Held as long as the page.
    let catalogue = read(Box::leak(text.into_boxed_str()))?;
    Some(Box::leak(Box::new(catalogue)))
}

/// Reads what `boot.js` made of a file of `assets/words/`: its `language` (as in BCP 47), its `decimal_mark`, then each English
/// text and its text, all with a zero between them. None where something is missing.
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
