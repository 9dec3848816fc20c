//! Tones as nodes of an audio graph, on any context: the live one, or one that renders to memory
//! for a test. Times are in seconds on the context's own clock.

use crate::cues::tone::{Tone, Wave, loudest};
use wasm_bindgen::JsValue;
use web_sys::{BaseAudioContext, GainNode, OscillatorNode, OscillatorType};

/// Rise from silence, and fall back to it: long enough not to click, too short to blur a beat.
const ATTACK_S: f64 = 0.004;
const RELEASE_S: f64 = 0.012;
/// Fade when everything is stopped at once.
const FADE_S: f64 = 0.015;
/// Where the largest sum may come: −1.4 dB, a margin below the −1 dB that is the aim. (Browsers
/// scale their waves so that the overshoot of a square wave's corners stays within its gain.)
const CEILING: f32 = 0.85;

/// A list of tones that has been handed to a context as a whole.
pub struct Graph {
    bus: GainNode,
    /// What keeps the list's largest sum under the ceiling at full volume.
    level: f32,
    voices: Vec<OscillatorNode>,
}

/// Hands the whole list to the context: each tone starts its milliseconds after `start_s`.
/// `volume` is 0 to 1.
///
/// # Errors
/// What the context threw; then nothing of the list sounds.
pub fn build(
    context: &BaseAudioContext,
    tones: &[(f64, Tone)],
    start_s: f64,
    volume: f32,
) -> Result<Graph, JsValue> {
    let bus = context.create_gain()?;
    let level = CEILING / loudest(tones).max(1.0);
    bus.gain().set_value(level * volume);
    // Connected last: a list that failed half-way stays silent.
    let voices = tones
        .iter()
        .map(|(after_ms, tone)| voice(context, &bus, tone, start_s + after_ms / 1000.0))
        .collect::<Result<_, _>>()?;
    bus.connect_with_audio_node(&context.destination())?;
    Ok(Graph { bus, level, voices })
}

fn shape(wave: Wave) -> OscillatorType {
    match wave {
        Wave::Sine => OscillatorType::Sine,
        Wave::Triangle => OscillatorType::Triangle,
        Wave::Square => OscillatorType::Square,
    }
}

fn voice(
    context: &BaseAudioContext,
    bus: &GainNode,
    tone: &Tone,
    start: f64,
) -> Result<OscillatorNode, JsValue> {
    let length = f64::from(tone.len_ms) / 1000.0;
    // A tone shorter than its fades keeps their proportion.
    let shrink = (length / (ATTACK_S + RELEASE_S)).min(1.0);
    let end = start + length;
    let loud = tone.gain.clamp(0.0, 1.0);

    let envelope = context.create_gain()?;
    let gain = envelope.gain();
    gain.set_value(0.0);
    gain.set_value_at_time(0.0, start)?;
    gain.linear_ramp_to_value_at_time(loud, start + ATTACK_S * shrink)?;
    gain.set_value_at_time(loud, end - RELEASE_S * shrink)?;
    gain.linear_ramp_to_value_at_time(0.0, end)?;
    envelope.connect_with_audio_node(bus)?;

    let voice = context.create_oscillator()?;
    voice.set_type(shape(tone.wave));
    voice.frequency().set_value(tone.hz);
    voice.connect_with_audio_node(&envelope)?;
    voice.start_with_when(start)?;
    voice.stop_with_when(end)?;
    Ok(voice)
}

impl Graph {
    /// Fades what sounds and takes back what has not begun. `now_s` is the context's time.
    pub fn fade(&self, now_s: f64) {
        let gain = self.bus.gain();
        let held = gain.value();
        // Each step only fails on a context that is closed, and that is silent already.
        let _ = gain
            .cancel_scheduled_values(now_s)
            .and_then(|gain| gain.set_value_at_time(held, now_s))
            .and_then(|gain| gain.linear_ramp_to_value_at_time(0.0, now_s + FADE_S));
        for voice in &self.voices {
            let _ = voice.stop_with_when(now_s + FADE_S);
        }
    }

    /// Glides to another volume, 0 to 1.
    pub fn set_volume(&self, volume: f32, now_s: f64) {
        // As above: on a closed context there is nothing to hear.
        let _ = self
            .bus
            .gain()
            .set_target_at_time(self.level * volume, now_s, ATTACK_S);
    }
}
