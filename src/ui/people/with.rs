//! Before a session: who trains along, and which sheet they do.

use super::pair::{begin, leave};
use crate::say;
use crate::ui::model::Model;
use crate::ui::parts::{button, choices, dynamic, line, panel, quiet, toggles_of};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;
use uuid::Uuid;

/// Who can train along: id and name.
fn others(model: &Model) -> Vec<(Uuid, String)> {
    let here = model.people.here();
    let others = here.filter(|person| model.who.is_some() && Some(person.id) != model.who);
    others
        .map(|person| (person.id, person.name.to_string()))
        .collect()
}

/// The choice of who trains along; nothing where nobody could.
pub fn with_whom(app: Stanchion) -> AnyView {
    let others = app.of(others);
    let with = app.of(|model| model.with);
    let pressed = Seen::new(move || {
        let Some(with) = with.get() else {
            return Some(0);
        };
        let at = others.get().iter().position(|(id, _)| *id == with)?;
        i64::try_from(at + 1).ok()
    });
    let choose = move |n: i64| {
        let others = others.get_untracked();
        let chosen = usize::try_from(n - 1).ok().and_then(|at| others.get(at));
        let with = chosen.map(|(id, _)| *id);
        app.model.update(|model| model.with = with);
    };
    dynamic(move || {
        let others = others.get();
        if others.is_empty() {
            return ().into_any();
        }
        let alone = std::iter::once((t("alone").to_owned(), ""));
        let labels = alone.chain(
            others
                .into_iter()
                .map(|(_, name)| (say!("with {name}", name), "")),
        );
        let inside = toggles_of("with", labels, pressed, choose);
        choices("choices two names", t("Who trains"), inside)
    })
}

/// What is asked of the other one.
#[derive(Clone, PartialEq)]
struct Asked {
    name: String,
    own: String,
    same: String,
    sheets: Vec<(crate::sheet::SheetId, String)>,
    other_kit: bool,
}

fn asked(model: &Model) -> Option<Asked> {
    let pairing = model.pairing.as_ref()?;
    let other = model.other.as_ref()?;
    let name = |who: Option<Uuid>| Some(model.people.get(who?)?.name.to_string());
    let sheets = other.sheets.iter();
    let sheets = sheets.filter(|sheet| sheet.id != pairing.sheet && sheet.written_for.is_none());
    Some(Asked {
        name: name(other.who)?,
        own: name(model.who)?,
        same: model.sheet(pairing.sheet)?.name.to_string(),
        sheets: sheets
            .map(|sheet| (sheet.id, sheet.name.to_string()))
            .collect(),
        other_kit: *other.kit != *model.kit,
    })
}

/// Which sheet the other one does.
pub fn their_sheet(app: Stanchion) -> AnyView {
    let asked = app.of(asked);
    let close = Callback::new(move |()| leave(app));
    dynamic(move || match asked.get() {
        Some(asked) => panel("pair-panel", t("Two at one rack"), close, ways(app, asked)),
        None => ().into_any(),
    })
}

fn ways(app: Stanchion, asked: Asked) -> Vec<AnyView> {
    let same = say!("{name}: {sheet} too", name = asked.name, sheet = asked.same);
    let mut inside = vec![
        line(
            "",
            "pair-asks",
            say!("Which sheet does {name} do?", name = asked.name),
        ),
        button("wide strong", "pair-same", same, move || begin(app, None)),
    ];
    for (n, (id, name)) in asked.sheets.into_iter().enumerate() {
        let label = format!("{}: {name}", asked.name);
        inside.push(button(
            "wide",
            format!("pair-sheet-{n}"),
            label,
            move || {
                begin(app, Some(id));
            },
        ));
    }
    if asked.other_kit {
        inside.push(line(
            "caution",
            "pair-kit",
            say!(
                "{theirs}'s kit is another one. Here both use {ours}'s.",
                theirs = asked.name,
                ours = asked.own
            ),
        ));
    }
    inside.push(quiet(
        t("Each has an own session, own loads and an own ledger. After each set the board turns to the other one."),
    ));
    inside
}
