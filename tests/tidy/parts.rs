//! The hooks of the screen (`data-part`) and the table of them in DEVELOPERS.md say the same.

use super::files::File;
use std::collections::{BTreeMap, BTreeSet};

/// The heading of the table's section.
const SECTION: &str = "## Parts";

/// Hooks by name, each with the place where it stands first, and faults where a hook cannot be read.
///
/// A hook stands in an attribute (`data-part`, or the property `part` of a component), or in the argument `part` of a
/// function.
pub fn hooks(files: &[&File]) -> (BTreeMap<String, String>, Vec<String>) {
    let codes: Vec<(&File, String)> = files.iter().map(|file| (*file, code(file))).collect();
    let takers: BTreeSet<Taker> = codes.iter().flat_map(|(_, code)| takers(code)).collect();
    let mut hooks = BTreeMap::new();
    let mut faults = Vec::new();
    for (file, code) in &codes {
        let attributes = ["data-part=", "part="].into_iter().flat_map(|attribute| {
            let ends = code.match_indices(attribute);
            let alone = ends.filter(|(at, _)| code[..*at].ends_with(char::is_whitespace));
            alone.map(move |(at, _)| at + attribute.len())
        });
        let calls = takers.iter().flat_map(|taker| calls(code, taker));
        for at in attributes.chain(calls) {
            let place = |what| file.fault(code[..at].matches('\n').count() + 1, what);
            match name(code[at..].trim_start()) {
                Name::Written(name) => {
                    hooks.entry(name).or_insert_with(|| place(""));
                }
                // None, or handed on by a part whose callers write it.
                Name::HandedOn => {}
                Name::Unread => faults.push(place(
                    "write the hook as a literal or `format!` of one, so that it can be checked",
                )),
            }
        }
    }
    (hooks, faults)
}

/// The file without its comments, line for line.
fn code(file: &File) -> String {
    file.code().map(|(_, line)| format!("{line}\n")).collect()
}

/// A function that takes a hook.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Taker<'c> {
    name: &'c str,
    /// Index of the argument `part` in a call.
    index: usize,
    /// True for a method, which is called with a point before its name.
    method: bool,
}

/// The functions that take a hook.
fn takers(code: &str) -> Vec<Taker<'_>> {
    let mut takers = Vec::new();
    for (at, _) in code.match_indices("fn ") {
        let head = &code[at + 3..];
        let end = head.find(['(', '<']).unwrap_or(0);
        let Some(open) = head.find('(') else { continue };
        let arguments = arguments(&head[open + 1..], true);
        let index = arguments.iter().position(|(_, argument)| {
            let last = argument.trim_end().lines().next_back().unwrap_or("");
            last.trim_start().starts_with("part:")
        });
        let method = arguments
            .first()
            .is_some_and(|(_, first)| first.trim_start_matches(['&', ' ', '\n']) == "self");
        takers.extend(index.map(|index| Taker {
            name: &head[..end],
            index: index - usize::from(method),
            method,
        }));
    }
    takers
}

/// Where the argument `part` begins in every call of a function.
fn calls(code: &str, taker: &Taker) -> Vec<usize> {
    let part = |c: char| c.is_alphanumeric() || c == '_';
    let mut found = Vec::new();
    for (at, _) in code.match_indices(taker.name) {
        let (before, after) = (&code[..at], &code[at + taker.name.len()..]);
        let other = before.ends_with(part) || before.ends_with("fn ");
        if other || before.ends_with('.') != taker.method || !after.starts_with('(') {
            continue;
        }
        let open = at + taker.name.len() + 1;
        let arguments = arguments(&code[open..], false);
        // A call without arguments is one of another function of that name.
        let given = arguments.get(taker.index);
        let given = given.filter(|(_, argument)| !argument.trim().is_empty());
        found.extend(given.map(|(offset, _)| open + offset));
    }
    found
}

/// The arguments up to the bracket that closes the list, each with where it begins. In a signature `<` and `>` are
/// brackets too.
fn arguments(text: &str, signature: bool) -> Vec<(usize, &str)> {
    let mut arguments = Vec::new();
    let (mut begin, mut depth, mut quoted, mut before) = (0, 0, false, ' ');
    for (at, c) in text.char_indices() {
        match c {
            '"' if before != '\\' && before != '\'' => quoted = !quoted,
            _ if quoted => {}
            '(' | '[' | '{' => depth += 1,
            '<' if signature => depth += 1,
            '>' if signature && before != '-' => depth -= 1,
            ')' | ']' | '}' if depth > 0 => depth -= 1,
            ')' | ']' | '}' => {
                arguments.push((begin, &text[begin..at]));
                break;
            }
            ',' if depth == 0 => {
                arguments.push((begin, &text[begin..at]));
                begin = at + 1;
            }
            _ => {}
        }
        before = c;
    }
    arguments
}

enum Name {
    Written(String),
    HandedOn,
    Unread,
}

