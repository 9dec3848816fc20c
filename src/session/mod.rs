//! What is happening: events, the state they fold to, and what may come next.

mod done;
mod event;

pub use done::{Amount, Done, StageAmount};
pub use event::{Began, Event, EventId, SessionId, Tick, What};
