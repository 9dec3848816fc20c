//! The model: everything that the screens are a function of.

use super::ledger::LookBack;
use super::place::Place;
use crate::device::persist::Keeping as Promise;
use crate::draft::Draft;
use crate::exercises::Catalogue;
use crate::kit::Kit;
use crate::ledger::{ExerciseSummary, Heading, PACE_SESSIONS, Pace};
use crate::programme::{DoneSheet, Programme};
use crate::session::{Session, SessionId};
use crate::sheet::{ExerciseId, Sheet, SheetId};
use crate::store::{Archive, BodyEntry, LastOf, LifterRecord, SessionLog, Taken};
use crate::strength::{Curve, Today};
use crate::units::{Load, Unit};
use chrono::{DateTime, FixedOffset};
use std::collections::BTreeMap;
use std::sync::Arc;

/// How many headings are in the model, the newest ones. What a pace is told from is among them.
pub const HEADINGS_NEWEST: usize = PACE_SESSIONS;

/// How far the start has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Stage {
    /// Stored data is being read.
    #[default]
    Opening,
    /// Nobody has been here before.
    Welcome,
    /// In use.
    Open,
}

/// What becomes of what is written.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Keeping {
    /// Every acknowledged event is on disk.
    #[default]
    Safe,
    /// The browser refuses to store: nothing outlives this page.
    Nothing(String),
    /// The last write failed; what is unsaved is still in memory.
    Failing(String),
}

/// A message to the person, until it is put away.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// The sentence.
    pub text: String,
    /// True for something that went wrong.
    pub wrong: bool,
}

/// The sheet of the link that was opened. Nothing of it is kept yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shared {
    /// The code of the link.
    pub code: String,
    /// The sheet, or why there is none; nothing while it is being unpacked.
    pub read: Option<Result<Box<Sheet>, String>>,
}

/// A file that was chosen for import. Nothing of it is kept yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Incoming {
    /// Name of the file.
    pub name: String,
    /// What an import would do, in words.
    pub said: String,
    /// True when it would do nothing.
    pub nothing: bool,
    /// How many notes of removed sessions it holds.
    pub away: usize,
    /// What it holds.
    pub archive: Arc<Archive>,
}

/// Everything that the screens are a function of.
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// How far the start has come.
    pub stage: Stage,
    /// Where the person is.
    pub place: Place,
    /// The lifter's settings.
    pub lifter: Option<LifterRecord>,
    /// What stands in the garage.
    pub kit: Kit,
    /// What was measured of the body, by time.
    pub body: Vec<BodyEntry>,
    /// The exercises that are known, one's own among them.
    pub exercises: Catalogue,
    /// Sheets in their newest version.
    pub sheets: Vec<Sheet>,
    /// Programmes in their newest version; the last is followed.
    pub programmes: Vec<Programme>,
    /// The sheet that was removed last, until it is brought back or the page is left.
    pub removed: Option<Sheet>,
    /// Sheets that are being written.
    pub drafts: BTreeMap<SheetId, Draft>,
    /// What is known of each exercise.
    pub summaries: BTreeMap<ExerciseId, ExerciseSummary>,
    /// The newest sessions of the ledger, newest first, at most [`HEADINGS_NEWEST`]: see `reading.rs` for the others.
    pub headings: Vec<Heading>,
    /// How many sessions are in the ledger.
    pub sessions: usize,
    /// The newest session of each sheet.
    pub lasts: BTreeMap<SheetId, LastOf>,
    /// The session under way, or just ended and not yet put away.
    pub session: Option<Session>,
    /// The session of the ledger that is open.
    pub opened: Option<Session>,
    /// Its line in the ledger.
    pub opened_heading: Option<Heading>,
    /// How far and for what one looks back in the ledger.
    pub back: LookBack,
    /// The sheet of the link that was opened.
    pub shared: Option<Shared>,
    /// Writes that are not yet on disk.
    pub unsaved: usize,
    /// What becomes of what is written.
    pub keeping: Keeping,
    /// A message.
    pub notice: Option<Notice>,
    /// Stored rows that could not be read or were set aside by an import, as they are.
    pub aside: Vec<String>,
    /// The file that was chosen for import.
    pub incoming: Option<Incoming>,
    /// The last import, so that it can be taken back.
    pub last_import: Option<Arc<Taken>>,
    /// The sessions that were removed last, until they are brought back or the page is left.
    pub gone: Arc<Vec<SessionLog>>,
    /// When everything was exported last.
    pub exported: Option<DateTime<FixedOffset>>,
    /// After how many sessions without an export a reminder comes; none is never.
    pub remind_after: Option<u16>,
    /// What the browser promises of what is kept; nothing while it was not asked.
    pub promise: Option<Promise>,
    /// True when another tab or window writes, and this one follows.
    pub follows: bool,
    /// True when a new version of the app waits to be taken.
    pub update_waits: bool,
}

