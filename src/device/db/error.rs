//! What can go wrong with the store, and what the person can do about it.

use super::super::js;
use crate::say;
use crate::words::t;
use std::fmt;
use wasm_bindgen::JsValue;

/// Why the store could not be opened, read or written. `Display` says what happened and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DbError {
    /// This browser has no store, or refuses it here (private window, blocked site data).
    Unavailable,
    /// The disk or this site's share of it is full.
    Full,
    /// Another tab holds an older version open and does not let go.
    Blocked,
    /// What is stored was made by a newer version of this app.
    Newer,
    /// There is no store of that name, and none was to be made.
    Absent,
    /// The browser did not answer in time.
    TimedOut,
    /// Anything else, in the browser's words.
    Other {
        /// The browser's own name and message for it.
        what: String,
    },
}

impl fmt::Display for DbError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unavailable => f.write_str(t("This browser keeps nothing for this page: it is a private window, or site data \
                 is blocked. Open the page in an ordinary window, or export before you leave.")),
            Self::Full => f.write_str(t("There is no room left to save. Export to be safe, and free some space on the phone.")),
            Self::Blocked => f.write_str(t("Another tab holds an older version of this page. Close the other tabs, then \
                 reload this one.")),
            Self::Newer => f.write_str(t("The saved data was made by a newer version of this page. Close all its tabs, \
                 then open it again to get that version.")),
            Self::Absent => {
                f.write_str(t("There is nothing stored here yet. Reload the page to begin."))
            }
            Self::TimedOut => f.write_str(t("The browser did not answer when asked to save or read. Try again; if it goes on, \
                 close the browser and open it again.")),
            Self::Other { what } => f.write_str(&say!("The browser could not save or read ({what}). Try again; if it goes on, close the \
                 browser and open it again.", what)),
        }
    }
}

impl std::error::Error for DbError {}

/// A failure on the way, before it is known whether another try is worth while.
#[derive(Clone, Debug)]
pub(super) enum Fault {
    /// The connection is gone or closing: a new one may do.
    Connection(DbError),
    /// Another try would end the same way.
    Final(DbError),
}

impl Fault {
    /// What to tell when no further try is made.
    pub(super) fn into_error(self) -> DbError {
        match self {
            Self::Connection(error) | Self::Final(error) => error,
        }
    }

    /// From an exception thrown, or an error of a request or transaction on an open connection.
    pub(super) fn of_use(error: &JsValue) -> Self {
        let other = DbError::Other {
            what: js::error_text(error),
        };
        match js::error_name(error).as_str() {
            "QuotaExceededError" => Self::Final(DbError::Full),
            // What browsers say when the connection went away under us: phones drop it when the
            // page was in the background, and a forced close aborts what was under way.
            "InvalidStateError" | "UnknownError" | "AbortError" | "TransactionInactiveError" => {
                Self::Connection(other)
            }
            _ => Self::Final(other),
        }
    }

    /// From an exception or error while opening.
    pub(super) fn of_opening(error: &JsValue) -> Self {
        let other = DbError::Other {
            what: js::error_text(error),
        };
        match js::error_name(error).as_str() {
            "QuotaExceededError" => Self::Final(DbError::Full),
            "VersionError" => Self::Final(DbError::Newer),
            // A private window says so too; it says it again at the second try.
            "InvalidStateError" => Self::Connection(DbError::Unavailable),
            "SecurityError" | "NotAllowedError" | "InvalidAccessError" => {
                Self::Final(DbError::Unavailable)
            }
            "UnknownError" | "AbortError" => Self::Connection(other),
            _ => Self::Final(other),
        }
    }
}
