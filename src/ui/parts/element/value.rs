//! What an attribute is.

use std::borrow::Cow;

/// The value of an attribute; nothing leaves it out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Value(pub(super) Option<Cow<'static, str>>);

impl From<&'static str> for Value {
    fn from(value: &'static str) -> Value {
        Value(Some(Cow::Borrowed(value)))
    }
}

impl From<String> for Value {
    fn from(value: String) -> Value {
        Value(Some(Cow::Owned(value)))
    }
}

impl From<Option<&'static str>> for Value {
    fn from(value: Option<&'static str>) -> Value {
        Value(value.map(Cow::Borrowed))
    }
}

impl From<Option<String>> for Value {
    fn from(value: Option<String>) -> Value {
        Value(value.map(Cow::Owned))
    }
}

/// One that is there or not, as `inert` is.
impl From<bool> for Value {
    fn from(is_there: bool) -> Value {
        Value(is_there.then_some(Cow::Borrowed("")))
    }
}

/// One that says so in words, as `aria-pressed` does.
#[must_use]
pub fn yes_or_no(truth: bool) -> &'static str {
    if truth { "true" } else { "false" }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(value: impl Into<Value>) -> Option<String> {
        value.into().0.map(Cow::into_owned)
    }

    #[test]
    fn what_is_nothing_is_left_out() {
        assert_eq!(written(None::<String>), None);
        assert_eq!(written(None::<&'static str>), None);
        assert_eq!(written(false), None);
        assert_eq!(written(true).as_deref(), Some(""));
        assert_eq!(written("").as_deref(), Some(""));
        assert_eq!(written(Some("page")).as_deref(), Some("page"));
        assert_eq!(written("a".to_owned()), written("a"));
    }
}
