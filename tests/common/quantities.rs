//! Generators of quantities and texts.

use proptest::prelude::*;
use rust_decimal::Decimal;
use stanchion::sheet::{Digit, Line, Note, Tempo};
use stanchion::units::{Load, Metres, Reps, Rir, Seconds, Share, Unit};

pub fn unit() -> impl Strategy<Value = Unit> {
    prop_oneof![Just(Unit::Kg), Just(Unit::Lb)]
}

/// Any load that can be typed.
pub fn load() -> impl Strategy<Value = Load> {
    prop_oneof![
        4 => (0..=4000_i64).prop_map(|eighths| Load::new(Decimal::new(eighths * 125, 3), Unit::Kg)),
        1 => (0..=200_000_000_i64).prop_map(|n| Load::new(Decimal::new(n, 5), Unit::Kg)),
        1 => (0..=8000_i64).prop_map(|halves| Load::new(Decimal::new(halves * 5, 1), Unit::Lb)),
    ]
    .prop_map(|load| load.unwrap())
}

pub fn share() -> impl Strategy<Value = Share> {
    (100..=20_000_i64).prop_map(|n| Share::new(Decimal::new(n, 2)).unwrap())
}

pub fn reps() -> impl Strategy<Value = Reps> {
    prop_oneof![4 => 0..=30_i64, 1 => 0..=500_i64].prop_map(|n| Reps::new(n).unwrap())
}

pub fn seconds() -> impl Strategy<Value = Seconds> {
    (0..=3600_i64).prop_map(|n| Seconds::new(n).unwrap())
}

pub fn metres() -> impl Strategy<Value = Metres> {
    (1..=10_000_i64).prop_map(|n| Metres::new(n).unwrap())
}

pub fn rir() -> impl Strategy<Value = Rir> {
    (0..=10_i64).prop_map(|n| Rir::new(n).unwrap())
}

fn digit() -> impl Strategy<Value = Digit> {
    prop_oneof![6 => (0..=20_u8).prop_map(Digit::Seconds), 1 => Just(Digit::Fast)]
}

pub fn tempo() -> impl Strategy<Value = Tempo> {
    (digit(), digit(), digit(), digit())
        .prop_map(|(eccentric, stretch, concentric, squeeze)| Tempo {
            eccentric,
            stretch,
            concentric,
            squeeze,
        })
        .prop_filter("a tempo is not all 0", |tempo| tempo.rep_seconds() > 0)
}

fn letter() -> impl Strategy<Value = char> {
    let odd = [
        '"', '\\', '<', '&', 'ü', '٣', '🏋', '\u{7f}', '\u{2028}', '/',
    ];
    prop_oneof![8 => proptest::char::range('a', 'z'), 1 => Just(' '), 1 => proptest::sample::select(odd.to_vec())]
}

pub fn line() -> impl Strategy<Value = Line> {
    proptest::collection::vec(letter(), 1..24).prop_filter_map("not empty", |letters| {
        Line::new(&letters.into_iter().collect::<String>()).ok()
    })
}

pub fn note() -> impl Strategy<Value = Note> {
    let line_break = prop_oneof![9 => letter(), 1 => Just('\n')];
    proptest::collection::vec(line_break, 0..60)
        .prop_map(|letters| Note::new(&letters.into_iter().collect::<String>()).unwrap())
}
