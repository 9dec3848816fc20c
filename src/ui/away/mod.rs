//! Getting data out, in and away: export, import and its undo, removal, the reminder to export.

mod bring;
mod export;
mod farewell;
mod reminder;
mod remove;
mod whole;

pub use bring::{
    chosen_file, import_file, look, open_received, open_sheet_file, read_imports, take_import_back,
};
pub use export::{Form, export, not_in_the_file, refused, share};
pub use farewell::{Farewell, farewell};
pub use reminder::{EVERY, nudge, read_settings, remind_after};
pub use remove::{bring_sessions_back, erase_everything, remove_all, remove_session};
