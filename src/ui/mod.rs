//! What is seen: the four places and the parts they share. Only here is Leptos.

mod app;
mod archive;
mod away;
mod belongings;
mod body;
mod books;
mod change;
mod charts;
mod cueing;
mod drafts;
mod exercises;
mod floor;
mod gather;
mod happen;
mod history;
mod keep;
mod kit;
mod layout;
mod ledger;
mod looking;
mod model;
mod own;
mod parts;
mod place;
mod programme;
mod reading;
mod resume;
mod seen;
mod sheets;
mod stanchion;
mod start;
mod unsaved;
mod welcome;
mod year;

pub use app::App;
