//! Who wrote what and when: one for each entry, also for each form that was put right since.

use secundine_domain::chart::Line;
use secundine_domain::entry::{Entry, EntryId};
use secundine_domain::fact::Fact;

use super::codes::{IDENTIFIERS, OPERATION, PARTICIPANT, concept, words_only};
use super::element::{Identifier, Reference};
use super::resource::{Agent, Entity, Provenance, Resource};
use super::text::narrative;
use super::told::{Made, Maker};

/// Of every entry of a line, about these resources.
pub(super) fn of_line(maker: &mut Maker, line: &Line, about: &[String]) -> Vec<Made> {
    std::iter::once(&line.first).chain(&line.amendments).map(|entry| of_entry(maker, entry, about)).collect()
}

fn of_entry(maker: &mut Maker, entry: &Entry, about: &[String]) -> Made {
    let activity = match (&entry.amends, &entry.fact) {
        (None, _) => concept(OPERATION, "CREATE", "create"),
        (Some(_), Fact::Retracted) => concept(OPERATION, "NULLIFY", "nullify"),
        (Some(_), _) => concept(OPERATION, "UPDATE", "revise"),
    };
    let revised = entry.amends.as_ref().map(|amends| entity("revision", amends.entry));
    let told = Provenance {
        text: narrative([maker.words.say(&maker.chart.say(&entry.fact)).as_str()]),
        target: about.iter().map(Reference::to).collect(),
        occurred_date_time: Some(entry.occurred.rfc3339()),
        recorded: Some(entry.recorded.rfc3339()),
        reason: entry.amends.iter().filter_map(|amends| words_only(&amends.reason)).collect(),
        activity: Some(activity),
        agent: vec![Agent {
            kind: Some(concept(PARTICIPANT, "author", "Author")),
            who: Some(maker.person(&entry.author)),
            on_behalf_of: Some(Reference::to(maker.names.url("organization"))),
        }],
        entity: std::iter::once(entity("source", entry.id)).chain(revised).collect(),
        ..Provenance::default()
    };
    let key = format!("written-{}", entry.id);
    Made { key, part: None, resource: Resource::Provenance(Box::new(told)), replaces: true }
}

/// An entry by its id; it stands in the file of all entries.
fn entity(role: &'static str, entry: EntryId) -> Entity {
    let identifier = Identifier { system: Some(IDENTIFIERS), value: Some(entry.to_string()) };
    Entity { role: Some(role), what: Some(Reference { identifier: Some(identifier), ..Reference::default() }) }
}
