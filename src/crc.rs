//! CRC-32 as in IEEE 802.3: the sum by which a changed row or link is seen.

use std::sync::LazyLock;

/// The polynomial, its bits from the lowest power up (RFC 1952, section 8).
const POLYNOMIAL: u32 = 0xedb8_8320;

/// How many bytes are taken at once.
const STRIDE: usize = 8;

/// What a byte adds to the sum when so many others follow it in the same stride. Made at the first use: 8 KiB that no phone
/// has to load.
static TABLES: LazyLock<[[u32; 256]; STRIDE]> = LazyLock::new(tables);

fn tables() -> [[u32; 256]; STRIDE] {
    let mut tables = [[0; 256]; STRIDE];
    for (byte, sum) in (0..).zip(&mut tables[0]) {
        *sum = (0..8).fold(byte, |sum: u32, _| {
            let carried = if sum & 1 == 1 { POLYNOMIAL } else { 0 };
            (sum >> 1) ^ carried
        });
    }
    for followers in 1..STRIDE {
        for byte in 0..256 {
            let before = tables[followers - 1][byte];
            tables[followers][byte] = pushed(&tables[0], before, 0);
        }
    }
    tables
}

/// A sum with one byte more.
fn pushed(table: &[u32; 256], sum: u32, byte: u8) -> u32 {
    let [lowest, ..] = sum.to_le_bytes();
    table[usize::from(lowest ^ byte)] ^ (sum >> 8)
}

/// The sum of these bytes; of none it is 0. Eight bytes are taken at once, each by a table of its own (Kounavis and Berry 2005,
/// "A Systematic Approach to Building High Performance, Software-based, CRC Generators"; from memory).
#[must_use]
pub fn crc32(bytes: &[u8]) -> u32 {
    let tables = &*TABLES;
    let (strides, rest) = bytes.as_chunks::<STRIDE>();
    let sum = strides.iter().fold(!0, |sum: u32, stride| {
        let so_far = u64::from(sum).to_le_bytes();
        let each = stride.iter().zip(so_far).zip(tables.iter().rev());
        each.fold(0, |sum, ((byte, so_far), table)| {
            sum ^ table[usize::from(byte ^ so_far)]
        })
    });
    !rest
        .iter()
        .fold(sum, |sum, byte| pushed(&tables[0], sum, *byte))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_sums_are_the_published_ones() {
        // The check value of CRC-32/ISO-HDLC over "123456789" is cbf43926 (Williams 1993, A Painless Guide to CRC
        // Error Detection Algorithms; from memory).
        assert_eq!(crc32(b"123456789"), 0xcbf4_3926);
        assert_eq!(crc32(b""), 0);
    }

    proptest! {
        /// As an independent library has it.
        #[test]
        fn any_bytes_have_the_sum_that_others_find(bytes in prop::collection::vec(any::<u8>(), 0..100)) {
            prop_assert_eq!(crc32(&bytes), crc32fast::hash(&bytes));
        }
    }
}
