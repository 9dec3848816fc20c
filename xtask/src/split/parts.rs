//! The modules that one is cut into.
//!
//! The first keeps memory, data, tables and imports. Where a part calls a function of a later one, it calls a place of the
//! table; until that part is there, a stand-in holds the place, which brings the part and calls the place again. A part
//! imports from those before it what it calls there, and puts its functions into their places when it is set up. So it is
//! only a matter of time in which part a function lies: called too early, it is waited for.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

use wasm_encoder::reencode::Reencode;
use wasm_encoder::{
    CodeSection, EntityType, ExportKind, ExportSection, Function, FunctionSection, ImportSection,
    Instruction, TableSection, TypeSection,
};
use wasmparser::{FunctionBody, Operator, Parser, Payload};

use super::module::{Module, TABLE, Unknown, number, said};
use super::order::by_part;
use super::pieces::{call_at, elements, name, raw};
use super::renumber::Renumber;

/// The memory, as the first part exports it; tables, globals and functions are `t`, `g` and `f` with a number.
const MEMORY: &str = "m";

/// Cuts a module into as many parts as `part_of` names, from 0 on: it says of each function that is not imported in which
/// part it is to be. `bring` is the import that brings a part, by its number. Gives the parts, and a list of what is in them.
pub fn cut(
    bytes: &[u8],
    module: &Module<'_>,
    part_of: &[usize],
    bring: u32,
) -> Result<(Vec<Vec<u8>>, String), Unknown> {
    let plan = Plan::of(module, part_of, bring)?;
    let later = (1..plan.functions.len()).map(|part| plan.later(part));
    let parts: Result<_, _> = std::iter::once(plan.first(bytes)).chain(later).collect();
    Ok((parts?, plan.listing()))
}

/// A place of the table that holds a stand-in for a function until that one is there.
#[derive(Clone, Copy)]
struct StandIn {
    place: u32,
    function: u32,
    /// The part that holds it.
    lies_in: usize,
}

/// Where everything goes.
struct Plan<'a, 'm> {
    module: &'a Module<'m>,
    part_of: &'a [usize],
    bring: u32,
    /// The functions of each part that are not imported, in the order in which they lie there.
    functions: Vec<Vec<u32>>,
    stand_ins: Vec<StandIn>,
    /// How many places the table has.
    size: u32,
    /// The place at which a function is called by parts before its own.
    called_at: BTreeMap<u32, u32>,
    /// The functions that are called by name by parts after their own: each by the name under which it is exported.
    shared: BTreeMap<u32, String>,
}

impl<'a, 'm> Plan<'a, 'm> {
    fn of(module: &'a Module<'m>, part_of: &'a [usize], bring: u32) -> Result<Self, Unknown> {
        let table = module.tables.first().ok_or("there is no table")?;
        let mut plan = Self {
            module,
            part_of,
            bring,
            functions: by_part(module, part_of),
            stand_ins: Vec::new(),
            size: u32::try_from(table.initial).map_err(said)?,
            called_at: BTreeMap::new(),
            shared: BTreeMap::new(),
        };
        // Whoever has the number of such a place may call it, so the first part holds its stand-in.
        for (&place, &function) in &module.places {
            if plan.part(function) > 0 {
                plan.stand_ins.push(StandIn {
                    place,
                    function,
                    lies_in: 0,
                });
                plan.called_at.entry(function).or_insert(place);
            }
        }
        for function in module.exported() {
            plan.called_from(0, function);
        }
        let mut shared = BTreeSet::new();
        // The earliest caller first.
        let mut callers: Vec<u32> = (module.first_own()..number(module.functions.len())).collect();
        callers.sort_by_key(|caller| plan.part(*caller));
        for caller in callers {
            let part = plan.part(caller);
            for &called in &module.calls[(caller - module.first_own()) as usize] {
                plan.called_from(part, called);
                if plan.part(called) < part {
                    shared.insert(called);
                }
            }
        }
        // Every part with a stand-in of its own brings others.
        shared.insert(bring);
        let names = shared.into_iter().enumerate();
        plan.shared = names
            .map(|(at, function)| (function, name('f', at)))
            .collect();
        Ok(plan)
    }

    /// Gives a function that is called from a part before its own a place at which that can be done.
    fn called_from(&mut self, part: usize, function: u32) {
        if part < self.part(function) && !self.called_at.contains_key(&function) {
            self.called_at.insert(function, self.size);
            self.stand_ins.push(StandIn {
                place: self.size,
                function,
                lies_in: part,
            });
            self.size += 1;
        }
    }

    /// The part of a function; imported ones are of the first.
    fn part(&self, function: u32) -> usize {
        let own = function.checked_sub(self.module.first_own());
        own.map_or(0, |own| self.part_of[own as usize])
    }

    fn stand_ins(&self, part: usize) -> impl Iterator<Item = &StandIn> {
        self.stand_ins.iter().filter(move |it| it.lies_in == part)
    }

