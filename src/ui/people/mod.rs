//! Several lifters on one phone: who is here, who sits down, who is added, renamed or removed.

mod away;
mod bar;
mod list;
mod pair;
mod place;
mod seat;
mod strip;
mod with;

pub use away::erase_all;
pub use bar::bar;
pub use list::unreadable;
pub use pair::ask;
pub use place::lifters_place;
pub use seat::arrive;
pub use strip::stay;
pub use with::{their_sheet, with_whom};
