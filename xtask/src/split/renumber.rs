//! Functions get other numbers in the part in which they lie.

use std::collections::BTreeMap;
use std::convert::Infallible;

use wasm_encoder::MemArg;
use wasm_encoder::reencode::{Error, Reencode};

use super::module::number;

/// Gives functions their new numbers.
pub struct Renumber(pub BTreeMap<u32, u32>);

impl Renumber {
    /// Functions by their order.
    pub fn of(functions: impl Iterator<Item = u32>) -> Self {
        Self(functions.zip(0..).collect())
    }

    /// The number after the last.
    pub fn next(&self) -> u32 {
        number(self.0.len())
    }

    /// The new number; every function that is asked for has one.
    pub fn number(&self, function: u32) -> u32 {
        self.0.get(&function).copied().unwrap_or(u32::MAX)
    }
}

impl Reencode for Renumber {
    type Error = Infallible;

    fn function_index(&mut self, function: u32) -> Result<u32, Error<Infallible>> {
        Ok(self.number(function))
    }

    /// Says of what is read and written that it lies where such things lie. It is a hint that changes nothing but speed, and
    /// always the same packs better.
    fn mem_arg(&mut self, at: wasmparser::MemArg) -> Result<MemArg, Error<Infallible>> {
        Ok(MemArg {
            offset: at.offset,
            align: u32::from(at.max_align),
            memory_index: self.memory_index(at.memory)?,
        })
    }
}
