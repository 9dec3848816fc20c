//! Letters made small, so that what was typed is found whatever the case of its letters.

/// A text in small letters, to be compared with another one: not to be shown, for it has one σ, at the end of a word too.
/// (`str::to_lowercase` tells the two apart and needs tables of letters for it.)
#[must_use]
pub fn small(text: &str) -> String {
    let small = text.chars().flat_map(char::to_lowercase);
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
        // One letter may become two.
        assert_eq!(small("İ").chars().count(), 2);
    }

    proptest! {
        #[test]
        fn it_is_what_std_makes_but_for_one_letter(text in any::<String>()) {
            prop_assert_eq!(small(&text), text.to_lowercase().replace('ς', "σ"));
        }
    }
}
