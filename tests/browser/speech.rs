//! The voice of the phone: only a local one, asked for and forgotten.

use crate::help::{Patch, number, patch, run, text};
use stanchion::device::speech::{can_speak, hush, on_voices, say};
use stanchion::words::{Catalogue, speak};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

/// A browser with these voices, that notes what it is asked to say.
fn voices(list: &str) -> Patch {
    patch(&format!(
        "window.spoken = []; window.cancels = 0; window.list = {list};
         class Synthesis extends EventTarget {{
             getVoices() {{ return window.list }}
             speak(said) {{ window.spoken.push([said.text, said.voice?.name, said.lang, said.volume]) }}
             cancel() {{ window.cancels++ }}
         }}
         window.synthesis = new Synthesis();
         shadow(window, 'speechSynthesis', {{value: window.synthesis}});
         shadow(window, 'SpeechSynthesisUtterance', {{value: class {{
             constructor(text) {{ this.text = text }} }}}});"
    ))
}

const FAR: &str = "{name: 'far', lang: 'en-GB', localService: false, default: true}";
const OTHER: &str = "{name: 'other', lang: 'nb-NO', localService: true}";
const NEAR: &str = "{name: 'near', lang: 'en_GB', localService: true}";
const OWN: &str = "{name: 'own', lang: 'EN-us', localService: true, default: true}";

#[wasm_bindgen_test]
fn only_a_local_english_voice_speaks() {
    let _far = voices(&format!("[{FAR}, {OTHER}]"));
    assert!(!can_speak());
    say("1", 1.0);
    assert_eq!(number("spoken.length"), 0.0);
}

#[wasm_bindgen_test]
fn the_browsers_own_choice_comes_first() {
    let _voices = voices(&format!("[{FAR}, {NEAR}, {OWN}]"));
    assert!(can_speak());
    say("3, last", 0.5);
    assert_eq!(text("spoken"), "3, last,own,EN-us,0.5");
    run("list = [list[0], list[1]]");
    say("4", 2.0);
    assert_eq!(text("spoken[1]"), "4,near,en_GB,1");
}

#[wasm_bindgen_test]
fn in_another_language_one_of_its_voices_speaks() {
    let _voices = voices(&format!(
        "[{NEAR}, {{name: 'own', lang: 'de_AT', localService: true}}, {{name: 'none', lang: 'den', localService: true}}]"
    ));
    speak(Some(Box::leak(Box::new(Catalogue::new(
        "de".into(),
        ",".into(),
        Vec::new(),
    )))));
    say("3", 1.0);
    run("list = [list[0], list[2]]");
    let able = can_speak();
    speak(None);
    assert_eq!(text("spoken"), "3,own,de_AT,1");
    assert!(!able, "no voice of another language reads German");
    assert!(can_speak());
}

#[wasm_bindgen_test]
fn a_new_word_breaks_off_the_one_before() {
    let _voices = voices(&format!("[{NEAR}]"));
    say("1", 1.0);
    say("2", 1.0);
    assert_eq!(number("cancels"), 2.0);
    hush();
    assert_eq!(number("cancels"), 3.0);
    hush();
    assert_eq!(number("cancels"), 3.0, "there is nothing to break off");
}

#[wasm_bindgen_test]
fn voices_that_come_late_are_told() {
    let _voices = voices("[]");
    let told = Rc::new(Cell::new(0));
    let tell = Rc::clone(&told);
    let listener = on_voices(move || tell.set(tell.get() + 1));
    run("synthesis.dispatchEvent(new Event('voiceschanged'))");
    assert_eq!(told.get(), 1);
    drop(listener);
    run("synthesis.dispatchEvent(new Event('voiceschanged'))");
    assert_eq!(told.get(), 1);
}

#[wasm_bindgen_test]
fn a_browser_without_a_voice_or_with_one_that_throws_is_silent() {
    {
        let _none = patch("shadow(window, 'speechSynthesis', {value: undefined});");
        assert!(!can_speak());
        assert!(on_voices(|| {}).is_none());
        say("1", 1.0);
        hush();
    }
    let _voices = voices(&format!("[{NEAR}]"));
    run("synthesis.speak = () => { throw new Error('no') };
         synthesis.cancel = () => { throw new Error('no') }");
    say("1", 1.0);
    hush();
}
