//! A folder that a test writes into and that is gone afterwards.

use std::fs;
use std::path::{Path, PathBuf};

use crate::places;

/// The folder; dropping it deletes it.
pub struct Scratch(PathBuf);

impl Scratch {
    /// An empty folder, `name` being this test's own.
    pub fn new(name: &str) -> Self {
        let path = places::target("xtask-tests").join(format!("{name}-{}", std::process::id()));
        fs::create_dir_all(&path).expect("the build folder can be written");
        Self(path)
    }

    /// The folder's path.
    pub fn path(&self) -> &Path {
        &self.0
    }

    /// Writes a file, and the folders that it needs.
    pub fn write(&self, name: &str, bytes: &[u8]) {
        let path = self.0.join(name);
        fs::create_dir_all(path.parent().expect("a file has a folder")).expect("folder");
        fs::write(path, bytes).expect("file");
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        fs::remove_dir_all(&self.0).ok();
    }
}
