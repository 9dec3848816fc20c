//! What is heard: a set or a rest as a list of cues in time, and the tones for them.

mod build;
mod counted;
mod plan;
mod position;
mod timeline;
pub mod tone;
mod voice;

pub use counted::{Counted, counted};
pub use plan::{COUNT_IN_S_MAX, PARTIAL_MS, rest_timeline, set_timeline};
pub use position::{Position, position};
pub use timeline::{Cue, Cued, Length, Phase, Span, Timeline};
pub use voice::tones;
