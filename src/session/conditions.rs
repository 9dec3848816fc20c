//! What the air does to a session: longer rests. Its cautions stand with the others.

use super::state::State;
use crate::heat::{Category, heat_index};
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
}
