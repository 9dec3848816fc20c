//! A sheet written as text: its lines, what is wrong with them as one types, and what they come to.

use super::doubts::{doubt_list, doubts_said, start_doubt};
use super::draft::more_button;
use super::meanings::meanings_view;
use super::unkept::Unkept;
use crate::device::clock;
use crate::draft::Draft;
use crate::exercises::add_cautions;
use crate::quick::{Unread, parse_sheet, print_sheet, revise_sheet};
use crate::say;
use crate::sheet::{Exercise, Named, Sheet, SheetId, unroll};
use crate::ui::live::Live;
use crate::ui::parts::{
    Mode, button, dynamic, el, field, h1, line, list, page, quiet, text, words,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::words::{many, t};
use leptos::prelude::*;
use uuid::Uuid;

/// What stands in the field of a new sheet behind its name.
const START: &str = "Front squat: ramp 2 × 4 at 50 %, 75 %; 3 × 5–7; 60 kg; tempo 3/1/1/0\n";

/// Lines to copy from.
const EXAMPLES: [&str; 6] = [
    "Front squat: ramp 3 × 4 at 40 %, 60 %, 80 %; 3 × 5–7 @ 2, 2, 1 rising; 60 kg; rest 2:30; tempo 3/1/1/0",
    "Chin-up: 3 × 5–7; +5 kg; tempo 4/0/1/0; double last set up 1.25 kg",
    "Split squat: 3 × 8 tempo 4/0/X/1; 20 kg; each side; \"knee over the foot\"",
    "Lateral raise: 3 × [hold 10 s → 6 at 4/0/2/0 → 8 partials]; 8 kg; one side holds",
    "Push-up: 1 × 12+ to failure; pump",
    "Plank: 3 × 30 s; no load",
];

/// The last of them, and what is said of it.
fn last_example() -> &'static str {
    t("B1 Calf raise: 3 × 12; 20 kg; between 30 s  (with the next line B2: a pair)")
}

/// A line to copy from: names and notation are English in every language.
fn example(line: &'static str) -> AnyView {
    el("p")
        .class("example")
        .set("lang", "en")
        .child(line)
        .view()
}

/// The exercise of that name, one's own among them.
fn known(app: Stanchion) -> impl Fn(&str) -> Option<Named> {
    move |name| {
        app.model
            .with_untracked(|model| model.exercises.named(name, &model.kit))
    }
}

/// Reads what was typed. `ids` gives the ids of a new version.
fn read(
    app: Stanchion,
    typed: &str,
    before: Option<&Sheet>,
    ids: &mut dyn FnMut() -> Uuid,
) -> Result<Sheet, Vec<Unread>> {
    let known = known(app);
    let mut sheet = match before {
        None => parse_sheet(typed, &known, ids, clock::wall()),
        Some(before) => revise_sheet(typed, before, &known, ids, clock::wall()),
    }?;
    app.model
        .with_untracked(|model| add_cautions(&mut sheet, before, &model.exercises));
    Ok(sheet)
}

/// What the lines come to, and what contradicts itself or is new in them; or what is wrong with them.
type Outcome = Result<(String, Vec<String>), Vec<String>>;

fn outcome(app: Stanchion, typed: &str) -> Outcome {
    let mut next = 0;
    let mut ids = || {
        next += 1;
        Uuid::from_u128(next)
    };
    match read(app, typed, None, &mut ids) {
        Ok(sheet) => {
            let blocks = many(sheet.blocks().count(), "{n} block", "{n} blocks");
            let sets = many(unroll(&sheet).len(), "{n} set", "{n} sets");
            let doubts = sheet.blocks().flat_map(|block| {
                let name = block.exercise.said();
                let doubts = doubts_said(app, block).into_iter();
                let doubts = doubts.chain(start_doubt(app, block));
                doubts.map(move |doubt| format!("{name}: {doubt}"))
            });
            let sum = format!("{}: {blocks}, {sets}", sheet.name);
            Ok((sum, doubts.chain(news(app, &sheet)).collect()))
        }
        Err(wrong) => Err(wrong.iter().map(ToString::to_string).collect()),
    }
}

