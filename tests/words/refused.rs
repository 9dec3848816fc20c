//! What is wrong with a file is said in the language that is spoken: no word of the libraries that read it is left in it.

use super::said::in_german;
use stanchion::store::read;

const GOLDEN: &str = include_str!("../golden/v1.json");

/// What is said in German of the file with the first `old` replaced by `new`.
fn said_with(old: &str, new: &str) -> String {
    assert!(GOLDEN.contains(old), "the file has no {old}");
    let broken = GOLDEN.replacen(old, new, 1);
    let mut said = String::new();
    in_german(|| said = read(&broken).unwrap_err().to_string());
    said
}

#[test]
fn what_is_wrong_in_a_file_is_said_in_german() {
    for (old, new, told) in [
        (
            "\"unit\": \"kg\"",
            "\"unit\": \"st\"",
            "unbekannter Wert `st`; erwartet: `kg` oder `lb`",
        ),
        (
            "\"kind\": \"lower_back\"",
            "\"kind\": \"mood\"",
            "unbekannter Wert `mood`; erwartet: eines von `role`, ",
        ),
        (
            "\"pairs\": 2",
            "\"pairs\": 2, \"colour\": 1",
            "unbekanntes Feld `colour`; erlaubt: `mass` oder `pairs`",
        ),
        (
            "\"pairs\": 2",
            "\"pairs\": \"two\"",
            "falsche Art: der Text \"two\"; erwartet: eine ganze Zahl von 0 bis 255",
        ),
        (
            "\"pairs\": 2",
            "\"pairs\": 2.5",
            "falsche Art: die Kommazahl `2.5`; erwartet: eine ganze Zahl von 0 bis 255",
        ),
        (
            "\"pairs\": 2",
            "\"pairs\": -2",
            "falsche Art: die ganze Zahl `-2`; erwartet: eine ganze Zahl von 0 bis 255",
        ),
        (
            "\"pairs\": 2",
            "\"pairs\": null",
            "falsche Art: null; erwartet: eine ganze Zahl von 0 bis 255",
        ),
        (
            "\"pairs\": 2",
            "\"pairs\": {}",
            "falsche Art: ein Objekt; erwartet: eine ganze Zahl von 0 bis 255",
        ),
        ("\"mass\": \"45 lb\",", "", "das Feld `mass` fehlt"),
        (
            "\"pairs\": 2",
            "\"pairs\": 2, \"pairs\": 2",
            "das Feld `pairs` steht zweimal da",
        ),
    ] {
        let said = said_with(old, new);
        assert!(
            said.ends_with(told) || told.ends_with(", ") && said.contains(told),
            "{said}"
        );
        assert!(said.contains("(Zeile "), "{said}");
    }
}

#[test]
fn an_id_and_a_time_that_are_none_are_told_by_what_they_should_be() {
    let version = GOLDEN.split("\"version\": \"").nth(1).unwrap();
    let version = version.split('"').next().unwrap();
    for wrong in ["x", "019b8d2b", "019b8d2b-8c00-7001-80b0-a7b005e0000g"] {
        let said = said_with(version, wrong);
        assert!(
            said.ends_with("erwartet: eine Kennung wie 019b8d2b-8c00-7001-80b0-a7b005e00001"),
            "{said}"
        );
    }
    let written = GOLDEN.split("\"written\": \"").nth(1).unwrap();
    let written = written.split('"').next().unwrap();
    for wrong in [
        "",
        "x",
        "2026-01-05",
        "2026-13-05T09:00:00Z",
        "2026-01-05T09:00:00Zz",
    ] {
        let said = said_with(written, wrong);
        assert!(
            said.ends_with("erwartet: eine Zeit nach RFC 3339 wie 2026-03-02T18:00:00+01:00"),
            "{wrong}: {said}"
        );
    }
}
