//! Several lifters on one phone: who is here, who sits down, who is added, renamed or removed.

mod away;
mod bar;
mod list;
mod place;
mod seat;

pub use away::erase_all;
pub use bar::bar;
pub use place::LiftersPlace;
pub use seat::arrive;
