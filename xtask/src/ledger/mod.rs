//! The ledger of an invented lifter over many years, as an export of our own format: what measurements import.
//!
//! Four sessions a week in the boathouse, *Lower A* and *Upper B* in turn, logged through the session machine itself, so
//! that every event is one that a phone could have written. The lifter is invented: strength rises quickly, then slowly,
//! with the seasons and from day to day; nothing of it is measured on anybody.

mod body;
mod day;

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use chrono::{DateTime, FixedOffset, TimeDelta};
use stanchion::kit::Kit;
use stanchion::ledger::{Heading, SessionRecord, performances_of, weeks};
use stanchion::session::Mint;
use stanchion::sheet::{Block, ExerciseId, Group, Sheet, SheetVersion, unroll};
use stanchion::store::{
    Archive, BodyMassRecord, KitRecord, LifterRecord, SessionLog, SheetRecord, csv, demo, write,
};
use stanchion::strength::{Curve, Performance};
use stanchion::units::{Load, Unit};
use uuid::Uuid;

use crate::places;
use crate::say::{Failure, OrNext, Outcome, note};
use crate::simulate::Chance;
use body::Body;

/// The seed: one ledger for everybody.
const SEED: u64 = 7;

/// Sets of each sheet, ramp-ups among them: with four sessions a week some 5,200 a year.
const SETS: usize = 26;

/// Weeks in a year, rounded up where it counts.
const WEEKS_OF_100_YEARS: u32 = 5_218;

/// What the ledger ends on, a Sunday.
const END: &str = "2026-11-22T20:00:00+01:00";

/// The first day that ids of version 7 can name, and the next Monday after it.
const FIRST: &str = "1970-01-05T00:00:00+01:00";

/// How many performances of an exercise a proposal looks at.
const HISTORY: usize = stanchion::ledger::PERFORMANCES_MAX;

/// Reads `--years N`, writes the file and says where it lies.
pub fn run(options: &[&str]) -> Outcome<()> {
    let years = match options {
        [] => 10,
        ["--years", number] => number
            .parse()
            .ok()
            .filter(|years| (1..=100).contains(years))
            .ok_or_else(|| {
                Failure::new(format!("`{number}` is no number of years"), "give 1 to 100")
            })?,
        _ => {
            return Err(Failure::new(
                "`ledger` takes `--years N` and nothing else",
                "run `cargo xtask help`",
            ));
        }
    };
    let (file, archive) = written(years)?;
    tables(years, &archive)?;
    note(format!(
        "{} is written, and its tables beside it",
        file.display()
    ));
    Ok(())
}

/// The ledger of so many years as a file in target/.
pub fn file(years: u32) -> Outcome<PathBuf> {
    written(years).map(|(path, _)| path)
}

fn written(years: u32) -> Outcome<(PathBuf, Archive)> {
    let path = places::target(&format!("ledger-{years}.json"));
    let (archive, sets) = invent(years)?;
    note(format!(
        "{} sessions, {sets} sets in {years} years",
        archive.sessions.len()
    ));
    let next = "check that target/ can be written";
    let text = write(&archive, day::at(END)?);
    fs::write(&path, text).or_next("writing the ledger", next)?;
    Ok((path, archive))
}

/// Its sets as the app's own table, and its weeks as the app sums them: `tests/reference/weeks.py` sums the one and holds
/// it against the other.
fn tables(years: u32, archive: &Archive) -> Outcome<()> {
    let next = "check that target/ can be written";
    let path = |what: &str| places::target(&format!("ledger-{years}-{what}.csv"));
    fs::write(path("sets"), csv(archive)).or_next("writing the sets", next)?;
    let mut headings: Vec<Heading> = Vec::new();
    for log in archive.sessions.values() {
        let record = SessionRecord::from_events(log.as_events());
        let record = record.or_next("reading an invented session", "mend the generator")?;
        headings.push(Heading::of(&record, &[]));
    }
    let days = headings.iter().map(|heading| heading.began.date_naive());
    let (first, last) = (days.clone().min(), days.max());
    let catalogue = archive.catalogue();
    let weeks = first
        .zip(last)
        .map(|(first, last)| weeks(&headings, &catalogue, first, last));
    let mut table = String::from("monday,sessions,sets,hard,volume kg\n");
    for week in weeks.unwrap_or_default() {
        let (sessions, sets, hard) = (week.sessions, week.sets, week.hard);
        table.push_str(&format!(
            "{},{sessions},{sets},{hard},{}\n",
            week.monday,
            week.volume.kg()
        ));
    }
    fs::write(path("weeks"), table).or_next("writing the weeks", next)
}

