//! A past of many weeks, as a file to import: both demo sheets in turn, loads that rise, notes, ratings, body mass.

use chrono::{DateTime, Datelike, FixedOffset, TimeDelta};
use stanchion::kit::Kit;
use stanchion::session::{Began, Event, EventId, Mint, Moment, Session, SessionId, Tick, What};
use stanchion::sheet::{Line, Note, Sheet};
use stanchion::store::{Archive, BodyMassRecord, LifterRecord, SessionLog, demo, write};
use stanchion::strength::{Curve, Today, propose};
use stanchion::units::{Load, Reps, Rir, Rpe, Unit};
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

/// A session on its way.
struct Course {
    mint: Mint,
    now: Moment,
    session: Option<Session>,
}

impl Course {
    fn wait(&mut self, seconds: i64) {
        self.now.at += TimeDelta::seconds(seconds);
        self.now.tick.ms += seconds.unsigned_abs() * 1000;
    }

    fn act(&mut self, what: What) {
        let ms = u64::try_from(self.now.at.timestamp_millis()).unwrap();
        let event = Event {
            id: EventId(self.mint.next(ms, [7; 10])),
            at: self.now.at,
            tick: self.now.tick,
            what,
        };
        match &mut self.session {
            Some(session) => session.take(event).expect("the event fits"),
            None => self.session = Some(Session::begin(event).expect("it begins")),
        }
    }
}

/// One session on `sheet` in week `week` from the first, every set done; the load rises by a hundredth a week.
fn session(sheet: &Sheet, kit: &Kit, at: DateTime<FixedOffset>, week: u64) -> SessionLog {
    let mut course = Course {
        mint: Mint::default(),
        now: Moment {
            at,
            tick: Tick { run: 1, ms: 1_000 },
        },
        session: None,
    };
    let today = Today {
        history: &[],
        kit,
        now: at,
        curve: Curve::default(),
        body_mass: Some(Load::whole_kg(80)),
    };
    let proposals = sheet.blocks().map(|block| propose(block, &today)).collect();
    let ms = u64::try_from(at.timestamp_millis()).unwrap();
    let id = SessionId(course.mint.next(ms, [3; 10]));
    course.act(What::Began(Box::new(Began {
        session: id,
        sheet: sheet.clone(),
        body_mass: Some(Load::whole_kg(80)),
        proposals,
        light: false,
        along: None,
        curve: Curve::default(),
    })));
    let mut n = 0;
    while let Some(slot) = course.session.as_ref().unwrap().state().current().cloned() {
        let set = slot.planned.key;
        let board = course
            .session
            .as_ref()
            .unwrap()
            .state()
            .board(&slot, kit, &[]);
        course.wait(75);
        course.act(What::SetStarted { set });
        course.wait(40);
        let load = board.load.map(|load| {
            let hundredths = rust_decimal::Decimal::from(100 + week);
            load.times(hundredths / rust_decimal::Decimal::ONE_HUNDRED)
        });
        let mut done = slot.as_prescribed(load);
        n += 1;
        if let (Some(reps), true) = (done.amount.reps(), n % 3 == 0) {
            done = done.with_reps(Reps::saturating(i64::from(reps) - 1));
        }
        done = done.with_reserve((n % 4 != 0).then(|| Rir::saturating(i64::from(n % 3))));
        course.act(What::SetDone {
            set,
            done,
            proposed: board.prescribed,
        });
    }
    course.wait(60);
    course.act(What::Ended);
    course.wait(900);
    if week % 5 != 3 {
        course.act(What::Rated {
            rpe: Rpe::saturating(5 + i64::try_from(week % 4).unwrap()),
        });
    }
    if week % 4 == 1 {
        let text = Note::new(&format!("Cold boathouse, week {week}. Left knee stiff.")).unwrap();
        course.act(What::Noted { set: None, text });
    }
    SessionLog::new(id, course.session.unwrap().events().to_vec()).unwrap()
}

/// Writes a file of so many weeks up to the last full one before today: three sessions in each but every sixth, which
/// has none. Gives the file and how many sessions it holds.
pub fn past(folder: &Path, weeks: u64) -> (PathBuf, usize) {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap();
    let today = DateTime::from_timestamp_millis(i64::try_from(since.as_millis()).unwrap());
    let today = today.unwrap().fixed_offset();
    let gone = i64::from(today.weekday().num_days_from_monday());
    let noon = today.date_naive().and_hms_opt(12, 0, 0).unwrap();
    let this_monday = noon.and_utc().fixed_offset() - TimeDelta::days(gone);
    let demo = demo();
    let sheets = demo.current_sheets();
    let kit = Kit::starter(Unit::Kg);
    let mut archive = Archive::default();
    let mut mint = Mint::default();
    for week in 0..weeks {
        let back = i64::try_from(weeks - week).unwrap();
        let monday = this_monday - TimeDelta::days(7 * back);
        let ms = u64::try_from(monday.timestamp_millis()).unwrap();
        archive.body_mass.put(BodyMassRecord {
            id: mint.next(ms, [5; 10]),
            at: monday,
            mass: format!("{}.{} kg", 80 + week / 10, week % 10)
                .parse()
                .unwrap(),
        });
        if week % 6 == 5 {
            continue;
        }
        for (n, day) in [0, 2, 4].into_iter().enumerate() {
            let sheet = sheets[(week as usize + n) % sheets.len()];
            let log = session(sheet, &kit, monday + TimeDelta::days(day), week);
            archive.sessions.insert(log.id(), log);
        }
    }
    let ms = u64::try_from(today.timestamp_millis()).unwrap();
    archive.lifter.put(LifterRecord {
        version: mint.next(ms, [9; 10]),
        written: today,
        unit: Unit::Kg,
        name: Some(Line::new("Runa Boatwright").unwrap()),
        welcomed: true,
        curve: Curve::default(),
    });
    let count = archive.sessions.len();
    let file = folder.join(format!("past-{weeks}.json"));
    std::fs::write(&file, write(&archive, today)).unwrap();
    (file, count)
}
