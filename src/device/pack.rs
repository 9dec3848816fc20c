//! Packing by raw DEFLATE (RFC 1951) with what the browser has for it: no byte of ours, and none where it is absent.

use super::js;
use js_sys::{Array, Uint8Array};
use wasm_bindgen::JsValue;
use web_sys::Blob;

/// The browser's name of raw DEFLATE, without a head and a checksum.
const FORMAT: &str = "deflate-raw";

/// Why bytes could not be unpacked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PackError {
    /// This browser has nothing to unpack with.
    Absent,
    /// They were not packed so, or are damaged.
    Broken,
    /// They unpack to more than was allowed; the rest was not unpacked.
    TooLarge,
}

/// The bytes packed; none where this browser cannot.
pub async fn deflate(bytes: &[u8]) -> Option<Vec<u8>> {
    through("CompressionStream", bytes, usize::MAX).await.ok()
}

/// The bytes unpacked, to at most `most` bytes.
///
/// # Errors
/// [`PackError`]; of what unpacks to more no further piece is asked for.
pub async fn inflate(bytes: &[u8], most: usize) -> Result<Vec<u8>, PackError> {
    through("DecompressionStream", bytes, most).await
}

/// Sends bytes through a stream of the browser and reads what comes out, piece by piece.
async fn through(class: &str, bytes: &[u8], most: usize) -> Result<Vec<u8>, PackError> {
    // An older browser may have the class and not this format: then it refuses to make one.
    let stream = js::construct_with(class, &[FORMAT.into()]).ok_or(PackError::Absent)?;
    let parts = Array::of1(&Uint8Array::from(bytes));
    let source = Blob::new_with_u8_array_sequence(&parts)
        .map_err(|_| PackError::Absent)
        .and_then(|blob| js::call(&blob, "stream", &[]).map_err(|_| PackError::Absent))?;
    let out = js::call(&source, "pipeThrough", &[stream]).map_err(|_| PackError::Absent)?;
    let reader = js::call(&out, "getReader", &[]).map_err(|_| PackError::Absent)?;
    let mut all = Vec::new();
    loop {
        let step = js::call_async(&reader, "read", &[])
            .await
            .map_err(|_| PackError::Broken)?;
        let Some(piece) = js::get(&step, "value") else {
            return Ok(all);
        };
        let piece = Uint8Array::new(&piece);
        if all.len() + piece.length() as usize > most {
            // Nobody waits for the end of what is thrown away.
            let _ = js::call(&reader, "cancel", &[JsValue::NULL]);
            return Err(PackError::TooLarge);
        }
        all.extend(piece.to_vec());
    }
}