    /// Each function of each part by its number there, for whoever looks for what a stand-in stood for.
    fn listing(&self) -> String {
        let name = |function: u32| self.module.names.get(&function).copied().unwrap_or("?");
        let mut lines = String::new();
        for (part, kept) in self.functions.iter().enumerate() {
            let before = match part {
                0 => self.module.first_own(),
                part => number(self.asked(part, kept).len()),
            };
            let own = kept.iter().map(|function| name(*function).to_owned());
            let stand_ins = self.stand_ins(part).map(|stand_in| {
                let part = self.part(stand_in.function);
                format!("stands for, of {part}: {}", name(stand_in.function))
            });
            for (at, said) in (before..).zip(own.chain(stand_ins)) {
                _ = writeln!(lines, "{part} {at} {said}");
            }
        }
        lines
    }

    /// The functions of earlier parts that a part calls by name.
    fn asked(&self, part: usize, kept: &[u32]) -> BTreeSet<u32> {
        let calls = kept.iter().flat_map(|function| {
            let own = function - self.module.first_own();
            &self.module.calls[own as usize]
        });
        let mut asked: BTreeSet<u32> = calls.copied().collect();
        if self.stand_ins(part).next().is_some() {
            asked.insert(self.bring);
        }
        asked.retain(|function| self.part(*function) < part);
        asked
    }

    fn first(&self, bytes: &[u8]) -> Result<Vec<u8>, Unknown> {
        let kept = &self.functions[0];
        let imported = 0..self.module.first_own();
        let mut renumber = Renumber::of(imported.chain(kept.iter().copied()));
        let first_stand_in = renumber.next();
        // What is exported stays so, by its stand-in.
        for (stand_in, new) in self.stand_ins(0).zip(first_stand_in..) {
            renumber.0.entry(stand_in.function).or_insert(new);
        }
        let mut out = wasm_encoder::Module::new();
        for payload in Parser::new(0).parse_all(bytes) {
            match payload.map_err(said)? {
                Payload::FunctionSection(_) => _ = out.section(&self.kinds(0, kept)),
                Payload::TableSection(_) => {
                    let mut tables = TableSection::new();
                    for table in self.tables(&mut renumber)? {
                        tables.table(table);
                    }
                    out.section(&tables);
                }
                Payload::ExportSection(_) => _ = out.section(&self.exports(&mut renumber)?),
                Payload::ElementSection(_) => {
                    let own = self.module.places.iter();
                    let own = own.filter(|(_, function)| self.part(**function) == 0);
                    let own = own.map(|(place, function)| (*place, renumber.number(*function)));
                    let others = self.stand_ins(0).map(|stand_in| stand_in.place);
                    out.section(&elements(own.chain(others.zip(first_stand_in..)).collect()));
                }
                Payload::CodeSectionStart { .. } => {
                    out.section(&self.code(0, kept, &mut renumber)?);
                }
                Payload::CodeSectionEntry(_) | Payload::CustomSection(_) => {}
                other => raw(&mut out, &other, bytes),
            }
        }
        Ok(out.finish())
    }

    fn exports(&self, renumber: &mut Renumber) -> Result<ExportSection, Unknown> {
        let mut exports = ExportSection::new();
        for export in &self.module.exports {
            let kind = renumber.export_kind(export.kind).map_err(said)?;
            let index = renumber
                .external_index(export.kind, export.index)
                .map_err(said)?;
            exports.export(export.name, kind, index);
        }
        exports.export(MEMORY, ExportKind::Memory, 0);
        for at in 0..self.module.tables.len() {
            exports.export(&name('t', at), ExportKind::Table, number(at));
        }
        for at in 0..self.module.globals.len() {
            exports.export(&name('g', at), ExportKind::Global, number(at));
        }
        self.export_shared(0, renumber, &mut exports);
        Ok(exports)
    }

    fn export_shared(&self, part: usize, renumber: &Renumber, exports: &mut ExportSection) {
        for (function, name) in &self.shared {
            if self.part(*function) == part {
                exports.export(name, ExportKind::Func, renumber.number(*function));
            }
        }
    }

    fn later(&self, part: usize) -> Result<Vec<u8>, Unknown> {
        let module = self.module;
        let kept = &self.functions[part];
        let asked = self.asked(part, kept);
        let mut renumber = Renumber::of(asked.iter().chain(kept).copied());
        let first_stand_in = renumber.next();
        let mut types = TypeSection::new();
        for kind in &module.types {
            types
                .ty()
                .func_type(&renumber.func_type(kind.clone()).map_err(said)?);
        }
        let mut exports = ExportSection::new();
        self.export_shared(part, &renumber, &mut exports);
        let own = self
            .called_at
            .iter()
            .filter(|(function, _)| self.part(**function) == part);
        let own = own.map(|(function, place)| (*place, *function));
        let others = self
            .module
            .places
            .iter()
            .map(|(place, function)| (*place, *function));
        let others = others.filter(|(_, function)| self.part(*function) == part);
        let filled = own
            .chain(others)
            .map(|(place, function)| (place, renumber.number(function)));
        let stand_ins = self.stand_ins(part).map(|stand_in| stand_in.place);
        let filled = elements(filled.chain(stand_ins.zip(first_stand_in..)).collect());
        let mut out = wasm_encoder::Module::new();
        out.section(&types)
            .section(&self.imports(&asked, &mut renumber)?)
            .section(&self.kinds(part, kept))
            .section(&exports)
            .section(&filled)
            .section(&self.code(part, kept, &mut renumber)?);
        Ok(out.finish())
    }

