//! The names by which the page's script and the WebAssembly know each other, made short.
//!
//! wasm-bindgen writes both sides, and gives each function that they share a long name with a hash. Nobody reads those, and
//! no compression takes hashes away. Here both sides get short names, and the script loses its comments and indents.

use std::collections::{BTreeMap, BTreeSet};

/// The mark of a name that wasm-bindgen made.
const MADE: &str = "__";

/// Sections of a module (WebAssembly Core Specification, 5.5.2), of which these hold names that the script says.
const IMPORTS: u8 = 2;
const EXPORTS: u8 = 7;

/// Bytes before the first section: the magic and the version.
const HEAD: usize = 8;

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

/// Reads a module from its beginning on.
struct Reader<'m>(&'m [u8]);

impl<'m> Reader<'m> {
    fn take(&mut self, count: usize) -> Option<&'m [u8]> {
        let (taken, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(taken)
    }

    fn byte(&mut self) -> Option<u8> {
        self.take(1).map(|taken| taken[0])
    }

    /// A number in LEB128.
    fn number(&mut self) -> Option<usize> {
        let mut number = 0_usize;
        for shift in (0..35).step_by(7) {
            let byte = self.byte()?;
            number |= usize::from(byte & 0x7f) << shift;
            if byte & 0x80 == 0 {
                return Some(number);
            }
        }
        None
    }

    fn name(&mut self) -> Option<&'m str> {
        let length = self.number()?;
        std::str::from_utf8(self.take(length)?).ok()
    }

    /// What is read by `read`, as the bytes that it is.
    fn bytes_of(&mut self, read: impl FnOnce(&mut Self) -> Option<()>) -> Option<&'m [u8]> {
        let before = self.0;
        read(self)?;
        Some(&before[..before.len() - self.0.len()])
    }
}

fn put_number(mut number: usize, into: &mut Vec<u8>) {
    loop {
        let low = (number & 0x7f) as u8;
        number >>= 7;
        if number == 0 {
            return into.push(low);
        }
        into.push(low | 0x80);
    }
}

fn put_name(name: &str, into: &mut Vec<u8>) {
    put_number(name.len(), into);
    into.extend(name.as_bytes());
}

/// A module whose imports and exports have the names that `name` gives them.
fn renamed(module: &[u8], name: &mut dyn FnMut(&str) -> String) -> Option<Vec<u8>> {
    let mut reader = Reader(module);
    let mut out = reader.take(HEAD)?.to_vec();
    while let Some(section) = reader.byte() {
        let length = reader.number()?;
        let content = Reader(reader.take(length)?);
        let content = match section {
            IMPORTS => entries(content, true, name)?,
            EXPORTS => entries(content, false, name)?,
            _ => content.0.to_vec(),
        };
        out.push(section);
        put_number(content.len(), &mut out);
        out.extend(content);
    }
    Some(out)
}

/// The entries of a section; an import has the name of its module before its own.
fn entries(
    mut content: Reader<'_>,
    are_imports: bool,
    name: &mut dyn FnMut(&str) -> String,
) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    let count = content.number()?;
    put_number(count, &mut out);
    for _ in 0..count {
        if are_imports {
            put_name(content.name()?, &mut out);
        }
        put_name(&name(content.name()?), &mut out);
        // A function by its type, or anything that is exported by its number. Others are not imported by wasm-bindgen.
        let kind = content.bytes_of(|content| {
            let is_function = content.byte()? == 0;
            content.number()?;
            (is_function || !are_imports).then_some(())
        })?;
        out.extend(kind);
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A module that imports a function of type 0 under each name, and exports functions.
    fn module(imports: &[&str], exports: &[&str]) -> Vec<u8> {
        let mut module = b"\0asm\x01\0\0\0".to_vec();
        for (section, names) in [(IMPORTS, imports), (EXPORTS, exports)] {
            let mut content = Vec::new();
            put_number(names.len(), &mut content);
            for (n, name) in names.iter().enumerate() {
                if section == IMPORTS {
                    put_name("./glue.js", &mut content);
                }
                put_name(name, &mut content);
                content.push(0);
                put_number(n + 200, &mut content);
            }
            module.push(section);
            put_number(content.len(), &mut content.clone());
            let mut length = Vec::new();
            put_number(content.len(), &mut length);
            module.extend(length);
            module.extend(content);
        }
        // A section of code that nobody looks into.
        module.extend([10, 2, 7, 7]);
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

    #[test]
    fn numbers_are_written_as_they_are_read() {
        for number in [0, 127, 128, 300, 16_384, 2_097_151] {
            let mut bytes = Vec::new();
            put_number(number, &mut bytes);
            assert_eq!(Reader(&bytes).number(), Some(number));
        }
    }
}
