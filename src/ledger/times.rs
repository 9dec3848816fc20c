//! How long a session and its sets took, by the clocks of its events.

use crate::heat::{Category, heat_index};
use crate::order::Map;
use crate::session::{COUNT_IN_SECONDS, Event, Moment, Slot, State, What, silence_ms};
use crate::sheet::SetKey;

/// What the clocks say of a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct SetTimes {
    /// Seconds of rest before it.
    pub(super) rest_taken: Option<u32>,
    /// Seconds of rest before it as prescribed, stretched where the heat made it so.
    pub(super) rest_asked: Option<u32>,
    /// Milliseconds from its start to the tap that stopped its cues, or else to the one that logged it, the count-in
    /// among them.
    pub(super) lasted_ms: Option<u64>,
}

/// A set that was logged before the end, as the clocks have it.
pub(super) struct LoggedSet<'a> {
    pub(super) event: &'a Event,
    pub(super) set: SetKey,
    /// When it was begun, where that was told.
    pub(super) begun: Option<Moment>,
    /// When its cues were stopped, where they were; the log came later then.
    stopped: Option<Moment>,
    /// What was noted of the air by then.
    pub(super) heat: Category,
    /// True of the first after a pause: what was before is no rest and no change-over.
    pub(super) after_pause: bool,
}

impl LoggedSet<'_> {
    /// Its slot, where this event counts: merged histories may log a set twice, and one of the two does.
    pub(super) fn slot<'s>(&self, state: &'s State) -> Option<&'s Slot> {
        let slot = state.slot(self.set)?;
        let logged = slot.logged()?;
        (logged.event == self.event.id).then_some(slot)
    }
}

/// A start of a set, and the stop of its cues.
struct Start {
    set: SetKey,
    begun: Moment,
    stopped: Option<Moment>,
}

impl Start {
    /// Stopped at `now` with or without something of it heard. None where the count-in was not over: nobody lifted yet, so
    /// what is logged later was begun without a word. Past the count-in a stop is how a set ends that was over early.
    fn stopped(self, now: Moment, heard: bool) -> Option<Start> {
        let counted_in = now.since(&self.begun) > u64::from(COUNT_IN_SECONDS) * 1000;
        (heard || counted_in).then_some(Start {
            stopped: Some(now),
            ..self
        })
    }
}

/// The sets that were logged while the session was under way, in their order.
///
/// Of several starts the last before the log counts: whoever stops and starts again does the set anew, and what went before
/// was rest.
pub(super) fn logged_sets<'a>(counting: &[&'a Event]) -> Vec<LoggedSet<'a>> {
    let mut sets = Vec::new();
    let mut started: Option<Start> = None;
    let mut heat = Category::None;
    let mut after_pause = false;
    let mut last: Option<Moment> = None;
    for event in while_under_way(counting) {
        let now = event.moment();
        if last.is_some_and(|last| silence_ms(&last, &now) > 0) {
            (after_pause, started) = (true, None);
        }
        last = Some(now);
        match &event.what {
            What::AirNoted { air } => heat = Category::of(heat_index(*air)),
            What::SetStarted { set } => {
                started = Some(Start {
                    set: *set,
                    begun: now,
                    stopped: None,
                });
            }
            What::SetStopped { heard, .. } => {
                started = started.and_then(|start| start.stopped(now, heard.is_some()));
            }
            What::Resumed => (after_pause, started) = (true, None),
            What::SetDone { set, .. } => {
                let start = started.take().filter(|start| start.set == *set);
                sets.push(LoggedSet {
                    event,
                    set: *set,
                    begun: start.as_ref().map(|start| start.begun),
                    stopped: start.and_then(|start| start.stopped),
                    heat,
                    after_pause: std::mem::take(&mut after_pause),
                });
            }
            _ => {}
        }
    }
    sets
}

/// The times of each set that was logged before the end. What is added to an ended session has none.
pub(super) fn set_times(counting: &[&Event], state: &State) -> Map<SetKey, SetTimes> {
    let seconds = |ms: u64| u32::try_from(ms / 1000).unwrap_or(u32::MAX);
    let mut times = Map::new();
    let mut before: Option<LoggedSet> = None;
    for logged in logged_sets(counting) {
        let last = before.filter(|_| !logged.after_pause);
        let over = logged.stopped.unwrap_or(logged.event.moment());
        let of_set = SetTimes {
            rest_taken: last
                .as_ref()
                .zip(logged.begun)
                .map(|(last, since)| seconds(since.since(&last.event.moment()))),
            rest_asked: last.and_then(|last| asked(state, &last, logged.set)),
            lasted_ms: logged.begun.map(|since| over.since(&since)),
        };
        if logged.slot(state).is_some() {
            times.insert(logged.set, of_set);
        }
        before = Some(logged);
    }
    times
}

/// The rest prescribed between two sets.
fn asked(state: &State, before: &LoggedSet, set: SetKey) -> Option<u32> {
    let last = state.slot(before.set)?;
    let next = state.slot(set)?;
    let rest = last.planned.rest_before(&next.planned);
    Some(u32::from(before.heat.stretched(rest).get()))
}

/// The events while the session was under way: those after an end are left out, until it went on.
pub(super) fn while_under_way<'a>(counting: &[&'a Event]) -> impl Iterator<Item = &'a Event> {
    let mut ended = false;
    counting.iter().copied().filter(move |event| {
        match event.what {
            What::Ended => ended = true,
            What::Resumed => ended = false,
            _ => {}
        }
        !ended
    })
}

/// Milliseconds from the beginning to the end, or to the last event, without the pauses between an end and going on and
/// without long silences ([`silence_ms`]).
pub(super) fn duration_ms(counting: &[&Event]) -> u64 {
    let begin = counting
        .iter()
        .position(|event| matches!(event.what, What::Began(_)))
        .unwrap_or(0);
    let mut total = 0;
    let mut stretch: Vec<Moment> = Vec::new();
    // How much of the stretch there is up to its last end.
    let mut ended: Option<usize> = None;
    for event in counting.get(begin..).unwrap_or_default() {
        if let (What::Resumed, Some(end)) = (&event.what, ended) {
            stretch.truncate(end);
            total += stretch_ms(&stretch);
            stretch.clear();
            ended = None;
        }
        let now = event.moment();
        let silent = |last: &Moment| silence_ms(last, &now) > 0;
        if ended.is_none() && stretch.last().is_some_and(silent) {
            total += stretch_ms(&stretch);
            stretch.clear();
        }
        stretch.push(now);
        if matches!(event.what, What::Ended) {
            ended = Some(stretch.len());
        }
    }
    stretch.truncate(ended.unwrap_or(stretch.len()));
    total + stretch_ms(&stretch)
}

/// Milliseconds from the first moment to the last.
///
/// Run by run: within one both clocks are compared over the whole of it, and from run to run the wall clock counts,
/// so that a clock set back between two runs costs only the pause between them.
fn stretch_ms(moments: &[Moment]) -> u64 {
    let mut moments = moments.iter().copied();
    let Some(mut head) = moments.next() else {
        return 0;
    };
    let mut total = 0;
    let mut last = head;
    for moment in moments {
        if moment.tick.run != head.tick.run {
            total += last.since(&head) + moment.since(&last);
            head = moment;
        }
        last = moment;
    }
    total + last.since(&head)
}
