//! The live sound output, on a context whose state and clock the test sets.

use crate::help::{Patch, number, patch, run, text, until};
use stanchion::cues::tone::{Tone, Wave};
use stanchion::device::clock::monotonic_ms;
use stanchion::device::sound::{Mode, Sound, State};
use wasm_bindgen_test::wasm_bindgen_test;

/// Contexts that obey: `willing` says whether they run when asked, `stuck` whether the clock of
/// the first one stands. `starts` are the times of the tones asked for, in ms of the steady clock.
fn contexts(willing: bool, stuck: bool) -> Patch {
    patch(&format!(
        "window.made = []; window.starts = []; window.stops = 0; window.willing = {willing}; window.standing = null;
         const Real = window.AudioContext;
         class Fake extends Real {{
             constructor() {{ super(); this.now = 'suspended'; window.made.push(this) }}
             get state() {{ return this.now }}
             get outputLatency() {{ return NaN }}
             get currentTime() {{
                 return {stuck} && this === made[0] ? 0.5
                     : window.standing ?? performance.now() / 1000 }}
             go(state) {{ this.now = state; this.dispatchEvent(new Event('statechange')) }}
             async resume() {{ if (willing) this.go('running') }}
             async close() {{ this.now = 'closed'; return super.close() }}
             createOscillator() {{
                 const made = super.createOscillator(), stop = made.stop;
                 made.start = when => window.starts.push(when * 1000);
                 made.stop = when => {{ window.stops++ }};
                 return made }}
         }}
         shadow(window, 'AudioContext', {{value: Fake}});
         undo.push(() => made.forEach(context => context.close().catch(() => {{}})));"
    ))
}

fn beats(count: u32, every_ms: u32) -> Vec<Tone> {
    let beat = |n| Tone {
        at_ms: n * every_ms,
        len_ms: 50,
        hz: 880.0,
        gain: 0.5,
        wave: Wave::Sine,
    };
    (0..count).map(beat).collect()
}

#[wasm_bindgen_test]
async fn without_web_audio_the_position_goes_on_unheard() {
    let _absent = patch("shadow(window, 'AudioContext', {value: undefined});");
    let sound = Sound::new();
    assert_eq!(sound.state(), State::Absent);
    sound.unlock();
    let playing = sound.play(&beats(3, 100), 40.0);
    assert!(!playing.is_heard());
    let start = monotonic_ms();
    assert!((40.0..200.0).contains(&playing.position_ms()));
    until("time has gone by", || monotonic_ms() > start + 60.0).await;
    let (since, position) = (monotonic_ms() - start, playing.position_ms());
    assert!(
        (position - 40.0 - since).abs() < 40.0,
        "{position} after {since}"
    );
    playing.stop();
}

#[wasm_bindgen_test]
async fn the_whole_list_is_scheduled_at_once_relative_to_now() {
    let _contexts = contexts(true, false);
    let sound = Sound::new();
    assert_eq!(sound.state(), State::Locked);
    sound.unlock();
    assert_eq!(sound.state(), State::Running);
    let now = monotonic_ms();
    let playing = sound.play(&beats(200, 1000), 50_000.0);
    assert_eq!(
        number("starts.length"),
        150.0,
        "what lies before is left out"
    );
    assert!(playing.is_heard());
    let first = number("starts[0]") - now;
    assert!((0.0..150.0).contains(&first), "{first}");
    let spread = number("starts[149] - starts[0]");
    assert!((spread - 149_000.0).abs() < 0.01, "{spread}");
    assert!((50_000.0..50_300.0).contains(&playing.position_ms()));
    let before = number("stops");
    playing.stop();
    assert_eq!(number("stops") - before, 150.0);
}

#[wasm_bindgen_test]
async fn an_output_that_wakes_late_still_plays_the_first_beat() {
    let _contexts = contexts(false, false);
    let sound = Sound::new();
    sound.unlock();
    let playing = sound.play(&beats(3, 1000), 0.0);
    assert_eq!(
        (sound.state(), number("starts.length")),
        (State::Locked, 0.0)
    );
    assert!(!playing.is_heard());
    until("the first beat was missed", || playing.position_ms() > 40.0).await;
    run("made[0].go('running')");
    assert_eq!(number("starts.length"), 3.0);
    assert!(playing.is_heard());
    let first = number("starts[0]") - monotonic_ms();
    assert!((-10.0..40.0).contains(&first), "at once: {first}");
    let second = number("starts[1]") - monotonic_ms();
    let to_come = 1000.0 - playing.position_ms();
    assert!(
        (second - to_come).abs() < 30.0,
        "in time: {second}, not {to_come}"
    );
}

