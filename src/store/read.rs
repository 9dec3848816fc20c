//! Reading a file: text in, a checked archive or a sentence out.

use super::archive::Archive;
use super::entries::Entries;
use super::file::{FORMAT, FileV1};
use super::kept::called;
use super::kept::{Kept, Put, Record, content};
use super::limits::{FILE_BYTES_MAX, MIB, SESSIONS_MAX};
use super::migrate::FormatVersion;
use super::session_log::SessionLog;
use crate::json::{Cursor, Fault, Misread, parse};
use crate::say;
use crate::words::t;
use std::fmt;
use std::sync::Arc;
use uuid::Uuid;

/// Why a file was not read. Nothing of it is taken then.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ReadError {
    /// Larger than can be read.
    TooLarge {
        /// Its bytes.
        bytes: u64,
    },
    /// No JSON.
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong there.
        why: String,
    },
    /// JSON, but not of this program.
    NotOurs,
    /// The field `version` is not there or no whole number from 1.
    NoVersion,
    /// Of a newer version of the format.
    Newer {
        /// The version that the file names.
        found: u64,
        /// The newest version that can be read.
        known: u64,
    },
    /// A value that is not allowed where it stands.
    Wrong(Misread),
    /// Two records have one id and differ.
    Twins {
        /// The place of the second in the file.
        path: String,
        /// Kind of record.
        what: &'static str,
        /// The id.
        id: Uuid,
    },
    /// Together with what is there already, there would be more than can be kept.
    TooMany {
        /// What there is too much of.
        what: &'static str,
        /// How many there would be.
        given: usize,
        /// Most that are allowed.
        most: usize,
    },
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ReadError::TooLarge { bytes } => f.write_str(&say!("the file has {bytes} bytes, at most {most} ({mib} MiB) can be read", bytes, most = FILE_BYTES_MAX, mib = FILE_BYTES_MAX / MIB)),
            // Not one character of it: it is no spoiled export, it is another file.
            ReadError::NotJson { line: 1, column: 1, .. } => f.write_str(t(
                "the file is not JSON: choose the export whose name ends in .json; a .csv is for spreadsheets",
            )),
            ReadError::NotJson { line, column, why } => f.write_str(&say!("the file is not JSON: line {line}, column {column}: {why}", line, column, why)),
            ReadError::NotOurs => f.write_str(&say!("this is no file of Stanchion: it must be a JSON object with \"format\": \"{format}\"", format = FORMAT)),
            ReadError::NoVersion => f.write_str(&say!("version: must be a whole number from 1 to {newest}", newest = FormatVersion::CURRENT.number())),
            ReadError::Newer { found, known } => f.write_str(&say!("version: the file has version {found}, this app reads versions up to {known}: update the app, then try again", found, known)),
            ReadError::Wrong(misread) => misread.fmt(f),
            ReadError::Twins { path, what, id } => f.write_str(&say!("{path}: a second {what} has the id {id} and differs from the first: give each its own", path, what = called(what), id)),
            ReadError::TooMany { what, given, most } => f.write_str(&say!("there would be {given} {what} after the import, at most {most} are allowed", given, what, most)),
        }
    }
}

impl std::error::Error for ReadError {}

/// Checks the size of a file before it is read.
///
/// # Errors
/// [`ReadError::TooLarge`] above [`FILE_BYTES_MAX`].
pub fn check_size(bytes: u64) -> Result<(), ReadError> {
    if bytes > FILE_BYTES_MAX {
        Err(ReadError::TooLarge { bytes })
    } else {
        Ok(())
    }
}

/// Reads a file of the export format, of any version so far.
///
/// # Errors
/// [`ReadError`], which names the place in the file and what is allowed.
pub fn read(text: &str) -> Result<Archive, ReadError> {
    read_file(text.to_owned())
}

/// The same of a text that is not needed elsewhere: the sessions keep it.
///
/// # Errors
/// [`ReadError`].
pub fn read_file(text: String) -> Result<Archive, ReadError> {
    check_size(text.len() as u64)?;
    let file = Arc::new(text);
    if let Some(form) = at_once(&file) {
        return gather(form);
    }
    let text = unmarked(&file);
    // What is wrong is reported with its place; but first of all, that it is no file of ours or of another version.
    match version(text)? {
        FormatVersion::V1 => gather(parse(text).map_err(ReadError::Wrong)?),
    }
}

