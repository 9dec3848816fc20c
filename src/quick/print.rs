//! Prints a block as the line that makes it. What the line would mean anyway is left out.

use super::Known;
use super::defaults::{Said, basis, default_rest, default_role, named_exercise, usual_basis};
use super::head::{EQUIPMENT, PATTERNS};
use super::print_sets::{after, sets, time};
use crate::sheet::{Block, Exercise, LoadBasis, Named, Progression, Reach, Role, SideMode};
use crate::words::small;

/// The line that makes this block. What `known` says of the exercise is left out.
#[must_use]
pub fn print_block(block: &Block, known: Known) -> String {
    let named = known(block.exercise.name.as_str());
    let mut parts: Vec<String> = block.sets.iter().map(sets).collect();
    loads(block, named.as_ref(), &mut parts);
    if let Some(tempo) = block.tempo {
        parts.push(format!("tempo {tempo}"));
    }
    if block.rest_after != block.rest {
        let (rest, then) = (time(block.rest), time(block.rest_after));
        parts.push(format!("rest {rest} then {then}"));
    } else if block.rest != default_rest(block.role) {
        parts.push(format!("rest {}", time(block.rest)));
    }
    match block.sides {
        SideMode::Both => {}
        SideMode::EachInTurn => parts.push("each side".to_owned()),
        SideMode::OneHolds => parts.push("one side holds".to_owned()),
    }
    if block.role != default_role(&block.sets) {
        parts.push(role(block.role).to_owned());
    }
    if block.progression != Progression::default() {
        parts.push(rule(&block.progression));
    }
    parts.extend(block.cues.iter().map(|cue| quoted(cue.as_str())));
    let cautions = block.cautions.iter();
    parts.extend(cautions.map(|caution| format!("! {}", text(caution.as_str()))));
    format!("{}: {}", head(&block.exercise, named), parts.join("; "))
}

fn head(exercise: &Exercise, named: Option<Named>) -> String {
    let name = exercise.name.as_str();
    let found = named.map(|named| named.exercise);
    let kept = found
        .as_ref()
        .is_none_or(|found| found.name == exercise.name);
    let meant = found.unwrap_or_else(|| named_exercise(exercise.name.clone()));
    let mut head = if kept { text(name) } else { quoted(name) };
    let mut details = Vec::new();
    if meant.equipment != exercise.equipment {
        let words = EQUIPMENT.iter();
        details.extend(words.filter(|it| it.0 == exercise.equipment).map(|it| it.1));
    }
    if meant.pattern != exercise.pattern {
        let words = PATTERNS.iter();
        details.extend(words.filter(|it| it.0 == exercise.pattern).map(|it| it.1));
    }
    let id = format!("id {}", exercise.id);
    if meant.id != exercise.id {
        details.push(&id);
    }
    if !details.is_empty() {
        head += &format!(" ({})", details.join(", "));
    }
    head
}

/// What the load is added to and the load to start from, in the shortest words that mean this block's.
fn loads(block: &Block, named: Option<&Named>, parts: &mut Vec<String>) {
    let usual = usual_basis(named, &block.exercise);
    let meant = |said: Said| {
        let equipment = block.exercise.equipment;
        basis(said, usual.clone(), equipment) == block.basis
    };
    let start = block.start.map(crate::units::Load::plain);
    let in_one = match (&block.basis, &start) {
        (LoadBasis::External, Some(load)) if meant(Said::Load) => Some(load.clone()),
        (LoadBasis::BodyMassPlus, Some(load)) if meant(Said::Added) => Some(format!("+{load}")),
        (LoadBasis::BodyMassMinus, Some(load)) => Some(format!("−{load} assistance")),
        (LoadBasis::BodyMassShare(share), Some(load)) => {
            Some(format!("{} body +{load}", share.plain()))
        }
        _ => None,
    };
    if let Some(both) = in_one {
        parts.push(both);
        return;
    }
    if !meant(Said::Nothing) {
        parts.push(match &block.basis {
            LoadBasis::External => "external".to_owned(),
            LoadBasis::BodyMassPlus => "body mass".to_owned(),
            LoadBasis::BodyMassMinus => "assistance".to_owned(),
            LoadBasis::BodyMassShare(share) => format!("{} body", share.plain()),
            LoadBasis::Band(label) => format!("band {}", text(label.as_str())),
            LoadBasis::Unloaded => "no load".to_owned(),
        });
    }
    parts.extend(start.map(|load| format!("start {load}")));
}

fn role(role: Role) -> &'static str {
    match role {
        Role::Power => "power",
        Role::Strength => "strength",
        Role::Hypertrophy => "hypertrophy",
        Role::Pump => "pump",
    }
}

fn rule(rule: &Progression) -> String {
    match rule {
        Progression::Double { reach, up, down } => {
            let reach = match reach {
                Reach::AllSets => "",
                Reach::LastSet => " last set",
            };
            format!(
                "double{reach}{}{}",
                after(" up", *up),
                after(" down", *down)
            )
        }
        Progression::TwoForTwo { up } => format!("2-for-2{}", after(" up", *up)),
        Progression::Fixed { up } => format!("fixed{}", after(" up", *up)),
        Progression::ShareOfE1rm { share } => format!("follow {} e1RM", share.plain()),
        Progression::ByReserve { aim, step } => {
            format!("by reserve {aim}{}", after(" step", *step))
        }
        Progression::AsWritten => "as written".to_owned(),
    }
}

/// The text bare where it cannot be taken for anything else, else in quotation marks.
fn text(text: &str) -> String {
    let mut chars = text.chars();
    let plain = |c: char| c.is_alphanumeric() || " -'’/.,&".contains(c);
    let starts_with_a_letter = chars.next().is_some_and(char::is_alphabetic);
    let looks_like_a_mark = text.chars().nth(1).is_some_and(|c| c.is_ascii_digit());
    let looks_like_a_budget = small(text).starts_with("budget");
    if starts_with_a_letter && chars.all(plain) && !looks_like_a_mark && !looks_like_a_budget {
        text.to_owned()
    } else {
        quoted(text)
    }
}

fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for c in text.chars() {
        if matches!(c, '"' | '\\') {
            out.push('\\');
        }
        out.push(c);
    }
    out.push('"');
    out
}
