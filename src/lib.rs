//! Stanchion, an offline-first training log for a phone leaning on the rack.
//!
//! The map. Arrows run one way: `ui` → `device` → core, `ui` → core. The core has no clock, no randomness and no
//! browser: it takes them as arguments.

pub mod cues;
pub mod kit;
pub mod session;
pub mod sheet;
pub mod strength;
pub mod units;
