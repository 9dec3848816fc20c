//! A module taken apart into what the split asks of it: who calls whom, who stands in the table, under which types.

use std::collections::BTreeMap;

use wasmparser::{
    ElementItems, ElementKind, Export, ExternalKind, FuncType, FunctionBody, KnownCustom, Name,
    Operator, Parser, Payload, TableType, TypeRef,
};

/// The table in which functions stand that are called by their place.
pub const TABLE: u32 = 0;

/// What a module holds, as far as the split looks.
pub struct Module<'m> {
    /// The types of functions.
    pub types: Vec<FuncType>,
    /// The module and the name under which each function is imported.
    pub imported: Vec<(&'m str, &'m str)>,
    /// The type of each function, imported ones first.
    pub functions: Vec<u32>,
    /// The tables.
    pub tables: Vec<TableType>,
    /// The types of the globals.
    pub globals: Vec<wasmparser::GlobalType>,
    /// The memory.
    pub memory: Option<wasmparser::MemoryType>,
    /// What is exported.
    pub exports: Vec<Export<'m>>,
    /// The function at each place of the table that is filled.
    pub places: BTreeMap<u32, u32>,
    /// The bodies of the functions that are not imported, in their order.
    pub bodies: Vec<FunctionBody<'m>>,
    /// The functions that each of those calls by name.
    pub calls: Vec<Vec<u32>>,
    /// Names of functions, where the module says them.
    pub names: BTreeMap<u32, &'m str>,
}

/// What is in the module that the split does not know.
pub type Unknown = String;

impl<'m> Module<'m> {
    /// Reads a module.
    pub fn read(bytes: &'m [u8]) -> Result<Self, Unknown> {
        let mut module = Self {
            types: Vec::new(),
            imported: Vec::new(),
            functions: Vec::new(),
            tables: Vec::new(),
            globals: Vec::new(),
            memory: None,
            exports: Vec::new(),
            places: BTreeMap::new(),
            bodies: Vec::new(),
            calls: Vec::new(),
            names: BTreeMap::new(),
        };
        for payload in Parser::new(0).parse_all(bytes) {
            module
                .take(payload.map_err(said)?)
                .map_err(|why| format!("the module is not read: {why}"))?;
        }
        Ok(module)
    }

    fn take(&mut self, payload: Payload<'m>) -> Result<(), Unknown> {
        match payload {
            Payload::TypeSection(section) => {
                for group in section.into_iter_err_on_gc_types() {
                    self.types.push(group.map_err(said)?);
                }
            }
            Payload::ImportSection(section) => {
                for import in section.into_imports() {
                    let import = import.map_err(said)?;
                    let TypeRef::Func(kind) = import.ty else {
                        return Err(format!("{} is imported and no function", import.name));
                    };
                    self.imported.push((import.module, import.name));
                    self.functions.push(kind);
                }
            }
            Payload::FunctionSection(section) => {
                for kind in section {
                    self.functions.push(kind.map_err(said)?);
                }
            }
            Payload::TableSection(section) => {
                for table in section {
                    self.tables.push(table.map_err(said)?.ty);
                }
            }
            Payload::MemorySection(section) => {
                for memory in section {
                    self.memory = Some(memory.map_err(said)?);
                }
            }
            Payload::GlobalSection(section) => {
                for global in section {
                    self.globals.push(global.map_err(said)?.ty);
                }
            }
            Payload::ExportSection(section) => {
                for export in section {
                    self.exports.push(export.map_err(said)?);
                }
            }
            Payload::StartSection { .. } => return Err("it has a start function".to_owned()),
            Payload::ElementSection(section) => {
                for element in section {
                    let element = element.map_err(said)?;
                    self.take_element(&element)?;
                }
            }
            Payload::CodeSectionEntry(body) => {
                self.calls.push(calls(&body)?);
                self.bodies.push(body);
            }
            Payload::CustomSection(section) => {
                if let KnownCustom::Name(names) = section.as_known() {
                    for part in names {
                        if let Name::Function(names) = part.map_err(said)? {
                            for name in names {
                                let name = name.map_err(said)?;
                                self.names.insert(name.index, name.name);
                            }
                        }
                    }
                }
            }
            _ => {}
        }
        Ok(())
    }

    fn take_element(&mut self, element: &wasmparser::Element<'m>) -> Result<(), Unknown> {
        let ElementKind::Active {
            table_index,
            offset_expr,
        } = &element.kind
        else {
            return Err("it fills a table later".to_owned());
        };
        let ElementItems::Functions(functions) = &element.items else {
            return Err("it fills a table with what are no functions".to_owned());
        };
        if table_index.unwrap_or(TABLE) != TABLE {
            return Err("it fills another table".to_owned());
        }
        let first = offset_expr.get_operators_reader().read().map_err(said)?;
        let Operator::I32Const { value } = first else {
            return Err("where a table is filled is not said by a number".to_owned());
        };
        let first = u32::try_from(value).map_err(|_| "a place before the first".to_owned())?;
        for (place, function) in (first..).zip(functions.clone()) {
            self.places.insert(place, function.map_err(said)?);
        }
        Ok(())
    }

    /// The functions that are exported.
    pub fn exported(&self) -> impl Iterator<Item = u32> {
        let functions = self
            .exports
            .iter()
            .filter(|export| export.kind == ExternalKind::Func);
        functions.map(|export| export.index)
    }

    /// The number of the first function that is not imported.
    pub fn first_own(&self) -> u32 {
        number(self.imported.len())
    }
}

/// The functions that a body calls by name.
fn calls(body: &FunctionBody<'_>) -> Result<Vec<u32>, Unknown> {
    let mut called = Vec::new();
    for operator in body.get_operators_reader().map_err(said)? {
        match operator.map_err(said)? {
            Operator::Call { function_index } => called.push(function_index),
            Operator::RefFunc { .. } | Operator::ReturnCall { .. } => {
                return Err("a function is handed about".to_owned());
            }
            _ => {}
        }
    }
    Ok(called)
}

/// A count as WebAssembly counts; a module holds no more than that.
pub fn number(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// What a reader says is wrong.
pub fn said(error: impl std::fmt::Display) -> Unknown {
    error.to_string()
}