/// Names that nobody knows yet: a slip in one would begin another exercise, with a history of its own.
fn news(app: Stanchion, sheet: &Sheet) -> Vec<String> {
    app.model.with_untracked(|model| {
        let is_new = |exercise: &Exercise| {
            let id = &exercise.id;
            let mut kept = model.sheets.iter().flat_map(Sheet::blocks);
            model.exercises.of(id.as_str()).is_none()
                && model.history(id).is_empty()
                && !kept.any(|block| block.exercise.id == *id)
        };
        let mut said: Vec<String> = Vec::new();
        for exercise in sheet.blocks().map(|block| &block.exercise) {
            if !is_new(exercise) {
                continue;
            }
            let name = exercise.name.as_str();
            let new = match model.exercises.nearest(name) {
                Some(near) => say!("“{name}” is new here; is {near} meant?", name, near),
                None => say!("“{name}” is new here; no muscles are known of it.", name),
            };
            if !said.contains(&new) {
                said.push(new);
            }
        }
        said
    })
}

/// How many exercises are offered at first, and more at each asking.
const OFFERED: usize = 6;

/// A search through the exercises that are known by name; a tap begins a line with one behind those that were typed, which
/// `write` takes.
fn finder(app: Stanchion, typed: Live<String>, write: Callback<String>) -> AnyView {
    let sought = Live::new(String::new());
    let shown = Live::new(OFFERED);
    let found = dynamic(move || {
        let found: Vec<String> = sought.with(|sought| match sought.trim() {
            "" => Vec::new(),
            sought => app.model.with(|model| {
                let found = model.exercises.search_with(sought, &model.kit).into_iter();
                found.map(|exercise| exercise.name().to_owned()).collect()
            }),
        });
        let most = shown.get();
        let more = (found.len() > most).then(|| more_button(shown, OFFERED));
        let names = found.into_iter().take(most).map(|name| {
            button("wide", "exercise-take", name.clone(), move || {
                let mut lines = typed.get_untracked();
                if !lines.is_empty() && !lines.ends_with('\n') {
                    lines.push('\n');
                }
                lines.push_str(&name);
                lines.push_str(": ");
                write.run(lines);
                sought.set(String::new());
            })
        });
        list(
            "found",
            Some("exercises-found"),
            names.chain(more).collect(),
        )
    });
    let find = field(
        "exercise-find",
        Mode::Text,
        t("find an exercise by name, muscle or equipment"),
        sought,
        true,
        move |typed| {
            shown.set(OFFERED);
            sought.set(typed);
        },
    );
    el("div").class("finder").child(find).child(found).view()
}

/// The way back that keeps nothing.
fn without_keeping(back: Place, unkept: Unkept) -> AnyView {
    let way = el("a")
        .set("href", back.href())
        .on_tap(Callback::new(move |()| unkept.forget()))
        .child(t("Back without keeping"));
    el("p").child(way).view()
}

/// What becomes of a sheet that was read.
type Then = fn(Stanchion, Sheet);

/// Reads what was typed and goes on with it; what cannot be read stays where it is, with a notice that says why, which is
/// given back.
fn read_then(app: Stanchion, typed: &str, before: Option<&Sheet>, then: Then) -> String {
    let mut ids = || app.id();
    match read(app, typed, before, &mut ids) {
        Ok(sheet) => {
            then(app, sheet);
            String::new()
        }
        Err(wrong) => {
            let notice = many(
                wrong.len(),
                "Not kept: {n} line to mend first.",
                "Not kept: {n} lines to mend first.",
            );
            app.complain(notice.clone());
            notice
        }
    }
}

/// Keeps the sheet as a new version and shows it.
fn keep(app: Stanchion, sheet: Sheet) {
    let id = sheet.id;
    let begun = app
        .model
        .with_untracked(|model| model.drafts.contains_key(&id));
    app.keep_sheet(sheet);
    if begun {
        app.drop_draft(id);
    }
    app.go(Place::Sheet(id));
}

/// Goes on with the sheet by taps.
fn by_taps(app: Stanchion, sheet: Sheet) {
    app.draft_lines(&sheet);
    app.go(Place::Draft(sheet.id));
}

