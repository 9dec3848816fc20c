//! How the load runs over the sets of a line.

use super::hand::{At, Hand};
use super::sets::{fill, sets_at, step_share, with_sets};
use crate::say;
use crate::sheet::{Block, LoadPolicy, Step};
use crate::ui::parts::{Mode, quiet};
use crate::units::{Load, Share, Unit};
use crate::words::{decimal, t, t_in};
use leptos::prelude::*;

/// Names of the policies in the order of the choices.
fn policies() -> [&'static str; 7] {
    [
        t_in("load", "same"),
        t_in("load", "rising"),
        t_in("load", "falling"),
        t_in("load", "listed"),
        t("share of heaviest"),
        t("share of the estimated maximum"),
        t("rising by outcome"),
    ]
}

/// Most loads in a list.
const LISTED_MOST: usize = 20;

/// How the load runs.
pub fn policy(hand: Hand, at: At) -> AnyView {
    let chosen = hand.pick(
        at,
        "policy",
        t("load from set to set"),
        &policies(),
        policy_of,
        set_policy,
    );
    let inside = hand.depends(
        at,
        |block, at| format!("{:?}", policy_of(block, at)),
        of_policy,
    );
    vec![chosen, inside].into_any()
}

fn load_at(block: &Block, at: At) -> Option<&LoadPolicy> {
    Some(&sets_at(block, at)?.load)
}

fn policy_of(block: &Block, at: At) -> Option<i64> {
    Some(match load_at(block, at)? {
        LoadPolicy::Same => 0,
        LoadPolicy::Rising(_) => 1,
        LoadPolicy::Falling(_) => 2,
        LoadPolicy::List(_) => 3,
        LoadPolicy::ShareOfTop(_) => 4,
        LoadPolicy::ShareOfE1rm(_) => 5,
        LoadPolicy::RisingByOutcome { .. } => 6,
    })
}

/// Another policy. Shares to begin with: common practice, no source.
fn set_policy(block: &mut Block, at: At, n: i64) {
    if policy_of(block, at) == Some(n) {
        return;
    }
    let start = block.start;
    with_sets(block, at, |sets| {
        sets.load = match n {
            0 => LoadPolicy::Same,
            1 => LoadPolicy::Rising(Step::Smallest),
            2 => LoadPolicy::Falling(Step::Smallest),
            3 => LoadPolicy::List(vec![start.unwrap_or(Load::whole_kg(20))]),
            4 => LoadPolicy::ShareOfTop(vec![Share::percent(90)]),
            5 => LoadPolicy::ShareOfE1rm(Share::percent(80)),
            _ => LoadPolicy::RisingByOutcome {
                planned: Step::Smallest,
                large: Step::Smallest,
            },
        };
    });
}

/// A step as it is typed: nothing for the smallest that the kit has.
pub fn step_typed(step: Step) -> String {
    match step {
        Step::Smallest => String::new(),
        Step::By(load) => decimal(&load.to_string()),
    }
}

/// Reads a step.
pub fn read_step(typed: &str, unit: Unit) -> Result<Step, String> {
    match typed.trim() {
        "" => Ok(Step::Smallest),
        typed => match Load::parse_in(typed, unit) {
            Ok(load) if load.is_zero() => Err(t("a step is more than nothing").to_owned()),
            Ok(load) => Ok(Step::By(load)),
            Err(unfit) => Err(unfit.to_string()),
        },
    }
}

