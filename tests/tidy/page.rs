//! The page and its content security policy: no inline script, no inline style, no other origin.

use super::files::File;

/// The policy's directives, each with the sources that it may name.
const POLICY: [(&str, &[&str]); 12] = [
    ("default-src", &["'none'", "'self'"]),
    ("script-src", &["'self'", "'wasm-unsafe-eval'"]),
    ("style-src", &["'self'"]),
    ("img-src", &["'self'", "data:", "blob:"]),
    ("connect-src", &["'self'"]),
    ("manifest-src", &["'self'"]),
    ("worker-src", &["'self'"]),
    ("media-src", &["'self'", "blob:"]),
    ("base-uri", &["'self'", "'none'"]),
    ("form-action", &["'none'"]),
    ("require-trusted-types-for", &["'script'"]),
    // One policy, which makes the address of the service worker and nothing else (device/worker.rs).
    ("trusted-types", &["stanchion"]),
];

/// Directives that must be there: those with no default, and those whose default is not told by the list above.
const WANTED: [&str; 7] = [
    "default-src",
    "script-src",
    "style-src",
    "base-uri",
    "form-action",
    "require-trusted-types-for",
    "trusted-types",
];

/// Everything in index.html that the policy forbids, and everything that the policy should not allow.
pub fn faults(file: &File) -> Vec<String> {
    let mut faults = Vec::new();
    let mut policies = 0;
    for (line, tag) in tags(&file.text) {
        let lower = tag.to_ascii_lowercase();
        let name = lower
            .split(|c: char| !c.is_alphanumeric())
            .next()
            .unwrap_or("");
        let attributes: Vec<(String, String)> = attributes(tag);
        let has = |wanted: &str| attributes.iter().any(|(name, _)| name == wanted);
        if name == "style" {
            faults.push(file.fault(line, "no inline style: put it into style/"));
        }
        if name == "script" && !has("src") {
            faults.push(file.fault(line, "no inline script: put it into assets/"));
        }
        for (attribute, value) in &attributes {
            if attribute == "style" {
                faults.push(file.fault(line, "no `style` attribute: use a class"));
            }
            if attribute.starts_with("on") {
                faults.push(file.fault(line, format!("no inline handler `{attribute}`")));
            }
            if value.contains("//") {
                faults.push(file.fault(line, format!("no other origin: {value}")));
            }
        }
        let of = |wanted: &str| attributes.iter().find(|(name, _)| name == wanted);
        if of("http-equiv").is_some_and(|(_, value)| value == "Content-Security-Policy") {
            policies += 1;
            let policy = of("content").map_or("", |(_, value)| value);
            faults.extend(policy_faults(policy).map(|what| file.fault(line, what)));
        }
    }
    if policies != 1 {
        faults.push(file.fault(1, "the page has one content security policy"));
    }
    faults
}

fn policy_faults(policy: &str) -> impl Iterator<Item = String> {
    let given: Vec<Vec<&str>> = policy
        .split(';')
        .map(|directive| directive.split_whitespace().collect())
        .filter(|words: &Vec<&str>| !words.is_empty())
        .collect();
    let mut faults = Vec::new();
    for wanted in WANTED {
        if !given.iter().any(|words| words[0] == wanted) {
            faults.push(format!("the policy lacks {wanted}"));
        }
    }
    for words in &given {
        match POLICY.iter().find(|(name, _)| *name == words[0]) {
            None => faults.push(format!("the policy may not name {}", words[0])),
            Some((name, allowed)) => faults.extend(
                words[1..]
                    .iter()
                    .filter(|source| !allowed.contains(source))
                    .map(|source| format!("the policy's {name} may not allow {source}")),
            ),
        }
    }
    faults.into_iter()
}

/// The inside of each tag, with its line. Comments are passed over.
fn tags(text: &str) -> Vec<(usize, &str)> {
    let mut tags = Vec::new();
    let mut at = 0;
    while let Some(start) = text[at..].find('<').map(|offset| at + offset) {
        let (end, skip) = if text[start..].starts_with("<!--") {
            (text[start..].find("-->"), true)
        } else {
            (text[start..].find('>'), false)
        };
        let Some(end) = end.map(|offset| start + offset) else {
            break;
        };
        if !skip {
            let line = text[..start].matches('\n').count() + 1;
            tags.push((line, &text[start + 1..end]));
        }
        at = end + 1;
    }
    tags
}

