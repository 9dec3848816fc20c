//! The names by which the page's script and the WebAssembly know each other, made short.
//!
//! wasm-bindgen writes both sides, and gives each function that they share a long name with a hash. Nobody reads those, and
//! no compression takes hashes away. Here both sides get short names, and the script loses its comments and indents.

use std::collections::{BTreeMap, BTreeSet};

use wasm_encoder::reencode::{Reencode, RoundtripReencoder};
use wasm_encoder::{EntityType, ExportSection, ImportSection};
use wasmparser::{Parser, Payload, TypeRef};

use crate::split;

/// The mark of a name that wasm-bindgen made.
const MADE: &str = "__";

/// Script and module with short names for what they share; none where the module is not understood, or a line of the script
/// is one that a text goes on over.
pub fn shorten(script: &str, module: &[u8]) -> Option<(String, Vec<u8>)> {
    let mut names = Vec::new();
    renamed(module, &mut |name| {
        names.push(name.to_owned());
        name.to_owned()
    })?;
    let said: BTreeSet<&str> = words(script).collect();
    let made = names
        .iter()
        .filter(|name| name.contains(MADE) && said.contains(name.as_str()));
    let free = (0_u32..).map(|n| format!("x{n}"));
    let mut free = free.filter(|short| !said.contains(short.as_str()));
    let mut short = BTreeMap::new();
    for name in made {
        short
            .entry(name.as_str())
            .or_insert_with(|| free.next().unwrap_or_default());
    }
    let of = |name: &str| {
        short
            .get(name)
            .map_or_else(|| name.to_owned(), String::clone)
    };
    let script = bare(script)?;
    let module = renamed(module, &mut |name| of(name))?;
    Some((pieces(&script).map(of).collect(), module))
}

/// A script without comment lines, empty lines and indents; none where a line may be the middle of a text.
fn bare(script: &str) -> Option<String> {
    let mut lines = String::new();
    let mut in_comment = false;
    for line in script.lines().map(str::trim) {
        if line.matches('`').count() % 2 == 1 {
            return None;
        }
        in_comment |= line.starts_with("/*");
        if !in_comment && !line.starts_with("//") && !line.is_empty() {
            lines.push_str(line);
            lines.push('\n');
        }
        in_comment &= !line.ends_with("*/");
    }
    Some(lines)
}

fn is_of_word(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_' || c == '$'
}

/// A script cut into words and what stands between them.
fn pieces(script: &str) -> impl Iterator<Item = &str> {
    let mut rest = script;
    std::iter::from_fn(move || {
        let first = rest.chars().next()?;
        let end = rest.find(|c| is_of_word(c) != is_of_word(first));
        let (piece, behind) = rest.split_at(end.unwrap_or(rest.len()));
        rest = behind;
        Some(piece)
    })
}

fn words(script: &str) -> impl Iterator<Item = &str> {
    pieces(script).filter(|piece| piece.starts_with(is_of_word))
}

/// A module whose imports and exports have the names that `name` gives them; none where it is not understood, or imports
/// anything but functions, which wasm-bindgen does not.
fn renamed(module: &[u8], name: &mut dyn FnMut(&str) -> String) -> Option<Vec<u8>> {
    let mut out = wasm_encoder::Module::new();
    for payload in Parser::new(0).parse_all(module) {
        match payload.ok()? {
            Payload::ImportSection(section) => {
                let mut imports = ImportSection::new();
                for import in section.into_imports() {
                    let import = import.ok()?;
                    let TypeRef::Func(kind) = import.ty else {
                        return None;
                    };
                    let kind = EntityType::Function(kind);
                    imports.import(import.module, &name(import.name), kind);
                }
                out.section(&imports);
            }
            Payload::ExportSection(section) => {
                let mut exports = ExportSection::new();
                for export in section {
                    let export = export.ok()?;
                    let kind = RoundtripReencoder.export_kind(export.kind).ok()?;
                    exports.export(&name(export.name), kind, export.index);
                }
                out.section(&exports);
            }
            other => split::raw(&mut out, &other, module),
        }
    }
    Some(out.finish())
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::ExportKind;

    /// A module that imports a function under each name, and exports functions.
    fn module(imports: &[&str], exports: &[&str]) -> Vec<u8> {
        let (mut imported, mut exported) = (ImportSection::new(), ExportSection::new());
        for (n, name) in (200..).zip(imports) {
            imported.import("./glue.js", name, EntityType::Function(n));
        }
        for (n, name) in (200..).zip(exports) {
            exported.export(name, ExportKind::Func, n);
        }
        let mut module = wasm_encoder::Module::new();
        module.section(&imported).section(&exported);
        let mut module = module.finish();
        // A section of data that nobody looks into: one piece of two bytes.
        module.extend([11, 5, 1, 1, 2, 7, 7]);
        module
    }

    #[test]
    fn both_sides_get_the_same_short_names() {
        let script = "// Glue.\nconst x0 = 1;\n/** Long\n * words */\nconst imports = {\n    \
                      __wbg_now_0123456789abcdef: () => wasm.take__up(x0),\n};\nwasm.main();\n";
        let before = module(
            &["__wbg_now_0123456789abcdef", "__only_there"],
            &["take__up", "main"],
        );
        let (script, after) = shorten(script, &before).unwrap();
        // `x0` is taken.
        assert_eq!(
            script,
            "const x0 = 1;\nconst imports = {\nx1: () => wasm.x2(x0),\n};\nwasm.main();\n"
        );
        assert_eq!(after, module(&["x1", "__only_there"], &["x2", "main"]));
    }

    #[test]
    fn what_is_not_understood_is_left_alone() {
        let module = module(&["__a"], &[]);
        assert!(shorten("__a `one\n  two`", &module).is_none());
        assert!(shorten("__a", &module[..module.len() - 5]).is_none());
        // An import of a memory.
        let memory = b"\0asm\x01\0\0\0\x02\x0a\x01\x03env\x01m\x02\0\x01";
        assert!(shorten("m", memory).is_none());
    }
}
