//! The notices of the packages that are in the app: most licences ask that their text goes with what is built.
//!
//! They come from the packages' own files, as cargo holds them, into one text beside the app.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::licences::{self, may_stand_under, reached};
use crate::say::{Failure, OrNext, Outcome};

/// The file of the build. It is not among those that are kept for use without a network: see [`crate::precache`].
pub const FILE: &str = "licences.txt";

const NEXT: &str =
    "run `cargo fetch` and the command again; a package without a licence text must be replaced";

/// How the names of files begin that hold a licence or a notice, in lower case.
const NAMES: [&str; 6] = [
    "licence",
    "license",
    "unlicense",
    "copying",
    "copyright",
    "notice",
];

/// The compiler's own library is in the app too, and no package. Its notices by the COPYRIGHT-library.html that comes with
/// Rust 1.95, of the parts that reach WebAssembly.
const LIBRARY: &str = "Rust standard library";
const LIBRARY_RIGHTS: &str = "The Rust Project Developers; dlmalloc: 2014 Alex Crichton; tables of characters: 1991-2024 Unicode, Inc";

/// The MIT licence as the Open Source Initiative has it, for packages that name it and hold no text of it.
const MIT: &str = "\
Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the \"Software\"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED \"AS IS\", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
";

/// Writes the notices of this project's packages into the folder of a build; gives how many packages they are of.
pub fn write(folder: &Path) -> Outcome<usize> {
    let (text, packages) = of(&licences::in_the_app()?)?;
    fs::write(folder.join(FILE), text).or_next(
        "writing the licences",
        "check that the build's folder can be written",
    )?;
    Ok(packages)
}

/// The text for a graph of packages, the same for the same packages wherever they lie.
fn of(graph: &Value) -> Outcome<(String, usize)> {
    let packages = graph["packages"].as_array().into_iter().flatten();
    let by_id: BTreeMap<&str, &Value> = packages
        .filter_map(|package| Some((package["id"].as_str()?, package)))
        .collect();
    let macros: BTreeSet<&str> = by_id
        .iter()
        .filter(|(_, package)| is_macro(package))
        .map(|(id, _)| *id)
        .collect();
    let mut named = BTreeSet::new();
    let mut owners: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    // What runs in the compiler alone is not in the app, and neither is what only that needs.
    for id in reached(graph, &macros) {
        let Some(package) = by_id.get(id) else {
            continue;
        };
        let word = |field: &str| package[field].as_str().unwrap_or_default();
        let name = format!("{} {}", word("name"), word("version"));
        named.insert(format!("{name} ({})", word("license")));
        for text in texts(package)? {
            owners.entry(text).or_default().insert(name.clone());
        }
    }
    let packages = named.len();
    named.insert(format!("{LIBRARY} (MIT OR Apache-2.0, Unicode-3.0)"));
    owners
        .entry(mit(LIBRARY_RIGHTS))
        .or_default()
        .insert(LIBRARY.to_owned());
    Ok((laid_out(&named, &owners), packages))
}

fn laid_out(named: &BTreeSet<String>, owners: &BTreeMap<String, BTreeSet<String>>) -> String {
    // The mark says that it is UTF-8 to whoever is not told so by the host.
    let mut all =
        "\u{feff}What Stanchion is made of, and under which licences it may be passed on.\n\n"
            .to_owned();
    for name in named {
        all.push_str(name);
        all.push('\n');
    }
    let mut texts: Vec<(Vec<&str>, &str)> = owners
        .iter()
        .map(|(text, owners)| (owners.iter().map(String::as_str).collect(), text.as_str()))
        .collect();
    texts.sort();
    for (owners, text) in texts {
        let rule = "=".repeat(78);
        all.push_str(&format!("\n{rule}\n{}\n\n{text}", owners.join(", ")));
    }
    all
}

/// The texts that go with a package: its own, or that of the MIT licence where it names that and holds none.
fn texts(package: &Value) -> Outcome<Vec<String>> {
    let word = |field: &str| package[field].as_str().unwrap_or_default();
    let manifest = Path::new(word("manifest_path"));
    let folder = manifest.parent().unwrap_or(manifest);
    let mut files = files(folder, package)?;
    let mit_will_do = may_stand_under(word("license"), "MIT");
    let is_mit = |name: &str| name.to_lowercase().contains("mit");
    if mit_will_do && files.iter().any(|name| is_mit(name)) {
        // Of several licences to choose from one is enough.
        files.retain(|name| is_mit(name) || name.to_lowercase().starts_with("notice"));
    }
    if files.is_empty() && mit_will_do {
        return Ok(vec![mit(&holders(package))]);
    }
    if files.is_empty() {
        let what = format!("{} holds no text of its licence", word("name"));
        return Err(Failure::new(what, NEXT));
    }
    let read = |name: &String| {
        let what = format!("reading {name} of {}", word("name"));
        let bytes = fs::read(folder.join(name)).or_next(what, NEXT)?;
        Ok(cleaned(&String::from_utf8_lossy(&bytes)))
    };
    files.iter().map(read).collect()
}

