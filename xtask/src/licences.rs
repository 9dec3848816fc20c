//! Under which licences the packages stand that the app is made of, and those that only build and test it.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;
use spdx::{Expression, ParseMode};

use crate::places;
use crate::run::tool;
use crate::say::{Failure, OrNext, Outcome, note};
use crate::setup::TRIPLE;

/// What may be in the app: permissive, asking for no more than a notice.
const SHIPPED: [&str; 10] = [
    "MIT",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "ISC",
    "Zlib",
    "0BSD",
    "CC0-1.0",
    "BSL-1.0",
    "Unicode-3.0",
];

/// What may build and test it besides: it binds only who changes those packages themselves.
const TOOLS: [&str; 2] = ["MPL-2.0", "MIT-0"];

const NEXT: &str = "take another package, or add the licence to xtask/src/licences.rs after reading what it asks for";

/// Fails with every package whose licence is not on the list.
pub fn check() -> Outcome<()> {
    let in_the_app = in_the_app()?;
    let faults = faults(&all()?, &in_the_app);
    if faults.is_empty() {
        let shipped = reached(&in_the_app, &BTreeSet::new()).len();
        note(format!("{shipped} packages are in the app, all permissive"));
        return Ok(());
    }
    Err(Failure::new(faults.join("\n"), NEXT))
}

/// All packages, as cargo says it.
pub fn all() -> Outcome<Value> {
    graph(&[])
}

/// The packages of the app and what they need in the browser, as cargo says it.
pub fn in_the_app() -> Outcome<Value> {
    graph(&["--filter-platform", TRIPLE])
}

fn graph(more: &[&str]) -> Outcome<Value> {
    let output = tool("cargo")
        .args(["metadata", "--format-version", "1", "--locked"])
        .args(more)
        .current_dir(places::root())
        .output()
        .or_next("running cargo metadata", "check that cargo is on PATH")?;
    serde_json::from_slice(&output.stdout).or_next(
        "reading what cargo metadata says",
        "run `cargo metadata --locked` and look at what it says",
    )
}

fn faults(all: &Value, in_the_app: &Value) -> Vec<String> {
    let shipped = reached(in_the_app, &BTreeSet::new());
    let packages = all["packages"].as_array().into_iter().flatten();
    let outside = packages.filter(|package| !package["source"].is_null());
    outside
        .filter_map(|package| {
            let id = package["id"].as_str().unwrap_or_default();
            let licence = package["license"].as_str().unwrap_or("none named");
            let ships = shipped.contains(id);
            if allowed(licence, ships) {
                return None;
            }
            let name = package["name"].as_str().unwrap_or(id);
            let place = if ships { "in the app" } else { "a tool" };
            Some(format!("{name} ({place}) stands under: {licence}"))
        })
        .collect()
}

/// Whether a package of that licence may be passed on under this one alone.
pub fn may_stand_under(licence: &str, alone: &str) -> bool {
    Expression::parse_mode(licence, ParseMode::LAX).is_ok_and(|expression| {
        expression.evaluate(|asked| asked.license.id().is_some_and(|id| id.name == alone))
    })
}

fn allowed(licence: &str, ships: bool) -> bool {
    let Ok(expression) = Expression::parse_mode(licence, ParseMode::LAX) else {
        return false;
    };
    expression.evaluate(|asked| {
        let id = asked.license.id().map_or("", |id| id.name);
        SHIPPED.contains(&id) || (!ships && TOOLS.contains(&id))
    })
}

/// The packages that the app is compiled from: itself, what it needs, and what they need, but for some and what only those
/// need. `graph` is that of the app's platform.
pub fn reached<'a>(graph: &'a Value, but: &BTreeSet<&str>) -> BTreeSet<&'a str> {
    let nodes = graph["resolve"]["nodes"].as_array();
    let needs: BTreeMap<&str, Vec<&str>> = nodes
        .into_iter()
        .flatten()
        .filter_map(|node| Some((node["id"].as_str()?, needed(node))))
        .collect();
    let app = needs.keys().find(|id| id.contains("#stanchion@"));
    let mut found = BTreeSet::new();
    let mut ahead: Vec<&str> = app.copied().into_iter().collect();
    while let Some(id) = ahead.pop() {
        if !but.contains(id) && found.insert(id) {
            ahead.extend(needs.get(id).into_iter().flatten());
        }
    }
    found
}

/// What a package needs, but for its tests and its build.
fn needed(node: &Value) -> Vec<&str> {
    let all = node["deps"].as_array().into_iter().flatten();
    let normal = all.filter(|dep| {
        let kinds = dep["dep_kinds"].as_array();
        kinds
            .into_iter()
            .flatten()
            .any(|kind| kind["kind"].is_null())
    });
    normal.filter_map(|dep| dep["pkg"].as_str()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn graph(inner: &str, tool: &str) -> Value {
        let package = |id: &str, licence: Value| json!({ "id": id, "name": id, "source": "a registry", "license": licence });
        json!({
            "packages": [
                { "id": "path#stanchion@1", "name": "stanchion", "source": null, "license": "MIT" },
                package("inner", inner.into()),
                package("tool", tool.into()),
            ],
            "resolve": { "nodes": [
                { "id": "path#stanchion@1", "deps": [
                    { "pkg": "inner", "dep_kinds": [{ "kind": null, "target": null }] },
                    { "pkg": "tool", "dep_kinds": [{ "kind": "dev", "target": null }] },
                ] },
                { "id": "inner", "deps": [] },
                { "id": "tool", "deps": [] },
            ] },
        })
    }

    fn of(graph: &Value) -> Vec<String> {
        faults(graph, graph)
    }

    #[test]
    fn what_is_in_the_app_is_held_to_more_than_a_tool() {
        assert!(of(&graph("MIT OR GPL-3.0-only", "MPL-2.0")).is_empty());
        assert_eq!(
            of(&graph("MPL-2.0", "MIT")),
            ["inner (in the app) stands under: MPL-2.0"]
        );
        let both = of(&graph("MIT/Apache-2.0", "MIT AND GPL-3.0-only"));
        assert_eq!(both, ["tool (a tool) stands under: MIT AND GPL-3.0-only"]);
    }

    #[test]
    fn one_of_several_licences_will_do_where_they_are_to_choose_from() {
        assert!(may_stand_under("MIT OR Apache-2.0", "MIT"));
        assert!(may_stand_under("Unlicense/MIT", "MIT"));
        assert!(!may_stand_under(
            "(MIT OR Apache-2.0) AND Unicode-3.0",
            "MIT"
        ));
        assert!(!may_stand_under("Zlib", "MIT"));
    }

    #[test]
    fn a_package_without_a_licence_is_a_fault() {
        let mut graph = graph("MIT", "MIT");
        graph["packages"][1]["license"] = Value::Null;
        assert_eq!(of(&graph).len(), 1);
        graph["packages"][1]["license"] = "whatever".into();
        assert_eq!(of(&graph).len(), 1);
    }
}
