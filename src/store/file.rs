//! The envelope of a file.

use super::body::BodyRecord;
use super::exercise_record::ExerciseRecord;
use super::limits::{
    BODY_MASSES_MAX, BODY_MAX, EXERCISES_MAX, KITS_MAX, LIFTERS_MAX, PROGRAMMES_MAX, SESSIONS_MAX,
    SHEETS_MAX,
};
use super::programme_record::ProgrammeRecord;
use super::record::{BodyMassRecord, KitRecord, LifterRecord};
use super::removed_session::RemovedSession;
use super::session_log::SessionLog;
use super::sheet_record::SheetRecord;
use crate::say;
use chrono::{DateTime, FixedOffset};
use serde::de::{Deserialize, Deserializer, Error, IgnoredAny, SeqAccess, Visitor};
use std::fmt;
use std::marker::PhantomData;

/// What stands in the field `format` of every file.
pub const FORMAT: &str = "stanchion";
/// A file of format version 1. Its head was read before; here it is passed over.
#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct FileV1 {
    #[serde(rename = "format")]
    _format: IgnoredAny,
    #[serde(rename = "version")]
    _version: IgnoredAny,
    #[serde(default, rename = "written")]
    _written: Option<DateTime<FixedOffset>>,
    #[serde(default, deserialize_with = "at_most::<_, _, LIFTERS_MAX>")]
    pub lifter: Vec<LifterRecord>,
    #[serde(default, deserialize_with = "at_most::<_, _, KITS_MAX>")]
    pub kit: Vec<KitRecord>,
    #[serde(default, deserialize_with = "at_most::<_, _, BODY_MASSES_MAX>")]
    pub body_mass: Vec<BodyMassRecord>,
    #[serde(default, deserialize_with = "at_most::<_, _, BODY_MAX>")]
    pub body: Vec<BodyRecord>,
    #[serde(default, deserialize_with = "at_most::<_, _, EXERCISES_MAX>")]
    pub exercises: Vec<ExerciseRecord>,
    #[serde(default, deserialize_with = "at_most::<_, _, SHEETS_MAX>")]
    pub sheets: Vec<SheetRecord>,
    #[serde(default, deserialize_with = "at_most::<_, _, PROGRAMMES_MAX>")]
    pub programmes: Vec<ProgrammeRecord>,
    #[serde(default, deserialize_with = "at_most::<_, _, SESSIONS_MAX>")]
    pub sessions: Vec<SessionLog>,
    #[serde(default, deserialize_with = "at_most::<_, _, SESSIONS_MAX>")]
    pub removed_sessions: Vec<RemovedSession>,
}

/// Reads a list of at most `MOST` entries, and stops at the first beyond.
pub(super) fn at_most<'de, D, T, const MOST: usize>(source: D) -> Result<Vec<T>, D::Error>
where
    D: Deserializer<'de>,
    T: Deserialize<'de>,
{
    struct List<T, const MOST: usize>(PhantomData<T>);

    impl<'de, T: Deserialize<'de>, const MOST: usize> Visitor<'de> for List<T, MOST> {
        type Value = Vec<T>;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str(&say!("a list of at most {most} entries", most = MOST))
        }

        fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Vec<T>, A::Error> {
            let mut entries = Vec::new();
            while entries.len() < MOST {
                match list.next_element()? {
                    Some(entry) => entries.push(entry),
                    None => return Ok(entries),
                }
            }
            if list.next_element::<IgnoredAny>()?.is_some() {
                return Err(A::Error::custom(say!(
                    "this list has more than {most} entries, at most {most} are allowed",
                    most = MOST
                )));
            }
            Ok(entries)
        }
    }

    source.deserialize_seq(List::<T, MOST>(PhantomData))
}