/// The text behind a byte order mark, as some editors write.
fn unmarked(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// Reads a file as it is written here, its head before its sessions, in one go: a session keeps the text that it was read
/// from. None where anything is otherwise or wrong.
fn at_once(file: &Arc<String>) -> Option<FileV1> {
    let text = unmarked(file);
    let mut entries = Entries::of(file, file.len() - text.len());
    let mut cursor = Cursor::new(text);
    let (mut ours, mut version) = (false, None);
    let mut sessions: Option<Vec<SessionLog>> = None;
    let mut rest = String::new();
    if !cursor.opens(b'{').ok()? {
        return None;
    }
    while let Some(name) = cursor.next_name(0).ok()? {
        match &*name {
            "format" => ours = cursor.skip().ok()? == content(&FORMAT),
            "version" => version = cursor.skip().ok()?.parse().ok(),
            "sessions" => {
                if !ours || version != Some(FormatVersion::V1.number()) || sessions.is_some() {
                    return None;
                }
                let depth = cursor.depth();
                if !cursor.opens(b'[').ok()? {
                    return None;
                }
                rest.push_str(text.get(..cursor.place())?);
                let read = sessions.insert(Vec::new());
                while cursor.next_entry(depth).ok()? {
                    if read.len() == SESSIONS_MAX {
                        return None;
                    }
                    read.push(entries.next(&mut cursor)?);
                }
                // From the bracket on that closes the list.
                rest.push_str(text.get(cursor.place() - 1..)?);
            }
            _ => _ = cursor.skip().ok()?,
        }
    }
    cursor.finish().ok()?;
    let mut form: FileV1 = parse(&rest).ok()?;
    form.sessions = sessions?;
    Some(form)
}

/// Checks that the whole text is JSON, and reads the head of it; everything else is passed over.
fn version(text: &str) -> Result<FormatVersion, ReadError> {
    let mut cursor = Cursor::new(text);
    let (ours, version) = head(&mut cursor).map_err(|fault| {
        let Misread {
            line, column, why, ..
        } = cursor.misread(&fault);
        ReadError::NotJson { line, column, why }
    })?;
    if !ours {
        return Err(ReadError::NotOurs);
    }
    let number = version.and_then(|version| version.parse::<u64>().ok());
    FormatVersion::try_from(number.ok_or(ReadError::NoVersion)?)
}

/// True when the file says that it is ours, and the text of its version.
fn head<'t>(cursor: &mut Cursor<'t>) -> Result<(bool, Option<&'t str>), Fault> {
    let (mut ours, mut version) = (false, None);
    if cursor.opens(b'{')? {
        while let Some(name) = cursor.next_name(0)? {
            match &*name {
                "format" if cursor.peek()? == b'"' => ours = cursor.string()? == FORMAT,
                "version" => version = Some(cursor.skip()?),
                _ => _ = cursor.skip()?,
            }
        }
    } else {
        cursor.skip()?;
    }
    cursor.finish()?;
    Ok((ours, version))
}

fn gather(form: FileV1) -> Result<Archive, ReadError> {
    let mut archive = Archive {
        lifter: gather_list("lifter", form.lifter)?,
        kit: gather_list("kit", form.kit)?,
        body_mass: gather_list("body_mass", form.body_mass)?,
        body: gather_list("body", form.body)?,
        exercises: gather_list("exercises", form.exercises)?,
        sheets: gather_list("sheets", form.sheets)?,
        programmes: gather_list("programmes", form.programmes)?,
        removed: gather_list("removed_sessions", form.removed_sessions)?,
        ..Archive::default()
    };
    for (index, session) in form.sessions.into_iter().enumerate() {
        let twin = match archive.sessions.get_mut(&session.id()) {
            None => {
                archive.sessions.insert(session.id(), session);
                None
            }
            Some(there) => there
                .take(session)
                .into_iter()
                .find(|(_, put)| matches!(put, Put::Conflict { .. })),
        };
        if let Some((id, _)) = twin {
            return Err(ReadError::Twins {
                path: format!("sessions[{index}]"),
                what: "event",
                id: id.0,
            });
        }
    }
    archive.settle();
    Ok(archive)
}

fn gather_list<R: Record>(list: &str, records: Vec<R>) -> Result<Kept<R>, ReadError> {
    let mut kept = Kept::default();
    for (index, record) in records.into_iter().enumerate() {
        let id = record.shown_id();
        if let Put::Conflict { .. } = kept.put(record) {
            return Err(ReadError::Twins {
                path: format!("{list}[{index}]"),
                what: R::WHAT,
                id,
            });
        }
    }
    Ok(kept)
}
