//! Files out (download, share sheet) and in (what the person picked).

use super::{js, timer};
use crate::say;
use crate::words::t;
use js_sys::{Array, Uint8Array};
use std::fmt;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, Url};

/// How long the bytes of a download stay available: the browser may ask the person first.
const KEEP_MS: u32 = 60_000;

/// How sharing ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sharing {
    /// Handed to another app.
    Shared,
    /// The person closed the share sheet.
    Cancelled,
    /// This browser can't share such a file, or not now: offer the download.
    Unsupported,
}

/// Why a file could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// It is larger than a file of this app can be.
    TooLarge {
        /// Its size in bytes.
        size: u64,
        /// The largest size that is read, in bytes.
        most: u64,
    },
    /// It is not a text file.
    NotText {
        /// How many bytes from its start read as UTF-8.
        good: usize,
    },
    /// The browser could not read it.
    Unreadable {
        /// The browser's words.
        what: String,
    },
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge { size, most } => f.write_str(&say!(
                "This file has {size} bytes; up to {most} are read. Pick a file that was exported \
                 here.",
                size,
                most
            )),
            Self::NotText { good } => f.write_str(&say!(
                "This file is not text in UTF-8: it stops making sense after byte {good}. Pick a \
                 file that was exported here.",
                good
            )),
            Self::Unreadable { what } => f.write_str(&say!(
                "The browser could not read this file ({what}). Copy it to the phone itself and \
                 pick it again.",
                what
            )),
        }
    }
}

impl std::error::Error for FileError {}

/// How many bytes of a file lie in one piece: what grows is never copied as a whole.
const PIECE: usize = 4 * 1024 * 1024;

/// A text on its way into a file, piece by piece: the log of many years is long.
#[derive(Default)]
pub struct Outgoing {
    pieces: Vec<String>,
}

impl Outgoing {
    /// A text.
    #[must_use]
    pub fn of(text: String) -> Self {
        Self { pieces: vec![text] }
    }

    /// Adds a text at the end.
    pub fn push(&mut self, text: &str) {
        match self.pieces.last_mut() {
            Some(piece) if piece.len() + text.len() <= piece.capacity() => piece.push_str(text),
            _ => {
                let mut piece = String::with_capacity(PIECE.max(text.len()));
                piece.push_str(text);
                self.pieces.push(piece);
            }
        }
    }

    /// The browser's bytes of it, which it takes from where they are: no memory may be asked for between.
    fn blob(&self, mime: &str) -> Option<Blob> {
        let options = BlobPropertyBag::new();
        options.set_type(mime);
        let parts = Array::new();
        for piece in &self.pieces {
            parts.unchecked_ref::<Views>().push(piece.as_bytes());
        }
        Blob::new_with_u8_array_sequence_and_options(&parts, &options).ok()
    }
}

#[wasm_bindgen]
extern "C" {
    /// A list of bytes that stay where they are.
    type Views;
    #[wasm_bindgen(method)]
    fn push(this: &Views, bytes: &[u8]);
}

/// A text as the browser's bytes.
pub(super) fn blob(mime: &str, text: &str) -> Option<Blob> {
    Outgoing::of(text.to_owned()).blob(mime)
}

/// Where a file goes that is to be written.
pub enum Target {
    /// The person chose it.
    Chosen(Chosen),
    /// The person closed the dialog: nothing is to be written.
    Cancelled,
    /// This browser lets nobody choose: offer a download.
    Download,
}

/// A file that the person chose to write to.
pub struct Chosen {
    handle: JsValue,
}

/// Lets the person choose a file to write to, where the browser can. To be called in a tap.
pub async fn choose(name: &str, mime: &str) -> Target {
    let Some(window) = js::global("window").filter(|window| js::can(window, "showSaveFilePicker"))
    else {
        return Target::Download;
    };
    let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending);
    let endings = Array::of1(&format!(".{ending}").into());
    let kind = js::object(&[("accept", js::object(&[(mime, endings.into())]))]);
    let options = js::object(&[
        ("suggestedName", name.into()),
        ("types", Array::of1(&kind).into()),
    ]);
    match js::call_async(&window, "showSaveFilePicker", &[options]).await {
        Ok(handle) => Target::Chosen(Chosen { handle }),
        Err(error) if js::error_name(&error) == "AbortError" => Target::Cancelled,
        // In a frame, or without a tap: the download is still there.
        Err(_) => Target::Download,
    }
}

