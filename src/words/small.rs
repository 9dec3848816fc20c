//! Letters made small, so that what was typed is found whatever the case of its letters.

/// Where a long word may be parted, in texts that are shown; nobody sees it elsewhere.
pub const SOFT_HYPHEN: char = '\u{ad}';

/// A text in small letters, to be compared with another one: not to be shown, for it has one σ, at the end of a word too.
/// (`str::to_lowercase` tells the two apart and needs tables of letters for it.) The places where a long word may be parted
/// are no letters.
#[must_use]
pub fn small(text: &str) -> String {
    let letters = text.chars().filter(|c| *c != SOFT_HYPHEN);
    let small = letters.flat_map(char::to_lowercase);
    small.map(|c| if c == 'ς' { 'σ' } else { c }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_was_typed_in_any_case_is_one_text() {
        assert_eq!(small("Überzug, ÉPAULÉ, ЖИМ"), "überzug, épaulé, жим");
        assert_eq!(small("ΟΔΟΣ"), small("οδος"));
        assert_eq!(small("Rotatoren\u{ad}manschette"), "rotatorenmanschette");
        // One letter may become two.
        assert_eq!(small("İ").chars().count(), 2);
    }

    proptest! {
        #[test]
        fn it_is_what_std_makes_but_for_one_letter(text in any::<String>()) {
            let letters = text.replace(SOFT_HYPHEN, "");
            prop_assert_eq!(small(&text), letters.to_lowercase().replace('ς', "σ"));
        }
    }
}
