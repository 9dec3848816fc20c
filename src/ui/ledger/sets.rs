//! The sets of a session in words: what was done, and everything that is known about it.

use crate::ledger::{BlockRecord, DoneLine};
use crate::session::Done;
use crate::sheet::LoadBasis;
use crate::ui::floor::logged_line;
use crate::units::{Unit, clock};

/// What was done in a set, as it stands on its row.
pub fn done_words(line: &DoneLine, basis: &LoadBasis, unit: Unit) -> String {
    let done = Done {
        load: line.load,
        amount: line.amount.clone(),
        reserve: line.reserve,
    };
    logged_line(&done, basis, unit)
}

/// The facts about a set: kind, reserve, tempo, rest, proposal, earlier logs.
pub fn facts_of(line: &DoneLine, basis: &LoadBasis, unit: Unit) -> String {
    let mut facts = vec![line.kind.name().to_owned()];
    facts.extend(reserve(line));
    facts.extend(tempo(line));
    facts.extend(rest(line));
    facts.extend(proposal(line, unit));
    for (n, earlier) in line.earlier.iter().enumerate() {
        let word = if n == 0 {
            "first logged as"
        } else {
            "then corrected to"
        };
        facts.push(format!("{word} {}", logged_line(earlier, basis, unit)));
    }
    facts.join(" · ")
}

fn reserve(line: &DoneLine) -> Option<String> {
    match (line.reserve, line.reserve_asked) {
        (Some(left), Some(asked)) if left != asked => {
            Some(format!("{left} in reserve, {asked} asked"))
        }
        (Some(left), _) => Some(format!("{left} in reserve")),
        (None, Some(asked)) => Some(format!("{asked} in reserve asked, not said")),
        (None, None) => None,
    }
}

/// The tempo prescribed; where the set was begun by a tap, also how long it took.
fn tempo(line: &DoneLine) -> Option<String> {
    let took = line.lasted.map(|lasted| {
        format!(
            "took {lasted} s with the count-in, planned {} s",
            line.planned_seconds
        )
    });
    match (line.tempo, took) {
        (Some(tempo), Some(took)) => Some(format!("tempo {tempo}, {took}")),
        (Some(tempo), None) => Some(format!("tempo {tempo}")),
        (None, took) => took,
    }
}

fn rest(line: &DoneLine) -> Option<String> {
    let time = |seconds: u32| clock(i64::from(seconds));
    match (line.rest_taken, line.rest_asked) {
        (Some(taken), Some(asked)) => {
            Some(format!("rest {}, {} prescribed", time(taken), time(asked)))
        }
        (Some(taken), None) => Some(format!("rest {}", time(taken))),
        (None, Some(asked)) if asked > 0 => {
            Some(format!("rest not timed, {} prescribed", time(asked)))
        }
        (None, _) => None,
    }
}

fn proposal(line: &DoneLine, unit: Unit) -> Option<String> {
    let proposed = line.proposed?;
    Some(if Some(proposed) == line.load {
        "load as proposed".to_owned()
    } else {
        format!("proposed was {}", proposed.shown(unit))
    })
}

/// What was proposed for a block, with its because.
pub fn proposed(record: &BlockRecord, unit: Unit) -> Option<String> {
    let proposal = record.proposal.as_ref()?;
    let said = proposal.because.said(unit);
    Some(match proposal.load.map(|load| load.shown(unit)) {
        // Most reasons end in the load itself.
        Some(load) if !said.contains(&load) => format!("{load}: {said}"),
        _ => said,
    })
}
