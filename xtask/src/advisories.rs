//! What is known against the packages that are locked: versions withdrawn from the registry, and advisories.
//!
//! Neither stands in the tree, so both are asked for; a machine that cannot ask is told so and goes on. The registry's index
//! knows what was withdrawn. Advisories are in a database beside it, which `cargo audit` reads where that is installed.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::licences;
use crate::places;
use crate::run::{answer, tool, which};
use crate::say::{Failure, OrNext, Outcome, note};

/// The registry as the lock file names it, and where its index answers: a file for each package, a line for each version.
const REGISTRY: &str = "registry+https://github.com/rust-lang/crates.io-index";
const INDEX: &str = "https://index.crates.io";

const NEXT: &str = "run `cargo update -p <name>`, or take another package";

/// A package and its version.
type Locked = (String, String);

/// Fails with every locked version that was withdrawn or that an advisory warns of.
pub fn check() -> Outcome<()> {
    let mut faults = withdrawn()?;
    faults.extend(warned_of()?);
    if faults.is_empty() {
        return Ok(());
    }
    Err(Failure::new(faults.join("\n"), NEXT))
}

fn withdrawn() -> Outcome<Vec<String>> {
    let locked = locked(&licences::all()?);
    let names: BTreeSet<&str> = locked.iter().map(|(name, _)| name.as_str()).collect();
    // One after the other on one connection: answers that arrive at once would be mixed in what is read.
    let mut curl = tool("curl");
    curl.args(["--silent", "--fail", "--retry", "2", "--max-time", "60"]);
    curl.args(names.iter().map(|name| format!("{INDEX}/{}", path(name))));
    let Some(said) = answer(&mut curl) else {
        note("the registry could not be asked what was withdrawn: no curl, or no network");
        return Ok(Vec::new());
    };
    let (known, faults) = withdrawn_in(&said, &locked);
    // An index of another form would else be taken for one without faults.
    if known == 0 {
        return Err(Failure::new(
            "the registry answered, but told of no locked version",
            "look at what its index says, and at `withdrawn_in` in xtask/src/advisories.rs",
        ));
    }
    let (all, gone) = (locked.len(), faults.len());
    note(format!(
        "asked of {known} of {all} versions, {gone} withdrawn"
    ));
    Ok(faults)
}

/// What the graph of all packages takes from the registry.
fn locked(graph: &Value) -> BTreeSet<Locked> {
    let packages = graph["packages"].as_array().into_iter().flatten();
    let outside = packages.filter(|package| package["source"] == REGISTRY);
    let named = outside.filter_map(|package| {
        let text = |key: &str| package[key].as_str().map(str::to_owned);
        Some((text("name")?, text("version")?))
    });
    named.collect()
}

/// Where the index keeps a package: folders of its first letters, so that none holds too many files
/// (The Cargo Book, "Registry Index", "Index files").
fn path(name: &str) -> String {
    let name = name.to_lowercase();
    match name.len() {
        1 | 2 => format!("{}/{name}", name.len()),
        3 => format!("3/{}/{name}", &name[..1]),
        _ => format!("{}/{}/{name}", &name[..2], &name[2..4]),
    }
}

/// How many of the locked versions the index knows, and those that were withdrawn.
fn withdrawn_in(index: &str, locked: &BTreeSet<Locked>) -> (usize, Vec<String>) {
    let mut known = BTreeSet::new();
    let mut faults = Vec::new();
    // Not every file ends its last line.
    let lines = serde_json::Deserializer::from_str(index).into_iter::<Value>();
    for line in lines.map_while(Result::ok) {
        let text = |key: &str| line[key].as_str().unwrap_or_default().to_owned();
        let version = (text("name"), text("vers"));
        if !locked.contains(&version) {
            continue;
        }
        if line["yanked"] == true {
            faults.push(format!("{} {} was withdrawn", version.0, version.1));
        }
        known.insert(version);
    }
    (known.len(), faults)
}

fn warned_of() -> Outcome<Vec<String>> {
    if which("cargo-audit").is_none() {
        note(
            "advisories are not looked at: `cargo install --locked cargo-audit` brings what reads them",
        );
        return Ok(Vec::new());
    }
    // It ends with an error where it found something: what it says counts.
    let output = tool("cargo")
        .args(["audit", "--json"])
        .current_dir(places::root())
        .output()
        .or_next("running cargo audit", "check that cargo is on PATH")?;
    let Some(faults) = warnings_in(&String::from_utf8_lossy(&output.stdout)) else {
        note("cargo audit could not read its database: advisories are not looked at");
        return Ok(Vec::new());
    };
    note(format!("{} advisories", faults.len()));
    Ok(faults)
}

/// The advisories in a report of `cargo audit` (its fields are those of `rustsec::report::Report`).
fn warnings_in(report: &str) -> Option<Vec<String>> {
    let report: Value = serde_json::from_str(report).ok()?;
    let list = report["vulnerabilities"]["list"].as_array()?;
    let one = |found: &Value| {
        let text = |value: &Value| value.as_str().unwrap_or("?").to_owned();
        let (package, advisory) = (&found["package"], &found["advisory"]);
        format!(
            "{} {}: {}, {}",
            text(&package["name"]),
            text(&package["version"]),
            text(&advisory["id"]),
            text(&advisory["title"])
        )
    };
    Some(list.iter().map(one).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_package_lies_in_folders_of_its_first_letters() {
        assert_eq!(
            ["a", "io", "syn", "Serde_json"].map(path),
            ["1/a", "2/io", "3/s/syn", "se/rd/serde_json"]
        );
    }

    #[test]
    fn a_locked_version_that_was_withdrawn_is_a_fault_and_another_is_not() {
        let graph = json!({ "packages": [
            { "name": "inner", "version": "1.0.1", "source": REGISTRY },
            { "name": "ours", "version": "1.0.0", "source": null },
        ] });
        let locked = locked(&graph);
        assert_eq!(locked.len(), 1);
        let index = |now: bool| {
            format!(
                "{}\n{}{}",
                json!({ "name": "inner", "vers": "1.0.0", "yanked": true }),
                json!({ "name": "inner", "vers": "1.0.1", "yanked": now }),
                // The next file, when this one's last line has no end.
                json!({ "name": "other", "vers": "2.0.0", "yanked": true })
            )
        };
        assert_eq!(withdrawn_in(&index(false), &locked), (1, Vec::new()));
        let faults = vec!["inner 1.0.1 was withdrawn".to_owned()];
        assert_eq!(withdrawn_in(&index(true), &locked), (1, faults));
        assert_eq!(withdrawn_in("<html>", &locked), (0, Vec::new()));
    }

    #[test]
    fn an_advisory_is_told_with_its_package_and_no_report_is_not_a_good_one() {
        let found = json!({
            "advisory": { "id": "RUSTSEC-2000-0001", "title": "reads past its end" },
            "package": { "name": "inner", "version": "1.0.1" },
        });
        let report = |list: Value| json!({ "vulnerabilities": { "list": list } }).to_string();
        assert_eq!(warnings_in(&report(json!([]))), Some(Vec::new()));
        assert_eq!(
            warnings_in(&report(json!([found]))),
            Some(vec![
                "inner 1.0.1: RUSTSEC-2000-0001, reads past its end".to_owned()
            ])
        );
        assert_eq!(warnings_in("error: no network"), None);
        assert_eq!(warnings_in("{}"), None);
    }
}
