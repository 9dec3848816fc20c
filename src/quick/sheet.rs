//! Reads the text of a whole sheet, and names all its faulty lines at once.

use super::cursor::Cursor;
use super::fault::Unread;
use super::written::{Written, parse_line};
use super::{Known, TEXT_BYTES_MAX, TEXT_LINES_MAX};
use crate::sheet::{
    BLOCKS_MAX, BUDGET_MINUTES_MAX, Block, BlockId, CIRCUIT_BLOCKS_MAX, Group, LINES_MAX, Line,
    Note, Sheet, SheetId, SheetVersion,
};
use crate::units::Seconds;
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use std::num::NonZeroU16;
use uuid::Uuid;

/// Gives ids, each a new one.
type Ids<'a> = &'a mut dyn FnMut() -> Uuid;

/// A new sheet from its text; its ids come from `ids`.
///
/// # Errors
/// [`Unread`] for every faulty line, in their order.
pub fn parse_sheet(
    text: &str,
    known: Known,
    ids: Ids,
    written: DateTime<FixedOffset>,
) -> Result<Sheet, Vec<Unread>> {
    read(text, known, ids, written, None)
}

/// A new version of a sheet from its changed text. A block keeps its id where the old sheet has one of the same
/// exercise: the first with the first, and so on.
///
/// # Errors
/// [`Unread`] for every faulty line, in their order.
pub fn revise_sheet(
    text: &str,
    old: &Sheet,
    known: Known,
    ids: Ids,
    written: DateTime<FixedOffset>,
) -> Result<Sheet, Vec<Unread>> {
    read(text, known, ids, written, Some(old))
}

/// What was read so far.
#[derive(Default)]
struct Reading {
    name: Option<Line>,
    budget: Option<NonZeroU16>,
    /// The budget of the sheet that is revised.
    before: Option<NonZeroU16>,
    warm_up: Vec<Line>,
    notes: Vec<String>,
    blocks: Vec<(usize, Written)>,
    faults: Vec<Unread>,
}

fn read(
    text: &str,
    known: Known,
    ids: Ids,
    written: DateTime<FixedOffset>,
    old: Option<&Sheet>,
) -> Result<Sheet, Vec<Unread>> {
    if text.len() > TEXT_BYTES_MAX {
        return Err(vec![fault("", 1, t("a text of at most 64 KiB"))]);
    }
    // A file may say more than can be typed: it is kept as it is.
    let before = old.and_then(|old| old.budget_minutes);
    let mut reading = Reading {
        before,
        ..Reading::default()
    };
    let mut last = 1;
    for (index, line) in text.split('\n').enumerate() {
        last = index + 1;
        if index == TEXT_LINES_MAX {
            reading
                .faults
                .push(fault(line, last, t("at most 400 lines")));
            break;
        }
        let line = line.strip_suffix('\r').unwrap_or(line);
        if let Err(unread) = reading.line(line, last, known) {
            reading.faults.push(unread);
        }
    }
    let note = Note::new(&reading.notes.join("\n"));
    if note.is_err() {
        let most = t("notes of at most 4000 characters");
        reading.faults.push(fault("", last, most));
    }
    if reading.name.is_none() {
        let name = t("# and the name of the sheet");
        let first = text.lines().next().unwrap_or_default();
        reading.faults.insert(0, fault(first, 1, name));
    }
    if reading.blocks.is_empty() && reading.faults.is_empty() {
        let block = t("a line like Front squat: 3 × 5–7");
        reading.faults.push(fault("", last, block));
    }
    let (Some(name), Ok(notes), true) = (reading.name, note, reading.faults.is_empty()) else {
        return Err(reading.faults);
    };
    let mut namer = Namer {
        ids,
        old,
        given: Vec::new(),
    };
    let (id, version) = match old {
        Some(old) => (old.id, SheetVersion((namer.ids)())),
        None => (SheetId((namer.ids)()), SheetVersion((namer.ids)())),
    };
    let mut sheet = Sheet {
        id,
        version,
        written,
        name,
        warm_up: reading.warm_up,
        notes,
        budget_minutes: reading.budget,
        groups: groups(reading.blocks, &mut namer)?,
        // The text cannot say them: they go on for the blocks that stay.
        settled: old.map_or_else(Vec::new, |old| old.settled.clone()),
        written_for: old.and_then(|old| old.written_for.clone()),
    };
    sheet.forget_unknown();
    Ok(sheet)
}

fn fault(text: &str, line: usize, expected: &'static str) -> Unread {
    Cursor::new(text, line).fault(expected)
}