/// The ledger as it grows.
struct Ledger {
    archive: Archive,
    chance: Chance,
    mint: Mint,
    kit: Kit,
    body: Body,
    /// The sheets as they are at the time.
    sheets: Vec<Sheet>,
    histories: BTreeMap<ExerciseId, Vec<Performance>>,
    sets: usize,
}

/// The ledger of so many years, and how many sets are in it.
fn invent(years: u32) -> Outcome<(Archive, usize)> {
    let weeks = i64::from(WEEKS_OF_100_YEARS * years / 100);
    let end = day::at(END)?;
    let monday = (end - TimeDelta::hours(20) - TimeDelta::days(7 * weeks - 1)).max(day::at(FIRST)?);
    let mut ledger = Ledger::begun(monday)?;
    for week in 0..weeks {
        ledger.week(week, monday + TimeDelta::weeks(week))?;
    }
    Ok((ledger.archive, ledger.sets))
}

impl Ledger {
    fn begun(at: DateTime<FixedOffset>) -> Outcome<Ledger> {
        let mut ledger = Ledger {
            archive: demo(),
            chance: Chance::new(SEED),
            mint: Mint::default(),
            kit: Kit::starter(Unit::Kg),
            body: Body::new(),
            sheets: Vec::new(),
            histories: BTreeMap::new(),
            sets: 0,
        };
        let version = ledger.id(at);
        ledger.archive.lifter.put(LifterRecord {
            version,
            written: at,
            unit: Unit::Kg,
            name: None,
            welcomed: true,
            curve: Curve::default(),
        });
        let kit = KitRecord {
            version: ledger.id(at),
            written: at,
            kit: ledger.kit.clone(),
        };
        ledger.archive.kit.put(kit);
        let demo: Vec<Sheet> = ledger
            .archive
            .current_sheets()
            .into_iter()
            .cloned()
            .collect();
        // Kept as written at the beginning, so that the ids rise with the years.
        ledger.archive.sheets = stanchion::store::Kept::default();
        for sheet in demo {
            ledger.revise(longer(sheet), at);
        }
        Ok(ledger)
    }

    /// The next id.
    fn id(&mut self, at: DateTime<FixedOffset>) -> Uuid {
        let ms = u64::try_from(at.timestamp_millis()).unwrap_or(0);
        let mut random = [0; 10];
        for byte in &mut random {
            *byte = self.chance.one_of(256) as u8;
        }
        self.mint.next(ms, random)
    }

    /// Keeps a version of a sheet.
    fn revise(&mut self, mut sheet: Sheet, at: DateTime<FixedOffset>) {
        sheet.version = SheetVersion(self.id(at));
        sheet.written = at;
        self.archive
            .sheets
            .put(SheetRecord::Written(Box::new(sheet.clone())));
        match self.sheets.iter_mut().find(|known| known.id == sheet.id) {
            Some(known) => *known = sheet,
            None => self.sheets.push(sheet),
        }
    }

