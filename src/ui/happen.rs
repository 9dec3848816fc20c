//! Events taken into a session of the model: all of one tap or none, and what of them is to be written.

use super::ended::into_ledger;
use super::keep::put;
use super::model::Model;
use crate::device::db::Write;
use crate::session::{Event, Refusal};
use crate::store::Shelf;

/// Where a session lies in the model.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Lies {
    /// On the floor: under way, or just ended.
    OnFloor,
    /// Open in the ledger.
    InLedger,
}

/// Takes the events of one tap, all or none, and gives what is to be written.
///
/// A session that has just ended may lie on the floor and be open in the ledger too. Both are then made the same: an
/// archive is written whole, and from an older copy it would lose what the newer one holds.
pub fn take_all(model: &mut Model, lies: Lies, events: Vec<Event>) -> Result<Vec<Write>, Refusal> {
    let place = match lies {
        Lies::OnFloor => &mut model.session,
        Lies::InLedger => &mut model.opened,
    };
    let Some(session) = place else {
        return Ok(Vec::new());
    };
    let before = (events.len() > 1).then(|| session.clone());
    for event in &events {
        if let Err(refusal) = session.take(event.clone()) {
            if let Some(before) = before {
                *session = before;
            }
            return Err(refusal);
        }
    }
    if lies == Lies::OnFloor && !session.state().has_ended() {
        let row = |event: &Event| put(Shelf::Events, &event.id.0.to_string(), event);
        return Ok(events.iter().map(row).collect());
    }
    let session = session.clone();
    let id = session.state().began.session;
    for copy in [&mut model.session, &mut model.opened]
        .into_iter()
        .flatten()
    {
        if copy.state().began.session == id {
            *copy = session.clone();
        }
    }
    Ok(into_ledger(model, &session))
}
