//! The rules of the project that no compiler keeps: layers, headers, length, the page's policy, the parts table.
//!
//! Each rule is a function from a file to the faults in it, tried beside it on small files that break it.

#[path = "tidy/engines.rs"]
mod engines;
#[path = "tidy/files.rs"]
mod files;
#[path = "tidy/follows.rs"]
mod follows;
#[path = "tidy/layers.rs"]
mod layers;
#[path = "tidy/page.rs"]
mod page;
#[path = "tidy/parts.rs"]
mod parts;
#[path = "tidy/text.rs"]
mod text;

use files::File;

/// Fails with every fault on a line of its own.
fn none(faults: Vec<String>) {
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

fn check(rule: impl Fn(&File) -> Vec<String>) {
    let files = files::all();
    none(files.iter().flat_map(rule).collect());
}

fn file(path: &str) -> File {
    let found = files::all().into_iter().find(|file| file.path == path);
    found.unwrap_or_else(|| panic!("{path} is not there"))
}

#[test]
fn the_walk_sees_the_whole_project() {
    let paths: Vec<String> = files::all().into_iter().map(|file| file.path).collect();
    for known in [
        "src/lib.rs",
        "src/strength/rules/double.rs",
        "src/ui/floor/pad.rs",
        "tests/tidy/files.rs",
        "xtask/src/main.rs",
        "assets/sw.js",
        "style/tokens.css",
        "index.html",
        ".ci/run",
    ] {
        assert!(paths.iter().any(|path| path == known), "{known}");
    }
}

#[test]
fn arrows_run_one_way() {
    check(layers::faults);
}

#[test]
fn whoever_follows_leaves() {
    check(follows::faults);
}

#[test]
fn every_source_file_says_what_it_is() {
    check(text::header);
}

#[test]
fn no_source_file_is_long() {
    check(text::length);
}

#[test]
fn nothing_is_left_open_and_no_machine_is_named() {
    check(text::marks);
}

#[test]
fn only_what_belongs_there_stands_at_the_top() {
    none(text::top(&files::top()));
}

#[test]
fn the_page_obeys_its_policy() {
    none(page::faults(&file("index.html")));
}

#[test]
fn no_view_has_a_style_attribute() {
    check(|file| {
        if file.path.starts_with("src/ui/") {
            page::view_faults(file)
        } else {
            Vec::new()
        }
    });
}

#[test]
fn the_parts_table_is_true() {
    let files = files::all();
    let views = files.iter().filter(|file| file.path.starts_with("src/ui/"));
    none(parts::faults(
        &views.collect::<Vec<_>>(),
        &file("DEVELOPERS.md"),
    ));
}

#[test]
fn the_table_of_tests_left_out_is_true() {
    let files = files::all();
    let tests = files
        .iter()
        .filter(|file| file.path.starts_with("tests/e2e/") && file.kind() == "rs")
        // The marker itself.
        .filter(|file| !file.path.ends_with("/engine.rs"));
    none(engines::faults(
        &tests.collect::<Vec<_>>(),
        &file("docs/engines.md"),
    ));
}

#[test]
fn the_caution_is_the_same_while_the_app_loads_and_after() {
    let source = file("src/ui/welcome.rs").text;
    let (_, after) = source.split_once("fn before()").unwrap();
    let said = after.split('"').nth(1).unwrap();
    assert!(said.starts_with("Ask a physician first"), "{said}");
    let said: String = said.split("\\\n").map(str::trim_start).collect();
    assert!(file("index.html").text.contains(&said), "{said}");
}
