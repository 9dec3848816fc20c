//! A number as it is written: digits, at most one point, a sign.

use rust_decimal::Decimal;

/// Most digits of a [`Decimal`] behind the point.
const PLACES_MAX: u32 = 28;

/// Reads digits with at most one point among them and a sign before them; nothing else, and nothing that would have to be
/// rounded. (`Decimal`'s own readers also take exponents and round, which weighs more than all that is needed.)
pub(crate) fn plain_decimal(text: &str) -> Option<Decimal> {
    let (is_negative, digits) = match text.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let (mut number, mut places, mut is_behind, mut is_number) = (0_i128, 0, false, false);
    for byte in digits.bytes() {
        match byte {
            b'.' if !is_behind => is_behind = true,
            b'0'..=b'9' => {
                let digit = i128::from(byte - b'0');
                number = number.checked_mul(10)?.checked_add(digit)?;
                places += u32::from(is_behind);
                is_number = true;
            }
            _ => return None,
        }
    }
    let number = if is_negative { -number } else { number };
    let decimal = Decimal::try_from_i128_with_scale(number, places).ok()?;
    (is_number && places <= PLACES_MAX).then_some(decimal)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_is_no_plain_number_is_refused() {
        for text in [
            "", ".", "-", "+", "1.2.3", "1e3", "1_000", " 1", "1 ", "--1", "1-", "٣", "1,5",
        ] {
            assert_eq!(plain_decimal(text), None, "{text}");
        }
        // 2^96, and 29 places.
        assert_eq!(plain_decimal("79228162514264337593543950336"), None);
        assert_eq!(plain_decimal("0.00000000000000000000000000001"), None);
        let endless = "9".repeat(60);
        assert_eq!(plain_decimal(&endless), None);
    }

    proptest! {
        /// As the library of the numbers reads it, wherever both take it: to the sign and to the places.
        #[test]
        fn what_is_written_is_read(text in "[+-]?[0-9]{0,16}(\\.[0-9]{0,12})?") {
            let theirs = Decimal::from_str_exact(&text).ok();
            let ours = plain_decimal(&text);
            prop_assert_eq!(ours, theirs);
            prop_assert_eq!(ours.map(|it| it.to_string()), theirs.map(|it| it.to_string()));
        }
    }
}
