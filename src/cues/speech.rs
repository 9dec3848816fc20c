//! What is said aloud, as text: the count of a set, and what comes after a rest. Who says it is the device's matter.

use super::timeline::{Cue, Phase, Span, Timeline};
use crate::say;
use crate::sheet::{LoadBasis, RepTarget, SideMode, Stage, Target};
use crate::units::{Load, Seconds, Unit};
use crate::words::{t, t_in};

/// How long before its end a rest says again what comes next. The mark of the last ten seconds is heard first, so
/// that the voice does not cover it.
const AGAIN_MS: u32 = 9_300;
/// A rest shorter than this says it once.
const TWICE_FROM_MS: u32 = 30_000;

/// What is counted aloud during a set.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Aloud {
    /// Nothing.
    #[default]
    Nothing,
    /// The number of each repetition.
    Reps,
    /// The seconds of each phase.
    Seconds,
}

impl Aloud {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Aloud; 3] = [Aloud::Nothing, Aloud::Reps, Aloud::Seconds];
}

/// Words with their time.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Saying {
    /// When they begin, in milliseconds from the start of the timeline.
    pub at_ms: u32,
    /// The words.
    pub words: String,
}

/// What is said during a set: the count-in and the last seconds of a hold in numbers, the other side by its name, and
/// each repetition or each second, as wished. In order of time, each later than the one before.
#[must_use]
pub fn sayings(timeline: &Timeline, aloud: Aloud) -> Vec<Saying> {
    if aloud == Aloud::Nothing {
        return Vec::new();
    }
    let mut said = Vec::new();
    let mut before = None;
    for span in &timeline.phases {
        let rep = (span.side, span.portion, span.stage, span.rep);
        let begins = before.replace(rep) != Some(rep);
        match span.what {
            Phase::CountIn => count_down(span, u32::MAX, &mut said),
            Phase::ChangeOver => say(span.from_ms, t("other side").to_owned(), &mut said),
            Phase::Hold => hold(span, aloud, &mut said),
            Phase::Pause | Phase::Rest => {}
            _ if aloud == Aloud::Reps => {
                if begins {
                    say(span.from_ms, rep_words(timeline, span), &mut said);
                }
            }
            _ => count_up(timeline, span, &mut said),
        }
    }
    said
}

fn say(at_ms: u32, words: String, said: &mut Vec<Saying>) {
    said.push(Saying { at_ms, words });
}

/// The seconds that are left, from so many on.
fn count_down(span: &Span, from: u32, said: &mut Vec<Saying>) {
    let seconds = (span.to_ms - span.from_ms) / 1000;
    for left in (1..=seconds.min(from)).rev() {
        say(span.to_ms - left * 1000, left.to_string(), said);
    }
}

/// The seconds of a phase, from 1; a phase as fast as possible is a single "go".
fn count_up(timeline: &Timeline, span: &Span, said: &mut Vec<Saying>) {
    let at = timeline
        .cues
        .binary_search_by_key(&span.from_ms, |cued| cued.at_ms);
    let cue = at.ok().and_then(|at| timeline.cues.get(at));
    if matches!(cue, Some(cued) if matches!(cued.cue, Cue::Rep { fast: true, .. })) {
        say(span.from_ms, t_in("spoken", "go").to_owned(), said);
        return;
    }
    for passed in 0..(span.to_ms - span.from_ms) / 1000 {
        say(span.from_ms + passed * 1000, (passed + 1).to_string(), said);
    }
}

/// A hold: by the seconds all of them; by the repetitions every tenth, and the last three backwards.
fn hold(span: &Span, aloud: Aloud, said: &mut Vec<Saying>) {
    let seconds = (span.to_ms - span.from_ms) / 1000;
    if aloud == Aloud::Seconds {
        for passed in 1..seconds {
            say(span.from_ms + passed * 1000, passed.to_string(), said);
        }
        return;
    }
    for passed in (10..seconds.saturating_sub(3)).step_by(10) {
        say(span.from_ms + passed * 1000, passed.to_string(), said);
    }
    count_down(span, 3, said);
}

