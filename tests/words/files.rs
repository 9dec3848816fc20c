//! The files of the languages, read by a reader that is not the app's.

use serde_json::Value;
use std::path::Path;

/// A file of `assets/words/`.
pub struct Words {
    pub name: String,
    pub language: String,
    pub decimal_mark: String,
    /// Empty where it is the usual one.
    pub group_mark: String,
    /// As they stand in the file.
    pub texts: Vec<(String, String)>,
}

/// All of them.
pub fn all() -> Vec<Words> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/words");
    let files = std::fs::read_dir(folder).expect("assets/words is there");
    let all: Vec<Words> = files
        .map(|file| {
            let path = file.expect("a file").path();
            let text = std::fs::read_to_string(&path).expect("a file of words is text");
            let name = path.file_name().expect("a name").to_string_lossy();
            read(&name, &text)
        })
        .collect();
    assert!(!all.is_empty());
    all
}

fn read(name: &str, text: &str) -> Words {
    let value: Value = serde_json::from_str(text).unwrap_or_else(|e| panic!("{name}: {e}"));
    let field = |key: &str| value[key].as_str().unwrap_or_default().to_owned();
    Words {
        name: name.to_owned(),
        language: field("language"),
        decimal_mark: field("decimal_mark"),
        group_mark: field("group_mark"),
        texts: lines(name, text),
    }
}

/// The texts in the order of the file: each stands on a line of its own, so that changes are read line by line.
fn lines(name: &str, text: &str) -> Vec<(String, String)> {
    let (_, texts) = text
        .split_once("\"texts\": {\n")
        .unwrap_or_else(|| panic!("{name}: a line `\"texts\": {{` is expected"));
    let lines = texts.lines().take_while(|line| *line != "}");
    lines
        .map(|line| {
            let line = line.trim_end_matches(',');
            let one: serde_json::Map<String, Value> = serde_json::from_str(&format!("{{{line}}}"))
                .unwrap_or_else(|e| panic!("{name}: {line}: {e}"));
            let (english, text) = one.into_iter().next().expect("a text on each line");
            let text = text.as_str().expect("a text is a string").to_owned();
            (english, text)
        })
        .collect()
}
