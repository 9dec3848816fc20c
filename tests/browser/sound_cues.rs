//! The cues of every set of sounds as they are rendered: on time, apart from each other, never too loud.

use crate::figures::figure;
use crate::heard::{MOST, RATE, onsets, peak, planned, render};
use stanchion::cues::tone::Tone;
use stanchion::cues::{
    Cue, Phase, SoundSet, Timeline, demonstration, rest_timeline, set_timeline, tones, voice,
};
use stanchion::units::Seconds;
use wasm_bindgen_test::wasm_bindgen_test;

#[path = "../common/cues.rs"]
mod every;

use every::every_cue;

/// The smallest change of a beat that is heard: 2.5 % of it (Friberg & Sundberg 1995, J Acoust Soc Am 98(5):2524–2531).
const HEARD_SHARE: f64 = 0.025;
/// The shortest beat of a tempo, in ms.
const BEAT_MS: f64 = 1000.0;
/// What is asked of the rendered graph, in ms; far below what is heard.
const MOST_LATE_MS: f64 = 1.0;

/// Two spectra that are more alike than this, as the cosine between them, could be taken for each other.
const MOST_ALIKE: f32 = 0.95;

fn some_timelines() -> [Timeline; 3] {
    [
        demonstration(),
        set_timeline(&planned(2, "2/1/X/1", "each_in_turn"), 3),
        rest_timeline(Seconds::saturating(30), true),
    ]
}

#[wasm_bindgen_test]
async fn measured_every_tone_of_every_set_starts_when_it_is_meant() {
    const { assert!(MOST_LATE_MS < HEARD_SHARE * BEAT_MS) };
    let mut worst = 0.0_f64;
    // A start that falls on no sample.
    let start_s = 0.010_203_7;
    for set in SoundSet::ALL {
        for timeline in some_timelines() {
            let tones = tones(&timeline, set);
            let seconds = f64::from(timeline.length_ms()) / 1000.0 + 1.5;
            let wave = render(&tones, seconds, start_s, 1.0).await;
            assert!(peak(&wave) <= MOST, "{set:?}: {}", peak(&wave));
            assert!(peak(&wave) > 0.5, "{set:?} is loud: {}", peak(&wave));
            let heard = onsets(&wave);
            assert_eq!(heard.len(), tones.len(), "{set:?}: {heard:?} of {tones:?}");
            for (tone, heard) in tones.iter().zip(heard) {
                worst = worst.max((heard - f64::from(tone.at_ms) - start_s * 1000.0).abs());
            }
        }
    }
    figure("cue.offline_error_ms_max", worst);
    assert!(worst <= MOST_LATE_MS, "{worst} ms");
}

#[wasm_bindgen_test]
async fn measured_ten_minutes_of_beats_do_not_drift_by_a_sample() {
    let timeline = set_timeline(&planned(60, "5/0/5/0", "both"), 0);
    assert_eq!(timeline.length_ms(), 600_000);
    let tones = tones(&timeline, SoundSet::Tones);
    let found = onsets(&render(&tones, 601.0, 0.0, 1.0).await);
    assert_eq!(found.len(), tones.len());
    // The same note has the same samples, so its onset is found at the same place in each.
    let per_ms = f64::from(RATE) / 1000.0;
    let late = |at: usize| ((found[at] - f64::from(tones[at].at_ms)) * per_ms).round();
    let first: Vec<(u32, f64)> = (0..4).map(|at| (tones[at].hz as u32, late(at))).collect();
    let mut drift = 0.0_f64;
    for (at, tone) in tones.iter().enumerate() {
        let like = first.iter().find(|(hz, _)| *hz == tone.hz as u32);
        let (_, before) = like.copied().unwrap_or((0, late(at)));
        drift = drift.max((late(at) - before).abs());
    }
    figure("cue.drift_samples_10min", drift);
    assert_eq!(drift, 0.0);
}

/// The amplitudes of a sound on a scale of semitones from 450 Hz to 9 kHz, mean over frames of 40 ms.
fn spectrum(wave: &[f32], rate: f32) -> Vec<f32> {
    let frame = (0.04 * rate) as usize;
    let window: Vec<f32> = (0..frame)
        .map(|n| 0.5 - 0.5 * (std::f32::consts::TAU * n as f32 / frame as f32).cos())
        .collect();
    let bins = (0..52).map(|n| 450.0 * 2.0_f32.powf(n as f32 / 12.0));
    bins.map(|hz| {
        let step = std::f32::consts::TAU * hz / rate;
        let turn = 2.0 * step.cos();
        let mut power = 0.0;
        for begin in (0..wave.len() - frame).step_by(frame / 2) {
            let (mut one, mut two) = (0.0_f32, 0.0_f32);
            for (sample, weight) in wave[begin..begin + frame].iter().zip(&window) {
                let next = sample * weight + turn * one - two;
                two = one;
                one = next;
            }
            power += one * one + two * two - turn * one * two;
        }
        power.max(0.0).sqrt()
    })
    .collect()
}

fn likeness(a: &[f32], b: &[f32]) -> f32 {
    let dot = |a: &[f32], b: &[f32]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f32>();
    dot(a, b) / (dot(a, a) * dot(b, b)).sqrt()
}

#[wasm_bindgen_test]
async fn every_cue_of_a_set_has_a_spectrum_of_its_own() {
    for set in SoundSet::ALL {
        let mut spectra = Vec::new();
        // The mark of the last repetition is put behind a cue that sounds the same without it.
        let marked = |cue: &Cue| {
            matches!(
                cue,
                Cue::Rep { last_rep: true, .. } | Cue::Partial { last_rep: true }
            )
        };
        for cue in every_cue().into_iter().filter(|cue| !marked(cue)) {
            let tones: Vec<Tone> = voice(set, cue).collect();
            let wave = render(&tones, 1.05, 0.02, 1.0).await;
            spectra.push((cue, spectrum(&wave, RATE)));
        }
        let mut worst = 0.0_f32;
        for (i, (a, of_a)) in spectra.iter().enumerate() {
            for (b, of_b) in &spectra[i + 1..] {
                let alike = likeness(of_a, of_b);
                assert!(alike <= MOST_ALIKE, "{set:?}: {a:?} is like {b:?}: {alike}");
                worst = worst.max(alike);
            }
        }
        figure(&format!("cue.most_alike_{}", set.name()), f64::from(worst));
    }
}
