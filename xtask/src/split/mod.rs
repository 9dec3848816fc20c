//! Cuts the app's WebAssembly into parts: what is shown to whoever comes for the first time, what later starts and the floor
//! need besides, and the rest. A phone that opens the app for the first time waits for the first alone, and each start reads
//! and checks less.

mod module;
mod order;
mod parts;
mod pieces;
mod renumber;
mod rooms;

use module::{Module, Unknown, number};
pub use pieces::raw;
use wasmparser::Validator;

/// The function of the page that brings a part; the app imports it (`src/device/rest.rs`).
const BRING: &str = "stanchionPart";

/// So few bytes of a body are no matter: a stand-in takes as many.
const SMALL: usize = 24;

/// A body of up to so many bytes stays with whoever calls it by name. Functions of several rooms that are the same are one
/// by now, under the name of any.
const SHARED: usize = 120;

/// A module that was cut.
pub struct Cut {
    /// The parts, from the first on.
    pub parts: Vec<Vec<u8>>,
    /// A line for each function: part, number there, name.
    pub listing: String,
    /// Rooms that are listed and that no function is of.
    pub vain: Vec<&'static str>,
}

/// Cuts a module, which must still have the names of its functions. One that brings no parts stays whole; its names go.
pub fn split(bytes: &[u8]) -> Result<Cut, Unknown> {
    let module = Module::read(bytes)?;
    let mut imported = module.imported.iter();
    let cut = match imported.position(|(_, name)| name.contains(BRING)) {
        Some(bring) => {
            let (parts, listing) = parts::cut(bytes, &module, &part_of(&module), number(bring))?;
            Cut {
                parts,
                listing,
                vain: rooms::vain(module.names.values().copied()),
            }
        }
        None => Cut {
            parts: vec![pieces::whole(bytes)?],
            listing: String::new(),
            vain: Vec::new(),
        },
    };
    for part in &cut.parts {
        Validator::new().validate_all(part).map_err(module::said)?;
    }
    Ok(cut)
}

