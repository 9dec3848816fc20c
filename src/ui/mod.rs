//! What is seen: the four places and the parts they share. Only here is Leptos.

mod app;
mod archive;
mod away;
mod belongings;
mod change;
mod coach;
mod cueing;
mod desk;
mod drafts;
mod exercises;
mod floor;
mod gather;
mod happen;
mod keep;
mod kit;
mod layout;
mod ledger;
mod looking;
mod model;
mod own;
mod parts;
mod people;
mod place;
mod programme;
mod reading;
mod sheets;
mod stanchion;
mod start;
mod unsaved;
mod welcome;
mod writing;

pub use app::App;
