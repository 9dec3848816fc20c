//! The blocks of the sheet that is being written, in order: opened by a tap, moved by a finger or by buttons.

use super::sheet::change;
use crate::device::drag::{self, Drag};
use crate::draft::{Draft, Unfit};
use crate::sheet::{BlockId, Group, SheetId};
use crate::ui::live::Live;
use crate::ui::parts::{button, dynamic, el, list, stepper, tap, text};
use crate::ui::place::Place;
use crate::ui::sheets::words::{block_head, sets_line};
use crate::ui::stanchion::Stanchion;
use crate::units::{Seconds, Unit};
use crate::words::t;
use leptos::prelude::*;
use uuid::Uuid;

/// A block as it is listed.
#[derive(Clone, PartialEq)]
struct Listed {
    id: BlockId,
    /// Letter and number of a block done together with others.
    mark: String,
    name: String,
    sets: String,
    head: String,
    /// What the group is, told at its first block.
    together: Option<(&'static str, Seconds)>,
    /// True for a block done together with others.
    grouped: bool,
    /// True where two are done together.
    two: bool,
    /// True where another group comes behind.
    joinable: bool,
}

fn listed(draft: &Draft, unit: Unit) -> Vec<Listed> {
    let groups = &draft.sheet().groups;
    let mut listed = Vec::new();
    for (at, group) in groups.iter().enumerate() {
        let letter = char::from(b'A' + (at % 26) as u8);
        let what = match group {
            Group::Straight(_) => None,
            Group::Pair { between, .. } => Some(("pair", *between)),
            Group::Circuit { between, .. } => Some(("circuit", *between)),
        };
        for (place, block) in group.blocks().iter().enumerate() {
            let sets: Vec<String> = block
                .sets
                .iter()
                .map(|sets| sets_line(sets, &block.basis, unit))
                .collect();
            listed.push(Listed {
                id: block.id,
                mark: what.map_or_else(String::new, |_| format!("{letter}{} ", place + 1)),
                name: block.exercise.said(),
                sets: sets.join(" · "),
                head: block_head(block),
                together: what.filter(|_| place == 0),
                grouped: what.is_some(),
                two: group.blocks().len() == 2,
                joinable: at + 1 < groups.len() && place + 1 == group.blocks().len(),
            });
        }
    }
    listed
}

/// The blocks in order; with the buttons that arrange them while `arranging`.
pub fn block_rows(app: Stanchion, sheet: SheetId, arranging: Live<bool>) -> AnyView {
    let blocks = app.of(move |model| {
        let draft = model.drafts.get(&sheet);
        draft
            .map(|draft| listed(draft, model.unit()))
            .unwrap_or_default()
    });
    let over = Live::new(None::<String>);
    dynamic(move || {
        let rows = blocks
            .get()
            .into_iter()
            .map(|block| row(app, sheet, block, arranging, over));
        list("draft-rows", Some("draft-rows"), rows.collect())
    })
}

fn row(
    app: Stanchion,
    sheet: SheetId,
    block: Listed,
    arranging: Live<bool>,
    over: Live<Option<String>>,
) -> AnyView {
    let id = block.id;
    let key = id.0.to_string();
    let class = {
        let key = key.clone();
        let base = if block.grouped {
            "draft-row grouped"
        } else {
            "draft-row"
        };
        move || match over.get() {
            Some(over) if over == key => format!("{base} over"),
            _ => base.to_owned(),
        }
    };
    let told = move |told: Drag| match told {
        Drag::Over(onto) => over.set(onto),
        Drag::Dropped(onto) => {
            over.set(None);
            let onto = onto.and_then(|onto| Uuid::try_parse(&onto).ok());
            if let Some(onto) = onto.map(BlockId).filter(|onto| *onto != id) {
                change(app, sheet, &mut |draft| draft.drag(id, onto));
            }
        }
    };
    let face = vec![
        el("strong")
            .child(block.mark.clone())
            .child(block.name.clone())
            .view(),
        el("span").child(block.sets.clone()).view(),
        el("span").class("quiet").child(block.head.clone()).view(),
    ];
    let open = Callback::new(move |()| app.go(Place::DraftBlock(sheet, id)));
    let open = tap("row", "draft-block", None, face.into_any(), open);
    let arrange = dynamic(move || match arranging.get() {
        true => arrange(app, sheet, &block),
        false => ().into_any(),
    });
    let grip = el("span")
        .class("grip")
        .set("aria-hidden", "true")
        .part("draft-grip")
        .on("pointerdown", move |event| {
            drag::follow(&event, "data-block", told)
        });
    el("div")
        .follow("class", class)
        .set("data-block", key)
        .child(open)
        .child(grip)
        .child(arrange)
        .view()
}

/// A way in which a block is arranged.
type Change = fn(&mut Draft, BlockId) -> Result<(), Unfit>;

/// The block that a button arranges.
#[derive(Clone)]
struct Meant {
    app: Stanchion,
    sheet: SheetId,
    id: BlockId,
    name: String,
}

/// A button that arranges a block.
fn arranger(part: &'static str, meant: &Meant, word: &'static str, how: Change) -> AnyView {
    let Meant {
        app,
        sheet,
        id,
        ref name,
    } = *meant;
    let named = format!("{word}: {name}");
    tap(
        "small",
        part,
        Some(text(move || named.clone())),
        word.into_any(),
        Callback::new(move |()| change(app, sheet, &mut |draft| how(draft, id))),
    )
}

/// The buttons that arrange a block.
fn arrange(app: Stanchion, sheet: SheetId, block: &Listed) -> AnyView {
    let id = block.id;
    let meant = Meant {
        app,
        sheet,
        id,
        name: block.name.clone(),
    };
    let mut inside = vec![
        arranger("draft-up", &meant, t("Up"), |draft, id| {
            draft.shift(id, false)
        }),
        arranger("draft-down", &meant, t("Down"), |draft, id| {
            draft.shift(id, true)
        }),
        button("small", "draft-double", t("Double"), move || {
            let copy = BlockId(app.id());
            change(app, sheet, &mut |draft| draft.duplicate(id, copy));
        }),
        arranger("draft-remove", &meant, t("Take off"), Draft::remove),
    ];
    if block.joinable {
        inside.push(arranger(
            "draft-join",
            &meant,
            t("With the next"),
            Draft::join,
        ));
    }
    if block.grouped {
        inside.push(arranger("draft-part", &meant, t("On its own"), Draft::part));
    }
    let mut all = vec![el("div").class("arrange").child(inside).view()];
    if let Some((what, between)) = block.together {
        if block.two {
            let turned = if what == "pair" {
                t("As a circuit")
            } else {
                t("As a pair")
            };
            all.push(arranger("draft-turn", &meant, turned, Draft::turn_pair));
        }
        all.push(between_stepper(&meant, between));
    }
    all.into_any()
}

/// The rest from block to block of a pair or circuit.
fn between_stepper(meant: &Meant, between: Seconds) -> AnyView {
    let Meant { app, sheet, id, .. } = *meant;
    let figure = text(move || between.clock());
    stepper(t("rest between"), "draft-between", figure, move |more| {
        let by = if more { 5 } else { -5 };
        let rest = Seconds::saturating(i64::from(between) + by);
        change(app, sheet, &mut |draft| draft.set_between(id, rest));
    })
}
