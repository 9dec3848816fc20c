//! The model: everything that the screens are a function of.

use super::garage::Garage;
use super::ledger::LookBack;
use super::place::Place;
use crate::device::persist::Keeping as Promise;
use crate::draft::Draft;
use crate::exercises::Catalogue;
use crate::kit::Kit;
use crate::ledger::{ExerciseSummary, Heading, PACE_SESSIONS};
use crate::order::Map;
use crate::programme::{LightWeek, Programme};
use crate::say;
use crate::session::{Along, Moment, Session, SessionId};
use crate::sheet::{ExerciseId, Sheet, SheetId};
use crate::store::{
    Archive, BodyEntry, DATABASE, LastOf, LifterRecord, People, Person, SessionLog, Taken,
};
use crate::strength::{Curve, Today};
use crate::units::{Load, Unit};
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use std::sync::Arc;
use uuid::Uuid;

/// How many headings are in the model, the newest ones. The sessions that a pace is computed from are among them.
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
    /// What of it would be new.
    pub gives: Gives,
    /// How many notes of removed sessions it holds.
    pub away: usize,
    /// What it holds.
    pub archive: Arc<Archive>,
}

/// What of a file would be new here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gives {
    /// Nothing.
    Nothing,
    /// Only records of which one's own stay: they are set aside.
    Aside,
    /// Records that are taken in, which can be taken back.
    News,
}

/// What one begins together with another one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pairing {
    /// The sheet.
    pub sheet: SheetId,
    /// The light week that it is begun in.
    pub light: Option<LightWeek>,
}

/// Two lifters at one rack, as one of them sees it.
#[derive(Debug, Clone, PartialEq)]
pub struct Pair {
    /// The other one; its `first` says that this one began.
    pub along: Along,
    /// One's own session.
    pub session: SessionId,
    /// The kit that both use: that of the one who began.
    pub kit: Arc<Kit>,
    /// True while the board does not turn by itself.
    pub stays: bool,
}

/// Everything that the screens are a function of.
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// How far the start has come.
    pub stage: Stage,
    /// Where the person is.
    pub place: Place,
    /// Those who train with this phone; none while there was never more than one.
    pub people: People,
    /// Which of them this is.
    pub who: Option<Uuid>,
    /// Whose export is looked at, where this is not one of those who train here: nothing of it is kept or changed.
    pub looks_at: Option<String>,
    /// Who is put aside: the one who trains along, or oneself while another one's export is looked at.
    pub other: Option<Box<Model>>,
    /// Who shall train along in the session to be begun.
    pub with: Option<Uuid>,
    /// What one begins, while the other one's sheet is chosen.
    pub pairing: Option<Pairing>,
    /// With whom this session is done at one rack; the other one is in `other`.
    pub pair: Option<Pair>,
    /// The lifter's settings.
    pub lifter: Option<LifterRecord>,
    /// What stands in the garage.
    pub kit: Garage,
    /// The kit of whoever was here before, with their name: most who share a phone share a garage.
    pub kit_before: Option<(String, Garage)>,
    /// The version of the kit that this page kept last, and when.
    pub kit_kept: Option<(Uuid, Moment)>,
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
    pub drafts: Map<SheetId, Draft>,
    /// What is known of each exercise.
    pub summaries: Map<ExerciseId, ExerciseSummary>,
    /// The newest sessions of the ledger, newest first, at most [`HEADINGS_NEWEST`]: see `reading.rs` for the others.
    pub headings: Vec<Heading>,
    /// How many sessions are in the ledger.
    pub sessions: usize,
    /// The newest session of each sheet in which a set was done.
    pub lasts: Map<SheetId, LastOf>,
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
            people: People::default(),
            who: None,
            looks_at: None,
            other: None,
            with: None,
            pairing: None,
            pair: None,
            lifter: None,
            kit: Garage::default(),
            kit_before: None,
            kit_kept: None,
            body: Vec::new(),
            exercises: Catalogue::default(),
            sheets: Vec::new(),
            programmes: Vec::new(),
            removed: None,
            drafts: Map::new(),
            summaries: Map::new(),
            headings: Vec::new(),
            sessions: 0,
            lasts: Map::new(),
            session: None,
            opened: None,
            opened_heading: None,
            back: LookBack::default(),
            shared: None,
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
    /// A model of another lifter on the same phone: nothing of this one is in it but the kit, for one who has none yet.
    #[must_use]
    pub fn of_another(&mut self) -> Model {
        let named = self.person().map(|person| person.name.to_string());
        let kit = named.filter(|_| self.lifter.is_some());
        let kit = kit.map(|name| (name, self.kit.clone()));
        let mut another = Model {
            kit_before: kit.or_else(|| self.kit_before.take()),
            ..Model::default()
        };
        another.share_phone(self);
        another
    }

    /// Exchanges this lifter with the one that is put aside. What belongs to the phone stays.
    pub fn exchange(&mut self) {
        if let Some(mut other) = self.other.take() {
            std::mem::swap(self, &mut other);
            self.share_phone(&mut other);
            self.other = Some(other);
        }
    }

    /// Takes what belongs to the phone and to no lifter from the model of another.
    fn share_phone(&mut self, other: &mut Model) {
        self.stage = other.stage;
        self.place = other.place.clone();
        self.people = other.people.clone();
        self.shared = other.shared.take();
        self.notice = other.notice.take();
        self.remind_after = other.remind_after;
        self.promise = other.promise;
        self.update_waits = other.update_waits;
        // Whether writes fail is the disk's; that nothing is kept belongs to one database.
        if !self.keeps_nothing() && !other.keeps_nothing() {
            self.keeping = other.keeping.clone();
        }
    }

    /// The one who trains along.
    #[must_use]
    pub fn partner(&self) -> Option<&Model> {
        self.pair.as_ref()?;
        self.other.as_deref()
    }

    /// What can be loaded here: one's own kit, or that of the one who began.
    #[must_use]
    pub fn rack(&self) -> &Kit {
        self.pair.as_ref().map_or(&self.kit, |pair| &pair.kit)
    }

    /// True while a session is under way, of the lifter or of the one who trains along.
    #[must_use]
    pub fn any_in_session(&self) -> bool {
        self.in_session() || self.partner().is_some_and(Model::in_session)
    }

    /// The lifter, where there are several.
    #[must_use]
    pub fn person(&self) -> Option<&Person> {
        self.people.get(self.who?)
    }

    /// The name of a preference that is this lifter's own: that of the phone's first lifter is `key`.
    #[must_use]
    pub fn pref(&self, key: &str) -> String {
        match self.person() {
            Some(person) if person.database != DATABASE => format!("{key}.{}", person.id),
            _ => key.to_owned(),
        }
    }

    /// Why nothing may be changed here; none where it may.
    #[must_use]
    pub fn only_looks(&self) -> Option<String> {
        if let Some(name) = &self.looks_at {
            return Some(say!(
                "You look at {name}'s ledger: nothing is changed here. Close it first.",
                name
            ));
        }
        let said = t("Another tab or window of Stanchion is in use. Close it, or take over here.");
        self.follows.then(|| said.to_owned())
    }

    /// True where nothing outlives this page.
    #[must_use]
    pub fn keeps_nothing(&self) -> bool {
        matches!(self.keeping, Keeping::Nothing(_))
    }

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
            kit: self.rack(),
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

    /// True while a session is under way.
    #[must_use]
    pub fn in_session(&self) -> bool {
        self.session
            .as_ref()
            .is_some_and(|session| !session.state().has_ended())
    }
}