/// The attributes of a tag that have a value, names in lower case. A value without quotes is taken too.
fn attributes(tag: &str) -> Vec<(String, String)> {
    let mut attributes = Vec::new();
    let mut rest = tag;
    while let Some(equals) = rest.find('=') {
        let name = rest[..equals].trim_end();
        let name = name.rsplit(char::is_whitespace).next().unwrap_or(name);
        let value = rest[equals + 1..].trim_start();
        let (value, after) = match value.chars().next() {
            Some(quote @ ('"' | '\'')) => value[1..].split_once(quote).unwrap_or((&value[1..], "")),
            _ => value.split_once(char::is_whitespace).unwrap_or((value, "")),
        };
        attributes.push((name.to_ascii_lowercase(), value.to_owned()));
        rest = after;
    }
    attributes
}

/// A view has no `style` attribute: it is refused by the policy. `style:name=` sets a property and is fine.
pub fn view_faults(file: &File) -> Vec<String> {
    let mut faults = Vec::new();
    for (line, code) in file.code() {
        let found = code.match_indices("style=").any(|(at, _)| {
            let before = code[..at].chars().next_back();
            before.is_none_or(|c| c.is_whitespace() || c == ':')
        });
        if found {
            faults.push(file.fault(line, "no `style` attribute: use a class or `style:name=`"));
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'self' \
                        'wasm-unsafe-eval'; style-src 'self'; base-uri 'self'; form-action 'none'; \
                        require-trusted-types-for 'script'; trusted-types stanchion\">\n";

    fn page(more: &str) -> Vec<String> {
        faults(&File::new("index.html", &format!("{GOOD}{more}")))
    }

    #[test]
    fn a_good_page_passes() {
        assert!(
            page(
                "<script type=\"module\" src=\"./boot.js\"></script><!-- <style> --><p class=\"x\">"
            )
            .is_empty()
        );
    }

    #[test]
    fn what_is_inline_or_elsewhere_is_caught() {
        for more in [
            "<style>p {}</style>",
            "<script>let a;</script>",
            "<script type=\"module\">let a;</script>",
            "<p style=\"color: red\">",
            "<p STYLE = 'color: red'>",
            "<button onclick=\"go()\">",
            "<link rel=\"stylesheet\" href=\"https://example.org/a.css\">",
            "<img src=//example.org/a.png>",
        ] {
            assert_eq!(page(more).len(), 1, "{more}");
        }
    }

    #[test]
    fn a_weak_policy_is_caught() {
        for (from, to) in [
            ("style-src 'self'", "style-src 'self' 'unsafe-inline'"),
            ("script-src 'self'", "script-src 'self' 'unsafe-eval'"),
            ("script-src 'self'", "script-src *"),
            ("default-src 'none'", "default-src example.org"),
            ("style-src 'self'; ", ""),
            ("form-action 'none'", "form-action 'none'; frame-src 'self'"),
            ("trusted-types stanchion", "trusted-types stanchion default"),
            ("require-trusted-types-for 'script'; ", ""),
            ("http-equiv=", "name="),
        ] {
            let text = GOOD.replace(from, to);
            assert_ne!(text, GOOD, "{from}");
            assert!(!faults(&File::new("index.html", &text)).is_empty(), "{to}");
        }
    }

    #[test]
    fn a_style_attribute_in_a_view_is_caught() {
        let caught = |line: &str| !view_faults(&File::new("src/ui/a.rs", line)).is_empty();
        assert!(caught("<p style=\"width: 3px\">"));
        assert!(caught("<p class=\"x\" style=move || width()>"));
        assert!(caught("style=format!(\"width: {w}px\")"));
        assert!(caught("<p attr:style=\"width: 3px\">"));
        assert!(!caught("<p style:width=move || width()>"));
        assert!(!caught("// style=\"x\" would be refused"));
    }
}
