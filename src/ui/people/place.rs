//! The page of those who train with this phone: add, rename, remove.

use super::list;
use super::seat::change_over;
use crate::store::Person;
use crate::ui::away::{Farewell, farewell};
use crate::ui::parts::{
    Mode, button, checked_field, dynamic, group, h1, h2, line, page, quiet, way,
};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use leptos::prelude::*;

const ABOUT: &str = "Each lifter has an own ledger, sheets, kit and settings; nothing of one is in the export of another. \
    Sound and looks are the phone's. Nothing is locked: who holds the phone can read all of it.";

/// Those who train with this phone.
#[component]
pub fn LiftersPlace() -> impl IntoView {
    let app = stanchion();
    let here = app.of(|model| (model.people.clone(), model.who));
    let leaving = RwSignal::new(None::<Person>);
    let rows = dynamic(move || {
        let (people, who) = here.get();
        let several = people.are_several();
        let rows = people.here().enumerate().map(|(n, person)| {
            let own = who == Some(person.id);
            row(app, n, person, (own, several), leaving)
        });
        let gone = people.gone().map(|person| back(app, person));
        rows.chain(gone).collect::<Vec<_>>().into_any()
    });
    vec![
        page(
            "lifters",
            vec![
                way(Place::Kit.href(), "Kit"),
                h1("Lifters"),
                quiet(ABOUT),
                rows,
                h2("One more"),
                add(app),
            ],
        ),
        dynamic(move || match leaving.get() {
            Some(person) => remove(app, person, leaving),
            None => ().into_any(),
        }),
    ]
}

/// One who is here: the name, and what can be done.
fn row(
    app: Stanchion,
    n: usize,
    person: &Person,
    (own, several): (bool, bool),
    leaving: RwSignal<Option<Person>>,
) -> AnyView {
    let id = person.id;
    let name = person.name.to_string();
    let wrong = RwSignal::new(None::<String>);
    let typed = move |typed: String| wrong.set(list::rename(app, id, &typed).err());
    let label = if own {
        "name, here now".to_owned()
    } else {
        "name".to_owned()
    };
    let mut inside = vec![checked_field(
        format!("lifter-{n}"),
        Mode::Text,
        label,
        name.clone(),
        false,
        typed,
        wrong,
    )];
    if !own {
        let change = format!("Change over to {name}");
        inside.push(button(
            "wide",
            format!("lifter-{n}-use"),
            change,
            move || {
                change_over(app, id);
            },
        ));
    }
    if several {
        let person = person.clone();
        let remove = format!("Remove {name}");
        let ask = move || leaving.set(Some(person.clone()));
        inside.push(button("plain", format!("lifter-{n}-remove"), remove, ask));
    }
    group(Some("lifter"), inside)
}

/// One who was removed, and the way back.
fn back(app: Stanchion, person: &Person) -> AnyView {
    let id = person.id;
    let said = format!(
        "{} is removed. What was theirs is erased when this page is opened the next time.",
        person.name
    );
    let undo = format!("Undo: bring {} back", person.name);
    let back = move || list::set_gone(app, id, false);
    group(
        None,
        vec![
            line("quiet", "lifter-gone", said),
            button("wide", "lifter-back", undo, back),
        ],
    )
}

fn add(app: Stanchion) -> AnyView {
    let name = RwSignal::new(String::new());
    let wrong = RwSignal::new(None::<String>);
    let typed = move |text| name.set(text);
    let add = move || match list::add(app, &name.get_untracked()) {
        Ok(()) => {
            wrong.set(None);
            name.set(String::new());
        }
        Err(why) => wrong.set(Some(why)),
    };
    vec![
        checked_field(
            "lifter-name",
            Mode::Text,
            "name of another lifter",
            name,
            true,
            typed,
            wrong,
        ),
        button("wide strong", "lifter-add", "Add", add),
    ]
    .into_any()
}

/// The steps of a removal.
fn remove(app: Stanchion, person: Person, leaving: RwSignal<Option<Person>>) -> AnyView {
    let close = Callback::new(move |()| leaving.set(None));
    let id = person.id;
    let goes = format!(
        "What goes: all that {} logged, wrote and set. It can be brought back until this page is opened the next time; \
         then it is erased.",
        person.name
    );
    farewell(
        app,
        "lifter-remove-panel",
        Farewell {
            title: "Remove a lifter",
            goes,
            of: Some(person.database),
            sure: "Remove now",
            act: Callback::new(move |()| {
                leaving.set(None);
                list::set_gone(app, id, true);
            }),
            close,
        },
    )
}
