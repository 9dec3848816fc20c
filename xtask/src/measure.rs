//! Sizes and times of the built app, as one flat object in target/measure.json.

use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::Path;

use serde_json::{Value, json};

use crate::run::{run as run_tool, tool};
use crate::say::{Failure, OrNext, Outcome, note, step};
use crate::setup::{Browser, Tools};
use crate::webdriver::Session;
use crate::{
    axe, build, heard, idle, lighthouse, link, many_years, places, precache, tap_cost,
    taps_to_block,
};

/// The key of each figure, and the figure.
pub type Figures = BTreeMap<&'static str, f64>;

/// Brotli as static hosts use it for files that are compressed once.
const QUALITY: u32 = 11;
const WINDOW: u32 = 22;

/// How often each time is taken; the median is kept.
pub const RUNS: usize = 9;

/// The processor of a phone of the middle class is about this much slower than a desk's.
pub const SLOWDOWN: u32 = 4;

/// The mark that the app sets once it is mounted with the stored data read.
const READY: &str = "stanchion-ready";

/// Builds the app, measures it and writes the figures.
pub fn run() -> Outcome<()> {
    let tools = Tools::prepare()?;
    let browser = step("Browser", Browser::prepare)?;
    build::dist(&tools)?;
    let mut figures = step("Sizes, brotli", || sizes(&places::dist()))?;
    let floor = build::floor(&tools)?;
    let scale = step("Ten years against nothing stored", || {
        many_years::figures(&browser, Some(floor))
    })?;
    figures.extend(scale);
    let taps = step("Taps to a block", || taps_to_block::count(&browser))?;
    figures.insert("sheet.taps_to_block", taps);
    let length = step("Link of a sheet", || link::length(&browser))?;
    figures.insert("sheet.link_bytes", length);
    figures.extend(step("Cues", || heard::figures(&tools, &browser))?);
    let violations = step("Every screen in every look, by axe-core", || {
        axe::violations(&browser)
    })?;
    figures.insert("axe.violations", violations);
    figures.extend(step("The page by Lighthouse", || {
        lighthouse::figures(&browser)
    })?);
    let idle = step("A minute of rest", || idle::of_rest(&browser))?;
    figures.insert("rest.main_thread_ms_per_s", idle);
    figures.extend(step("Taps on the floor", || tap_cost::figures(&browser))?);
    figures.extend(step("Times of the core", core_times)?);
    step("Figures", || write(&figures, &["kill.", "engines."]))
}

/// Measures what ten years cost, in the build that is there, and adds the figures.
pub fn ten_years() -> Outcome<()> {
    let browser = step("Browser", Browser::prepare)?;
    let figures = step("Ten years", || many_years::figures(&browser, None))?;
    add(&figures)
}

/// The same of a hundred years.
pub fn hundred_years() -> Outcome<()> {
    let browser = step("Browser", Browser::prepare)?;
    let figures = step("A hundred years", || many_years::hundred_years(&browser))?;
    add(&figures)
}

/// Measures the cues alone and prints the figures; nothing is written.
pub fn cues() -> Outcome<()> {
    let tools = Tools::prepare()?;
    let browser = step("Browser", Browser::prepare)?;
    let figures = step("Cues", || heard::figures(&tools, &browser))?;
    for (key, figure) in &figures {
        note(format!("{key} = {}", number(*figure)));
    }
    Ok(())
}

/// Adds figures to those that are written already.
pub fn add(figures: &Figures) -> Outcome<()> {
    write(figures, &[""])
}

/// Writes figures; of those written before, the ones whose key begins with one of `stay` stay too.
fn write(figures: &Figures, stay: &[&str]) -> Outcome<()> {
    let mut all: BTreeMap<String, Value> = fs::read_to_string(places::target("measure.json"))
        .ok()
        .and_then(|text| serde_json::from_str(&text).ok())
        .unwrap_or_default();
    all.retain(|key, _| stay.iter().any(|begin| key.starts_with(begin)));
    for (key, figure) in figures {
        let figure = number(*figure);
        note(format!("{key} = {figure}"));
        all.insert((*key).to_owned(), figure);
    }
    let figures = all;
    let text = serde_json::to_string_pretty(&figures)
        .or_next("writing the figures", "run the command again")?;
    fs::write(places::target("measure.json"), text + "\n").or_next(
        "writing target/measure.json",
        "check that target/ can be written",
    )
}

/// A figure as it is written: whole where it is whole, below 1 to a thousandth, else to a tenth.
fn number(figure: f64) -> Value {
    if figure.abs() < 1.0 && figure != 0.0 {
        return json!((figure * 1000.0).round() / 1000.0);
    }
    let tenths = (figure * 10.0).round();
    if tenths % 10.0 == 0.0 {
        json!((tenths / 10.0) as i64)
    } else {
        json!(tenths / 10.0)
    }
}

