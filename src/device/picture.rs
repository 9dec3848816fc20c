//! A drawing as a picture of pixels: the browser draws the text of an SVG file on a canvas and packs it as PNG.

use super::files::{blob, offer};
use super::js;
use crate::say;
use crate::words::t;
use js_sys::{Array, Function, Promise};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, Url};

/// Why there is no picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoPicture {
    /// This browser cannot draw one.
    CannotDraw(String),
    /// It was drawn, and the browser took no download.
    NotTaken,
}

impl std::fmt::Display for NoPicture {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::CannotDraw(what) => f.write_str(&say!("This browser could not draw the picture ({what}). Save it as SVG instead.", what)),
            Self::NotTaken => f.write_str(t("The browser refused the download. Try again, or open this page in another browser.")),
        }
    }
}

impl std::error::Error for NoPicture {}

/// Draws the text of an SVG file of so many units, `times` as large, and offers it as a download of this name (PNG).
///
/// # Errors
/// [`NoPicture`].
pub async fn save_png(
    name: &str,
    svg: &str,
    (width, height): (i64, i64),
    times: i64,
) -> Result<(), NoPicture> {
    let said = |error: JsValue| NoPicture::CannotDraw(js::error_text(&error));
    let text = blob("image/svg+xml", svg).ok_or_else(|| said("no memory".into()))?;
    let address = Url::create_object_url_with_blob(&text).map_err(said)?;
    let drawn = draw(&address, (width * times, height * times)).await;
    // Revoking an address that the browser forgot does nothing.
    let _ = Url::revoke_object_url(&address);
    let picture = drawn.map_err(said)?;
    offer(name, &picture).ok_or(NoPicture::NotTaken)
}

/// The picture at this address on a canvas of so many pixels, packed.
async fn draw(address: &str, (width, height): (i64, i64)) -> Result<Blob, JsValue> {
    let image = js::construct("Image").ok_or("no images")?;
    js::set(&image, "src", &address.into())?;
    js::call_async(&image, "decode", &[]).await?;
    let document = js::global("document").ok_or("no document")?;
    let canvas = js::call(&document, "createElement", &["canvas".into()])?;
    // A picture is some thousand pixels wide.
    let (width, height) = (width as f64, height as f64);
    js::set(&canvas, "width", &width.into())?;
    js::set(&canvas, "height", &height.into())?;
    let brush = js::call(&canvas, "getContext", &["2d".into()])?;
    let all = [image, 0.into(), 0.into(), width.into(), height.into()];
    js::call(&brush, "drawImage", &all)?;
    let packed = Promise::new(&mut |take: Function, refuse: Function| {
        let done = Closure::once_into_js(move |blob: JsValue| {
            // A promise that was settled takes nothing more; there is nobody to tell.
            let _ = take.call1(&JsValue::NULL, &blob);
        });
        if let Err(error) = js::call(&canvas, "toBlob", &[done, "image/png".into()]) {
            let _ = refuse.apply(&JsValue::NULL, &Array::of1(&error));
        }
    });
    let packed = JsFuture::from(packed).await?;
    packed
        .dyn_into()
        .map_err(|_| JsValue::from_str(t("no picture came of it")))
}
