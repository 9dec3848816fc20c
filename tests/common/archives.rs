//! Generators of archives.

use super::events::{curve, session, session_id};
use super::kits::kit;
use super::own::{exercise_record, programme_record};
use super::quantities::{line, load, unit};
use super::sheets::sheet;
use super::{id, time};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use stanchion::sheet::{SheetId, SheetVersion};
use stanchion::store::{
    Archive, BodyMassRecord, BodyRecord, BodyValue, KitRecord, LifterRecord, RemovedSheet,
    SessionLog, SheetRecord,
};
use stanchion::units::{Measure, MeasureUnit};

fn lifter() -> BoxedStrategy<LifterRecord> {
    (0..4_u64, unit(), option::of(line()), any::<bool>(), curve())
        .prop_map(|(n, unit, name, welcomed, curve)| LifterRecord {
            version: id(n, 7),
            written: time(n),
            unit,
            name,
            welcomed,
            curve,
        })
        .boxed()
}

fn kit_record() -> BoxedStrategy<KitRecord> {
    (0..4_u64, kit())
        .prop_map(|(n, kit)| KitRecord {
            version: id(n, 9),
            written: time(n),
            kit,
        })
        .boxed()
}

fn body_mass() -> BoxedStrategy<BodyMassRecord> {
    (0..4_u64, load())
        .prop_map(|(n, mass)| BodyMassRecord {
            id: id(n, 8),
            at: time(n),
            mass,
        })
        .boxed()
}

/// A version of one of the entries that [`body_mass`] makes, or of another one.
fn body() -> BoxedStrategy<BodyRecord> {
    let measure = (1..=50_000_i64, 0..3_usize).prop_map(|(hundredths, unit)| {
        let amount = format!("{}.{:02}", hundredths / 100, hundredths % 100);
        Measure::parse_in(&amount, MeasureUnit::ALL[unit]).unwrap()
    });
    let value = prop_oneof![
        load().prop_map(BodyValue::Mass),
        (line(), measure).prop_map(|(name, measure)| BodyValue::Measure { name, measure }),
    ];
    (0..5_u64, 0..4_u64, option::of(value))
        .prop_map(|(n, version, value)| BodyRecord {
            entry: id(n, 8),
            version: id(3000 + version, n),
            written: time(3000 + version),
            taken: value.map(|value| (time(n), value)),
        })
        .boxed()
}

fn sheet_record() -> BoxedStrategy<SheetRecord> {
    prop_oneof![
        4 => sheet().prop_map(|sheet| SheetRecord::Written(Box::new(sheet))),
        1 => (0..4_u64, 0..8_u64).prop_map(|(sheet, version)| SheetRecord::Removed(RemovedSheet {
            id: SheetId(id(1000 + sheet, sheet)),
            version: SheetVersion(id(2000 + version, sheet)),
            written: time(2000 + version),
        })),
    ]
    .boxed()
}

/// A log of one of three sessions.
fn log() -> BoxedStrategy<SessionLog> {
    (0..3_u64)
        .prop_flat_map(|n| (Just(n), session(n)))
        .prop_map(|(n, events)| SessionLog::new(session_id(n), events).unwrap())
        .boxed()
}

/// An archive. Two of them often have records with one id, the same or different ones.
pub fn archive() -> BoxedStrategy<Archive> {
    (
        vec(lifter(), 0..3),
        vec(kit_record(), 0..3),
        (vec(body_mass(), 0..3), vec(body(), 0..3)),
        vec(sheet_record(), 0..3),
        vec(exercise_record(), 0..3),
        vec(programme_record(), 0..3),
        vec(log(), 0..3),
        vec((0..4_u64, 0..2_u64), 0..2),
    )
        .prop_map(
            |(lifters, kits, (masses, body), sheets, exercises, programmes, logs, removed)| {
                let mut archive = Archive::default();
                for lifter in lifters {
                    archive.lifter.put(lifter);
                }
                for kit in kits {
                    archive.kit.put(kit);
                }
                for mass in masses {
                    archive.body_mass.put(mass);
                }
                for version in body {
                    archive.body.put(version);
                }
                for sheet in sheets {
                    archive.sheets.put(sheet);
                }
                for exercise in exercises {
                    archive.exercises.put(exercise);
                }
                for programme in programmes {
                    archive.programmes.put(programme);
                }
                for log in logs {
                    archive.sessions.or_insert_with(log.id(), || log);
                }
                for (n, when) in removed {
                    archive.remove_session(session_id(n), time(when));
                }
                archive
            },
        )
        .boxed()
}
