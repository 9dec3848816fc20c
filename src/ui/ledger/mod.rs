//! The ledger: what was done, by date; each set visible and correctable; weeks, and a period on paper.

mod back;
mod calendar;
mod changed;
mod correct;
mod list;
mod notes;
mod place;
mod report;
mod report_words;
mod session;
mod sets;
mod week_charts;
mod weeks;

pub use back::LookBack;
pub use list::name_of;
pub use place::ledger_place;
pub use report::report_place;
pub use session::session_place;
pub use weeks::weeks_place;
