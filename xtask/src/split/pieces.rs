//! Pieces of which the parts are written.

use std::collections::BTreeMap;

use wasm_encoder::{ConstExpr, ElementSection, Elements, Instruction};
use wasmparser::{Parser, Payload};

use super::module::{TABLE, Unknown, number, said};

/// Calls what stands at a place of the table.
pub fn call_at(place: u32, kind: u32) -> [Instruction<'static>; 2] {
    [
        Instruction::I32Const(place.cast_signed()),
        Instruction::CallIndirect {
            type_index: kind,
            table_index: TABLE,
        },
    ]
}

/// A short name; `initial` says the kind.
pub fn name(initial: char, number: usize) -> String {
    format!("{initial}{number}")
}

/// A section that fills places of the table, a segment for places in a row.
pub fn elements(filled: BTreeMap<u32, u32>) -> ElementSection {
    let mut elements = ElementSection::new();
    let mut rows: Vec<(u32, Vec<u32>)> = Vec::new();
    for (place, function) in filled {
        match rows.last_mut() {
            Some((first, row)) if *first + number(row.len()) == place => row.push(function),
            _ => rows.push((place, vec![function])),
        }
    }
    for (first, row) in rows {
        let offset = ConstExpr::i32_const(first.cast_signed());
        elements.active(None, &offset, Elements::Functions(row.into()));
    }
    elements
}

/// A section as it was.
pub fn raw(out: &mut wasm_encoder::Module, payload: &Payload<'_>, bytes: &[u8]) {
    if let Some((id, range)) = payload.as_section() {
        let data = &bytes[range];
        out.section(&wasm_encoder::RawSection { id, data });
    }
}

/// A module as it is, without the names of its functions and whatever else a browser does not ask for.
pub fn whole(bytes: &[u8]) -> Result<Vec<u8>, Unknown> {
    let mut out = wasm_encoder::Module::new();
    for payload in Parser::new(0).parse_all(bytes) {
        match payload.map_err(said)? {
            Payload::CustomSection(_) => {}
            other => raw(&mut out, &other, bytes),
        }
    }
    Ok(out.finish())
}
