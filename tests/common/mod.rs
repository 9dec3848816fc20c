//! What the tests share: ids, quantities, and generators of random sheets, sessions and archives.
#![allow(dead_code, reason = "each test file uses its own part of this")]

pub mod archives;
pub mod built;
pub mod counted;
pub mod events;
pub mod floor;
pub mod kits;
pub mod known;
pub mod own;
pub mod quantities;
pub mod reasons;
pub mod sheets;
pub mod shelves;
pub mod simple;
pub mod squat;
pub mod swaps;

use chrono::{DateTime, FixedOffset};
use jsonschema::Validator;
use stanchion::session::Mint;
use std::sync::OnceLock;
use uuid::Uuid;

/// 5 January 2026, 09:00 in a place one hour east of Greenwich, in Unix milliseconds.
pub const MORNING_MS: u64 = 1_767_600_000_000;

/// The time `ms` after that morning.
pub fn time(ms: u64) -> DateTime<FixedOffset> {
    let east = FixedOffset::east_opt(3600).unwrap();
    let unix = i64::try_from(MORNING_MS + ms).unwrap();
    DateTime::from_timestamp_millis(unix)
        .unwrap()
        .with_timezone(&east)
}

/// A UUIDv7 of the time `ms` after that morning, `salt` in its random part.
pub fn id(ms: u64, salt: u64) -> Uuid {
    let mut random = [0; 10];
    random[2..].copy_from_slice(&salt.to_be_bytes());
    Mint::default().next(MORNING_MS + ms, random)
}

/// The schema of the export format, compiled once.
pub fn schema() -> &'static Validator {
    static SCHEMA: OnceLock<Validator> = OnceLock::new();
    SCHEMA.get_or_init(|| {
        let text = include_str!("../../assets/stanchion-1.schema.json");
        jsonschema::validator_for(&serde_json::from_str(text).unwrap()).unwrap()
    })
}
