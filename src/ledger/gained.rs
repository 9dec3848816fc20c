//! What was gained or lost over weeks, told apart from noise.

use super::record::{BlockRecord, SessionRecord};
use super::summary::{ExerciseSummary, performance};
use crate::order::Map;
use crate::say;
use crate::sheet::ExerciseId;
use crate::strength::{Because, Change, Curve, Told, change_since, moved_alike};
use chrono::TimeDelta;

/// Over how many days at least a change is looked for, and twice as many at most: what was known longer ago than that was
/// before a break, and a change since is no course of weeks (common practice, no source).
pub const CHANGE_DAYS: i64 = 28;

/// A change of strength in one exercise that is more than noise.
#[derive(Debug, Clone, PartialEq)]
pub struct Gained {
    /// Name of the exercise.
    pub name: String,
    /// The change as a share: 0.05 is 5 % up.
    pub by: f64,
    /// The smallest change that could have been told from noise, as a share.
    pub detectable: f64,
    /// Over how many days.
    pub days: i64,
}

/// The changes over the last weeks, [`CHANGE_DAYS`] or a little more, in the exercises of `record` that are more than noise, in the order
/// of its sheet. `summaries` hold this session already.
#[must_use]
pub fn gained(
    record: &SessionRecord,
    summaries: &Map<ExerciseId, ExerciseSummary>,
    curve: Curve,
) -> Vec<Gained> {
    let since = record.began - TimeDelta::days(CHANGE_DAYS);
    let mut seen: Vec<&ExerciseId> = Vec::new();
    let mut gained = Vec::new();
    for block in record.blocks.iter().filter(|block| !block.lines.is_empty()) {
        let exercise = &block.block.exercise;
        if seen.contains(&&exercise.id) {
            continue;
        }
        seen.push(&exercise.id);
        let change = summaries.get(&exercise.id).and_then(|summary| {
            let alike = moved_alike(&summary.performances, &block.block);
            change_since(alike, curve, since)
        });
        let told = |change: &Change| match change.told {
            _ if change.days > 2 * CHANGE_DAYS => false,
            Told::Noise => false,
            Told::Down => !lightened(block) && !as_prescribed(record, block),
            Told::Up => true,
        };
        if let Some(change) = change.filter(told) {
            gained.push(Gained {
                name: exercise.said(),
                by: change.by,
                detectable: change.detectable,
                days: change.days,
            });
        }
    }
    gained
}

/// Whether the app itself made the load of the block light: what was done with it does not show weakness.
fn lightened(block: &BlockRecord) -> bool {
    let because = block.proposal.as_ref().map(|proposal| &proposal.because);
    matches!(
        because,
        Some(Because::AfterBreak { .. } | Because::Deload { .. } | Because::Lightened { .. })
    )
}

/// Whether every work set of the block reached what was asked for, at the load proposed or a harder one: a load that is light
/// since a break stays so for weeks, and reps inside the range are as many as were wanted, no measure of what could be done.
/// A set to the limit is one.
fn as_prescribed(record: &SessionRecord, block: &BlockRecord) -> bool {
    let assists = block.block.basis.assists();
    let sets = performance(record, block).sets;
    let mut work = (block.lines.iter().zip(&sets)).filter(|(_, set)| set.work);
    work.all(|(line, set)| {
        let no_easier = match (line.load, line.proposed) {
            (Some(load), Some(proposed)) if assists => load <= proposed,
            (Some(load), Some(proposed)) => load >= proposed,
            _ => false,
        };
        no_easier && set.reps >= set.low && !set.to_limit
    })
}

impl Gained {
    /// The change in one sentence.
    #[must_use]
    pub fn sentence(&self) -> String {
        let percent = |share: f64| (share.abs() * 100.0).round() as i64;
        let (name, days) = (&self.name, self.days);
        let (by, bound) = (percent(self.by), percent(self.detectable));
        if self.by > 0.0 {
            say!(
                "{name}: {by} % stronger over {days} days, more than noise (from {bound} % on it can be told)",
                name,
                by,
                days,
                bound
            )
        } else {
            say!(
                "{name}: {by} % weaker over {days} days, more than noise (from {bound} % on it can be told)",
                name,
                by,
                days,
                bound
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sentence_says_how_much_and_from_where_on_it_counts() {
        let gained = Gained {
            name: "Front squat".to_owned(),
            by: 0.123,
            detectable: 0.08,
            days: 30,
        };
        assert_eq!(
            gained.sentence(),
            "Front squat: 12 % stronger over 30 days, more than noise (from 8 % on it can be told)"
        );
        let lost = Gained { by: -0.2, ..gained };
        assert!(lost.sentence().contains("20 % weaker"));
    }
}
