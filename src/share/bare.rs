//! A sheet without the lifter's own numbers.

use crate::crc::crc32;
use crate::sheet::{Group, Sheet, SheetId, SheetVersion};
use uuid::Uuid;

/// The beginning of an id that its twin keeps: time, version and variant, so that twins rise as their originals do.
const KEPT: usize = 9;

/// Whether a block of the sheet names the load to start from.
#[must_use]
pub fn has_start_loads(sheet: &Sheet) -> bool {
    sheet.blocks().any(|block| block.start.is_some())
}

/// The sheet without the loads to start from: the only numbers on it that are the lifter's and not the
/// prescription's. Where there are none it is the sheet itself.
///
/// What differs in content must differ in its ids. So this is another sheet, its id and version derived from those of
/// the original, always the same: a later version, shared the same way, is known as the next version of this one.
/// Blocks keep their ids, which count within their sheet.
#[must_use]
pub fn without_start_loads(sheet: &Sheet) -> Sheet {
    let mut bare = sheet.clone();
    if has_start_loads(sheet) {
        become_twin(&mut bare, LOADS);
        for block in bare.groups.iter_mut().flat_map(Group::blocks_mut) {
            block.start = None;
        }
    }
    bare
}

/// The sheet without the mark for whom it was written, as the one it is for shall have it: another sheet, as in
/// [`without_start_loads`]. Where there is no mark it is the sheet itself.
#[must_use]
pub fn without_mark(sheet: &Sheet) -> Sheet {
    let mut bare = sheet.clone();
    if bare.written_for.take().is_some() {
        become_twin(&mut bare, MARK);
    }
    bare
}

/// Where the hash begins, by what is left out: FNV-1a's own beginning, and one beside it.
const LOADS: u64 = 0xcbf2_9ce4_8422_2325;
const MARK: u64 = LOADS + 2;

/// Beside both, for cautions; their sum is added above the last byte.
const CAUTIONS: u64 = LOADS + 4;

/// The sum of all cautions of a sheet, block by block: CRC-32, its halves laid over each other.
pub(super) fn caution_sum(sheet: &Sheet) -> [u8; 2] {
    let mut all = String::new();
    for block in sheet.blocks() {
        for caution in &block.cautions {
            all.push_str(caution.as_str());
            all.push('\n');
        }
        all.push('\0');
    }
    let [a, b, c, d] = crc32(all.as_bytes()).to_be_bytes();
    [a ^ c, b ^ d]
}

/// Makes a sheet whose cautions have another sum than `meant` another version of itself, always the same for the same
/// cautions: of that id another content is about already.
pub(super) fn become_version(sheet: &mut Sheet, meant: [u8; 2]) {
    let sum = caution_sum(sheet);
    if sum != meant {
        let without = CAUTIONS + (u64::from(u16::from_be_bytes(sum)) << 8);
        sheet.version = SheetVersion(twin(sheet.version.0, without));
    }
}

fn become_twin(sheet: &mut Sheet, without: u64) {
    sheet.id = SheetId(twin(sheet.id.0, without));
    sheet.version = SheetVersion(twin(sheet.version.0, without));
}

/// The id that stands for `id` where something is left out.
fn twin(id: Uuid, without: u64) -> Uuid {
    let mut bytes = *id.as_bytes();
    // FNV-1a, 64 bits (Fowler, Noll, Vo): short and the same on every machine.
    let hash = bytes.iter().fold(without, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    });
    bytes[KEPT..].copy_from_slice(&hash.to_be_bytes()[1..]);
    Uuid::from_bytes(bytes)
}
