//! The language of the page. Which one it is, and its file, is settled by `assets/boot.js` before the app runs.

use super::{js, prefs};
use crate::json::{Cursor, Fault, Misread};
use crate::words::Catalogue;
use std::borrow::Cow;

/// Preference: the language that was chosen, as in BCP 47; none follows the browser.
const LANGUAGE: &str = "language";

/// Where `boot.js` leaves the file of a language.
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
    // Read once, and held as long as the page.
    let catalogue = read(Box::leak(text.into_boxed_str())).ok()?;
    Some(Box::leak(Box::new(catalogue)))
}

/// Reads a file of `assets/words/`: a JSON object of `language` (as in BCP 47), `decimal_mark`, and `texts`, an object
/// of English text and text. Other names are passed over.
///
/// # Errors
/// [`Misread`], which says where.
pub fn read(text: &'static str) -> Result<Catalogue, Misread> {
    let mut cursor = Cursor::new(text);
    pairs(&mut cursor).map_err(|fault| cursor.misread(&fault))
}

fn pairs(cursor: &mut Cursor<'static>) -> Result<Catalogue, Fault> {
    let mut language = Cow::Borrowed("en");
    let mut decimal_mark = Cow::Borrowed(".");
    let mut texts = Vec::new();
    open(cursor)?;
    let depth = cursor.depth();
    while let Some(name) = cursor.next_name(depth)? {
        match &*name {
            "language" => language = cursor.string()?,
            "decimal_mark" => decimal_mark = cursor.string()?,
            "texts" => {
                open(cursor)?;
                let depth = cursor.depth();
                while let Some(english) = cursor.next_name(depth)? {
                    texts.push((english, cursor.string()?));
                }
            }
            _ => {
                cursor.skip()?;
            }
        }
    }
    cursor.finish()?;
    Ok(Catalogue::new(language, decimal_mark, texts))
}

fn open(cursor: &mut Cursor<'static>) -> Result<(), Fault> {
    if cursor.opens(b'{')? {
        return Ok(());
    }
    Err(serde::de::Error::custom("an object is expected"))
}
