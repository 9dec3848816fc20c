//! Our JSON against `serde_json`: the same texts are read and refused, and the same texts written.

use proptest::prelude::*;
use serde::de::IgnoredAny;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use stanchion::json::{Misread, parse, pretty, text};
use std::collections::BTreeMap;

/// Every shape that serde knows and JSON can hold.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum Shape {
    Unit,
    Wrapped(Option<Box<Shape>>),
    Pair(i8, u64),
    Named { text: String, list: Vec<Shape> },
    Fixed([u16; 3]),
    Tuple((bool, char)),
    Map(BTreeMap<String, i64>),
    Nothing(()),
    Fraction(f64),
    Empty {},
}

fn shape() -> impl Strategy<Value = Shape> {
    let leaf = prop_oneof![
        Just(Shape::Unit),
        Just(Shape::Empty {}),
        Just(Shape::Nothing(())),
        any::<(i8, u64)>().prop_map(|(a, b)| Shape::Pair(a, b)),
        any::<[u16; 3]>().prop_map(Shape::Fixed),
        any::<(bool, char)>().prop_map(Shape::Tuple),
        proptest::collection::btree_map(any::<String>(), any::<i64>(), 0..3).prop_map(Shape::Map),
        // Halves are exact in any notation.
        any::<i32>().prop_map(|n| Shape::Fraction(f64::from(n) / 2.0)),
    ];
    leaf.prop_recursive(4, 24, 3, |inner| {
        prop_oneof![
            proptest::option::of(inner.clone())
                .prop_map(|shape| Shape::Wrapped(shape.map(Box::new))),
            (any::<String>(), proptest::collection::vec(inner, 0..3))
                .prop_map(|(text, list)| Shape::Named { text, list }),
        ]
    })
}

/// A text that is JSON or nearly so.
fn nearly() -> impl Strategy<Value = String> {
    let pieces = prop_oneof![
        4 => proptest::sample::select(vec![
            "{", "}", "[", "]", ",", ":", "\"a\":", "\"", "\\", "\\u00e9", "\\ud83d", "\\ude00", "null", "true", "nul", "-",
            "0", "1", "01", "-0", "1.5", "1.", ".5", "2e3", "2E-3", "1e", "+1", " ", "\n", "\t", "\u{1}", "é", "NaN", "\\x",
            "\"b\"", "\"\\ud83d\\ude00\"", "\"\\n\\u0041\"", "[1,2]", "{\"a\":1}", "[]", "{}",
        ]).prop_map(str::to_owned),
        1 => "\\PC{0,3}",
    ];
    proptest::collection::vec(pieces, 0..8).prop_map(|pieces| pieces.concat())
}

fn has_fraction(value: &Value) -> bool {
    match value {
        Value::Number(number) => number.is_f64(),
        Value::Array(entries) => entries.iter().any(has_fraction),
        Value::Object(fields) => fields.values().any(has_fraction),
        _ => false,
    }
}

/// Reads `text` by both readers.
fn compare(text: &str) -> Result<(), TestCaseError> {
    let theirs = serde_json::from_str::<Value>(text);
    let ours = parse::<IgnoredAny>(text);
    // JSON has numbers that no float can hold. They are passed over here; a field of ours says what is wrong with one.
    if theirs
        .as_ref()
        .is_err_and(|error| error.to_string().starts_with("number out of range"))
    {
        return Ok(());
    }
    prop_assert_eq!(
        ours.is_ok(),
        theirs.is_ok(),
        "{} {:?} {:?}",
        text,
        ours,
        theirs
    );
    if let Ok(theirs) = theirs
        && !has_fraction(&theirs)
    {
        prop_assert_eq!(parse::<Value>(text), Ok(theirs));
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2048))]

    #[test]
    fn the_same_texts_are_read(nearly in nearly()) {
        compare(&nearly)?;
        compare(&format!("[{nearly}]"))?;
        compare(&format!("{{\"a\":\"{nearly}\"}}"))?;
    }
}

