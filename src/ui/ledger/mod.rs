//! The ledger: what was done, by date; each set visible and correctable.

mod correct;
mod list;
mod session;

pub use list::LedgerPlace;
pub use session::SessionPlace;
