//! A session that went on after its end: the pause between is no time trained.

use super::event::Moment;
use super::slot::Phase;
use super::state::State;

impl State {
    /// Goes on after the end. The rest that ran then is long over.
    pub(super) fn resume(&mut self, moment: Moment) {
        if let Phase::Ended(end) = self.phase {
            self.paused_ms = self.paused_ms.saturating_add(moment.since(&end));
            self.phase = Phase::Ready;
            self.settle();
        }
    }

    /// Milliseconds from the beginning to `now`, without the pauses between an end and going on.
    #[must_use]
    pub fn gone_ms(&self, now: &Moment) -> u64 {
        now.since(&self.since).saturating_sub(self.paused_ms)
    }
}