/// Compressed sizes in bytes, of every file that the service worker keeps for everyone, of those that a first visit
/// waits for, and of the texts of a language, the largest of them, which it keeps for those who speak it.
fn sizes(dist: &Path) -> Outcome<Figures> {
    let mut figures = Figures::from([("bytes.language_br", 0.0)]);
    for path in precache::list(dist)?.paths() {
        let next = "run `cargo xtask dist` again";
        let bytes = fs::read(dist.join(path)).or_next(format!("reading {path}"), next)?;
        let size = compressed(&bytes)
            .or_next(format!("compressing {path}"), next)?
            .len() as f64;
        if precache::is_words(path) {
            let largest = figures.entry("bytes.language_br").or_default();
            *largest = size.max(*largest);
            continue;
        }
        *figures.entry("bytes.total_br").or_default() += size;
        if is_waited_for(path) {
            *figures.entry("bytes.first_br").or_default() += size;
        }
        if let Some(key) = kind(path) {
            *figures.entry(key).or_default() += size;
        }
    }
    Ok(figures)
}

/// Whether whoever comes for the first time sees nothing of the app before this file is there: page, style, scripts and the
/// first of the modules (`split`).
fn is_waited_for(path: &str) -> bool {
    ["index.html", ".css", ".js", "_bg.wasm"]
        .iter()
        .any(|end| path.ends_with(end))
}

/// The key that a file's size counts for, besides the total.
fn kind(path: &str) -> Option<&'static str> {
    match path.rsplit_once('.')?.1 {
        "wasm" => Some("bytes.wasm_br"),
        "js" => Some("bytes.js_br"),
        "css" => Some("bytes.css_br"),
        _ => None,
    }
}

/// A file as a static host sends it.
pub fn compressed(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut writer = brotli::CompressorWriter::new(Vec::new(), 4096, QUALITY, WINDOW);
    writer.write_all(bytes)?;
    writer.flush()?;
    Ok(writer.into_inner())
}

/// Milliseconds from navigation to ready, on a slowed processor, everything served by the service worker.
pub fn starts(session: &Session, address: &str) -> Outcome<f64> {
    Ok(median(starts_of(session, &[address])?.remove(0)))
}

/// The same of several apps in one browser, in turns, each start right after one of another: what else the machine does
/// falls on all of them.
pub fn starts_of(session: &Session, addresses: &[&str]) -> Outcome<Vec<Vec<f64>>> {
    for address in addresses {
        installed(session, address)?;
    }
    let mut times = vec![Vec::with_capacity(RUNS); addresses.len()];
    for _ in 0..RUNS {
        for (address, times) in addresses.iter().zip(&mut times) {
            times.push(start(session, address)?);
        }
    }
    for times in &times {
        note(format!("runs: {times:?} ms"));
    }
    Ok(times)
}

/// Makes sure that an app's service worker serves it: the first visit installs the worker, and what is measured are the
/// visits after it.
fn installed(session: &Session, address: &str) -> Outcome<()> {
    session.open(address)?;
    once_ready(session)?;
    session
        .ask_later(
            "const done = arguments[0];
             navigator.serviceWorker.ready.then((registration) => {
               const worker = registration.active;
               const settled = () => worker.state === 'activated' && done(true);
               worker.addEventListener('statechange', settled);
               settled();
             });",
        )
        .map(drop)
        .map_err(|failure| {
            Failure::new(
                format!("no service worker became active: {}", failure.what),
                "check that the app registers ./sw.js, and that every file in its list can be loaded",
            )
        })
}

/// Milliseconds of one start.
fn start(session: &Session, address: &str) -> Outcome<f64> {
    session.open("about:blank")?;
    slow(session, SLOWDOWN)?;
    session.open(address)?;
    let time = once_ready(session)?;
    let offline = session.ask(
        "return navigator.serviceWorker.controller !== null
           && performance.getEntriesByType('resource').every((entry) => entry.workerStart > 0);",
    )?;
    if offline != Value::Bool(true) {
        return Err(Failure::new(
            "a start was not served by the service worker alone",
            "check the list at the top of dist/sw.js against what the page loads",
        ));
    }
    Ok(time)
}

