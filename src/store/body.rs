//! What was measured of the body: masses, and measures of one's own; corrections and removals.
//!
//! A body mass is a record of its own ([`BodyMassRecord`]). A correction of it, its removal, and every measure of one's own
//! are versions of an entry: the newest version of an entry counts, so that a merge in any order comes to the same.

use super::kept::Record;
use super::record::BodyMassRecord;
use crate::order;
use crate::order::Map;
use crate::sheet::Line;
use crate::units::{Load, Measure};
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// What an entry holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BodyValue {
    /// The body mass.
    Mass(Load),
    /// A measure of one's own.
    Measure {
        /// What is measured: waist.
        name: Line,
        /// How much it was.
        measure: Measure,
    },
}

/// One version of an entry. The newest version of an id counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "BodyForm", into = "BodyForm")]
pub struct BodyRecord {
    /// The entry: the id of a body mass, or one of its own.
    pub entry: Uuid,
    /// This version, UUIDv7.
    pub version: Uuid,
    /// When this version was written.
    pub written: DateTime<FixedOffset>,
    /// When it was taken and what it was; none where the entry was removed.
    pub taken: Option<(DateTime<FixedOffset>, BodyValue)>,
}

/// The file's form of a version.
#[derive(Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct BodyForm {
    id: Uuid,
    version: Uuid,
    written: DateTime<FixedOffset>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    at: Option<DateTime<FixedOffset>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    mass: Option<Load>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    name: Option<Line>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    measure: Option<Measure>,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    removed: bool,
}

impl TryFrom<BodyForm> for BodyRecord {
    type Error = String;

    fn try_from(form: BodyForm) -> Result<BodyRecord, String> {
        let value = match (form.mass, form.name, form.measure) {
            (Some(mass), None, None) => Some(BodyValue::Mass(mass)),
            (None, Some(name), Some(measure)) => Some(BodyValue::Measure { name, measure }),
            (None, None, None) => None,
            _ => return Err(t("an entry has a mass, or a name and a measure").to_owned()),
        };
        let taken = match (form.removed, form.at, value) {
            (false, Some(at), Some(value)) => Some((at, value)),
            (true, None, None) => None,
            (true, ..) => {
                return Err(t("a removed entry has id, version and written only").to_owned());
            }
            (false, ..) => {
                return Err(
                    t("an entry has a time, and a mass or a measure with its name").to_owned(),
                );
            }
        };
        Ok(BodyRecord {
            entry: form.id,
            version: form.version,
            written: form.written,
            taken,
        })
    }
}

impl From<BodyRecord> for BodyForm {
    fn from(record: BodyRecord) -> BodyForm {
        let removed = record.taken.is_none();
        let (at, value) = record.taken.unzip();
        let (mass, name, measure) = match value {
            None => (None, None, None),
            Some(BodyValue::Mass(mass)) => (Some(mass), None, None),
            Some(BodyValue::Measure { name, measure }) => (None, Some(name), Some(measure)),
        };
        BodyForm {
            id: record.entry,
            version: record.version,
            written: record.written,
            at,
            mass,
            name,
            measure,
            removed,
        }
    }
}

impl Record for BodyRecord {
    type Id = Uuid;
    const WHAT: &'static str = "entry of the body";

    fn id(&self) -> Uuid {
        self.version
    }

    fn shown_id(&self) -> Uuid {
        self.version
    }
}

/// An entry as it counts now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BodyEntry {
    /// Its id through all versions.
    pub id: Uuid,
    /// When it was taken.
    pub at: DateTime<FixedOffset>,
    /// What it was.
    pub value: BodyValue,
}

impl BodyEntry {
    /// The body mass, where it is one.
    #[must_use]
    pub fn mass(&self) -> Option<Load> {
        match self.value {
            BodyValue::Mass(mass) => Some(mass),
            BodyValue::Measure { .. } => None,
        }
    }
}

