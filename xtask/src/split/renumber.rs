//! Functions get other numbers in the part in which they lie.

use std::collections::BTreeMap;
use std::convert::Infallible;

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
}
