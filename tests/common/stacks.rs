//! Plates on a side as a stack, by trying everything: the reference of the plate plan. It shares no code with it.

use std::collections::BTreeMap;

/// Kinds of plates from the inside out.
pub type Stack = Vec<usize>;

/// Every order of every set of plates that has that mass, give or take a little; none where there are more than
/// `most`. A kind is its mass and how many there are.
pub fn orders(kinds: &[(i128, u8)], mass: i128, give: i128, most: usize) -> Option<Vec<Stack>> {
    let mut search = Search {
        kinds,
        give,
        left: kinds.iter().map(|kind| kind.1).collect(),
        stack: Vec::new(),
        found: Vec::new(),
        tries: most * 20,
    };
    search.fill(mass);
    (search.tries > 0 && search.found.len() <= most).then_some(search.found)
}

struct Search<'a> {
    kinds: &'a [(i128, u8)],
    give: i128,
    left: Vec<u8>,
    stack: Stack,
    found: Vec<Stack>,
    tries: usize,
}

impl Search<'_> {
    fn fill(&mut self, mass: i128) {
        if self.tries == 0 {
            return;
        }
        self.tries -= 1;
        if mass.abs() <= self.give {
            self.found.push(self.stack.clone());
            return;
        }
        for kind in 0..self.kinds.len() {
            let one = self.kinds[kind].0;
            if self.left[kind] > 0 && one <= mass + self.give {
                self.left[kind] -= 1;
                self.stack.push(kind);
                self.fill(mass - one);
                self.stack.pop();
                self.left[kind] += 1;
            }
        }
    }
}

/// Fewest plates moved from `start` over one stack of each list in turn. What two stacks share at their beginning
/// stays: so the nearest stack before is found by way of every beginning.
pub fn fewest_moves(start: &Stack, lists: &[Vec<Stack>]) -> usize {
    let mut here: BTreeMap<&[usize], usize> = BTreeMap::from([(&start[..], 0)]);
    for list in lists {
        let mut beginnings: BTreeMap<&[usize], usize> = BTreeMap::new();
        for (stack, moved) in &here {
            for kept in 0..=stack.len() {
                let total = moved + stack.len() - kept;
                let least = beginnings.entry(&stack[..kept]).or_insert(total);
                *least = total.min(*least);
            }
        }
        here = list
            .iter()
            .map(|stack| {
                let over = (0..=stack.len())
                    .filter_map(|kept| Some(beginnings.get(&stack[..kept])? + stack.len() - kept));
                (&stack[..], over.min().expect("all begin with nothing"))
            })
            .collect();
    }
    here.into_values().min().unwrap_or(0)
}
