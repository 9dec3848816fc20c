//! What the person reads: steps with their times, and failures that end with a next step.

use std::fmt::{self, Display};
use std::time::{Duration, Instant};

/// Something that went wrong, together with what to do about it. There is no failure without a next step.
#[derive(Debug)]
pub struct Failure {
    /// What went wrong and where, one sentence or a few lines.
    pub what: String,
    /// What the reader does next.
    pub next: String,
}

/// What every fallible part of xtask returns.
pub type Outcome<T> = Result<T, Failure>;

impl Failure {
    /// A failure from its two halves.
    pub fn new(what: impl Into<String>, next: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            next: next.into(),
        }
    }
}

impl Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "xtask: {}\n  next: {}", self.what, self.next)
    }
}

/// Turns any displayable error into a [`Failure`].
pub trait OrNext<T> {
    /// Puts `what` before the error's own words and adds the next step.
    fn or_next(self, what: impl Display, next: impl Into<String>) -> Outcome<T>;
}

impl<T, E: Display> OrNext<T> for Result<T, E> {
    fn or_next(self, what: impl Display, next: impl Into<String>) -> Outcome<T> {
        self.map_err(|error| Failure::new(format!("{what}: {error}"), next))
    }
}

/// One plain line of news inside a step.
pub fn note(line: impl Display) {
    println!("   {line}");
}

/// Runs one named step and prints its name before and its time after.
pub fn step<T>(title: &str, work: impl FnOnce() -> Outcome<T>) -> Outcome<T> {
    println!("\n== {title}");
    let begun = Instant::now();
    let outcome = work();
    let took = span(begun.elapsed());
    match &outcome {
        Ok(_) => println!("   {title}: done in {took}"),
        Err(_) => println!("   {title}: FAILED after {took}"),
    }
    outcome
}

/// A duration as a person says it: `0.4 s`, `12 s`, `3 min 05 s`.
pub fn span(time: Duration) -> String {
    let seconds = time.as_secs();
    if seconds >= 60 {
        format!("{} min {:02} s", seconds / 60, seconds % 60)
    } else if seconds >= 10 {
        format!("{seconds} s")
    } else {
        format!("{:.1} s", time.as_secs_f64())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spans_read_like_a_person_says_them() {
        assert_eq!(span(Duration::from_millis(440)), "0.4 s");
        assert_eq!(span(Duration::from_secs(12)), "12 s");
        assert_eq!(span(Duration::from_secs(185)), "3 min 05 s");
    }

    #[test]
    fn a_failure_prints_its_next_step() {
        let failure: Failure = Err::<(), _>("no such file")
            .or_next("reading Cargo.lock", "run it in the project")
            .unwrap_err();
        assert_eq!(
            failure.to_string(),
            "xtask: reading Cargo.lock: no such file\n  next: run it in the project"
        );
    }
}