/// The names of the files in a package's folder that hold a licence or a notice, in order.
fn files(folder: &Path, package: &Value) -> Outcome<Vec<String>> {
    let what = format!("looking into the folder of {}", package["name"]);
    let mut found = BTreeSet::new();
    for entry in fs::read_dir(folder).or_next(&what, NEXT)? {
        let entry = entry.or_next(&what, NEXT)?;
        let name = entry.file_name().to_string_lossy().into_owned();
        let lower = name.to_lowercase();
        if entry.path().is_file() && NAMES.iter().any(|begins| lower.starts_with(begins)) {
            found.insert(name);
        }
    }
    let declared = package["license_file"].as_str();
    found.extend(declared.map(str::to_owned));
    Ok(found.into_iter().collect())
}

/// Whose a package is, by its authors; they need not be named in it.
fn holders(package: &Value) -> String {
    let authors = package["authors"].as_array().into_iter().flatten();
    let names: Vec<&str> = authors
        .filter_map(Value::as_str)
        .filter_map(|author| author.split('<').next())
        .map(str::trim)
        .collect();
    match names.is_empty() {
        true => format!(
            "the authors of {}",
            package["name"].as_str().unwrap_or_default()
        ),
        false => names.join(", "),
    }
}

fn mit(holders: &str) -> String {
    format!("Copyright (c) {holders}\n\n{MIT}")
}

/// Plain line ends, and no blanks at the ends: packages differ in these and in nothing else.
fn cleaned(text: &str) -> String {
    let lines: Vec<&str> = text
        .trim_start_matches('\u{feff}')
        .lines()
        .map(str::trim_end)
        .collect();
    format!("{}\n", lines.join("\n").trim_matches('\n'))
}

fn is_macro(package: &Value) -> bool {
    let targets = package["targets"].as_array().into_iter().flatten();
    let kinds = targets.flat_map(|target| target["kind"].as_array().into_iter().flatten());
    kinds.into_iter().any(|kind| kind == "proc-macro")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;
    use serde_json::json;

    /// The app needs `inner` and `bare`, and a macro that needs `syntax`.
    fn graph(folder: &Path) -> Value {
        let package = |name: &str, licence: &str, kind: &str| {
            let manifest = folder.join(name).join("Cargo.toml");
            json!({
                "id": format!("#{name}@1"), "name": name, "version": "1.0.0", "license": licence,
                "manifest_path": manifest, "authors": ["Ada Boat <ada@example.org>"], "targets": [{ "kind": [kind] }],
            })
        };
        let on =
            |name: &str| json!({ "pkg": format!("#{name}@1"), "dep_kinds": [{ "kind": null }] });
        json!({
            "packages": [
                package("stanchion", "MIT", "lib"), package("inner", "MIT OR Apache-2.0", "lib"), package("bare", "MIT", "lib"),
                package("words", "Zlib", "proc-macro"), package("syntax", "Zlib", "lib"),
            ],
            "resolve": { "nodes": [
                { "id": "#stanchion@1", "deps": [on("inner"), on("bare"), on("words")] },
                { "id": "#inner@1", "deps": [] }, { "id": "#bare@1", "deps": [] },
                { "id": "#words@1", "deps": [on("syntax")] }, { "id": "#syntax@1", "deps": [] },
            ] },
        })
    }

    fn lay(name: &str) -> Scratch {
        let all = Scratch::new(name);
        all.write("stanchion/LICENSE", b"ours\n");
        all.write("inner/LICENSE-MIT", b"theirs  \r\n\r\n");
        all.write("inner/LICENSE-APACHE", b"long\n");
        all.write("bare/Cargo.toml", b"");
        all
    }

    #[test]
    fn each_package_in_the_app_has_its_notice_and_no_other_has() {
        let folder = lay("notices");
        let (text, packages) = of(&graph(folder.path())).unwrap();
        assert_eq!(packages, 3);
        assert!(text.contains("inner 1.0.0 (MIT OR Apache-2.0)\n"));
        assert!(text.contains("\ninner 1.0.0\n\ntheirs\n"));
        assert!(text.contains("\nstanchion 1.0.0\n\nours\n"));
        assert!(
            text.contains("\nbare 1.0.0\n\nCopyright (c) Ada Boat\n\nPermission is hereby granted")
        );
        assert!(text.contains(LIBRARY_RIGHTS));
        for none in ["long", "words", "syntax", "example.org"] {
            assert!(!text.contains(none), "{none}");
        }
    }

    #[test]
    fn the_text_is_the_same_wherever_the_packages_lie() {
        let (one, other) = (lay("notices-here"), lay("notices-there"));
        let text = |folder: &Scratch| of(&graph(folder.path())).unwrap().0;
        assert_eq!(text(&one), text(&other));
        assert!(!text(&one).contains(&*one.path().to_string_lossy()));
    }

    #[test]
    fn packages_with_one_text_share_it() {
        let folder = lay("notices-shared");
        folder.write("bare/LICENSE", b"theirs\n");
        let (text, _) = of(&graph(folder.path())).unwrap();
        assert!(text.contains("\nbare 1.0.0, inner 1.0.0\n\ntheirs\n"));
        assert_eq!(text.matches("theirs").count(), 1);
    }

    #[test]
    fn a_package_that_holds_no_text_and_may_not_go_under_mit_stops_the_build() {
        let folder = lay("notices-none");
        let mut graph = graph(folder.path());
        graph["packages"][2]["license"] = "Zlib".into();
        assert!(of(&graph).unwrap_err().what.contains("bare"));
    }
}
