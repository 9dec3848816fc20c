//! The app as a person uses it, in a real browser: driven by taps, looked at by roles and `data-part` hooks.
//!
//! Started by `cargo xtask test`, which builds the app and says by environment variables where it and the browser are:
//! `STANCHION_DIST`, `STANCHION_CHROMIUM`, `STANCHION_CHROMEDRIVER`. `STANCHION_SHOTS` names a folder for screenshots.

mod away;
mod browser;
mod curve;
mod draft;
mod export;
mod floor;
mod heat;
mod looks;
mod nobody;
mod offline;
mod own;
mod paper;
mod person;
mod plates;
mod refusals;
mod server;
mod share;
mod swap;
mod time_and_order;
mod trust;
mod two_tabs;
mod whole_session;
mod write;
