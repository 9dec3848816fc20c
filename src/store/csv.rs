//! The sets as a table: CSV as in RFC 4180, one row a set, for a spreadsheet or a script.
//!
//! Lines end in CR LF; a field with a comma, a quote or a line break stands in quotes, and a quote in it is doubled
//! (RFC 4180, section 2). The text is UTF-8 without a byte order mark. Numbers have a point and no separators.
//!
//! A spreadsheet takes a text that begins with `=`, `+`, `-`, `@`, a tab or a line break for a formula. Such a text gets
//! an apostrophe in front (common practice, as the Open Worldwide Application Security Project describes under "CSV
//! Injection"; from memory), and one that begins with an apostrophe gets another, so that each text can be had back as it was.

use super::archive::Archive;
use crate::ledger::{BlockRecord, DoneLine, SessionRecord};
use crate::order;
use crate::session::{Amount, StageAmount};
use crate::sheet::{LoadBasis, SideMode};
use crate::units::Load;

/// The columns, in their order: what stands in the first row. `docs/data.md` says what each holds.
pub const COLUMNS: [&str; 37] = [
    "date",
    "sheet",
    "block",
    "exercise",
    "set",
    "drop",
    "kind",
    "load",
    "load unit",
    "load kg",
    "load is",
    "band",
    "reps",
    "other side reps",
    "partial reps",
    "seconds",
    "metres",
    "sides",
    "reps in reserve",
    "tempo",
    "rest taken s",
    "proposed",
    "proposed unit",
    "proposed kg",
    "followed",
    "corrected",
    "first load",
    "first load unit",
    "first reps",
    "light week",
    "body mass kg",
    "note",
    "session note",
    "session rpe",
    "session id",
    "block id",
    "exercise id",
];

/// All sets that were done, the oldest session first, as a CSV text with a row of names above.
///
/// A session that cannot be shown (no beginning that counts) has no rows.
#[must_use]
pub fn csv(archive: &Archive) -> String {
    let mut table = String::new();
    row(&mut table, COLUMNS.map(str::to_owned));
    let logs = archive.sessions.values();
    let mut records: Vec<SessionRecord> = logs
        .filter_map(|log| SessionRecord::from_events(log.as_events()).ok())
        .collect();
    order::by_key(&mut records, |record| (record.began, record.session));
    for record in &records {
        for (block, of_block) in record.blocks.iter().enumerate() {
            let (mut set, mut before) = (0, None);
            for line in &of_block.lines {
                // A set and its drops have one number.
                let of = (line.key.line, line.key.set);
                set += usize::from(before.replace(of) != Some(of));
                row(&mut table, cells(record, (block, of_block), (set, line)));
            }
        }
    }
    table
}

fn cells(
    record: &SessionRecord,
    (block_at, of_block): (usize, &BlockRecord),
    (set, line): (usize, &DoneLine),
) -> [String; 37] {
    let block = &of_block.block;
    let [load, load_unit, load_kg] = load_cells(line.load);
    let [proposed, proposed_unit, proposed_kg] = load_cells(line.proposed);
    let first = line.earlier.first();
    let [first_load, first_load_unit, _] = load_cells(first.and_then(|first| first.load));
    let [reps, other_side, partials, seconds, metres] = amount_cells(&line.amount);
    let prescribed = block.sets.get(usize::from(line.key.line));
    let tempo = prescribed.and_then(|sets| sets.tempo).or(block.tempo);
    let followed = line.proposed.map(|proposed| Some(proposed) == line.load);
    let band = match &block.basis {
        LoadBasis::Band(label) => guarded(label.as_str()),
        _ => String::new(),
    };
    [
        line.at.to_rfc3339(),
        guarded(record.sheet_name.as_str()),
        (block_at + 1).to_string(),
        guarded(block.exercise.name.as_str()),
        set.to_string(),
        line.key.drop.to_string(),
        line.kind.word().to_owned(),
        load,
        load_unit,
        load_kg,
        basis(&block.basis).to_owned(),
        band,
        reps,
        other_side,
        partials,
        seconds,
        metres,
        sides(block.sides).to_owned(),
        or_empty(line.reserve),
        or_empty(tempo),
        or_empty(line.rest_taken),
        proposed,
        proposed_unit,
        proposed_kg,
        followed.map(yes).unwrap_or_default().to_owned(),
        yes(!line.earlier.is_empty()).to_owned(),
        first_load,
        first_load_unit,
        first
            .map(|first| amount_cells(&first.amount)[0].clone())
            .unwrap_or_default(),
        yes(record.light).to_owned(),
        or_empty(record.body_mass.map(|mass| mass.kg().normalize())),
        guarded(line.note.as_ref().map_or("", |note| note.as_str())),
        guarded(record.note.as_ref().map_or("", |note| note.as_str())),
        or_empty(record.rpe),
        record.session.0.to_string(),
        block.id.0.to_string(),
        guarded(block.exercise.id.as_str()),
    ]
}

