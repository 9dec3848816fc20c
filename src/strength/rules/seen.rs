//! What a rule sees of one earlier session.

use super::super::because::Because;
use super::super::history::{Performance, SetResult};
use super::super::ladder::Ladder;
use super::super::moved::Wish;
use super::super::set_because::ShareOf;
use super::super::set_load::SetToLoad;
use super::super::unfed::Unfed;
use crate::kit::Kit;
use crate::sheet::{Block, LoadPolicy, SetKind, Sets, Step};
use crate::units::{Load, Share};
use rust_decimal::Decimal;

/// The work sets of one session with their work load.
///
/// The work load is that of the first work set: from it the loads of rising and falling sets follow, so a step of it
/// moves them all. Whether the reps were reached is asked of every work set at its own load. Where the block plans one
/// load and the lifter went up on the way, the work load is the hardest that was done with the reps asked for, and the
/// easier sets before it were on the way there. What was tried at that load or a harder one counts, wherever it stands:
/// else a rep more there could give less. Where the first sets are shares of the top, the work load is what they are
/// shares of.
pub(in super::super) struct Seen<'a> {
    /// The work load.
    pub at: Load,
    /// The work sets from the first that is no easier than the work load on, in order, never empty.
    work: Vec<&'a SetResult>,
    /// How many work sets were done, those on the way among them, and how many of the plan were not.
    done: (usize, u8),
}

impl<'a> Seen<'a> {
    /// The work sets of a session; none where no work set has a load, or only those whose load is no share of the work load.
    pub(in super::super) fn new(
        performance: &'a Performance,
        block: &Block,
        kit: &Kit,
    ) -> Option<Seen<'a>> {
        let sets = performance.sets.iter();
        let mut work: Vec<&SetResult> = sets.filter(|set| set.work && set.load.is_some()).collect();
        let done = (work.len(), performance.left);
        work.retain(|set| !goes_by_maximum(set, block));
        let mut at = work.first()?.load?;
        if plans_one_load(block) {
            let reached = work.iter().filter(|set| set.reps >= set.low);
            at = reached.filter_map(|set| set.load).fold(at, |at, load| {
                if is_harder(block, load, at) { load } else { at }
            });
            let easier =
                |set: &&&SetResult| set.load.is_some_and(|load| is_harder(block, at, load));
            let on_the_way = work.iter().take_while(easier).count();
            work.drain(..on_the_way);
        } else if let Some(whole) = whole_of_shares(&work, performance.left, block, kit) {
            at = whole;
        }
        Some(Seen { at, work, done })
    }

    /// The work sets in order.
    pub(super) fn work(&self) -> &[&'a SetResult] {
        &self.work
    }

    /// The first work set.
    pub(super) fn first(&self) -> &'a SetResult {
        self.work[0]
    }

    /// The last work set.
    pub(super) fn last(&self) -> &'a SetResult {
        self.work[self.work.len() - 1]
    }

    /// The work set with the fewest reps of those that are below the bottom of their range.
    pub(in super::super) fn missed(&self) -> Option<&'a SetResult> {
        let missed = self.work.iter().filter(|set| set.reps < set.low);
        missed.copied().min_by_key(|set| set.reps)
    }

    /// True where a work set was a cluster, whose reps are those of all its portions.
    pub(super) fn has_cluster(&self) -> bool {
        self.work
            .iter()
            .any(|set| set.unfed == Some(Unfed::Cluster))
    }

    /// The easiest load at which not one rep was done.
    pub(super) fn not_one_rep(&self, ladder: &Ladder) -> Option<Load> {
        let missed = self.work.iter().filter(|set| set.reps.get() == 0);
        let loads = missed.filter_map(|set| set.load);
        loads.reduce(|a, b| ladder.easier_of(a, b))
    }

    /// The work sets that ask for as many reps as `like`.
    pub(super) fn asked_like(&self, like: &SetResult) -> Vec<&'a SetResult> {
        let asked = |set: &SetResult| (set.low, set.top);
        let alike = self.work.iter().copied();
        alike.filter(|set| asked(set) == asked(like)).collect()
    }

    /// The least and the most that the work sets were done with.
    pub(super) fn span(&self) -> [Load; 2] {
        self.span_of(&self.work)
    }

    /// The same of some of them, the first of which has a load.
    pub(super) fn span_of(&self, sets: &[&SetResult]) -> [Load; 2] {
        let loads = sets.iter().filter_map(|set| set.load);
        loads.fold(
            [sets[0].load.unwrap_or(self.at); 2],
            |[least, most], load| [least.min(load), most.max(load)],
        )
    }

    /// What the last work set was done with, as a span.
    pub(super) fn last_load(&self) -> [Load; 2] {
        [self.last().load.unwrap_or(self.at); 2]
    }

    /// From which load to which the work sets were made easier, though the block does not plan that.
    ///
    /// Reps reached with less load than planned, or than was tried before them, do not earn a step up. After a load that the kit
    /// cannot make the nearest on the safe side is no less.
    pub(in super::super) fn lightened(&self, block: &Block, ladder: &Ladder) -> Option<[Load; 2]> {
        let falls_by_plan = policies(block).any(|policy| {
            !matches!(
                policy,
                LoadPolicy::Same | LoadPolicy::Rising(_) | LoadPolicy::RisingByOutcome { .. }
            )
        });
        if falls_by_plan {
            return None;
        }
        let loads = self.work.iter().filter_map(|set| set.load);
        let is_less = |load, than| ladder.is_harder(ladder.keep(than).unwrap_or(than), load);
        if !plans_one_load(block) {
            let easier = loads.filter(|&load| is_less(load, self.at));
            return Some([self.at, easier.reduce(|a, b| ladder.easier_of(a, b))?]);
        }
        // The hardest so far, and the easiest since.
        let mut from = self.at;
        let mut down_to = None;
        for load in loads {
            if ladder.is_harder(load, from) {
                (from, down_to) = (load, None);
            } else if is_less(load, from) {
                down_to = Some(down_to.map_or(load, |least| ladder.easier_of(least, load)));
            }
        }
        Some([from, down_to?])
    }
}

