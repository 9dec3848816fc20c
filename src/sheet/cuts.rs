//! What to shorten or cut where a sheet takes longer than it may: the least first, and of those the last.

use super::block::{Block, BlockId, Role};
use super::group::{Group, Sheet};
use super::length::GroupTime;
use crate::order;
use crate::units::Seconds;
use std::cmp::Reverse;

/// How much of a block goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Off {
    /// So many of its sets, its last ones; ramp-ups stay, and at least one set that counts as work.
    Sets(u8),
    /// All of it.
    Whole,
}

/// One block to shorten or to cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cut {
    /// The block.
    pub block: BlockId,
    /// How much of it goes.
    pub off: Off,
    /// Seconds that it saves, the cuts before it made already; never 0.
    pub saves: u64,
}

/// The cuts that bring `sheet` within `budget_minutes`, in the order in which they are made; none when it is within.
///
/// Pump goes before muscle-building, that before strength, that before power; of one role the last block first. A block
/// loses its last sets first, no more than needed, and goes as a whole where one work set is still too much. So the
/// last cut is always needed. One work set of the foremost block stays: a sheet can be over its budget after all cuts.
///
/// Common practice, no source: what matters most is done first and kept longest.
#[must_use]
pub fn cuts(sheet: &Sheet, budget_minutes: u16, change_over: Seconds) -> Vec<Cut> {
    let budget = u64::from(budget_minutes) * 60;
    let mut plan = Plan::new(sheet, change_over);
    let mut cuts = Vec::new();
    // A second round finds what saves time only after other blocks went: a partner with the shorter rest, say.
    loop {
        let before = cuts.len();
        for block in plan.least_first() {
            if plan.seconds() <= budget {
                return cuts;
            }
            cuts.extend(plan.cut(block, budget));
        }
        if cuts.len() == before {
            return cuts;
        }
    }
}

/// The sheet with `cuts` made, one after the other. What does not fit it is passed over; its last block always stays.
/// Ids and time of writing are those of `sheet`.
#[must_use]
pub fn apply(sheet: &Sheet, cuts: &[Cut]) -> Sheet {
    let mut sheet = sheet.clone();
    for cut in cuts {
        let last = sheet.blocks().count() == 1;
        sheet.groups = sheet
            .groups
            .iter()
            .filter_map(|group| match cut.off {
                Off::Sets(sets) => Some(shortened(group, cut.block, sets)),
                Off::Whole if last => Some(group.clone()),
                Off::Whole => without(group, cut.block),
            })
            .collect();
    }
    sheet.forget_unknown();
    sheet
}

/// How many sets of a block count as work.
fn work_sets(block: &Block) -> u8 {
    let work = block.sets.iter().filter(|sets| sets.kind.is_work());
    work.fold(0, |sum, sets| sum.saturating_add(sets.count))
}

/// The group with `sets` fewer sets of `id`, at least one work set left.
fn shortened(group: &Group, id: BlockId, sets: u8) -> Group {
    let mut group = group.clone();
    let blocks = group.blocks_mut().iter_mut();
    for block in blocks.filter(|block| block.id == id) {
        let mut left = sets.min(work_sets(block).saturating_sub(1));
        let lines = block.sets.iter_mut().rev();
        for line in lines.filter(|line| line.kind.is_work()) {
            let off = left.min(line.count);
            line.count -= off;
            left -= off;
        }
        block.sets.retain(|line| line.count > 0);
    }
    group
}

/// The group without `id`; none when nothing is left of it.
fn without(group: &Group, id: BlockId) -> Option<Group> {
    let mut left: Vec<Block> = group.blocks().to_vec();
    left.retain(|block| block.id != id);
    if left.len() == group.blocks().len() {
        return Some(group.clone());
    }
    match group {
        Group::Circuit { between, .. } if left.len() > 1 => Some(Group::Circuit {
            blocks: left,
            between: *between,
        }),
        _ => left.pop().map(|block| Group::Straight(Box::new(block))),
    }
}

