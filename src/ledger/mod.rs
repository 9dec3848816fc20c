//! What was done: sessions as records, their volume load, short headings, what each exercise did last, what moved.
//!
//! All of it follows from the events of a session; nothing here is kept for its own sake. Headings and summaries are
//! kept too, so that the app starts without reading the history, and can be rebuilt from the events at any time.

mod again;
mod best_now;
mod best_words;
mod bests;
mod compare;
mod find;
mod gained;
mod heading;
mod history;
mod moved;
mod much;
mod much_words;
mod pace;
mod period;
mod record;
mod shares;
mod summary;
mod tempo;
mod times;
mod volume;
mod ways;
mod week;
mod week_load;
mod week_words;

pub use again::again;
pub use best_now::{beaten_in, beaten_just_now};
pub use bests::{BEST_REPS_MAX, Best, Bests, Highest, MostVolume};
pub use compare::{BestOfPeriod, Comparison, EndsBefore, InPeriod, Period, best, best_said};
pub use find::Sought;
pub use gained::{Gained, gained};
pub use heading::{Heading, SET_NOTES_CHARS_MAX, newest_first};
pub use history::{Past, in_order, moved_as_newest, pasts_of};
pub use moved::{Carried, Moved, Top, moved};
pub use much::Much;
pub use pace::{CHANGE_OVERS_LEAST, CHANGE_OVERS_NEWEST, PACE_SESSIONS, Pace};
pub use period::{Course, course, muscles_of};
pub use record::{BlockRecord, DoneLine, SessionRecord, Unreadable};
pub use shares::{HARD_RESERVE_MAX, ShareOf, shares_of};
pub use summary::{ExerciseSummary, PERFORMANCES_MAX, performances_of, summaries_of, unfed_of};
pub use tempo::TempoKept;
pub use volume::{UnfitVolume, Volume, VolumeLoad};
#[cfg(test)]
pub(crate) use ways::tests as ways_tests;
pub use ways::{BestSet, Way, When};
pub use week::{Balance, Budgeted, MuscleSets, Week, days_told, monday_of, weeks};
pub use week_load::{DayLoads, Spread, session_load};
pub use week_words::{Band, beside, formulas, halves_said, tenths_a_week};
