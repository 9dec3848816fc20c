//! The live graph while the page is stuck: recorded sample by sample on the audio thread, beside a metronome that goes
//! by timers, as a comparison.

use crate::figures::figure;
use crate::heard::{GAP_MS, SILENT, planned};
use crate::help::{Patch, number, patch, run, until};
use js_sys::Promise;
use stanchion::cues::{SoundSet, set_timeline, tones};
use stanchion::device::sound::{Sound, State};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;

/// How far an onset may be from its place in the line, in ms. A change of 2.5 % of a beat is the smallest that is heard
/// (Friberg & Sundberg 1995, J Acoust Soc Am 98(5):2524–2531): 25 ms of the shortest beat of a tempo, 1 s.
const MOST_OFF_MS: f64 = 2.0;
/// The page is stuck for so long at a time, at times that a seed draws.
const STUCK_MS: u32 = 300;
const SEED: u32 = 20_261_125;

/// Contexts whose output is recorded: whatever is connected to the speakers goes to a recorder too, which notes the
/// frames at which something sounds after silence. `window.frames` are those of the app, `window.beats` those of the
/// metronome.
fn recorded() -> Patch {
    patch(&format!(
        "window.made = []; window.frames = []; window.beats = [];
         const Real = window.AudioContext;
         class Recorded extends Real {{ constructor() {{ super(); window.made.push(this) }} }}
         shadow(window, 'AudioContext', {{value: Recorded}});
         const code = `registerProcessor('recorder', class extends AudioWorkletProcessor {{
             constructor() {{ super(); this.quiet = [1e9, 1e9] }}
             process(inputs) {{
                 inputs.forEach((input, line) => {{
                     const heard = input[0] ?? new Float32Array(128);
                     const found = [];
                     for (let n = 0; n < heard.length; n++) {{
                         if (Math.abs(heard[n]) < {SILENT}) {{ this.quiet[line]++; continue }}
                         if (this.quiet[line] >= {GAP_MS} * sampleRate / 1000) found.push(currentFrame + n);
                         this.quiet[line] = 0;
                     }}
                     if (found.length) this.port.postMessage({{line, found}});
                 }});
                 return true;
             }}
         }})`;
         const connect = AudioNode.prototype.connect;
         window.record = async () => {{
             const context = window.made[0];
             const url = URL.createObjectURL(new Blob([code], {{type: 'text/javascript'}}));
             await context.audioWorklet.addModule(url);
             const recorder = new AudioWorkletNode(context, 'recorder', {{numberOfInputs: 2}});
             recorder.port.onmessage = ({{data}}) =>
                 (data.line ? window.beats : window.frames).push(...data.found);
             connect.call(recorder, context.destination);
             window.beat = () => {{
                 const voice = new OscillatorNode(context, {{frequency: 700}});
                 connect.call(voice, recorder, 0, 1);
                 voice.start();
                 voice.stop(context.currentTime + 0.05);
             }};
             shadow(AudioNode.prototype, 'connect', {{value(to, ...more) {{
                 if (to instanceof AudioDestinationNode) connect.call(this, recorder, 0, 0);
                 return connect.call(this, to, ...more);
             }}}});
         }};
         undo.push(() => {{ clearInterval(window.metronome); clearTimeout(window.jank);
                          made.forEach(context => context.close().catch(() => {{}})) }});"
    ))
}

/// How far each onset is from its place, the first one being right, in ms: the largest.
fn worst_ms(frames: &str, meant_ms: &[f64]) -> f64 {
    let per_ms = number("made[0].sampleRate") / 1000.0;
    let first = number(&format!("{frames}[0]"));
    let off = meant_ms.iter().enumerate().map(|(at, meant)| {
        let heard = (number(&format!("{frames}[{at}]")) - first) / per_ms;
        (heard - (meant - meant_ms[0])).abs()
    });
    off.fold(0.0, f64::max)
}

#[wasm_bindgen_test]
async fn measured_a_stuck_page_moves_no_cue() {
    let _recorded = recorded();
    let sound = Sound::new();
    sound.unlock();
    until("the output runs", || sound.state() == State::Running).await;
    let record: Promise = run("return record()").unchecked_into();
    JsFuture::from(record).await.expect("a recorder");

    let timeline = set_timeline(&planned(5, "1/0/1/0", "both"), 2);
    let tones = tones(&timeline, SoundSet::Tones);
    let _playing = sound.play(&tones, 0.0);
    run(&format!(
        "window.metronome = setInterval(window.beat, 500);
         let seed = {SEED};
         const draw = () => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) / 2 ** 32;
         window.stuck = 0;
         const stick = () => {{
             const until = performance.now() + {STUCK_MS};
             while (performance.now() < until);
             window.stuck++;
             window.jank = setTimeout(stick, 30 + 370 * draw());
         }};
         window.jank = setTimeout(stick, 100);"
    ));
    // 13 s are longer than the patience of `until`.
    for part in 1..=4 {
        let enough = tones.len() * part / 4;
        until("that much is heard", || {
            number("frames.length") >= enough as f64
        })
        .await;
    }
    assert_eq!(number("frames.length"), tones.len() as f64);
    assert!(number("stuck") >= 10.0, "the page was stuck");

    let meant: Vec<f64> = tones.iter().map(|tone| f64::from(tone.at_ms)).collect();
    let ours = worst_ms("frames", &meant);
    let beats: Vec<f64> = (0..number("beats.length") as u32)
        .map(|beat| f64::from(beat) * 500.0)
        .collect();
    assert!(beats.len() > 10, "the metronome beat");
    let naive = worst_ms("beats", &beats);
    figure("cue.jank_error_ms_max", ours);
    figure("cue.jank_naive_error_ms_max", naive);
    assert!(ours <= MOST_OFF_MS, "{ours} ms");
    // Else the page was not stuck enough to tell anything.
    assert!(naive > MOST_OFF_MS, "a timer was off by {naive} ms only");
}
