//! The real audio graph rendered to memory: when the tones start, how loud they get, no clicks.

use crate::heard::{MOST, RATE, context, onsets, peak, render, samples};
use js_sys::{Function, Promise, Reflect};
use stanchion::cues::tone::{Tone, Wave, due};
use stanchion::device::sound::graph::{Graph, build};
use std::rc::Rc;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_test::wasm_bindgen_test;

fn tone(at_ms: u32, len_ms: u32, hz: f32, gain: f32, wave: Wave) -> Tone {
    Tone {
        at_ms,
        len_ms,
        hz,
        gain,
        wave,
    }
}

#[wasm_bindgen_test]
async fn tones_start_on_time_to_a_millisecond() {
    let tones = [
        tone(0, 60, 880.0, 0.8, Wave::Sine),
        tone(333, 60, 660.0, 0.5, Wave::Triangle),
        tone(667, 60, 440.0, 0.3, Wave::Square),
        tone(1001, 60, 220.0, 1.0, Wave::Sine),
        tone(1999, 120, 1760.0, 0.2, Wave::Sine),
    ];
    // A start that falls on no sample.
    let start_s = 0.010_203_7;
    let heard = onsets(&render(&tones, 2.5, start_s, 1.0).await);
    assert_eq!(heard.len(), tones.len(), "{heard:?}");
    for (tone, heard) in tones.iter().zip(heard) {
        let meant = f64::from(tone.at_ms) + start_s * 1000.0;
        assert!(
            (heard - meant).abs() <= 1.0,
            "{meant} ms was heard at {heard} ms"
        );
    }
}

#[wasm_bindgen_test]
async fn nothing_exceeds_one_decibel_below_full_scale() {
    for wave in [Wave::Sine, Wave::Triangle, Wave::Square] {
        for hz in [110.0, 440.0, 1046.5, 3000.0] {
            let alone = peak(&render(&[tone(0, 400, hz, 1.0, wave)], 0.5, 0.01, 1.0).await);
            assert!(alone <= MOST && alone > 0.5, "{wave:?} {hz}: {alone}");
        }
    }
    let waves = [
        Wave::Sine,
        Wave::Square,
        Wave::Triangle,
        Wave::Square,
        Wave::Square,
    ];
    let chord: Vec<Tone> = (0_u8..)
        .zip(waves)
        .map(|(n, wave)| {
            tone(
                u32::from(n) * 7,
                300,
                220.0 * (f32::from(n) + 1.0),
                1.0,
                wave,
            )
        })
        .collect();
    let together = peak(&render(&chord, 0.5, 0.01, 1.0).await);
    assert!(together <= MOST && together > 0.4, "{together}");
}

#[wasm_bindgen_test]
async fn volume_scales_and_zero_is_silence() {
    let tones = [tone(0, 200, 440.0, 1.0, Wave::Sine)];
    let full = peak(&render(&tones, 0.3, 0.01, 1.0).await);
    let half = peak(&render(&tones, 0.3, 0.01, 0.5).await);
    assert!((half / full - 0.5).abs() < 0.01, "{half} of {full}");
    assert_eq!(peak(&render(&tones, 0.3, 0.01, 0.0).await), 0.0);
}

#[wasm_bindgen_test]
async fn tones_rise_and_fall_without_a_click() {
    let hz = 440.0;
    let start_s = 0.05;
    let wave = render(&[tone(0, 100, hz, 1.0, Wave::Sine)], 0.3, start_s, 1.0).await;
    let at = |ms: f64| ((start_s + ms / 1000.0) * f64::from(RATE)) as usize;
    // No step is larger than the steepest of the sine itself; the ramps add a little.
    let steepest = std::f32::consts::TAU * hz / RATE * peak(&wave);
    let step = wave
        .windows(2)
        .map(|pair| (pair[1] - pair[0]).abs())
        .fold(0.0, f32::max);
    assert!(step <= steepest * 1.05, "{step} over {steepest}");
    // A quarter of the way up after 1 ms of 4, a third left 4 ms before the end.
    let full = peak(&wave[at(10.0)..at(80.0)]);
    let early = peak(&wave[at(0.0)..at(1.0)]);
    assert!(
        early <= full * 0.26 && early > full * 0.1,
        "{early} of {full}"
    );
    let late = peak(&wave[at(96.0)..at(100.0)]);
    assert!(late <= full * 0.35 && late > full * 0.2, "{late} of {full}");
    assert_eq!(peak(&wave[..at(0.0)]), 0.0);
    assert_eq!(peak(&wave[at(100.0) + 2..]), 0.0);
}

#[wasm_bindgen_test]
async fn a_tone_shorter_than_its_fades_still_sounds() {
    let wave = render(&[tone(0, 8, 2000.0, 1.0, Wave::Sine)], 0.1, 0.01, 1.0).await;
    assert!(peak(&wave) > 0.5);
    assert_eq!(peak(&wave[(0.0185 * RATE) as usize..]), 0.0);
}

#[wasm_bindgen_test]
async fn a_fade_ends_what_sounds_and_takes_back_what_is_to_come() {
    let tones = [
        tone(0, 400, 440.0, 1.0, Wave::Sine),
        tone(500, 100, 880.0, 1.0, Wave::Sine),
    ];
    let context = context(0.8);
    let graph: Rc<Graph> =
        Rc::new(build(&context, &due(&tones, 0.0, 0.0), 0.0, 1.0).expect("a graph"));
    let method = |name: &str| -> Function {
        Reflect::get(&context, &name.into())
            .expect(name)
            .unchecked_into()
    };
    let paused: Promise = method("suspend")
        .call1(&context, &JsValue::from(0.2))
        .expect("suspend")
        .unchecked_into();
    let (own, resume) = (context.clone(), method("resume"));
    let stop = Closure::once(move |_: JsValue| {
        graph.fade(own.current_time());
        resume.call0(&own).expect("resume");
    });
    let _then = paused.then(&stop);
    let wave = samples(&context).await;
    let at = |seconds: f32| (seconds * RATE) as usize;
    assert!(peak(&wave[at(0.1)..at(0.2)]) > 0.5, "it sounded before");
    assert!(peak(&wave[at(0.225)..]) < 1e-4, "it is silent after");
    let step = wave
        .windows(2)
        .map(|pair| (pair[1] - pair[0]).abs())
        .fold(0.0, f32::max);
    assert!(
        step < std::f32::consts::TAU * 440.0 / RATE * 1.05,
        "no click: {step}"
    );
}
