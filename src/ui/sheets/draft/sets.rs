//! One line of sets: its kind with what the kind needs, how many, what each asks for, reserve, and what differs from the
//! block.

use super::hand::{At, Hand};
use super::own::own;
use super::policy::policy;
use super::reserve::reserve;
use super::target::target;
use crate::sheet::{Block, SetKind, Sets, usual_ramp};
use crate::strength::{Above, above};
use crate::ui::parts::{h2, quiet};
use crate::units::{Seconds, Share};
use crate::words::{decimal, t, t_in};
use leptos::prelude::*;
use rust_decimal::Decimal;

/// Names of the kinds in the order of the choices.
fn kinds() -> [&'static str; 6] {
    [
        t("ramp-up"),
        t_in("sets", "work"),
        t("back-off"),
        t_in("sets", "drop"),
        t("cluster"),
        t("to failure"),
    ]
}
/// What a share is stepped by, in percent.
const SHARE_STEP: i64 = 5;

/// The line that is meant.
pub fn sets_at(block: &Block, at: At) -> Option<&Sets> {
    block.sets.get(at.line)
}

/// Changes the line that is meant.
pub fn with_sets(block: &mut Block, at: At, change: impl FnOnce(&mut Sets)) {
    if let Some(sets) = block.sets.get_mut(at.line) {
        change(sets);
    }
}

/// Everything of one line.
pub fn inside_of_line(hand: Hand, at: At) -> Vec<AnyView> {
    vec![
        hand.pick(at, "kind", t("kind of sets"), &kinds(), kind_of, set_kind),
        hand.depends(
            at,
            |block, at| format!("{:?} {:?}", kind_of(block, at), above(block)),
            of_kind,
        ),
        hand.step(
            at,
            "line-count",
            t("how many sets"),
            |block, at| {
                sets_at(block, at)
                    .map(|sets| sets.count.to_string())
                    .unwrap_or_default()
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    set_count(sets, (i64::from(sets.count) + by).clamp(1, 20) as u8);
                })
            },
        ),
        h2(t("Each set")),
        target(hand, at),
        h2(t("Reps in reserve")),
        reserve(hand, at),
        h2(t("Load from set to set")),
        policy(hand, at),
        own(hand, at),
    ]
}

fn kind_of(block: &Block, at: At) -> Option<i64> {
    let n = match sets_at(block, at)?.kind {
        SetKind::RampUp { .. } => 0,
        SetKind::Work => 1,
        SetKind::BackOff { .. } => 2,
        SetKind::Drop { .. } => 3,
        SetKind::Cluster { .. } => 4,
        SetKind::ToFailure => 5,
    };
    Some(n)
}

/// Another kind, with settings of common practice, no source.
fn set_kind(block: &mut Block, at: At, n: i64) {
    if kind_of(block, at) == Some(n) {
        return;
    }
    with_sets(block, at, |sets| {
        sets.kind = match n {
            0 => SetKind::RampUp {
                shares: usual_ramp(sets.count),
            },
            1 => SetKind::Work,
            2 => SetKind::BackOff {
                share: Share::percent(80),
            },
            3 => SetKind::Drop {
                drops: 2,
                keep: Share::percent(80),
            },
            4 => SetKind::Cluster {
                portions: 3,
                pause: Seconds::saturating(15),
            },
            _ => SetKind::ToFailure,
        };
        // Who goes to failure leaves none.
        if sets.kind == SetKind::ToFailure {
            sets.reserve.clear();
        }
    });
}

/// Another count; the shares of ramp-up sets follow it as long as they are the usual ones. What was said of sets that are
/// gone goes too: nobody would see it.
fn set_count(sets: &mut Sets, count: u8) {
    let of_sets = usize::from(count);
    match &mut sets.kind {
        SetKind::RampUp { shares } if *shares == usual_ramp(sets.count) => {
            *shares = usual_ramp(count);
        }
        SetKind::RampUp { shares } => shares.truncate(of_sets),
        _ => {}
    }
    sets.reserve.truncate(of_sets);
    sets.count = count;
}

/// A share stepped by five percent, between 5 and 150.
pub fn step_share(share: Share, by: i64) -> Share {
    let step = Decimal::from(by * SHARE_STEP);
    let next = (share.in_percent() + step).clamp(Decimal::from(5), Decimal::from(150));
    Share::new(next).unwrap_or(share)
}

