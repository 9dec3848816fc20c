//! The service worker's lists: every file of a build with its digest, and the build's version. Texts of other languages
//! stand in a list of their own: a phone keeps only those that it speaks.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;
use std::path::Path;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Map, Value, json};
use sha2::{Digest, Sha256};

use crate::notices;
use crate::say::{Failure, OrNext, Outcome};

/// The service worker's file. Its address never changes: pages in the wild look for it there.
pub const WORKER: &str = "sw.js";

/// Where the texts of other languages lie.
const WORDS: &str = "words/";

/// The page. It is listed as the folder that it answers for, since hosts redirect one to the other.
const PAGE: &str = "index.html";
const FOLDER: &str = "./";

/// The files of a build, by address relative to the service worker, in a fixed order.
#[derive(Debug, Default, PartialEq)]
pub struct List(BTreeMap<String, [u8; 32]>);

impl List {
    /// Adds a file by its path inside the build, written with `/`; but not the licences, which nobody needs on the floor.
    pub fn add(&mut self, path: &str, bytes: &[u8]) {
        if path == WORKER
            || path == notices::FILE
            || path.split('/').any(|part| part.starts_with('.'))
        {
            return;
        }
        let address = if path == PAGE { FOLDER } else { path };
        self.0
            .insert(address.to_owned(), Sha256::digest(bytes).into());
    }

    /// The paths of the listed files inside the build.
    pub fn paths(&self) -> impl Iterator<Item = &str> {
        self.0
            .keys()
            .map(|address| if address == FOLDER { PAGE } else { address })
    }

    /// A digest over every address and every byte: two builds share it only if they are the same.
    pub fn version(&self) -> String {
        let mut digest = Sha256::new();
        for (address, bytes) in &self.0 {
            digest.update(format!("{address}\n"));
            digest.update(bytes);
        }
        hex(&digest.finalize())[..16].to_owned()
    }

    /// The addresses whose bytes differ, or which only one of both has.
    pub fn differences<'a>(&'a self, other: &'a List) -> Vec<&'a str> {
        let mine = self
            .0
            .iter()
            .filter(|(address, digest)| other.0.get(*address) != Some(*digest));
        let theirs = other
            .0
            .keys()
            .filter(|address| !self.0.contains_key(*address));
        let mine = mine.map(|(address, _)| address.as_str());
        mine.chain(theirs.map(String::as_str)).collect()
    }

    /// The worker's source with the lists on top of it.
    pub fn worker(&self, template: &str) -> String {
        let digests = self.0.iter().map(|(address, bytes)| {
            let digest = format!("sha256-{}", STANDARD.encode(bytes));
            (address.clone(), json!(digest))
        });
        let (words, files): (Vec<_>, Vec<_>) = digests.partition(|(address, _)| is_words(address));
        let object = |list: Vec<(String, Value)>| list.into_iter().collect::<Map<_, _>>();
        let build = json!({
            "version": self.version(),
            "files": object(files),
            "words": object(words),
        });
        format!("const BUILD = {build};\n{template}")
    }

    /// The first relative address that the page names and the build does not hold.
    pub fn missing_from<'a>(&self, page: &'a str) -> Option<&'a str> {
        named_by(page).find(|address| !self.0.contains_key(*address))
    }
}

/// Whether a path is that of a language's texts, which not every phone keeps.
pub fn is_words(path: &str) -> bool {
    path.starts_with(WORDS)
}

/// Reads a build's folder.
pub fn list(folder: &Path) -> Outcome<List> {
    let mut list = List::default();
    for path in files(folder, "")? {
        let bytes = fs::read(folder.join(&path)).or_next(
            format!("reading {path} of the build"),
            "run `cargo xtask dist` again",
        )?;
        list.add(&path, &bytes);
    }
    if list.0.contains_key(FOLDER) {
        Ok(list)
    } else {
        Err(Failure::new(
            format!("{} holds no {PAGE}", folder.display()),
            "run `cargo xtask dist` to build it",
        ))
    }
}

/// The paths of all files below a folder, written with `/`.
pub fn files(folder: &Path, prefix: &str) -> Outcome<Vec<String>> {
    let next = "run `cargo xtask dist` to build the app";
    let entries = fs::read_dir(folder).or_next(format!("reading {}", folder.display()), next)?;
    let mut found = Vec::new();
    for entry in entries {
        let entry = entry.or_next(format!("reading {}", folder.display()), next)?;
        let path = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.path().is_dir() {
            found.extend(files(&entry.path(), &format!("{path}/"))?);
        } else {
            found.push(path);
        }
    }
    Ok(found)
}

