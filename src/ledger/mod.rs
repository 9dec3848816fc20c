//! What was done: sessions as records, their volume load, short headings, what each exercise did last, what moved.
//!
//! All of it follows from the events of a session; nothing here is kept for its own sake. Headings and summaries are
//! kept too, so that the app starts without reading the history, and can be made anew from the events at any time.

mod compare;
mod gained;
mod heading;
mod history;
mod moved;
mod pace;
mod record;
mod share;
mod summary;
mod volume;

pub use compare::{BestSet, Comparison, EndsBefore, InPeriod, Period, best};
pub use gained::{Gained, gained};
pub use heading::{Heading, newest_first};
pub use history::{Past, pasts_of};
pub use moved::{Carried, Moved, Top, moved};
pub use pace::{CHANGE_OVERS_LEAST, CHANGE_OVERS_NEWEST, Pace};
pub use record::{BlockRecord, DoneLine, SessionRecord, Unreadable};
pub use share::{HARD_RESERVE_MAX, ShareOf, shares_of};
pub use summary::{
    ExerciseSummary, PERFORMANCES_MAX, performances_of, summaries_of, unfed_of, update,
};
pub use volume::{UnfitVolume, Volume, VolumeLoad};
