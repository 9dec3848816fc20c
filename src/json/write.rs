//! The writer: any value as JSON in one line.

use super::plain::plain;
use serde::ser::{
    Error, Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant,
    SerializeTuple, SerializeTupleStruct, SerializeTupleVariant, Serializer,
};
use std::fmt;

/// The JSON text of `value`, without spaces.
///
/// # Panics
/// When the value itself refuses to be written, has an infinite number, or a name that is no text; nothing kept does.
#[must_use]
pub fn text<T: Serialize + ?Sized>(value: &T) -> String {
    let mut writer = Writer(String::new());
    let Ok(()) = value.serialize(&mut writer);
    writer.0
}

/// The text so far.
struct Writer(String);

/// There is none: with an error that cannot be, no step of writing has to look for one.
#[derive(Debug)]
enum Never {}

impl fmt::Display for Never {
    fn fmt(&self, _: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {}
    }
}

impl std::error::Error for Never {}

impl Error for Never {
    fn custom<T: fmt::Display>(why: T) -> Never {
        panic!("a value refused to be written: {why}")
    }
}

impl Writer {
    #[inline(never)]
    fn push(&mut self, text: &str) {
        self.0.push_str(text);
    }

    #[inline(never)]
    fn string(&mut self, text: &str) {
        self.0.push('"');
        let (bytes, mut from) = (text.as_bytes(), 0);
        loop {
            let at = plain(bytes, from);
            self.0.push_str(&text[from..at]);
            let Some(&byte) = bytes.get(at) else { break };
            // What is escaped is one byte long.
            from = at + 1;
            match byte {
                b'"' => self.0.push_str("\\\""),
                b'\\' => self.0.push_str("\\\\"),
                b'\n' => self.0.push_str("\\n"),
                b'\r' => self.0.push_str("\\r"),
                b'\t' => self.0.push_str("\\t"),
                8 => self.0.push_str("\\b"),
                12 => self.0.push_str("\\f"),
                byte => self.0.push_str(&format!("\\u{byte:04x}")),
            }
        }
        self.0.push('"');
    }

    /// A comma, unless the list or object has just begun.
    #[inline(never)]
    fn comma(&mut self) {
        if !matches!(self.0.as_bytes().last(), Some(b'[' | b'{')) {
            self.0.push(',');
        }
    }

    #[inline(never)]
    fn name(&mut self, name: &str) {
        self.comma();
        self.string(name);
        self.0.push(':');
    }

