//! The page as Lighthouse's slow phone sees it, from a host that packs its files.

use std::fs;
use std::path::Path;
use std::thread;

use serde_json::Value;

use crate::measure::{Figures, compressed};
use crate::places;
use crate::precache;
use crate::run::{run, tool, which};
use crate::say::{Failure, OrNext, Outcome, note};
use crate::serve::{Host, Options};
use crate::setup::{Browser, FLAGS, lighthouse};

const NEXT: &str = "look at what Lighthouse says above, then run the command again";

/// Each figure, and where the report has it; scores are shares of 100.
const WANTED: [(&str, &str, f64); 4] = [
    (
        "lighthouse.performance",
        "/categories/performance/score",
        100.0,
    ),
    (
        "lighthouse.accessibility",
        "/categories/accessibility/score",
        100.0,
    ),
    (
        "lighthouse.best_practices",
        "/categories/best-practices/score",
        100.0,
    ),
    (
        "lighthouse.interactive_ms",
        "/audits/interactive/numericValue",
        1.0,
    ),
];

/// Scores from 0 to 100 and the time until the page answers in milliseconds; the report is kept in target/.
pub fn figures(browser: &Browser) -> Outcome<Figures> {
    let script = lighthouse::prepare()?;
    let node = which("node").ok_or_else(|| {
        Failure::new(
            "Lighthouse needs Node.js, and `node` is not on PATH",
            "install Node.js (Debian: `apt-get install nodejs` as root), then run the command again",
        )
    })?;
    let site = packed(&places::dist())?;
    let host = Host::open(&Options::of(site))?;
    let address = host.address()?;
    thread::spawn(move || host.answer());
    let profile = places::target("lighthouse-profile");
    fs::remove_dir_all(&profile).ok();
    let flags: Vec<String> = FLAGS.iter().map(|flag| (*flag).to_owned()).collect();
    let report = places::target("lighthouse.json");
    run(
        tool(node)
            .arg(script)
            .arg(&address)
            .args(["--quiet", "--output=json", "--form-factor=mobile"])
            .arg("--only-categories=performance,accessibility,best-practices")
            // The slow network and processor are applied, not extrapolated from a fast run: that takes whatever this host sent
            // before the first picture for something that the picture waited for.
            .arg("--throttling-method=devtools")
            .arg(format!("--output-path={}", report.display()))
            .arg(format!(
                "--chrome-flags={} --user-data-dir={}",
                flags.join(" "),
                profile.display()
            ))
            .env("CHROME_PATH", &browser.chromium),
        NEXT,
    )?;
    let text = fs::read_to_string(&report).or_next("reading Lighthouse's report", NEXT)?;
    let report: Value = serde_json::from_str(&text).or_next("Lighthouse's report", NEXT)?;
    for failed in failures(&report) {
        note(format!("not whole: {failed}"));
    }
    read(&report)
}

fn read(report: &Value) -> Outcome<Figures> {
    let mut figures = Figures::new();
    for (key, place, times) in WANTED {
        let figure = report.pointer(place).and_then(Value::as_f64);
        let figure = figure.ok_or_else(|| {
            Failure::new(format!("Lighthouse's report has nothing at {place}"), NEXT)
        })?;
        figures.insert(key, figure * times);
    }
    Ok(figures)
}

/// The checks that were not passed whole, by name.
fn failures(report: &Value) -> Vec<String> {
    let audits = report["audits"].as_object().into_iter().flatten();
    audits
        .filter(|(_, audit)| audit["score"].as_f64().is_some_and(|score| score < 0.9))
        .map(|(name, audit)| {
            let shown = audit["displayValue"].as_str().unwrap_or_default();
            format!("{name} {shown}")
        })
        .collect()
}

/// A copy of the build with each file packed beside itself.
fn packed(dist: &Path) -> Outcome<std::path::PathBuf> {
    let site = places::target("lighthouse-site");
    fs::remove_dir_all(&site).ok();
    let next = "check that target/ can be written, then run the command again";
    for path in precache::files(dist, "")? {
        let bytes = fs::read(dist.join(&path)).or_next(format!("reading {path}"), next)?;
        let to = site.join(&path);
        if let Some(folder) = to.parent() {
            fs::create_dir_all(folder).or_next("making a copy of the build", next)?;
        }
        let smaller = compressed(&bytes).or_next(format!("packing {path}"), next)?;
        fs::write(site.join(format!("{path}.br")), smaller).or_next("packing the build", next)?;
        fs::write(to, bytes).or_next("making a copy of the build", next)?;
    }
    Ok(site)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn figures_are_read_from_the_report() {
        let mut report = json!({
            "categories": {
                "performance": { "score": 0.97 },
                "accessibility": { "score": 1 },
                "best-practices": { "score": 1 },
            },
            "audits": { "interactive": { "numericValue": 2500.5, "score": 0.5, "displayValue": "2.5 s" } },
        });
        let figures = read(&report).unwrap();
        assert_eq!(figures["lighthouse.performance"], 97.0);
        assert_eq!(figures["lighthouse.interactive_ms"], 2500.5);
        assert_eq!(failures(&report), ["interactive 2.5 s"]);
        report["categories"]["performance"]["score"] = Value::Null;
        assert!(read(&report).is_err());
    }
}
