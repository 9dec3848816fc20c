//! How each cue sounds: few notes, told apart by pitch and rhythm, so that it works for any ear and over music.
//!
//! All between 0.5 and 4 kHz, where a phone's speaker is loud. Single notes are a third apart at least; steps down go
//! with lowering, steps up with lifting. The pitches are our own choice (common practice, no source).

use super::timeline::{Cue, Phase, Timeline};
use super::tone::{Tone, Wave};

/// One note: after how many ms, for how many ms, Hz, loudness, wave.
type Note = (u32, u32, f32, f32, Wave);

use Wave::{Sine, Square, Triangle};

const COUNT_IN: &[Note] = &[(0, 80, 800.0, 0.6, Sine)];
const GO: &[Note] = &[(0, 250, 1600.0, 0.8, Triangle)];
const LOWER: &[Note] = &[(0, 110, 1200.0, 0.7, Sine), (130, 110, 800.0, 0.7, Sine)];
const STRETCH: &[Note] = &[(0, 90, 600.0, 0.7, Triangle)];
const LIFT: &[Note] = &[(0, 110, 800.0, 0.7, Sine), (130, 110, 1200.0, 0.7, Sine)];
const SQUEEZE: &[Note] = &[(0, 90, 2500.0, 0.5, Sine)];
const FAST: &[Note] = &[(0, 180, 2000.0, 0.6, Square)];
const PARTIAL: &[Note] = &[(0, 60, 1000.0, 0.7, Triangle)];
const HALFWAY: &[Note] = &[(0, 90, 1000.0, 0.6, Sine), (150, 90, 1000.0, 0.6, Sine)];
const LEFT: &[Note] = &[(0, 80, 1250.0, 0.7, Sine)];
const STAGE_CHANGE: &[Note] = &[
    (0, 70, 1200.0, 0.7, Triangle),
    (100, 70, 1500.0, 0.7, Triangle),
    (200, 70, 1900.0, 0.7, Triangle),
];
const SIDE_SWITCH: &[Note] = &[
    (0, 120, 1900.0, 0.7, Triangle),
    (150, 120, 1200.0, 0.7, Triangle),
    (300, 120, 1900.0, 0.7, Triangle),
];
const PAUSE_START: &[Note] = &[(0, 120, 1600.0, 0.6, Sine), (150, 200, 600.0, 0.7, Sine)];
const SET_END: &[Note] = &[
    (0, 150, 1050.0, 0.8, Triangle),
    (180, 150, 1320.0, 0.8, Triangle),
    (360, 350, 1760.0, 0.8, Triangle),
];
const REST_SOON: &[Note] = &[
    (0, 90, 700.0, 0.6, Sine),
    (150, 90, 700.0, 0.6, Sine),
    (300, 90, 700.0, 0.6, Sine),
];
const REST_END: &[Note] = &[
    (0, 180, 1400.0, 0.8, Square),
    (220, 180, 1400.0, 0.8, Square),
    (440, 400, 2100.0, 0.8, Square),
];
/// Put behind the first beat of the last repetition.
const LAST_REP: Note = (320, 110, 3000.0, 0.5, Sine);

fn notes(cue: Cue) -> (&'static [Note], bool) {
    match cue {
        Cue::CountIn { .. } => (COUNT_IN, false),
        Cue::Go => (GO, false),
        Cue::Rep {
            fast: true,
            last_rep,
            ..
        } => (FAST, last_rep),
        Cue::Rep {
            phase, last_rep, ..
        } => {
            let notes = match phase {
                Phase::Stretch => STRETCH,
                Phase::Concentric => LIFT,
                Phase::Squeeze => SQUEEZE,
                _ => LOWER,
            };
            (notes, last_rep)
        }
        Cue::Partial { last_rep } => (PARTIAL, last_rep),
        Cue::Halfway => (HALFWAY, false),
        Cue::Left { .. } => (LEFT, false),
        Cue::StageChange => (STAGE_CHANGE, false),
        Cue::SideSwitch => (SIDE_SWITCH, false),
        Cue::PauseStart => (PAUSE_START, false),
        Cue::SetEnd => (SET_END, false),
        Cue::RestSoon => (REST_SOON, false),
        Cue::RestEnd => (REST_END, false),
    }
}

/// The tones of one cue, from its own start.
fn voice(cue: Cue) -> impl Iterator<Item = Tone> {
    let (notes, last_rep) = notes(cue);
    let mark = last_rep.then_some(LAST_REP);
    let all = notes.iter().copied().chain(mark);
    all.map(|(at_ms, len_ms, hz, gain, wave)| Tone {
        at_ms,
        len_ms,
        hz,
        gain,
        wave,
    })
}

/// The tones of a whole timeline, in order of time.
#[must_use]
pub fn tones(timeline: &Timeline) -> Vec<Tone> {
    let each = timeline.cues.iter().flat_map(|cued| {
        voice(cued.cue).map(|tone| Tone {
            at_ms: cued.at_ms + tone.at_ms,
            ..tone
        })
    });
    each.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn every_cue() -> Vec<Cue> {
        let mut cues = vec![
            Cue::CountIn { left: 1 },
            Cue::Go,
            Cue::Halfway,
            Cue::Left { seconds: 1 },
            Cue::StageChange,
            Cue::SideSwitch,
            Cue::PauseStart,
            Cue::SetEnd,
            Cue::RestSoon,
            Cue::RestEnd,
        ];
        for last_rep in [false, true] {
            cues.push(Cue::Partial { last_rep });
            for (phase, fast) in [
                (Phase::Eccentric, false),
                (Phase::Stretch, false),
                (Phase::Concentric, false),
                (Phase::Squeeze, false),
                (Phase::Concentric, true),
            ] {
                cues.push(Cue::Rep {
                    phase,
                    fast,
                    last_rep,
                });
            }
        }
        cues
    }

    #[test]
    fn every_note_is_in_the_range_of_a_phone() {
        for tone in every_cue().into_iter().flat_map(voice) {
            assert!((500.0..=4000.0).contains(&tone.hz), "{tone:?}");
            assert!(tone.gain > 0.0 && tone.gain <= 0.8, "{tone:?}");
            assert!(tone.len_ms >= 50, "{tone:?}");
        }
    }

    #[test]
    fn cues_of_as_many_notes_differ_by_a_tone_at_least() {
        let cues = every_cue();
        for (i, &a) in cues.iter().enumerate() {
            for &b in &cues[i + 1..] {
                let (a_tones, b_tones): (Vec<Tone>, Vec<Tone>) =
                    (voice(a).collect(), voice(b).collect());
                let other_rhythm = a_tones.len() != b_tones.len();
                let other_pitch = a_tones.iter().zip(&b_tones).any(|(a, b)| {
                    let ratio = a.hz / b.hz;
                    !(1.0 / 1.12..1.12).contains(&ratio)
                });
                assert!(other_rhythm || other_pitch, "{a:?} sounds like {b:?}");
            }
        }
    }
}
