//! Sessions removed and brought back; everything erased.

use super::whole::write;
use crate::device::clock;
use crate::device::db::DbError;
use crate::say;
use crate::session::SessionId;
use crate::store::{RemovedSession, SessionLog, Shelf};
use crate::ui::change::delete;
use crate::ui::keep::{put, put_json};
use crate::ui::people;
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::words::many;
use std::sync::Arc;

/// Removes one session of the ledger.
pub fn remove_session(app: Stanchion, id: SessionId) {
    remove(app, Some(id));
}

/// Removes all sessions of the ledger. Sheets, kit and settings stay.
pub fn remove_all(app: Stanchion) {
    remove(app, None);
}

fn remove(app: Stanchion, only: Option<SessionId>) {
    if !app.may_write() {
        return;
    }
    app.change(async move {
        let keep = app.keep();
        let removed = async {
            let alone = app.alone(&keep).await?;
            let gone: Vec<SessionLog> = match only {
                Some(id) => {
                    let log = keep.get(Shelf::Sessions, &id.0.to_string()).await?;
                    log.into_iter().collect()
                }
                None => keep.records(Shelf::Sessions, &mut Vec::new()).await?,
            };
            let written = clock::wall();
            let writes = gone.iter().flat_map(|log| {
                let (id, key) = (log.id(), log.id().0.to_string());
                let note = RemovedSession { id, written };
                [
                    delete(Shelf::Sessions, &key),
                    put(Shelf::Removed, &key, &note),
                ]
            });
            write(app, alone, writes.collect()).await?;
            Ok::<_, DbError>(gone)
        };
        match removed.await {
            Ok(gone) => {
                app.model.update(|model| {
                    // One that had ended and was not yet put away is gone too.
                    let ended = model.session.as_ref();
                    let ended = ended.map(|session| session.state().began.session);
                    if gone.iter().any(|log| Some(log.id()) == ended) {
                        model.session = None;
                    }
                    model.gone = Arc::new(gone);
                });
                app.go(Place::Ledger);
            }
            Err(error) => app.complain(error.to_string()),
        }
    });
}

/// Brings back the sessions that were removed last.
pub fn bring_sessions_back(app: Stanchion) {
    if !app.may_write() {
        return;
    }
    let gone = app.model.with_untracked(|model| Arc::clone(&model.gone));
    app.change(async move {
        let writes = gone.iter().flat_map(|log| {
            let key = log.id().0.to_string();
            let back = put_json(Shelf::Sessions, &key, &log.to_json());
            [back, delete(Shelf::Removed, &key)]
        });
        let back = async {
            let alone = app.alone(&app.keep()).await?;
            write(app, alone, writes.collect()).await
        };
        match back.await {
            Ok(()) => {
                app.model.update(|model| model.gone = Arc::default());
                app.say(many(gone.len(), "{n} session back.", "{n} sessions back."));
            }
            Err(error) => app.complain(error.to_string()),
        }
    });
}

/// Erases all that is kept on this phone, of every lifter, and begins again.
pub fn erase_everything(app: Stanchion) {
    if !app.may_write() {
        return;
    }
    app.change(async move {
        if let Err(error) = people::erase_all(app).await {
            app.complain(say!("Not everything was erased. {error}", error));
        }
    });
}
