//! The blocks of the sheet that is being written, in order: opened by a tap, moved by a finger or by buttons.

use super::sheet::change;
use crate::device::drag::{self, Drag};
use crate::draft::{Draft, Unfit};
use crate::say;
use crate::sheet::{Block, BlockId, Group, SheetId};
use crate::ui::live::Live;
use crate::ui::parts::{button, dynamic, el, list, stepper, tap, text};
use crate::ui::place::Place;
use crate::ui::seen::Seen;
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
    /// Whether it can go up, and down.
    moves: [bool; 2],
}

/// What holds for all sets of the block, and the load to start from where there is one.
fn head(block: &Block, unit: Unit) -> String {
    let start = block.start.filter(|_| block.basis.has_load());
    let start = start.map(|load| {
        let load = block.basis.told(load, unit);
        say!("to start from: {load}", load)
    });
    let said: Vec<String> = start.into_iter().chain([block_head(block)]).collect();
    said.join(" · ")
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
                head: head(block, unit),
                together: what.filter(|_| place == 0),
                grouped: what.is_some(),
                two: group.blocks().len() == 2,
                joinable: at + 1 < groups.len() && place + 1 == group.blocks().len(),
                moves: [
                    at + place > 0,
                    at + 1 < groups.len() || place + 1 < group.blocks().len(),
                ],
            });
        }
    }
    listed
}

/// The rows of blocks, and the undo below them.
pub struct Blocks {
    pub rows: AnyView,
    /// What takes the last change back; nothing while that stands among the rows.
    pub undo: AnyView,
}

/// What the rows act on.
#[derive(Clone, Copy)]
struct Hands {
    app: Stanchion,
    sheet: SheetId,
    arranging: Live<bool>,
    /// The row that one is dragged over.
    over: Live<Option<String>>,
    /// Where the block stood that was taken off last, and that change in words.
    gone: Live<Option<(usize, String)>>,
}

/// The blocks in order, with the buttons that arrange them while `arranging`; then what takes the last change back. A block
/// that was taken off is brought back where it stood: the end of a long sheet is out of sight.
pub fn block_rows(app: Stanchion, sheet: SheetId, arranging: Live<bool>) -> Blocks {
    let blocks = app.of(move |model| {
        let draft = model.drafts.get(&sheet);
        draft
            .map(|draft| listed(draft, model.unit()))
            .unwrap_or_default()
    });
    let last = app.of(move |model| {
        let draft = model.drafts.get(&sheet)?;
        draft.undoable().map(str::to_owned)
    });
    let hands = Hands {
        app,
        sheet,
        arranging,
        over: Live::new(None),
        gone: Live::new(None),
    };
    // The place of one that was taken off, where that is the last change.
    let gone_at = Seen::new(move || {
        let (at, what) = hands.gone.get()?;
        (last.get() == Some(what)).then_some(at)
    });
    let undo = move || {
        let what = last.get();
        what.map_or_else(|| ().into_any(), |what| undo_button(app, sheet, &what))
    };
    let rows = dynamic(move || {
        let blocks = blocks.get().into_iter().enumerate();
        let mut rows: Vec<AnyView> = blocks.map(|(at, block)| row(hands, at, block)).collect();
        if let Some(at) = gone_at.get() {
            rows.insert(at.min(rows.len()), undo());
        }
        list("draft-rows", Some("draft-rows"), rows)
    });
    let undo = dynamic(move || match gone_at.get() {
        Some(_) => ().into_any(),
        None => undo(),
    });
    Blocks { rows, undo }
}

/// Takes the last change back, which is told as `what`.
fn undo_button(app: Stanchion, sheet: SheetId, what: &str) -> AnyView {
    button("wide", "draft-undo", say!("Undo {what}", what), move || {
        change(app, sheet, &mut |draft| {
            draft.undo();
            Ok(())
        });
    })
}

fn row(hands: Hands, at: usize, block: Listed) -> AnyView {
    let Hands {
        app,
        sheet,
        arranging,
        over,
        ..
    } = hands;
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
        true => arrange(hands, at, &block),
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

/// A button that moves a block; one that has nowhere to go keeps its place, as the next tap may be on it.
fn mover(
    part: &'static str,
    meant: &Meant,
    word: &'static str,
    moves: bool,
    how: Change,
) -> AnyView {
    match moves {
        true => arranger(part, meant, word, how),
        false => el("button")
            .class("small")
            .part(part)
            .set("disabled", "")
            .set("aria-label", format!("{word}: {name}", name = meant.name))
            .child(word)
            .view(),
    }
}

/// A button that arranges a block.
fn arranger(part: &'static str, meant: &Meant, word: &'static str, how: Change) -> AnyView {
    let Meant { app, sheet, id, .. } = *meant;
    let on_tap = move || change(app, sheet, &mut |draft| how(draft, id));
    block_tap(part, meant, word, Callback::new(move |()| on_tap()))
}

/// A button that is called by its word and its block.
fn block_tap(
    part: &'static str,
    meant: &Meant,
    word: &'static str,
    on_tap: Callback<()>,
) -> AnyView {
    let name = format!("{word}: {name}", name = meant.name);
    let name = text(move || name.clone());
    tap("small", part, Some(name), word.into_any(), on_tap)
}

/// The buttons that arrange a block.
fn arrange(hands: Hands, at: usize, block: &Listed) -> AnyView {
    let Hands { app, sheet, .. } = hands;
    let id = block.id;
    let meant = Meant {
        app,
        sheet,
        id,
        name: block.name.clone(),
    };
    let [up, down] = block.moves;
    let double = Callback::new(move |()| {
        let copy = BlockId(app.id());
        change(app, sheet, &mut |draft| draft.duplicate(id, copy));
    });
    let take_off = Callback::new(move |()| {
        change(app, sheet, &mut |draft| {
            draft.remove(id)?;
            let what = draft.undoable().map(str::to_owned);
            hands.gone.set(what.map(|what| (at, what)));
            Ok(())
        });
    });
    let mut inside = vec![
        mover("draft-up", &meant, t("Up"), up, |draft, id| {
            draft.shift(id, false)
        }),
        mover("draft-down", &meant, t("Down"), down, |draft, id| {
            draft.shift(id, true)
        }),
        block_tap("draft-double", &meant, t("Double"), double),
        block_tap("draft-remove", &meant, t("Remove"), take_off),
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