    /// A week: Monday, Tuesday, Thursday and Saturday, now and then a Sunday.
    fn week(&mut self, week: i64, monday: DateTime<FixedOffset>) -> Outcome<()> {
        // Once a year the sheets are written again, with other cues.
        if week % 52 == 51 {
            for mut sheet in self.sheets.clone() {
                sheet.notes = day::text(&format!("Year {} in the boathouse.", week / 52 + 2))?;
                self.revise(sheet, monday);
            }
        }
        let mass = self.body.mass(week, &mut self.chance);
        let at = monday + TimeDelta::minutes(7 * 60 + 5);
        let id = self.id(at);
        self.archive.body_mass.put(BodyMassRecord { id, at, mass });
        let sunday = self.chance.happens(0.025);
        for (turn, day) in [0, 1, 3, 5, 6].into_iter().enumerate() {
            if day == 6 && !sunday {
                continue;
            }
            let minutes = 17 * 60 + i64::try_from(self.chance.one_of(120)).unwrap_or(0);
            let begin = monday + TimeDelta::days(day) + TimeDelta::minutes(minutes);
            self.session(&self.sheets[turn % 2].clone(), begin, mass, week % 8 == 7)?;
        }
        Ok(())
    }

    fn session(
        &mut self,
        sheet: &Sheet,
        begin: DateTime<FixedOffset>,
        mass: Load,
        light: bool,
    ) -> Outcome<()> {
        let session = day::session(self, sheet, begin, mass, light)?;
        let record = SessionRecord::from_events(session.events())
            .or_next("folding an invented session", "mend xtask/src/ledger")?;
        self.sets += record.lines().count();
        for (exercise, performance) in performances_of(&record) {
            let history = self.histories.entry(exercise).or_default();
            history.push(performance);
            let surplus = history.len().saturating_sub(HISTORY);
            history.drain(..surplus);
        }
        let log = SessionLog::new(record.session, session.events().iter().cloned())
            .or_next("keeping an invented session", "mend xtask/src/ledger")?;
        self.archive.sessions.insert(record.session, log);
        Ok(())
    }
}

/// The sheet with more work sets, line by line, until it has as many as are wanted.
fn longer(mut sheet: Sheet) -> Sheet {
    while unroll(&sheet).len() < SETS {
        let before = unroll(&sheet).len();
        for at in 0..sheet.groups.len() {
            if unroll(&sheet).len() < SETS {
                for block in blocks_of(&mut sheet.groups[at]) {
                    let work = block.sets.iter_mut().rev().find(|sets| sets.kind.is_work());
                    if let Some(sets) = work.filter(|sets| sets.reserve.len() < 2) {
                        sets.count += 1;
                    }
                }
            }
        }
        if unroll(&sheet).len() == before {
            break;
        }
    }
    sheet
}

fn blocks_of(group: &mut Group) -> &mut [Block] {
    match group {
        Group::Straight(block) => std::slice::from_mut(&mut **block),
        Group::Pair { blocks, .. } => &mut blocks[..],
        Group::Circuit { blocks, .. } => blocks,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use stanchion::store::import;

    #[test]
    fn a_year_is_imported_as_it_was_invented_and_is_always_the_same() {
        let (archive, sets) = invent(1).unwrap();
        assert!(
            (200..=220).contains(&archive.sessions.len()),
            "{}",
            archive.sessions.len()
        );
        assert!((4_800..=5_600).contains(&sets), "{sets}");
        let text = write(&archive, day::at(END).unwrap());
        assert_eq!(import(Archive::default(), &text).unwrap().archive, archive);
        assert!(invent(1).unwrap().0 == archive);
    }

    #[test]
    fn strength_rises_over_the_year() {
        let (archive, _) = invent(1).unwrap();
        let squats: Vec<Load> = archive
            .sessions
            .values()
            .filter_map(|log| SessionRecord::from_events(&log.events()).ok())
            .flat_map(|record| performances_of(&record))
            .filter(|(exercise, _)| exercise.as_str() == "front-squat")
            .filter_map(|(_, done)| done.sets.iter().filter_map(|set| set.load).max())
            .collect();
        let (first, last) = (squats.first().unwrap(), squats.last().unwrap());
        assert!(last > first, "{first} {last}");
    }
}
