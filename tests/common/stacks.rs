//! Plates on a side as a stack, by trying everything: the reference of the plate plan. It shares no code with it.

use std::collections::{BTreeMap, BTreeSet};

/// Kinds of plates from the inside out.
pub type Stack = Vec<usize>;

/// Moves from one stack to another: what lies outside of their common beginning comes off and goes on.
pub fn moves(from: &Stack, to: &Stack) -> usize {
    let common = from.iter().zip(to).take_while(|(a, b)| a == b).count();
    from.len() + to.len() - 2 * common
}

/// Every order of every set of plates with that mass; none where there are more than `most`.
pub fn orders(kinds: &[(u128, u8)], mass: u128, most: usize) -> Option<Vec<Stack>> {
    let mut found = Vec::new();
    let mut left: Vec<u8> = kinds.iter().map(|kind| kind.1).collect();
    let mut looked_at = 0;
    search(
        kinds,
        mass,
        &mut left,
        &mut Vec::new(),
        &mut found,
        &mut looked_at,
        most,
    );
    (looked_at <= 20 * most && found.len() <= most).then_some(found)
}

fn search(
    kinds: &[(u128, u8)],
    mass: u128,
    left: &mut [u8],
    stack: &mut Stack,
    found: &mut Vec<Stack>,
    looked_at: &mut usize,
    most: usize,
) {
    *looked_at += 1;
    if *looked_at > 20 * most || found.len() > most {
        return;
    }
    if mass == 0 {
        found.push(stack.clone());
        return;
    }
    for kind in 0..kinds.len() {
        if left[kind] > 0 && kinds[kind].0 <= mass {
            left[kind] -= 1;
            stack.push(kind);
            search(
                kinds,
                mass - kinds[kind].0,
                left,
                stack,
                found,
                looked_at,
                most,
            );
            stack.pop();
            left[kind] += 1;
        }
    }
}

/// Fewest moves from `start` over one stack of each list in turn. Among all stacks at one load the nearest is found
/// over their common beginnings: up to a beginning, and out from it again.
pub fn fewest_moves(start: &Stack, lists: &[Vec<Stack>]) -> usize {
    let mut here: BTreeMap<Stack, usize> = BTreeMap::from([(start.clone(), 0)]);
    for list in lists {
        let mut beginnings: BTreeMap<&[usize], usize> = BTreeMap::new();
        for (stack, cost) in &here {
            for kept in 0..=stack.len() {
                let total = cost + stack.len() - kept;
                let least = beginnings.entry(&stack[..kept]).or_insert(total);
                *least = total.min(*least);
            }
        }
        let there: BTreeSet<&Stack> = list.iter().collect();
        let next: BTreeMap<Stack, usize> = there
            .into_iter()
            .map(|stack| {
                let over = (0..=stack.len()).filter_map(|kept| {
                    Some(beginnings.get(&stack[..kept])? + stack.len() - kept)
                });
                (stack.clone(), over.min().expect("all begin with nothing"))
            })
            .collect();
        here = next;
    }
    here.into_values().min().unwrap_or(0)
}
