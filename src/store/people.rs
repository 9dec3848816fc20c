//! Those who train with one phone: each has a database of their own, and nothing of one is in that of another.

mod rows;

use super::shelf::DATABASE;
use super::shelved::Unreadable;
use crate::order;
use crate::say;
use crate::sheet::Line;
use crate::words::{file_word, small, t};
use serde::{Deserialize, Serialize};
use std::fmt;
use uuid::Uuid;

/// Longest part of a file's name that comes from a lifter's name.
const FILE_CHARS_MAX: usize = 24;

/// What the first lifter is called until a name is given.
fn first() -> &'static str {
    t("Lifter 1")
}

/// Someone who trains with this phone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// Identity, UUIDv7; it never changes.
    pub id: Uuid,
    /// What they are called; no two are called the same.
    pub name: Line,
    /// Name of the database with all that is theirs.
    pub database: String,
    /// True once they were removed: what is theirs is erased at the next start, and can be brought back until then.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub gone: bool,
    /// True where their row cannot be read: the name is none that anybody gave.
    #[serde(skip)]
    pub unnamed: bool,
}

/// Why nobody can be called so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnfitName {
    /// Another one is.
    Taken(Line),
    /// There is nothing of it to be seen.
    Unseen,
}

impl fmt::Display for UnfitName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitName::Taken(name) => f.write_str(&say!("{name} is here already: two of one name cannot be told apart on the floor. Add a letter.", name)),
            UnfitName::Unseen => f.write_str(t("give it a name of 1 to 200 characters")),
        }
    }
}

impl std::error::Error for UnfitName {}

/// Name of the database of someone who was not the first.
fn database_of(id: Uuid) -> String {
    format!("{DATABASE}-{id}")
}

impl Person {
    /// The name that was given; none where their row cannot be read.
    #[must_use]
    pub fn given(&self) -> Option<&Line> {
        Some(&self.name).filter(|_| !self.unnamed)
    }

    /// The name as a part of a file's name: small Latin letters, digits and hyphens; none where nothing is left of it.
    #[must_use]
    pub fn in_file_name(&self) -> Option<String> {
        let short = file_word(self.name.as_str(), FILE_CHARS_MAX);
        (!short.is_empty()).then_some(short)
    }
}

/// All of them, in the order in which they came. Empty while there was never more than one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct People {
    all: Vec<Person>,
    unreadable: Vec<Unreadable>,
}

impl People {
    /// As they are stored, in any order.
    #[must_use]
    pub fn of(mut people: Vec<Person>) -> People {
        order::by_key(&mut people, |person| person.id);
        People {
            all: people,
            unreadable: Vec::new(),
        }
    }

    /// Those who are here.
    pub fn here(&self) -> impl DoubleEndedIterator<Item = &Person> {
        self.all.iter().filter(|person| !person.gone)
    }

    /// Those who were removed and are not yet erased.
    pub fn gone(&self) -> impl DoubleEndedIterator<Item = &Person> {
        self.all.iter().filter(|person| person.gone)
    }

    /// True when there is one to choose.
    #[must_use]
    pub fn are_several(&self) -> bool {
        self.here().count() > 1
    }

    /// The one of that id, if here.
    #[must_use]
    pub fn get(&self, id: Uuid) -> Option<&Person> {
        self.here().find(|person| person.id == id)
    }

    /// Who is in use at a start: the one who was here last, if that is known, else the first. None while there was
    /// never more than one.
    #[must_use]
    pub fn in_use(&self, last: Option<Uuid>) -> Option<&Person> {
        last.and_then(|last| self.get(last))
            .or_else(|| self.here().next())
    }

    /// Those who are to be written so that one more is here: the new one last. Where nobody was written yet, that is the
    /// first lifter too, called `own`, in whose database all is until then.
    ///
    /// # Errors
    /// [`UnfitName`].
    pub fn with_one_more(
        &self,
        name: Line,
        own: Option<Line>,
        ids: &mut dyn FnMut() -> Uuid,
    ) -> Result<Vec<Person>, UnfitName> {
        let mut more = Vec::new();
        if self.all.is_empty() {
            // The fixed words are within the limits of a line.
            let named = own.or_else(|| Line::new(first()).ok());
            more.extend(named.map(|name| Person {
                id: ids(),
                name,
                database: DATABASE.to_owned(),
                gone: false,
                unnamed: false,
            }));
        }
        self.free(&name, None)?;
        if more.iter().any(|person| same(&person.name, &name)) {
            return Err(UnfitName::Taken(name));
        }
        let id = ids();
        more.push(Person {
            id,
            name,
            database: database_of(id),
            gone: false,
            unnamed: false,
        });
        Ok(more)
    }

    /// The one of that id under another name.
    ///
    /// # Errors
    /// [`UnfitName`].
    pub fn renamed(&self, id: Uuid, name: Line) -> Result<Option<Person>, UnfitName> {
        self.free(&name, Some(id))?;
        Ok(self.get(id).map(|person| Person {
            name,
            unnamed: false,
            ..person.clone()
        }))
    }

    fn free(&self, name: &Line, but: Option<Uuid>) -> Result<(), UnfitName> {
        if seen(name).is_empty() {
            return Err(UnfitName::Unseen);
        }
        let taken = self
            .here()
            .any(|other| Some(other.id) != but && same(&other.name, name));
        if taken {
            Err(UnfitName::Taken(name.clone()))
        } else {
            Ok(())
        }
    }
}

