//! The panel with everything else: undo, short of time, skip, add or drop a set, another exercise, order, heat, note, end.

use super::screen::{Open, current_board};
use super::sides::apart;
use crate::device::wake::Stay;
use crate::say;
use crate::session::{State, Status, What, can_undo};
use crate::sheet::{Line, Note, SetKey};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    button, dynamic, el, line, list, panel, quiet, tap, text, when, wrong_word,
};
use crate::ui::people::stay;
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// The set that is to be done now or next.
fn set_of(model: &Model) -> Option<SetKey> {
    let state = model.session.as_ref()?.state();
    state.current().map(|slot| slot.planned.key)
}

/// Everything else that can be done on the floor.
pub fn more_panel(app: Stanchion, open: Live<Open>, close: Callback<()>) -> AnyView {
    let set = app.of(set_of);
    let can_undo = app.of(|model| {
        let own = model.session.as_ref();
        let other = model.partner().and_then(|other| other.session.as_ref());
        own.is_some_and(|own| can_undo(own, other))
    });
    // A line to add a set to: that of the current set, else that of the last one.
    let line_of = app.of(|model| {
        let state = model.session.as_ref()?.state();
        state
            .current()
            .or(state.last_logged())
            .map(|slot| slot.planned.key)
    });
    let ending = Live::new(false);
    let act = move |what: What| {
        app.act(what);
        close.run(());
    };
    let undo = dynamic(move || {
        if can_undo.get() {
            button("", "undo", t("Undo the last tap"), move || {
                app.undo();
                close.run(());
            })
        } else {
            ().into_any()
        }
    });
    let of_set = dynamic(move || match set.get() {
        None => ().into_any(),
        Some(set) => vec![
            button("", "skip", t("Skip this set"), move || {
                act(What::SetSkipped { set })
            }),
            button("", "drop", t("Remove this set"), move || {
                act(What::SetDropped { set })
            }),
        ]
        .into_any(),
    });
    let add = dynamic(move || match line_of.get() {
        None => ().into_any(),
        Some(key) => button("", "add", t("One set more"), move || {
            act(What::SetAdded {
                block: key.block,
                line: key.line,
            });
        }),
    });
    let swap = dynamic(move || match set.get() {
        None => ().into_any(),
        Some(_) => button("", "swap", t("Another exercise"), move || {
            open.set(Open::Swap)
        }),
    });
    let sides = when(app.of(apart), move || {
        button("", "sides-apart", t("Reps of each side"), move || {
            open.set(Open::Sides);
        })
    });
    let short = when(app.of(|model| set_of(model).is_some()), move || {
        button("", "short-open", t("Short of time"), move || {
            open.set(Open::Short)
        })
    });
    // The way back stands where the question stood: a second tap by accident ends nothing.
    let end = dynamic(move || {
        if ending.get() {
            vec![
                button("", "end-not", t("Go on"), move || ending.set(false)),
                button(
                    "strong",
                    "end-now",
                    t("End it now; what is left stays undone"),
                    move || act(What::Ended),
                ),
            ]
            .into_any()
        } else {
            button("", "end-ask", t("End the session"), move || {
                ending.set(true)
            })
        }
    });
    let paired = app.of(|model| model.partner().is_some());
    let inside = vec![
        undo,
        when(paired, move || stay(app)),
        short,
        sides,
        of_set,
        add,
        swap,
        button("", "order", t("Other order"), move || open.set(Open::Order)),
        button("", "heat", t("Heat"), move || open.set(Open::Heat)),
        button("", "note", t("Notes"), move || open.set(Open::Note)),
        button("", "keys", t("Keys"), move || open.set(Open::Keys)),
        end,
    ];
    let inside = el("div").class("more").child(inside).view();
    let ways = vec![
        leave(Place::Sheets, "leave-sheets", t("Sheets")),
        leave(Place::Ledger, "leave-ledger", t("Ledger")),
        leave(Place::Kit, "leave-kit", t("Kit")),
    ];
    let ways = el("nav")
        .class("more")
        .set("aria-label", t("Other places"))
        .child(ways)
        .view();
    panel(
        "more-panel",
        t("More"),
        close,
        vec![
            inside,
            quiet(t("The session goes on while you look elsewhere.")),
            line("quiet", "screen-stays", text(move || screen_stays(app))),
            ways,
        ],
    )
}

