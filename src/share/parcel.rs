//! What a link carries: the ids of a sheet and its text, or the whole of it as JSON where the text cannot hold it.

use super::bare::caution_sum;
use super::fault::LinkFault;
use super::head::Head;
use super::short::{lengthen, shorten};
use crate::json::{self, Cursor};
use crate::quick::{parse_sheet, print_sheet};
use crate::sheet::{Named, Sheet};
use uuid::Uuid;

/// Between the lines and what the lines cannot hold. No line and no note has it.
const TAIL: char = '\0';

/// Fields of a sheet that its head and its lines hold. Any other one goes into the tail as it is.
const IN_LINES: [&str; 8] = [
    "id",
    "version",
    "written",
    "name",
    "warm_up",
    "notes",
    "budget_minutes",
    "groups",
];

/// How the sheet is written down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// Head and lines, maybe with a tail.
    Lines,
    /// JSON.
    Json,
}

/// A sheet written down, ready to be packed and sealed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parcel {
    pub(super) kind: Kind,
    pub(super) head: Vec<u8>,
    /// The sum of the cautions where some are left out.
    pub(super) cautions: Option<[u8; 2]>,
    text: String,
}

impl Parcel {
    /// Writes a sheet down. What is written was read again and came out as the same sheet: nothing gets lost.
    #[must_use]
    pub fn of(sheet: &Sheet) -> Parcel {
        let whole = json::text(sheet);
        let head = Head::of(sheet);
        let mut text = shorten(&print_sheet(sheet, &nothing));
        if let Some(tail) = tail(&whole) {
            text.push(TAIL);
            text.push_str(&tail);
        }
        let head = head.write();
        let lines = Parcel {
            kind: Kind::Lines,
            head,
            cautions: None,
            text,
        };
        // Compared as JSON: two times that are equal may still be told in different zones.
        let survives = from_lines(&lines.head, &lines.text)
            .is_ok_and(|(again, _)| json::text(&again) == whole);
        if survives {
            lines
        } else {
            Parcel {
                kind: Kind::Json,
                head: Vec::new(),
                cautions: None,
                text: whole,
            }
        }
    }

    /// Says that cautions were left out which whoever opens the link gives back, and by a sum which those of `whole` were.
    #[must_use]
    pub fn without_cautions(mut self, whole: &Sheet) -> Parcel {
        self.cautions = Some(caution_sum(whole));
        self
    }

    /// What is worth packing.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }
}

/// Lines are written as if no exercise were known: then they mean the same whatever the reader knows.
fn nothing(_: &str) -> Option<Named> {
    None
}

/// The fields of a sheet's JSON that lines cannot hold, as they stand there; none where there are none.
fn tail(whole: &str) -> Option<String> {
    let mut fields = Vec::new();
    let mut cursor = Cursor::new(whole);
    if cursor.opens(b'{').ok()? {
        while let Some(name) = cursor.next_name(0).ok()? {
            let value = cursor.skip().ok()?;
            if !IN_LINES.contains(&&*name) {
                fields.push(format!("\"{name}\":{value}"));
            }
        }
    }
    (!fields.is_empty()).then(|| fields.join(","))
}

fn unreadable(why: impl ToString) -> LinkFault {
    LinkFault::Unreadable {
        why: why.to_string(),
    }
}

/// Reads what [`Parcel::of`] wrote as lines: the sheet, and the bytes behind the head.
pub(super) fn from_lines<'b>(bytes: &'b [u8], text: &str) -> Result<(Sheet, &'b [u8]), LinkFault> {
    let (head, rest) = Head::read(bytes).ok_or(LinkFault::Broken)?;
    let (lines, tail) = match text.rsplit_once(TAIL) {
        Some((lines, tail)) => (lines, Some(tail)),
        None => (text, None),
    };
    let mut ids = [head.id.0, head.version.0].into_iter().chain(head.blocks);
    let mut missing = false;
    let mut next = || {
        let id = ids.next();
        missing |= id.is_none();
        id.unwrap_or(Uuid::nil())
    };
    let sheet = parse_sheet(&lengthen(lines), &nothing, &mut next, head.written)
        .map_err(|faults| faults.first().map_or_else(|| unreadable(""), unreadable))?;
    if missing || ids.next().is_some() {
        return Err(unreadable("it has another number of blocks than of ids"));
    }
    let sheet = match tail {
        None => sheet,
        Some(tail) => {
            let mut whole = json::text(&sheet);
            whole.pop();
            from_json(&format!("{whole},{tail}}}"))?
        }
    };
    sheet.check().map_err(unreadable)?;
    Ok((sheet, rest))
}

/// Reads what [`Parcel::of`] wrote as JSON.
pub(super) fn from_json(text: &str) -> Result<Sheet, LinkFault> {
    json::parse(text).map_err(unreadable)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_field_that_lines_cannot_hold_goes_into_the_tail() {
        let whole =
            r#"{"id":"a","version":"b","new":{"x":[1,"}"]},"name":"n","odd":true,"groups":[]}"#;
        assert_eq!(
            tail(whole).as_deref(),
            Some(r#""new":{"x":[1,"}"]},"odd":true"#)
        );
        assert_eq!(tail(r#"{"id":"a","groups":[]}"#), None);
    }
}