#[wasm_bindgen_test]
async fn an_output_that_wakes_too_late_leaves_the_first_beat_out() {
    let _contexts = contexts(false, false);
    let sound = Sound::new();
    sound.unlock();
    let playing = sound.play(&beats(3, 1000), 0.0);
    until("the first beat is long past", || {
        playing.position_ms() > 300.0
    })
    .await;
    run("made[0].go('running')");
    assert_eq!(number("starts.length"), 2.0);
}

#[wasm_bindgen_test]
async fn a_clock_that_comes_to_a_stand_is_not_believed() {
    let _contexts = contexts(true, false);
    let sound = Sound::new();
    sound.unlock();
    let playing = sound.play(&beats(3, 1000), 0.0);
    assert!(playing.is_heard());
    run("window.standing = performance.now() / 1000");
    until("the position goes on", || playing.position_ms() > 400.0).await;
    assert!(!playing.is_heard());
}

#[wasm_bindgen_test]
async fn an_interruption_silences_and_what_is_left_is_scheduled_after_it() {
    let _contexts = contexts(true, false);
    let sound = Sound::new();
    sound.unlock();
    let playing = sound.play(&beats(4, 400), 0.0);
    assert_eq!(number("starts.length"), 4.0);
    run("window.willing = false; made[0].go('interrupted')");
    assert_eq!(sound.state(), State::Interrupted);
    assert!(!playing.is_heard());
    assert_eq!(number("stops"), 8.0, "each tone's own end, and taken back");
    until("two beats were missed", || playing.position_ms() > 450.0).await;
    run("window.starts = []; made[0].go('running')");
    assert!(playing.is_heard());
    assert_eq!(number("starts.length"), 2.0);
    // The beats that are left come when they would have come.
    let to_come = number("starts[0]") - monotonic_ms();
    assert!(
        (to_come - (800.0 - playing.position_ms())).abs() < 30.0,
        "{to_come}"
    );
}

#[wasm_bindgen_test]
async fn an_output_whose_clock_stands_is_replaced() {
    let _contexts = contexts(true, true);
    let sound = Sound::new();
    sound.unlock();
    let playing = sound.play(&beats(5, 2000), 0.0);
    until("another output was made", || number("made.length") == 2.0).await;
    assert_eq!(text("made[0].state"), "closed");
    assert_eq!(sound.state(), State::Running);
    assert!(playing.is_heard());
    assert!(playing.position_ms() < 5000.0);
}

#[wasm_bindgen_test]
async fn an_output_that_stays_interrupted_is_replaced_by_the_next_tap() {
    let _contexts = contexts(true, false);
    let sound = Sound::new();
    sound.unlock();
    run("window.willing = false; made[0].go('interrupted')");
    sound.unlock();
    let start = monotonic_ms();
    until("the output had its chance", || {
        monotonic_ms() > start + 400.0
    })
    .await;
    assert_eq!(number("made.length"), 1.0);
    run("window.willing = true");
    sound.unlock();
    assert_eq!(
        (number("made.length"), sound.state()),
        (2.0, State::Running)
    );
}

#[wasm_bindgen_test]
fn the_mode_is_told_to_phones_that_know_it() {
    let _session = patch("shadow(navigator, 'audioSession', {value: {type: 'auto'}});");
    let sound = Sound::new();
    sound.set_mode(Mode::Always);
    assert_eq!(text("navigator.audioSession.type"), "playback");
    sound.set_mode(Mode::Beside);
    assert_eq!(text("navigator.audioSession.type"), "ambient");
}

#[wasm_bindgen_test]
fn volume_holds_for_what_plays_and_keeps_within_its_range() {
    let _contexts = contexts(true, false);
    let _spy = patch(
        "window.set = [];
         shadow(AudioParam.prototype, 'setTargetAtTime', {value(target) {
             window.set.push(Math.round(target * 1000) / 1000); return this }});",
    );
    let sound = Sound::new();
    sound.unlock();
    let _playing = sound.play(&beats(2, 100), 0.0);
    for volume in [0.5, 0.0, 7.0] {
        sound.set_volume(volume);
    }
    assert_eq!(text("set"), "0.425,0,0.85");
}
