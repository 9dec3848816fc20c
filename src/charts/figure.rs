//! A whole number of parts of a unit as it is read: 10250 hundredths are 102.5.

use crate::words::{decimal, grouped};

/// `value` in parts of ten to the power of `decimals`, without zeros at the end: `figure(10250, 2)` is `102.5`.
///
/// `decimals` is at most 9; more is taken as 9.
#[must_use]
pub fn figure(value: i64, decimals: u8) -> String {
    let parts = 10_u64.pow(u32::from(decimals.min(9)));
    let size = value.unsigned_abs();
    let (whole, rest) = (size / parts, size % parts);
    let sign = if value < 0 { "−" } else { "" };
    let whole = grouped(&format!("{sign}{whole}"));
    if rest == 0 {
        return whole;
    }
    let width = usize::from(decimals.min(9));
    let rest = format!("{rest:0width$}");
    // The mark for the decimals alone: the one between thousands may be a point.
    whole + &decimal(&format!(".{}", rest.trim_end_matches('0')))
}

#[cfg(test)]
mod tests {
    use super::figure;

    #[test]
    fn reads_as_a_person_writes_it() {
        assert_eq!(figure(10250, 2), "102.5");
        assert_eq!(figure(10205, 2), "102.05");
        assert_eq!(figure(10200, 2), "102");
        assert_eq!(figure(7, 0), "7");
        assert_eq!(figure(0, 2), "0");
        assert_eq!(figure(-5, 1), "−0.5");
        assert_eq!(figure(i64::MIN, 0), "−9,223,372,036,854,775,808");
    }
}
