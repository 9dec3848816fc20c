//! What is seen: the four places and the parts they share. Only here is Leptos.

mod app;
mod away;
mod belongings;
mod body;
mod books;
mod change;
mod charts;
mod coach;
mod cueing;
mod desk;
mod drafts;
mod ended;
mod exercises;
mod floor;
mod garage;
mod gather;
mod happen;
mod history;
mod keep;
mod kit;
mod known;
mod later;
mod layout;
mod ledger;
mod live;
mod looking;
mod model;
mod own;
mod parts;
mod people;
mod place;
mod programme;
mod reading;
mod resume;
mod seen;
mod sheets;
mod stanchion;
mod start;
mod unfollow;
mod unsaved;
mod wanted;
mod welcome;
mod writing;
mod year;

pub use app::app;
// What the tests of views are made of (`tests/views/`).
pub use wanted::read_ahead;
#[doc(hidden)]
pub use {
    live::Live,
    parts::{el, svg},
};
