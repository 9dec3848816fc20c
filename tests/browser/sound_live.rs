//! The live sound output, on contexts and a steady clock that the test moves.

use crate::help::{Patch, number, patch, run, text, until};
use stanchion::cues::tone::{Tone, Wave};
use stanchion::device::sound::{Mode, Sound, State};
use stanchion::device::timer::after;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

/// From a call to its first tone, in ms: what the output needs and what the call may take.
const LEAD: f64 = 25.0;

/// A steady clock that stands at `clock` until the test moves it, and contexts that go by it:
/// `willing` says whether they run when asked, `standing` holds their own clock. `starts` are the
/// times of the tones asked for, in ms.
fn contexts(willing: bool) -> Patch {
    patch(&format!(
        "window.made = []; window.starts = []; window.stops = 0;
         window.willing = {willing}; window.clock = 5000; window.standing = null;
         shadow(performance, 'now', {{value: () => window.clock}});
         const Real = window.AudioContext;
         class Fake extends Real {{
             constructor() {{ super(); this.now = 'suspended'; this.own = new EventTarget();
                              window.made.push(this) }}
             // The real one has changes of state of its own, of which nobody here shall know.
             addEventListener(...how) {{ this.own.addEventListener(...how) }}
             removeEventListener(...how) {{ this.own.removeEventListener(...how) }}
             dispatchEvent(event) {{ return this.own.dispatchEvent(event) }}
             get state() {{ return this.now }}
             get outputLatency() {{ return window.latency ?? NaN }}
             get currentTime() {{ return (window.standing ?? window.clock) / 1000 }}
             go(state) {{ this.now = state; this.dispatchEvent(new Event('statechange')) }}
             async resume() {{ if (willing) this.go('running') }}
             async close() {{ this.now = 'closed'; return super.close() }}
             createOscillator() {{
                 const made = super.createOscillator();
                 made.start = when => window.starts.push(when * 1000);
                 made.stop = () => {{ window.stops++ }};
                 return made }}
         }}
         shadow(window, 'AudioContext', {{value: Fake}});
         undo.push(() => made.forEach(context => context.close().catch(() => {{}})));"
    ))
}

fn advance(ms: u32) {
    run(&format!("window.clock += {ms}"));
}

/// When a tone was asked for, in ms from now.
fn start(index: u32) -> f64 {
    number(&format!("starts[{index}] - clock"))
}