impl Reading {
    fn line(&mut self, text: &str, line: usize, known: Known) -> Result<(), Unread> {
        let mut c = Cursor::new(text, line);
        if c.peek().is_none() {
            return Ok(());
        }
        let start = c.at;
        if c.eat(&['#']) {
            let name = c.until(&[]);
            if self.name.is_some() {
                return Err(c.fault_at(start, t("one name of the sheet")));
            }
            self.name = Some(c.line_of(&name, start + 1)?);
        } else if c.eat(&['>']) {
            let note: String = text.chars().skip(c.at).collect();
            let note = note.strip_prefix(' ').unwrap_or(&note);
            self.notes.push(note.to_owned());
        } else if c.eat(&['-']) {
            let step = c.until(&[]);
            if self.warm_up.len() == LINES_MAX {
                return Err(c.fault_at(start, t("at most 20 lines of warm-up")));
            }
            self.warm_up.push(c.line_of(&step, start + 1)?);
        } else if c.word("budget") && c.at_digit() {
            let at = c.at;
            let minutes = c.whole(1, u16::MAX.into(), t("1 to 600 minutes"))?;
            let minutes = NonZeroU16::new(minutes as u16);
            let most = NonZeroU16::new(BUDGET_MINUTES_MAX);
            if minutes > most && minutes != self.before {
                c.at = at;
                return Err(c.fault(t("1 to 600 minutes")));
            }
            if !c.word("min") || c.peek().is_some() {
                return Err(c.fault(t("min after the minutes")));
            }
            self.budget = minutes;
        } else {
            let written = parse_line(text, line, known)?;
            if self.blocks.len() == BLOCKS_MAX {
                return Err(c.fault_at(start, t("at most 40 blocks")));
            }
            self.blocks.push((line, written));
        }
        Ok(())
    }
}

/// Gives the blocks their ids.
struct Namer<'a, 'b> {
    ids: Ids<'a>,
    old: Option<&'b Sheet>,
    given: Vec<BlockId>,
}

impl Namer<'_, '_> {
    fn block(&mut self, written: Written) -> Block {
        let exercise = &written.look().exercise.id;
        let mut same = self
            .old
            .into_iter()
            .flat_map(Sheet::blocks)
            .filter(|block| block.exercise.id == *exercise && !self.given.contains(&block.id));
        let id = match same.next() {
            Some(block) => block.id,
            None => BlockId((self.ids)()),
        };
        self.given.push(id);
        written.into_block(id)
    }
}

fn groups(blocks: Vec<(usize, Written)>, namer: &mut Namer) -> Result<Vec<Group>, Vec<Unread>> {
    let mut groups = Vec::new();
    let mut faults = Vec::new();
    let mut rest = blocks.into_iter().peekable();
    while let Some((line, first)) = rest.next() {
        let Some(mark) = first.mark else {
            if first.between.is_some() || first.circuit {
                let expected = t("A1 and A2 before the lines that are done together");
                let found = if first.circuit { "circuit" } else { "between" };
                faults.push(fault(found, line, expected));
            }
            groups.push(Group::Straight(Box::new(namer.block(first))));
            continue;
        };
        let mut between = first.between;
        let mut circuit = first.circuit;
        let mut blocks = vec![namer.block(first)];
        while let Some((line, next)) =
            rest.next_if(|(_, next)| next.mark.is_some_and(|it| it.letter == mark.letter))
        {
            if next.between.is_some() && between.is_some() {
                faults.push(fault(
                    "between",
                    line,
                    t("between only once for lines done together"),
                ));
            }
            between = between.or(next.between);
            circuit |= next.circuit;
            blocks.push(namer.block(next));
        }
        if !(2..=CIRCUIT_BLOCKS_MAX).contains(&blocks.len()) {
            let expected = t(match blocks.len() {
                1 => "a second line with its letter behind it, as A2 behind A1, or no letter",
                _ => "2 to 8 neighbouring lines with one letter",
            });
            let found = format!("{}{}", mark.letter, mark.place);
            faults.push(fault(&found, line, expected));
            continue;
        }
        let between = between.unwrap_or(Seconds::saturating(0));
        groups.push(match <[Block; 2]>::try_from(blocks) {
            Ok(pair) if !circuit => Group::Pair {
                blocks: Box::new(pair),
                between,
            },
            Ok(pair) => Group::Circuit {
                blocks: pair.into(),
                between,
            },
            Err(blocks) => Group::Circuit { blocks, between },
        });
    }
    if faults.is_empty() {
        Ok(groups)
    } else {
        Err(faults)
    }
}