/// The place where a sheet is written, a new one or another version of `id`.
pub fn write_place(id: Option<SheetId>) -> AnyView {
    let app = stanchion();
    let before = app.model.with_untracked(|model| {
        let id = id?;
        let draft = model.drafts.get(&id).map(Draft::sheet);
        draft.or(model.sheet(id)).cloned()
    });
    let before = StoredValue::new(before);
    let complained = StoredValue::new(String::new());
    let unkept = Unkept::of(
        app,
        id,
        before.with_value(|before| match before {
            Some(sheet) => print_sheet(sheet, &known(app)),
            None => format!("# {}\n\n{START}", t("New sheet")),
        }),
    );
    let then = move |typed: &str, then: Then| {
        let said = before.with_value(|before| read_then(app, typed, before.as_ref(), then));
        if said.is_empty() {
            unkept.forget();
        }
        complained.set_value(said);
    };
    let typed = Live::new(unkept.lines());
    // What was said of lines that are others now holds no more.
    let write = Callback::new(move |lines: String| {
        complained.with_value(|said| app.unsay(said));
        unkept.keep(&lines);
        typed.set(lines);
    });
    // A sheet that was begun is kept over a reload as soon as the field is left, when all of it can be read.
    let left = move || {
        let begun = id.is_some() && outcome(app, &typed.get_untracked()).is_ok();
        if begun {
            typed.with_untracked(|typed| then(typed, |app, sheet| app.draft_lines(&sheet)));
            let now = app.model.with_untracked(|model| {
                let draft = model.drafts.get(&id?)?;
                Some(print_sheet(draft.sheet(), &known(app)))
            });
            if let Some(now) = now {
                unkept.goes_on_from(now);
            }
        }
    };
    let outcome = Seen::new(move || typed.with(|typed| outcome(app, typed)));
    let title = if id.is_some() {
        t("Change a sheet")
    } else {
        t("Write a sheet")
    };
    let area = el("textarea")
        .class("note lines-field")
        .set("rows", "14")
        .set("spellcheck", "false")
        .part("lines")
        .set("aria-label", t("lines of the sheet"))
        .set("aria-describedby", "lines-outcome")
        .value(move || typed.get())
        .on("input", move |event| write.run(event_target_value(&event)))
        .on_change(move |_| left());
    let said = dynamic(move || match outcome.get() {
        Ok((sum, doubts)) => vec![
            line("quiet", "lines-sum", sum),
            doubt_list("lines-doubts", doubts),
        ]
        .into_any(),
        Err(wrong) => {
            let lines = wrong
                .into_iter()
                .map(|wrong| words("wrong-word", wrong))
                .collect();
            list("", Some("lines-wrong"), lines)
        }
    });
    let good = text(move || {
        if outcome.with(Result::is_ok) {
            t("Keep it")
        } else {
            t("Mend the lines first")
        }
        .to_owned()
    });
    let begun = app
        .model
        .with_untracked(|model| id.is_some_and(|id| model.drafts.contains_key(&id)));
    let back = match id {
        None => Place::Sheets,
        Some(id) if begun => Place::Draft(id),
        Some(id) => Place::Sheet(id),
    };
    page(
        "write",
        vec![
            without_keeping(back, unkept),
            h1(title),
            area.into_any(),
            el("div")
                .set("id", "lines-outcome")
                .set("role", "status")
                .child(said)
                .view(),
            button("wide strong", "lines-keep", good, move || {
                typed.with_untracked(|typed| then(typed, keep));
            }),
            button("wide", "lines-taps", t("Go on by taps"), move || {
                typed.with_untracked(|typed| then(typed, by_taps));
            }),
            finder(app, typed, write),
            quiet(t(
                "A line that begins with # is the name of the sheet, with - a warm-up, with > a note; budget 45 min says how long it may take. Any other line is an exercise. Lines to copy from:",
            )),
            list(
                "examples",
                Some("examples"),
                EXAMPLES
                    .iter()
                    .copied()
                    .chain([last_example()])
                    .map(example)
                    .collect(),
            ),
            meanings_view(),
        ],
    )
}
