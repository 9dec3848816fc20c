//! Cues follow the phase: when a set or a rest begins, its whole line of tones is handed to the audio clock at once.

use super::kit::settle_sound;
use super::stanchion::{Stanchion, moment};
use crate::cues::{rest_timeline, set_timeline, tones};
use crate::device::sound::Playing;
use crate::session::{Moment, Phase};
use crate::sheet::PlannedSet;
use crate::units::Seconds;
use leptos::prelude::*;

/// Seconds counted in before the cues of a set.
pub const COUNT_IN_SECONDS: u8 = 3;

/// What sounds: the line of a set, or that of a rest.
#[derive(Debug, Clone, PartialEq)]
enum Sounding {
    Nothing,
    Set(Box<PlannedSet>, Moment),
    Rest(u64, Moment),
}

/// Lets sound follow the model.
pub fn run(app: Stanchion) {
    app.sound.with_value(settle_sound);
    let playing: StoredValue<Option<Playing>, LocalStorage> = StoredValue::new_local(None);

    let sounding = app.of(|model| {
        let Some(session) = &model.session else {
            return Sounding::Nothing;
        };
        let state = session.state();
        match &state.phase {
            Phase::Working { set, since } => match state.slot(*set) {
                Some(slot) => Sounding::Set(Box::new(slot.planned.clone()), *since),
                None => Sounding::Nothing,
            },
            Phase::Resting(rest) if !rest.held => Sounding::Rest(rest.length_ms, rest.since),
            _ => Sounding::Nothing,
        }
    });
    Effect::new(move |_| {
        let on = app.cues_on.get();
        let line = match sounding.get() {
            Sounding::Nothing => None,
            Sounding::Set(set, since) => {
                Some((tones(&set_timeline(&set, COUNT_IN_SECONDS)), since))
            }
            Sounding::Rest(length_ms, since) => {
                let seconds = Seconds::saturating(i64::try_from(length_ms / 1000).unwrap_or(0));
                Some((tones(&rest_timeline(seconds)), since))
            }
        };
        playing.update_value(|playing| {
            if let Some(before) = playing.take() {
                before.stop();
            }
            if let Some((tones, since)) = line
                && on
            {
                // What lies before now was heard, or was missed; a rest that ended meanwhile is not replayed.
                let from_ms = moment().since(&since) as f64;
                *playing = Some(app.sound.with_value(|sound| sound.play(&tones, from_ms)));
            }
        });
    });
}
