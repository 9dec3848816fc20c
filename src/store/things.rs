//! What a merge did to things that have versions: sheets, exercises of one's own, programmes.

use super::kept::{Kept, Record};
use crate::order::Map;

/// What a merge did to things that have versions. How many versions came, nobody asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Things {
    /// That were not there, or were removed there and are back.
    pub new: usize,
    /// That were there and gain versions.
    pub changed: usize,
    /// That were there with all versions.
    pub known: usize,
    /// That were there and go: they were removed elsewhere.
    pub removed: usize,
    /// That were not there either and of which the removal is noted.
    pub noted: usize,
}

/// Things by their ids, and whether each stands: its newest version is no note of a removal.
pub(super) type Standing = Map<String, bool>;

impl Things {
    /// By what there was, what there is now, what came, and what of it was new.
    pub(super) fn of(before: &Standing, now: &Standing, came: &Standing, new: &Standing) -> Things {
        let mut things = Things::default();
        let stands = |all: &Standing, id| all.get(id).copied().unwrap_or(false);
        for (id, _) in came.iter() {
            let count = match (stands(before, id), stands(now, id)) {
                (_, true) if new.get(id).is_none() => &mut things.known,
                (false, false) if new.get(id).is_none() => continue,
                (false, true) => &mut things.new,
                (true, true) => &mut things.changed,
                (true, false) => &mut things.removed,
                (false, false) => &mut things.noted,
            };
            *count += 1;
        }
        things
    }

    /// What of them is another than before.
    pub(super) fn told(&self) -> usize {
        self.new + self.changed + self.removed + self.noted
    }
}

/// What the records are versions of; of each the newest comes last and says whether it stands.
pub(super) fn standing<R: Record>(kept: &Kept<R>, of: impl Fn(&R) -> (String, bool)) -> Standing {
    let mut standing = Standing::new();
    for (id, stands) in kept.iter().map(of) {
        standing.insert(id, stands);
    }
    standing
}
