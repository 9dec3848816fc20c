//! How many events a session holds, and what it still takes when it is full.

use super::event::What;
use super::machine::{Refusal, Session};

/// Most events that a session takes while it is under way.
pub const EVENTS_MAX: usize = 5000;

/// Most events that a session is read back with: room for its end and for what is said of it after that.
pub const EVENTS_KEPT_MAX: usize = 6000;

impl Session {
    /// Whether there is room for `what`: a full session can still be ended, rated, undone and, once it has ended, corrected.
    pub(super) fn has_room_for(&self, what: &What) -> Result<(), Refusal> {
        let most = match what {
            // One end is all that a full session takes: nothing follows the last place.
            What::Ended => EVENTS_KEPT_MAX,
            What::Rated { .. } | What::Undone { .. } => EVENTS_KEPT_MAX - 1,
            // Going on, it would be full all the same.
            What::Resumed => EVENTS_MAX,
            _ if self.state().has_ended() => EVENTS_KEPT_MAX - 1,
            _ => EVENTS_MAX,
        };
        if self.events().len() < most {
            Ok(())
        } else {
            Err(Refusal::Full)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::Gym;
    use super::*;
    use crate::session::EventId;
    use crate::sheet::Note;
    use uuid::Uuid;

    fn note() -> What {
        What::Noted {
            set: None,
            text: Note::new("x").unwrap(),
        }
    }

    /// A session under way with so many events.
    fn with(events: usize) -> Gym {
        let mut gym = Gym::open();
        gym.act(note()).unwrap();
        let mut all = gym.session.events().to_vec();
        let last = all.last().unwrap().clone();
        let from = last.id.0.as_u128() + 1;
        let more = (from..).map(|id| {
            let mut event = last.clone();
            event.id = EventId(Uuid::from_u128(id));
            event
        });
        all.extend(more.take(events - all.len()));
        gym.session = Session::replay(all).unwrap();
        gym.wait(60);
        gym
    }

    #[test]
    fn a_full_session_takes_no_more_but_what_settles_it() {
        let mut gym = with(EVENTS_MAX);
        assert_eq!(gym.act(note()), Err(Refusal::Full));
        let event = gym.session.newest_undoable().unwrap().id;
        gym.act(What::Undone { event }).unwrap();
        gym.act(What::Ended).unwrap();
        assert_eq!(gym.act(What::Resumed), Err(Refusal::Full));
        gym.act(note()).unwrap();
    }

    #[test]
    fn whatever_was_taken_back_it_can_be_ended() {
        let mut gym = with(EVENTS_KEPT_MAX - 1);
        let event = gym.session.newest_undoable().unwrap().id;
        assert_eq!(gym.act(What::Undone { event }), Err(Refusal::Full));
        gym.act(What::Ended).unwrap();
        assert_eq!(gym.act(note()), Err(Refusal::Full));
    }
}
