//! A block as a line wrote it: everything but its id, and its place in a pair or circuit.

use super::cursor::Cursor;
use super::defaults::{basis, default_rest, default_role};
use super::fault::Unread;
use super::head::{exercise, mark};
use super::options::{Options, part};
use super::{Known, TEXT_BYTES_MAX};
use crate::sheet::{Block, BlockId};
use crate::units::Seconds;
use crate::words::t;
use uuid::Uuid;

/// The mark of a line in a pair or circuit: `A1`. Neighbours with one letter are done together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mark {
    /// A to Z.
    pub letter: char,
    /// 1 to 9, as written; lines stand in the order of the text.
    pub place: u8,
}

/// A block as a line wrote it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    block: Block,
    /// The mark before the exercise.
    pub mark: Option<Mark>,
    /// Rest from block to block within a round.
    pub between: Option<Seconds>,
    /// True when two marked lines are to be a circuit and no pair.
    pub circuit: bool,
}

impl Written {
    /// The block, with an id of its own.
    #[must_use]
    pub fn into_block(self, id: BlockId) -> Block {
        Block { id, ..self.block }
    }

    /// The block to look at, its id still nil.
    #[must_use]
    pub fn look(&self) -> &Block {
        &self.block
    }
}

/// Reads one line, at most [`TEXT_BYTES_MAX`] long. An exercise that is not known is taken with what the line says
/// of it.
///
/// # Errors
/// [`Unread`] at the first place that cannot be read.
pub fn parse_block(line: &str, known: Known) -> Result<Written, Unread> {
    parse_line(line, 1, known)
}

/// Reads the line of that number.
pub(super) fn parse_line(text: &str, line: usize, known: Known) -> Result<Written, Unread> {
    if text.len() > TEXT_BYTES_MAX {
        return Err(Cursor::new("", line).fault(t("a line of at most 64 KiB")));
    }
    let mut c = Cursor::new(text, line);
    let mark = mark(&mut c);
    let (exercise, usual) = exercise(&mut c, known)?;
    let mut options = Options::default();
    loop {
        part(&mut c, &mut options)?;
        if !c.eat(&[';']) {
            break;
        }
    }
    // A dash before the load is the likelier: nothing that is lifted takes load off the body.
    if let (Some(at), true) = (options.bare_minus, exercise.equipment.is_lifted()) {
        return Err(c.fault_at(
            at,
            t("a load like 60 kg, or the word assistance behind one that helps"),
        ));
    }
    if options.sets.is_empty() {
        return Err(c.fault(t("sets like 3 × 5–7")));
    }
    let role = options.role.unwrap_or(default_role(&options.sets));
    let rest = options.rest.unwrap_or(default_rest(role));
    let basis = basis(options.basis, usual, exercise.equipment);
    let block = Block {
        id: BlockId(Uuid::nil()),
        exercise,
        role,
        sets: options.sets,
        basis,
        start: options.start,
        tempo: options.tempo,
        sides: options.sides,
        rest,
        rest_after: options.rest_after.unwrap_or(rest),
        cues: options.cues,
        cautions: options.cautions,
        progression: options.progression,
    };
    Ok(Written {
        block,
        mark,
        between: options.between,
        circuit: options.circuit,
    })
}
