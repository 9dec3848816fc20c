//! What goes when someone is removed, and when everything is erased.

use super::list;
use crate::device::db::{Db, DbError, Write};
use crate::device::erase;
use crate::store::{DATABASE, Person, Shelf, snapshots_of};
use crate::ui::change::delete;
use crate::ui::stanchion::Stanchion;

/// Writes that clear every shelf, but the list of those who are here.
fn clear() -> Vec<Write> {
    let shelves = Shelf::ALL
        .into_iter()
        .filter(|shelf| *shelf != Shelf::People);
    let clear = |shelf: Shelf| Write::Clear {
        shelf: shelf.name().to_owned(),
    };
    shelves.map(clear).collect()
}

/// Erases what is left of those who were removed before this page was opened.
pub async fn tidy(app: Stanchion) {
    let home = app.home().await;
    // Not read, it is tried again at the next start.
    let Ok(people) = list::read(&home).await else {
        return;
    };
    for person in people.gone() {
        // Refused, it is tried again at the next start.
        let _ = tidy_one(app, person).await;
    }
    if people.gone().next().is_some()
        && let Ok(people) = list::read(&home).await
    {
        list::show(app, people);
    }
}

async fn tidy_one(app: Stanchion, person: &Person) -> Result<(), DbError> {
    let home = app.home().await;
    let row = delete(Shelf::People, &person.id.to_string());
    if person.database == DATABASE {
        let mut writes = clear();
        writes.push(row);
        home.apply(writes).await?;
        erase::databases_of(&[&snapshots_of(DATABASE)]);
        return Ok(());
    }
    if let Some(db) = Db::as_it_is(&person.database).await? {
        db.apply(clear()).await?;
        db.close();
    }
    erase::databases_of(&[&person.database, &snapshots_of(&person.database)]);
    home.apply(vec![row]).await
}

/// Erases what is kept of every lifter, and begins again.
pub async fn erase_all(app: Stanchion) -> Result<(), DbError> {
    let home = app.home().await;
    // Whoever is not in the list would be left behind: where it cannot be read, nothing is erased.
    let people = list::read(&home).await?;
    let mut databases = vec![DATABASE.to_owned()];
    for database in people
        .here()
        .chain(people.gone())
        .flat_map(Person::databases)
    {
        if !databases.contains(&database) {
            databases.push(database);
        }
    }
    // The list goes last: what could not be erased is found again by it.
    for database in databases.iter().rev() {
        let keep = app.records_of(database).await.0;
        keep.apply(clear()).await?;
        app.tell_others(&keep);
    }
    let list = Write::Clear {
        shelf: Shelf::People.name().to_owned(),
    };
    home.apply(vec![list]).await?;
    let snapshots: Vec<String> = databases.iter().map(|name| snapshots_of(name)).collect();
    let all: Vec<&str> = databases
        .iter()
        .chain(&snapshots)
        .map(String::as_str)
        .collect();
    erase::everything(&all).await;
    // They show what is no more, and would write on into it.
    list::tell_erased();
    erase::start_over();
    Ok(())
}
