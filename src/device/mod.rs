//! The phone: everything that talks to the browser and draws nothing. One capability a file.
//!
//! Every capability is looked for before it is used, and one that is absent or refused is an
//! ordinary answer (an enum, `false`, `None`), never a panic: private windows, old phones and
//! blocked storage are normal here. Listeners, timers and locks are guards; dropping one ends it.

pub mod agenda;
pub mod channel;
pub mod clock;
pub mod db;
pub mod dom;
pub mod drag;
pub mod erase;
pub mod events;
pub mod faults;
pub mod files;
pub mod focus;
pub mod haptic;
pub mod idle;
pub mod install;
mod js;
pub mod language;
pub mod locks;
pub mod media;
pub mod modal;
pub mod oneshot;
pub mod pack;
pub mod painted;
pub mod persist;
pub mod picture;
pub mod place;
pub mod prefs;
pub mod received;
pub mod rest;
pub mod send;
pub mod sound;
pub mod speech;
pub mod steps;
pub mod timer;
pub mod wake;
pub mod worker;