    /// What a later part imports; each module is named by the number of its part.
    fn imports(
        &self,
        asked: &BTreeSet<u32>,
        renumber: &mut Renumber,
    ) -> Result<ImportSection, Unknown> {
        const FIRST: &str = "0";
        let mut imports = ImportSection::new();
        let memory = self.module.memory.ok_or("there is no memory")?;
        let memory = renumber.memory_type(memory).map_err(said)?;
        imports.import(FIRST, MEMORY, EntityType::Memory(memory));
        for (at, table) in self.tables(renumber)?.into_iter().enumerate() {
            imports.import(FIRST, &name('t', at), EntityType::Table(table));
        }
        for (at, global) in self.module.globals.iter().enumerate() {
            let global = renumber.global_type(*global).map_err(said)?;
            imports.import(FIRST, &name('g', at), EntityType::Global(global));
        }
        for function in asked {
            let name = self.shared.get(function).ok_or("a function has no name")?;
            let kind = EntityType::Function(self.kind(*function));
            imports.import(&self.part(*function).to_string(), name, kind);
        }
        Ok(imports)
    }

    /// The tables; the one of functions has a place for each that has to be called by its place.
    fn tables(&self, renumber: &mut Renumber) -> Result<Vec<wasm_encoder::TableType>, Unknown> {
        let tables = (0..).zip(&self.module.tables).map(|(at, table)| {
            let mut table = renumber.table_type(*table).map_err(said)?;
            if at == TABLE {
                table.minimum = u64::from(self.size);
                table.maximum = table.maximum.map(|most| most.max(table.minimum));
            }
            Ok(table)
        });
        tables.collect()
    }

    fn kind(&self, function: u32) -> u32 {
        self.module.functions[function as usize]
    }

    /// The types of the functions of a part, of its stand-ins after that.
    fn kinds(&self, part: usize, kept: &[u32]) -> FunctionSection {
        let mut kinds = FunctionSection::new();
        let stand_ins = self.stand_ins(part).map(|stand_in| &stand_in.function);
        for function in kept.iter().chain(stand_ins) {
            kinds.function(self.kind(*function));
        }
        kinds
    }

    fn code(
        &self,
        part: usize,
        kept: &[u32],
        renumber: &mut Renumber,
    ) -> Result<CodeSection, Unknown> {
        let mut code = CodeSection::new();
        for function in kept {
            code.function(&self.body(part, *function, renumber)?);
        }
        for stand_in in self.stand_ins(part) {
            code.function(&self.stand_in(stand_in, renumber));
        }
        Ok(code)
    }

    /// A body with its functions renumbered; those of later parts are called at their places.
    fn body(
        &self,
        part: usize,
        function: u32,
        renumber: &mut Renumber,
    ) -> Result<Function, Unknown> {
        let own = function - self.module.first_own();
        let body: &FunctionBody<'_> = &self.module.bodies[own as usize];
        let mut written = renumber
            .new_function_with_parsed_locals(body)
            .map_err(said)?;
        for operator in body.get_operators_reader().map_err(said)? {
            match operator.map_err(said)? {
                Operator::Call { function_index } if self.part(function_index) > part => {
                    let place = self.called_at.get(&function_index);
                    let place = *place.ok_or("a function has no place")?;
                    for instruction in call_at(place, self.kind(function_index)) {
                        written.instruction(&instruction);
                    }
                }
                other => {
                    written.instruction(&renumber.instruction(other).map_err(said)?);
                }
            }
        }
        Ok(written)
    }

    /// Brings the part of a function, then calls what stands at its place by then.
    fn stand_in(&self, stand_in: &StandIn, renumber: &Renumber) -> Function {
        let kind = self.kind(stand_in.function);
        let part = number(self.part(stand_in.function));
        let mut body = Function::new([]);
        body.instruction(&Instruction::I32Const(part.cast_signed()));
        body.instruction(&Instruction::Call(renumber.number(self.bring)));
        for given in 0..self.module.types[kind as usize].params().len() {
            body.instruction(&Instruction::LocalGet(number(given)));
        }
        for instruction in call_at(stand_in.place, kind) {
            body.instruction(&instruction);
        }
        body.instruction(&Instruction::End);
        body
    }
}
