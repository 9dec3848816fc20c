//! The app as a person uses it, in a real browser: driven by taps, looked at by roles and `data-part` hooks.
//!
//! Started by `cargo xtask test`, which builds the app and says by environment variables where it and the browser are:
//! `STANCHION_DIST`, `STANCHION_CHROMIUM`, `STANCHION_CHROMEDRIVER`. `STANCHION_SHOTS` names a folder for screenshots.
//! `STANCHION_ENGINE` is `chromium` unless it says `firefox` (`STANCHION_FIREFOX`, `STANCHION_GECKODRIVER`) or `webkit`
//! (`STANCHION_WEBKIT`, `STANCHION_WEBKIT_DRIVER`, under an X server). `docs/engines.md` says what runs where.

#[path = "../common/mod.rs"]
mod common;

mod ahead;
mod at_once;
mod away;
mod axe;
mod back;
mod broken;
mod browser;
mod charts;
mod coach;
mod curve;
mod disk;
mod draft;
mod driver;
mod engine;
mod export;
mod floor;
mod focus;
mod full_disk;
mod hands;
mod heat;
mod keys;
mod language;
mod layout;
mod ledger;
mod licences;
mod light;
mod looks;
mod nobody;
mod offline;
mod own;
mod pair;
mod paper;
mod parts;
mod past;
mod people;
mod person;
mod plates;
mod received;
mod refusals;
mod roles;
mod safety;
mod screens;
mod server;
mod share;
mod sight;
mod sound;
mod swap;
mod time_and_order;
mod trust;
mod two_tabs;
mod update;
mod weeks;
mod whole_session;
mod write;
