//! Body mass and measures of one's own.

mod correct;
mod page;

pub use page::body_place;
