//! What ten years of sessions cost, in the built app on a processor slowed four times: bringing them in, getting them
//! out, the start, taps on the floor, the ledger, the page of an exercise, memory. Beside it the same with nothing stored.
//! And whether a hundred years can be brought in.

use std::path::PathBuf;

use serde_json::{Value, json};

use crate::in_app;
use crate::measure::{Figures, RUNS, SLOWDOWN, median, metric, slow, starts, starts_of};
use crate::say::{Failure, Outcome, note};
use crate::setup::Browser;
use crate::webdriver::Session;
use crate::{ledger, tap_cost};

/// How many years.
const YEARS: u32 = 10;

/// How many are the most that a log is meant to hold.
const MOST_YEARS: u32 = 100;

/// The exercise whose page is opened: the one that was done most.
const EXERCISE: &str = "front-squat";

/// Keeps hold of the app's memory, of the file that it hands out, and of the last moment at which a file was given.
const HOLD: &str = "
    const hold = (made) => {
      const exports = (made.instance ?? made).exports;
      window.wasmBytes = () => Object.values(exports)
        .filter((one) => one instanceof WebAssembly.Memory)
        .reduce((sum, one) => sum + one.buffer.byteLength, 0);
      return made;
    };
    for (const name of ['instantiate', 'instantiateStreaming']) {
      const real = WebAssembly[name].bind(WebAssembly);
      WebAssembly[name] = (...given) => real(...given).then(hold);
    }
    delete Window.prototype.showSaveFilePicker;
    delete window.showSaveFilePicker;
    const address = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (blob) => { window.bytes = blob.size; return address(blob); };
    const click = HTMLAnchorElement.prototype.click;
    HTMLAnchorElement.prototype.click = function () {
      if (!this.download) return click.call(this);
      window.handed = { at: performance.now() };
    };
    addEventListener('change', () => { window.given = performance.now(); }, true);";

/// Passes the welcome and opens Kit.
const TO_KIT: &str = "
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    (async () => {
      (await seen(() => part('welcome-skip'))).click();
      (await seen(() => part('go-kit'))).click();
      await seen(() => part('import'));
      done(true);
    })();";

/// Milliseconds from the file to what it would do.
const LOOKED: &str = "
    (async () => {
      const complains = () => document.querySelector('[data-part=notice]')?.innerText;
      const take = () => document.querySelector('[data-part=import-take]');
      await seen(() => take() ?? complains());
      done(take() ? performance.now() - window.given : complains());
    })();";

/// Milliseconds from the tap to what it did, and what is said then.
const TOOK: &str = "
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    (async () => {
      const begun = performance.now();
      part('import-take').click();
      const said = await seen(() => part('notice')?.innerText);
      done([performance.now() - begun, said]);
    })();";

/// Milliseconds from the tap to the file, and its bytes.
const EXPORT: &str = "
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    (async () => {
      const button = await seen(() => part('export'));
      window.handed = undefined;
      const begun = performance.now();
      button.click();
      await seen(() => window.handed);
      done([window.handed.at - begun, window.bytes]);
    })();";

/// Milliseconds from a change of place to the frame in which what is looked for is painted; null where it never is.
const TO_PLACE: &str = "
    location.hash = '#/kit';
    (async () => {
      await seen(() => document.querySelector('[data-part=\"export\"]'));
      await new Promise((settled) => setTimeout(settled, 300));
      const begun = performance.now();
      location.hash = HASH;
      const given_up = begun + 5000;
      while (!document.querySelector(LOOKED_FOR)) {
        if (performance.now() > given_up) return done(null);
        await new Promise(requestAnimationFrame);
      }
      requestAnimationFrame(() => {
        const after = new MessageChannel();
        after.port1.onmessage = () => done(performance.now() - begun);
        after.port2.postMessage(0);
      });
    })();";

/// All of it, empty and with ten years; and the start of the smallest Leptos app in turns with both, where its build is given.
pub fn figures(browser: &Browser, floor: Option<PathBuf>) -> Outcome<Figures> {
    let mut figures = Figures::new();
    let (session, address) = in_app::open(browser)?;
    let empty = in_app::another()?;
    let (import, _) = import(&session, &address, YEARS)?;
    figures.insert("import.ten_years_ms", import);
    in_app::again(&session, &address)?;
    session.ask("location.hash = '#/kit'; return true;")?;
    slow(&session, SLOWDOWN)?;
    let mut exports = Vec::new();
    for _ in 0..3 {
        let (took, bytes) = two(&in_app::ask_in(&session, EXPORT)?)?;
        if bytes < 20_000_000.0 {
            return Err(wrong(&format!("the export has {bytes} bytes")));
        }
        exports.push(took);
    }
    note(format!("exports: {exports:?} ms"));
    figures.insert("export.ten_years_ms", median(exports));
    figures.insert("memory.ten_years_mb", megabytes(&session)?);
    slow(&session, 1)?;
    let floor = floor.map(in_app::served).transpose()?;
    // What is looked at next is the one with ten years, so that starts last.
    let (keys, apps): (Vec<&str>, Vec<&str>) = floor
        .iter()
        .map(|floor| ("start.floor_ms", floor.as_str()))
        .chain([
            ("start.empty_ms", empty.as_str()),
            ("start.ten_years_ms", address.as_str()),
        ])
        .unzip();
    for (key, starts) in keys.into_iter().zip(starts_of(&session, &apps)?) {
        figures.insert(key, median(starts));
    }
    let opened = |hash: &str, looked_for: &str| opened(&session, hash, looked_for);
    let list = opened("#/ledger", "[data-part=\"session\"]")?;
    figures.insert(
        "ledger.open_ms",
        list.ok_or_else(|| wrong("the ledger never shows a session"))?,
    );
    let page = opened(&format!("#/ledger/exercise/{EXERCISE}"), "main svg")?;
    match page {
        Some(page) => _ = figures.insert("exercise.open_ms", page),
        None => note("no page of an exercise shows a picture: left out"),
    }
    figures.insert("memory.ten_years_use_mb", megabytes(&session)?);
    slow(&session, 1)?;
    session.open("about:blank")?;
    let painted = tap_cost::painted(&session, &[&empty, &address])?;
    figures.insert("tap.paint_p95_ms", painted[0]);
    figures.insert("tap.paint_ten_years_p95_ms", painted[1]);
    Ok(figures)
}