impl Chosen {
    /// The name that the person gave it.
    #[must_use]
    pub fn name(&self) -> String {
        let name = js::get(&self.handle, "name").and_then(|name| name.as_string());
        name.unwrap_or_default()
    }

    /// Writes the text, all of it or nothing.
    ///
    /// # Errors
    /// The browser's words.
    pub async fn write(&self, mime: &str, text: &Outgoing) -> Result<(), String> {
        let said = |error: JsValue| js::error_text(&error);
        let blob = text
            .blob(mime)
            .ok_or_else(|| t("there is no memory for it"))?;
        let stream = js::call_async(&self.handle, "createWritable", &[]).await;
        let stream = stream.map_err(said)?;
        let written = match js::call_async(&stream, "write", &[blob.into()]).await {
            Ok(_) => js::call_async(&stream, "close", &[]).await,
            Err(error) => {
                // What was there before stays.
                let _ = js::call_async(&stream, "abort", &[]).await;
                Err(error)
            }
        };
        written.map(|_| ()).map_err(said)
    }
}

/// Offers a text as a download under this name; whether the browser took it.
pub fn save_as(name: &str, mime: &str, text: &str) -> bool {
    save(name, mime, &Outgoing::of(text.to_owned()))
}

/// The same of a long one.
pub fn save(name: &str, mime: &str, text: &Outgoing) -> bool {
    text.blob(mime)
        .is_some_and(|blob| offer(name, &blob).is_some())
}

/// Offers bytes as a download under this name.
pub(super) fn offer(name: &str, blob: &Blob) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let link: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    let address = Url::create_object_url_with_blob(blob).ok()?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    timer::detached(KEEP_MS, move || {
        // Revoking an address twice or too late does nothing.
        let _ = Url::revoke_object_url(&address);
    });
    Some(())
}

/// Opens the share sheet with a text as a file named `name` (ending in `.json`). To be called in
/// a tap. Browsers that share no JSON are offered the same bytes as `….json.txt`.
pub async fn share_file(name: &str, text: &Outgoing) -> Sharing {
    let kinds = [
        (name.to_owned(), "application/json"),
        (format!("{name}.txt"), "text/plain"),
    ];
    let Some(navigator) = js::global("navigator").filter(|found| js::can(found, "share")) else {
        return Sharing::Unsupported;
    };
    let parcels = kinds
        .iter()
        .filter_map(|(name, mime)| parcel(name, mime, text));
    let can_share = |parcel: &JsValue| {
        js::call(&navigator, "canShare", std::slice::from_ref(parcel))
            .is_ok_and(|can| can.is_truthy())
    };
    let Some(parcel) = parcels.into_iter().find(can_share) else {
        return Sharing::Unsupported;
    };
    match js::call_async(&navigator, "share", &[parcel]).await {
        Ok(_) => Sharing::Shared,
        Err(error) if js::error_name(&error) == "AbortError" => Sharing::Cancelled,
        Err(_) => Sharing::Unsupported,
    }
}

fn parcel(name: &str, mime: &str, text: &Outgoing) -> Option<JsValue> {
    let options = FilePropertyBag::new();
    options.set_type(mime);
    let parts = Array::of1(&text.blob(mime)?.into());
    let file = File::new_with_blob_sequence_and_options(&parts, name, &options).ok()?;
    Some(js::object(&[
        ("files", Array::of1(&file).into()),
        ("title", name.into()),
    ]))
}

/// The text of a file the person picked, without a byte order mark; at most `max_bytes` long.
///
/// # Errors
/// [`FileError`]; a file that is too large is not read at all.
pub async fn read_text(file: &File, max_bytes: u64) -> Result<String, FileError> {
    // A size is a whole number of bytes far below 2^53.
    let size = file.size() as u64;
    if size > max_bytes {
        return Err(FileError::TooLarge {
            size,
            most: max_bytes,
        });
    }
    let bytes =
        JsFuture::from(file.array_buffer())
            .await
            .map_err(|error| FileError::Unreadable {
                what: js::error_text(&error),
            })?;
    let text = String::from_utf8(Uint8Array::new(&bytes).to_vec()).map_err(|error| {
        FileError::NotText {
            good: error.utf8_error().valid_up_to(),
        }
    })?;
    Ok(text
        .strip_prefix('\u{feff}')
        .map(str::to_owned)
        .unwrap_or(text))
}
