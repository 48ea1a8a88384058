//! A fact as single values, each under the name that the stored form gives it, `mother_observed.pulse`. Stored names never
//! change, so neither do these.

use secundine_domain::examination::{Examination, Kind};
use secundine_domain::fact::{Answer, BabyNo, Fact, Loss};
use serde_json::Value as Json;

use super::cell::Cell;
use super::units::{Unit, unit};

/// One value of a fact.
pub(super) struct Value {
    pub baby: Option<BabyNo>,
    pub placenta: Option<BabyNo>,
    pub what: String,
    pub value: Cell,
    /// UCUM code; empty for what is no number.
    pub unit: &'static str,
}

/// What is too large for a table and is whole in the archive: a protocol, a table of weights, the points on a photograph.
const LEFT_OUT: [&str; 3] = ["own", "table", "tracing"];

/// All values of a fact, one at least.
pub(super) fn values(fact: &Fact) -> Vec<Value> {
    let json = serde_json::to_value(fact).unwrap_or_default();
    let kind = json.get("kind").and_then(Json::as_str).unwrap_or_default();
    let data = json.get("data").unwrap_or(&Json::Null);
    let number = |name: &str| data.get(name).and_then(Json::as_u64).and_then(|number| number.try_into().ok());
    let mut table = Table { baby: number("baby").or_else(|| number("cord")), placenta: number("placenta"), values: Vec::new() };
    match fact {
        Fact::Examined { item, answer, .. } => table.answer(item, answer),
        _ => table.leaves(kind, data, true),
    }
    match fact {
        Fact::ApgarScored(apgar) => table.number("apgar_scored.total", apgar.total(), unit("apgar_scored.total")),
        Fact::BloodLoss(Loss::Weighed { gross, dry, .. }) => {
            table.number("blood_loss.net", gross.get().saturating_sub(dry.get()), unit("blood_loss.net"));
        }
        _ => {}
    }
    if table.values.is_empty() {
        table.text(kind, "");
    }
    table.values
}

struct Table {
    baby: Option<BabyNo>,
    placenta: Option<BabyNo>,
    values: Vec<Value>,
}

impl Table {
    /// Everything under a part of the stored form. Values of one list share a name; parts of a list are numbered from 1.
    fn leaves(&mut self, what: &str, json: &Json, top: bool) {
        match json {
            Json::Null => {}
            Json::Bool(yes) => self.text(what, if *yes { "true" } else { "false" }),
            Json::Number(number) => match (number.as_i64(), unit(what)) {
                (Some(number), unit) => self.number(what, number, unit),
                (None, _) => self.push(what, Cell::Number(number.to_string()), ""),
            },
            Json::String(text) => self.text(what, text),
            Json::Array(list) => {
                for (n, part) in (1..).zip(list) {
                    let plain = !part.is_object() && !part.is_array();
                    let name = if plain { what.to_owned() } else { format!("{what}.{n}") };
                    self.leaves(&name, part, false);
                }
            }
            Json::Object(parts) => {
                let columns = |name: &str| top && matches!(name, "baby" | "placenta" | "cord");
                for (name, part) in parts.iter().filter(|(name, _)| !LEFT_OUT.contains(&name.as_str()) && !columns(name)) {
                    self.leaves(&format!("{what}.{name}"), part, false);
                }
            }
        }
    }

    /// Of the examination, under the name of the item.
    fn answer(&mut self, item: &str, answer: &Answer) {
        const MM: Option<Unit> = Some(Unit::of("mm"));
        // Thousandths of half the disc's length or breadth, from its middle.
        const SHARE: Option<Unit> = Some(Unit { code: "1", parts: 1_000 });
        let what = format!("examined.{item}");
        match answer {
            Answer::Choice { option } => self.text(&what, option),
            Answer::Choices { options } => options.iter().for_each(|option| self.text(&what, option)),
            Answer::Measure { value } => {
                let code = match Examination::standard().item(item).map(|item| item.kind) {
                    Some(Kind::Millimetres | Kind::Pieces) => "mm",
                    Some(Kind::Grams) => "g",
                    Some(Kind::Percent) => "%",
                    _ => "1",
                };
                self.number(&what, *value, Some(Unit::of(code)));
            }
            Answer::Pieces { lengths, all } => {
                lengths.iter().for_each(|mm| self.number(&format!("{what}.pieces"), *mm, MM));
                self.text(&format!("{what}.all"), if *all { "true" } else { "false" });
            }
            Answer::Coils { coils, over } => {
                self.number(&format!("{what}.coils"), *coils, Some(Unit::of("1")));
                self.number(&format!("{what}.over"), *over, MM);
            }
            Answer::Places { places } => {
                for (n, place) in (1..).zip(places) {
                    self.number(&format!("{what}.{n}.x"), place.x, SHARE);
                    self.number(&format!("{what}.{n}.y"), place.y, SHARE);
                    place.size.into_iter().for_each(|mm| self.number(&format!("{what}.{n}.size"), mm, MM));
                }
            }
            Answer::CouldNotTell => self.text(&what, "could_not_tell"),
        }
    }

    fn number(&mut self, what: &str, number: impl Into<i64>, unit: Option<Unit>) {
        let Unit { code, parts } = unit.unwrap_or(Unit::of(""));
        self.push(what, Cell::parts(number.into(), parts), code);
    }

    fn text(&mut self, what: &str, text: &str) {
        self.push(what, Cell::text(text), "");
    }

    fn push(&mut self, what: &str, value: Cell, unit: &'static str) {
        let (baby, placenta) = (self.baby, self.placenta);
        self.values.push(Value { baby, placenta, what: what.to_owned(), value, unit });
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use secundine_domain::entry::Entry;

    use super::*;

    /// The facts of every stored kind that stand in a birth's chart.
    fn stored() -> Vec<Fact> {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../domain/fixtures/v1");
        let files = std::fs::read_dir(folder).unwrap().map(|file| std::fs::read(file.unwrap().path()).unwrap());
        let facts: Vec<Fact> = files.map(|bytes| Entry::decode(&bytes).unwrap().fact).collect();
        assert!(facts.len() > 50);
        facts
    }

    #[test]
    fn every_number_of_every_kind_has_a_unit() {
        for fact in stored() {
            // Entries of the practice itself stand in no birth's chart.
            if matches!(fact, Fact::OwnProtocolChanged { .. }) {
                continue;
            }
            for value in values(&fact) {
                let number = matches!(value.value, Cell::Number(_));
                assert_eq!(number, !value.unit.is_empty(), "{}: give it a unit in units.rs", value.what);
            }
        }
    }

    #[test]
    fn a_kind_without_values_has_one_row() {
        for fact in [Fact::HomeLeft, Fact::BabyBorn { baby: 2 }, Fact::PlacentaBorn { babies: Vec::new() }] {
            assert_eq!(values(&fact).len(), 1, "{fact:?}");
        }
        let born = values(&Fact::BabyBorn { baby: 2 });
        assert_eq!((born[0].what.as_str(), born[0].baby), ("baby_born", Some(2)));
    }
}
