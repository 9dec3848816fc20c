//! Generators of codes and files that are no good, or nearly good.

use super::{code_of, demo_sheet, six_blocks};
use crate::common::time;
use proptest::prelude::*;
use stanchion::share::{Parcel, sheet_file};

/// Random texts, texts of the letters of a code, and a code that was spoiled.
pub fn any_code() -> BoxedStrategy<String> {
    let good = code_of(&six_blocks());
    let plain = Parcel::of(&demo_sheet()).seal(None).unwrap();
    let letters = "[A-Za-z0-9_-]{0,5}";
    let edit = (any::<prop::sample::Index>(), 0..6_usize, letters);
    let spoiled = (
        prop_oneof![Just(good), Just(plain)],
        proptest::collection::vec(edit, 0..4),
    );
    prop_oneof![
        any::<String>(),
        "[A-Za-z0-9_-]{0,200}",
        "AQ[A-Za-z0-9_-]{0,200}",
        sound_envelope(),
        spoiled.prop_map(|(code, edits)| spoil(&code, edits)),
    ]
    .boxed()
}

/// Any bytes in an envelope whose checksum is right: what gets as far as the reader of heads and lines.
fn sound_envelope() -> impl Strategy<Value = String> {
    (0..8_u8, proptest::collection::vec(any::<u8>(), 0..200)).prop_map(|(flags, inside)| {
        let mut bytes = vec![1, flags];
        bytes.extend(inside);
        envelope(bytes)
    })
}

/// The code of these bytes, their checksum behind them. Written here once more, by the page of the format.
pub fn envelope(mut bytes: Vec<u8>) -> String {
    bytes.extend(crc32fast::hash(&bytes).to_be_bytes());
    let letters = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let bits: Vec<u8> = bytes
        .iter()
        .flat_map(|byte| (0..8).rev().map(move |at| byte >> at & 1))
        .collect();
    bits.chunks(6)
        .map(|six| {
            let value = (0..6).fold(0, |value, at| {
                value << 1 | six.get(at).copied().unwrap_or(0)
            });
            char::from(letters[usize::from(value)])
        })
        .collect()
}

fn spoil(text: &str, edits: Vec<(prop::sample::Index, usize, String)>) -> String {
    let mut chars: Vec<char> = text.chars().collect();
    for (at, cut, put) in edits {
        let at = at.index(chars.len() + 1);
        let end = (at + cut).min(chars.len());
        chars.splice(at..end, put.chars());
    }
    chars.into_iter().collect()
}

/// Random texts, and the file of a sheet that was spoiled.
pub fn any_file() -> BoxedStrategy<String> {
    let edit = (any::<prop::sample::Index>(), 0..6_usize, "[ -~]{0,5}");
    let good = sheet_file(&demo_sheet(), time(0));
    let spoiled = proptest::collection::vec(edit, 0..4);
    prop_oneof![
        1 => any::<String>(),
        3 => spoiled.prop_map(move |edits| spoil(&good, edits)),
    ]
    .boxed()
}
