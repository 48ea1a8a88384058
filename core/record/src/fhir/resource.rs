//! The resources of FHIR R4 (4.0.1) that are used here, with the fields that are used here.

use serde::Serialize;

use super::element::{
    Annotation, Beside, Coding, Concept, Identifier, Meta, Name, Narrative, Period, Quantity, Reference, Value, elements,
};

/// A resource, told by its `resourceType`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "resourceType")]
pub(super) enum Resource {
    AllergyIntolerance(Box<AllergyIntolerance>),
    Binary(Box<Binary>),
    Composition(Box<Composition>),
    DocumentReference(Box<DocumentReference>),
    Encounter(Box<Encounter>),
    MedicationAdministration(Box<MedicationAdministration>),
    Observation(Box<Observation>),
    Organization(Box<Organization>),
    Patient(Box<Patient>),
    Practitioner(Box<Practitioner>),
    Procedure(Box<Procedure>),
    Provenance(Box<Provenance>),
    RelatedPerson(Box<RelatedPerson>),
}

elements! {
    /// What somebody cannot take.
    AllergyIntolerance {
        id: Option<String>,
        meta: Option<Meta>,
        text: Option<Narrative>,
        identifier: Vec<Identifier>,
        clinical_status: Option<Concept>,
        verification_status: Option<Concept>,
        code: Option<Concept>,
        patient: Option<Reference>,
        encounter: Option<Reference>,
        recorded_date: Option<String>,
        recorder: Option<Reference>,
    }
    /// A file.
    Binary {
        id: Option<String>,
        meta: Option<Meta>,
        content_type: Option<&'static str>,
        data: Option<String>,
    }
    /// The document's first page: who, what, when, and its sections.
    Composition {
        id: Option<String>,
        meta: Option<Meta>,
        language: Option<String>,
        text: Option<Narrative>,
        identifier: Option<Identifier>,
        status: Option<&'static str>,
        #[serde(rename = "type")]
        kind: Option<Concept>,
        subject: Option<Reference>,
        encounter: Option<Reference>,
        date: Option<String>,
        author: Vec<Reference>,
        title: Option<String>,
        attester: Vec<Attester>,
        custodian: Option<Reference>,
        section: Vec<Section>,
    }
    /// Who stands by a document.
    Attester {
        mode: Option<&'static str>,
        time: Option<String>,
        party: Option<Reference>,
    }
    /// A part of a document.
    Section {
        title: Option<String>,
        code: Option<Concept>,
        text: Option<Narrative>,
        entry: Vec<Reference>,
    }
    /// What a file is.
    DocumentReference {
        id: Option<String>,
        meta: Option<Meta>,
        identifier: Vec<Identifier>,
        status: Option<&'static str>,
        #[serde(rename = "type")]
        kind: Option<Concept>,
        subject: Option<Reference>,
        date: Option<String>,
        author: Vec<Reference>,
        description: Option<String>,
        content: Vec<Content>,
    }
    /// The file itself.
    Content {
        attachment: Option<Attachment>,
    }
    /// Where a file is.
    Attachment {
        content_type: Option<&'static str>,
        language: Option<String>,
        url: Option<String>,
        size: Option<usize>,
        title: Option<String>,
    }
    /// The time that somebody was cared for.
    Encounter {
        id: Option<String>,
        meta: Option<Meta>,
        text: Option<Narrative>,
        identifier: Vec<Identifier>,
        status: Option<&'static str>,
        class: Option<Coding>,
        subject: Option<Reference>,
        participant: Vec<Participant>,
        period: Option<Period>,
        service_provider: Option<Reference>,
    }
    /// Who cared.
    Participant {
        individual: Option<Reference>,
    }
    /// A medicine that was given.
    MedicationAdministration {
        id: Option<String>,
        meta: Option<Meta>,
        text: Option<Narrative>,
        identifier: Vec<Identifier>,
        status: Option<&'static str>,
        medication_codeable_concept: Option<Concept>,
        subject: Option<Reference>,
        context: Option<Reference>,
        effective_date_time: Option<String>,
        performer: Vec<Performer>,
        note: Vec<Annotation>,
        dosage: Option<Dosage>,
    }
    /// How much and which way.
    Dosage {
        text: Option<String>,
        site: Option<Concept>,
        route: Option<Concept>,
        dose: Option<Quantity>,
    }
    /// Who did it.
    Performer {
        actor: Option<Reference>,
    }
    /// What was seen or measured.
    Observation {
        id: Option<String>,
        meta: Option<Meta>,
        text: Option<Narrative>,
        identifier: Vec<Identifier>,
        status: Option<&'static str>,
        category: Vec<Concept>,
        code: Option<Concept>,
        subject: Option<Reference>,
        focus: Vec<Reference>,
        encounter: Option<Reference>,
        effective_date_time: Option<String>,
        performer: Vec<Reference>,
        #[serde(flatten)]
        value: Option<Value>,
        data_absent_reason: Option<Concept>,
        note: Vec<Annotation>,
        method: Option<Concept>,
        derived_from: Vec<Reference>,
        component: Vec<Component>,
    }
    /// A part of what was seen or measured.
    Component {
        code: Option<Concept>,
        #[serde(flatten)]
        value: Option<Value>,
        data_absent_reason: Option<Concept>,
    }
    /// The practice.
    Organization {
        id: Option<String>,
        meta: Option<Meta>,
        identifier: Vec<Identifier>,
        name: Option<String>,
    }
    /// The mother, or a baby.
    Patient {
        id: Option<String>,
        meta: Option<Meta>,
        text: Option<Narrative>,
        identifier: Vec<Identifier>,
        name: Vec<Name>,
        gender: Option<&'static str>,
        birth_date: Option<String>,
        #[serde(rename = "_birthDate")]
        birth_moment: Option<Beside>,
        multiple_birth_boolean: Option<bool>,
        multiple_birth_integer: Option<u8>,
        link: Vec<Link>,
    }
    /// The same person in another part.
    Link {
        other: Option<Reference>,
        #[serde(rename = "type")]
        kind: Option<&'static str>,
    }
    /// Somebody who works there.
    Practitioner {
        id: Option<String>,
        meta: Option<Meta>,
        identifier: Vec<Identifier>,
        name: Vec<Name>,
    }
    /// What was done.
    Procedure {
        id: Option<String>,
        meta: Option<Meta>,
        text: Option<Narrative>,
        identifier: Vec<Identifier>,
        status: Option<&'static str>,
        code: Option<Concept>,
        subject: Option<Reference>,
        encounter: Option<Reference>,
        performed_date_time: Option<String>,
        performer: Vec<Performer>,
        note: Vec<Annotation>,
    }
    /// Who wrote what, and when.
    Provenance {
        id: Option<String>,
        meta: Option<Meta>,
        text: Option<Narrative>,
        target: Vec<Reference>,
        occurred_date_time: Option<String>,
        recorded: Option<String>,
        reason: Vec<Concept>,
        activity: Option<Concept>,
        agent: Vec<Agent>,
        entity: Vec<Entity>,
    }
    /// Somebody who had a part in it.
    Agent {
        #[serde(rename = "type")]
        kind: Option<Concept>,
        who: Option<Reference>,
        on_behalf_of: Option<Reference>,
    }
    /// What it was made from.
    Entity {
        role: Option<&'static str>,
        what: Option<Reference>,
    }
    /// A mother as her baby's mother.
    RelatedPerson {
        id: Option<String>,
        meta: Option<Meta>,
        identifier: Vec<Identifier>,
        patient: Option<Reference>,
        relationship: Vec<Concept>,
        name: Vec<Name>,
    }
    /// All of them in one file.
    Bundle {
        resource_type: Option<&'static str>,
        language: Option<String>,
        identifier: Option<Identifier>,
        #[serde(rename = "type")]
        kind: Option<&'static str>,
        timestamp: Option<String>,
        entry: Vec<Entry>,
    }
    /// A resource and where it goes.
    Entry {
        full_url: Option<String>,
        resource: Option<Resource>,
        request: Option<Request>,
    }
    /// What a server is asked to do with it.
    Request {
        method: Option<&'static str>,
        url: Option<String>,
        if_none_exist: Option<String>,
    }
}

