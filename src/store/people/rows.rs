//! The list as its rows say, also where one of them cannot be read.

use super::{People, Person, database_of};
use crate::say;
use crate::sheet::Line;
use crate::store::book_keys::Rows;
use crate::store::shelf::DATABASE;
use crate::store::shelved::{Shelved, Unreadable, shelved};

impl Person {
    /// Who is meant by a row that cannot be read, the `n`th by id: its key is the id, and all that is theirs is reached by
    /// it. None where that is no id. `first` says that it may be the first lifter, as nobody else is.
    fn of_unreadable(row: &Unreadable, n: usize, first: bool) -> Option<Person> {
        let id = row.key.parse().ok()?;
        let own = database_of(id);
        // One letter may have changed, and what stands there can still be seen.
        let first = first && !row.row.contains(&own);
        Some(Person {
            id,
            name: Line::new(&say!("Lifter {n}", n)).ok()?,
            database: if first { DATABASE.to_owned() } else { own },
            gone: false,
            unnamed: true,
        })
    }

    /// The databases that may hold what is theirs: of someone whose row cannot be read it is not sure.
    pub fn databases(&self) -> impl Iterator<Item = String> {
        let own = self.unnamed.then(|| database_of(self.id));
        [self.database.clone()].into_iter().chain(own)
    }
}

impl People {
    /// As their rows say. Someone whose row cannot be read is here all the same, under a name that says nothing: what is
    /// theirs lies in a database of its own and is whole.
    #[must_use]
    pub fn of_rows(rows: Rows) -> People {
        // By rising key, which is the id.
        let keys: Vec<String> = rows.iter().map(|(key, _)| key.clone()).collect();
        let Shelved {
            mut records,
            unreadable,
        } = shelved::<Person>(rows);
        let first_known = records.iter().any(|person| person.database == DATABASE);
        for row in &unreadable {
            let n = keys.iter().position(|key| *key == row.key).unwrap_or(0);
            records.extend(Person::of_unreadable(row, n + 1, n == 0 && !first_known));
        }
        People {
            unreadable,
            ..People::of(records)
        }
    }

    /// The rows that cannot be read.
    #[must_use]
    pub fn unreadable(&self) -> &[Unreadable] {
        &self.unreadable
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::{line, two};
    use super::*;
    use crate::json;
    use crate::store::seal;
    use uuid::Uuid;

    /// The rows of two, the one of that number with another letter in it.
    fn spoiled(n: usize) -> Rows {
        let row = |one: &Person| (one.id.to_string(), seal(&json::text(one)));
        let mut rows: Rows = two().here().map(row).collect();
        rows[n].1 = rows[n].1.replace("\"name\"", "\"mame\"");
        rows
    }

    fn seen_of(people: &People) -> Vec<(String, String)> {
        let here = people.here();
        here.map(|one| (one.name.to_string(), one.database.clone()))
            .collect()
    }

    #[test]
    fn one_whose_row_cannot_be_read_is_still_here() {
        let own = "stanchion-00000000-0000-0000-0000-000000000002";
        let pair = |name: &str, database: &str| (name.to_owned(), database.to_owned());
        let people = People::of_rows(spoiled(1));
        assert_eq!(people.unreadable().len(), 1);
        assert_eq!(
            seen_of(&people),
            [pair("Ann", "stanchion"), pair("Lifter 2", own)]
        );
        let lost = people.here().last().unwrap();
        assert_eq!((lost.given(), lost.id), (None, Uuid::from_u128(2)));
        // Named again, they have a row that can be read.
        let named = people.renamed(lost.id, line("Bea")).unwrap().unwrap();
        assert_eq!(named.given(), Some(&line("Bea")));

        let people = People::of_rows(spoiled(0));
        assert_eq!(
            seen_of(&people),
            [pair("Lifter 1", "stanchion"), pair("Bea", own)]
        );
        // Nobody takes the database of the first once more.
        let more = people.with_one_more(line("Cy"), None, &mut || Uuid::from_u128(5));
        assert_eq!(more.unwrap().len(), 1);
    }

    #[test]
    fn whose_the_database_is_can_be_seen_or_both_are_meant() {
        // The first was erased: the one who is left has a database of their own.
        let mut rows = spoiled(1).split_off(1);
        let database = |rows: &Rows| {
            let people = People::of_rows(rows.clone());
            let one = people.here().next().unwrap().clone();
            (one.database.clone(), one.databases().count())
        };
        let own = "stanchion-00000000-0000-0000-0000-000000000002".to_owned();
        assert_eq!(database(&rows), (own, 2));
        rows[0].1 = "nothing of it".to_owned();
        assert_eq!(database(&rows), (DATABASE.to_owned(), 2));
        rows[0].0 = "no id".to_owned();
        let people = People::of_rows(rows);
        assert_eq!((people.here().count(), people.unreadable().len()), (0, 1));
    }
}
