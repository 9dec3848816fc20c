//! The sheet that is being written: its name, its blocks, and what stands around them.

use super::rows::block_rows;
use crate::draft::{Draft, Unfit};
use crate::say;
use crate::sheet::{BUDGET_MINUTES_MAX, Note, Sheet, SheetId};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, area, button, checked_field, dynamic, el, group, h1, page, quiet, read_lines, read_name,
    text, under_each_other, way, when, wrong_text, wrong_word,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::sheets::order::order_view;
use crate::ui::sheets::time::time_view;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::t;
use leptos::prelude::*;
use std::num::NonZeroU16;

/// The sheet that is being written.
pub fn draft_place(id: SheetId) -> AnyView {
    let app = stanchion();
    let there = app.of(move |model| model.drafts.contains_key(&id));
    dynamic(move || match there.get() {
        true => written(app, id),
        false => nothing_begun(),
    })
}

/// What is shown where no draft is: it was kept or thrown away.
pub fn nothing_begun() -> AnyView {
    let ways = vec![
        quiet(t("Nothing is being written here.")),
        way(Place::Sheets.href(), t("All sheets")),
    ];
    page("draft-gone", ways)
}

/// What the sheet that is being written reads.
fn of<T: PartialEq + Send + Sync + 'static>(
    app: Stanchion,
    id: SheetId,
    read: fn(&Draft) -> T,
) -> Seen<Option<T>> {
    app.of(move |model: &Model| model.drafts.get(&id).map(read))
}

fn written(app: Stanchion, id: SheetId) -> AnyView {
    let arranging = Live::new(false);
    let empty = of(app, id, |draft| draft.sheet().groups.is_empty());
    let empty = Seen::new(move || empty.get() == Some(true));
    let arrange_word = text(move || {
        let word = if arranging.get() {
            t("Arranged")
        } else {
            t("Arrange")
        };
        word.to_owned()
    });
    let to_lines = button("wide", "draft-lines", t("Write it as lines"), move || {
        app.go(Place::Write(Some(id)));
    });
    let blocks = block_rows(app, id, arranging);
    page(
        "draft",
        vec![
            way(Place::Sheets.href(), t("All sheets")),
            h1(t("Write a sheet")),
            name(app, id),
            when(empty, || {
                quiet(t(
                    "Nothing on it yet. Begin with what needs you freshest: power, then heavy, then lighter.",
                ))
            }),
            blocks.rows,
            button(
                "wide strong",
                "draft-add",
                t("Add an exercise"),
                move || {
                    app.go(Place::DraftExercise(id, None));
                },
            ),
            when(Seen::new(move || !empty.get()), move || {
                button("wide", "draft-arrange", arrange_word, move || {
                    arranging.update(|on| *on = !*on);
                })
            }),
            blocks.undo,
            said(app, id),
            around(app, id),
            to_lines,
            ending(app, id),
        ],
    )
}

fn name(app: Stanchion, id: SheetId) -> AnyView {
    let value = of(app, id, |draft| draft.sheet().name.to_string());
    let wrong = Live::new(None);
    let typed = move |typed: String| {
        let named = read_name(&typed).and_then(|name| {
            app.change_draft(id, &mut |draft| {
                draft.set_name(name.clone());
                Ok(())
            })
        });
        wrong.set(named.err());
    };
    checked_field(
        "draft-name",
        Mode::Text,
        t("name"),
        text(move || value.get().unwrap_or_default()),
        false,
        typed,
        wrong,
    )
}

/// Changes the draft; a refusal becomes a notice.
pub fn change(
    app: Stanchion,
    id: SheetId,
    change: &mut dyn FnMut(&mut Draft) -> Result<(), Unfit>,
) {
    if let Err(why) = app.change_draft(id, change) {
        app.complain(why);
    }
}

/// How long the sheet takes, and what speaks against its order.
fn said(app: Stanchion, id: SheetId) -> AnyView {
    let sheet = app.of(move |model| {
        let sheet = model.drafts.get(&id).map(Draft::sheet);
        let sheet = sheet.filter(|sheet| !sheet.groups.is_empty()).cloned();
        sheet.map(|sheet| (sheet, model.pace()))
    });
    let put = move |what: &'static str| {
        Callback::new(move |sheet: Sheet| {
            change(app, id, &mut |draft| {
                draft.replace(what, sheet.clone());
                Ok(())
            });
        })
    };
    dynamic(move || match sheet.get() {
        None => ().into_any(),
        Some((sheet, pace)) => vec![
            time_view(&sheet, pace, put(t("shortening it"))),
            app.model.with_untracked(|model| {
                order_view(&sheet, &model.exercises, put(t("the warning")))
            }),
        ]
        .into_any(),
    })
}