/// The addresses in a page's attributes that are relative to it.
fn named_by(page: &str) -> impl Iterator<Item = &str> {
    ["href", "src", "data-js", "data-wasm", "data-parts"]
        .into_iter()
        .flat_map(move |attribute| page.split(attribute).skip(1))
        .filter_map(|rest| {
            let value = rest.strip_prefix('=')?.trim_start_matches(['"', '\'']);
            let end = value.find(['"', '\'', '>'])?;
            Some(value[..end].split(' '))
        })
        .flatten()
        .filter_map(|address| address.strip_prefix("./"))
}

/// Bytes as lower-case hexadecimal digits.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        write!(text, "{byte:02x}").ok();
        text
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    fn of(files: &[(&str, &str)]) -> List {
        let mut list = List::default();
        for (path, bytes) in files {
            list.add(path, bytes.as_bytes());
        }
        list
    }

    #[test]
    fn the_order_of_the_files_does_not_matter() {
        let one = of(&[("a.js", "1"), ("b.css", "2"), ("index.html", "3")]);
        let other = of(&[("index.html", "3"), ("b.css", "2"), ("a.js", "1")]);
        assert_eq!(one.version(), other.version());
        assert_eq!(one.worker("rest"), other.worker("rest"));
    }

    #[test]
    fn every_byte_and_every_address_is_in_the_version() {
        let base = of(&[("a.js", "1"), ("b.js", "2")]).version();
        assert_ne!(base, of(&[("a.js", "1"), ("b.js", "3")]).version());
        assert_ne!(base, of(&[("a.js", "2"), ("b.js", "1")]).version());
        assert_ne!(base, of(&[("a.js", "1"), ("c.js", "2")]).version());
        assert_ne!(base, of(&[("a.js", "1")]).version());
    }

    #[test]
    fn the_page_is_listed_as_its_folder_and_worker_and_licences_not_at_all() {
        let list = of(&[
            ("index.html", "page"),
            ("sw.js", "worker"),
            ("licences.txt", "long"),
            (".stage", "hidden"),
            ("icons/.hidden", "hidden"),
            ("icons/a.svg", "icon"),
        ]);
        assert_eq!(list.0.keys().collect::<Vec<_>>(), ["./", "icons/a.svg"]);
    }

    #[test]
    fn the_worker_begins_with_a_list_that_a_browser_can_read() {
        // SHA-256 of "abc": FIPS 180-4 example, in base64.
        let worker = of(&[("a.js", "abc"), ("words/de.json", "abc")]).worker("// rest\n");
        let (first, rest) = worker.split_once('\n').unwrap();
        let build: serde_json::Value = serde_json::from_str(
            first
                .strip_prefix("const BUILD = ")
                .and_then(|text| text.strip_suffix(';'))
                .unwrap(),
        )
        .unwrap();
        assert_eq!(
            build["files"]["a.js"],
            "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="
        );
        // The texts of a language are not for every phone.
        assert_eq!(build["files"].as_object().unwrap().len(), 1);
        assert_eq!(build["words"]["words/de.json"], build["files"]["a.js"]);
        assert_eq!(build["version"].as_str().unwrap().len(), 16);
        assert_eq!(rest, "// rest\n");
    }

    #[test]
    fn a_page_that_names_a_file_outside_the_build_is_caught() {
        let page = r##"<link href="./a.css"><script src='./boot.js' data-js="./x.js"></script>
            <a href="#floor"></a><a href="https://example.org/">"##;
        let mut list = of(&[("a.css", ""), ("boot.js", "")]);
        assert_eq!(list.missing_from(page), Some("x.js"));
        list.add("x.js", b"");
        assert_eq!(list.missing_from(page), None);
    }

    #[test]
    fn a_folder_is_read_to_its_depths() {
        let build = Scratch::new("build");
        build.write("index.html", b"page");
        build.write("icons/deep/a.svg", b"icon");
        let list = list(build.path()).unwrap();
        assert_eq!(
            list,
            of(&[("icons/deep/a.svg", "icon"), ("index.html", "page")])
        );
    }

    #[test]
    fn a_folder_without_the_page_is_no_build() {
        let build = Scratch::new("no-page");
        build.write("a.js", b"");
        assert!(list(build.path()).unwrap_err().what.contains("index.html"));
    }
}
