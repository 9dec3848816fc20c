//! Files in and out.

use crate::help::{number, patch, run, text, until};
use js_sys::{Array, Uint8Array};
use stanchion::device::files::{
    FileError, Outgoing, Sharing, Target, choose, read_text, save, save_as, share_file,
};
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::File;

fn file(bytes: &[u8]) -> File {
    let parts = Array::of1(&Uint8Array::from(bytes));
    File::new_with_buffer_source_sequence(&parts, "sheet.json").expect("a file")
}

fn of(text: &str) -> Outgoing {
    Outgoing::of(text.to_owned())
}

#[wasm_bindgen_test]
async fn a_text_file_is_read_whole() {
    assert_eq!(
        read_text(&file("½ {}".as_bytes()), 5).await,
        Ok("½ {}".to_owned())
    );
    assert_eq!(read_text(&file(b""), 0).await, Ok(String::new()));
    assert_eq!(
        read_text(&file(b"\xef\xbb\xbf{}"), 100).await,
        Ok("{}".to_owned())
    );
}

#[wasm_bindgen_test]
async fn a_file_too_large_is_refused_with_both_sizes() {
    let error = read_text(&file(b"123456"), 5).await.unwrap_err();
    assert_eq!(error, FileError::TooLarge { size: 6, most: 5 });
    assert!(error.to_string().contains("6 bytes") && error.to_string().contains("up to 5"));
}

#[wasm_bindgen_test]
async fn a_file_that_is_not_text_is_refused() {
    let error = read_text(&file(b"ab\xff\xfe"), 100).await.unwrap_err();
    assert_eq!(error, FileError::NotText { good: 2 });
}

#[wasm_bindgen_test]
async fn a_file_that_went_away_is_told() {
    let _patch = patch(
        "shadow(Blob.prototype, 'arrayBuffer', {value: () =>
             Promise.reject(new DOMException('gone', 'NotReadableError'))});",
    );
    let error = read_text(&file(b"{}"), 100).await.unwrap_err();
    assert_eq!(
        error,
        FileError::Unreadable {
            what: "NotReadableError: gone".into()
        }
    );
}

#[wasm_bindgen_test]
async fn a_download_has_the_name_and_the_bytes() {
    let _patch = patch(
        "window.saved = '';
         shadow(HTMLAnchorElement.prototype, 'click', {value() {
             const name = this.download;
             fetch(this.href).then(async reply => {
                 window.saved = [name, reply.headers.get('content-type'), await reply.text()]
                     .join('|') });
         }});",
    );
    assert!(save_as("log.json", "application/json", "{\"½\":1}"));
    until("the bytes were fetched", || !text("saved").is_empty()).await;
    assert_eq!(text("saved"), "log.json|application/json|{\"½\":1}");
}

#[wasm_bindgen_test]
async fn a_file_in_many_pieces_is_one_file() {
    let _patch = patch(
        "window.saved = '';
         shadow(HTMLAnchorElement.prototype, 'click', {value() {
             fetch(this.href).then(async reply => { window.saved = await reply.text() });
         }});",
    );
    // More than lie in one piece, and one that is longer than a piece.
    let mut file = Outgoing::default();
    let mut whole = String::new();
    for (n, length) in [3, 1_000_000, 5_000_000, 0, 2_999_999, 1, 4_000_000]
        .iter()
        .enumerate()
    {
        let text = format!("{n}½{}", "x".repeat(*length));
        file.push(&text);
        whole.push_str(&text);
    }
    assert!(save("log.json", "application/json", &file));
    until("the bytes were fetched", || !text("saved").is_empty()).await;
    assert!(text("saved") == whole);
    run("delete window.saved");
}

/// A share sheet that takes files of one kind and ends in one way.
fn sheet(kind: &str, end: &str) -> crate::help::Patch {
    patch(&format!(
        "window.shared = '';
         shadow(navigator, 'canShare', {{value: it => it.files.every(f => f.type === '{kind}')}});
         shadow(navigator, 'share', {{value: async it => {{
             window.shared = it.files[0].name + '|' + await it.files[0].text();
             {end} }}}});"
    ))
}

#[wasm_bindgen_test]
async fn sharing_prefers_json_and_falls_back_to_text() {
    let json = sheet("application/json", "");
    assert_eq!(share_file("log.json", &of("{}")).await, Sharing::Shared);
    assert_eq!(text("shared"), "log.json|{}");
    drop(json);
    let plain = sheet("text/plain", "");
    assert_eq!(share_file("log.json", &of("{}")).await, Sharing::Shared);
    assert_eq!(text("shared"), "log.json.txt|{}");
    drop(plain);
}

#[wasm_bindgen_test]
async fn sharing_tells_a_change_of_mind_from_a_refusal() {
    let closed = sheet("text/plain", "throw new DOMException('', 'AbortError')");
    assert_eq!(share_file("log.json", &of("{}")).await, Sharing::Cancelled);
    drop(closed);
    let refused = sheet(
        "text/plain",
        "throw new DOMException('', 'NotAllowedError')",
    );
    assert_eq!(
        share_file("log.json", &of("{}")).await,
        Sharing::Unsupported
    );
    drop(refused);
    let images_only = sheet("image/png", "");
    assert_eq!(
        share_file("log.json", &of("{}")).await,
        Sharing::Unsupported
    );
    assert_eq!(number("shared.length"), 0.0);
    drop(images_only);
    let _absent = patch("shadow(navigator, 'share', {value: undefined});");
    assert_eq!(
        share_file("log.json", &of("{}")).await,
        Sharing::Unsupported
    );
    run("delete window.shared");
}

#[wasm_bindgen_test]
async fn a_file_is_written_where_it_is_chosen_or_not_at_all() {
    let _patch = patch(
        "window.written = [];
         const stream = {
             write: async (blob) => { window.written.push(await blob.text()); },
             close: async () => { window.written.push('closed'); },
             abort: async () => { window.written.push('aborted'); } };
         window.handle = { name: 'mine.csv', createWritable: async () => stream };
         shadow(window, 'showSaveFilePicker', {value: async (asked) => {
             window.asked = JSON.stringify(asked); return window.handle; }});
         window.broken = () => { stream.write = async () => { throw new DOMException('full', 'QuotaExceededError'); }; };",
    );
    let Target::Chosen(chosen) = choose("sets.csv", "text/csv").await else {
        panic!("it was chosen");
    };
    assert_eq!(
        text("asked"),
        r#"{"suggestedName":"sets.csv","types":[{"accept":{"text/csv":[".csv"]}}]}"#
    );
    assert_eq!(chosen.name(), "mine.csv");
    assert_eq!(chosen.write("text/csv", &of("½,1")).await, Ok(()));
    assert_eq!(text("written.join()"), "½,1,closed");
    run("broken()");
    let refused = chosen.write("text/csv", &of("2")).await;
    assert_eq!(refused, Err("QuotaExceededError: full".to_owned()));
    assert_eq!(text("written.at(-1)"), "aborted");
}

#[wasm_bindgen_test]
async fn who_closes_the_dialog_wants_no_file() {
    let _patch = patch(
        "shadow(window, 'showSaveFilePicker', {value: () => Promise.reject(new DOMException('', 'AbortError'))});",
    );
    assert!(matches!(
        choose("a.json", "application/json").await,
        Target::Cancelled
    ));
    let _absent = patch("shadow(window, 'showSaveFilePicker', {value: undefined});");
    assert!(matches!(
        choose("a.json", "application/json").await,
        Target::Download
    ));
}