/// The number of a repetition, and that it is the last one where its cue says so.
fn rep_words(timeline: &Timeline, span: &Span) -> String {
    let last = timeline.cues.iter().any(|cued| {
        cued.at_ms == span.from_ms
            && matches!(
                cued.cue,
                Cue::Rep { last_rep: true, .. } | Cue::Partial { last_rep: true }
            )
    });
    if last {
        say!("{rep}, last", rep = span.rep)
    } else {
        span.rep.to_string()
    }
}

/// When a rest says what comes next: at its start, and once more ten seconds before its end where it is long enough.
#[must_use]
pub fn announcements(rest: Seconds, words: &str) -> Vec<Saying> {
    let whole = rest.millis();
    let again = (whole >= TWICE_FROM_MS).then(|| whole - AGAIN_MS);
    let times = [0].into_iter().chain(again);
    times
        .map(|at_ms| Saying {
            at_ms,
            words: words.to_owned(),
        })
        .collect()
}

/// What comes next, to be heard: "next: 62.5 kilograms, 5 to 7 reps"; with the name of the exercise where it is
/// another one than before.
#[must_use]
pub fn next_words(
    exercise: Option<&str>,
    load: Option<Load>,
    basis: &LoadBasis,
    unit: Unit,
    target: &Target,
    sides: SideMode,
) -> String {
    let target = target_words(target);
    let target = if sides == SideMode::Both {
        target
    } else {
        say!("{target} a side", target)
    };
    let parts = [
        exercise.map(str::to_owned),
        load_words(load, basis, unit),
        Some(target),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    say!("next: {what}", what = parts.join(", "))
}

fn load_words(load: Option<Load>, basis: &LoadBasis, unit: Unit) -> Option<String> {
    if let Some(band) = basis.band() {
        return Some(band);
    }
    let load = load.filter(|_| basis.has_load())?;
    let figure = load.figure(unit);
    let one = figure == "1";
    let word = t(match (unit, one) {
        (Unit::Kg, true) => "kilogram",
        (Unit::Kg, false) => "kilograms",
        (Unit::Lb, true) => "pound",
        (Unit::Lb, false) => "pounds",
    });
    let said = format!("{figure} {word}");
    Some(match basis {
        LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_) if load.is_zero() => {
            t("body mass").to_owned()
        }
        basis => basis.does(said),
    })
}

fn counted(n: u16, one: &str, many: &str) -> String {
    let word = if n == 1 { one } else { many };
    format!("{n} {word}")
}

fn reps_words(reps: &RepTarget, one: &str, many: &str) -> String {
    match reps {
        RepTarget::Fixed(n) => counted(n.get(), one, many),
        RepTarget::Range(low, high) => say!(
            "{low} to {high}",
            low,
            high = counted(high.get(), one, many)
        ),
        RepTarget::AtLeast(n) => say!("at least {what}", what = counted(n.get(), one, many)),
    }
}

fn plain_reps(reps: &RepTarget) -> String {
    reps_words(reps, t_in("spoken", "rep"), t_in("spoken", "reps"))
}

fn time_words(seconds: Seconds) -> String {
    let (minutes, seconds) = (seconds.get() / 60, seconds.get() % 60);
    let minutes_said = counted(minutes, t("minute"), t("minutes"));
    let seconds_said = counted(seconds, t("second"), t("seconds"));
    match (minutes, seconds) {
        (0, _) => seconds_said,
        (_, 0) => minutes_said,
        _ => format!("{minutes_said} {seconds_said}"),
    }
}

fn target_words(target: &Target) -> String {
    match target {
        Target::Reps(reps) => plain_reps(reps),
        Target::Timed(seconds) => say!("hold {time}", time = time_words(*seconds)),
        Target::Distance(metres) => counted(metres.get(), t("metre"), t("metres")),
        Target::Stages(stages) => {
            let said: Vec<String> = stages.iter().map(stage_words).collect();
            said.join(t(", then "))
        }
    }
}

fn stage_words(stage: &Stage) -> String {
    match stage {
        Stage::Hold { seconds } => say!("hold {time}", time = time_words(*seconds)),
        Stage::Reps { reps, .. } => plain_reps(reps),
        Stage::Partials { reps } => {
            reps_words(reps, t_in("spoken", "partial"), t_in("spoken", "partials"))
        }
    }
}

#[cfg(test)]
#[path = "speech_tests.rs"]
mod tests;
