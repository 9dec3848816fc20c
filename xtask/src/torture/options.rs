//! The options of `cargo xtask torture`.

use std::path::PathBuf;

use crate::say::{Failure, OrNext, Outcome};

/// Which browser is killed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    Chromium,
    Firefox,
}

/// What is done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Options {
    /// Kills.
    pub runs: u32,
    /// The browser.
    pub kind: Kind,
    /// Whether a page that trusts local storage is tried in place of the app.
    pub local_storage_only: bool,
    /// Where chance begins.
    pub seed: u64,
    /// A finished build to kill as it stands; none: dist/, built first.
    pub dir: Option<PathBuf>,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            runs: 200,
            kind: Kind::Chromium,
            local_storage_only: false,
            seed: 1,
            dir: None,
        }
    }
}

impl Options {
    /// Reads `--runs N`, `--browser chromium|firefox`, `--seed N`, `--dir D` and `--local-storage-only`.
    pub fn parse(words: &[&str]) -> Outcome<Self> {
        let mut options = Self::default();
        let mut rest = words.iter();
        while let Some(word) = rest.next() {
            if *word == "--local-storage-only" {
                options.local_storage_only = true;
                continue;
            }
            let given = rest.next().copied().unwrap_or_default();
            let next = "give a whole number from 1";
            match (*word, given) {
                ("--runs", count) => {
                    options.runs = count.parse().or_next(format!("--runs {count}"), next)?;
                }
                ("--seed", seed) => {
                    options.seed = seed.parse().or_next(format!("--seed {seed}"), next)?;
                }
                ("--dir", dir) if !dir.is_empty() => options.dir = Some(dir.into()),
                ("--browser", "chromium") => options.kind = Kind::Chromium,
                ("--browser", "firefox") => options.kind = Kind::Firefox,
                (word, given) => {
                    return Err(Failure::new(
                        format!("`{word} {given}` is no option of torture"),
                        "take --runs N, --seed N, --dir D, --browser chromium or firefox, --local-storage-only",
                    ));
                }
            }
        }
        Ok(options)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_are_read_and_strange_ones_refused() {
        let words = [
            "--local-storage-only",
            "--runs",
            "3",
            "--browser",
            "firefox",
        ];
        let options = Options::parse(&words).unwrap();
        assert!(options.local_storage_only);
        assert_eq!((options.runs, options.kind), (3, Kind::Firefox));
        assert_eq!(Options::parse(&[]).unwrap(), Options::default());
        for wrong in [&["--runs"][..], &["--runs", "x"], &["--browser", "other"]] {
            assert!(Options::parse(wrong).is_err(), "{wrong:?}");
        }
    }
}