/// What the kind needs.
fn of_kind(hand: Hand, at: At) -> AnyView {
    let kind = hand.now(at, |block, at| Some(sets_at(block, at)?.kind.clone()));
    match kind {
        Some(SetKind::RampUp { .. }) => shares(hand, at),
        Some(SetKind::BackOff { .. }) => hand.step(
            at,
            "back-off-share",
            t("of the heaviest set"),
            |block, at| match sets_at(block, at).map(|sets| &sets.kind) {
                Some(SetKind::BackOff { share }) => decimal(&share.to_string()),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let SetKind::BackOff { share } = &mut sets.kind {
                        *share = step_share(*share, by);
                    }
                })
            },
        ),
        Some(SetKind::Drop { .. }) => drops(hand, at),
        Some(SetKind::Cluster { .. }) => cluster(hand, at),
        Some(SetKind::ToFailure) => quiet(failure_words(hand, at)),
        Some(SetKind::Work) | None => ().into_any(),
    }
}

fn failure_words(hand: Hand, at: At) -> &'static str {
    match hand.now(at, |block, _| above(block)) {
        Some(Above::Bar) => t(
            "Until the next rep could not be done well. Spotter or safety bars; stop when technique goes.",
        ),
        Some(Above::Weights) => t(
            "Until the next rep could not be done well. Have a spotter, or put the weights down in time; stop when technique goes.",
        ),
        None => t("Until the next rep could not be done well; stop when technique goes."),
    }
}

/// The shares of a ramp-up, one a set.
fn shares(hand: Hand, at: At) -> AnyView {
    fn of(block: &Block, at: At) -> &[Share] {
        match sets_at(block, at).map(|sets| &sets.kind) {
            Some(SetKind::RampUp { shares }) => shares,
            _ => &[],
        }
    }
    hand.spin_sets(
        at,
        "ramp",
        t("share of set"),
        |block, at| Some(sets_at(block, at)?.count),
        |block, at| {
            let shares = of(block, at);
            let share = shares.get(at.item).or(shares.last());
            let share = share.map(|share| decimal(&share.to_string()));
            share.unwrap_or_default()
        },
        |block, at, by| {
            with_sets(block, at, |sets| {
                if let SetKind::RampUp { shares } = &mut sets.kind {
                    fill(shares, at.item, usize::from(sets.count));
                    // Above the work load it would be none.
                    shares[at.item] = step_share(shares[at.item], by).min(Share::percent(100));
                }
            })
        },
    )
}

/// Makes the list long enough that `item` is in it, and no longer than there are sets: the last one stays.
pub fn fill<T: Clone>(list: &mut Vec<T>, item: usize, sets: usize) {
    list.truncate(sets.max(item + 1));
    while let (true, Some(last)) = (list.len() <= item, list.last().cloned()) {
        list.push(last);
    }
}

fn drops(hand: Hand, at: At) -> AnyView {
    vec![
        hand.step(
            at,
            "drops",
            t("how many drops"),
            |block, at| match sets_at(block, at).map(|sets| &sets.kind) {
                Some(SetKind::Drop { drops, .. }) => drops.to_string(),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let SetKind::Drop { drops, .. } = &mut sets.kind {
                        *drops = (i64::from(*drops) + by).clamp(1, 5) as u8;
                    }
                })
            },
        ),
        hand.step(
            at,
            "drop-keep",
            t("each leaves"),
            |block, at| match sets_at(block, at).map(|sets| &sets.kind) {
                Some(SetKind::Drop { keep, .. }) => decimal(&keep.to_string()),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let SetKind::Drop { keep, .. } = &mut sets.kind {
                        *keep = step_share(*keep, by);
                    }
                })
            },
        ),
    ]
    .into_any()
}

fn cluster(hand: Hand, at: At) -> AnyView {
    vec![
        hand.step(
            at,
            "portions",
            t("portions in a set"),
            |block, at| match sets_at(block, at).map(|sets| &sets.kind) {
                Some(SetKind::Cluster { portions, .. }) => portions.to_string(),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let SetKind::Cluster { portions, .. } = &mut sets.kind {
                        *portions = (i64::from(*portions) + by).clamp(2, 10) as u8;
                    }
                })
            },
        ),
        hand.step(
            at,
            "portion-pause",
            t("pause between portions"),
            |block, at| match sets_at(block, at).map(|sets| &sets.kind) {
                Some(SetKind::Cluster { pause, .. }) => pause.clock(),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let SetKind::Cluster { pause, .. } = &mut sets.kind {
                        *pause = Seconds::saturating((i64::from(*pause) / 5 + by) * 5);
                    }
                })
            },
        ),
    ]
    .into_any()
}
