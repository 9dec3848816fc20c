//! What the air does to a session: longer rests, and cautions on the board.

use super::state::State;
use crate::heat::{Category, grip_words, heat_index};
use crate::units::Seconds;

impl State {
    /// The category of the heat that was noted; none where nothing was.
    #[must_use]
    pub fn heat(&self) -> Category {
        self.air
            .map_or(Category::None, |air| Category::of(heat_index(air)))
    }

    /// The length of a rest that is begun now, where the plan has `planned`.
    pub(super) fn rest_in_heat(&self, planned: Seconds) -> Seconds {
        self.heat().stretched(planned)
    }

    /// What the board says of the heat: what to do, and of a set with a load that grips slip.
    pub(super) fn heat_cautions(&self, loaded: bool) -> impl Iterator<Item = String> {
        let brief = self.heat().brief();
        let grip = brief.and(loaded.then(grip_words));
        brief.into_iter().chain(grip).map(str::to_owned)
    }
}