proptest! {
    #[test]
    fn every_shape_is_written_as_serde_json_does_and_read_back(shape in shape()) {
        let written = text(&shape);
        let theirs: Shape = serde_json::from_str(&written).unwrap();
        prop_assert_eq!(&theirs, &shape);
        prop_assert_eq!(&parse::<Shape>(&written).unwrap(), &shape);
        let value: Value = serde_json::from_str(&written).unwrap();
        if !has_fraction(&serde_json::to_value(&shape).unwrap()) {
            prop_assert_eq!(&written, &serde_json::to_string(&shape).unwrap());
        }
        let mut theirs = Vec::new();
        let form = serde_json::ser::PrettyFormatter::with_indent(b" ");
        value.serialize(&mut serde_json::Serializer::with_formatter(&mut theirs, form)).unwrap();
        let theirs = String::from_utf8(theirs).unwrap();
        // Objects of `Value` are sorted by name.
        prop_assert_eq!(pretty(&text(&value), 0), theirs.clone());
        prop_assert_eq!(&parse::<Shape>(&theirs).unwrap(), &shape);
        compare(&theirs)?;
    }

    #[test]
    fn a_shape_with_a_character_changed_is_read_the_same_or_refused(
        shape in shape(), place in any::<proptest::sample::Index>(), new in any::<char>()
    ) {
        let mut chars: Vec<char> = text(&shape).chars().collect();
        let place = place.index(chars.len());
        chars[place] = new;
        compare(&chars.into_iter().collect::<String>())?;
    }
}

fn misread(text: &str) -> String {
    let Misread {
        path,
        line,
        column,
        why,
    } = parse::<Shape>(text).unwrap_err();
    format!("{path} {line}:{column} {why}")
}

#[test]
fn what_is_wrong_is_told_with_its_place() {
    for (text, told) in [
        ("", " 1:1 the text ends here, and more is expected"),
        ("\"unit\" 1", " 1:8 nothing may stand behind the value"),
        (
            "{}",
            " 1:1 an object with one name is expected here, and it is empty",
        ),
        (
            "{\"unit\":1}",
            "unit 1:9 invalid type: integer `1`, expected a variant without a value: its name alone",
        ),
        (
            "\"pair\"",
            " 1:1 invalid type: a name alone, expected a variant with a value",
        ),
        (
            "{\"pair\":[1,2,3]}",
            "pair[1] 1:13 nothing else is allowed here: a closing ] is expected",
        ),
        (
            "{\"pair\":[1]}",
            "pair 1:9 invalid length 1, expected tuple variant Shape::Pair with 2 elements",
        ),
        (
            "{\"pair\":[1.5,2]}",
            "pair[0] 1:10 invalid type: floating point `1.5`, expected a whole number",
        ),
        (
            "{\"pair\":[300,2]}",
            "pair[0] 1:10 invalid value: integer `300`, expected a whole number",
        ),
        (
            "{\"pair\":[1,-2]}",
            "pair[1] 1:12 invalid type: integer `-2`, expected a whole number from 0 on",
        ),
        (
            "{\"nothing\":null,\"unit\":1}",
            "nothing 1:16 nothing else is allowed here: a closing } is expected",
        ),
        (
            "{\"named\":\n {\"text\":\"é\", \"list\":[\"unit\",\n{\"map\":{\"a\":null}}]}}",
            "named.list[1].map.a 3:13 invalid type: null, expected a whole number",
        ),
        (
            "{\"named\": {\"text\":\"é\", \"lists\":[]}}",
            "named.lists 1:32 unknown field `lists`, expected `text` or `list`",
        ),
        (
            "{\"named\": {\"text\":\"é\"}}",
            "named 1:11 missing field `list`",
        ),
        (
            "{\"named\": {\"text\":\"a\",\"text\":\"a\"}}",
            "named.text 1:30 duplicate field `text`",
        ),
        (
            "[]",
            " 1:1 invalid type: sequence, expected a name, or an object with one name",
        ),
        (
            "{\"wrapped\" \"unit\"}",
            " 1:12 a colon is expected behind the name",
        ),
        ("{\"map\":{\"a\":1,}}", "map 1:15 key must be a string"),
        ("{\"fixed\":[1,2,,3]}", "fixed[2] 1:15 a value is expected"),
    ] {
        assert_eq!(misread(text), told, "{text}");
    }
}

#[test]
fn the_way_is_told_for_the_whole_too() {
    let error = parse::<u8>("\"a\"").unwrap_err();
    assert_eq!(
        error.to_string(),
        "the whole (line 1, column 1): invalid type: string \"a\", expected a whole number from 0 to 255"
    );
}
