//! Prints a sheet as the text that makes it.

use super::Known;
use super::print::print_block;
use super::print_sets::time;
use crate::sheet::{Group, Sheet};

/// The text that makes this sheet. What `known` says of its exercises is left out.
#[must_use]
pub fn print_sheet(sheet: &Sheet, known: Known) -> String {
    let mut out = format!("# {}\n", sheet.name.as_str());
    if let Some(minutes) = sheet.budget_minutes {
        out += &format!("budget {minutes} min\n");
    }
    for line in &sheet.warm_up {
        out += &format!("- {}\n", line.as_str());
    }
    if !sheet.notes.is_empty() {
        for line in sheet.notes.as_str().split('\n') {
            out += &format!("> {line}\n");
        }
    }
    let mut letters = ('A'..='Z').cycle();
    for group in &sheet.groups {
        out.push('\n');
        let marked = !matches!(group, Group::Straight(_));
        let letter = letters.by_ref().next().filter(|_| marked);
        for (index, block) in group.blocks().iter().enumerate() {
            if let Some(letter) = letter {
                out += &format!("{letter}{} ", index + 1);
            }
            out += &print_block(block, known);
            if index == 0 {
                out += &together(group);
            }
            out.push('\n');
        }
    }
    out
}

/// What the first line of a pair or circuit says of all.
fn together(group: &Group) -> String {
    let mut out = String::new();
    match group.between() {
        Some(between) if between.get() > 0 => out += &format!("; between {}", time(between)),
        _ => {}
    }
    if matches!(group, Group::Circuit { blocks, .. } if blocks.len() == 2) {
        out += "; circuit";
    }
    out
}
