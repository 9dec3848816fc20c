//! The air where one trains: temperature and humidity to heat index, category, caution and longer rests.

mod air;
mod category;
mod index;

pub use air::{Air, AirError, Humidity, Scale, Temperature};
pub use category::{Category, grip_words};
pub use index::{HeatIndex, heat_index};

#[cfg(test)]
mod tests;