/// Where the block begins with shares of the top, what the work sets say it was: of the largest share, up to the next load that
/// the kit makes, as the share was taken down to one; or what the sheet begins with, which may lie between two loads that are
/// looked for, where just that gives what was done. Where some of `left` sets were not done and the shares differ, it is not
/// known which set had which: then the hardest that was done, on the safe side.
fn whole_of_shares(work: &[&SetResult], left: u8, block: &Block, kit: &Kit) -> Option<Load> {
    let first = block.sets.iter().find(|sets| is_plain(sets))?;
    let LoadPolicy::ShareOfTop(shares) = &first.load else {
        return None;
    };
    let known = left == 0 || shares.len() == 1;
    let of = |at: usize| shares.get(at).or(shares.last()).copied();
    let each = work.iter().take(usize::from(first.count)).enumerate();
    let each: Vec<(Share, Load)> = each
        .filter_map(|(at, set)| Some((of(at)?, set.load?)))
        .collect();
    if !known {
        let loads = each.into_iter().map(|(_, load)| load);
        return loads.reduce(|a, b| if is_harder(block, b, a) { b } else { a });
    }
    let largest = each.iter().copied();
    let (share, load) = largest.reduce(|a, b| if b.0 > a.0 { b } else { a })?;
    let on = block.exercise.equipment;
    let whole = match (share == Share::percent(100), block.basis.assists()) {
        (true, _) => None,
        (false, true) => kit.next_below(on, load),
        (false, false) => kit.at_or_above(on, load.times(Decimal::ONE / share.factor())),
    };
    let whole = whole.unwrap_or(load);
    let gives = |whole: Load| {
        let as_done =
            |(share, load): &(Share, Load)| at_share(block, kit, *share, whole) == Some(*load);
        each.iter().all(as_done)
    };
    let start = block
        .start
        .and_then(|start| Ladder::new(block, kit, None).keep(start));
    let start = start.filter(|start| !gives(whole) && gives(*start));
    Some(start.unwrap_or(whole))
}

