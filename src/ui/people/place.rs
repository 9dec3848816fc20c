//! The page of those who train with this phone: add, rename, remove.

use super::list;
use super::seat::change_over;
use crate::say;
use crate::store::Person;
use crate::ui::away::{Farewell, farewell};
use crate::ui::live::Live;
use crate::ui::parts::{
    Mode, button, checked_field, dynamic, group, h1, h2, line, page, quiet, way,
};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::t;
use leptos::prelude::*;

/// Those who train with this phone.
pub fn lifters_place() -> AnyView {
    let app = stanchion();
    let here = app.of(|model| (model.people.clone(), model.who));
    let leaving = Live::new(None::<Person>);
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
                way(Place::Kit.href(), t("Kit")),
                h1(t("Lifters")),
                quiet(t(
                    "Each lifter has an own ledger, sheets, kit and settings; nothing of one is in the export of \
                     another. Sound and looks are the phone's. Nothing is locked: who holds the phone can read all of \
                     it.",
                )),
                rows,
                h2(t("One more")),
                add(app),
            ],
        ),
        dynamic(move || match leaving.get() {
            Some(person) => remove(app, person, leaving),
            None => ().into_any(),
        }),
    ]
    .into_any()
}

/// One who is here: the name, and what can be done.
fn row(
    app: Stanchion,
    n: usize,
    person: &Person,
    (own, several): (bool, bool),
    leaving: Live<Option<Person>>,
) -> AnyView {
    let id = person.id;
    let name = person.name.to_string();
    let wrong = Live::new(None::<String>);
    let typed = move |typed: String| wrong.set(list::rename(app, id, &typed).err());
    let label = if own { t("name, here now") } else { t("name") };
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
        let change = say!("Change over to {name}", name);
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
        let remove = say!("Remove {name}", name);
        let ask = move || {
            if list::is_named(app, &person) {
                leaving.set(Some(person.clone()));
            }
        };
        inside.push(button("plain", format!("lifter-{n}-remove"), remove, ask));
    }
    group(Some("lifter"), inside)
}

/// One who was removed, and the way back.
fn back(app: Stanchion, person: &Person) -> AnyView {
    let id = person.id;
    let said = say!(
        "{name} is removed. What was theirs is erased when this page is opened the next time.",
        name = person.name
    );
    let undo = say!("Undo: bring {name} back", name = person.name);
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
    let name = Live::new(String::new());
    let wrong = Live::new(None::<String>);
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
            t("name of another lifter"),
            name,
            true,
            typed,
            wrong,
        ),
        button("wide strong", "lifter-add", t("Add"), add),
    ]
    .into_any()
}

/// The steps of a removal.
fn remove(app: Stanchion, person: Person, leaving: Live<Option<Person>>) -> AnyView {
    let close = Callback::new(move |()| leaving.set(None));
    let id = person.id;
    let goes = say!(
        "What goes: all that {name} logged, wrote and set. It can be brought back until this page is opened the next time; \
         then it is erased.",
        name = person.name
    );
    farewell(
        app,
        "lifter-remove-panel",
        Farewell {
            title: t("Remove a lifter"),
            goes,
            of: Some(person.database),
            sure: t("Remove now"),
            act: Callback::new(move |()| {
                leaving.set(None);
                list::set_gone(app, id, true);
            }),
            close,
        },
    )
}
