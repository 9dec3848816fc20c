//! What is known against the packages that are locked: versions withdrawn from the registry, and advisories.
//!
//! Neither stands in the tree, so both are asked for; a machine that cannot ask is told so and goes on. cargo knows what the
//! registry withdrew. Advisories are in a database beside it, which `cargo audit` reads where that is installed.

use std::fs;

use serde_json::Value;

use crate::licences;
use crate::places;
use crate::run::{tool, which};
use crate::say::{Failure, OrNext, Outcome, note};

const NEXT: &str = "run `cargo update -p <name>`, or take another package";

/// Fails with every locked version that was withdrawn or that an advisory warns of.
pub fn check() -> Outcome<()> {
    let mut faults = withdrawn()?;
    faults.extend(warned_of()?);
    if faults.is_empty() {
        return Ok(());
    }
    Err(Failure::new(faults.join("\n"), NEXT))
}

/// Asks for exactly what is locked in a package of its own: cargo takes no withdrawn version that is not locked already.
fn withdrawn() -> Outcome<Vec<String>> {
    let asked = manifest(&licences::all()?);
    let folder = places::root().join("target/withdrawn");
    let written = fs::create_dir_all(folder.join("src"))
        .and_then(|()| fs::write(folder.join("src/lib.rs"), ""))
        .and_then(|()| fs::write(folder.join("Cargo.toml"), &asked));
    written.or_next(
        format!("writing to {}", folder.display()),
        "make room, or make the folder writable",
    )?;
    let output = tool("cargo")
        .arg("generate-lockfile")
        .current_dir(&folder)
        .output()
        .or_next(
            "running cargo generate-lockfile",
            "check that cargo is on PATH",
        )?;
    let said = String::from_utf8_lossy(&output.stderr);
    let faults = withdrawn_in(&said);
    if output.status.success() {
        note(format!(
            "{} versions, none withdrawn",
            asked.matches("\n\"").count()
        ));
    } else if faults.is_empty() {
        let why = said.lines().next().unwrap_or_default();
        note(format!(
            "the registry could not be asked what was withdrawn: {why}"
        ));
    }
    Ok(faults)
}

/// A package that needs exactly what the graph of all packages takes from a registry.
fn manifest(graph: &Value) -> String {
    let head =
        "[package]\nname = \"withdrawn\"\nedition = \"2024\"\n\n[workspace]\n\n[dependencies]\n";
    let packages = graph["packages"].as_array().into_iter().flatten();
    let outside = packages.filter(|package| package["source"].is_string());
    let lines = outside.enumerate().map(|(n, package)| {
        // A package may be there in several versions, so each has a name of its own.
        format!(
            "\"p{n}\" = {{ package = {}, version = \"={}\", default-features = false }}\n",
            package["name"],
            package["version"].as_str().unwrap_or_default()
        )
    });
    head.to_owned() + &lines.collect::<String>()
}

/// What cargo says was withdrawn: it names the requirement that cannot be met, and why.
fn withdrawn_in(said: &str) -> Vec<String> {
    let of = said
        .lines()
        .find(|line| line.contains("select a version for"));
    let why = said
        .lines()
        .filter(|line| line.trim_end().ends_with("is yanked"));
    why.map(|line| format!("{}: {}", of.unwrap_or_default().trim(), line.trim()))
        .collect()
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
    fn what_is_locked_is_asked_for_as_it_is_and_what_is_ours_is_not() {
        let asked = manifest(&json!({ "packages": [
            { "name": "inner", "version": "1.0.1", "source": "a registry" },
            { "name": "ours", "version": "1.0.0", "source": null },
            { "name": "inner", "version": "2.0.0", "source": "a registry" },
        ] }));
        let lines: Vec<&str> = asked.lines().filter(|line| line.starts_with('"')).collect();
        assert_eq!(
            lines,
            [
                "\"p0\" = { package = \"inner\", version = \"=1.0.1\", default-features = false }",
                "\"p1\" = { package = \"inner\", version = \"=2.0.0\", default-features = false }",
            ]
        );
    }

    #[test]
    fn a_withdrawn_version_is_a_fault_and_a_registry_that_is_away_is_none() {
        let said = "error: failed to select a version for the requirement `inner = \"=1.0.1\"`\n  \
                    version 1.0.1 is yanked\nlocation searched: a registry\n";
        assert_eq!(
            withdrawn_in(said),
            [
                "error: failed to select a version for the requirement `inner = \"=1.0.1\"`: version 1.0.1 is yanked"
            ]
        );
        assert!(withdrawn_in("error: failed to fetch\n").is_empty());
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
