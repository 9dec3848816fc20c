//! Who sits down: the one who was here last, or another one who is chosen. Their records are read in.

use super::away::tidy;
use super::list;
use super::pair::restore;
use crate::device::channel::Channel;
use crate::device::erase::start_over;
use crate::device::{clock, prefs};
use crate::say;
use crate::store::{DATABASE, People, Person};
use crate::ui::keep::Keep;
use crate::ui::model::{Keeping, Stage};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::ui::start::{open, sit_down};
use crate::ui::wanted::Ahead;
use leptos::task::spawn_local;
use uuid::Uuid;

/// Preference: who was here last. Lost, it is the first.
const WHO: &str = "lifter";

/// The first to sit down after the page was opened.
pub async fn arrive(app: Stanchion, ahead: Ahead) {
    let (home, keeping, mut read) = ahead.wait().await;
    app.opens(home.clone(), keeping);
    let people = match read.pop() {
        Some(rows) => Ok(People::of_rows(rows.rows())),
        None => list::read(&home).await,
    };
    let unknown = people.as_ref().err().map(ToString::to_string);
    let people = people.unwrap_or_default();
    app.read_ahead(home, read);
    let last = prefs::get_in_tab(WHO).or_else(|| prefs::get(WHO));
    let person = people.in_use(last).cloned();
    app.model.update(|model| model.people = people);
    sit(app, person.as_ref()).await;
    // It was of this moment, and may have been of somebody else.
    app.forget_ahead();
    open(app);
    if let Some(error) = unknown {
        app.complain(say!(
            "Who trains with this phone could not be read: the first lifter is here. Open the page again for the others. {error}",
            error,
        ));
    }
    // For the life of the page.
    let line = Channel::open(list::LINE, move |told| {
        if told == list::ERASED {
            start_over();
        } else {
            spawn_local(list_changed(app));
        }
    });
    std::mem::forget(line);
    spawn_local(tidy(app));
}

/// Lets someone else sit down. What waits to be written of the one before is written on.
pub fn change_over(app: Stanchion, id: Uuid) {
    let person = app.model.with_untracked(|model| {
        let other = model.who != Some(id) && model.looks_at.is_none();
        model.people.get(id).filter(|_| other).cloned()
    });
    let Some(person) = person else { return };
    let along = app
        .model
        .with_untracked(|model| model.partner().is_some_and(|other| other.who == Some(id)));
    if along {
        return app.turn();
    }
    if !app.is_settled() {
        return;
    }
    // What is open of the one before is nothing of the next.
    let place = app.model.with_untracked(|model| match &model.place {
        Place::Lifters => Place::Lifters,
        place => place.main(),
    });
    app.model.update(|model| model.stage = Stage::Opening);
    app.go(place);
    spawn_local(async move {
        sit(app, Some(&person)).await;
        open(app);
    });
}

/// Sits down at the records of `person`, or at those of the only one there is.
async fn sit(app: Stanchion, person: Option<&Person>) {
    let database = person.map_or(DATABASE, |person| person.database.as_str());
    let (keep, keeping) = app.records_of(database).await;
    sit_at(app, person.map(|person| person.id), keep, keeping).await;
    if let Some(person) = person {
        remember(person.id);
    }
    app.keep_name();
    restore(app).await;
}

/// Remembers who is here.
pub fn remember(id: Uuid) {
    prefs::set_in_tab(WHO, &id);
    // Lost, the first comes at the next start.
    let _ = prefs::set(WHO, &id);
}

/// Sits down at those records: nothing of the one before stays in the model.
async fn sit_at(app: Stanchion, who: Option<Uuid>, keep: Keep, keeping: Keeping) {
    clock::go_by_the_phone();
    app.other_in(None);
    app.keep_in(keep);
    app.model.update(|model| {
        let another = model.of_another();
        *model = another;
        model.who = who;
        if keeping != Keeping::Safe {
            model.keeping = keeping;
        }
    });
    sit_down(app).await;
}

/// Another tab changed who is here.
async fn list_changed(app: Stanchion) {
    match list::read(&app.home().await).await {
        Ok(people) => list::show(app, people),
        Err(error) => return app.complain(error.to_string()),
    }
    list::follow(app);
}
