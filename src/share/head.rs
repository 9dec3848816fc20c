//! The head of a parcel: the ids of a sheet and when it was written, as bytes.
//!
//! It stands before the text and is not packed with it: random bytes among letters would make the letters longer.

use crate::sheet::{Sheet, SheetId, SheetVersion};
use chrono::{DateTime, FixedOffset};
use uuid::Uuid;

/// Bytes of an id.
const ID: usize = 16;
/// Bytes of a time: milliseconds since 1970, and minutes east of Greenwich.
const TIME: usize = 8;

/// The ids of a sheet, and when it was written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Head {
    pub id: SheetId,
    pub version: SheetVersion,
    /// Of the blocks, in their order.
    pub blocks: Vec<Uuid>,
    pub written: DateTime<FixedOffset>,
}

impl Head {
    pub fn of(sheet: &Sheet) -> Head {
        Head {
            id: sheet.id,
            version: sheet.version,
            blocks: sheet.blocks().map(|block| block.id.0).collect(),
            written: sheet.written,
        }
    }

    /// The bytes: the time, how many blocks there are, and each id without what it begins with like the one before.
    /// A time before 1970, or with parts of a millisecond, comes back as another one: the caller compares.
    pub fn write(&self) -> Vec<u8> {
        let mut bytes = Vec::with_capacity(TIME + ID * 3 + self.blocks.len() * 12);
        let ms = self.written.timestamp_millis().cast_unsigned();
        bytes.extend_from_slice(&ms.to_be_bytes()[2..]);
        let minutes = self.written.offset().local_minus_utc() / 60;
        bytes.extend_from_slice(&(minutes as i16).to_be_bytes());
        bytes.push(self.blocks.len() as u8);
        let mut before = [0; ID];
        for id in [self.id.0, self.version.0].iter().chain(&self.blocks) {
            let id = *id.as_bytes();
            let alike = id.iter().zip(before).take_while(|(a, b)| *a == b).count();
            bytes.push(alike as u8);
            bytes.extend_from_slice(&id[alike..]);
            before = id;
        }
        bytes
    }

    /// Reads the bytes back; the head and what follows it. None where they make no sense.
    pub fn read(bytes: &[u8]) -> Option<(Head, &[u8])> {
        let (time, rest) = bytes.split_at_checked(TIME)?;
        let ms = time[..6]
            .iter()
            .fold(0, |ms, byte| ms << 8 | i64::from(*byte));
        let minutes = i16::from_be_bytes([time[6], time[7]]);
        let offset = FixedOffset::east_opt(i32::from(minutes) * 60)?;
        let written = DateTime::from_timestamp_millis(ms)?.with_timezone(&offset);
        let (count, mut rest) = rest.split_first()?;
        let mut before = [0; ID];
        let mut next = || {
            let (alike, after) = rest.split_first()?;
            let alike = usize::from(*alike);
            let (told, after) = after.split_at_checked(ID.checked_sub(alike)?)?;
            before[alike..].copy_from_slice(told);
            rest = after;
            Some(Uuid::from_bytes(before))
        };
        let (id, version) = (SheetId(next()?), SheetVersion(next()?));
        let blocks: Option<Vec<Uuid>> = (0..*count).map(|_| next()).collect();
        let head = Head {
            id,
            version,
            blocks: blocks?,
            written,
        };
        Some((head, rest))
    }
}
