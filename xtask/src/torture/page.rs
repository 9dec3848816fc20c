//! A page that trusts local storage, to see that the kills bite. No such thing is in the app.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use super::Subject;
use crate::places;
use crate::say::{OrNext, Outcome};

/// It says *saved* as soon as `setItem` has returned.
const HTML: &str =
    "<!doctype html><meta charset=\"utf-8\"><title>Careless</title><p id=\"said\"></p>
<script>
  window.tap = () => {
    const key = String(localStorage.length + 1).padStart(6, '0');
    localStorage.setItem(key, `tap ${Math.random()}`);
    document.getElementById('said').textContent = 'saved';
  };
</script>
";

/// Everything that it kept, as a text.
const ALL: &str = "JSON.stringify(Object.fromEntries(Object.entries(localStorage)))";

/// A person taps that often: as fast as in the app, whose pad takes a tap right after another for a slip.
const EVERY_MS: u32 = 100;

/// The page in its folder.
pub struct Page {
    folder: PathBuf,
}

impl Page {
    /// Writes the page.
    pub fn new() -> Outcome<Self> {
        let folder = places::target("torture-page");
        let next = "check that target/ can be written";
        fs::create_dir_all(&folder).or_next("making a folder", next)?;
        fs::write(folder.join("index.html"), HTML).or_next("writing a page", next)?;
        Ok(Self { folder })
    }
}

impl Subject for Page {
    fn folder(&self) -> &Path {
        &self.folder
    }

    fn look(&self) -> String {
        format!("arguments[0]({ALL});")
    }

    fn tap(&self, _: u64) -> String {
        format!(
            "const done = arguments[0];
             setTimeout(() => {{
               (window.wrappedJSObject ?? window).tap();
               if (document.getElementById('said').textContent === 'saved') done({ALL});
             }}, {EVERY_MS});"
        )
    }

    fn read(&self, seen: &Value) -> Result<BTreeMap<String, String>, String> {
        let text = seen.as_str().ok_or("the page gave no text")?;
        serde_json::from_str(text).map_err(|error| error.to_string())
    }
}
