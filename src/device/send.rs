//! A link on its way out: to the clipboard, or through the share sheet to another app.

use super::files::Sharing;
use super::js;

/// Puts a text on the clipboard; whether the browser did. To be called in a tap.
pub async fn copy(text: &str) -> bool {
    match js::navigator("clipboard") {
        Some(clipboard) => js::call_async(&clipboard, "writeText", &[text.into()])
            .await
            .is_ok(),
        None => false,
    }
}

/// Whether there is a share sheet.
#[must_use]
pub fn can_share() -> bool {
    js::global("navigator").is_some_and(|navigator| js::can(&navigator, "share"))
}

/// Opens the share sheet with a link. To be called in a tap.
pub async fn share_link(title: &str, link: &str) -> Sharing {
    let Some(navigator) = js::global("navigator").filter(|found| js::can(found, "share")) else {
        return Sharing::Unsupported;
    };
    let parcel = js::object(&[("title", title.into()), ("url", link.into())]);
    match js::call_async(&navigator, "share", &[parcel]).await {
        Ok(_) => Sharing::Shared,
        Err(error) if js::error_name(&error) == "AbortError" => Sharing::Cancelled,
        Err(_) => Sharing::Unsupported,
    }
}