fn of_policy(hand: Hand, at: At) -> AnyView {
    let policy = hand.now(at, policy_of);
    match policy {
        Some(1 | 2) => hand.typed(
            at,
            "policy-step",
            Mode::Decimal,
            t("by how much; empty for the kit's smallest step"),
            |block, at| match load_at(block, at) {
                Some(LoadPolicy::Rising(step) | LoadPolicy::Falling(step)) => step_typed(*step),
                _ => String::new(),
            },
            |block, at, typed, unit| {
                let to = read_step(typed, unit)?;
                with_sets(block, at, |sets| {
                    if let LoadPolicy::Rising(step) | LoadPolicy::Falling(step) = &mut sets.load {
                        *step = to;
                    }
                });
                Ok(())
            },
        ),
        Some(3) => hand.typed(
            at,
            "policy-loads",
            Mode::Text,
            t("loads in order, parted by semicolons: 60; 62.5; 65"),
            |block, at| match load_at(block, at) {
                Some(LoadPolicy::List(loads)) => {
                    let loads = loads.iter().map(|load| decimal(&load.to_string()));
                    loads.collect::<Vec<String>>().join("; ")
                }
                _ => String::new(),
            },
            |block, at, typed, unit| {
                let to = read_loads(typed, unit)?;
                with_sets(block, at, |sets| sets.load = LoadPolicy::List(to));
                Ok(())
            },
        ),
        Some(4) => shares(hand, at),
        Some(5) => hand.step(
            at,
            "policy-e1rm",
            t("of the estimated maximum"),
            |block, at| match load_at(block, at) {
                Some(LoadPolicy::ShareOfE1rm(share)) => decimal(&share.to_string()),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let LoadPolicy::ShareOfE1rm(share) = &mut sets.load {
                        *share = step_share(*share, by);
                    }
                })
            },
        ),
        Some(6) => by_outcome(hand, at),
        _ => ().into_any(),
    }
}

fn read_loads(typed: &str, unit: Unit) -> Result<Vec<Load>, String> {
    let loads = typed
        .split(';')
        .filter(|load| !load.trim().is_empty())
        .map(|load| Load::parse_in(load, unit).map_err(|unfit| unfit.to_string()))
        .collect::<Result<Vec<Load>, String>>()?;
    match loads.len() {
        1..=LISTED_MOST => Ok(loads),
        n => Err(say!(
            "1 to {most} loads can be listed, not {n}",
            most = LISTED_MOST,
            n,
        )),
    }
}

/// Shares of the heaviest load, one a set.
fn shares(hand: Hand, at: At) -> AnyView {
    hand.spin_sets(
        at,
        "policy-share",
        t("set"),
        |block, at| Some(sets_at(block, at)?.count),
        |block, at| match load_at(block, at) {
            Some(LoadPolicy::ShareOfTop(shares)) => {
                let share = shares.get(at.item).or(shares.last());
                let share = share.map(|share| decimal(&share.to_string()));
                share.unwrap_or_default()
            }
            _ => String::new(),
        },
        |block, at, by| {
            with_sets(block, at, |sets| {
                if let LoadPolicy::ShareOfTop(shares) = &mut sets.load {
                    fill(shares, at.item, usize::from(sets.count));
                    shares[at.item] = step_share(shares[at.item], by);
                }
            })
        },
    )
}

fn by_outcome(hand: Hand, at: At) -> AnyView {
    vec![
        quiet(t("After each set the next load follows: within the range a step, at its top a larger one, below it the same.")),
        hand.typed(
            at,
            "policy-planned",
            Mode::Decimal,
            t("step within the range; empty for the kit's smallest"),
            |block, at| match load_at(block, at) {
                Some(LoadPolicy::RisingByOutcome { planned, .. }) => step_typed(*planned),
                _ => String::new(),
            },
            |block, at, typed, unit| {
                let to = read_step(typed, unit)?;
                with_sets(block, at, |sets| {
                    if let LoadPolicy::RisingByOutcome { planned, .. } = &mut sets.load {
                        *planned = to;
                    }
                });
                Ok(())
            },
        ),
        hand.typed(
            at,
            "policy-large",
            Mode::Decimal,
            t("step at the top of the range; empty for the kit's smallest"),
            |block, at| match load_at(block, at) {
                Some(LoadPolicy::RisingByOutcome { large, .. }) => step_typed(*large),
                _ => String::new(),
            },
            |block, at, typed, unit| {
                let to = read_step(typed, unit)?;
                with_sets(block, at, |sets| {
                    if let LoadPolicy::RisingByOutcome { large, .. } = &mut sets.load {
                        *large = to;
                    }
                });
                Ok(())
            },
        ),
    ]
    .into_any()
}
