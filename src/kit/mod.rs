//! What can be loaded: the kit of bars, plates, dumbbells and stacks, the loads it makes and the plates for each.

mod choices;
mod loading;
mod made;
mod mass;
mod parts;
mod plan;
mod reach;
mod refusal;
mod side;
mod starter;

#[cfg(test)]
mod tests;

pub use choices::Choices;
pub use loading::{Change, Loading, change};
pub use parts::{
    BANDS_MAX, BARS_MAX, Bar, DUMBBELLS_MAX, Handle, KitParts, PAIRS_MAX, PLATES_MAX, PlatePairs,
    STACK_ADD_ONS_MAX, STACK_STEPS_MAX, STACKS_MAX, Stack, UnfitKit,
};
pub use plan::{PLANNED_TOGETHER_MAX, Plan};
pub use reach::Kit;
pub use refusal::NotLoadable;
pub use side::SUMS_MAX;
