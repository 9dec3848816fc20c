//! Every text of the app is in the file of every language, complete and with the same places to fill in.

mod common;
#[path = "words/files.rs"]
mod files;
#[path = "words/found.rs"]
mod found;
#[path = "words/plain.rs"]
mod plain;
#[path = "words/refused.rs"]
mod refused;
#[path = "words/said.rs"]
mod said;

use stanchion::words::SOFT_HYPHEN;
use std::collections::BTreeSet;

/// The names in braces of a text, each as often as it stands there.
fn places(text: &str) -> Vec<&str> {
    let mut places: Vec<&str> = text
        .split('{')
        .skip(1)
        .filter_map(|behind| Some(behind.split_once('}')?.0))
        .collect();
    places.sort_unstable();
    places
}

/// Whether soft hyphens may stand in a text, and where they do: inside of a long word, and in no text that is more than
/// shown. Names of exercises and lines of sheets come into fields where they are written on, and some are spoken.
fn may_be_parted(english: &str, text: &str) -> bool {
    let kept = ["#exercise", "#line", "#spoken"];
    let words = text.split(|c: char| !c.is_alphabetic() && c != SOFT_HYPHEN);
    let mut parted = words.filter(|word| word.contains(SOFT_HYPHEN));
    let long = |word: &str| {
        let parts: Vec<usize> = word
            .split(SOFT_HYPHEN)
            .map(|part| part.chars().count())
            .collect();
        parts.iter().sum::<usize>() >= 12 && parts.iter().all(|part| *part >= 3)
    };
    !kept.iter().any(|context| english.ends_with(context)) && parted.all(long)
}

/// What is wrong with a translation: other places to fill in, another number of forms, nothing.
fn fault(english: &str, text: &str) -> Option<&'static str> {
    if text.contains(SOFT_HYPHEN) && !may_be_parted(english, text) {
        return Some("is parted where it may not be");
    }
    let forms = |text: &str| text.matches('|').count();
    let english = english.split('#').next().unwrap_or_default();
    if text.trim().is_empty() {
        return Some("is empty");
    }
    if text.contains('\0') || english.contains('\0') {
        return Some("holds a zero, which parts the texts on their way to the app");
    }
    if forms(english) != forms(text) {
        return Some("has another number of forms");
    }
    let same = english
        .split('|')
        .zip(text.split('|'))
        .all(|(english, text)| places(english) == places(text));
    (!same).then_some("has other places to fill in")
}

#[test]
fn every_text_is_in_every_language() {
    let written = found::texts();
    for file in files::all() {
        let kept: BTreeSet<&str> = file.texts.iter().map(|(english, _)| &**english).collect();
        let missing: Vec<String> = written
            .iter()
            .filter(|text| !kept.contains(text.as_str()))
            .map(|text| format!("{}: \"\",", serde_json::to_string(text).unwrap()))
            .collect();
        let name = &file.name;
        assert!(
            missing.is_empty(),
            "{} texts are not in assets/words/{name}:\n{}\n",
            missing.len(),
            missing.join("\n")
        );
        let unused: Vec<&&str> = kept
            .iter()
            .filter(|text| !written.contains(**text))
            .collect();
        assert!(
            unused.is_empty(),
            "nothing says these any more, in {name}: {unused:#?}"
        );
        let faults: Vec<String> = file
            .texts
            .iter()
            .filter_map(|(english, text)| Some(format!("{english}: {}", fault(english, text)?)))
            .collect();
        assert!(faults.is_empty(), "in {name}:\n{}\n", faults.join("\n"));
    }
}

/// Lines in the notation of a sheet, which is the same in every language, and the name of the app.
const NO_WORDS: [&str; 3] = [
    "ui/sheets/write.rs: ",
    "ui/sheets/meanings.rs: ",
    ": Stanchion, {}",
];

#[test]
fn no_view_says_anything_that_cannot_be_said_in_another_language() {
    let loose: Vec<String> = found::loose()
        .into_iter()
        .filter(|text| !NO_WORDS.iter().any(|known| text.contains(known)))
        .collect();
    assert!(
        loose.is_empty(),
        "not in `t` or `say!`:\n{}\n",
        loose.join("\n")
    );
}

/// A name is not inflected, so it stands where none has to be: in German behind no preposition and in no object.
#[test]
fn names_stand_outside_the_grammar_of_warnings_about_the_order() {
    let files = files::all();
    let german = files.iter().find(|file| file.language == "de");
    let texts = &german.expect("German is there").texts;
    let warns = |english: &str| {
        english.starts_with("{first} tires") || english.starts_with("{then} ({stage}) comes after")
    };
    let warnings: Vec<_> = texts.iter().filter(|(english, _)| warns(english)).collect();
    assert_eq!(warnings.len(), 4);
    for (_, said) in warnings {
        assert!(said.starts_with("Erst {first}"), "{said}");
        assert!(said.contains(", dann {then}"), "{said}");
    }
}

#[test]
fn a_file_of_words_is_in_order() {
    for file in files::all() {
        let twice = file.texts.windows(2).find(|two| two[0].0 >= two[1].0);
        let said = twice.map(|two| (&two[0].0, &two[1].0));
        assert_eq!(said, None, "{}: not rising by the English text", file.name);
        let of = file.name.trim_end_matches(".json");
        assert_eq!(file.language, of, "the file is named by its language");
        assert!([".", ","].contains(&file.decimal_mark.as_str()));
        assert_ne!(file.group_mark, file.decimal_mark);
    }
}

/// A manifest without what is said in it.
fn wordless(name: &str) -> serde_json::Value {
    let path = format!("{}/assets/{name}", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).expect("the manifest is there");
    let mut manifest: serde_json::Value = serde_json::from_str(&text).expect("it is JSON");
    for said in ["lang", "description"] {
        manifest[said].take();
    }
    for shortcut in manifest["shortcuts"].as_array_mut().expect("shortcuts") {
        for said in ["name", "short_name"] {
            assert!(!shortcut[said].take().as_str().expect("a name").is_empty());
        }
    }
    manifest
}

/// The system knows the app by its manifest: in another language it is the same app.
#[test]
fn manifests_differ_in_their_words_alone() {
    let english = wordless("manifest.webmanifest");
    for file in files::all() {
        let name = format!("manifest.{}.webmanifest", file.language);
        assert_eq!(wordless(&name), english, "{name}");
    }
}

#[test]
fn a_wrong_translation_is_caught() {
    assert_eq!(fault("{n} set|{n} sets", "{n} Satz|{n} Sätze"), None);
    assert_eq!(fault("Rest#verb", "Ruhe"), None);
    assert!(fault("{n} set|{n} sets", "{n} Sätze").is_some());
    assert!(fault("{reps} at {load}", "{reps} mit {last}").is_some());
    assert!(fault("Begin", " ").is_some());
    assert_eq!(fault("rotator cuff", "Rotatoren\u{ad}manschette"), None);
    for parted in [
        "Satz\u{ad}",
        "\u{ad}",
        "Wa\u{ad}denbeinmuskel",
        "Bei\u{ad}ne",
    ] {
        assert!(fault("calves", parted).is_some(), "{parted}");
    }
    assert!(fault("Plank#exercise", "Unter\u{ad}armstützen").is_some());
}
