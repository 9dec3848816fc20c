//! The texts that the sources say: what stands in `t`, `t_in`, `many`, `many_of` and `say!`, and on the static page.

use proc_macro2::{Delimiter, TokenStream, TokenTree};
use stanchion::exercises::Entry;
use stanchion::words::{EXERCISE, LINE};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// The English texts, as they are keys of a file of words.
pub fn texts() -> BTreeSet<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut texts = BTreeSet::new();
    for path in sources(&root.join("src")) {
        let source = std::fs::read_to_string(&path).expect("a source is text");
        let tokens: TokenStream = source.parse().expect("a source has tokens");
        in_tokens(tokens, &mut texts);
    }
    texts.extend(exercises());
    texts.extend(demo());
    let page = std::fs::read_to_string(root.join("index.html")).expect("the page");
    texts.extend(on_page(&page));
    let boot = std::fs::read_to_string(root.join("assets/boot.js")).expect("the loader");
    texts.extend(in_script(&boot));
    texts
}

/// The names of the listed exercises, which stand in a table, and their cautions.
fn exercises() -> impl Iterator<Item = String> {
    let names = stanchion::exercises::all()
        .iter()
        .flat_map(Entry::sheet_names);
    let cautions = stanchion::exercises::all().iter();
    let cautions = cautions.flat_map(Entry::cautions);
    let cautions = cautions.map(|caution| format!("{caution}#line"));
    names
        .map(|name| format!("{name}#{EXERCISE}"))
        .chain(cautions)
}

/// What the views say in words of their own, outside of the calls above: sentences, and names with a capital. Each with
/// its file.
pub fn loose() -> Vec<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let texts = texts();
    let told: BTreeSet<&str> = texts
        .iter()
        .flat_map(|text| text.split('#').next().unwrap_or_default().split('|'))
        .collect();
    let mut loose = Vec::new();
    for path in sources(&root.join("src/ui")) {
        let source = std::fs::read_to_string(&path).expect("a source is text");
        let mut said = Vec::new();
        in_words(source.parse().expect("a source has tokens"), &mut said);
        let of_file = said.iter().filter(|text| !told.contains(text.as_str()));
        loose.extend(of_file.map(|text| format!("{}: {text}", path.display())));
    }
    loose
}

/// The literals that read like words for a person: neither in an attribute nor in a test nor in what only a developer sees.
fn in_words(tokens: TokenStream, said: &mut Vec<String>) {
    let trees: Vec<TokenTree> = tokens.into_iter().collect();
    for (at, tree) in trees.iter().enumerate() {
        match tree {
            TokenTree::Literal(literal) => {
                if let syn::Lit::Str(text) = syn::Lit::new(literal.clone()) {
                    let text = text.value();
                    let plain = without_places(&text);
                    let long = |word: &&str| word.chars().filter(|c| c.is_alphabetic()).count() > 1;
                    let words = plain.split_whitespace().filter(long).count();
                    let capital = text.starts_with(char::is_uppercase);
                    if words > 3 || capital && words > 1 {
                        said.push(text);
                    }
                }
            }
            TokenTree::Group(group) => {
                let before = &trees[..at];
                let mark = |tree: &TokenTree, wanted: char| matches!(tree, TokenTree::Punct(mark) if mark.as_char() == wanted);
                let attribute = match before {
                    [.., hash, bang] if mark(bang, '!') => mark(hash, '#'),
                    [.., hash] => mark(hash, '#'),
                    [] => false,
                };
                let developers = ["expect", "note", "panic!", "unreachable!", "matches!"];
                let called = called(before);
                if !attribute
                    && !is_test(before)
                    && !called.is_some_and(|name| developers.contains(&name.as_str()))
                {
                    in_words(group.stream(), said);
                }
            }
            _ => {}
        }
    }
}

/// A text without what stands in braces.
fn without_places(text: &str) -> String {
    let pieces = text.split('{').enumerate();
    pieces
        .map(|(at, piece)| match piece.split_once('}') {
            Some((_, rest)) if at > 0 => rest,
            _ => piece,
        })
        .collect()
}

/// What the sheets of the demo say in words of their own.
fn demo() -> Vec<String> {
    let demo = stanchion::store::demo();
    let mut texts = Vec::new();
    for sheet in demo.current_sheets() {
        texts.push(sheet.notes.as_str().to_owned());
        let of_blocks = sheet
            .blocks()
            .flat_map(|block| block.cues.iter().chain(&block.cautions));
        let lines = sheet.warm_up.iter().chain(of_blocks);
        texts.extend(lines.map(|line| line.as_str().to_owned()));
    }
    texts.retain(|text| !text.is_empty());
    let known = texts.into_iter().map(|text| format!("{text}#{LINE}"));
    known.collect()
}