fn or_empty(value: Option<impl ToString>) -> String {
    value.map(|value| value.to_string()).unwrap_or_default()
}

fn yes(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

/// As typed, its unit, and the same mass in kilograms: exact, as a pound has an end of digits in kilograms.
fn load_cells(load: Option<Load>) -> [String; 3] {
    let Some(load) = load else {
        return Default::default();
    };
    [
        load.amount().to_string(),
        load.unit().sign().to_owned(),
        load.kg().normalize().to_string(),
    ]
}

/// Full repetitions, those of the other side where it did not do as many, partial ones, seconds, metres; those of a
/// staged set added up.
fn amount_cells(amount: &Amount) -> [String; 5] {
    let mut cells: [String; 5] = Default::default();
    match amount {
        Amount::Reps(reps) => cells[0] = reps.to_string(),
        Amount::Timed(seconds) => cells[3] = seconds.to_string(),
        Amount::Distance(metres) => cells[4] = metres.to_string(),
        Amount::Sides { first, second } => {
            cells[0] = first.to_string();
            cells[1] = second.to_string();
        }
        Amount::Stages(stages) => {
            let mut sums = [None::<u32>; 5];
            for stage in stages {
                let (at, much) = match stage {
                    StageAmount::Reps(reps) => (0, u32::from(reps.get())),
                    StageAmount::Partials(reps) => (2, u32::from(reps.get())),
                    StageAmount::Hold(seconds) => (3, u32::from(seconds.get())),
                };
                *sums[at].get_or_insert(0) += much;
            }
            for (cell, sum) in cells.iter_mut().zip(sums) {
                *cell = or_empty(sum);
            }
        }
    }
    cells
}

fn basis(basis: &LoadBasis) -> &'static str {
    match basis {
        LoadBasis::External => "moved",
        LoadBasis::BodyMassPlus => "added to body mass",
        LoadBasis::BodyMassMinus => "assisting body mass",
        LoadBasis::BodyMassShare(_) => "added to a share of body mass",
        LoadBasis::Band(_) => "band",
        LoadBasis::Unloaded => "none",
    }
}

fn sides(sides: SideMode) -> &'static str {
    match sides {
        SideMode::Both => "both",
        SideMode::EachInTurn => "each in turn",
        SideMode::OneHolds => "one holds",
    }
}

/// A text that no spreadsheet takes for a formula.
fn guarded(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '\'']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

fn row(table: &mut String, cells: [String; 37]) {
    for (at, cell) in cells.iter().enumerate() {
        if at > 0 {
            table.push(',');
        }
        if cell.contains([',', '"', '\r', '\n']) {
            table.push('"');
            table.push_str(&cell.replace('"', "\"\""));
            table.push('"');
        } else {
            table.push_str(cell);
        }
    }
    table.push_str("\r\n");
}