/// Warm-up, notes and time budget.
fn around(app: Stanchion, id: SheetId) -> AnyView {
    let warm_up = of(app, id, |draft| under_each_other(&draft.sheet().warm_up));
    // What the demo brought along is said in the language that is spoken, and kept as it is.
    let notes = of(app, id, |draft| draft.sheet().notes.said().to_owned());
    let budget = of(app, id, |draft| draft.sheet().budget_minutes);
    let wrong = Live::new(None);
    let take = move |taken: Result<(), String>| wrong.set(taken.err());
    let kept = move || {
        app.model.with_untracked(|model| {
            let draft = model.drafts.get(&id)?;
            let sheet = draft.sheet();
            Some((sheet.warm_up.clone(), sheet.notes.clone()))
        })
    };
    let set_warm_up =
        Callback::new(move |typed: String| {
            let before = kept().map(|(warm_up, _)| warm_up);
            let lines = read_lines(&typed, &before.unwrap_or_default());
            take(lines.and_then(|lines| {
                app.change_draft(id, &mut |draft| draft.set_warm_up(lines.clone()))
            }));
        });
    let set_notes = Callback::new(move |typed: String| {
        let before = kept().map(|(_, notes)| notes);
        let stays = before.filter(|notes| notes.said() == typed);
        let notes = stays.map_or_else(|| Note::new(&typed), Ok);
        take(notes.map_err(|unfit| unfit.to_string()).and_then(|notes| {
            app.change_draft(id, &mut |draft| {
                draft.set_notes(notes.clone());
                Ok(())
            })
        }));
    });
    let set_budget = move |typed: String| {
        let minutes = match typed.trim() {
            "" => Ok(None),
            typed => match typed.parse::<NonZeroU16>() {
                Ok(minutes) if minutes.get() <= BUDGET_MINUTES_MAX => Ok(Some(minutes)),
                _ => Err(t("a time budget is 1 to 600 minutes, or nothing").to_owned()),
            },
        };
        take(minutes.and_then(|minutes| {
            app.change_draft(id, &mut |draft| {
                draft.set_budget(minutes);
                Ok(())
            })
        }));
    };
    let budget = text(move || {
        let minutes = budget.get().flatten();
        minutes.map_or_else(String::new, |minutes| minutes.to_string())
    });
    let inside = vec![
        area(
            "draft-warm-up",
            t("warm-up checklist, one line each"),
            text(move || warm_up.get().unwrap_or_default()),
            false,
            set_warm_up,
        ),
        area(
            "draft-notes",
            t("notes"),
            text(move || notes.get().unwrap_or_default()),
            false,
            set_notes,
        ),
        crate::ui::parts::field(
            "draft-budget",
            Mode::Whole,
            t("time budget, minutes"),
            budget,
            false,
            set_budget,
        ),
        wrong_word("draft-around-wrong", wrong),
    ];
    let inside = group(None, inside);
    el("details")
        .class("adder")
        .part("draft-around")
        .child(el("summary").child(t("Warm-up, notes, time budget")))
        .child(inside)
        .view()
}

/// Keeps the sheet, or throws away what was changed.
fn ending(app: Stanchion, id: SheetId) -> AnyView {
    let asked = Live::new(false);
    let discard = dynamic(move || match asked.get() {
        false => button("plain", "draft-discard", t("Throw it away"), move || {
            asked.set(true)
        }),
        true => button(
            "wide",
            "draft-discard-now",
            t("Throw away what was changed here"),
            move || {
                app.drop_draft(id);
                app.go(Place::Sheets);
            },
        ),
    });
    // Once it was to be kept, what keeps it from that is said until it is mended.
    let refused = Live::new(false);
    let unfit = of(app, id, |draft| {
        let unfit = draft.sheet().check().err();
        unfit.map(|unfit| say!("Not kept: {unfit}.", unfit))
    });
    let wrong = text(move || {
        let wrong = refused.get().then(|| unfit.get().flatten());
        wrong.flatten().unwrap_or_default()
    });
    vec![
        wrong_text("draft-not-kept", wrong),
        button(
            "wide strong",
            "draft-keep",
            t("Keep the sheet"),
            move || refused.set(!app.keep_draft(id)),
        ),
        discard,
    ]
    .into_any()
}