/// A group of the plan with its time, so that a trial computes only the group it changes.
struct Timed {
    group: Group,
    within: u64,
    rest_after: u64,
}

impl Timed {
    fn of(group: Group) -> Timed {
        let time = GroupTime::of(&group);
        Timed {
            within: time.seconds(),
            rest_after: time.rest_after,
            group,
        }
    }
}

/// What is left of the sheet.
struct Plan {
    groups: Vec<Timed>,
    change_over: u64,
}

impl Plan {
    fn new(sheet: &Sheet, change_over: Seconds) -> Plan {
        Plan {
            groups: sheet.groups.iter().cloned().map(Timed::of).collect(),
            change_over: u64::from(change_over.get()),
        }
    }

    fn seconds(&self) -> u64 {
        self.sum(self.groups.iter())
    }

    fn sum<'a>(&self, groups: impl Iterator<Item = &'a Timed>) -> u64 {
        let mut seconds = 0;
        let mut between = 0;
        for group in groups {
            seconds += between + group.within;
            between = group.rest_after + self.change_over;
        }
        seconds
    }

    /// The seconds with the group at `at` replaced.
    fn seconds_with(&self, at: usize, new: Option<&Timed>) -> u64 {
        let groups = self.groups.iter().enumerate();
        self.sum(groups.filter_map(|(place, group)| if place == at { new } else { Some(group) }))
    }

    fn blocks(&self) -> impl Iterator<Item = &Block> {
        self.groups.iter().flat_map(|timed| timed.group.blocks())
    }

    /// The blocks in the order in which they are cut.
    fn least_first(&self) -> Vec<BlockId> {
        let mut blocks: Vec<(u8, usize, BlockId)> = self
            .blocks()
            .enumerate()
            .map(|(place, block)| (worth(block.role), place, block.id))
            .collect();
        order::by_key(&mut blocks, |(worth, place, _)| (*worth, Reverse(*place)));
        blocks.into_iter().map(|(_, _, id)| id).collect()
    }

    /// Makes the cut of one block that the budget asks for, if it saves anything.
    fn cut(&mut self, id: BlockId, budget: u64) -> Option<Cut> {
        let at = self
            .groups
            .iter()
            .position(|timed| timed.group.blocks().iter().any(|block| block.id == id))?;
        let group = &self.groups[at].group;
        let now = self.seconds();
        let most = group
            .blocks()
            .iter()
            .filter(|block| block.id == id)
            .map(|block| work_sets(block).saturating_sub(1))
            .sum::<u8>();
        let fewer = |sets| {
            let timed = Timed::of(shortened(group, id, sets));
            let seconds = self.seconds_with(at, Some(&timed));
            (Off::Sets(sets), Some(timed), seconds)
        };
        let shortest = (most > 0).then(|| fewer(most));
        let fits = |seconds: u64| seconds <= budget;
        let (off, timed, seconds) = match shortest {
            Some((_, _, seconds)) if fits(seconds) => {
                (1..=most).map(fewer).find(|(_, _, s)| fits(*s))?
            }
            shortest => {
                let whole = (self.blocks().count() > 1).then(|| {
                    let timed = without(group, id).map(Timed::of);
                    let seconds = self.seconds_with(at, timed.as_ref());
                    (Off::Whole, timed, seconds)
                });
                let saving = |trial: &(Off, Option<Timed>, u64)| trial.2 < now;
                whole.filter(saving).or(shortest.filter(saving))?
            }
        };
        match timed {
            Some(timed) => self.groups[at] = timed,
            None => drop(self.groups.remove(at)),
        }
        Some(Cut {
            block: id,
            off,
            saves: now - seconds,
        })
    }
}

/// How long a role is kept; the least goes first.
#[must_use]
pub fn worth(role: Role) -> u8 {
    match role {
        Role::Pump => 0,
        Role::Hypertrophy => 1,
        Role::Strength => 2,
        Role::Power => 3,
    }
}