/// The hook written there; what is filled in stands as `…`.
fn name(value: &str) -> Name {
    if value.starts_with("None") {
        return Name::HandedOn;
    }
    let value = value.strip_prefix("Some(").unwrap_or(value);
    let word_end = value.find(|c: char| !c.is_alphanumeric() && c != '_');
    if value.starts_with("part") && word_end.is_none_or(|end| end == 4) {
        return Name::HandedOn;
    }
    let value = value.strip_prefix('&').unwrap_or(value);
    let literal = value
        .strip_prefix("format!(")
        .map_or(value, str::trim_start)
        .strip_prefix('"')
        .and_then(|text| text.split_once('"'));
    match literal {
        Some((text, _)) => Name::Written(filled(text)),
        None => Name::Unread,
    }
}

fn filled(text: &str) -> String {
    let mut name = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        name.push_str(before);
        name.push('…');
        rest = after.split_once('}').map_or("", |(_, after)| after);
    }
    name + rest
}

/// The names in the first column of the table, between backticks.
pub fn table(guide: &File) -> BTreeSet<String> {
    let section = guide
        .text
        .split_once(SECTION)
        .map_or("", |(_, after)| after);
    let section = section.split("\n## ").next().unwrap_or("");
    section
        .lines()
        .filter_map(|line| line.trim().strip_prefix('|')?.split('|').next())
        .flat_map(|cell| cell.split('`').skip(1).step_by(2))
        .map(str::to_owned)
        .collect()
}

/// Hooks that the table lacks, and rows of hooks that are gone.
pub fn faults(files: &[&File], guide: &File) -> Vec<String> {
    let (hooks, mut faults) = hooks(files);
    let table = table(guide);
    for (name, place) in &hooks {
        if !table.contains(name) {
            faults.push(format!(
                "{place}`{name}` is not in the parts table of {}",
                guide.path
            ));
        }
    }
    for name in &table {
        if !hooks.contains_key(name) {
            faults.push(format!(
                "{}: the parts table has `{name}`, src/ui does not",
                guide.path
            ));
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(view: &str, guide: &str) -> Vec<String> {
        faults(
            &[&File::new("src/ui/a.rs", view)],
            &File::new("DEVELOPERS.md", guide),
        )
    }

    const GUIDE: &str = "# Guide\n\n| `stray` | not here |\n\n## Parts\n\n| hook | is |\n| --- | --- |\n| `log`, `go-…` | x |\n\n## After\n| `late` | |\n";
    const VIEW: &str =
        "<p data-part=\"log\">\n<a data-part=format!(\"go-{}\", name)>\n<b data-part=part>";

    #[test]
    fn a_full_table_passes() {
        assert!(check(VIEW, GUIDE).is_empty(), "{:?}", check(VIEW, GUIDE));
    }

    #[test]
    fn a_hook_without_a_row_is_caught() {
        for more in [
            "<p data-part=\"new\">",
            "<Panel part=\"new\">",
            "<p data-part=format!(\n    \"new-{n}\"\n)>",
            "<p data-part=\"stray\">",
            "<p data-part=\"late\">",
            "<p data-part=move || which()>",
        ] {
            assert_eq!(check(&format!("{VIEW}\n{more}"), GUIDE).len(), 1, "{more}");
        }
    }

    #[test]
    fn a_hook_in_an_argument_is_found() {
        let taker = "pub fn button(class: &'static str, part: impl Into<String>, then: impl Fn(u8, u8)) -> V<A, B> {\n    \
                     other(part.into())\n}\nfn other(part: String) {}\n";
        let found = |call: &str| {
            let (hooks, faults) = hooks(&[&File::new("src/ui/a.rs", &format!("{taker}{call}\n"))]);
            (hooks.into_keys().collect::<Vec<_>>(), faults.len())
        };
        assert_eq!(found(""), (vec![], 0));
        assert_eq!(
            found("button(\"wide, (\", \"undo\", |a, b| a);"),
            (vec!["undo".to_owned()], 0)
        );
        let filled = "{parts::button(\n    \"wide\",\n    format!(\"rpe-{n}\"),\n    go,\n)}";
        assert_eq!(found(filled), (vec!["rpe-…".to_owned()], 0));
        assert_eq!(found("other(which());"), (vec![], 1));
        let method = "impl X { fn step(self, part: &str, n: u8) {} }\nfn f(x: X) { x.step(\"rest\", 1); step(7); }";
        assert_eq!(found(method), (vec!["rest".to_owned()], 0));
        // Another method of that name, which takes nothing.
        assert_eq!(
            found("impl X { fn step(self, part: &str) {} }\nfn f(y: Y) { y.step(); }"),
            (vec![], 0)
        );
        assert_eq!(found("other(None); other(Some(part))"), (vec![], 0));
        assert_eq!(
            found("other(Some(\"order\"))"),
            (vec!["order".to_owned()], 0)
        );
        assert_eq!(
            found("app.other(\"x\"); another(\"y\"); // other(\"z\")"),
            (vec![], 0)
        );
    }

    #[test]
    fn a_row_without_a_hook_is_caught() {
        assert_eq!(
            check("<a data-part=format!(\"go-{}\", name)>", GUIDE).len(),
            1
        );
    }
}
