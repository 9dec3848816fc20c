//! Whether a load is so far above what there is to measure it by that it is asked about.

use super::event::EventId;
use super::slot::Slot;
use super::state::State;
use crate::strength::{DoneSet, Performance, best_lately, first_jump_words, jump_words, jumps};
use crate::units::Load;

/// What a load is held against where no rep was done like this lately.
#[derive(Clone, Copy)]
pub(super) struct Without {
    /// True while the block's load is looked for from set to set.
    pub guided: bool,
    /// The load that was prescribed.
    pub prescribed: Option<Load>,
}

impl State {
    /// What is said where `load` jumps above the hardest done lately, this session's work sets among it (in a guided start
    /// the lighter sets too), or those of them that were logged before an event; where no rep was done like this, above what is
    /// prescribed. Of a first time that begins with the lightest there is nothing to measure by.
    pub(super) fn jump_said(
        &self,
        slot: &Slot,
        without: Without,
        history: &[Performance],
        load: Option<Load>,
        before: Option<EventId>,
    ) -> Option<&'static str> {
        let block = self.block_of(slot);
        let assists = block.basis.assists();
        let counts = |done: &DoneSet| {
            let line = block.sets.get(usize::from(done.key.line));
            let tried = done.reps.is_none_or(|reps| reps.get() > 0);
            tried && (without.guided || line.is_some_and(|sets| sets.kind.is_work()))
        };
        let done = self.done_of(slot, before).into_iter().filter(counts);
        let best = done
            .filter_map(|done| done.load)
            .chain(best_lately(history, &block.shape(), assists))
            .reduce(|a, b| if assists { a.min(b) } else { a.max(b) });
        let measure = best.or(without.prescribed.filter(|_| !without.guided));
        jumps(&block.basis, measure, load, self.began.body_mass).then(|| match best {
            Some(_) => jump_words(block),
            None => first_jump_words(block),
        })
    }
}
