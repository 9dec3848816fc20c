//! How each cue sounds: three sets of notes, in each of which every cue has a pitch and a rhythm of its own.
//!
//! So a cue is told from the others by any ear and over music. All fundamentals lie between 0.5 and 4 kHz, where a
//! phone's speaker is loud. Pitches and rhythms are our own choice (common practice, no source); `docs/sound.md` lists
//! them.

mod clicks;
mod low;
mod tones;

use super::timeline::{Cue, Phase, Timeline};
use super::tone::{Tone, Wave};
use crate::words::t_in;

/// How the cues sound.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum SoundSet {
    /// Notes of middle length that step down with lowering and up with lifting.
    #[default]
    Tones,
    /// Short sharp strokes in patterns: they cut through music.
    Clicks,
    /// Long notes between 0.5 and 1.5 kHz, for ears that miss high ones, and for thin walls.
    Low,
}

impl SoundSet {
    /// All of them, in the order in which they are offered.
    pub const ALL: [SoundSet; 3] = [SoundSet::Tones, SoundSet::Clicks, SoundSet::Low];

    /// Its name.
    #[must_use]
    pub fn name(self) -> &'static str {
        t_in(
            "sound",
            match self {
                SoundSet::Tones => "tones",
                SoundSet::Clicks => "clicks",
                SoundSet::Low => "low",
            },
        )
    }

    fn voices(self) -> &'static Voices {
        match self {
            SoundSet::Tones => &tones::VOICES,
            SoundSet::Clicks => &clicks::VOICES,
            SoundSet::Low => &low::VOICES,
        }
    }
}

/// One note: after how many ms, for how many ms, Hz, loudness in hundredths, wave.
type Note = (u16, u16, u16, u8, Wave);

/// The notes of every cue in one set.
struct Voices {
    count_in: &'static [Note],
    go: &'static [Note],
    lower: &'static [Note],
    stretch: &'static [Note],
    lift: &'static [Note],
    squeeze: &'static [Note],
    fast: &'static [Note],
    partial: &'static [Note],
    halfway: &'static [Note],
    left: &'static [Note],
    stage_change: &'static [Note],
    side_switch: &'static [Note],
    pause_start: &'static [Note],
    set_end: &'static [Note],
    rest_half: &'static [Note],
    rest_soon: &'static [Note],
    rest_end: &'static [Note],
    /// Put behind the first beat of the last repetition.
    last_rep: Note,
}

impl Voices {
    fn notes(&self, cue: Cue) -> (&'static [Note], bool) {
        match cue {
            Cue::CountIn { .. } => (self.count_in, false),
            Cue::Go => (self.go, false),
            Cue::Rep {
                fast: true,
                last_rep,
                ..
            } => (self.fast, last_rep),
            Cue::Rep {
                phase, last_rep, ..
            } => {
                let notes = match phase {
                    Phase::Stretch => self.stretch,
                    Phase::Concentric => self.lift,
                    Phase::Squeeze => self.squeeze,
                    // The others are no part of a repetition.
                    Phase::Eccentric
                    | Phase::CountIn
                    | Phase::Hold
                    | Phase::Partial
                    | Phase::Pause
                    | Phase::ChangeOver
                    | Phase::Rest => self.lower,
                };
                (notes, last_rep)
            }
            Cue::Partial { last_rep } => (self.partial, last_rep),
            Cue::Halfway => (self.halfway, false),
            Cue::Left { .. } => (self.left, false),
            Cue::StageChange => (self.stage_change, false),
            Cue::SideSwitch => (self.side_switch, false),
            Cue::PauseStart => (self.pause_start, false),
            Cue::SetEnd => (self.set_end, false),
            Cue::RestHalf => (self.rest_half, false),
            Cue::RestSoon => (self.rest_soon, false),
            Cue::RestEnd => (self.rest_end, false),
        }
    }
}

fn tone((at, len, hz, hundredths, wave): Note) -> Tone {
    Tone {
        at_ms: u32::from(at),
        len_ms: u32::from(len),
        hz: f32::from(hz),
        gain: f32::from(hundredths) / 100.0,
        wave,
    }
}

/// The tones of one cue, from its own start.
pub fn voice(set: SoundSet, cue: Cue) -> impl Iterator<Item = Tone> {
    let voices = set.voices();
    let (notes, last_rep) = voices.notes(cue);
    let mark = last_rep.then_some(voices.last_rep);
    notes.iter().copied().chain(mark).map(tone)
}

/// The tones of a whole timeline, in order of time.
#[must_use]
pub fn tones(timeline: &Timeline, set: SoundSet) -> Vec<Tone> {
    let each = timeline.cues.iter().flat_map(|cued| {
        voice(set, cued.cue).map(|tone| Tone {
            at_ms: cued.at_ms + tone.at_ms,
            ..tone
        })
    });
    each.collect()
}

#[cfg(test)]
#[path = "voice_tests.rs"]
mod tests;
