//! The texts of one language.

use crate::order;
use std::borrow::Cow;

/// The texts of one language by their English ones.
#[derive(Debug, PartialEq, Eq)]
pub struct Catalogue {
    language: Cow<'static, str>,
    /// The mark of decimals, and behind it that of thousands where it is not the usual one.
    marks: Cow<'static, str>,
    /// By the English text, rising.
    texts: Vec<(Cow<'static, str>, Cow<'static, str>)>,
}

impl Catalogue {
    /// The texts of a language: which it is as in BCP 47, its marks in numbers, and each text with its English one before it.
    ///
    /// The first of the marks stands between the whole and its parts. What is behind it parts thousands; with nothing there
    /// comma or point does, whichever the first is not.
    #[must_use]
    pub fn new(
        language: Cow<'static, str>,
        marks: Cow<'static, str>,
        mut texts: Vec<(Cow<'static, str>, Cow<'static, str>)>,
    ) -> Catalogue {
        order::by(&mut texts, |a, b| a.0.cmp(&b.0));
        Catalogue {
            language,
            marks,
            texts,
        }
    }

    /// Its language, as in BCP 47.
    #[must_use]
    pub fn language(&self) -> &str {
        &self.language
    }

    /// What stands between the whole and its parts in a number.
    #[must_use]
    pub fn decimal_mark(&self) -> &str {
        self.split_marks().0
    }

    /// What parts the thousands of a large number.
    #[must_use]
    pub fn group_mark(&self) -> &str {
        match self.split_marks() {
            (",", "") => ".",
            (_, "") => ",",
            (_, own) => own,
        }
    }

    fn split_marks(&self) -> (&str, &str) {
        let first = self.marks.chars().next().map_or(0, char::len_utf8);
        self.marks.split_at(first)
    }

    /// What an English text is called here.
    #[must_use]
    pub fn find(&self, english: &str) -> Option<&str> {
        let place = self.texts.binary_search_by(|(key, _)| (**key).cmp(english));
        Some(&self.texts[place.ok()?].1)
    }

    /// All texts: the English one, and what it is called here.
    pub fn texts(&self) -> impl Iterator<Item = (&str, &str)> {
        self.texts.iter().map(|(key, text)| (&**key, &**text))
    }
}