#[track_caller]
fn assert_near(left: f64, right: f64) {
    assert!((left - right).abs() < 0.001, "{left} is not {right}");
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

/// An output that runs.
fn running() -> Sound {
    let sound = Sound::new();
    sound.unlock();
    assert_eq!(sound.state(), State::Running);
    sound
}

#[wasm_bindgen_test]
fn without_web_audio_the_position_goes_on_unheard() {
    let _contexts = contexts(true);
    let _absent = patch("shadow(window, 'AudioContext', {value: undefined});");
    let sound = Sound::new();
    assert_eq!(sound.state(), State::Absent);
    sound.unlock();
    let playing = sound.play(&beats(3, 100), 40.0);
    assert!(!playing.is_heard());
    assert_near(playing.position_ms(), 40.0);
    advance(1000);
    assert_near(playing.position_ms(), 1040.0 - LEAD);
    playing.stop();
}

#[wasm_bindgen_test]
fn the_whole_list_is_scheduled_at_once_relative_to_now() {
    let _contexts = contexts(true);
    assert_eq!(Sound::new().state(), State::Locked);
    let sound = running();
    let playing = sound.play(&beats(200, 1000), 50_000.0);
    assert_eq!(
        number("starts.length"),
        150.0,
        "what lies before is left out"
    );
    assert!(playing.is_heard());
    assert_near(start(0), LEAD);
    assert_near(start(149), LEAD + 149_000.0);
    let before = number("stops");
    playing.stop();
    assert_eq!(number("stops") - before, 150.0);
}

#[wasm_bindgen_test]
fn the_position_is_what_is_heard_now() {
    let _contexts = contexts(true);
    let playing = running().play(&beats(3, 1000), 500.0);
    assert_near(playing.position_ms(), 500.0);
    advance(300);
    assert_near(playing.position_ms(), 800.0 - LEAD);
    run("window.latency = 0.18");
    assert_near(playing.position_ms(), 800.0 - LEAD - 180.0);
    run("delete window.latency");
}

#[wasm_bindgen_test]
fn an_output_that_wakes_late_still_plays_the_first_beat() {
    let _contexts = contexts(false);
    let sound = Sound::new();
    sound.unlock();
    let playing = sound.play(&beats(3, 1000), 0.0);
    assert_eq!(
        (sound.state(), number("starts.length")),
        (State::Locked, 0.0)
    );
    assert!(!playing.is_heard());
    advance(200);
    run("made[0].go('running')");
    assert_eq!(number("starts.length"), 3.0);
    assert!(playing.is_heard());
    assert_near(start(0), 20.0);
    assert_near(start(1), LEAD + 1000.0 - 200.0);
}

#[wasm_bindgen_test]
fn an_output_that_wakes_too_late_leaves_the_first_beat_out() {
    let _contexts = contexts(false);
    let sound = Sound::new();
    sound.unlock();
    let _playing = sound.play(&beats(3, 1000), 0.0);
    advance(300);
    run("made[0].go('running')");
    assert_eq!(number("starts.length"), 2.0);
    assert_near(start(0), LEAD + 1000.0 - 300.0);
}

#[wasm_bindgen_test]
fn an_interruption_silences_and_what_is_left_is_scheduled_after_it() {
    let _contexts = contexts(true);
    let sound = running();
    let playing = sound.play(&beats(4, 400), 0.0);
    assert_eq!(number("starts.length"), 4.0);
    run("window.willing = false; made[0].go('interrupted')");
    assert_eq!(sound.state(), State::Interrupted);
    assert!(!playing.is_heard());
    assert_eq!(number("stops"), 8.0, "each tone's own end, and taken back");
    advance(500);
    run("window.starts = []; made[0].go('running')");
    assert!(playing.is_heard());
    assert_eq!(number("starts.length"), 2.0);
    // The beats that are left come when they would have come.
    assert_near(start(0), LEAD + 800.0 - 500.0);
    assert_near(playing.position_ms(), 500.0 - LEAD);
}

#[wasm_bindgen_test]
fn a_clock_that_comes_to_a_stand_is_not_believed() {
    let _contexts = contexts(true);
    let playing = running().play(&beats(3, 1000), 0.0);
    assert!(playing.is_heard());
    run("window.standing = clock");
    advance(400);
    assert!(!playing.is_heard());
    assert_near(playing.position_ms(), 400.0 - LEAD);
    // What the clock held back is scheduled again when the page looks after it.
    run("window.starts = []; window.standing += 10;
         document.dispatchEvent(new Event('visibilitychange'))");
    assert!(playing.is_heard());
    assert_near(number("starts[0] - standing"), LEAD + 1000.0 - 400.0);
}

#[wasm_bindgen_test]
async fn an_output_whose_clock_stands_is_replaced() {
    let _contexts = contexts(true);
    let sound = running();
    let playing = sound.play(&beats(5, 2000), 0.0);
    // The test's clock stands, and with it the output's.
    until("another output was made", || number("made.length") == 2.0).await;
    assert_eq!(text("made[0].state"), "closed");
    assert_eq!(sound.state(), State::Running);
    assert!(playing.is_heard());
}

#[wasm_bindgen_test]
async fn an_output_whose_clock_moves_is_kept() {
    let _contexts = contexts(true);
    let sound = running();
    advance(100);
    until_watched().await;
    assert_eq!(
        (number("made.length"), sound.state()),
        (1.0, State::Running)
    );
}

#[wasm_bindgen_test]
async fn an_output_that_stays_interrupted_is_replaced_by_the_next_tap() {
    let _contexts = contexts(true);
    let sound = running();
    run("window.willing = false; made[0].go('interrupted')");
    sound.unlock();
    until_watched().await;
    assert_eq!(number("made.length"), 1.0);
    run("window.willing = true");
    sound.unlock();
    assert_eq!(
        (number("made.length"), sound.state()),
        (2.0, State::Running)
    );
}

/// A timer longer than the watch over an output, so called after it.
async fn until_watched() {
    let over = Rc::new(Cell::new(false));
    let ring = Rc::clone(&over);
    let _timer = after(350, move || ring.set(true));
    until("the output was looked at", || over.get()).await;
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
    let _contexts = contexts(true);
    let _spy = patch(
        "window.set = [];
         shadow(AudioParam.prototype, 'setTargetAtTime', {value(target) {
             window.set.push(Math.round(target * 1000) / 1000); return this }});",
    );
    let sound = running();
    let _playing = sound.play(&beats(2, 100), 0.0);
    for volume in [0.5, 0.0, 7.0] {
        sound.set_volume(volume);
    }
    assert_eq!(text("set"), "0.425,0,0.85");
}

#[wasm_bindgen_test]
async fn where_the_next_output_stands_too_a_tap_builds_a_third() {
    let _contexts = contexts(true);
    let sound = running();
    let playing = sound.play(&beats(5, 2000), 0.0);
    // The test's clock stands, and with it every output's.
    until("the second was given up", || {
        text("made.map(one => one.state)") == "closed,closed"
    })
    .await;
    assert_eq!(sound.state(), State::Locked);
    assert!(!playing.is_heard());
    sound.tend();
    assert_eq!(number("made.length"), 2.0, "nothing is built without a tap");
    sound.unlock();
    assert_eq!(
        (number("made.length"), sound.state()),
        (3.0, State::Running)
    );
    assert!(playing.is_heard());
}

#[wasm_bindgen_test]
async fn an_output_that_resumed_by_itself_is_looked_after_too() {
    let _contexts = contexts(true);
    let sound = running();
    let _playing = sound.play(&beats(5, 2000), 0.0);
    advance(100);
    until_watched().await;
    run("made[0].go('interrupted')");
    advance(100);
    // Back from a call: it says that it runs, and its clock stands.
    run("window.standing = clock; made[0].go('running')");
    until("another output was made", || number("made.length") == 2.0).await;
}

#[wasm_bindgen_test]
async fn tending_schedules_anew_what_a_clock_that_stood_held_back() {
    let _contexts = contexts(true);
    let sound = running();
    let playing = sound.play(&beats(3, 1000), 0.0);
    advance(100);
    until_watched().await;
    // The audio clock stood for 400 ms without a word, and goes again.
    run("window.standing = clock");
    advance(400);
    assert!(!playing.is_heard());
    run("window.starts = []");
    sound.tend();
    run("window.standing += 50");
    until("it is heard again", || playing.is_heard()).await;
    assert_near(number("starts[0] - standing"), LEAD + 1000.0 - 500.0);
}
