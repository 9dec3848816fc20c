//! The texts of a language, as the loader leaves them.

use stanchion::device::language::read;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn what_the_loader_leaves_is_read_whole_or_not_at_all() {
    let words = read("de\0,\0begin\0beginnen\0{n} set|{n} sets\0{n} Satz|{n} S\u{e4}tze")
        .expect("it is whole");
    assert_eq!((words.language(), words.decimal_mark()), ("de", ","));
    assert_eq!(words.find("begin"), Some("beginnen"));
    assert_eq!(
        words.find("{n} set|{n} sets"),
        Some("{n} Satz|{n} S\u{e4}tze")
    );
    assert_eq!(words.find("end"), None);
    for broken in ["", "de", "de\0,\0begin"] {
        assert_eq!(read(broken), None, "{broken:?}");
    }
}