/// The entries that count: each in its newest version, without those that were removed; by time, then by id.
#[must_use]
pub fn body_entries<'a>(
    masses: impl IntoIterator<Item = &'a BodyMassRecord>,
    versions: impl IntoIterator<Item = &'a BodyRecord>,
) -> Vec<BodyEntry> {
    let mut newest: Map<Uuid, &BodyRecord> = Map::new();
    for record in versions {
        let there = newest.or_insert_with(record.entry, || record);
        if record.version > there.version {
            *there = record;
        }
    }
    let plain = masses
        .into_iter()
        .filter(|record| !newest.contains_key(&record.id));
    let mut entries: Vec<BodyEntry> = plain
        .map(|record| BodyEntry {
            id: record.id,
            at: record.at,
            value: BodyValue::Mass(record.mass),
        })
        .collect();
    entries.extend(newest.values().filter_map(|record| {
        let (at, value) = record.taken.clone()?;
        let id = record.entry;
        Some(BodyEntry { id, at, value })
    }));
    order::by_key(&mut entries, |entry| (entry.at, entry.id));
    entries
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::json;
    use chrono::TimeDelta;

    fn at(days: i64) -> DateTime<FixedOffset> {
        let first = DateTime::parse_from_rfc3339("2026-01-05T09:00:00+01:00").unwrap();
        first + TimeDelta::days(days)
    }

    fn mass(n: u128, days: i64, mass: &str) -> BodyMassRecord {
        BodyMassRecord {
            id: Uuid::from_u128(n),
            at: at(days),
            mass: mass.parse().unwrap(),
        }
    }

    fn version(n: u128, version: u128, taken: Option<(i64, BodyValue)>) -> BodyRecord {
        BodyRecord {
            entry: Uuid::from_u128(n),
            version: Uuid::from_u128(version),
            written: at(50),
            taken: taken.map(|(days, value)| (at(days), value)),
        }
    }

    fn kg(text: &str) -> BodyValue {
        BodyValue::Mass(text.parse().unwrap())
    }

    #[test]
    fn the_newest_version_counts_in_whatever_order_they_come() {
        let masses = [
            mass(1, 0, "82 kg"),
            mass(2, 1, "28 kg"),
            mass(3, 2, "83 kg"),
        ];
        let versions = [
            version(2, 10, Some((1, kg("82.5 kg")))),
            version(3, 11, None),
            version(2, 9, None),
        ];
        let mut back = versions.to_vec();
        back.reverse();
        let entries = body_entries(&masses, &versions);
        assert_eq!(entries, body_entries(&masses, &back));
        let loads: Vec<Load> = entries.iter().filter_map(BodyEntry::mass).collect();
        assert_eq!(
            loads,
            ["82 kg", "82.5 kg"].map(|mass| mass.parse().unwrap())
        );
        // A removal stands, whether or not what it removes has come.
        assert_eq!(body_entries(&masses[..2], &versions).len(), 2);
    }

    #[test]
    fn a_version_is_read_as_written_and_half_of_one_is_refused() {
        let measure = BodyValue::Measure {
            name: Line::new("waist").unwrap(),
            measure: "84.5 cm".parse().unwrap(),
        };
        for record in [
            version(1, 2, Some((0, measure))),
            version(1, 3, Some((0, kg("82 kg")))),
            version(1, 4, None),
        ] {
            assert_eq!(json::parse(&json::text(&record)), Ok(record));
        }
        let id = Uuid::from_u128(1);
        let head = format!(
            "\"id\":\"{id}\",\"version\":\"{id}\",\"written\":\"2026-01-05T09:00:00+01:00\""
        );
        for rest in [
            "",
            ",\"at\":\"2026-01-05T09:00:00+01:00\"",
            ",\"mass\":\"82 kg\"",
            ",\"removed\":true,\"mass\":\"82 kg\"",
            ",\"at\":\"2026-01-05T09:00:00+01:00\",\"name\":\"waist\"",
        ] {
            let text = format!("{{{head}{rest}}}");
            assert!(json::parse::<BodyRecord>(&text).is_err(), "{text}");
        }
    }
}
