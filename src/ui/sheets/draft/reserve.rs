//! Reps in reserve aimed at, set by set.

use super::hand::{At, Hand};
use super::sets::{fill, sets_at, with_sets};
use crate::units::Rir;
use crate::words::{t, t_in};
use leptos::prelude::*;

/// Reps in reserve, set by set.
pub fn reserve(hand: Hand, at: At) -> AnyView {
    let said = hand.pick(
        at,
        "reserve-has",
        t("reps in reserve"),
        &[t_in("reserve", "not said"), t_in("reserve", "said")],
        |block, at| Some(i64::from(!sets_at(block, at)?.reserve.is_empty())),
        |block, at, n| {
            with_sets(block, at, |sets| match n {
                0 => sets.reserve.clear(),
                _ if sets.reserve.is_empty() => sets.reserve.push(Rir::saturating(2)),
                _ => {}
            })
        },
    );
    let figures = hand.spin_sets(
        at,
        "reserve",
        t("set"),
        |block, at| {
            let sets = sets_at(block, at)?;
            (!sets.reserve.is_empty()).then_some(sets.count)
        },
        |block, at| {
            let reserve = sets_at(block, at).and_then(|sets| sets.reserve_of(at.item));
            reserve
                .map(|reserve| reserve.to_string())
                .unwrap_or_default()
        },
        |block, at, by| {
            with_sets(block, at, |sets| {
                let count = usize::from(sets.count);
                fill(&mut sets.reserve, at.item, count);
                // The last one stays for the sets behind it: keep them as they were.
                if let (true, Some(last)) =
                    (sets.reserve.len() < count, sets.reserve.last().copied())
                {
                    sets.reserve.push(last);
                }
                if let Some(reserve) = sets.reserve.get_mut(at.item) {
                    *reserve = Rir::saturating(i64::from(*reserve) + by);
                }
                if sets
                    .reserve
                    .iter()
                    .all(|reserve| *reserve == sets.reserve[0])
                {
                    sets.reserve.truncate(1);
                }
            })
        },
    );
    vec![said, figures].into_any()
}
