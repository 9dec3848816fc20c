//! The words in one language and another.

use super::{
    Catalogue, are_places_of, decimal, fill, grouped, later, many, speak, t, t_in, t_known, t_name,
};

fn in_german(said: impl FnOnce()) {
    let texts = [
        ("{reps} at {load}", "mit {load} {reps}-mal"),
        ("Rest#verb", "Ruhe aus"),
        ("Begin", "Anfangen"),
        ("Plank#exercise", "Unterarmstütz"),
        ("Back flat#line", "Rücken gerade"),
        ("{n} set|{n} sets", "{n} Satz|{n} Sätze"),
    ];
    let texts = texts.map(|(english, text)| (english.into(), text.into()));
    let catalogue = Catalogue::new("de".into(), ",".into(), texts.into());
    speak(Some(Box::leak(Box::new(catalogue))));
    said();
    speak(None);
}

#[test]
fn english_is_what_is_written() {
    assert_eq!(t("Begin"), "Begin");
    assert_eq!(t_in("verb", "Rest"), "Rest");
    assert_eq!(many(1, "{n} set", "{n} sets"), "1 set");
    assert_eq!(many(0, "{n} set", "{n} sets"), "0 sets");
    assert_eq!(decimal("82.5"), "82.5");
    assert_eq!(grouped("3035"), "3035");
    assert_eq!(grouped("12000"), "12,000");
    assert_eq!(grouped("−188518"), "−188,518");
    assert_eq!(grouped("1234567"), "1,234,567");
    let (reps, load) = (5, "80 kg");
    assert_eq!(crate::say!("{reps} at {load}", reps, load), "5 at 80 kg");
}

#[test]
fn another_language_says_the_same() {
    in_german(|| {
        assert_eq!(t("Begin"), "Anfangen");
        assert_eq!(t_in("verb", "Rest"), "Ruhe aus");
        assert_eq!(many(1, "{n} set", "{n} sets"), "1 Satz");
        assert_eq!(many(2, "{n} set", "{n} sets"), "2 Sätze");
        assert_eq!(decimal("82.5"), "82,5");
        assert_eq!(grouped("188518"), "188.518");
        let said = crate::say!("{reps} at {load}", reps = 5, load = "80 kg");
        assert_eq!(said, "mit 80 kg 5-mal");
    });
}

#[test]
fn thousands_are_parted_by_the_mark_of_the_language() {
    // No-break spaces, as in French and Polish; without one of its own the language has the one that is left.
    for (marks, half, many) in [
        (",\u{202f}", "0,5", "188\u{202f}518"),
        (",\u{a0}", "0,5", "188\u{a0}518"),
        (",", "0,5", "188.518"),
        (".", "0.5", "188,518"),
        (".’", "0.5", "188’518"),
    ] {
        let catalogue = Catalogue::new("xx".into(), marks.into(), Vec::new());
        speak(Some(Box::leak(Box::new(catalogue))));
        let said = (decimal("0.5"), grouped("188518"));
        speak(None);
        assert_eq!(said, (half.to_owned(), many.to_owned()), "{marks:?}");
    }
}

#[test]
fn what_is_missing_is_said_in_english() {
    in_german(|| {
        assert_eq!(t("End"), "End");
        assert_eq!(t_in("noun", "Rest"), "Rest");
        assert_eq!(many(2, "{n} rep", "{n} reps"), "2 reps");
    });
}

#[test]
fn what_comes_from_data_is_said_where_it_is_known() {
    assert_eq!(t_name("Plank"), "Plank");
    in_german(|| {
        assert_eq!(t_name("Plank"), "Unterarmstütz");
        assert_eq!(t_name("Boat pull"), "Boat pull");
        assert_eq!(t_known("Back flat"), "Rücken gerade");
        // A text of the app, but no line of it: then the lifter wrote it.
        assert_eq!(t_known("Begin"), "Begin");
        assert_eq!(t_known("Plank"), "Plank");
        assert_eq!(t(later("Begin")), "Anfangen");
    });
}

#[test]
fn a_place_that_nothing_is_given_for_stays() {
    assert_eq!(fill("{a} {b} {", &[("a", &1)]), "1 {b} {");
    assert_eq!(fill("{a{a}", &[("a", &1)]), "{a1");
    // What is filled in is not read again.
    assert_eq!(fill("{a}", &[("a", &"{a}")]), "{a}");
}

#[test]
fn the_places_of_a_text_are_named_in_their_order() {
    assert!(are_places_of("none", &[]));
    assert!(are_places_of("{a} and {b}, {a}", &["a", "b"]));
    assert!(!are_places_of("{a} and {b}", &["b", "a"]));
    assert!(!are_places_of("{a} and {b}", &["a"]));
    assert!(!are_places_of("{a}", &["a", "b"]));
    assert!(!are_places_of("{ab}", &["a"]));
    in_german(|| {
        let said = crate::say!("{a}, {b}, {a}", a = 1, b = "{a}");
        assert_eq!(said, "1, {a}, 1");
    });
}
