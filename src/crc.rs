//! CRC-32 as in IEEE 802.3: the sum by which a changed row or link is seen.

use crc::{CRC_32_ISO_HDLC, Crc, Table};
use std::sync::LazyLock;

/// The sum with its sixteen tables, made at the first use: 16 KB that no phone has to load, since nothing compresses them.
static SUM: LazyLock<Crc<u32, Table<16>>> =
    LazyLock::new(|| Crc::<u32, Table<16>>::new(&CRC_32_ISO_HDLC));

/// The sum of these bytes; of none it is 0.
#[must_use]
pub fn crc32(bytes: &[u8]) -> u32 {
    SUM.checksum(bytes)
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
        /// As another library has it: rows of earlier builds were summed by that.
        #[test]
        fn any_bytes_have_the_sum_that_others_find(bytes in prop::collection::vec(any::<u8>(), 0..100)) {
            prop_assert_eq!(crc32(&bytes), crc32fast::hash(&bytes));
        }
    }
}
