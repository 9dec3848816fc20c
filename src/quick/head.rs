//! Reads the head of a line: the mark of a pair or circuit, the exercise, and what is said of it in parentheses.

use super::cursor::{Cursor, Read};
use super::defaults::{named_exercise, usual_basis};
use super::{Known, Mark};
use crate::sheet::{Equipment, Exercise, ExerciseId, LoadBasis, Pattern};
use crate::words::t;

/// Equipment and its word.
pub const EQUIPMENT: [(Equipment, &str); 7] = [
    (Equipment::Barbell, "barbell"),
    (Equipment::Dumbbell, "dumbbell"),
    (Equipment::Handle, "handle"),
    (Equipment::Stack, "stack"),
    (Equipment::Band, "band"),
    (Equipment::Body, "body"),
    (Equipment::Other, "other"),
];

/// Patterns and their words.
pub const PATTERNS: [(Pattern, &str); 10] = [
    (Pattern::Squat, "squat"),
    (Pattern::Hinge, "hinge"),
    (Pattern::PushAcross, "push across"),
    (Pattern::PushUpward, "push upward"),
    (Pattern::PullAcross, "pull across"),
    (Pattern::PullDownward, "pull downward"),
    (Pattern::Carry, "carry"),
    (Pattern::Explosive, "explosive"),
    (Pattern::Trunk, "trunk"),
    (Pattern::SingleJoint, "single joint"),
];

/// `A1` with a space, a point or a parenthesis behind it.
pub(super) fn mark(c: &mut Cursor) -> Option<Mark> {
    let start = c.at;
    let letter = c.peek().filter(char::is_ascii_alphabetic)?;
    c.at += 1;
    let digit = c.bare_digit();
    c.at += 1;
    if let Some(place @ 1..) = digit
        && c.mark_ends()
    {
        c.eat(&['.', ')']);
        return Some(Mark {
            letter: letter.to_ascii_uppercase(),
            place,
        });
    }
    c.at = start;
    None
}

/// The exercise and what its load usually means, up to and with the colon. A bare name takes the spelling of the known
/// exercise; a quoted one stays as written.
pub(super) fn exercise(c: &mut Cursor, known: Known) -> Read<(Exercise, Option<LoadBasis>)> {
    let name_at = c.at;
    let is_quoted = c.at_quote();
    let name = if is_quoted {
        c.quoted()?
    } else {
        let text = c.until(&[':', '(']);
        if text.trim().is_empty() {
            return Err(c.fault_at(name_at, t("the name of an exercise")));
        }
        c.line_of(&text, name_at)?
    };
    let named = known(name.as_str());
    let mut exercise = match named.as_ref().map(|named| named.exercise.clone()) {
        Some(found) if is_quoted => Exercise { name, ..found },
        Some(found) => found,
        None => named_exercise(name),
    };
    if c.eat(&['(']) {
        details(c, &mut exercise)?;
    }
    if c.eat(&[':']) {
        let usual = usual_basis(named.as_ref(), &exercise);
        Ok((exercise, usual))
    } else {
        Err(c.fault(t(": after the exercise")))
    }
}

fn details(c: &mut Cursor, exercise: &mut Exercise) -> Read<()> {
    loop {
        detail(c, exercise)?;
        if c.eat(&[')']) {
            return Ok(());
        }
        if !c.eat(&[',']) {
            return Err(c.fault(t(") after what is said of the exercise")));
        }
    }
}

fn detail(c: &mut Cursor, exercise: &mut Exercise) -> Read<()> {
    if let Some((equipment, _)) = EQUIPMENT.iter().find(|(_, word)| c.word(word)) {
        exercise.equipment = *equipment;
    } else if let Some((pattern, _)) = PATTERNS.iter().find(|(_, word)| c.word(word)) {
        exercise.pattern = *pattern;
    } else if c.word("id") {
        c.peek();
        let at = c.at;
        let text = c.until(&[',', ')', ' ']);
        exercise.id = ExerciseId::new(&text)
            .map_err(|_| c.fault_at(at, t("an id of 1 to 64 of a–z, 0–9 and hyphens")))?;
    } else {
        return Err(c.fault(t(
            "equipment like barbell, a pattern like squat, or id and an id",
        )));
    }
    Ok(())
}
