//! The data types of FHIR R4 (4.0.1) that are used here, with the fields that are used here.

use serde::Serialize;

use super::text::clean;

/// Whether there is nothing to be written. FHIR knows no empty lists and no null.
pub(super) trait Nothing {
    fn nothing(&self) -> bool;
}

impl<T> Nothing for Option<T> {
    fn nothing(&self) -> bool {
        self.is_none()
    }
}

impl<T> Nothing for Vec<T> {
    fn nothing(&self) -> bool {
        self.is_empty()
    }
}

macro_rules! elements {
    ($($(#[$doc:meta])* $name:ident { $($(#[$of:meta])* $field:ident: $type:ty,)* })*) => {
        $($(#[$doc])*
        #[derive(Clone, Debug, Default, PartialEq, serde::Serialize)]
        #[serde(rename_all = "camelCase")]
        pub(super) struct $name {
            $($(#[$of])* #[serde(skip_serializing_if = "crate::fhir::element::Nothing::nothing")] pub $field: $type,)*
        })*
    };
}
pub(super) use elements;

elements! {
    /// A code of a published list.
    Coding {
        system: Option<String>,
        code: Option<String>,
        display: Option<String>,
    }
    /// A thing by its codes, and always in words.
    Concept {
        coding: Vec<Coding>,
        text: Option<String>,
    }
    /// A number with its unit.
    Quantity {
        value: Option<serde_json::Number>,
        comparator: Option<&'static str>,
        unit: Option<String>,
        system: Option<&'static str>,
        code: Option<&'static str>,
    }
    /// What a system calls a thing.
    Identifier {
        system: Option<&'static str>,
        value: Option<String>,
    }
    /// Another resource: where it stands, or what it is called.
    Reference {
        reference: Option<String>,
        identifier: Option<Identifier>,
        display: Option<String>,
    }
    /// From when to when.
    Period {
        start: Option<String>,
        end: Option<String>,
    }
    /// Words about a resource.
    Annotation {
        text: Option<String>,
    }
    /// What a resource says, for a person to read: XHTML.
    Narrative {
        status: Option<&'static str>,
        div: Option<String>,
    }
    /// What is beside the standard's own elements.
    Extension {
        url: Option<&'static str>,
        value_date_time: Option<String>,
    }
    /// Beside an element that is a plain value.
    Beside {
        extension: Vec<Extension>,
    }
    /// About the resource as such.
    Meta {
        profile: Vec<&'static str>,
        tag: Vec<Coding>,
    }
    /// A person's name, as it is written.
    Name {
        text: Option<String>,
    }
}

/// The value of an observation or of one of its components.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) enum Value {
    #[serde(rename = "valueQuantity")]
    Quantity(Quantity),
    #[serde(rename = "valueCodeableConcept")]
    Concept(Concept),
    #[serde(rename = "valueString")]
    Text(String),
    #[serde(rename = "valueInteger")]
    Integer(u32),
    #[serde(rename = "valueDateTime")]
    Moment(String),
}

impl Value {
    /// Text, where there is any; see [`clean`].
    pub fn text(text: &str) -> Option<Self> {
        clean(text).map(Self::Text)
    }
}

impl Reference {
    /// To a resource of the same bundle.
    pub fn to(url: impl Into<String>) -> Self {
        Self { reference: Some(url.into()), ..Self::default() }
    }
}
