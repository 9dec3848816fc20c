//! What is heard: a set or a rest as a list of cues in time, the tones for them, and what is said aloud.

mod build;
mod counted;
mod plan;
mod position;
mod speech;
mod timeline;
pub mod tone;
mod voice;

pub use counted::{Counted, counted};
pub use plan::{COUNT_IN_S_MAX, PARTIAL_MS, demonstration, rest_timeline, set_timeline};
pub use position::{Position, position};
pub use speech::{Aloud, Saying, announcements, next_words, sayings};
pub use timeline::{Cue, Cued, Length, Phase, Span, Timeline};
pub use voice::{SoundSet, tones, voice};
