//! The bases of a run of loads: every set of plates that can lie on a side and be filled up to one of the loads.

use super::super::mass::{Fine, Window};
use crate::order;

/// Plates of one mass, as one side may carry them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Kind {
    /// Mass of one.
    pub mass: Fine,
    /// How many there are for one side, at most 31.
    pub count: u8,
}

/// Place in a list; [`NONE`] where there is none.
type Place = u16;
/// No place.
const NONE: Place = Place::MAX;

/// Bits that hold how many plates of one kind a base has.
const BITS: usize = 5;

/// A base while the list is made.
#[derive(Clone, Copy)]
struct Draft {
    /// The counts of all kinds, the heaviest in the highest bits.
    counts: u128,
    mass: Fine,
    plates: u16,
}

/// A base with one more plate.
#[derive(Debug, Clone, Copy)]
pub(super) struct Step {
    /// The kind of the plate.
    pub kind: usize,
    /// The base with it.
    pub to: usize,
}

/// The bases, lightest first; the first is the empty side.
#[derive(Debug)]
pub(super) struct Bases {
    masses: Vec<Fine>,
    /// The steps from each base, one after the other, by kind.
    steps: Vec<Step>,
    /// Where those of each base begin.
    begin: Vec<usize>,
    /// For each base the lightest kind on it, 0 for the empty side: what may go on where the heaviest is inside.
    lightest: Vec<u8>,
}

impl Bases {
    /// Every base of `kinds` (heaviest first) that can be filled up to one of `loads`, with at most `plates` plates;
    /// none where more than `most` would have to be looked at.
    pub(super) fn new(kinds: &[Kind], loads: &[Window], plates: u16, most: usize) -> Option<Bases> {
        let heaviest = loads.iter().map(|load| load.high).max().unwrap_or(0);
        let drafts = drafts(kinds, heaviest, plates, most)?;
        let more = one_more(&drafts, kinds);
        let useful = useful(&drafts, &more, kinds.len(), loads);
        let mut kept: Vec<usize> = (0..drafts.len()).filter(|&at| useful[at]).collect();
        order::by_key(&mut kept, |&at| drafts[at].mass);
        let mut place = vec![NONE; drafts.len()];
        for (to, &at) in kept.iter().enumerate() {
            place[at] = to as Place;
        }
        let mut steps = Vec::with_capacity(kept.len() * kinds.len());
        let mut begin = Vec::with_capacity(kept.len() + 1);
        for &at in &kept {
            begin.push(steps.len());
            for (kind, &next) in more[at * kinds.len()..][..kinds.len()].iter().enumerate() {
                if next != NONE && place[usize::from(next)] != NONE {
                    let to = usize::from(place[usize::from(next)]);
                    steps.push(Step { kind, to });
                }
            }
        }
        begin.push(steps.len());
        Some(Bases {
            masses: kept.iter().map(|&at| drafts[at].mass).collect(),
            steps,
            begin,
            lightest: kept
                .iter()
                .map(|&at| lightest(drafts[at].counts, kinds.len()))
                .collect(),
        })
    }

    /// How many there are.
    pub(super) fn len(&self) -> usize {
        self.masses.len()
    }

    /// The bases with one more plate, the heaviest kind first.
    pub(super) fn steps(&self, base: usize) -> &[Step] {
        &self.steps[self.begin[base]..self.begin[base + 1]]
    }

    /// The first kind, heaviest first, that lies outside of all that is on the base, where the heaviest goes inside.
    pub(super) fn outside_of(&self, base: usize) -> usize {
        usize::from(self.lightest[base])
    }

    /// How many bases are not heavier than a load.
    pub(super) fn within(&self, load: Window) -> usize {
        self.masses.partition_point(|&mass| mass <= load.high)
    }

    /// The bases that are a whole load.
    pub(super) fn whole(&self, load: Window) -> std::ops::Range<usize> {
        self.masses.partition_point(|&mass| mass < load.low)..self.within(load)
    }
}

fn shift(kind: usize, kinds: usize) -> usize {
    BITS * (kinds - 1 - kind)
}

fn count(counts: u128, kind: usize, kinds: usize) -> u8 {
    (counts >> shift(kind, kinds)) as u8 & 31
}

fn lightest(counts: u128, kinds: usize) -> u8 {
    let on = (0..kinds).rposition(|kind| count(counts, kind, kinds) > 0);
    on.unwrap_or(0) as u8
}

/// All sets of plates up to a mass, by rising counts.
fn drafts(kinds: &[Kind], heaviest: Fine, plates: u16, most: usize) -> Option<Vec<Draft>> {
    let mut drafts = vec![Draft {
        counts: 0,
        mass: 0,
        plates: 0,
    }];
    for (at, kind) in kinds.iter().enumerate() {
        let one = 1_u128 << shift(at, kinds.len());
        let mut next = Vec::with_capacity(drafts.len() * 2);
        for mut draft in drafts {
            for _ in 0..=kind.count {
                next.push(draft);
                draft.counts += one;
                draft.mass += kind.mass;
                draft.plates += 1;
                if draft.mass > heaviest || draft.plates > plates {
                    break;
                }
            }
            if next.len() > most {
                return None;
            }
        }
        drafts = next;
    }
    Some(drafts)
}

/// For each draft and kind the place of the draft with one more: both rise, so one walk finds all.
fn one_more(drafts: &[Draft], kinds: &[Kind]) -> Vec<Place> {
    let mut more = vec![NONE; drafts.len() * kinds.len()];
    for (at, kind) in kinds.iter().enumerate() {
        let one = 1_u128 << shift(at, kinds.len());
        let mut ahead = 0;
        for (place, draft) in drafts.iter().enumerate() {
            if count(draft.counts, at, kinds.len()) == kind.count {
                continue;
            }
            let wanted = draft.counts + one;
            while ahead < drafts.len() && drafts[ahead].counts < wanted {
                ahead += 1;
            }
            if drafts
                .get(ahead)
                .is_some_and(|other| other.counts == wanted)
            {
                more[place * kinds.len() + at] = ahead as Place;
            }
        }
    }
    more
}

/// Whether each draft is a whole load or becomes one by more plates.
fn useful(drafts: &[Draft], more: &[Place], kinds: usize, loads: &[Window]) -> Vec<bool> {
    let mut useful = vec![false; drafts.len()];
    for at in (0..drafts.len()).rev() {
        let whole = || loads.iter().any(|load| load.holds(drafts[at].mass));
        let next = &more[at * kinds..][..kinds];
        useful[at] = next
            .iter()
            .any(|&next| next != NONE && useful[usize::from(next)])
            || whole();
    }
    useful
}
