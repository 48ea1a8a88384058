//! How each fact is said, by message ids of the catalogue.

use super::{Answer, BabyNo, Care, Client, Fact, Loss, Medicine, MotherObservation, NewbornMeasures, Practice};
use crate::message::Message;
use crate::protocol::Protocol;

impl Fact {
    /// The fact as one line of the record.
    #[must_use]
    pub fn describe(&self) -> Message {
        match self {
            Self::PracticeDescribed(Practice { name, practitioner, .. }) => {
                Message::new("fact-practice").with("name", name.as_str()).with("practitioner", practitioner.as_str())
            }
            Self::BirthRegistered { label, .. } => Message::new("fact-birth-registered").with("label", label.as_str()),
            Self::ClientRecorded(client) => client_line(client),
            Self::ProtocolChosen { protocol } => {
                let title = Protocol::find(protocol).map_or(protocol.as_str(), |known| known.title.as_str());
                Message::new("fact-protocol-chosen").with("protocol", title)
            }
            Self::CareChosen { care } => Message::new("fact-care-chosen").with("care", care_words(*care)),
            Self::BabyBorn { baby } => about("fact-baby-born", *baby),
            Self::CordPulsationStopped { baby } => about("fact-cord-pulsation-stopped", *baby),
            Self::CordClamped { baby } => about("fact-cord-clamped", *baby),
            Self::CordCut { baby } => about("fact-cord-cut", *baby),
            Self::PlacentaBorn { babies } => Message::new("fact-placenta-born").with("babies", list(babies)),
            Self::MembranesBorn { babies } => Message::new("fact-membranes-born").with("babies", list(babies)),
            Self::BloodLoss(loss) => loss_line(loss),
            Self::MotherObserved(observation) => observation_line(observation),
            Self::ApgarScored(apgar) => {
                about("fact-apgar", apgar.baby).with("minute", apgar.minute.get()).with("total", apgar.total())
            }
            Self::NewbornMeasured(measures) => measures_line(measures),
            Self::MedicineGiven(Medicine { name, dose, route, .. }) => Message::new("fact-medicine")
                .with("name", name.as_str())
                .with("dose", dose.as_str())
                .with("route", route.as_str()),
            Self::Examined { placenta, item, answer } => about("fact-examined", *placenta)
                .with("item", Message::new(format!("exam-{item}")))
                .with("answer", answer.describe(item)),
            Self::Noted { text } => Message::new("fact-noted").with("text", text.as_str()),
            Self::Retracted => Message::new("fact-retracted"),
            Self::Signed { name, role, .. } => {
                Message::new("fact-signed").with("name", name.as_str()).with("role", role.as_str())
            }
            Self::Unknown { kind, .. } => Message::new("fact-unknown").with("kind", kind.as_str()),
        }
    }
}

impl Answer {
    /// The answer in words; the item's id picks the choice's name and the measure's unit.
    #[must_use]
    pub fn describe(&self, item: &str) -> Message {
        match self {
            Self::Choice { option } => Message::new(format!("exam-{item}-{option}")),
            Self::Measure { value } => match crate::examination::Examination::standard().item(item) {
                Some(found) => found.measure_words(*value),
                None => Message::new("measure-count").with("value", *value),
            },
            Self::CouldNotTell => Message::new("answer-could-not-tell"),
        }
    }
}

/// The kind of care in words.
#[must_use]
pub fn care_words(care: Care) -> Message {
    Message::new(match care {
        Care::Physiological => "care-physiological",
        Care::Active => "care-active",
    })
}

fn about(id: &str, baby: BabyNo) -> Message {
    Message::new(id).with("baby", baby)
}

/// Baby numbers as text: `1` or `1 + 2`.
fn list(babies: &[BabyNo]) -> String {
    babies.iter().map(BabyNo::to_string).collect::<Vec<_>>().join(" + ")
}

fn client_line(client: &Client) -> Message {
    let gestation =
        client.gestation.map(|days| Message::new("part-gestation").with("weeks", days.get() / 7).with("days", days.get() % 7));
    let group = client.blood_group.as_deref().map(|text| Message::new("part-blood-group").with("text", text));
    let allergies = client.allergies.as_deref().map(|text| match text.trim() {
        "" => Message::new("part-no-allergies"),
        known => Message::new("part-allergies").with("text", known),
    });
    joined(Message::new("fact-client").with("name", client.name.as_str()), [gestation, group, allergies])
}

fn loss_line(loss: &Loss) -> Message {
    match loss {
        Loss::Weighed { item, gross, dry } => {
            Message::new(if item.trim().is_empty() { "fact-loss-weighed-item" } else { "fact-loss-weighed" })
                .with("item", item.as_str())
                .with("gross", gross.get())
                .with("dry", dry.get())
                .with("net", gross.get().saturating_sub(dry.get()))
        }
        Loss::Jug { volume } => Message::new("fact-loss-jug").with("volume", volume.get()),
        Loss::Seen { volume } => Message::new("fact-loss-seen").with("volume", volume.get()),
    }
}

fn observation_line(seen: &MotherObservation) -> Message {
    let number = |id: &str, value: Option<u32>| value.map(|value| Message::new(id).with("value", value));
    let pressure = match (seen.systolic, seen.diastolic) {
        (None, None) => None,
        (systolic, diastolic) => {
            let text = |side: Option<crate::quantity::Pressure>| side.map_or("–".to_owned(), |mmhg| mmhg.get().to_string());
            Some(Message::new("part-pressure").with("systolic", text(systolic)).with("diastolic", text(diastolic)))
        }
    };
    let fundus = seen.fundus.map(|fundus| Message::new(format!("fundus-{}", code(&fundus))));
    let bleeding = seen.bleeding.map(|bleeding| Message::new(format!("bleeding-{}", code(&bleeding))));
    joined(
        Message::new("fact-mother-observed"),
        [
            number("part-pulse", seen.pulse.map(Into::into)),
            pressure,
            number("part-respirations", seen.respirations.map(Into::into)),
            seen.temperature.map(temperature),
            number("part-saturation", seen.saturation.map(Into::into)),
            fundus,
            bleeding,
        ],
    )
}

fn measures_line(measures: &NewbornMeasures) -> Message {
    let cm = |id: &str, length: Option<crate::quantity::Length>| {
        length.map(|mm| Message::new(id).with("value", f64::from(mm.get()) / 10.0))
    };
    joined(
        about("fact-newborn-measured", measures.baby),
        [
            measures.weight.map(|weight| Message::new("part-weight").with("value", weight.get())),
            cm("part-length", measures.length),
            cm("part-head", measures.head),
            measures.temperature.map(temperature),
        ],
    )
}

fn temperature(tenths: crate::quantity::Temperature) -> Message {
    Message::new("part-temperature").with("value", f64::from(tenths.get()) / 10.0)
}

/// Fills `parts` with the given messages, one after another.
fn joined<const N: usize>(line: Message, parts: [Option<Message>; N]) -> Message {
    let chained = parts.into_iter().flatten().rev().fold(None, |rest: Option<Message>, part| {
        Some(match rest {
            None => part,
            Some(rest) => Message::new("joined").with("first", part).with("rest", rest),
        })
    });
    line.with("parts", chained.unwrap_or_else(|| Message::new("part-none")))
}

/// The kebab-case name of a unit variant, as stored.
fn code<T: serde::Serialize>(variant: &T) -> String {
    serde_json::to_value(variant).ok().and_then(|value| value.as_str().map(|text| text.replace('_', "-"))).unwrap_or_default()
}
