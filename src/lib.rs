//! Stanchion, an offline-first training log for a phone leaning on the rack.
//!
//! The map. Arrows run one way: `ui` → `device` → core, `ui` → core. The core has no clock, no randomness and no
//! browser: it takes them as arguments. The core builds without the feature `app`; that is the wall.

pub mod charts;
pub mod crc;
pub mod cues;
#[cfg(feature = "device")]
pub mod device;
pub mod draft;
pub mod exercises;
pub mod heat;
pub mod json;
pub mod kit;
pub mod ledger;
pub mod order;
pub mod pictures;
pub mod programme;
pub mod quick;
pub mod session;
pub mod share;
pub mod sheet;
pub mod store;
pub mod strength;
#[cfg(feature = "app")]
pub mod ui;
pub mod units;
pub mod words;
