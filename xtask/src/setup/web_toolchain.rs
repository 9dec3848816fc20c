//! A Rust toolchain that builds for WebAssembly: rustup's, or Debian's with std built from source.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::{apt, found};
use crate::places;
use crate::run::{answer, run, tool, which};
use crate::say::{Failure, Outcome, note};

/// The target triple of the app.
pub const TRIPLE: &str = "wasm32-unknown-unknown";

/// Where Debian's packages put their programs.
const DEBIAN_BIN: &str = "/usr/bin";

/// Debian's packages for the web, besides the linker.
const DEBIAN_PACKAGES: [&str; 3] = ["rustc-web", "cargo-web", "rust-web-src"];

/// Which toolchain builds for the web on this machine.
#[derive(Debug)]
pub enum WebToolchain {
    /// The toolchain that builds everything else, with the target's std beside it.
    Native,
    /// Debian's, which has no std for this target and builds it, linked by this program.
    Debian {
        /// `wasm-ld-22` or a newer one.
        linker: String,
    },
}

impl WebToolchain {
    /// Finds a toolchain or makes one: rustup's target first, then Debian's packages.
    pub fn prepare() -> Outcome<Self> {
        if let Some(toolchain) = Self::find() {
            return Ok(toolchain.announced());
        }
        if which("rustup").is_some() {
            note(format!("adding the target {TRIPLE} with rustup"));
            let added = run(tool("rustup").args(["target", "add", TRIPLE]), "");
            if let (Ok(()), Some(toolchain)) = (added, Self::find()) {
                return Ok(toolchain.announced());
            }
        }
        if apt::is_here() {
            note("rustup cannot add the target here: using Debian's packages instead");
            let linker = newest_lld()?;
            apt::install(&[&DEBIAN_PACKAGES[..], &[&linker]].concat())?;
        }
        Self::find().map(Self::announced).ok_or_else(|| {
            Failure::new(
                format!("no Rust toolchain here can build for {TRIPLE}"),
                format!(
                    "with a network, run `rustup target add {TRIPLE}`; on Debian, `apt-get install {} lld-N` \
                     (newest N), where rustc-web must be {} or newer; then run the command again",
                    DEBIAN_PACKAGES.join(" "),
                    env!("CARGO_PKG_RUST_VERSION"),
                ),
            )
        })
    }

    fn announced(self) -> Self {
        match &self {
            Self::Native => found("WebAssembly target", "the toolchain's own"),
            Self::Debian { linker } => found(
                "WebAssembly target",
                &format!("Debian's rustc-web, std built from source, {linker}"),
            ),
        }
        self
    }

    fn find() -> Option<Self> {
        let sysroot = answer(tool("rustc").args(["--print", "sysroot"]))?;
        if Path::new(sysroot.trim())
            .join("lib/rustlib")
            .join(TRIPLE)
            .is_dir()
        {
            return Some(Self::Native);
        }
        Self::find_debian()
    }

    fn find_debian() -> Option<Self> {
        let bin = Path::new(DEBIAN_BIN);
        let said = answer(tool(bin.join("rustc")).arg("--version"))?;
        let new_enough =
            minor_of(&said)? >= minor_of(concat!("- ", env!("CARGO_PKG_RUST_VERSION")))?;
        let sources = Path::new("/usr/lib/rustlib/src/rust/library/Cargo.lock");
        if !(new_enough && bin.join("cargo").is_file() && sources.is_file()) {
            return None;
        }
        let programs = std::fs::read_dir(bin).ok()?;
        let names: Vec<_> = programs
            .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
            .collect();
        let number = apt::highest(names.iter().map(String::as_str), "wasm-ld-")?;
        Some(Self::Debian {
            linker: format!("wasm-ld-{number}"),
        })
    }

