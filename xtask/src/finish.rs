//! The end of a build, called by Trunk before it puts the new dist/ in place: shrinks the
//! WebAssembly and its script, joins the style sheets, writes the licences of what is in it, then the service worker over the
//! final bytes.

use std::env;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};

use crate::glue;
use crate::notices;
use crate::places;
use crate::precache;
use crate::run::{run as run_tool, tool};
use crate::say::{Failure, OrNext, Outcome, note};
use crate::styles;

/// Names wasm-opt's path to the hook; empty where there is none.
pub const WASM_OPT: &str = "STANCHION_WASM_OPT";

/// Larger functions that are called from one place stay functions. A browser compiles one when it is called for the first
/// time: put into its caller it would be compiled with that, called or not.
const APART: &str = "--one-caller-inline-max-function-size=100";

/// What to do when this part fails.
const NEXT: &str =
    "run `cargo xtask dist` again; if it fails again, delete dist/ and target/ first";

/// Finishes the build that Trunk has staged.
pub fn run() -> Outcome<()> {
    let staging = env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .ok_or_else(|| {
            Failure::new(
                "`finish` is for Trunk's post-build hook, and Trunk did not call it",
                "run `cargo xtask dist`",
            )
        })?;
    if let Some(wasm_opt) = env::var_os(WASM_OPT).filter(|path| !path.is_empty()) {
        shrink(&staging, wasm_opt)?;
    }
    styles::join(&staging)?;
    let packages = notices::write(&staging)?;
    note(format!("licences: of {packages} packages"));
    write_worker(&staging)
}

fn shrink(staging: &Path, wasm_opt: OsString) -> Outcome<()> {
    for path in precache::files(staging, "")? {
        if !path.ends_with(".wasm") {
            continue;
        }
        let path = staging.join(path);
        shorten_names(&path)?;
        let before = size(&path)?;
        run_tool(
            tool(&wasm_opt)
                .arg("-Oz")
                .arg(APART)
                .arg(&path)
                .arg("--output")
                .arg(&path),
            NEXT,
        )?;
        note(format!("wasm-opt: {before} bytes, now {}", size(&path)?));
    }
    Ok(())
}

/// Short names for what the WebAssembly and its script share.
fn shorten_names(module: &Path) -> Outcome<()> {
    let text = module.to_string_lossy();
    let script = text
        .strip_suffix("_bg.wasm")
        .map(|stem| format!("{stem}.js"));
    let script = script.ok_or_else(|| {
        Failure::new(
            format!("{text} is not named as wasm-bindgen names it"),
            NEXT,
        )
    })?;
    let glue =
        fs::read_to_string(&script).or_next("reading the script of the WebAssembly", NEXT)?;
    let bytes = fs::read(module).or_next("reading the WebAssembly", NEXT)?;
    let (shorter, bytes) = glue::shorten(&glue, &bytes).ok_or_else(|| {
        Failure::new(
            format!("the names in {script} could not be made short"),
            "this wasm-bindgen writes what xtask/src/glue.rs does not know: teach it",
        )
    })?;
    note(format!("glue: {} bytes, now {}", glue.len(), shorter.len()));
    fs::write(&script, shorter).or_next("writing the script of the WebAssembly", NEXT)?;
    fs::write(module, bytes).or_next("writing the WebAssembly", NEXT)
}

fn write_worker(staging: &Path) -> Outcome<()> {
    let list = precache::list(staging)?;
    let page = fs::read_to_string(staging.join("index.html")).or_next("reading the page", NEXT)?;
    if let Some(address) = list.missing_from(&page) {
        return Err(Failure::new(
            format!("index.html names ./{address}, which is not in the build"),
            "correct the address in index.html, or add a data-trunk link that copies the file",
        ));
    }
    let template = fs::read_to_string(places::root().join("assets").join(precache::WORKER))
        .or_next("reading assets/sw.js", NEXT)?;
    fs::write(staging.join(precache::WORKER), list.worker(&template))
        .or_next("writing the service worker", NEXT)?;
    note(format!("service worker: version {}", list.version()));
    Ok(())
}

fn size(path: &Path) -> Outcome<u64> {
    Ok(fs::metadata(path)
        .or_next("reading the size of the wasm", NEXT)?
        .len())
}