/// A hundred years: brought in, started with, looked at.
pub fn hundred_years(browser: &Browser) -> Outcome<Figures> {
    let mut figures = Figures::new();
    let (session, address) = in_app::open(browser)?;
    let (import, said) = import(&session, &address, MOST_YEARS)?;
    note(said);
    figures.insert("import.hundred_years_ms", import);
    megabytes(&session)?;
    in_app::again(&session, &address)?;
    figures.insert("start.hundred_years_ms", starts(&session, &address)?);
    let list = opened(&session, "#/ledger", "[data-part=\"session\"]")?;
    figures.insert(
        "ledger.open_hundred_years_ms",
        list.ok_or_else(|| wrong("the ledger never shows a session"))?,
    );
    megabytes(&session)?;
    Ok(figures)
}

/// Milliseconds that an import of so many years takes in an app with nothing stored, and what is said of it.
fn import(session: &Session, address: &str, years: u32) -> Outcome<(f64, String)> {
    let file = ledger::file(years)?;
    slow(session, 1)?;
    session.devtools(
        "Page.addScriptToEvaluateOnNewDocument",
        &json!({ "source": HOLD }),
    )?;
    in_app::again(session, address)?;
    in_app::ask_in(session, TO_KIT)?;
    slow(session, SLOWDOWN)?;
    give(session, &file.display().to_string())?;
    let looked = in_app::ask_in(session, LOOKED)?;
    let looked = looked
        .as_f64()
        .ok_or_else(|| wrong(&format!("the app says {looked}")))?;
    let said = in_app::ask_in(session, TOOK)?;
    let (took, said) = said[0]
        .as_f64()
        .zip(said[1].as_str())
        .ok_or_else(|| wrong(&format!("the app says {said}")))?;
    note(format!(
        "import: {looked:.0} ms to look at it, {took:.0} ms to take it"
    ));
    slow(session, 1)?;
    Ok((looked + took, said.to_owned()))
}

/// Gives a file to the input of Kit, as the browser's dialog does.
fn give(session: &Session, path: &str) -> Outcome<()> {
    let asked = json!({ "expression": "document.querySelector('input[type=file][data-part=import], [data-part=import] input[type=file]')" });
    let found = session.devtools("Runtime.evaluate", &asked)?;
    let input = found["result"]["objectId"]
        .as_str()
        .ok_or_else(|| wrong("there is no input for a file"))?;
    let given = json!({ "files": [path], "objectId": input });
    session.devtools("DOM.setFileInputFiles", &given).map(drop)
}

/// The first two numbers of an answer.
fn two(said: &Value) -> Outcome<(f64, f64)> {
    let pair = said[0].as_f64().zip(said[1].as_f64());
    pair.ok_or_else(|| wrong(&format!("the app says {said}")))
}

/// Milliseconds to a place of the app that was just started, the middle of several; none where it is not there.
fn opened(session: &Session, hash: &str, looked_for: &str) -> Outcome<Option<f64>> {
    let script = TO_PLACE
        .replace("HASH", &json!(hash).to_string())
        .replace("LOOKED_FOR", &json!(looked_for).to_string());
    let mut times = Vec::with_capacity(RUNS);
    for _ in 0..RUNS {
        match in_app::ask_in(session, &script)?.as_f64() {
            Some(time) => times.push(time),
            None => return Ok(None),
        }
    }
    note(format!("{hash}: {times:?} ms"));
    Ok(Some(median(times)))
}

/// Megabytes of the page: what its scripts hold and the memory of the app, which never shrinks.
fn megabytes(session: &Session) -> Outcome<f64> {
    session.devtools("Performance.enable", &json!({}))?;
    let said = session.devtools("Performance.getMetrics", &json!({}))?;
    let heap = metric(&said, "JSHeapUsedSize").ok_or_else(|| wrong("no size of the heap"))?;
    let app = session.ask("return window.wasmBytes();")?;
    let app = app
        .as_f64()
        .ok_or_else(|| wrong("no size of the app's memory"))?;
    note(format!(
        "heap {:.1} MB, app {:.1} MB",
        heap / 1e6,
        app / 1e6
    ));
    Ok((heap + app) / 1e6)
}

fn wrong(what: &str) -> Failure {
    Failure::new(
        what,
        "open the app with `cargo xtask serve` and import target/ledger-10.json by hand",
    )
}
