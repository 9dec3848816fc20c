//! The sessions of a file as it is written here, read in one go. A session holds its sheet as it was, so a file holds the
//! same sheet again and again: it is read once.

use super::as_written::{LastLoad, head, of_set, optional, past, value};
use super::session_log::{HEAD, HEAD_END, SessionLog, Source, TAIL_END};
use crate::json::Cursor;
use crate::session::{Began, EVENTS_KEPT_MAX, Event, What};
use crate::sheet::Sheet;
use std::sync::Arc;

/// How many sheets are remembered: those that are done in turn, and some.
const KNOWN_MAX: usize = 8;

/// How an event says that it begins a session.
const BEGINS: &str = "{\"began\":";

/// The reader of the sessions of a file.
pub(super) struct Entries<'t> {
    file: &'t Arc<String>,
    /// Where the text of the cursor begins in the file.
    base: usize,
    /// The sheets that were read last, with their text, the newest last.
    known: Vec<(&'t str, Sheet)>,
    /// The events of the entry that is being read.
    events: Vec<Event>,
    load: LastLoad<'t>,
}

impl<'t> Entries<'t> {
    /// None was read yet; the text of the cursor is the end of `file` from `base` on.
    pub fn of(file: &'t Arc<String>, base: usize) -> Entries<'t> {
        Entries {
            file,
            base,
            known: Vec::new(),
            events: Vec::new(),
            load: None,
        }
    }

    /// The log of the entry that comes next; none where it is no session, or is not laid out as it is written here. What is
    /// wrong, if anything is, is then told by whoever reads the file with the place of each value.
    pub fn next(&mut self, file: &mut Cursor<'t>) -> Option<SessionLog> {
        file.peek().ok()?;
        let from = file.place();
        past(file, HEAD)?;
        let id = value(file)?;
        past(file, HEAD_END)?;
        let events = self.events(file)?;
        past(file, TAIL_END)?;
        let source = Source {
            file: Arc::clone(self.file),
            part: self.base + from..self.base + file.place(),
        };
        SessionLog::of_entry(id, events, source)
    }

    fn events(&mut self, file: &mut Cursor<'t>) -> Option<Vec<Event>> {
        self.events.clear();
        let depth = file.depth();
        while file.next_entry(depth).ok()? {
            if self.events.len() == EVENTS_KEPT_MAX {
                return None;
            }
            let event = self.event(file)?;
            self.events.push(event);
        }
        // With room for these and no more.
        Some(self.events.drain(..).collect())
    }

    /// An event laid out as it is written here.
    fn event(&mut self, file: &mut Cursor<'t>) -> Option<Event> {
        let (id, moment) = head(file)?;
        let what = self.what(file)?;
        file.passes("}").then_some(Event {
            id,
            at: moment.at,
            tick: moment.tick,
            what,
        })
    }

    fn what(&mut self, file: &mut Cursor<'t>) -> Option<What> {
        let depth = file.depth();
        if !file.passes(BEGINS) {
            let place = file.place();
            let of_set = of_set(file, &mut self.load);
            return of_set.or_else(|| {
                file.back_to(place, depth);
                value(file)
            });
        }
        let began = self.began(file)?;
        // Nothing else may stand beside it.
        past(file, "}")?;
        Some(What::Began(Box::new(began)))
    }

    fn began(&mut self, file: &mut Cursor<'t>) -> Option<Began> {
        past(file, "{\"session\":")?;
        let session = value(file)?;
        past(file, ",\"sheet\":")?;
        let sheet = self.sheet(file)?;
        let body_mass = optional(file, ",\"body_mass\":")?;
        past(file, ",\"proposals\":")?;
        let began = Began {
            session,
            sheet,
            body_mass,
            proposals: value(file)?,
            light: optional(file, ",\"light\":")?,
            curve: optional(file, ",\"curve\":")?,
            along: optional(file, ",\"along\":")?,
        };
        past(file, "}")?;
        Some(began)
    }

    fn sheet(&mut self, file: &mut Cursor<'t>) -> Option<Sheet> {
        file.peek().ok()?;
        // The text of an object ends with its bracket: none is the beginning of another.
        let mut known = self.known.iter().rev();
        if let Some((_, sheet)) = known.find(|(text, _)| file.passes(text)) {
            return Some(sheet.clone());
        }
        let from = file.place();
        let sheet: Sheet = value(file)?;
        if self.known.len() == KNOWN_MAX {
            self.known.remove(0);
        }
        self.known.push((file.since(from), sheet.clone()));
        Some(sheet)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::json::{parse, text};
    use crate::session::{EventId, Moment, SessionId, Tick};
    use crate::store::demo;
    use uuid::Uuid;

    /// A session of the demo's `nth` sheet in which nothing was done.
    fn session(nth: usize, number: u128) -> SessionLog {
        let began = Began {
            session: SessionId(Uuid::from_u128(number)),
            sheet: demo().current_sheets()[nth].clone(),
            body_mass: None,
            proposals: Vec::new(),
            light: false,
            curve: crate::strength::Curve::default(),
            along: None,
        };
        let now = Moment {
            at: "2026-03-02T18:00:00+01:00".parse().unwrap(),
            tick: Tick { run: 1, ms: 0 },
        };
        let event = |number: u128, what| Event {
            id: EventId(Uuid::from_u128(number)),
            at: now.at,
            tick: now.tick,
            what,
        };
        let events = [
            event(number << 8, What::Began(Box::new(began))),
            event((number << 8) + 1, What::Ended),
        ];
        SessionLog::new(SessionId(Uuid::from_u128(number)), events).unwrap()
    }

    /// What is read in one go of one entry.
    fn read(entry: &str) -> Option<SessionLog> {
        let file = Arc::new(format!("\u{feff}{entry}"));
        Entries::of(&file, 3).next(&mut Cursor::new(&file[3..]))
    }

    #[test]
    fn sessions_are_read_as_one_by_one_whatever_sheet_comes_when() {
        let logs: Vec<SessionLog> = [0, 1, 0, 0, 1]
            .into_iter()
            .zip(1..)
            .map(|(nth, number)| session(nth, number))
            .collect();
        let texts: Vec<String> = logs.iter().map(SessionLog::to_json).collect();
        let file = Arc::new(format!("[{}]", texts.join(",")));
        let (mut entries, mut cursor) = (Entries::of(&file, 0), Cursor::new(&file));
        assert!(cursor.opens(b'[').unwrap());
        let mut read = Vec::new();
        while cursor.next_entry(0).unwrap() {
            read.push(entries.next(&mut cursor).unwrap());
        }
        assert_eq!(read, logs);
        assert_eq!(entries.known.len(), 2, "each sheet is read once");
        let written: Vec<String> = read.iter().map(SessionLog::to_json).collect();
        assert_eq!(written, texts);
    }

    #[test]
    fn a_beginning_with_all_that_it_may_hold_is_read_in_one_go() {
        let mut log: Vec<Event> = session(0, 1).events();
        if let What::Began(began) = &mut log[0].what {
            began.body_mass = "81.4 kg".parse().ok();
            began.light = true;
            began.curve = crate::strength::Curve::Wathan;
            began.along = Some(crate::session::Along {
                lifter: Uuid::from_u128(7),
                session: SessionId(Uuid::from_u128(8)),
                first: true,
            });
        }
        let log = SessionLog::new(SessionId(Uuid::from_u128(1)), log).unwrap();
        assert_eq!(read(&log.to_json()), Some(log));
    }

    #[test]
    fn what_is_no_session_is_left_to_the_one_who_tells_why() {
        let whole = session(0, 1).to_json();
        assert!(read(&whole).is_some());
        let spoiled = [
            whole.replace("\"proposals\"", "\"proposal\""),
            whole.replace("\"proposals\":[]", "\"proposals\":[],\"proposals\":[]"),
            whole.replace("\"proposals\":[]", "\"proposals\":[],\"more\":1"),
            whole.replace("\"proposals\":[]}", "\"proposals\":[]},\"ended\":1"),
            whole.replace("\"tick\"", "\"tock\""),
            whole.replace("\"events\"", "\"event\""),
            whole.replace("\"ended\"", "\"rested\""),
            whole.replace("\"groups\"", "\"group\""),
        ];
        for spoiled in spoiled {
            assert_ne!(spoiled, whole);
            assert!(parse::<SessionLog>(&spoiled).is_err(), "{spoiled}");
            assert_eq!(read(&spoiled), None, "{spoiled}");
        }
        assert_eq!(read(&text(&1)), None);
    }
}
