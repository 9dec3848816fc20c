//! What of a set counts for bests, told from what was asked for and what was logged.

use super::built::reps;
use stanchion::ledger::{BlockRecord, DoneLine, Much};
use stanchion::session::Amount;
use stanchion::sheet::{LoadBasis, SetKind, Target};
use stanchion::units::{Load, Metres, Seconds};

/// What a row counts at most of the stages of a set together.
pub const REPS_MAX: u32 = 500;

/// Sets that count for bests: (load, what is counted, how many of it), in order.
pub fn counting(block: &BlockRecord) -> Vec<(Load, Kind, u32)> {
    let basis = &block.block.basis;
    let lines = block.lines.iter();
    lines
        .filter_map(|line| {
            let (kind, count) = counted(line)?;
            let load = match basis {
                LoadBasis::External => line.load?,
                LoadBasis::Band(_) | LoadBasis::Unloaded => Load::ZERO,
                _ => line.load.unwrap_or(Load::ZERO),
            };
            (count > 0).then_some((load, kind, count))
        })
        .collect()
}

/// What is counted of a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    Reps,
    Staged,
    Held,
    Carried,
}

fn counted(line: &DoneLine) -> Option<(Kind, u32)> {
    if !matches!(line.kind, SetKind::Work | SetKind::ToFailure) {
        return None;
    }
    let reps = line.amount.full_reps().min(REPS_MAX);
    match (&line.target, &line.amount) {
        (_, Amount::Stages(_)) => Some((Kind::Staged, reps)),
        (Target::Stages(_), Amount::Reps(_) | Amount::Sides { .. }) => Some((Kind::Staged, reps)),
        (Target::Stages(_), _) => None,
        (_, Amount::Timed(time)) => Some((Kind::Held, u32::from(time.get()))),
        (_, Amount::Distance(way)) => Some((Kind::Carried, u32::from(way.get()))),
        (Target::Reps(_), _) => Some((Kind::Reps, reps)),
        (Target::Timed(_) | Target::Distance(_), _) => None,
    }
}

pub fn kind_of(much: Much) -> Kind {
    match much {
        Much::Reps(_) => Kind::Reps,
        Much::Staged(_) => Kind::Staged,
        Much::Held(_) => Kind::Held,
        Much::Carried(_) => Kind::Carried,
    }
}

pub fn so_much(kind: Kind, count: i64) -> Much {
    match kind {
        Kind::Reps => Much::Reps(reps(count)),
        Kind::Staged => Much::Staged(reps(count)),
        Kind::Held => Much::Held(Seconds::saturating(count)),
        Kind::Carried => Much::Carried(Metres::saturating(count)),
    }
}
