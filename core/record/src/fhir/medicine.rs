//! A medicine that was given.

use secundine_domain::fact::Medicine;
use secundine_domain::message::Message;

use super::codes::{Unit, number, words_only};
use super::element::{Quantity, Reference};
use super::resource::{Dosage, MedicationAdministration, Performer, Resource};
use super::text::clean;
use super::told::{Made, Maker, Told, note};

pub(super) fn given(maker: &mut Maker, told: &Told, medicine: &Medicine) -> Vec<Made> {
    let subject = match medicine.baby {
        Some(baby) => maker.baby(baby),
        None => maker.mother(),
    };
    // Who gave it is told as it was written: it may be somebody of another house.
    let giver = medicine.giver.as_deref().and_then(clean);
    let actor = match giver {
        Some(name) => Reference { display: Some(name), ..Reference::default() },
        None => maker.person(&told.entry.author),
    };
    let name = words_only(&medicine.name).or_else(|| words_only(&maker.words.plain("record-not-recorded")));
    let batch = medicine.batch.as_deref().and_then(clean);
    let batch = batch.map(|batch| maker.words.say(&Message::new("part-batch").with("text", batch)));
    let dose = dose(&medicine.dose);
    // The standard takes a dosage only with an amount; words alone stand in a note.
    let loose = [medicine.dose.as_str(), medicine.route.as_str(), medicine.site.as_deref().unwrap_or_default()];
    let loose = if dose.is_some() { String::new() } else { loose.join(" ") };
    let dosage = dose.map(|dose| Dosage {
        text: clean(&medicine.dose),
        site: medicine.site.as_deref().and_then(words_only),
        route: words_only(&medicine.route),
        dose: Some(dose),
    });
    let notes = [Some(loose), batch].into_iter().flatten().flat_map(|text| note(&text));
    let given = MedicationAdministration {
        text: maker.narrative(told),
        status: Some(told.done()),
        medication_codeable_concept: name,
        subject: Some(subject),
        context: Some(maker.encounter()),
        effective_date_time: Some(told.entry.occurred.rfc3339()),
        performer: vec![Performer { actor: Some(actor) }],
        note: maker.notes(told).into_iter().chain(notes).collect(),
        dosage,
        ..MedicationAdministration::default()
    };
    vec![told.made("", Resource::MedicationAdministration(Box::new(given)))]
}

/// An amount and its unit, where the text is just that: `10 IU`, `0,5 mg`. Units that we have a code for get it, others stay as they
/// were written. A comma is a decimal sign only before fewer or more than three digits: `1,000` could be either, and is none.
fn dose(text: &str) -> Option<Quantity> {
    let text = clean(text)?;
    let end = text.find(|letter: char| !(letter.is_ascii_digit() || matches!(letter, '.' | ','))).unwrap_or(text.len());
    let (amount, unit) = text.split_at_checked(end)?;
    let (unit, places) = (unit.trim(), amount.split_once([',', '.']).map_or(0, |(_, places)| places.len()));
    let plain = !unit.is_empty() && unit.chars().all(|letter| letter.is_alphabetic() || letter == '%');
    let value: f64 = amount.replace(',', ".").parse().ok().filter(|_| plain && places != 3 && amount.len() < 8)?;
    Some(match unit {
        "IU" | "UI" | "IE" => Unit::Iu.of(value),
        "g" => Unit::Gram.of(value),
        "mL" | "ml" => Unit::Millilitre.of(value),
        other => Quantity { value: number(value), unit: Some(other.to_owned()), ..Quantity::default() },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_is_read_only_where_it_is_nothing_else() {
        let read = |text: &str| dose(text).map(|dose| (dose.value.unwrap().to_string(), dose.code, dose.unit.unwrap()));
        assert_eq!(read("10 IU"), Some(("10".to_owned(), Some("[iU]"), "IU".to_owned())));
        assert_eq!(read("0,5 mg"), Some(("0.5".to_owned(), None, "mg".to_owned())));
        assert_eq!(read("250 ml"), Some(("250".to_owned(), Some("mL"), "mL".to_owned())));
        for unclear in ["", "10", "10-20 IU", "1,000 mg", "0.125 mg", "two tablets", "10 IU twice", "1.2.3 g", "½ g"] {
            assert_eq!(read(unclear), None, "{unclear}");
        }
    }
}