    /// A folder that must be first on PATH, if there is one.
    pub fn path_front(&self) -> Option<&'static Path> {
        match self {
            Self::Native => None,
            Self::Debian { .. } => Some(Path::new(DEBIAN_BIN)),
        }
    }

    /// This toolchain's cargo.
    pub fn cargo(&self) -> Command {
        match self {
            Self::Native => tool("cargo"),
            Self::Debian { .. } => tool(Path::new(DEBIAN_BIN).join("cargo")),
        }
    }

    /// Sets what a command for the web needs. Native commands must not have it: they would build
    /// the host's std as well.
    pub fn enter(&self, command: &mut Command) {
        let mut flags = format!("{WHOLE_NAMES} {STACK}");
        if let Some(flag) = without_home(std::env::var_os("CARGO_HOME"), std::env::home_dir()) {
            flags = format!("{flags} {flag}");
        }
        // The environment of one command: the tree holds no path of a machine.
        command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", flags);
        if let Self::Debian { linker } = self {
            command
                .env("RUSTC", Path::new(DEBIAN_BIN).join("rustc"))
                // Building std is not stable yet; Debian ships its sources for just this.
                .env("RUSTC_BOOTSTRAP", "1")
                .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort,panic_unwind")
                .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", linker)
                .env("CARGO_TARGET_DIR", self.target_dir());
        }
    }

    /// Where it builds: two toolchains in one folder would rebuild each other's work every time.
    pub fn target_dir(&self) -> PathBuf {
        match self {
            Self::Native => places::root().join("target"),
            Self::Debian { .. } => places::target("wasm"),
        }
    }

    /// Whether this toolchain has clippy, after trying to install it.
    pub fn clippy(&self) -> bool {
        match self {
            Self::Native => answer(self.cargo().args(["clippy", "--version"])).is_some(),
            Self::Debian { .. } => {
                let driver = Path::new(DEBIAN_BIN).join("clippy-driver");
                driver.is_file() || (apt::install(&["rust-web-clippy"]).is_ok() && driver.is_file())
            }
        }
    }
}

/// Names of functions say of which types they are made: the split of the build asks them of which room they are.
const WHOLE_NAMES: &str = "-Csymbol-mangling-version=v0";

/// 768 KiB of stack, a quarter less than usual: the data behind it ends below 1 MiB then, and an address of it is written
/// in three bytes and not in four. The deepest that was seen, with an import of a year, are 20 KiB.
const STACK: &str = "-Clink-arg=-zstack-size=786432";

/// The flag that keeps the place of cargo's packages on this machine out of the build, so that every machine builds the
/// same bytes; none where the place is not known, or cannot be written as a flag.
fn without_home(cargo: Option<OsString>, home: Option<PathBuf>) -> Option<String> {
    let place = cargo.map_or_else(
        || home.map(|home| home.join(".cargo")),
        |set| Some(set.into()),
    )?;
    let place = place.to_str().filter(|place| !place.contains([' ', '=']))?;
    Some(format!("--remap-path-prefix={place}=cargo"))
}

fn newest_lld() -> Outcome<String> {
    if let Some(name) = apt::newest("lld-") {
        return Ok(name);
    }
    apt::update()?;
    apt::newest("lld-").ok_or_else(|| {
        Failure::new(
            "apt knows no package lld-N, the linker for WebAssembly",
            "add a Debian source that has it, or run `rustup target add wasm32-unknown-unknown` with a network",
        )
    })
}

/// The minor version in what a compiler says of itself: 96 in `rustc 1.96.0 (…)`.
fn minor_of(said: &str) -> Option<u32> {
    let version = said.split_whitespace().nth(1)?;
    version.split('.').nth(1)?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minor_versions_are_read_as_numbers() {
        assert_eq!(minor_of("rustc 1.96.0 (ac68faa20 2026-05-25)"), Some(96));
        assert_eq!(minor_of("rustc 1.100.0-nightly"), Some(100));
        assert_eq!(minor_of("command not found"), None);
    }

    #[test]
    fn the_place_of_packages_is_kept_out_of_the_build() {
        let home = || Some(PathBuf::from("/place"));
        let flag = |cargo: Option<&str>| without_home(cargo.map(OsString::from), home());
        let said = |place: &str| Some(format!("--remap-path-prefix={place}=cargo"));
        assert_eq!(flag(None), said("/place/.cargo"));
        assert_eq!(flag(Some("/c")), said("/c"));
        assert_eq!(flag(Some("/c d")), None);
        assert_eq!(without_home(None, None), None);
    }

    #[test]
    fn only_debians_toolchain_changes_a_command() {
        let mut command = Command::new("cargo");
        WebToolchain::Native.enter(&mut command);
        let flags = "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS";
        assert!(command.get_envs().all(|(name, _)| name == flags));
        WebToolchain::Debian {
            linker: "wasm-ld-22".into(),
        }
        .enter(&mut command);
        assert!(command.get_envs().any(|(name, value)| {
            name == "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER"
                && value == Some("wasm-ld-22".as_ref())
        }));
    }
}
