//! stub
pub mod tone;
use crate::sheet::PlannedSet;
use crate::units::Seconds;
use tone::Tone;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phase {
    CountIn,
    Eccentric,
    Stretch,
    Concentric,
    Squeeze,
    Hold,
    Pause,
    ChangeSides,
    Go,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Position {
    pub phase: Phase,
    pub left_ms: u32,
    pub rep: Option<(u16, u16)>,
}
pub struct Timeline;
pub fn set_timeline(_s: &PlannedSet, _c: u8) -> Timeline {
    Timeline
}
pub fn rest_timeline(_s: Seconds) -> Timeline {
    Timeline
}
pub fn tones(_t: &Timeline) -> Vec<Tone> {
    vec![]
}
pub fn position(_t: &Timeline, _at: u32) -> Option<Position> {
    None
}
