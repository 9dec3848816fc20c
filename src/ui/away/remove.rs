//! Sessions removed and brought back; everything erased.

use super::gather::{gather, replace, running};
use crate::device::clock;
use crate::session::SessionId;
use crate::store::SessionLog;
use crate::ui::parts::counted;
use crate::ui::people;
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use leptos::prelude::*;
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
        let on_floor = running(app);
        let removed = async {
            let (mine, _) = gather(app).await?;
            let mut without = mine.clone();
            let mut gone: Vec<SessionLog> = Vec::new();
            for (id, log) in &mine.sessions {
                if Some(*id) != on_floor && only.is_none_or(|only| only == *id) {
                    without.remove_session(*id, clock::wall());
                    gone.push(log.clone());
                }
            }
            replace(app, &mine, &without, Vec::new()).await?;
            Ok::<_, crate::device::db::DbError>(gone)
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
        let back = async {
            let (mine, _) = gather(app).await?;
            let mut with = mine.clone();
            for log in gone.iter() {
                with.restore_session(log.clone());
            }
            replace(app, &mine, &with, Vec::new()).await
        };
        match back.await {
            Ok(()) => {
                app.model.update(|model| model.gone = Arc::default());
                app.say(format!("{} back.", counted(gone.len(), "session")));
            }
            Err(error) => app.complain(error.to_string()),
        }
    });
}

/// Erases all that is kept on this phone, of every lifter, and begins anew.
pub fn erase_everything(app: Stanchion) {
    if !app.may_write() {
        return;
    }
    app.change(async move {
        if let Err(error) = people::erase_all(app).await {
            app.complain(format!("Not everything was erased. {error}"));
        }
    });
}
