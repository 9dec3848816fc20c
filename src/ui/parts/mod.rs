//! Widgets that several places share.

mod panel;
mod stepper;

pub use panel::Panel;
pub use stepper::Stepper;