/// Whether the screen stays on, in words.
fn screen_stays(app: Stanchion) -> String {
    let said = match app.awake.get() {
        Stay::Held => t("The screen stays on."),
        stay => stay.said().unwrap_or(t("The screen is asked to stay on.")),
    };
    said.to_owned()
}

/// A way off the floor; the session goes on.
fn leave(place: Place, part: &'static str, name: &'static str) -> AnyView {
    el("a")
        .class("wide")
        .set("href", place.href())
        .part(part)
        .child(name)
        .view()
}

/// A note on the session; the warm-up and the notes of the sheet to read again.
pub fn note_panel(app: Stanchion, close: Callback<()>) -> AnyView {
    let wrong = Live::new(None::<String>);
    let (before, warm_up, notes, cautions) = app.model.with_untracked(|model| {
        let Some(session) = &model.session else {
            return Default::default();
        };
        let state = session.state();
        let sheet = &state.began.sheet;
        let warm_up: Vec<&str> = sheet.warm_up.iter().map(Line::said).collect();
        let note = state.note.clone().unwrap_or_default();
        (
            note.as_str().to_owned(),
            warm_up.join(" · "),
            sheet.notes.said().to_owned(),
            current_board(model).map_or_else(Vec::new, |board| board.cautions_known),
        )
    });
    let written = Live::new(before);
    let keep = move || match Note::new(&written.get_untracked()) {
        Ok(text) => {
            app.act(What::Noted { set: None, text });
            close.run(());
        }
        Err(error) => wrong.set(Some(error.to_string())),
    };
    let area = el("textarea")
        .class("note")
        .set("rows", "4")
        .part("note-text")
        .set("aria-label", t("note"))
        .value(move || written.get())
        .on("input", move |event| {
            written.set(event_target_value(&event))
        });
    let mut inside = vec![
        area.into_any(),
        wrong_word("note-wrong", wrong),
        button("wide strong", "note-keep", t("Keep"), keep),
    ];
    if !warm_up.is_empty() {
        inside.push(line(
            "quiet",
            "warm-up",
            say!("Warm-up: {warm_up}", warm_up),
        ));
    }
    if !notes.is_empty() {
        inside.push(line("quiet", "sheet-notes", notes));
    }
    let cautions = cautions.into_iter();
    inside.extend(cautions.map(|caution| line("caution", "known-caution", caution)));
    panel("note-panel", t("Notes"), close, inside)
}

/// The groups that still have sets to do, in order: index on the sheet and names of the exercises.
fn groups_left(state: &State) -> Vec<(usize, String)> {
    let left = |group: usize| {
        state
            .slots
            .iter()
            .any(|slot| slot.planned.group == group && slot.status == Status::Pending)
    };
    let name = |group: usize| {
        let blocks = state.began.sheet.groups[group].blocks();
        blocks
            .iter()
            .map(|block| state.as_done(block).exercise.said())
            .collect::<Vec<_>>()
            .join(" + ")
    };
    state
        .order
        .iter()
        .copied()
        .filter(|&group| left(group))
        .map(|group| (group, name(group)))
        .collect()
}

/// The order with `group` before all others that have sets to do.
fn brought_first(state: &State, group: usize) -> Vec<u8> {
    let first = groups_left(state).first().map(|(group, _)| *group);
    let mut wanted = Vec::new();
    for &other in state.order.iter().filter(|&&other| other != group) {
        if Some(other) == first {
            wanted.push(group as u8);
        }
        wanted.push(other as u8);
    }
    wanted
}

/// The order of what is left.
pub fn order_panel(app: Stanchion, close: Callback<()>) -> AnyView {
    let left = app.of(|model| {
        model
            .session
            .as_ref()
            .map(|session| groups_left(session.state()))
            .unwrap_or_default()
    });
    let first = move |group: usize| {
        let groups = app.model.with_untracked(|model| {
            model
                .session
                .as_ref()
                .map(|session| brought_first(session.state(), group))
                .unwrap_or_default()
        });
        app.act(What::OrderChanged { groups });
        close.run(());
    };
    let rows = dynamic(move || {
        let rows = left
            .get()
            .into_iter()
            .enumerate()
            .map(|(place, (group, name))| {
                if place == 0 {
                    // It comes first already.
                    tap(
                        "",
                        "order-now",
                        None,
                        say!("{name} (now)", name).into_any(),
                        close,
                    )
                } else {
                    button("", "order-first", name, move || first(group))
                }
            });
        list("more", None, rows.collect())
    });
    panel("order-panel", t("Other order"), close, vec![rows])
}
