//! Set-up: whatever a fresh machine lacks, found or installed without a question.

mod apt;
pub mod axe;
mod binaryen;
mod browser;
mod cargo_tool;
mod firefox;
pub mod lighthouse;
mod npm;
mod web_toolchain;
mod webkit;

use std::path::PathBuf;
use std::process::Command;

pub use browser::{Browser, FLAGS};
pub use firefox::Firefox;
pub use web_toolchain::{TRIPLE, WebToolchain};
pub use webkit::Webkit;

use crate::run::{path_with, tool};
use crate::say::{Outcome, note, step};
use crate::{lock, places};

/// The newest Trunk that builds with the project's Rust version.
const TRUNK: &str = "0.21.14";

/// All that building for the web needs.
pub struct Tools {
    toolchain: WebToolchain,
    trunk: PathBuf,
    bindgen: PathBuf,
    wasm_opt: Option<PathBuf>,
}

impl Tools {
    /// Finds or installs the WebAssembly target, Trunk, wasm-bindgen and wasm-opt.
    pub fn prepare() -> Outcome<Self> {
        step("Set-up", || {
            let toolchain = WebToolchain::prepare()?;
            let bindgen = cargo_tool::prepare(&cargo_tool::Tool {
                package: "wasm-bindgen-cli",
                version: &lock::version_of("wasm-bindgen")?,
                programs: &["wasm-bindgen", "wasm-bindgen-test-runner"],
                // The published lock of this tool has named crates that the registry did not hold yet.
                locked: false,
                // It reads and writes modules of some 40 MB.
                optimised: 1,
                minutes: 3,
            })?;
            let trunk = cargo_tool::prepare(&cargo_tool::Tool {
                package: "trunk",
                version: TRUNK,
                programs: &["trunk"],
                locked: true,
                optimised: 0,
                minutes: 4,
            })?;
            let wasm_opt = binaryen::prepare()?;
            Ok(Self {
                toolchain,
                trunk,
                bindgen,
                wasm_opt,
            })
        })
    }

    /// The toolchain, for what is asked of it alone.
    pub fn toolchain(&self) -> &WebToolchain {
        &self.toolchain
    }

    /// Tells one set of tools from another, for deciding whether a build is still fresh.
    pub fn fingerprint(&self) -> String {
        let versions = [&self.trunk, &self.bindgen].map(|path| path.display().to_string());
        format!("{versions:?} {:?} {:?}", self.wasm_opt, self.toolchain)
    }

    /// wasm-opt, where this machine has it.
    pub fn wasm_opt(&self) -> Option<&PathBuf> {
        self.wasm_opt.as_ref()
    }

    /// Trunk, with the tools and this program on its PATH.
    pub fn trunk(&self) -> Outcome<Command> {
        let mut command = tool(self.trunk.join(program("trunk")));
        self.enter(&mut command)?;
        Ok(command)
    }

    /// Cargo for the web, with the test runner on its PATH.
    pub fn web_cargo(&self) -> Outcome<Command> {
        let mut command = self.toolchain.cargo();
        self.enter(&mut command)?;
        Ok(command)
    }

    fn enter(&self, command: &mut Command) -> Outcome<()> {
        let own = std::env::current_exe().ok();
        let own = own.as_deref().and_then(|path| path.parent());
        let front: Vec<_> = self
            .toolchain
            .path_front()
            .into_iter()
            .chain([self.bindgen.as_path()])
            .chain(own)
            .collect();
        command
            .current_dir(places::root())
            .env("PATH", path_with(&front)?);
        self.toolchain.enter(command);
        Ok(())
    }
}

/// A program's file name on this system.
fn program(name: &str) -> String {
    format!("{name}{}", std::env::consts::EXE_SUFFIX)
}

/// Says that something was found, in one form for all tools.
fn found(what: &str, detail: &str) {
    note(format!("{what}: {detail}"));
}
