//! Where things lie: the project, its build folders and the tools' cache.

use std::env;
use std::path::{Path, PathBuf};

use crate::say::{Failure, Outcome};

/// The project's root: the folder above this crate.
pub fn root() -> &'static Path {
    let crate_folder = Path::new(env!("CARGO_MANIFEST_DIR"));
    crate_folder.parent().unwrap_or(crate_folder)
}

/// A path inside the project's build folder.
pub fn target(name: &str) -> PathBuf {
    root().join("target").join(name)
}

/// The finished app.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// The folder of one tool in one version. It is the user's, so that all clones share it.
pub fn tool(name: &str, version: &str) -> Outcome<PathBuf> {
    let base = cache_base(|name| env::var_os(name).map(PathBuf::from)).ok_or_else(|| {
        Failure::new(
            "no cache folder is known: neither XDG_CACHE_HOME, HOME nor LOCALAPPDATA is set",
            "set XDG_CACHE_HOME to a folder that can be written and run the command again",
        )
    })?;
    Ok(base
        .join("stanchion-tools")
        .join(format!("{name}-{version}")))
}

/// The user's cache folder by each system's custom.
fn cache_base(variable: impl Fn(&str) -> Option<PathBuf>) -> Option<PathBuf> {
    let set = |name: &str| variable(name).filter(|path| path.is_absolute());
    set("XDG_CACHE_HOME").or_else(|| {
        if cfg!(windows) {
            set("LOCALAPPDATA")
        } else if cfg!(target_os = "macos") {
            set("HOME").map(|home| home.join("Library/Caches"))
        } else {
            set("HOME").map(|home| home.join(".cache"))
        }
    })
}

#[cfg(all(test, target_os = "linux"))]
mod tests {
    use super::*;

    fn base(set: &[(&str, &str)]) -> Option<PathBuf> {
        cache_base(|name| {
            set.iter()
                .find(|(key, _)| *key == name)
                .map(|(_, value)| PathBuf::from(value))
        })
    }

    #[test]
    fn the_named_cache_folder_wins_over_the_home() {
        assert_eq!(
            base(&[("XDG_CACHE_HOME", "/c"), ("HOME", "/h")]),
            Some(PathBuf::from("/c"))
        );
        assert_eq!(base(&[("HOME", "/h")]), Some(PathBuf::from("/h/.cache")));
    }

    #[test]
    fn a_relative_cache_folder_is_not_used() {
        // The XDG base directory specification: relative paths are invalid and ignored.
        assert_eq!(
            base(&[("XDG_CACHE_HOME", "c"), ("HOME", "/h")]),
            Some(PathBuf::from("/h/.cache"))
        );
        assert_eq!(base(&[]), None);
    }
}
