//! A sheet on paper: what to do, and boxes to fill in by hand. Not seen on the screen.

use super::words::{block_head, sets_line};
use crate::say;
use crate::sheet::{Block, Group, SetKind, Sets, Sheet};
use crate::ui::live::Live;
use crate::ui::parts::{dynamic, el, list, words};
use crate::units::Unit;
use crate::words::t;
use leptos::prelude::*;

/// More blocks than that are set in two columns.
const ONE_COLUMN_BLOCKS_MAX: usize = 6;

/// The sheet as it is printed, its start loads on it where they are chosen, loads in the unit on display.
pub fn paper(sheet: &Sheet, with_loads: Live<bool>, unit: Unit) -> AnyView {
    let long = sheet.blocks().count() > ONE_COLUMN_BLOCKS_MAX;
    let class = if long { "paper long" } else { "paper" };
    let mut inside = vec![
        words("paper-name", sheet.name.to_string()),
        words("paper-line", t("Date")),
    ];
    if !sheet.notes.is_empty() {
        inside.push(words("paper-notes", sheet.notes.said().to_owned()));
    }
    if !sheet.warm_up.is_empty() {
        let lines = sheet
            .warm_up
            .iter()
            .map(|line| line.said().to_owned().into_any());
        inside.push(list("paper-checks", None, lines.collect()));
    }
    let groups: Vec<AnyView> = sheet
        .groups
        .iter()
        .map(|group| group_on_paper(group, with_loads, unit))
        .collect();
    inside.push(words(
        "paper-small",
        t("In each box: the load on the left, reps, seconds or metres on the right."),
    ));
    inside.push(el("div").class("paper-blocks").child(groups).view());
    inside.push(words("paper-line", t("Notes")));
    inside.push(words("paper-line", ""));
    el("div").class(class).part("paper").child(inside).view()
}

fn group_on_paper(group: &Group, with_loads: Live<bool>, unit: Unit) -> AnyView {
    let together = match group {
        Group::Straight(_) => None,
        Group::Pair { between, .. } => Some(say!("In turn, {between} s between:", between)),
        Group::Circuit { between, .. } => Some(say!("In rounds, {between} s between:", between)),
    };
    let mut inside: Vec<AnyView> = together
        .map(|together| words("paper-small", together))
        .into_iter()
        .collect();
    let blocks = group.blocks().iter();
    inside.extend(blocks.map(|block| block_on_paper(block, with_loads, unit)));
    el("div").class("paper-group").child(inside).view()
}

fn block_on_paper(block: &Block, with_loads: Live<bool>, unit: Unit) -> AnyView {
    let start = block
        .start
        .map(|load| say!(", from {load}", load = block.basis.shown(load, unit)));
    let start = dynamic(move || start.clone().filter(|_| with_loads.get()).into_any());
    let cues = block.cues.iter().map(|cue| cue.said().to_owned());
    let mut cues: Vec<String> = cues.collect();
    cues.extend(
        block
            .cautions
            .iter()
            .map(|caution| format!("! {}", caution.said())),
    );
    let sets: Vec<AnyView> = block
        .sets
        .iter()
        .map(|sets| sets_on_paper(sets, unit))
        .collect();
    el("div")
        .class("paper-block")
        .child(
            el("p")
                .child(el("strong").child(block.exercise.said()))
                .child(start)
                .child(el("span").class("paper-how").child(block_head(block))),
        )
        .child(sets)
        .child(el("p").class("paper-small").child(cues.join(" · ")))
        .view()
}

/// One line of sets, a box for each set and each drop of it.
fn sets_on_paper(sets: &Sets, unit: Unit) -> AnyView {
    let each = match sets.kind {
        SetKind::Drop { drops, .. } => 1 + usize::from(drops),
        _ => 1,
    };
    let boxes: Vec<AnyView> = (0..usize::from(sets.count) * each)
        .map(|_| el("i").class("paper-box").view())
        .collect();
    el("p")
        .class("paper-sets")
        .child(el("span").child(sets_line(sets, unit)))
        .child(boxes)
        .view()
}
