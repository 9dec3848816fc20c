//! A name as a part of a file's name that every system takes.

use super::small;

/// Marks that stand over or under the letter before them: they are left out with what they change.
const MARKS: core::ops::RangeInclusive<char> = '\u{300}'..='\u{36f}';

/// A name in small Latin letters without marks, digits, and single hyphens for all else: `jörg b.` is `joerg-b`. At most `most` letters long;
/// empty where nothing is left of it.
///
/// Other scripts are not spelt: what is no Latin letter parts words.
#[must_use]
pub fn file_word(name: &str, most: usize) -> String {
    let mut word = String::new();
    let small = small(name);
    for letter in small.chars().filter(|letter| !MARKS.contains(letter)) {
        let spelt = match letter {
            'ä' | 'æ' => "ae",
            'ö' | 'œ' => "oe",
            'ü' => "ue",
            'ß' => "ss",
            'à' | 'á' | 'â' | 'ã' | 'å' | 'ą' => "a",
            'ç' | 'ć' | 'č' => "c",
            'è' | 'é' | 'ê' | 'ë' | 'ę' | 'ě' => "e",
            'ì' | 'í' | 'î' | 'ï' | 'ı' => "i",
            'ł' => "l",
            'ñ' | 'ń' => "n",
            'ò' | 'ó' | 'ô' | 'õ' | 'ø' => "o",
            'ř' => "r",
            'ś' | 'š' | 'ş' => "s",
            'ù' | 'ú' | 'û' | 'ů' => "u",
            'ý' | 'ÿ' => "y",
            'ź' | 'ż' | 'ž' => "z",
            _ => "",
        };
        if letter.is_ascii_alphanumeric() {
            word.push(letter);
        } else if !spelt.is_empty() {
            word.push_str(spelt);
        } else if !word.is_empty() && !word.ends_with('-') {
            word.push('-');
        }
    }
    word.truncate(most);
    word.truncate(word.trim_end_matches('-').len());
    word
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_name_keeps_its_letters_in_a_file_name() {
        let short = |name: &str| file_word(name, 24);
        assert_eq!(short("Jörg B."), "joerg-b");
        assert_eq!(short("Zoë Łaska"), "zoe-laska");
        assert_eq!(short("Größe, Übung"), "groesse-uebung");
        assert_eq!(short("Rotatoren\u{ad}manschette"), "rotatorenmanschette");
        // A letter and its mark may come as two.
        assert_eq!(short("Rene\u{301}e"), "renee");
        assert_eq!(short("../../etc"), "etc");
        assert_eq!(short("a – b"), "a-b");
        assert_eq!(short("قرفصاء"), "");
        assert_eq!(file_word("abc def", 4), "abc");
    }

    proptest! {
        /// Whatever the name, what of it comes into a file's name is short and holds nothing that means something there.
        #[test]
        fn no_name_makes_an_unsafe_file_name(name in any::<String>(), most in 0_usize..60) {
            let word = file_word(&name, most);
            prop_assert!(word.len() <= most);
            prop_assert!(word.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-'));
            prop_assert!(!word.starts_with('-') && !word.ends_with('-') && !word.contains("--"));
        }
    }
}
