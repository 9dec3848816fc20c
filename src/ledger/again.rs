//! What was done, as a sheet: so that it can be done again.

use super::record::{BlockRecord, DoneLine, SessionRecord};
use crate::say;
use crate::session::Amount;
use crate::sheet::{
    Block, BlockId, Group, LINE_CHARS_MAX, LINE_SETS_MAX, Line, LoadPolicy, RepTarget,
    SET_LINES_MAX, SetKind, Sets, Sheet, SheetId, SheetVersion, Target,
};
use crate::units::{Load, day};
use chrono::{DateTime, FixedOffset};
use uuid::Uuid;

/// A new sheet of what `record` did: its exercises, sets, reps and loads as they were done; tempo, rests, cues and
/// cautions as they were written on `written`, the sheet that it followed. None when no set was done.
///
/// Ramp-ups stay shares of the work load. Stages and clusters keep their target. Where a block has more runs of like sets
/// than a sheet holds lines, what is left over is left off. Blocks that were done in turn stay so, unless one was not done.
#[must_use]
pub fn again(
    record: &SessionRecord,
    written: &Sheet,
    id: SheetId,
    ids: &mut dyn FnMut() -> Uuid,
    now: DateTime<FixedOffset>,
) -> Option<Sheet> {
    let mut groups = Vec::new();
    for group in &written.groups {
        let of_group = |done: &&BlockRecord| {
            let here = |block: &Block| block.id == done.block.id;
            !done.lines.is_empty() && group.blocks().iter().any(here)
        };
        let done = record.blocks.iter().filter(of_group);
        let mut blocks: Vec<Block> = done.map(as_done).collect();
        for block in &mut blocks {
            block.id = BlockId(ids());
        }
        groups.extend(grouped(group, blocks));
    }
    let name = say!(
        "{sheet}, as on {day}",
        sheet = record.sheet_name,
        day = day(record.began)
    );
    let name: String = name.chars().take(LINE_CHARS_MAX).collect();
    let sheet = Sheet {
        id,
        version: SheetVersion(ids()),
        written: now,
        name: Line::new(&name).unwrap_or_else(|_| written.name.clone()),
        warm_up: written.warm_up.clone(),
        notes: written.notes.clone(),
        budget_minutes: written.budget_minutes,
        groups,
        settled: Vec::new(),
        written_for: None,
    };
    sheet.check().ok().map(|()| sheet)
}

/// Blocks as they were grouped, where all of them are there; else each on its own.
fn grouped(group: &Group, blocks: Vec<Block>) -> Vec<Group> {
    let whole = blocks.len() == group.blocks().len();
    match (group, <[Block; 2]>::try_from(blocks)) {
        (Group::Pair { between, .. }, Ok(pair)) => vec![Group::Pair {
            blocks: Box::new(pair),
            between: *between,
        }],
        (Group::Circuit { between, .. }, Ok(pair)) if whole => vec![Group::Circuit {
            blocks: pair.into(),
            between: *between,
        }],
        (Group::Circuit { between, .. }, Err(blocks)) if whole => vec![Group::Circuit {
            blocks,
            between: *between,
        }],
        (_, Ok(pair)) => pair.map(straight).into(),
        (_, Err(blocks)) => blocks.into_iter().map(straight).collect(),
    }
}

fn straight(block: Block) -> Group {
    Group::Straight(Box::new(block))
}

/// A run of like sets.
struct Run {
    sets: Sets,
    loads: Vec<Load>,
}

fn as_done(done: &BlockRecord) -> Block {
    let mut runs: Vec<Run> = Vec::new();
    for (at, line) in done.lines.iter().enumerate() {
        // A drop goes with the set that it follows.
        if line.key.drop > 0 {
            continue;
        }
        let drops = done.lines[at + 1..]
            .iter()
            .take_while(|next| next.key.drop > 0);
        let Some(sets) = sets_of(&done.block, line, drops.count()) else {
            continue;
        };
        let like = |run: &&mut Run| {
            let same = Sets {
                count: run.sets.count,
                ..sets.clone()
            };
            run.sets == same && run.sets.count < LINE_SETS_MAX
        };
        match runs.last_mut().filter(like) {
            Some(run) => {
                run.sets.count += 1;
                run.loads.extend(line.load);
            }
            None => runs.push(Run {
                sets,
                loads: line.load.into_iter().collect(),
            }),
        }
    }
    runs.truncate(SET_LINES_MAX);
    let work = runs.iter().filter(|run| run.sets.kind.is_work());
    let heaviest = work.flat_map(|run| &run.loads).max().copied();
    let has_load = done.block.basis.has_load();
    Block {
        sets: runs.into_iter().map(|run| run.written(has_load)).collect(),
        start: heaviest.filter(|_| has_load).or(done.block.start),
        ..done.block.clone()
    }
}

impl Run {
    fn written(self, has_load: bool) -> Sets {
        let mut sets = self.sets;
        let named = matches!(
            sets.kind,
            SetKind::Work | SetKind::ToFailure | SetKind::Cluster { .. } | SetKind::Drop { .. }
        );
        let mut loads = self.loads;
        if named && has_load && loads.len() == usize::from(sets.count) {
            // The last one of a list stays.
            while loads.len() > 1 && loads[loads.len() - 1] == loads[loads.len() - 2] {
                loads.pop();
            }
            sets.load = LoadPolicy::List(loads);
        }
        sets
    }
}

/// The set that was done as a line of one, before its load; none where the block has no such line.
fn sets_of(block: &Block, line: &DoneLine, drops: usize) -> Option<Sets> {
    let written = block.sets.get(usize::from(line.key.line))?;
    let kind = match &written.kind {
        SetKind::Drop { keep, .. } => match u8::try_from(drops) {
            Ok(drops @ 1..=5) => SetKind::Drop { drops, keep: *keep },
            _ => SetKind::Work,
        },
        kind => kind.clone(),
    };
    Some(Sets {
        target: target(&kind, &line.target, &line.amount),
        kind,
        count: 1,
        reserve: line.reserve.into_iter().collect(),
        load: written.load.clone(),
        tempo: written.tempo,
        rest: written.rest,
    })
}

/// What was done, as what is asked for.
fn target(kind: &SetKind, asked: &Target, amount: &Amount) -> Target {
    let whole = !matches!(kind, SetKind::Cluster { .. });
    // A drop set and a cluster are counted in reps.
    let counted = matches!(kind, SetKind::Cluster { .. } | SetKind::Drop { .. });
    match amount {
        Amount::Reps(_) | Amount::Sides { .. } if whole => {
            // "And more" stays so: as a fixed number it would end a set that goes on as long as it can.
            let as_asked = match asked {
                Target::Reps(RepTarget::AtLeast(_)) => RepTarget::at_least,
                _ => RepTarget::fixed,
            };
            let reps = amount.reps().and_then(|reps| as_asked(reps).ok());
            reps.map_or_else(|| asked.clone(), Target::Reps)
        }
        Amount::Timed(seconds) if !counted && seconds.get() > 0 => Target::Timed(*seconds),
        Amount::Distance(metres) if !counted => Target::Distance(*metres),
        _ => asked.clone(),
    }
}
