//! The names that a type takes, asked of the type itself, so that a new one needs no list of its own.

use std::fmt;
use std::iter::once;

use serde::de::value::{MapDeserializer, StrDeserializer};
use serde::de::{DeserializeOwned, Error};

/// The names of the variants of an enum without data.
pub(super) fn variants<T: DeserializeOwned>() -> &'static [&'static str] {
    T::deserialize(StrDeserializer::<Refusal>::new("?")).err().map_or(&[], |refusal| refusal.0)
}

/// The names of the fields of a struct that takes no others.
pub(super) fn fields<T: DeserializeOwned>() -> &'static [&'static str] {
    T::deserialize(MapDeserializer::<_, Refusal>::new(once(("?", "?")))).err().map_or(&[], |refusal| refusal.0)
}

/// A name that was not taken: only those that would have been are kept.
#[derive(Debug)]
struct Refusal(&'static [&'static str]);

impl Error for Refusal {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self(&[])
    }

    fn unknown_variant(_: &str, expected: &'static [&'static str]) -> Self {
        Self(expected)
    }

    fn unknown_field(_: &str, expected: &'static [&'static str]) -> Self {
        Self(expected)
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "expected {}", self.0.join(", "))
    }
}

impl std::error::Error for Refusal {}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::protocol::{Compare, Level, Setting, Watch};

    #[test]
    fn a_type_tells_its_names() {
        assert_eq!(variants::<Level>(), ["note", "caution", "limit"]);
        assert_eq!(variants::<Compare>(), [">=", ">", "<", "<="]);
        assert!(variants::<Watch>().contains(&"third-stage-active"));
        assert_eq!(fields::<Setting>(), ["value", "source", "status"]);
    }
}