impl Default for Model {
    /// Nothing is known, and the kit is that of a usual garage.
    fn default() -> Model {
        Model {
            stage: Stage::default(),
            place: Place::default(),
            lifter: None,
            kit: Kit::starter(Unit::Kg),
            body: Vec::new(),
            exercises: Catalogue::default(),
            sheets: Vec::new(),
            programmes: Vec::new(),
            removed: None,
            drafts: BTreeMap::new(),
            summaries: BTreeMap::new(),
            headings: Vec::new(),
            sessions: 0,
            lasts: BTreeMap::new(),
            session: None,
            opened: None,
            opened_heading: None,
            back: LookBack::default(),
            shared: None,
            unsaved: 0,
            keeping: Keeping::default(),
            notice: None,
            aside: Vec::new(),
            incoming: None,
            last_import: None,
            gone: Arc::default(),
            exported: None,
            remind_after: Some(10),
            promise: None,
            follows: false,
            update_waits: false,
        }
    }
}

impl Model {
    /// The unit on display.
    #[must_use]
    pub fn unit(&self) -> Unit {
        self.lifter
            .as_ref()
            .map_or_else(|| self.kit.unit(), |lifter| lifter.unit)
    }

    /// The curve that the lifter's maximum is estimated by.
    #[must_use]
    pub fn curve(&self) -> Curve {
        let lifter = self.lifter.as_ref();
        lifter.map_or_else(Curve::default, |lifter| lifter.curve)
    }

    /// What the next load of an exercise is proposed from.
    #[must_use]
    pub fn today(&self, exercise: &ExerciseId, now: DateTime<FixedOffset>) -> Today<'_> {
        Today {
            history: self.history(exercise),
            kit: &self.kit,
            now,
            curve: self.curve(),
            body_mass: self.newest_body_mass(),
        }
    }

    /// The newest body mass.
    #[must_use]
    pub fn newest_body_mass(&self) -> Option<Load> {
        self.body.iter().filter_map(BodyEntry::mass).next_back()
    }

    /// The sheet of that id.
    #[must_use]
    pub fn sheet(&self, id: SheetId) -> Option<&Sheet> {
        self.sheets.iter().find(|sheet| sheet.id == id)
    }

    /// The programme that is followed: the one written last.
    #[must_use]
    pub fn programme(&self) -> Option<&Programme> {
        self.programmes.last()
    }

    /// The lifter's own pace, by the sessions of the ledger.
    #[must_use]
    pub fn pace(&self) -> Pace {
        Pace::of(&self.headings)
    }

    /// The line of the ledger of a session that is among the newest or open.
    #[must_use]
    pub fn heading(&self, id: SessionId) -> Option<&Heading> {
        let known = self.headings.iter().chain(&self.opened_heading);
        known.into_iter().find(|heading| heading.session == id)
    }

    /// When that sheet was done last, and in which session.
    #[must_use]
    pub fn last_of(&self, sheet: SheetId) -> Option<(DateTime<FixedOffset>, SessionId)> {
        let among = self
            .headings
            .iter()
            .filter(|heading| heading.sheet_id == sheet);
        let known = self
            .lasts
            .get(&sheet)
            .map(|last| (last.began, last.session));
        among.map(Heading::place).chain(known).max()
    }

    /// What was done so far, as a programme looks at it: the newest sessions, and of each sheet the last.
    #[must_use]
    pub fn done_sheets(&self) -> Vec<DoneSheet> {
        let newest = self.headings.iter().map(|heading| DoneSheet {
            sheet: heading.sheet_id,
            began: heading.began,
        });
        let is_known = |last: &&LastOf| self.headings.iter().any(|it| it.session == last.session);
        let older = self.lasts.values().filter(|last| !is_known(last));
        let older = older.map(|last| DoneSheet {
            sheet: last.sheet,
            began: last.began,
        });
        newest.chain(older).collect()
    }

    /// True while a session is under way.
    #[must_use]
    pub fn in_session(&self) -> bool {
        self.session
            .as_ref()
            .is_some_and(|session| !session.state().has_ended())
    }
}