/// Does the same with the resource inside, whichever it is.
macro_rules! each {
    ($resource:expr, $inside:ident => $done:expr) => {
        match $resource {
            Resource::AllergyIntolerance($inside) => $done,
            Resource::Binary($inside) => $done,
            Resource::Composition($inside) => $done,
            Resource::DocumentReference($inside) => $done,
            Resource::Encounter($inside) => $done,
            Resource::MedicationAdministration($inside) => $done,
            Resource::Observation($inside) => $done,
            Resource::Organization($inside) => $done,
            Resource::Patient($inside) => $done,
            Resource::Practitioner($inside) => $done,
            Resource::Procedure($inside) => $done,
            Resource::Provenance($inside) => $done,
            Resource::RelatedPerson($inside) => $done,
        }
    };
}

impl Resource {
    /// Its type, as the address of a server has it.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::AllergyIntolerance(_) => "AllergyIntolerance",
            Self::Binary(_) => "Binary",
            Self::Composition(_) => "Composition",
            Self::DocumentReference(_) => "DocumentReference",
            Self::Encounter(_) => "Encounter",
            Self::MedicationAdministration(_) => "MedicationAdministration",
            Self::Observation(_) => "Observation",
            Self::Organization(_) => "Organization",
            Self::Patient(_) => "Patient",
            Self::Practitioner(_) => "Practitioner",
            Self::Procedure(_) => "Procedure",
            Self::Provenance(_) => "Provenance",
            Self::RelatedPerson(_) => "RelatedPerson",
        }
    }

    /// Whether a server cannot be asked for it by an identifier: two have no place for one in R4, and of the third a server was
    /// met that does not look there.
    pub fn is_put_by_id(&self) -> bool {
        matches!(self, Self::Binary(_) | Self::Provenance(_) | Self::Composition(_))
    }

    /// Gives it an id and a tag.
    pub fn mark(&mut self, id: Option<String>, tag: Option<&Coding>) {
        each!(self, inside => {
            inside.id = id;
            if let Some(tag) = tag {
                inside.meta.get_or_insert_default().tag.push(tag.clone());
            }
        });
    }

    /// Gives it what it is called by us, where it has a place for that.
    pub fn identify(&mut self, identifier: Identifier) {
        match self {
            Self::Binary(_) | Self::Provenance(_) => {}
            Self::Composition(inside) => inside.identifier = Some(identifier),
            Self::AllergyIntolerance(inside) => inside.identifier.push(identifier),
            Self::DocumentReference(inside) => inside.identifier.push(identifier),
            Self::Encounter(inside) => inside.identifier.push(identifier),
            Self::MedicationAdministration(inside) => inside.identifier.push(identifier),
            Self::Observation(inside) => inside.identifier.push(identifier),
            Self::Organization(inside) => inside.identifier.push(identifier),
            Self::Patient(inside) => inside.identifier.push(identifier),
            Self::Practitioner(inside) => inside.identifier.push(identifier),
            Self::Procedure(inside) => inside.identifier.push(identifier),
            Self::RelatedPerson(inside) => inside.identifier.push(identifier),
        }
    }
}
