//! Pauses of a session, which are no time trained: between its end and going on, and where nothing happened for hours.

use super::event::Moment;
use super::machine::RESUME_MS_MAX;
use super::slot::Phase;
use super::state::State;

/// A longer silence is no part of a session (our own choice): the phone was put away with the session open, to be closed or gone
/// on with later. As long as a session that was ended may still go on. In milliseconds.
const SILENCE_MS_MAX: u64 = RESUME_MS_MAX;

/// The milliseconds from `last` to `now` where that is too long a silence to be of the session, otherwise 0.
#[must_use]
pub fn silence_ms(last: &Moment, now: &Moment) -> u64 {
    let silent = now.since(last);
    if silent > SILENCE_MS_MAX { silent } else { 0 }
}

impl State {
    /// Goes on after the end. The rest that ran then is long over.
    pub(super) fn resume(&mut self, moment: Moment) {
        if let Phase::Ended(end) = self.phase {
            self.paused_ms = self.paused_ms.saturating_add(moment.since(&end));
            self.phase = Phase::Ready;
            self.settle();
        }
    }

    /// Something happens at `moment`: a long silence before it, under way, was a pause.
    pub(super) fn hear(&mut self, moment: Moment) {
        self.paused_ms = self.paused_ms.saturating_add(self.silent_ms(&moment));
        self.last = moment;
    }

    /// Milliseconds from the beginning to `now`, without the pauses between an end and going on and without long silences.
    #[must_use]
    pub fn gone_ms(&self, now: &Moment) -> u64 {
        let paused = self.paused_ms.saturating_add(self.silent_ms(now));
        now.since(&self.since).saturating_sub(paused)
    }

    /// The silence from the last event to `now` where it is a pause; after an end there is none.
    fn silent_ms(&self, now: &Moment) -> u64 {
        if matches!(self.phase, Phase::Ended(_)) {
            return 0;
        }
        silence_ms(&self.last, now)
    }
}
