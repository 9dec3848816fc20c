//! What stands in most lines, each as one character that no line has: a short text packs badly without.

/// The characters and what each stands for; a link means the same for ever, so this table belongs to its version.
/// Longer words come before those that they contain.
const WORDS: [(char, &str); 28] = [
    ('\x01', " rising by outcome step "),
    ('\x02', "; double last set up "),
    ('\x03', "; one side holds"),
    ('\x04', " (dumbbell, "),
    ('\x05', " (barbell, "),
    ('\x06', " partials]"),
    ('\x07', "; between "),
    ('\x08', "; each side"),
    ('\x09', "; no load"),
    ('\x0b', "; tempo "),
    ('\x0c', "; power"),
    ('\x0d', " (body, "),
    ('\x0e', " large "),
    ('\x0f', "budget "),
    ('\x10', " down "),
    ('\x11', " rest "),
    ('\x12', "[hold "),
    ('\x13', "\"; ! "),
    ('\x14', " at "),
    ('\x15', " min"),
    ('\x16', " × "),
    ('\x17', " → "),
    ('\x18', "; \""),
    ('\x19', " @ "),
    ('\x1a', "\n\n"),
    ('\x1b', "\n> "),
    ('\x1c', " kg"),
    ('\x1d', "–"),
];

/// The text with its usual words as one character each.
pub(super) fn shorten(text: &str) -> String {
    let mut short = text.to_owned();
    for (one, word) in WORDS {
        short = short.replace(word, one.encode_utf8(&mut [0; 4]));
    }
    short
}

/// The text that was shortened.
pub(super) fn lengthen(short: &str) -> String {
    let mut text = String::with_capacity(short.len() * 2);
    for c in short.chars() {
        match WORDS.iter().find(|(one, _)| *one == c) {
            Some((_, word)) => text.push_str(word),
            None => text.push(c),
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_word_is_one_character_and_comes_back() {
        for (index, (one, word)) in WORDS.into_iter().enumerate() {
            assert_eq!(shorten(word), one.to_string());
            assert_eq!(lengthen(&one.to_string()), word);
            assert!(one < ' ' && one != '\n' && one != '\0');
            let later = &WORDS[index + 1..];
            assert!(
                later
                    .iter()
                    .all(|(other, longer)| *other != one && !longer.contains(word))
            );
        }
    }
}
