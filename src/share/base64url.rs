//! Bytes as text that an address may hold: base64url without padding (RFC 4648, sections 3.2 and 5).

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// The text of the bytes.
pub(super) fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let mut bits = 0_u32;
        for at in 0..3 {
            bits = bits << 8 | u32::from(three.get(at).copied().unwrap_or(0));
        }
        for at in 0..=three.len() {
            let letter = bits >> (18 - 6 * at) & 63;
            text.push(char::from(LETTERS[letter as usize]));
        }
    }
    text
}

/// The bytes of a text; none where it is no such text. Of all texts only the one that [`encode`] gives is taken, so a
/// changed letter is never passed over.
pub(super) fn decode(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3 + 2);
    for four in text.as_bytes().chunks(4) {
        let mut bits = 0_u32;
        for at in 0..4 {
            bits = bits << 6 | four.get(at).map_or(Some(0), |letter| value(*letter))?;
        }
        let all = bits.to_be_bytes();
        let (told, rest) = all[1..].split_at(four.len().checked_sub(1).filter(|n| *n > 0)?);
        if rest.iter().any(|byte| *byte != 0) {
            return None;
        }
        bytes.extend_from_slice(told);
    }
    Some(bytes)
}

fn value(letter: u8) -> Option<u32> {
    Some(u32::from(match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'-' => 62,
        b'_' => 63,
        _ => return None,
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_vectors_of_the_standard_hold() {
        // RFC 4648, section 10, without the padding.
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(encode(bytes.as_bytes()), text);
            assert_eq!(decode(text).as_deref(), Some(bytes.as_bytes()));
        }
        // Section 5: the two letters that differ from plain base64.
        assert_eq!(encode(&[0xfb, 0xff]), "-_8");
        assert_eq!(decode("-_8"), Some(vec![0xfb, 0xff]));
    }

    #[test]
    fn other_texts_are_refused() {
        for text in [
            "Z", "Zm9vY", "Zg==", "Zm+v", "Zm/v", "Zh", "Zm9", "Zm 9v", "ü",
        ] {
            assert_eq!(decode(text), None, "{text}");
        }
    }
}
