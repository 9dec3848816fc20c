//! Runs of bytes that need no look one by one: most of a file are strings and whole numbers.

/// The first byte from `at` on that ends a string or is no part of one as it stands; behind all where there is none.
/// Eight bytes are looked at in one go.
pub(super) fn plain(bytes: &[u8], mut at: usize) -> usize {
    const ONES: u64 = u64::MAX / 255;
    const HIGHS: u64 = ONES << 7;
    // The highest bit of each byte below `n`, right up to the first of them; bytes from 0x80 on never are.
    let below = |word: u64, n: u64| word.wrapping_sub(ONES * n) & !word & HIGHS;
    while let Some(Ok(eight)) = bytes.get(at..at + 8).map(<[u8; 8]>::try_from) {
        let word = u64::from_le_bytes(eight);
        let is = |byte: u8| below(word ^ (ONES * u64::from(byte)), 1);
        let found = is(b'"') | is(b'\\') | below(word, 0x20);
        if found != 0 {
            return at + (found.trailing_zeros() / 8) as usize;
        }
        at += 8;
    }
    let ends = |byte: &u8| matches!(byte, b'"' | b'\\' | 0..0x20);
    let rest = bytes.get(at..).unwrap_or_default();
    at + rest.iter().position(ends).unwrap_or(rest.len())
}

/// True for a number as JSON writes it.
pub(super) fn is_number(text: &str) -> bool {
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    // Most are whole and not negative.
    if digits(text) {
        return text.len() == 1 || !text.starts_with('0');
    }
    let text = text.strip_prefix('-').unwrap_or(text);
    let (text, power) = match text.split_once(['e', 'E']) {
        None => (text, true),
        Some((text, power)) => (
            text,
            digits(power.strip_prefix(['+', '-']).unwrap_or(power)),
        ),
    };
    let (whole, part) = match text.split_once('.') {
        None => (text, true),
        Some((whole, part)) => (whole, digits(part)),
    };
    power && part && digits(whole) && (whole.len() == 1 || !whole.starts_with('0'))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_run_ends_where_a_look_at_each_byte_ends_it(bytes: Vec<u8>, skipped in 0_usize..9) {
            let from = skipped.min(bytes.len());
            let ends = |byte: &u8| matches!(byte, b'"' | b'\\' | 0..0x20);
            let one_by_one = bytes[from..].iter().position(ends);
            let expected = one_by_one.map_or(bytes.len(), |run| from + run);
            prop_assert_eq!(plain(&bytes, from), expected);
        }
    }

    #[test]
    fn each_byte_alone_ends_a_run_or_does_not() {
        for byte in 0..=u8::MAX {
            let mut bytes = [b'a'; 16];
            bytes[3] = byte;
            bytes[11] = b'"';
            let ends = byte < 0x20 || byte == b'"' || byte == b'\\';
            assert_eq!(plain(&bytes, 0), if ends { 3 } else { 11 }, "{byte}");
        }
    }
}
