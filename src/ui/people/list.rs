//! The list of those who train with this phone: read, added to, renamed in; and the tabs that are told.

use super::seat::change_over;
use crate::device::channel::Channel;
use crate::device::db::{DbError, Write};
use crate::sheet::Line;
use crate::store::{DATABASE, People, Person, Shelf, UnfitName};
use crate::ui::keep::{Keep, put};
use crate::ui::later::Lost;
use crate::ui::model::Model;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::task::spawn_local;
use uuid::Uuid;

/// Name of the channel on which tabs tell that the list changed.
pub const LINE: &str = "stanchion-people";

/// The list as it is stored. Rows that cannot be read stay where they are.
///
/// # Errors
/// [`DbError`]: nobody knows who trains here then, and an empty list would say that it is one alone.
pub async fn read(home: &Keep) -> Result<People, DbError> {
    Ok(People::of_rows(home.rows(Shelf::People).await?))
}

/// Shows the list; the rows of it that cannot be read are set aside.
pub fn show(app: Stanchion, people: People) {
    app.set_aside(unreadable(&people));
    app.model.update(|model| model.people = people);
}

/// The rows of the list that cannot be read.
pub fn unreadable(people: &People) -> Lost {
    let rows = people.unreadable().iter().cloned();
    rows.map(|row| (Shelf::People, row)).collect()
}

/// The write that keeps someone in the list.
pub fn row(person: &Person) -> Write {
    put(Shelf::People, &person.id.to_string(), person)
}

/// Keeps these as they are now, then does `then`.
pub fn keep(app: Stanchion, people: Vec<Person>, then: impl FnOnce() + 'static) {
    spawn_local(async move {
        let home = app.home().await;
        let kept = home.apply(people.iter().map(row).collect()).await;
        if let Err(error) = kept {
            return app.complain(error.to_string());
        }
        tell();
        match read(&home).await {
            Ok(people) => show(app, people),
            Err(error) => return app.complain(error.to_string()),
        }
        follow(app);
        then();
    });
}

/// What the other tabs are told when nothing is left.
pub const ERASED: &str = "erased";

/// Tells the other tabs that the list changed.
pub fn tell() {
    post("changed");
}

/// Tells the other tabs that everything was erased.
pub fn tell_erased() {
    post(ERASED);
}

fn post(what: &str) {
    Channel::open(LINE, |_| {}).post(what);
}

/// Brings this tab in line with the list: who sat here without a name has one now, and who was removed goes.
pub fn follow(app: Stanchion) {
    let (who, unnamed) = app.model.with_untracked(|model| {
        let first = model.people.here().find(|one| one.database == DATABASE);
        let unnamed = model.who.is_none() && model.looks_at.is_none();
        let gone = model.who.is_some() && model.person().is_none();
        let next = model.people.in_use(None).filter(|_| gone);
        let who = if unnamed { first } else { next };
        (who.map(|person| person.id), unnamed)
    });
    match who {
        Some(id) if unnamed => app.model.update(|model| model.who = Some(id)),
        Some(id) => change_over(app, id),
        None => {}
    }
    app.keep_name();
}

fn named(name: &str) -> Result<Line, String> {
    Line::new(name).map_err(|_| UnfitName::Unseen.to_string())
}

/// Adds someone of that name.
///
/// # Errors
/// In words, where the name is none or taken.
pub fn add(app: Stanchion, name: &str) -> Result<(), String> {
    let name = named(name)?;
    let own = app
        .model
        .with_untracked(|model| model.lifter.as_ref()?.name.clone());
    let more = move |people: &People| {
        let more = people.with_one_more(name.clone(), own.clone(), &mut || app.id());
        more.map_err(|unfit| unfit.to_string())
    };
    app.model.with_untracked(|model| more(&model.people))?;
    spawn_local(async move {
        // As it is on disk: where the list could not be read, the first lifter would be written once more.
        let people = read(&app.home().await).await;
        let people = people.map_err(|error| error.to_string());
        match people.and_then(|people| more(&people)) {
            Ok(more) => keep(app, more, || {}),
            Err(why) => app.complain(why),
        }
    });
    Ok(())
}

/// Calls someone by another name.
///
/// # Errors
/// In words, where the name is none or taken.
pub fn rename(app: Stanchion, id: Uuid, name: &str) -> Result<(), String> {
    let name = named(name)?;
    let renamed = app
        .model
        .with_untracked(|model: &Model| model.people.renamed(id, name));
    let renamed = renamed.map_err(|unfit| unfit.to_string())?;
    keep(app, renamed.into_iter().collect(), || {});
    Ok(())
}

/// Whether someone has a name; if not, the person is asked for one first. Their row cannot be read then, and written anew it
/// would hold a name and a database that were guessed.
pub fn is_named(app: Stanchion, person: &Person) -> bool {
    let named = person.given().is_some();
    if !named {
        app.complain(t("Their entry could not be read: give them a name first."));
    }
    named
}

/// Removes someone from the list, or brings them back.
pub fn set_gone(app: Stanchion, id: Uuid, gone: bool) {
    let trains = app.model.with_untracked(|model| {
        let own = model.who == Some(id);
        let along = model.partner().is_some_and(|other| other.who == Some(id));
        (own || along) && model.any_in_session()
    });
    if gone && trains {
        return app.complain(t("A session of theirs is under way: end it first."));
    }
    spawn_local(async move {
        // As it is on disk: another tab may have erased them since.
        let people = match read(&app.home().await).await {
            Ok(people) => people,
            Err(error) => return app.complain(error.to_string()),
        };
        let person = people.here().chain(people.gone()).find(|one| one.id == id);
        match person.cloned() {
            Some(person) if is_named(app, &person) => {
                keep(app, vec![Person { gone, ..person }], || {});
            }
            Some(_) => {}
            None => app.complain(t("They are erased already: another tab was opened since.")),
        }
    });
}