/// Two names that look alike at two metres.
fn same(one: &Line, other: &Line) -> bool {
    seen(one) == seen(other)
}

/// What is seen of a name: its letters, of which the case is no matter; one space where there are several, as a page shows
/// them; and nothing that has no width.
fn seen(name: &Line) -> String {
    let visible: String = name
        .as_str()
        .chars()
        .filter(|c| !has_no_width(*c))
        .collect();
    let words: Vec<&str> = visible.split_whitespace().collect();
    small(&words.join(" "))
}

/// The characters without a width of their own that keyboards and copied texts bring along: soft hyphen, zero-width spaces
/// and joiners, marks of direction, variation selectors, the byte order mark (Unicode, general category Cf, and U+FE00 to
/// U+FE0F); and the Hangul filler, which is blank.
fn has_no_width(c: char) -> bool {
    matches!(
        c,
        '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{3164}'
            | '\u{fe00}'..='\u{fe0f}' | '\u{feff}'
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    pub(super) fn line(text: &str) -> Line {
        Line::new(text).unwrap()
    }

    fn ids() -> impl FnMut() -> Uuid {
        let mut n = 0;
        move || {
            n += 1;
            Uuid::from_u128(n)
        }
    }

    pub(super) fn two() -> People {
        People::of(
            People::default()
                .with_one_more(line("Bea"), Some(line("Ann")), &mut ids())
                .unwrap(),
        )
    }

    #[test]
    fn the_first_keeps_the_database_that_was_there() {
        let people = two();
        let databases: Vec<&str> = people.here().map(|one| one.database.as_str()).collect();
        assert_eq!(
            databases,
            [
                "stanchion",
                "stanchion-00000000-0000-0000-0000-000000000002"
            ]
        );
        assert!(people.are_several());
        assert!(!People::default().are_several());
        assert_eq!(People::default().in_use(None), None);
    }

    #[test]
    fn who_was_here_last_comes_again_and_else_the_first() {
        let people = two();
        let name = |last: Option<u128>| {
            let last = last.map(Uuid::from_u128);
            people.in_use(last).map(|one| one.name.to_string()).unwrap()
        };
        assert_eq!(name(Some(2)), "Bea");
        assert_eq!(name(None), "Ann");
        assert_eq!(name(Some(9)), "Ann");
    }

    #[test]
    fn one_who_was_removed_is_not_here_and_their_name_is_free() {
        let mut all: Vec<Person> = two().here().cloned().collect();
        all[0].gone = true;
        let people = People::of(all);
        assert_eq!(
            people.in_use(Some(Uuid::from_u128(1))).unwrap().name,
            line("Bea")
        );
        assert!(!people.are_several());
        assert_eq!(people.gone().count(), 1);
        let more = people.with_one_more(line("ann"), None, &mut || Uuid::from_u128(5));
        assert_eq!(more.unwrap().len(), 1, "the first is written already");
    }

    #[test]
    fn two_of_one_name_are_refused_whatever_the_case() {
        let people = two();
        let taken = people.with_one_more(line("BEA"), None, &mut ids());
        assert_eq!(taken, Err(UnfitName::Taken(line("BEA"))));
        assert!(people.renamed(Uuid::from_u128(1), line("bea")).is_err());
        // One's own name in another case is one's own.
        let renamed = people.renamed(Uuid::from_u128(2), line("BEA")).unwrap();
        assert_eq!(renamed.unwrap().name, line("BEA"));
        let own = People::default().with_one_more(line("Ann"), Some(line("ann")), &mut ids());
        assert!(own.is_err());
    }

    #[test]
    fn names_that_look_alike_are_one_and_what_is_not_seen_is_none() {
        let people = two();
        for alike in ["Be\u{200b}a", "\u{200e}Bea", "b\u{ad}ea"] {
            let taken = people.with_one_more(line(alike), None, &mut ids());
            assert_eq!(taken, Err(UnfitName::Taken(line(alike))), "{alike:?}");
        }
        let own = People::default().with_one_more(line("Ann  B"), Some(line("Ann B")), &mut ids());
        assert!(own.is_err());
        for nothing in ["\u{200b}", "\u{feff}\u{2060}", "\u{3164}"] {
            let unseen = people.with_one_more(line(nothing), None, &mut ids());
            assert_eq!(unseen, Err(UnfitName::Unseen), "{nothing:?}");
        }
        // A picture is a name, and another picture another one.
        let fox = People::of(people.with_one_more(line("🦊"), None, &mut ids()).unwrap());
        assert!(fox.with_one_more(line("🐻"), None, &mut ids()).is_ok());
        assert!(
            fox.with_one_more(line("🦊\u{fe0f}"), None, &mut ids())
                .is_err()
        );
    }

    #[test]
    fn a_name_in_a_file_name_is_safe() {
        let safe = |name: &str| {
            let person = Person {
                name: line(name),
                ..two().here().next().unwrap().clone()
            };
            person.in_file_name()
        };
        assert_eq!(safe("Ann B."), Some("ann-b".to_owned()));
        assert_eq!(safe("../../etc"), Some("etc".to_owned()));
        assert_eq!(safe("Jörg"), Some("joerg".to_owned()));
        assert_eq!(safe("力"), None);
    }
}
