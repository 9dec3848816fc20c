//! What was changed last in the session that is open, and the way to take it back.

use crate::session::{EventId, SessionId, What};
use crate::ui::live::Live;
use crate::ui::parts::{button, dynamic, el, group, quiet};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// A session of the ledger that is changed: each change can be taken back until the next one, or until the page is left.
#[derive(Clone, Copy)]
pub struct Changing {
    pub app: Stanchion,
    pub id: SessionId,
    last: Live<Option<(&'static str, Vec<EventId>)>>,
}

impl Changing {
    /// Nothing was changed yet.
    pub fn new(app: Stanchion, id: SessionId) -> Changing {
        Changing {
            app,
            id,
            last: Live::new(None),
        }
    }

    /// Makes a change, told as `said`; several events are one change. False where it was refused, which the person is told:
    /// what was typed for it is to stay.
    pub fn make(self, said: &'static str, whats: Vec<What>) -> bool {
        let events = self.app.correct_all(whats);
        let made = events.is_some();
        if let Some(events) = events {
            self.last.set(Some((said, events)));
        }
        made
    }

    fn take_back(self) {
        let Some((_, events)) = self.last.get_untracked() else {
            return;
        };
        let newest_first = events.into_iter().rev();
        let undone = newest_first.map(|event| What::Undone { event }).collect();
        if self.app.correct_all(undone).is_some() {
            self.last.set(None);
        }
    }

    /// What was changed last, with its undo.
    pub fn view(self) -> AnyView {
        let inside = dynamic(move || match self.last.get() {
            None => ().into_any(),
            Some((said, _)) => {
                let undo = button("plain", "changed-undo", t("Undo"), move || self.take_back());
                group(Some("changed"), vec![quiet(said.to_owned()), undo])
            }
        });
        el("div")
            .class("changed")
            .set("role", "status")
            .child(inside)
            .view()
    }
}
