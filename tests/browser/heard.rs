//! The real audio graph rendered to memory, and what is found in its samples.

use stanchion::cues::tone::{Tone, due};
use stanchion::device::sound::graph::build;
use stanchion::sheet::{PlannedSet, Sheet, unroll};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{AudioBuffer, OfflineAudioContext};

pub const RATE: f32 = 48_000.0;
/// −1 dB of full scale.
pub const MOST: f32 = 0.891_25;
/// What counts as silence, and how long it lasts before something new is heard.
pub const SILENT: f32 = 0.001;
pub const GAP_MS: f64 = 5.0;

pub fn context(seconds: f64) -> OfflineAudioContext {
    let length = (seconds * f64::from(RATE)) as u32;
    OfflineAudioContext::new_with_number_of_channels_and_length_and_sample_rate(1, length, RATE)
        .expect("an offline context")
}

pub async fn samples(context: &OfflineAudioContext) -> Vec<f32> {
    let done = JsFuture::from(context.start_rendering().expect("rendering")).await;
    let buffer: AudioBuffer = done.expect("rendered").unchecked_into();
    buffer.get_channel_data(0).expect("samples")
}

pub async fn render(tones: &[Tone], seconds: f64, start_s: f64, volume: f32) -> Vec<f32> {
    let context = context(seconds);
    build(&context, &due(tones, 0.0, 0.0), start_s, volume).expect("a graph");
    samples(&context).await
}

pub fn peak(samples: &[f32]) -> f32 {
    samples
        .iter()
        .fold(0.0, |most, sample| most.max(sample.abs()))
}

/// Times in milliseconds at which something is heard after 5 ms of silence.
pub fn onsets(samples: &[f32]) -> Vec<f64> {
    let per_ms = f64::from(RATE) / 1000.0;
    let gap = (GAP_MS * per_ms) as usize;
    let mut quiet = gap;
    let mut found = Vec::new();
    for (index, sample) in samples.iter().enumerate() {
        if sample.abs() < SILENT {
            quiet += 1;
        } else {
            if quiet >= gap {
                found.push(index as f64 / per_ms);
            }
            quiet = 0;
        }
    }
    found
}

/// The first set of a sheet with one block.
pub fn planned(reps: u16, tempo: &str, sides: &str) -> PlannedSet {
    let text = format!(
        r#"{{"id":"00000000-0000-0000-0000-000000000007","version":"00000000-0000-0000-0000-000000000008",
        "written":"2026-01-05T18:00:00+01:00","name":"Upper B","groups":[{{"straight":{{
        "id":"00000000-0000-0000-0000-000000000001",
        "exercise":{{"id":"row","name":"Row","pattern":"pull_across","equipment":"dumbbell"}},
        "role":"hypertrophy","sets":[{{"kind":"work","count":1,"target":{{"reps":{reps}}},"tempo":"{tempo}"}}],
        "basis":"external","sides":"{sides}","rest":60,"rest_after":90}}}}]}}"#
    );
    let sheet: Sheet = serde_json::from_str(&text).expect("the sheet is well written");
    unroll(&sheet).remove(0)
}
