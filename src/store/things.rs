//! What a merge did to things that have versions: sheets, exercises of one's own, programmes.

use super::kept::{Kept, Record};
use crate::order::Map;
use crate::words::t_in;
use uuid::Uuid;

/// What a merge did to things that have versions. How many versions came, nobody asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Things {
    /// That were not there, or were removed there and are back.
    pub new: usize,
    /// That were there and of which a version that came counts now.
    pub changed: usize,
    /// Of which only versions came that do not count: what is there is newer, or removed later.
    pub older: usize,
    /// That were there with all versions.
    pub known: usize,
    /// That were there and go: they were removed elsewhere.
    pub removed: usize,
    /// That were not there either and of which the removal is noted.
    pub noted: usize,
    /// That stay away: they were removed here after the versions that came.
    pub left_out: usize,
}

/// Things by their ids: the newest version of each, and whether the thing stands, as that is no note of a removal.
pub(super) type Standing = Map<String, (Uuid, bool)>;

impl Things {
    /// By what there was, what there is now, what came, and what of it was new.
    pub(super) fn of(before: &Standing, now: &Standing, came: &Standing, new: &Standing) -> Things {
        let mut things = Things::default();
        let stands = |all: &Standing, id| all.get(id).is_some_and(|(_, stands)| *stands);
        for (id, (_, came_standing)) in came.iter() {
            let newest = |all: &Standing| all.get(id).map(|(version, _)| *version);
            let counts = newest(new) == newest(now);
            let count = match (stands(before, id), stands(now, id)) {
                (_, true) if new.get(id).is_none() => &mut things.known,
                (false, false) if new.get(id).is_none() => continue,
                (false, false) if !counts && *came_standing => &mut things.left_out,
                (true, true) | (false, false) if !counts => &mut things.older,
                (false, true) => &mut things.new,
                (true, true) => &mut things.changed,
                (true, false) => &mut things.removed,
                (false, false) => &mut things.noted,
            };
            *count += 1;
        }
        things
    }

    /// What is told of them, each count with its word. `known` is how many of the known ones are told, `left_out` the word for
    /// what stays away.
    pub(super) fn counts<'a>(&self, known: usize, left_out: &'a str) -> [(usize, &'a str); 6] {
        [
            (self.new, t_in("import", "new")),
            (self.changed, t_in("import", "changed")),
            (self.older, t_in("import", "with older versions")),
            (known, t_in("import", "known")),
            (self.removed, t_in("import", "removed")),
            (self.left_out, left_out),
        ]
    }

    /// Of how many something is written, be it a version that does not count.
    pub(super) fn told(&self) -> usize {
        self.new + self.changed + self.older + self.removed + self.noted + self.left_out
    }
}

/// What the records are versions of; of each the newest comes last and says whether it stands.
pub(super) fn standing<R: Record>(kept: &Kept<R>, of: impl Fn(&R) -> (String, bool)) -> Standing {
    let mut standing = Standing::new();
    for record in kept.iter() {
        let (id, stands) = of(record);
        standing.insert(id, (record.shown_id(), stands));
    }
    standing
}
