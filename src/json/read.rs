//! The reader as serde knows it: every value of every type comes through here.

use super::cursor::Cursor;
use super::fault::{Fault, Misread};
use crate::say;
use crate::words::t;
use serde::de::{
    DeserializeOwned, DeserializeSeed, Deserializer, EnumAccess, Error, Expected, MapAccess,
    SeqAccess, Unexpected, VariantAccess, Visitor,
};
use serde::forward_to_deserialize_any;
use std::borrow::Cow;

/// Reads one value, all of `text`.
///
/// Structs come from objects and by names only; an enum is a name, or an object with one name. A type that takes
/// whatever comes gets whole numbers only, and none of ours asks for others.
/// A type that holds itself could be nested as deep as the text is long, and none of ours does.
///
/// # Errors
/// [`Misread`] with the place of the value that is wrong.
pub fn parse<T: DeserializeOwned>(text: &str) -> Result<T, Misread> {
    let mut cursor = Cursor::new(text);
    match T::deserialize(&mut cursor) {
        Ok(value) => match cursor.finish() {
            Ok(()) => Ok(value),
            Err(fault) => Err(cursor.misread(&fault)),
        },
        Err(fault) => Err(cursor.misread(&fault)),
    }
}

impl Cursor<'_> {
    /// What stands here is not what is expected.
    #[inline(never)]
    fn unexpected(&mut self, expected: &dyn Expected) -> Fault {
        let found = match self.peek() {
            Err(fault) => return fault,
            Ok(byte) => byte,
        };
        match found {
            b'{' => Fault::invalid_type(Unexpected::Map, expected),
            b'[' => Fault::invalid_type(Unexpected::Seq, expected),
            b'"' => match self.string() {
                Ok(text) => Fault::invalid_type(Unexpected::Str(&text), expected),
                Err(fault) => fault,
            },
            _ => match self.bare() {
                Ok("null") => Fault::invalid_type(Unexpected::Unit, expected),
                Ok(word @ ("true" | "false")) => {
                    Fault::invalid_type(Unexpected::Bool(word == "true"), expected)
                }
                Ok(number) => {
                    let found = if number.contains(['.', 'e', 'E']) {
                        say!("floating point `{number}`", number)
                    } else {
                        say!("integer `{number}`", number)
                    };
                    Fault::invalid_type(Unexpected::Other(&found), expected)
                }
                Err(fault) => fault,
            },
        }
    }

    #[inline(never)]
    fn bracket(&mut self, bracket: u8, expected: &dyn Expected) -> Result<usize, Fault> {
        if self.opens(bracket)? {
            Ok(self.depth())
        } else {
            Err(self.unexpected(expected))
        }
    }

    #[inline(never)]
    fn signed(&mut self, expected: &dyn Expected) -> Result<i64, Fault> {
        match self.number()? {
            Some(number) => Ok(number),
            None => Err(self.unexpected(expected)),
        }
    }

    #[inline(never)]
    fn unsigned(&mut self, expected: &dyn Expected) -> Result<u64, Fault> {
        match self.number()? {
            Some(number) => Ok(number),
            None => Err(self.unexpected(expected)),
        }
    }

    #[inline(never)]
    fn truth(&mut self, expected: &dyn Expected) -> Result<bool, Fault> {
        match self.number()? {
            Some(truth) => Ok(truth),
            None => Err(self.unexpected(expected)),
        }
    }

    #[inline(never)]
    fn fraction(&mut self, expected: &dyn Expected) -> Result<f64, Fault> {
        match self.number()? {
            Some(number) => Ok(number),
            None => Err(self.unexpected(expected)),
        }
    }

    /// True, and taken, when it is `null`.
    #[inline(never)]
    fn null(&mut self) -> Result<bool, Fault> {
        Ok(self.peek()? == b'n' && self.bare()? == "null")
    }
}

impl<'t> Cursor<'t> {
    #[inline(never)]
    fn words(&mut self, expected: &dyn Expected) -> Result<Cow<'t, str>, Fault> {
        if self.peek()? == b'"' {
            self.string()
        } else {
            Err(self.unexpected(expected))
        }
    }

    /// The name of a variant, and whether it has a value, which comes next then.
    #[inline(never)]
    fn variant(&mut self, expected: &dyn Expected) -> Result<(Cow<'t, str>, bool), Fault> {
        if self.peek()? == b'"' {
            return Ok((self.string()?, false));
        }
        let depth = self.bracket(b'{', expected)?;
        match self.next_name(depth)? {
            Some(name) => Ok((name, true)),
            None => Err(Fault::custom(t(
                "an object with one name is expected here, and it is empty",
            ))),
        }
    }
}

macro_rules! integers {
    ($($signed:ident $unsigned:ident)*) => {$(
        fn $signed<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
            let number = self.signed(&visitor)?;
            visitor.visit_i64(number)
        }

        fn $unsigned<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
            let number = self.unsigned(&visitor)?;
            visitor.visit_u64(number)
        }
    )*};
}

