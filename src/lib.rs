//! Stanchion, an offline-first training log for a phone leaning on the rack.

pub mod cues {
    //! What is heard: a set or a rest as a list of sounds in time.
    pub mod tone;
}
#[cfg(feature = "device")]
pub mod device;