/// What a set is done with that has this share of `whole`.
fn at_share(block: &Block, kit: &Kit, share: Share, whole: Load) -> Option<Load> {
    let set = SetToLoad {
        block,
        base: Some(whole),
        light: None,
        done: &[],
        maximum: None.into(),
        ladder: Ladder::new(block, kit, Some(whole)),
    };
    set.share(ShareOf::Base, share, whole).load()
}

/// True for a set whose load is a share of the maximum though the work load is another line's: what comes of it moves the
/// estimate and says nothing of the work load. It is known by the reps that no other line asks for.
pub(in super::super) fn goes_by_maximum(set: &SetResult, block: &Block) -> bool {
    let asks = |sets: &&Sets| {
        let asked = sets.target.plain_reps().map(|asked| sets.kind.whole(asked));
        asked.is_some_and(|asked| (asked.low(), asked.top()) == (set.low, set.top))
    };
    let mut asking = block.sets.iter().filter(|sets| is_plain(sets));
    let first = asking.next().is_some_and(|sets| asks(&sets));
    let mut others = asking.filter(asks).peekable();
    let any = others.peek().is_some();
    !first && any && others.all(|sets| matches!(sets.load, LoadPolicy::ShareOfE1rm(_)))
}

/// True where the block plans one load for all its plain work sets.
fn plans_one_load(block: &Block) -> bool {
    policies(block).all(|policy| *policy == LoadPolicy::Same)
}

/// True where the first load is the harder one.
fn is_harder(block: &Block, load: Load, than: Load) -> bool {
    match block.basis.assists() {
        true => load < than,
        false => load > than,
    }
}

/// How the loads of the block's plain work sets run.
fn policies(block: &Block) -> impl Iterator<Item = &LoadPolicy> {
    let counted = block.sets.iter().filter(|sets| is_plain(sets));
    counted.map(|sets| &sets.load)
}

fn is_plain(sets: &Sets) -> bool {
    matches!(
        sets.kind,
        SetKind::Work | SetKind::Cluster { .. } | SetKind::ToFailure
    )
}

/// What a rule says, or the same load again where it would step up although the sets were made easier midway.
pub(in super::super) fn unless_lightened(
    because: Because,
    seen: &Seen<'_>,
    block: &Block,
    ladder: &Ladder,
) -> Because {
    let up = because
        .moved()
        .is_some_and(|moved| moved.wish == Wish::Harder);
    match seen.lightened(block, ladder) {
        Some([from, down_to]) if up => {
            ladder.because(seen.at, Wish::Same, Step::Smallest, |moved| {
                Because::Lightened {
                    tried: Some(from).filter(|from| *from != seen.at),
                    down_to,
                    moved,
                }
            })
        }
        _ => because,
    }
}

/// What a rule says, or the same load again where it would step up although not every work set was done: a session that
/// was ended early, a set that was passed over. Sets that are left out are no sets at the top.
pub(in super::super) fn unless_cut_short(
    because: Because,
    seen: &Seen<'_>,
    ladder: &Ladder,
) -> Because {
    let up = because
        .moved()
        .is_some_and(|moved| moved.wish == Wish::Harder);
    let (done, left) = seen.done;
    if !up || left == 0 {
        return because;
    }
    let done = u8::try_from(done).unwrap_or(u8::MAX);
    ladder.because(seen.at, Wish::Same, Step::Smallest, |moved| {
        Because::CutShort {
            done,
            planned: done.saturating_add(left),
            moved: moved.over(seen.span()),
        }
    })
}
