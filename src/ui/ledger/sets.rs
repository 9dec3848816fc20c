//! The sets of a session in words: what was done, and everything that is known about it.

use crate::ledger::{BlockRecord, DoneLine};
use crate::say;
use crate::session::Done;
use crate::sheet::LoadBasis;
use crate::ui::floor::logged_line;
use crate::units::{Unit, clock};
use crate::words::t;

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
    facts.extend(proposal(line, basis, unit));
    for (n, earlier) in line.earlier.iter().enumerate() {
        let logged = logged_line(earlier, basis, unit);
        facts.push(if n == 0 {
            say!("first logged as {logged}", logged)
        } else {
            say!("then corrected to {logged}", logged)
        });
    }
    facts.join(" · ")
}

fn reserve(line: &DoneLine) -> Option<String> {
    match (line.reserve, line.reserve_asked) {
        (Some(left), Some(asked)) if left != asked => {
            Some(say!("{left} in reserve, {asked} asked", left, asked))
        }
        (Some(left), _) => Some(say!("{left} in reserve", left)),
        (None, Some(asked)) => Some(say!("{asked} in reserve asked, not said", asked)),
        (None, None) => None,
    }
}

/// The tempo prescribed; where the set was begun by a tap, also how long it took.
fn tempo(line: &DoneLine) -> Option<String> {
    let took = line.lasted.map(|lasted| {
        say!(
            "took {lasted} s with the count-in, planned {planned} s",
            lasted,
            planned = line.planned_seconds
        )
    });
    match (line.tempo, took) {
        (Some(tempo), Some(took)) => Some(say!("tempo {tempo}, {took}", tempo, took)),
        (Some(tempo), None) => Some(say!("tempo {tempo}", tempo)),
        (None, took) => took,
    }
}

fn rest(line: &DoneLine) -> Option<String> {
    let time = |seconds: u32| clock(i64::from(seconds));
    match (line.rest_taken, line.rest_asked) {
        (Some(taken), Some(asked)) => Some(say!(
            "rest {taken}, {asked} prescribed",
            taken = time(taken),
            asked = time(asked)
        )),
        (Some(taken), None) => Some(say!("rest {taken}", taken = time(taken))),
        (None, Some(asked)) if asked > 0 => {
            Some(say!("{asked} of rest prescribed", asked = time(asked)))
        }
        (None, _) => None,
    }
}

fn proposal(line: &DoneLine, basis: &LoadBasis, unit: Unit) -> Option<String> {
    let proposed = line.proposed?;
    Some(if Some(proposed) == line.load {
        t("load as proposed").to_owned()
    } else {
        say!("proposed was {load}", load = basis.told(proposed, unit))
    })
}

/// What was proposed for a block, with its because.
pub fn proposed(record: &BlockRecord, unit: Unit) -> Option<String> {
    let proposal = record.proposal.as_ref()?;
    Some(proposal.said(unit, &record.proposed_on))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::SessionRecord;
    use crate::session::Amount;
    use crate::units::Reps;

    #[test]
    fn a_line_says_how_many_each_side_did_at_first() {
        let file = crate::store::read(include_str!("../../../tests/golden/v1-hands.json")).unwrap();
        let session = file.sessions.values().next().unwrap();
        let record = SessionRecord::from_events(&session.events()).unwrap();
        let (_, line) = record.lines().next().unwrap();
        let mut line = line.clone();
        let sides =
            |first, second| Amount::of_sides(Reps::saturating(first), Reps::saturating(second));
        line.earlier = vec![Done {
            load: Some(crate::units::Load::whole_kg(7)),
            amount: sides(5, 3),
            reserve: None,
        }];
        let facts = facts_of(&line, &LoadBasis::External, Unit::Kg);
        assert!(
            facts.contains("first logged as 5 and 3 reps at 7 kg"),
            "{facts}"
        );
    }
}
