//! A link on its way out.

use crate::help::{patch, text};
use stanchion::device::files::Sharing;
use stanchion::device::send::{can_share, copy, share_link};
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
async fn a_text_goes_to_the_clipboard_or_not() {
    let takes = patch(
        "window.copied = '';
         shadow(navigator, 'clipboard', {value: {writeText: async it => { window.copied = it }}});",
    );
    assert!(copy("#/s/AQ").await);
    assert_eq!(text("copied"), "#/s/AQ");
    drop(takes);
    let refuses = patch(
        "shadow(navigator, 'clipboard', {value: {writeText: async () => {
             throw new DOMException('', 'NotAllowedError') }}});",
    );
    assert!(!copy("x").await);
    drop(refuses);
    let _absent = patch("shadow(navigator, 'clipboard', {value: undefined});");
    assert!(!copy("x").await);
}

#[wasm_bindgen_test]
async fn a_link_goes_through_the_share_sheet_or_not() {
    let taken = patch(
        "window.sent = '';
         shadow(navigator, 'share', {value: async it => { window.sent = it.title + '|' + it.url }});",
    );
    assert!(can_share());
    let link = "https://boathouse.example/#/s/AQ";
    assert_eq!(share_link("Lower A", link).await, Sharing::Shared);
    assert_eq!(text("sent"), format!("Lower A|{link}"));
    drop(taken);
    for (error, ends) in [
        ("AbortError", Sharing::Cancelled),
        ("NotAllowedError", Sharing::Unsupported),
    ] {
        let _patch = patch(&format!(
            "shadow(navigator, 'share', {{value: async () => {{ throw new DOMException('', '{error}') }}}});"
        ));
        assert_eq!(share_link("Lower A", link).await, ends);
    }
    let _absent = patch("shadow(navigator, 'share', {value: undefined});");
    assert!(!can_share());
    assert_eq!(share_link("Lower A", link).await, Sharing::Unsupported);
}