    fn parts(&mut self, opener: &str, closer: &'static str) -> Parts<'_> {
        self.push(opener);
        Parts {
            writer: self,
            closer,
        }
    }

    fn variant(&mut self, name: &str, opener: &str, closer: &'static str) -> Parts<'_> {
        self.push("{");
        self.name(name);
        self.parts(opener, closer)
    }
}

macro_rules! integers {
    ($wide:ident: $wide_type:ty; $($name:ident: $type:ty),*) => {
        fn $wide(self, number: $wide_type) -> Result<(), Never> {
            self.push(&number.to_string());
            Ok(())
        }
        $(fn $name(self, number: $type) -> Result<(), Never> {
            self.$wide(number.into())
        })*
    };
}

impl<'w> Serializer for &'w mut Writer {
    type Ok = ();
    type Error = Never;
    type SerializeSeq = Parts<'w>;
    type SerializeTuple = Parts<'w>;
    type SerializeTupleStruct = Parts<'w>;
    type SerializeTupleVariant = Parts<'w>;
    type SerializeMap = Parts<'w>;
    type SerializeStruct = Parts<'w>;
    type SerializeStructVariant = Parts<'w>;

    integers! { serialize_i64: i64; serialize_i8: i8, serialize_i16: i16, serialize_i32: i32 }
    integers! { serialize_u64: u64; serialize_u8: u8, serialize_u16: u16, serialize_u32: u32 }

    fn serialize_bool(self, truth: bool) -> Result<(), Never> {
        self.push(if truth { "true" } else { "false" });
        Ok(())
    }

    fn serialize_f32(self, number: f32) -> Result<(), Never> {
        self.serialize_f64(number.into())
    }

    fn serialize_f64(self, number: f64) -> Result<(), Never> {
        assert!(number.is_finite(), "JSON has no word for {number}");
        self.push(&number.to_string());
        Ok(())
    }

    fn serialize_char(self, c: char) -> Result<(), Never> {
        self.string(c.encode_utf8(&mut [0; 4]));
        Ok(())
    }

    fn serialize_str(self, text: &str) -> Result<(), Never> {
        self.string(text);
        Ok(())
    }

    fn serialize_bytes(self, bytes: &[u8]) -> Result<(), Never> {
        self.collect_seq(bytes)
    }

    fn serialize_none(self) -> Result<(), Never> {
        self.serialize_unit()
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Never> {
        value.serialize(self)
    }

    fn serialize_unit(self) -> Result<(), Never> {
        self.push("null");
        Ok(())
    }

    fn serialize_unit_struct(self, _: &'static str) -> Result<(), Never> {
        self.serialize_unit()
    }

    fn serialize_unit_variant(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
    ) -> Result<(), Never> {
        self.serialize_str(name)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<(), Never> {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
        value: &T,
    ) -> Result<(), Never> {
        let parts = self.variant(name, "", "}");
        value.serialize(&mut *parts.writer)?;
        parts.close()
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Parts<'w>, Never> {
        Ok(self.parts("[", "]"))
    }

    fn serialize_tuple(self, _: usize) -> Result<Parts<'w>, Never> {
        Ok(self.parts("[", "]"))
    }

    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Parts<'w>, Never> {
        Ok(self.parts("[", "]"))
    }

    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Parts<'w>, Never> {
        Ok(self.variant(name, "[", "]}"))
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Parts<'w>, Never> {
        Ok(self.parts("{", "}"))
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Parts<'w>, Never> {
        Ok(self.parts("{", "}"))
    }

    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        name: &'static str,
        _: usize,
    ) -> Result<Parts<'w>, Never> {
        Ok(self.variant(name, "{", "}}"))
    }
}

/// A list or an object being written.
struct Parts<'w> {
    writer: &'w mut Writer,
    closer: &'static str,
}

impl Parts<'_> {
    fn entry<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Never> {
        self.writer.comma();
        value.serialize(&mut *self.writer)
    }

    fn field<T: Serialize + ?Sized>(&mut self, name: &str, value: &T) -> Result<(), Never> {
        self.writer.name(name);
        value.serialize(&mut *self.writer)
    }

    fn close(self) -> Result<(), Never> {
        self.writer.push(self.closer);
        Ok(())
    }
}

macro_rules! parts {
    ($($of:ident: $method:ident($($name:ident)?) as $own:ident;)*) => {$(
        impl $of for Parts<'_> {
            type Ok = ();
            type Error = Never;

            fn $method<T: Serialize + ?Sized>(&mut self, $($name: &'static str,)? value: &T) -> Result<(), Never> {
                self.$own($($name,)? value)
            }

            fn end(self) -> Result<(), Never> {
                self.close()
            }
        }
    )*};
}

parts! {
    SerializeSeq: serialize_element() as entry;
    SerializeTuple: serialize_element() as entry;
    SerializeTupleStruct: serialize_field() as entry;
    SerializeTupleVariant: serialize_field() as entry;
    SerializeStruct: serialize_field(name) as field;
    SerializeStructVariant: serialize_field(name) as field;
}

impl SerializeMap for Parts<'_> {
    type Ok = ();
    type Error = Never;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Never> {
        self.writer.comma();
        let from = self.writer.0.len();
        key.serialize(&mut *self.writer)?;
        assert!(
            self.writer.0[from..].starts_with('"'),
            "the name of an entry must be a text"
        );
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Never> {
        self.writer.push(":");
        value.serialize(&mut *self.writer)
    }

    fn end(self) -> Result<(), Never> {
        self.close()
    }
}
