//! The fewest moves from load to load, over all orders in which the plates may lie.
//!
//! A side is a stack: plates go on and come off at its outside. So the loads during which one plate lies on the side
//! are a run of neighbours, and of two plates one lies there for a part of the other's run, or their runs are apart. For
//! each run of loads and each base that stays under it there is a fewest number of moves: a load is there already, or
//! the run is parted in two that meet at the base again, or one more plate stays for the whole run.

use super::super::mass::Window;
use super::bases::{Bases, Step};

/// Moves of plates at one side.
pub(super) type Moves = u16;

/// More moves than any way has, and still far from the end of the numbers when two are added.
const NO_WAY: Moves = Moves::MAX / 4;

/// In which order plates may lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lying {
    /// A heavier plate never goes on outside of a lighter one.
    HeaviestInside,
    /// Any.
    Anyhow,
}

/// What becomes of the plates after the last load.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ending {
    /// They stay, and cost nothing more.
    Left,
    /// They come off.
    Cleared,
}

/// The fewest moves of every run of loads on every base.
pub(super) struct Ways<'a> {
    bases: &'a Bases,
    loads: &'a [Window],
    lying: Lying,
    ending: Ending,
    /// Run by run, and in it base by base.
    moves: Vec<Moves>,
}

impl<'a> Ways<'a> {
    /// Works them out. Of neighbouring `loads` no two are alike.
    pub(super) fn new(
        bases: &'a Bases,
        loads: &'a [Window],
        lying: Lying,
        ending: Ending,
    ) -> Ways<'a> {
        let runs = loads.len() * loads.len();
        let mut ways = Ways {
            bases,
            loads,
            lying,
            ending,
            moves: vec![NO_WAY; runs * bases.len()],
        };
        for length in 0..loads.len() {
            for first in 0..loads.len() - length {
                ways.run(first, first + length);
            }
        }
        ways
    }

    fn run(&mut self, first: usize, last: usize) {
        let lightest = self.loads[first..=last].iter().copied();
        let within = lightest
            .map(|load| self.bases.within(load))
            .min()
            .unwrap_or(0);
        let mut run = vec![NO_WAY; self.bases.len()];
        if first == last {
            run[self.bases.whole(self.loads[first])].fill(0);
        }
        for part in first..last {
            let before = &self.of(first, part)[..within];
            let after = &self.of(part + 1, last)[..within];
            for ((moves, before), after) in run.iter_mut().zip(before).zip(after) {
                *moves = (*moves).min(before + after);
            }
        }
        let each = self.each(last);
        for base in (0..within).rev() {
            let next = self.may_add(base).iter().map(|step| run[step.to]).min();
            let fewest = run[base].min(next.map_or(NO_WAY, |next| next + each));
            run[base] = fewest;
        }
        let at = self.at(first, last);
        self.moves[at..at + run.len()].copy_from_slice(&run);
    }

    fn at(&self, first: usize, last: usize) -> usize {
        (first * self.loads.len() + last) * self.bases.len()
    }

    fn of(&self, first: usize, last: usize) -> &[Moves] {
        &self.moves[self.at(first, last)..][..self.bases.len()]
    }

    /// Moves of one plate for a run that ends with that load: on, and off again unless nothing comes after.
    fn each(&self, last: usize) -> Moves {
        if last + 1 == self.loads.len() && self.ending == Ending::Left {
            1
        } else {
            2
        }
    }

    /// The plates that may go on outside of a base, by the bases that they lead to.
    fn may_add(&self, base: usize) -> &[Step] {
        let steps = self.bases.steps(base);
        match self.lying {
            Lying::Anyhow => steps,
            Lying::HeaviestInside => {
                let outside = self.bases.outside_of(base);
                let first = steps.partition_point(|step| step.kind < outside);
                &steps[first..]
            }
        }
    }

    /// Fewest moves from what lies on the side, with the way there: the kinds at each load, from the inside out.
    pub(super) fn from(&self, lies: &[usize]) -> (Moves, Vec<Vec<usize>>) {
        let start = Start::new(self, lies);
        let moves = start.fewest(0, lies.len());
        (moves, start.way())
    }

    /// The kinds at each load of a run, added to what is known; `side` holds the kinds of the base.
    fn lay(
        &self,
        (first, last): (usize, usize),
        base: usize,
        side: &mut Vec<usize>,
        laid: &mut Vec<Vec<usize>>,
    ) {
        let moves = self.of(first, last)[base];
        let stays = self
            .may_add(base)
            .iter()
            .find(|step| self.of(first, last)[step.to] + self.each(last) == moves);
        if let Some(step) = stays {
            side.push(step.kind);
            self.lay((first, last), step.to, side, laid);
            side.pop();
            return;
        }
        let parted = (first..last)
            .find(|&part| self.of(first, part)[base] + self.of(part + 1, last)[base] == moves);
        match parted {
            Some(part) => {
                self.lay((first, part), base, side, laid);
                self.lay((part + 1, last), base, side, laid);
            }
            None => laid.push(side.clone()),
        }
    }
}

