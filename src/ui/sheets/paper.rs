//! A sheet on paper: what to do, and boxes to fill in by hand. Not seen on the screen.

use super::words::{block_head, sets_line};
use crate::say;
use crate::sheet::{Block, Group, Line, SetKind, Sets, Sheet, SideMode, Target};
use crate::ui::live::Live;
use crate::ui::parts::{dynamic, el, list, words};
use crate::units::{Load, Unit};
use crate::words::t;
use leptos::prelude::*;

/// A sheet that is higher in one column is set in two, small: what a page of US Letter, the lower one, has within its margins,
/// less a little, as the height is estimated. In millimetres.
const ONE_COLUMN_MM_MAX: usize = 250;
/// What stands around the blocks: name, date, lines for notes. In millimetres.
const AROUND_MM: usize = 36;
/// A block without its sets: its first line and the space around it. In millimetres.
const BLOCK_MM: usize = 9;
/// A row of boxes. In millimetres.
const ROW_MM: usize = 9;
/// A line of small text. In millimetres.
const TEXT_MM: usize = 4;
/// Letters of small text in a line.
const TEXT_CHARS: usize = 120;
/// Boxes in a row beside its words, and in each row after it.
const BOXES: (usize, usize) = (5, 8);

/// The sheet as it is printed, its start loads on it where they are chosen, loads in the unit on display.
pub fn paper(sheet: &Sheet, with_loads: Live<bool>, unit: Unit) -> AnyView {
    let long = one_column_mm(sheet) > ONE_COLUMN_MM_MAX;
    let class = if long { "paper long" } else { "paper" };
    let whom = sheet.written_for.as_ref();
    let whom = whom.map_or_else(
        || words("paper-line", t("Name")),
        |whom| words("paper-line", say!("Written for {whom}.", whom)),
    );
    let heads = vec![whom, words("paper-line", t("Date"))];
    let mut inside = vec![
        words("paper-name", sheet.name.to_string()),
        el("div").class("paper-heads").child(heads).view(),
    ];
    if let Some(budget) = sheet.budget_minutes {
        let budget = say!("Time budget: {budget} min", budget);
        inside.push(words("paper-small", budget));
    }
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
    let mut how =
        t("In each box: the load on the left, reps, seconds or metres on the right.").to_owned();
    let fields = |block: &Block| block.sets.iter().any(|sets| fields(block.sides, sets) > 1);
    if sheet.blocks().any(fields) {
        how = how + " " + t("Sides, and up to three stages, have fields of their own.");
    }
    inside.push(words("paper-small", how));
    inside.push(el("div").class("paper-blocks").child(groups).view());
    inside.push(words("paper-line", t("Notes")));
    inside.push(words("paper-line", ""));
    el("div").class(class).part("paper").child(inside).view()
}

/// About how high a sheet is in one column, in millimetres.
fn one_column_mm(sheet: &Sheet) -> usize {
    let height = |chars: usize| chars.div_ceil(TEXT_CHARS) * TEXT_MM;
    let chars = |lines: &[Line]| {
        lines
            .iter()
            .map(|line| line.as_str().chars().count() + 8)
            .sum()
    };
    let notes = sheet.notes.as_str().lines();
    let notes: usize = notes.map(|line| height(line.chars().count().max(1))).sum();
    let blocks = sheet.blocks().map(|block| {
        let rows = |sets: &Sets| rows_taken(boxes(sets), fields(block.sides, sets));
        let rows: usize = block.sets.iter().map(rows).sum();
        BLOCK_MM + ROW_MM * rows + height(chars(&block.cues) + chars(&block.cautions))
    });
    let together = sheet
        .groups
        .iter()
        .filter(|group| !matches!(group, Group::Straight(_)));
    AROUND_MM
        + sheet.budget_minutes.map_or(0, |_| TEXT_MM)
        + notes
        + height(chars(&sheet.warm_up))
        + blocks.sum::<usize>()
        + TEXT_MM * together.count()
}

/// How many rows so many boxes take that have so many fields; each field makes a box wider by a third.
fn rows_taken(boxes: usize, fields: usize) -> usize {
    let wide = |boxes: usize| (boxes * 3 / (2 + fields)).max(1);
    1 + boxes.saturating_sub(wide(BOXES.0)).div_ceil(wide(BOXES.1))
}

/// What is written into a box beside the load: one figure, or one for each stage, or side.
fn fields(sides: SideMode, sets: &Sets) -> usize {
    match (&sets.target, sides) {
        (Target::Stages(stages), _) => stages.len().clamp(1, 3),
        (_, SideMode::Both) => 1,
        (_, SideMode::EachInTurn | SideMode::OneHolds) => 2,
    }
}

/// A box for each set and each drop of it.
fn boxes(sets: &Sets) -> usize {
    let each = match sets.kind {
        SetKind::Drop { drops, .. } => 1 + usize::from(drops),
        _ => 1,
    };
    usize::from(sets.count) * each
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
    let nothing = |load: &Load| load.is_zero() && block.basis.nothing().is_some();
    let start = block
        .start
        .filter(|load| !nothing(load))
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
        .map(|sets| sets_on_paper(block, sets, unit))
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

/// One line of sets with its boxes.
fn sets_on_paper(block: &Block, sets: &Sets, unit: Unit) -> AnyView {
    let class = match fields(block.sides, sets) {
        1 => "paper-box",
        2 => "paper-box two",
        _ => "paper-box three",
    };
    let boxes: Vec<AnyView> = (0..boxes(sets))
        .map(|_| el("i").class(class).view())
        .collect();
    el("p")
        .class("paper-sets")
        .child(el("span").child(sets_line(sets, &block.basis, unit)))
        .child(boxes)
        .view()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quick::parse_sheet;
    use uuid::Uuid;

    /// The height of so many blocks, each written so; as drawn it was 159, 216 and 407 mm.
    #[test]
    fn a_sheet_goes_into_two_columns_where_it_would_not_fit_one() {
        let height = |count: usize, block: &str| {
            let text = format!("# Lower A\n{}", format!("{block}\n").repeat(count));
            let mut n = 0;
            let mut ids = || {
                n += 1;
                Uuid::from_u128(n)
            };
            let written = "2026-03-01T08:00:00+01:00".parse().unwrap();
            one_column_mm(&parse_sheet(&text, &|_: &str| None, &mut ids, written).unwrap())
        };
        let squat = "Front squat: ramp 2 × 4 at 50 %, 75 %; 3 × 5–7; \"elbows high all the way\"";
        assert_eq!(height(7, "Plank: 2 × 30 s"), 162);
        assert_eq!(height(6, squat), 222);
        assert!(height(6, squat) <= ONE_COLUMN_MM_MAX);
        assert!(height(12, squat) > ONE_COLUMN_MM_MAX);
        // Boxes that find no place beside the words go below.
        let of = |fields| move |boxes| rows_taken(boxes, fields);
        assert_eq!([1, 5, 6, 13, 14].map(of(1)), [1, 1, 2, 2, 3]);
        assert_eq!([1, 3, 4, 9, 10].map(of(2)), [1, 1, 2, 2, 3]);
        assert_eq!([1, 3, 4, 7, 8].map(of(3)), [1, 1, 2, 2, 3]);
    }
}