/// The sources that are no tests.
fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        let name = path
            .file_name()
            .expect("a name")
            .to_string_lossy()
            .into_owned();
        if path.is_dir() && name != "tests" {
            found.extend(sources(&path));
        } else if name.ends_with(".rs") && name != "tests.rs" && !name.ends_with("_tests.rs") {
            found.push(path);
        }
    }
    found
}

fn in_tokens(tokens: TokenStream, texts: &mut BTreeSet<String>) {
    let trees: Vec<TokenTree> = tokens.into_iter().collect();
    for (at, tree) in trees.iter().enumerate() {
        let TokenTree::Group(group) = tree else {
            continue;
        };
        if is_test(&trees[..at]) {
            continue;
        }
        let literals = || literals(group.stream());
        match called(&trees[..at]).as_deref() {
            Some("t" | "later") if group.delimiter() == Delimiter::Parenthesis => {
                texts.extend(literals())
            }
            Some("t_in") => {
                let mut literals = literals().into_iter();
                let context = literals.next().expect("t_in has a context");
                texts.extend(literals.map(|text| format!("{text}#{context}")));
            }
            Some("many" | "many_of") => {
                let literals = literals();
                if let [one, more, ..] = &literals[..] {
                    texts.insert(format!("{one}|{more}"));
                }
            }
            Some("say!") => texts.extend(literals().into_iter().take(1)),
            _ => {}
        }
        in_tokens(group.stream(), texts);
    }
}

/// What a group is an argument list of: the name before it, with a `!` where it is a macro.
fn called(before: &[TokenTree]) -> Option<String> {
    let defined = |at: usize| matches!(before.get(at.wrapping_sub(1)), Some(TokenTree::Ident(it)) if it == "fn" || it == "macro_rules");
    match before {
        [.., TokenTree::Ident(name)] if !defined(before.len() - 1) => Some(name.to_string()),
        [.., TokenTree::Ident(name), TokenTree::Punct(mark)] if mark.as_char() == '!' => {
            Some(format!("{name}!"))
        }
        _ => None,
    }
}

/// Whether what comes next is a module that only tests have.
fn is_test(before: &[TokenTree]) -> bool {
    let [
        ..,
        TokenTree::Group(attribute),
        TokenTree::Ident(module),
        TokenTree::Ident(_),
    ] = before
    else {
        return false;
    };
    module == "mod" && attribute.stream().to_string().replace(' ', "") == "cfg(test)"
}

/// All literal strings of a list of arguments, in order, also those in branches; none of a call in it that says a text of
/// its own.
fn literals(tokens: TokenStream) -> Vec<String> {
    let trees: Vec<TokenTree> = tokens.into_iter().collect();
    let mut found = Vec::new();
    for (at, tree) in trees.iter().enumerate() {
        match tree {
            TokenTree::Literal(literal) => {
                if let syn::Lit::Str(text) = syn::Lit::new(literal.clone()) {
                    found.push(text.value());
                }
            }
            TokenTree::Group(group) => {
                let own = ["t", "later", "t_in", "many", "many_of", "say!", "format!"];
                let named = called(&trees[..at]);
                if !named.is_some_and(|name| own.contains(&name.as_str())) {
                    found.extend(literals(group.stream()));
                }
            }
            _ => {}
        }
    }
    found
}

/// The texts of the static page: what stands in elements that say `data-words`.
fn on_page(page: &str) -> Vec<String> {
    page.split("data-words>")
        .skip(1)
        .map(|behind| {
            behind
                .split('<')
                .next()
                .unwrap_or_default()
                .trim()
                .to_owned()
        })
        .collect()
}

/// The sentences of the loader.
fn in_script(script: &str) -> Vec<String> {
    let lines = script
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"));
    lines
        .flat_map(|line| line.split('"').skip(1).step_by(2))
        .filter(|text| text.contains(' ') && text.starts_with(char::is_uppercase))
        .map(str::to_owned)
        .collect()
}

#[test]
fn what_is_said_is_found() {
    let source = r#"
        fn t(english: &str) {}
        fn a() { words::t("One"); t(if x { "Two" } else { t_in("verb", "Three") }); }
        fn b() { many(list.len(), "{n} set", "{n} sets"); say!("{a} at", a = t("Four")); set("no") }
        #[cfg(test)]
        mod tests { fn c() { t("Five") } }
    "#;
    let mut texts = BTreeSet::new();
    in_tokens(source.parse().unwrap(), &mut texts);
    let found: Vec<&str> = texts.iter().map(String::as_str).collect();
    let wanted = [
        "Four",
        "One",
        "Three#verb",
        "Two",
        "{a} at",
        "{n} set|{n} sets",
    ];
    assert_eq!(found, wanted);
    assert_eq!(on_page("<p data-words>Ask. </p><p>No</p>"), ["Ask."]);
    assert_eq!(
        in_script("say(\"Load it again.\"); // \"No one\"\nf(\"js\")"),
        ["Load it again.", "No one"]
    );
}