/// Times of the core in microseconds, and how many times as long other ways to the same plate plan take.
///
/// Criterion runs all of them one after the other in one run of `tests/bench` and keeps its estimates in files, of which
/// the medians are taken.
fn core_times() -> Outcome<Figures> {
    let next = "run `cargo bench -p stanchion-bench` and look at what it says";
    run_tool(
        tool("cargo")
            .args(["bench", "-p", "stanchion-bench", "--bench", "core"])
            .current_dir(places::root()),
        next,
    )?;
    let of = |name: &str| {
        let file = places::target("criterion")
            .join(name)
            .join("new/estimates.json");
        let text =
            fs::read_to_string(&file).or_next(format!("reading the times of {name}"), next)?;
        microseconds(&text)
            .ok_or_else(|| Failure::new(format!("no median in the times of {name}"), next))
    };
    let plan = of("plate_plan/plan")?;
    Ok(Figures::from([
        ("core.plate_plan_us", plan),
        ("core.plate_plan_rich_us", of("plate_plan/rich")?),
        (
            "core.plate_plan_bruteforce_ratio",
            of("plate_plan/bruteforce")? / plan,
        ),
        (
            "core.plate_plan_solver_ratio",
            of("plate_plan/solver")? / plan,
        ),
        ("core.propose_sheet_us", of("propose_sheet/warm")?),
        ("core.propose_sheet_cold_us", of("propose_sheet/cold")?),
    ]))
}

/// The median of Criterion's estimates, which are in nanoseconds, in microseconds.
fn microseconds(estimates: &str) -> Option<f64> {
    let estimates: Value = serde_json::from_str(estimates).ok()?;
    Some(estimates["median"]["point_estimate"].as_f64()? / 1000.0)
}

/// Slows the processor so many times, for the tab that is shown.
pub fn slow(session: &Session, times: u32) -> Outcome<()> {
    let rate = json!({ "rate": times });
    session
        .devtools("Emulation.setCPUThrottlingRate", &rate)
        .map(drop)
}

/// Waits for the app's mark; milliseconds since the navigation began.
pub fn once_ready(session: &Session) -> Outcome<f64> {
    let script = format!(
        "const done = arguments[0];
         const look = () => performance.getEntriesByName('{READY}')[0];
         if (look()) return done(look().startTime);
         new PerformanceObserver((list, observer) => {{
           if (look()) {{ observer.disconnect(); done(look().startTime); }}
         }}).observe({{ entryTypes: ['mark'] }});"
    );
    session
        .ask_later(&script)
        .and_then(|value| {
            value
                .as_f64()
                .ok_or_else(|| Failure::new(format!("the mark's time is {value}"), ""))
        })
        .map_err(|failure| {
            Failure::new(
                format!("the app never set its mark `{READY}`: {}", failure.what),
                "open the app with `cargo xtask serve` and look at the browser's console",
            )
        })
}

/// A figure of those that the browser tells.
pub fn metric(said: &Value, name: &str) -> Option<f64> {
    let metrics = said["metrics"].as_array()?;
    let metric = metrics.iter().find(|metric| metric["name"] == name)?;
    metric["value"].as_f64()
}

/// The middle value; of an even number of values the mean of the middle two.
pub fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    let middle = times.len() / 2;
    if times.len().is_multiple_of(2) {
        f64::midpoint(times[middle - 1], times[middle])
    } else {
        times[middle]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    #[test]
    fn the_median_is_the_middle_one_in_value() {
        assert_eq!(median(vec![9.0, 1.0, 100.0]), 9.0);
        assert_eq!(median(vec![4.0, 1.0, 3.0, 100.0]), 3.5);
    }

    #[test]
    fn a_time_is_the_median_of_the_estimates() {
        let estimates = r#"{"mean":{"point_estimate":9.0},"median":{"point_estimate":52210.5}}"#;
        assert_eq!(microseconds(estimates), Some(52.2105));
        assert_eq!(microseconds("{}"), None);
        assert_eq!(microseconds("nothing"), None);
    }

    #[test]
    fn figures_are_written_whole_or_to_a_tenth() {
        assert_eq!(number(0.022_676).to_string(), "0.023");
        assert_eq!(number(0.0).to_string(), "0");
        assert_eq!(number(44302.0).to_string(), "44302");
        assert_eq!(number(184.0999999998603).to_string(), "184.1");
    }

    #[test]
    fn sizes_are_of_compressed_files_and_the_worker_is_not_among_them() {
        let build = Scratch::new("sizes");
        build.write("index.html", &b"<p>again</p>".repeat(500));
        build.write("a.css", &b"p { color: red }".repeat(500));
        build.write("a.js", b"1;");
        build.write("a_1.wasm", b"what comes later");
        build.write("sw.js", &[7; 9999]);
        build.write("words/aa.json", b"short");
        build.write("words/bb.json", b"some more words than those of the other");
        let figures = sizes(build.path()).unwrap();
        assert!(figures["bytes.css_br"] > 0.0 && figures["bytes.css_br"] < 200.0);
        assert!(figures["bytes.total_br"] < 400.0, "{figures:?}");
        assert!(figures["bytes.total_br"] > figures["bytes.css_br"] + figures["bytes.js_br"]);
        let later = figures["bytes.total_br"] - figures["bytes.first_br"];
        assert_eq!(later, figures["bytes.wasm_br"]);
        // What the longest language adds.
        assert!((20.0..60.0).contains(&figures["bytes.language_br"]));
    }
}