/// The part of each function that is not imported: that of its room, and what has none is in the first part that calls it.
fn part_of(module: &Module<'_>) -> Vec<usize> {
    let own = module.first_own();
    let mut found = vec![None; module.bodies.len()];
    // Whoever has a place in the table may be called by anybody.
    let called = module.exported().chain(module.places.values().copied());
    let mut open: Vec<(u32, usize)> = called.map(|function| (function, SMALL)).collect();
    for part in 0..rooms::PARTS {
        let mut waiting = Vec::new();
        while let Some((function, most)) = open.pop() {
            let Some(at) = function.checked_sub(own).map(|at| at as usize) else {
                continue;
            };
            if found[at].is_some() {
                continue;
            }
            let of_room = module
                .names
                .get(&function)
                .map_or(0, |name| rooms::part_of(name));
            if of_room <= part || module.bodies[at].range().len() <= most {
                found[at] = Some(part);
                open.extend(module.calls[at].iter().map(|called| (*called, SHARED)));
            } else {
                waiting.push((function, 0));
            }
        }
        open = waiting;
    }
    // What nobody calls.
    found
        .into_iter()
        .map(|part| part.unwrap_or(rooms::PARTS - 1))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;
    use wasmparser::{ElementItems, Parser, Payload};

    /// A door that goes to the floor, which goes to a page of the ledger; both ask one helper. The page is in the table.
    const APP: &str = r#"(module
      (import "./app_bg.js" "__wbg_stanchionPart_1" (func $bring (param i32)))
      (import "./app_bg.js" "__wbg_now" (func $now (result f64)))
      (memory (export "memory") 1)
      (table 2 2 funcref)
      (global (mut i32) (i32.const 0))
      (func $"stanchion[0123456789abcdef]::ui::welcome" (export "main") (result i32)
        (call $"<u8 as stanchion[0123456789abcdef]::ui::floor::Board>::floor" (i32.const 1)))
      (func $"<u8 as stanchion[0123456789abcdef]::ui::floor::Board>::floor" (param i32) (result i32)
        LONG
        (drop (call $now))
        (i32.add
          (call $"core::helper" (local.get 0))
          (call $"stanchion[0123456789abcdef]::ui::ledger::weeks" (local.get 0))))
      (func $"stanchion[0123456789abcdef]::ui::ledger::weeks" (param i32) (result i32)
        LONG
        (call $"core::helper" (i32.load (i32.const 24))))
      (func $"core::helper" (param i32) (result i32)
        (i32.add (local.get 0) (i32.add (i32.load (i32.const 0)) (i32.load (i32.const 8)))))
      (elem (i32.const 1) $"stanchion[0123456789abcdef]::ui::ledger::weeks")
      (data (i32.const 100) "kept"))"#;

    fn cut(text: &str) -> Result<Vec<Vec<u8>>, Unknown> {
        // Longer than what stays with its caller.
        let long = "(i32.store (i32.const 0) (i32.const 7))".repeat(SHARED);
        split(&wat::parse_str(text.replace("LONG", &long)).expect("a module in text"))
            .map(|cut| cut.parts)
    }

    /// The modules that a part imports from, each once.
    fn asks(part: &[u8]) -> BTreeSet<String> {
        let mut asked = BTreeSet::new();
        for payload in Parser::new(0).parse_all(part) {
            if let Ok(Payload::ImportSection(section)) = payload {
                let imports = section.into_imports().map(Result::unwrap);
                asked.extend(imports.map(|import| import.module.to_owned()));
            }
        }
        asked
    }

    /// How many functions a part holds, and how many places of the table it fills.
    fn holds(part: &[u8]) -> (u32, u32) {
        let (mut bodies, mut places) = (0, 0);
        for payload in Parser::new(0).parse_all(part) {
            match payload.unwrap() {
                Payload::CodeSectionStart { count, .. } => bodies = count,
                Payload::ElementSection(section) => {
                    for element in section {
                        let ElementItems::Functions(functions) = element.unwrap().items else {
                            panic!("no functions");
                        };
                        places += functions.count();
                    }
                }
                _ => {}
            }
        }
        (bodies, places)
    }

    #[test]
    fn each_room_goes_to_its_part_and_is_called_where_it_is_not_there_yet() {
        let parts = cut(APP).unwrap();
        let [first, floor, rest] = parts.as_slice() else {
            panic!("{} parts", parts.len());
        };
        // The welcome, a stand-in for the page that stands in the table, and one for the floor.
        assert_eq!(holds(first), (3, 2));
        // The floor and what it asks with the page; the page has a stand-in already.
        assert_eq!(holds(floor), (2, 1));
        assert_eq!(holds(rest), (1, 1));
        assert_eq!(asks(first), BTreeSet::from(["./app_bg.js".to_owned()]));
        assert_eq!(asks(floor), BTreeSet::from(["0".to_owned()]));
        assert_eq!(asks(rest), BTreeSet::from(["0".to_owned(), "1".to_owned()]));
        let names = b"stanchion[";
        assert!(
            parts
                .iter()
                .all(|part| !part.windows(names.len()).any(|it| it == names))
        );
        assert!(first.windows(4).any(|it| it == b"kept"));
    }

    #[test]
    fn a_module_that_brings_nothing_stays_whole() {
        let parts = cut(&APP.replace("stanchionPart", "other")).unwrap();
        assert_eq!(parts.len(), 1);
        assert_eq!(holds(&parts[0]), (4, 1));
    }

    #[test]
    fn what_the_split_does_not_know_is_said() {
        assert!(
            cut("(module (func) (start 0))")
                .unwrap_err()
                .contains("start")
        );
        assert!(
            cut("(module (import \"a\" \"m\" (memory 1)))")
                .unwrap_err()
                .contains('m')
        );
    }
}
