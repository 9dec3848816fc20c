//! The lines of sets of a block, and the panel in which one of them is changed.

use super::hand::{At, Hand};
use super::sets::inside_of_line;
use crate::sheet::{Block, SetKind, Sets, usual_ramp};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, el, list, panel, tap, when};
use crate::ui::seen::Seen;
use crate::ui::sheets::words::sets_line;
use crate::words::{t, t_in};
use leptos::prelude::*;

/// The lines of sets; a tap opens one.
pub fn set_lines(hand: Hand) -> AnyView {
    let open = Live::new(None::<usize>);
    let unit = hand.app.of(Model::unit);
    let shown = Seen::new(move || {
        let unit = unit.get();
        hand.it.with(|block| {
            let Some(block) = block else {
                return Vec::new();
            };
            let lines = block.sets.iter();
            let said = lines.map(|sets| sets_line(sets, &block.basis, unit));
            said.collect()
        })
    });
    let rows = dynamic(move || {
        let lines = shown.get().into_iter().enumerate();
        let rows = lines.map(|(line, words)| {
            let opened = Callback::new(move |()| open.set(Some(line)));
            let face = el("strong").child(words);
            tap("row", "set-line", None, face.into_any(), opened)
        });
        list("rows", Some("set-lines"), rows.collect())
    });
    let add = vec![
        line_adder(hand, open, "add-ramp", t("Ramp-up before"), ramp_before),
        line_adder(hand, open, "add-sets", t("More sets behind"), more_behind),
    ];
    let is_open = Seen::new(move || open.get().is_some());
    vec![
        rows,
        el("div").class("more").child(add).view(),
        when(is_open, move || line_panel(hand, open)),
    ]
    .into_any()
}

/// A button that adds a line and opens it; `add` gives its place.
fn line_adder(
    hand: Hand,
    open: Live<Option<usize>>,
    part: &'static str,
    words: &'static str,
    add: fn(&mut Block) -> usize,
) -> AnyView {
    button("", part, words, move || {
        let mut line = 0;
        hand.change(&mut |block| line = add(block));
        if hand.wrong.with_untracked(Option::is_none) {
            open.set(Some(line));
        }
    })
}

/// Three ramp-up sets in front. Three: common practice, no source.
fn ramp_before(block: &mut Block) -> usize {
    let mut line = like(block);
    line.kind = SetKind::RampUp {
        shares: usual_ramp(3),
    };
    line.count = 3;
    line.reserve = Vec::new();
    line.load = crate::sheet::LoadPolicy::Same;
    block.sets.insert(0, line);
    0
}

/// Sets behind, like the last ones.
fn more_behind(block: &mut Block) -> usize {
    let line = Sets {
        count: 1,
        ..like(block)
    };
    block.sets.push(line);
    block.sets.len() - 1
}

/// A line like the last one of the block.
fn like(block: &Block) -> Sets {
    let last = block.sets.last().cloned();
    last.unwrap_or_else(|| block.role.usual().line())
}

fn line_panel(hand: Hand, open: Live<Option<usize>>) -> AnyView {
    let close = Callback::new(move |()| open.set(None));
    let line = open.get_untracked().unwrap_or_default();
    let at = At { line, item: 0 };
    let mut inside = vec![hand.wrong_word()];
    inside.extend(inside_of_line(hand, at));
    inside.push(arrange(hand, open, line));
    panel("set-panel", t("Sets"), close, inside)
}

/// The line moved or taken off.
fn arrange(hand: Hand, open: Live<Option<usize>>, line: usize) -> AnyView {
    let up = (line > 0).then(|| {
        button("", "line-up", t_in("order", "Earlier"), move || {
            hand.change(&mut |block| block.sets.swap(line, line - 1));
            open.set(None);
        })
    });
    let off = button("", "line-remove", t("Remove these sets"), move || {
        hand.change(&mut |block| {
            if line < block.sets.len() {
                block.sets.remove(line);
            }
        });
        if hand.wrong.with_untracked(Option::is_none) {
            open.set(None);
        }
    });
    let done = button("strong", "line-done", t("Done"), move || open.set(None));
    el("div")
        .class("more")
        .child(up)
        .child(off)
        .child(done)
        .view()
}