impl<'de> Deserializer<'de> for &mut Cursor<'_> {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.peek()? {
            b'"' => self.deserialize_str(visitor),
            b'{' => self.deserialize_map(visitor),
            b'[' => self.deserialize_seq(visitor),
            b't' | b'f' => self.deserialize_bool(visitor),
            b'n' => self.deserialize_unit(visitor),
            b'-' => self.deserialize_i64(visitor),
            _ => self.deserialize_u64(visitor),
        }
    }

    integers! {
        deserialize_i8 deserialize_u8
        deserialize_i16 deserialize_u16
        deserialize_i32 deserialize_u32
        deserialize_i64 deserialize_u64
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let truth = self.truth(&visitor)?;
        visitor.visit_bool(truth)
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let number = self.fraction(&visitor)?;
        visitor.visit_f64(number)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let text = self.words(&visitor)?;
        visitor.visit_str(&text)
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_str(visitor)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        if self.null()? {
            visitor.visit_none()
        } else {
            visitor.visit_some(self)
        }
    }

    fn deserialize_unit<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        if self.null()? {
            visitor.visit_unit()
        } else {
            Err(self.unexpected(&visitor))
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let depth = self.bracket(b'[', &visitor)?;
        visitor.visit_seq(Inside {
            cursor: self,
            depth,
        })
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let depth = self.bracket(b'{', &visitor)?;
        visitor.visit_map(Inside {
            cursor: self,
            depth,
        })
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        self.deserialize_map(visitor)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let (name, full) = self.variant(&visitor)?;
        visitor.visit_enum(Variant {
            cursor: self,
            name,
            full,
        })
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.skip()?;
        visitor.visit_unit()
    }

    forward_to_deserialize_any! { f32 i128 u128 char bytes byte_buf unit_struct tuple_struct identifier }
}

/// Inside a list or an object.
struct Inside<'c, 't> {
    cursor: &'c mut Cursor<'t>,
    depth: usize,
}

impl<'de> SeqAccess<'de> for Inside<'_, '_> {
    type Error = Fault;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Fault> {
        if self.cursor.next_entry(self.depth)? {
            seed.deserialize(&mut *self.cursor).map(Some)
        } else {
            Ok(None)
        }
    }
}

impl<'de> MapAccess<'de> for Inside<'_, '_> {
    type Error = Fault;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Fault> {
        match self.cursor.next_name(self.depth)? {
            Some(name) => seed.deserialize(Name(&name)).map(Some),
            None => Ok(None),
        }
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, Fault> {
        seed.deserialize(&mut *self.cursor)
    }
}

/// A name of a field or a variant.
struct Name<'n>(&'n str);

impl<'de> Deserializer<'de> for Name<'_> {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_str(self.0)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

/// A variant of an enum, with a value or without.
struct Variant<'c, 't> {
    cursor: &'c mut Cursor<'t>,
    name: Cow<'t, str>,
    full: bool,
}

/// What follows the name of a variant.
struct Content<'c, 't> {
    cursor: &'c mut Cursor<'t>,
    full: bool,
}

impl<'de, 'c, 't> EnumAccess<'de> for Variant<'c, 't> {
    type Error = Fault;
    type Variant = Content<'c, 't>;

    fn variant_seed<T: DeserializeSeed<'de>>(
        self,
        seed: T,
    ) -> Result<(T::Value, Content<'c, 't>), Fault> {
        let Variant { cursor, name, full } = self;
        let value = seed.deserialize(Name(&name))?;
        Ok((value, Content { cursor, full }))
    }
}

impl Content<'_, '_> {
    /// Checks that there is a value, or none.
    #[inline(never)]
    fn check(&mut self, full: bool) -> Result<(), Fault> {
        if self.full == full {
            Ok(())
        } else if full {
            Err(Fault::invalid_type(
                Unexpected::UnitVariant,
                &t("a variant with a value"),
            ))
        } else {
            Err(self
                .cursor
                .unexpected(&t("a variant without a value: its name alone")))
        }
    }
}

impl<'de> VariantAccess<'de> for Content<'_, '_> {
    type Error = Fault;

    fn unit_variant(mut self) -> Result<(), Fault> {
        self.check(false)
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(mut self, seed: T) -> Result<T::Value, Fault> {
        self.check(true)?;
        seed.deserialize(self.cursor)
    }

    fn tuple_variant<V: Visitor<'de>>(mut self, _: usize, visitor: V) -> Result<V::Value, Fault> {
        self.check(true)?;
        self.cursor.deserialize_seq(visitor)
    }

    fn struct_variant<V: Visitor<'de>>(
        mut self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        self.check(true)?;
        self.cursor.deserialize_map(visitor)
    }
}