/// The way from what lies on the side at the beginning: of it less and less is left, from the outside.
struct Start<'a> {
    ways: &'a Ways<'a>,
    lies: &'a [usize],
    /// The bases of its beginnings; none where the kit has no such plates left or no load is so heavy.
    bases: Vec<Option<usize>>,
    /// Fewest moves from a load on, while so many of its plates are left.
    fewest: Vec<Moves>,
}

/// What is done next while a number of the first plates is left.
enum Next {
    /// The outermost of them comes off.
    Off,
    /// They stay up to that load.
    Until(usize),
}

impl<'a> Start<'a> {
    fn new(ways: &'a Ways<'a>, lies: &'a [usize]) -> Start<'a> {
        let mut bases = vec![Some(0)];
        for &kind in lies {
            let under = bases.last().copied().flatten();
            bases.push(under.and_then(|base| {
                let mut steps = ways.bases.steps(base).iter();
                steps.find(|step| step.kind == kind).map(|step| step.to)
            }));
        }
        let rows = ways.loads.len() + 1;
        let mut start = Start {
            ways,
            lies,
            fewest: vec![NO_WAY; rows * bases.len()],
            bases,
        };
        for load in (0..rows).rev() {
            for left in 0..start.bases.len() {
                let at = load * start.bases.len() + left;
                start.fewest[at] = start.best(load, left).0;
            }
        }
        start
    }

    fn fewest(&self, load: usize, left: usize) -> Moves {
        self.fewest[load * self.bases.len() + left]
    }

    /// Fewest moves from a load on, and what is done first.
    fn best(&self, load: usize, left: usize) -> (Moves, Next) {
        let loads = self.ways.loads.len();
        if load == loads {
            let off = match self.ways.ending {
                Ending::Left => 0,
                Ending::Cleared => left as Moves,
            };
            return (off, Next::Until(loads));
        }
        let mut best = (NO_WAY, Next::Off);
        if let Some(base) = self.bases[left] {
            for last in (load..loads).rev() {
                let moves = self.ways.of(load, last)[base] + self.fewest(last + 1, left);
                if moves < best.0 {
                    best = (moves, Next::Until(last));
                }
            }
        }
        if left > 0 && self.fewest(load, left - 1) + 1 < best.0 {
            best = (self.fewest(load, left - 1) + 1, Next::Off);
        }
        best
    }

    fn way(&self) -> Vec<Vec<usize>> {
        let mut laid = Vec::with_capacity(self.ways.loads.len());
        let (mut load, mut left) = (0, self.lies.len());
        while load < self.ways.loads.len() {
            match (self.best(load, left).1, self.bases[left]) {
                (Next::Until(last), Some(base)) => {
                    let mut side = self.lies[..left].to_vec();
                    self.ways.lay((load, last), base, &mut side, &mut laid);
                    load = last + 1;
                }
                _ => left -= 1,
            }
        }
        laid
    }
}
