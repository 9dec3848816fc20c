//! What every set of sounds promises: range, loudness, and no two cues that could be taken for each other.

use super::*;
use crate::cues::plan::tests::some_set;
use crate::cues::tone::due;
use crate::cues::{rest_timeline, set_timeline};
use crate::units::Seconds;
use proptest::prelude::*;
use std::mem::discriminant;

#[path = "../../tests/common/cues.rs"]
mod every;

use every::every_cue;

/// Pitches nearer than this are not counted as different: two semitones, far above what an ear tells apart.
const STEP: f32 = 1.12;
/// A difference in time that is clearly heard in a pattern this short, in milliseconds (common practice, no source).
const BEAT_MS: u32 = 30;

fn of(set: SoundSet, cue: Cue) -> Vec<Tone> {
    voice(set, cue).collect()
}

fn near(a: f32, b: f32) -> bool {
    (1.0 / STEP..STEP).contains(&(a / b))
}

/// True when one of them has a pitch that the other has not, or the same pitches in another order or wave.
fn other_pitch(a: &[Tone], b: &[Tone]) -> bool {
    let lacks = |a: &[Tone], b: &[Tone]| a.iter().any(|x| b.iter().all(|y| !near(x.hz, y.hz)));
    let order = a.len() == b.len() && a.iter().zip(b).any(|(x, y)| !near(x.hz, y.hz));
    let wave = a.iter().zip(b).any(|(x, y)| x.wave != y.wave);
    lacks(a, b) || lacks(b, a) || order || wave
}

fn other_rhythm(a: &[Tone], b: &[Tone]) -> bool {
    let apart = |x: u32, y: u32| x.abs_diff(y) >= BEAT_MS;
    a.len() != b.len()
        || a.iter()
            .zip(b)
            .any(|(x, y)| apart(x.at_ms, y.at_ms) || apart(x.len_ms, y.len_ms))
}

#[test]
fn every_note_is_in_the_range_of_a_phone_and_loud() {
    for set in SoundSet::ALL {
        for tone in every_cue().into_iter().flat_map(|cue| of(set, cue)) {
            assert!((500.0..=4000.0).contains(&tone.hz), "{set:?} {tone:?}");
            assert!((0.6..=0.95).contains(&tone.gain), "{set:?} {tone:?}");
            assert!(tone.len_ms >= 40, "{set:?} {tone:?}");
        }
    }
}

#[test]
fn every_two_cues_of_a_set_differ_in_pitch_and_in_rhythm() {
    for set in SoundSet::ALL {
        let cues = every_cue();
        for (i, &a) in cues.iter().enumerate() {
            for &b in &cues[i + 1..] {
                let (x, y) = (of(set, a), of(set, b));
                assert!(other_pitch(&x, &y), "{set:?}: {a:?} has the pitch of {b:?}");
                assert!(
                    other_rhythm(&x, &y),
                    "{set:?}: {a:?} has the rhythm of {b:?}"
                );
            }
        }
    }
}

#[test]
fn the_sets_differ_from_each_other_in_every_cue() {
    for cue in every_cue() {
        for (a, b) in [
            (SoundSet::Tones, SoundSet::Clicks),
            (SoundSet::Tones, SoundSet::Low),
            (SoundSet::Clicks, SoundSet::Low),
        ] {
            assert!(
                other_rhythm(&of(a, cue), &of(b, cue)),
                "{cue:?} has the same rhythm in {a:?} and {b:?}"
            );
        }
    }
}

#[test]
fn a_cue_is_over_before_the_next_beat() {
    for set in SoundSet::ALL {
        for cue in every_cue() {
            let end = of(set, cue)
                .iter()
                .map(|tone| tone.at_ms + tone.len_ms)
                .max();
            assert!(
                end.is_some_and(|end| end <= 1000),
                "{set:?} {cue:?}: {end:?}"
            );
        }
    }
}

/// Where the tones lie that are still to come at a time, in ms from the start of the line.
fn to_come(tones: &[Tone], from_ms: u32) -> Vec<u32> {
    let coming = due(tones, f64::from(from_ms), 0.0);
    let at = |(in_ms, _): (f64, Tone)| from_ms + in_ms.round() as u32;
    coming.into_iter().map(at).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn what_sounds_in_a_line_is_in_the_list_of_cues(set in some_set(), seconds in 0..=3600_i64, half: bool) {
        let lines = [set_timeline(&set, 3), rest_timeline(Seconds::saturating(seconds), half)];
        for cued in lines.iter().flat_map(|line| &line.cues) {
            let same = |listed: &Cue| {
                discriminant(listed) == discriminant(&cued.cue)
                    && SoundSet::ALL.iter().all(|set| of(*set, *listed) == of(*set, cued.cue))
            };
            prop_assert!(every_cue().iter().any(same), "{:?}", cued.cue);
        }
    }

    #[test]
    fn a_line_laid_anew_has_what_is_left_where_it_was(set in some_set(), from_ms in 0..120_000_u32) {
        let tones = tones(&set_timeline(&set, 3), SoundSet::Clicks);
        let left: Vec<u32> = tones.iter().map(|tone| tone.at_ms).filter(|at| *at >= from_ms).collect();
        prop_assert_eq!(to_come(&tones, from_ms), left);
    }

    #[test]
    fn a_rest_that_is_stretched_or_cut_ends_as_much_later_or_sooner(
        seconds in 30..600_i64,
        by in -15..=15_i64,
        passed_ms in 0..10_000_u32,
    ) {
        let line = |seconds| tones(&rest_timeline(Seconds::saturating(seconds), false), SoundSet::Low);
        let before = to_come(&line(seconds), passed_ms);
        let after = to_come(&line(seconds + by), passed_ms);
        let moved: Vec<i64> = before.iter().map(|at| i64::from(*at) + by * 1000).collect();
        // What a cut has put before now is left out, and nothing is heard twice.
        let moved: Vec<i64> = moved.into_iter().filter(|at| *at >= i64::from(passed_ms)).collect();
        prop_assert_eq!(after.iter().map(|at| i64::from(*at)).collect::<Vec<_>>(), moved);
    }
}

#[test]
fn each_cue_of_a_timeline_sounds_when_it_is_due() {
    let rest = rest_timeline(Seconds::new(60).unwrap(), true);
    for set in SoundSet::ALL {
        let sounding = tones(&rest, set);
        for cued in &rest.cues {
            for tone in voice(set, cued.cue) {
                let at_ms = cued.at_ms + tone.at_ms;
                assert!(sounding.contains(&Tone { at_ms, ..tone }), "{cued:?}");
            }
        }
        assert!(sounding.len() >= rest.cues.len());
    }
}
