//! What a resource is called: the same for the same thing, each time it is made, and nothing of the client's.

use secundine_domain::entry::BirthId;
use sha2::{Digest, Sha256};

use super::codes::IDENTIFIERS;
use super::element::Identifier;

/// Names the resources of one birth.
#[derive(Clone, Copy, Debug)]
pub(super) struct Names(pub BirthId);

impl Names {
    /// The id of a thing of this birth: a UUID of version 8 (RFC 9562), the first half of a SHA-256. No chance is in it, so that
    /// the same thing sent twice is one thing.
    pub fn id(self, key: &str) -> String {
        let digest = Sha256::digest(format!("secundine fhir\n{}\n{key}", self.0.0));
        let hex: String = digest.iter().take(16).map(|byte| format!("{byte:02x}")).collect();
        let part = |from: usize, to: usize| hex.get(from..to).unwrap_or_default();
        // The four digits after the first twelve begin with the version, the next four with the variant.
        format!("{}-{}-8{}-8{}-{}", part(0, 8), part(8, 12), part(13, 16), part(17, 20), part(20, 32))
    }

    /// Where it stands in its bundle.
    pub fn url(self, key: &str) -> String {
        format!("urn:uuid:{}", self.id(key))
    }

    /// What we call it, for a server to know it again. Never the same text as its place in the bundle: there are servers that put
    /// another place wherever they find that one.
    pub fn identifier(self, key: &str) -> Identifier {
        Identifier { system: Some(IDENTIFIERS), value: Some(format!("{}.{key}", self.0.0)) }
    }

    /// A key for a person by name, without the name.
    pub fn person(self, name: &str) -> String {
        format!("person-{}", self.id(&format!("person {name}")))
    }
}
