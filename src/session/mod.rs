//! What is happening: events, the state they fold to, and what may come next.
//!
//! The machine has no clock. The contract with the shell: make an [`Event`] with an id from [`Mint`] and the time of
//! both clocks; hand it to [`Session::take`]; store it; show [`Session::state`]. [`Rest::left_ms`] says how long a rest
//! still takes.

mod band;
mod bar;
mod board;
mod budget;
mod cautions;
mod conditions;
mod done;
mod effective;
mod ends;
mod event;
mod full;
mod jump;
mod length;
mod machine;
mod mint;
mod off_plan;
mod offer;
mod over;
mod pair;
mod pause;
mod short;
mod slot;
mod state;
mod swap;
mod turn;

pub use board::Board;
pub use budget::{AgainstBudget, minutes_over};
pub use done::{Amount, Done, StageAmount, stages_said};
pub use effective::effective;
pub use ends::Ends;
pub use event::{Along, Began, Event, EventId, Moment, SessionId, Tick, What};
pub use full::{EVENTS_KEPT_MAX, EVENTS_MAX};
pub use machine::{RESUME_MS_MAX, Refusal, Session, amount};
pub use mint::Mint;
pub use offer::{COUNT_IN_SECONDS, stage_offered};
pub use pair::{Beside, History, can_undo, is_next, logged_last, tapped_last, turns};
pub use pause::silence_ms;
pub use short::{Gone, Short};
pub use slot::{InHeat, Logged, Phase, Rest, Slot, Status};
pub use state::State;
pub use swap::{Swap, Swapped};
pub use turn::Turn;

#[cfg(test)]
mod after_end_tests;
#[cfg(test)]
mod ahead_tests;
#[cfg(test)]
mod clock_tests;
#[cfg(test)]
mod offer_tests;
#[cfg(test)]
mod settled_tests;
#[cfg(test)]
mod tests;
