//! The programme written by taps: sheets in order or on days, and a light week now and then.

use super::draft::Draft;
use super::words::sheet_name;
use crate::device::clock;
use crate::say;
use crate::sheet::SheetId;
use crate::ui::live::Live;
use crate::ui::parts::{
    Mode, button, choices, dynamic, el, field, group, h1, list, page, quiet, section, stepper, tap,
    text, toggle, way, when, wrong_text,
};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{date, weekday};
use crate::words::{decimal, t, t_in};
use leptos::prelude::*;

/// Id and name of each sheet.
type Sheets = Vec<(SheetId, String)>;

/// The sheets of the rotation in order, each with a button that takes it out.
fn chosen(app: Stanchion, draft: Live<Draft>) -> AnyView {
    let order = Seen::new(move || draft.with(|draft| draft.order.clone()));
    dynamic(move || {
        let row = |(at, id): (usize, SheetId)| {
            let name = app.model.with_untracked(|model| sheet_name(model, id));
            let said = name.clone();
            let label = text(move || say!("remove {said}", said));
            let take_out = Callback::new(move |()| draft.update(|draft| draft.take_out(at)));
            let out = t("remove").into_any();
            let out = tap("plain", "programme-out", Some(label), out, take_out);
            el("div")
                .class("kit-row")
                .child(el("span").child(format!("{}. {name}", at + 1)))
                .child(out)
                .view()
        };
        let rows = order.get().into_iter().enumerate().map(row).collect();
        list("rows", Some("programme-order"), rows)
    })
}

fn rotation(app: Stanchion, sheets: &Sheets, draft: Live<Draft>) -> AnyView {
    let mut inside = vec![
        quiet(t(
            "One after the other, whatever the day. Tap the sheets in their order:",
        )),
        chosen(app, draft),
    ];
    inside.extend(sheets.iter().map(|(id, name)| {
        let id = *id;
        button(
            "wide",
            "programme-add",
            say!("then {name}", name),
            move || draft.update(|draft| draft.add(id)),
        )
    }));
    group(None, inside)
}

fn day(at: usize, sheets: &Sheets, draft: Live<Draft>) -> AnyView {
    let is = move |sheet: Option<SheetId>| {
        Seen::new(move || draft.with(|draft| draft.days[at] == sheet))
    };
    let put = move |sheet| draft.update(|draft| draft.days[at] = sheet);
    let mut inside = vec![toggle(
        format!("day-{at}-free"),
        t_in("day", "free"),
        "",
        is(None),
        move || put(None),
    )];
    inside.extend(sheets.iter().enumerate().map(|(n, (id, name))| {
        let sheet = Some(*id);
        toggle(
            format!("day-{at}-{n}"),
            name.clone(),
            "",
            is(sheet),
            move || put(sheet),
        )
    }));
    let name = weekday(at);
    section(
        None,
        name,
        vec![choices("choices three names", name, inside)],
    )
}

fn light(draft: Live<Draft>) -> AnyView {
    let on = Seen::new(move || draft.with(|draft| draft.lightens));
    let switch = toggle(
        "light-on",
        t("a light week now and then"),
        "",
        on,
        move || draft.update(|draft| draft.lightens = !draft.lightens),
    );
    let settings = move || {
        let every = text(move || draft.with(|draft| say!("{n} weeks", n = draft.light.every())));
        let load = text(move || {
            draft.with(|draft| {
                say!(
                    "{share} load",
                    share = decimal(&draft.light.load().to_string())
                )
            })
        });
        let sets = text(move || {
            draft.with(|draft| {
                say!(
                    "{share} sets",
                    share = decimal(&draft.light.sets().to_string())
                )
            })
        });
        let from = text(move || {
            let from = draft.with(|draft| draft.light.from().date());
            say!("weeks are counted from Monday, {day}", day = date(from))
        });
        let inside = vec![
            stepper(t("weeks"), "light-every", every, move |more| {
                draft.update(|draft| draft.step_every(more))
            }),
            stepper(t("load"), "light-load", load, move |more| {
                draft.update(|draft| draft.step_load(more))
            }),
            stepper(t("sets"), "light-sets", sets, move |more| {
                draft.update(|draft| draft.step_sets(more))
            }),
            quiet(from),
            button("wide", "light-from", t("Count from this week"), move || {
                draft.update(|draft| draft.count_from(clock::wall()))
            }),
            quiet(t(
                "What is done in a light week says nothing of the next loads. A light week is common practice; a qualified coach knows better when yours is due.",
            )),
        ];
        group(None, inside)
    };
    section(None, t("Light week"), vec![switch, when(on, settings)])
}

/// The place where the programme is written.
pub fn programme_place() -> AnyView {
    let app = stanchion();
    let now = clock::wall();
    let (before, sheets) = app.model.with_untracked(|model| {
        let exists = |id: SheetId| model.sheet(id).is_some();
        let before = model.programme();
        let sheets: Sheets = model
            .sheets
            .iter()
            .map(|sheet| (sheet.id, sheet.name.to_string()))
            .collect();
        (before.map(|before| Draft::of(before, &exists, now)), sheets)
    });
    let title = if before.is_some() {
        t("Change the programme")
    } else {
        t("Write a programme")
    };
    let draft = Live::new(before.unwrap_or_else(|| Draft::new(now)));
    // Once it was to be kept, what is wrong is said for as long as it is.
    let tried = Live::new(false);
    let wrong = text(move || {
        let wrong = tried.get().then(|| draft.with(Draft::read).err());
        wrong.flatten().unwrap_or_default()
    });
    let name = Seen::new(move || draft.with(|draft| draft.name.clone()));
    let on_days = Seen::new(move || draft.with(|draft| draft.on_days));
    let in_turn = Seen::new(move || !on_days.get());
    let set = move |on_days| draft.update(|draft| draft.on_days = on_days);
    let kinds = vec![
        toggle(
            "plan-turn",
            t("in turn"),
            "A, B, C …",
            in_turn,
            move || set(false),
        ),
        toggle(
            "plan-days",
            t("on days"),
            t("of the week"),
            on_days,
            move || set(true),
        ),
    ];
    let plan = Seen::new(move || on_days.get());
    let plan = dynamic(move || {
        if plan.get() {
            (0..7)
                .map(|at| day(at, &sheets, draft))
                .collect::<Vec<_>>()
                .into_any()
        } else {
            rotation(app, &sheets, draft)
        }
    });
    let keep = move || match draft.with_untracked(Draft::read) {
        Ok((name, plan, light)) => {
            if app.keep_programme(name, plan, light) {
                app.go(Place::Sheets);
            }
        }
        Err(_) => tried.set(true),
    };
    page(
        "programme-write",
        vec![
            way(Place::Sheets.href(), t("Back without keeping")),
            h1(title),
            field(
                "programme-name",
                Mode::Text,
                t("name"),
                name,
                true,
                move |typed| draft.update(|draft| draft.name = typed),
            ),
            choices("choices two", t("How the sheets follow each other"), kinds),
            plan,
            light(draft),
            wrong_text("programme-wrong", wrong),
            button("wide strong", "programme-keep", t("Keep it"), keep),
        ],
    )
}
