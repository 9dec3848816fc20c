//! The end of a build, called by Trunk before it puts the new dist/ in place: shrinks the WebAssembly and its script,
//! cuts it in parts, joins the style sheets, writes the licences of what is in it, then the service worker over the
//! final bytes.

use std::env;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use crate::glue;
use crate::notices;
use crate::places;
use crate::precache::{self, hex};
use crate::run::{run as run_tool, tool};
use crate::say::{Failure, OrNext, Outcome, note};
use crate::split::{self, Cut};
use crate::styles;

/// Names wasm-opt's path to the hook; empty where there is none.
pub const WASM_OPT: &str = "STANCHION_WASM_OPT";

/// Larger functions that are called from one place stay functions. A browser compiles one when it is called for the first
/// time: put into its caller it would be compiled with that, called or not.
const APART: &str = "--one-caller-inline-max-function-size=100";

/// Nothing lies in the first 1,024 bytes of the memory but the last of the stack, which grows down to 0. So an address with
/// a number added that is no more than that never wraps around, and the number can be said with the access.
const LOW_UNUSED: &str = "--low-memory-unused";

/// For size, as long as that makes it smaller; names stay for the parts (`split/`).
const PASSES: [&str; 3] = ["-Oz", "--converge", "-g"];

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
    shrink(
        &staging,
        env::var_os(WASM_OPT).filter(|path| !path.is_empty()),
    )?;
    styles::join(&staging)?;
    let packages = notices::write(&staging)?;
    note(format!("licences: of {packages} packages"));
    write_worker(&staging)
}

fn shrink(staging: &Path, wasm_opt: Option<OsString>) -> Outcome<()> {
    for path in precache::files(staging, "")? {
        let Some(stem) = path.strip_suffix("_bg.wasm") else {
            continue;
        };
        let module = staging.join(&path);
        if let Some(wasm_opt) = &wasm_opt {
            optimise(&module, wasm_opt)?;
        }
        cut(staging, stem, &module)?;
        shorten_names(&module, &staging.join(format!("{stem}.js")))?;
        name_by_bytes(staging, stem)?;
    }
    Ok(())
}

/// Gives script and modules names with a digest of what they hold now. Trunk's are of what they held before: browsers keep
/// files by these names for ever, and modules that were cut in two ways must never meet.
fn name_by_bytes(staging: &Path, stem: &str) -> Outcome<()> {
    let (name, _) = stem
        .rsplit_once('-')
        .ok_or_else(|| Failure::new(format!("{stem} is not named as Trunk names it"), NEXT))?;
    let mut files = precache::files(staging, "")?;
    // A folder is listed in any order.
    files.sort_unstable();
    let ours: Vec<&String> = files.iter().filter(|path| path.starts_with(stem)).collect();
    let mut digest = Sha256::new();
    for path in &ours {
        let bytes = fs::read(staging.join(path)).or_next(format!("reading {path}"), NEXT)?;
        digest.update(bytes);
    }
    let new = format!("{name}-{}", &hex(&digest.finalize())[..16]);
    for path in ours {
        let to = staging.join(path.replacen(stem, &new, 1));
        fs::rename(staging.join(path), to).or_next(format!("renaming {path}"), NEXT)?;
    }
    let place = staging.join("index.html");
    let page = fs::read_to_string(&place).or_next("reading the page", NEXT)?;
    fs::write(place, page.replace(stem, &new)).or_next("writing the page", NEXT)
}

/// Makes a module smaller; its functions keep their names.
fn optimise(module: &Path, wasm_opt: &OsString) -> Outcome<()> {
    let before = size(module)?;
    run_tool(
        tool(wasm_opt)
            .args(PASSES)
            .args([APART, LOW_UNUSED])
            .arg(module)
            .arg("--output")
            .arg(module),
        NEXT,
    )?;
    note(format!(
        "wasm-opt: {before} bytes with all names, now {}",
        size(module)?
    ));
    Ok(())
}

/// Cuts the module of the app into parts and names the later ones in the page; of another module only the names go.
fn cut(staging: &Path, stem: &str, module: &Path) -> Outcome<()> {
    let bytes = fs::read(module).or_next("reading the WebAssembly", NEXT)?;
    let Cut {
        parts,
        listing,
        vain,
    } = split::split(&bytes).map_err(|why| {
        Failure::new(
            format!("{} could not be cut: {why}", module.display()),
            "the compiler writes what xtask/src/split does not know: teach it",
        )
    })?;
    let sizes: Vec<usize> = parts.iter().map(Vec::len).collect();
    note(format!("modules: {sizes:?} bytes"));
    if !vain.is_empty() {
        note(format!(
            "listed in xtask/src/split/rooms.rs, and nothing is of it: {}",
            vain.join(", ")
        ));
    }
    let mut names = Vec::new();
    for (number, bytes) in parts.iter().enumerate() {
        if number == 0 {
            fs::write(module, bytes).or_next("writing the WebAssembly", NEXT)?;
        } else {
            let name = format!("{stem}_{number}.wasm");
            fs::write(staging.join(&name), bytes).or_next(format!("writing {name}"), NEXT)?;
            names.push(format!("./{name}"));
        }
    }
    if names.is_empty() {
        return Ok(());
    }
    fs::write(places::target("modules.txt"), listing).or_next(
        "writing target/modules.txt",
        "check that target/ can be written",
    )?;
    let place = staging.join("index.html");
    let page = fs::read_to_string(&place).or_next("reading the page", NEXT)?;
    let wasm = format!("data-wasm=\"./{stem}_bg.wasm\"");
    if !page.contains(&wasm) {
        return Err(Failure::new(
            format!("index.html does not say {wasm}"),
            NEXT,
        ));
    }
    let page = page.replace(&wasm, &format!("{wasm} data-parts=\"{}\"", names.join(" ")));
    fs::write(place, page).or_next("writing the page", NEXT)
}

/// Short names for what the WebAssembly and its script share.
fn shorten_names(module: &Path, script: &Path) -> Outcome<()> {
    let glue = fs::read_to_string(script).or_next("reading the script of the WebAssembly", NEXT)?;
    let bytes = fs::read(module).or_next("reading the WebAssembly", NEXT)?;
    let (shorter, bytes) = glue::shorten(&glue, &bytes).ok_or_else(|| {
        Failure::new(
            format!("the names in {} could not be made short", script.display()),
            "this wasm-bindgen writes what xtask/src/glue.rs does not know: teach it",
        )
    })?;
    note(format!("glue: {} bytes, now {}", glue.len(), shorter.len()));
    fs::write(script, shorter).or_next("writing the script of the WebAssembly", NEXT)?;
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
