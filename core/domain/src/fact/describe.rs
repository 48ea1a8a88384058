//! How each fact is said, by message ids of the catalogue.

use super::{
    Answer, BabyNo, Care, Client, Compared, Condition, Fact, Joined, Loss, Medicine, MotherObservation, NewbornEvent,
    NewbornMeasures, NextContact, Perineum, Photo, PhotoMeasure, Practice, Server, Shared, Told, WrittenUp,
};
use crate::examination::{Examination, centimetres};
use crate::message::Message;
use crate::protocol::Protocol;
use crate::time::{Certainty, Elapsed, give_or_take, span};

impl Fact {
    /// The fact as one line of the record.
    #[must_use]
    pub fn describe(&self) -> Message {
        match self {
            Self::PracticeDescribed(Practice { name, practitioner, .. }) => {
                Message::new("fact-practice").with("name", name.as_str()).with("practitioner", practitioner.as_str())
            }
            Self::MedicinesListed { medicines } => {
                Message::new("fact-medicines-listed").with("count", u32::try_from(medicines.len()).unwrap_or(u32::MAX))
            }
            Self::ServerSet { server: Some(Server { address, .. }) } => {
                Message::new("fact-server-set").with("address", address.as_str())
            }
            Self::ServerSet { server: None } => Message::new("fact-no-server"),
            Self::TermSet { years: Some(years) } => Message::new("fact-term-set").with("years", years.get()),
            Self::TermSet { years: None } => Message::new("fact-no-term"),
            Self::SendingWaits { waits: true, .. } => Message::new("fact-sending-waits"),
            Self::SendingWaits { waits: false, .. } => Message::new("fact-sending-ended"),
            Self::BirthRegistered { label, .. } => Message::new("fact-birth-registered").with("label", label.as_str()),
            Self::ClientRecorded(client) => client_line(client),
            Self::ProtocolChosen { protocol, own } => {
                let known = own.as_deref().or_else(|| Protocol::find(protocol));
                Message::new("fact-protocol-chosen")
                    .with("protocol", known.map_or(protocol.as_str(), |known| known.title.as_str()))
            }
            Self::OwnProtocolChanged { change, .. } => Message::new("fact-own-protocol").with("count", change.count()),
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
            Self::MedicineGiven(medicine) => medicine_line(medicine),
            Self::NewbornEvent { baby, event } => about("fact-newborn-event", *baby).with("event", event.name()),
            Self::PerineumExamined(perineum) => perineum_line(perineum),
            Self::SeparationSeen { sign } => {
                Message::new("fact-separation").with("sign", Message::new(format!("separation-{}", code(sign))))
            }
            Self::ResponseMarked { step } => Message::new(format!("response-{}", code(step))),
            Self::ConcernMarked => Message::new("fact-concern"),
            Self::TravelTimeSet { minutes } => Message::new("fact-travel-time").with("minutes", minutes.get()),
            Self::NextContactPlanned(contact @ NextContact { call, .. }) => {
                let call = (!call.trim().is_empty()).then(|| Message::new("part-call").with("text", call.as_str()));
                joined(Message::new("fact-next-contact"), [contact.words(), call])
            }
            Self::LeavingMarked { step } => Message::new(format!("leaving-{}", code(step))),
            Self::HomeLeft => Message::new("fact-home-left"),
            Self::AskedFor { text } if text.trim().is_empty() => Message::new("fact-asked-for-nothing"),
            Self::AskedFor { text } => Message::new("fact-asked-for").with("text", text.as_str()),
            Self::Shared(shared) => shared_line(shared),
            Self::Examined { placenta, item, cord, answer } => about("fact-examined", *placenta)
                .with("item", of_cord(Message::new(format!("exam-{item}")), *cord))
                .with("answer", answer.describe(item)),
            Self::PlacentaWeights { table: Some(table) } => {
                Message::new("fact-placenta-weights").with("source", table.source.as_str())
            }
            Self::PlacentaWeights { table: None } => Message::new("fact-no-placenta-weights"),
            Self::ExaminationOrdered { items } => {
                Message::new(if items.is_empty() { "fact-examination-usual-order" } else { "fact-examination-ordered" })
            }
            Self::PhotoTaken(photo) => photo_line(photo),
            Self::PhotoMeasured(measure) => photo_measure_line(measure),
            Self::Noted { text } => Message::new("fact-noted").with("text", text.as_str()),
            Self::MomentMarked => Message::new("fact-moment"),
            Self::TouchedAgain { after_ms, .. } => {
                Message::new("fact-touched-again").with("seconds", f64::from(after_ms / 10) / 100.0)
            }
            Self::VoiceNoted(note) => Message::new("fact-voice-noted").with("what", note.what(1)).with("length", note.length()),
            Self::WrittenUp(WrittenUp { text, .. }) if text.trim().is_empty() => Message::new("fact-written-up-nothing"),
            Self::WrittenUp(WrittenUp { text, .. }) => Message::new("fact-written-up").with("text", text.as_str()),
            Self::BirthJoined(joined) => joined_line(joined),
            Self::ClocksCompared(compared) => compared.words(),
            Self::SameBirth { same: true, .. } => Message::new("fact-same-birth"),
            Self::SameBirth { same: false, .. } => Message::new("fact-not-same-birth"),
            Self::Retracted => Message::new("fact-retracted"),
            Self::Signed { name, role, .. } => {
                Message::new("fact-signed").with("name", name.as_str()).with("role", role.as_str())
            }
            Self::Unknown { kind, .. } => Message::new("fact-unknown").with("kind", kind.as_str()),
        }
    }
}

impl NewbornEvent {
    /// What happened.
    #[must_use]
    pub fn name(self) -> Message {
        Message::new(format!("newborn-{}", code(&self)))
    }
}

impl Answer {
    /// The answer in words; the item's id picks the choice's name and the measure's unit.
    #[must_use]
    pub fn describe(&self, item: &str) -> Message {
        let choice = |option: &str| Message::new(format!("exam-{item}-{option}"));
        match self {
            Self::Choice { option } => choice(option),
            Self::Choices { options } => all_of(options.iter().map(|option| choice(option))),
            Self::Measure { value } => match Examination::standard().item(item) {
                Some(found) => found.measure_words(*value),
                None => Message::new("measure-count").with("value", *value),
            },
            Self::Pieces { lengths, all } => {
                let lengths = all_of(lengths.iter().map(|mm| centimetres(*mm)));
                Message::new(if *all { "answer-pieces" } else { "answer-pieces-missing" }).with("lengths", lengths)
            }
            Self::Coils { coils, over } => Message::new("answer-coils").with("coils", *coils).with("over", centimetres(*over)),
            Self::Places { places } => {
                let count = u32::try_from(places.len()).unwrap_or(u32::MAX);
                let sizes = places.iter().filter_map(|place| place.size).map(centimetres);
                all_of(std::iter::once(Message::new("answer-places").with("count", count)).chain(sizes))
            }
            Self::CouldNotTell => Message::new("answer-could-not-tell"),
        }
    }
}

/// With the baby's number, where a placenta has several cords.
#[must_use]
pub fn of_cord(what: Message, cord: Option<BabyNo>) -> Message {
    match cord {
        None => what,
        Some(baby) => Message::new("exam-of-cord").with("what", what).with("baby", baby),
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

/// A condition in words.
#[must_use]
pub fn condition_words(condition: Condition) -> Message {
    Message::new(format!("condition-{}", code(&condition)))
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
    let rhd = client.rhd.map(|rhd| Message::new(format!("rhd-{}", code(&rhd))));
    let conditions = client.conditions.as_ref().map(|known| {
        chained(known.iter().map(|condition| condition_words(*condition)).collect())
            .unwrap_or_else(|| Message::new("part-no-conditions"))
    });
    let weight = client.weight.map(|hg| Message::new("part-body-weight").with("value", f64::from(hg.get()) / 10.0));
    let height = client.height.map(|mm| Message::new("part-height").with("value", f64::from(mm.get()) / 10.0));
    let parts = [gestation, group, rhd, allergies, conditions, weight, height];
    joined(Message::new("fact-client").with("name", client.name.as_str()), parts)
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
            seen.response.map(|response| Message::new(format!("response-level-{}", code(&response)))),
            fundus,
            seen.fundal_height.map(fundal_height),
            seen.fundal_position.map(|position| Message::new(format!("fundal-position-{}", code(&position)))),
            bleeding,
            seen.bladder.map(|bladder| Message::new(format!("bladder-{}", code(&bladder)))),
            number("part-urine", seen.urine.map(Into::into)),
            number("part-pain", seen.pain.map(Into::into)),
        ],
    )
}

fn fundal_height(height: crate::quantity::FundalHeight) -> Message {
    let fingers = height.get();
    let id = match fingers {
        0 => "fundal-height-at",
        1.. => "fundal-height-above",
        _ => "fundal-height-below",
    };
    Message::new(id).with("fingers", u32::from(fingers.unsigned_abs()))
}

fn perineum_line(Perineum { tear, also, rectal, repair }: &Perineum) -> Message {
    let mut parts = vec![Message::new(format!("tear-{}", code(tear)))];
    parts.extend(also.iter().map(|torn| Message::new(format!("also-torn-{}", code(torn)))));
    parts.extend(rectal.map(|rectal| Message::new(format!("rectal-examination-{}", code(&rectal)))));
    parts.extend(repair.map(|repair| Message::new(format!("repair-{}", code(&repair)))));
    with_parts(Message::new("fact-perineum"), parts)
}

fn medicine_line(medicine: &Medicine) -> Message {
    let part = |id: &str, text: Option<&str>| {
        text.filter(|text| !text.trim().is_empty()).map(|text| Message::new(id).with("text", text))
    };
    let dose = part("part-dose", Some(&medicine.dose)).unwrap_or_else(|| Message::new("part-no-dose"));
    let line = Message::new(if medicine.baby.is_some() { "fact-medicine-baby" } else { "fact-medicine" });
    let parts = [
        Some(dose),
        part("part-route", Some(&medicine.route)),
        part("part-site", medicine.site.as_deref()),
        part("part-batch", medicine.batch.as_deref()),
        part("part-giver", medicine.giver.as_deref()),
    ];
    joined(line.with("name", medicine.name.as_str()).with("baby", medicine.baby.unwrap_or(1)), parts)
}

fn shared_line(Shared { what, to, how, name, version }: &Shared) -> Message {
    let line = match name.as_deref().filter(|name| !name.trim().is_empty()) {
        Some(name) => Message::new("fact-shared-named").with("name", name),
        None => Message::new("fact-shared"),
    };
    let line = line
        .with("what", Message::new(format!("shared-what-{}", code(what))))
        .with("to", Message::new(format!("shared-to-{}", code(to))))
        .with("how", Message::new(format!("shared-how-{}", code(how))));
    match version {
        Some(version) => {
            Message::new("fact-shared-version").with("shared", line).with("version", version.chars().take(16).collect::<String>())
        }
        None => line,
    }
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
            measures.sex.map(|sex| Message::new(format!("sex-{}", code(&sex)))),
            measures.heart_rate.map(|rate| Message::new("part-heart-rate").with("value", rate.get())),
            measures.respirations.map(|rate| Message::new("part-respirations").with("value", rate.get())),
            measures.breathing.map(|breathing| Message::new(format!("breathing-{}", code(&breathing)))),
        ],
    )
}

fn photo_line(photo: &Photo) -> Message {
    let item = photo.item.as_ref().map(|item| Message::new("part-photo-item").with("item", Message::new(format!("exam-{item}"))));
    let words = photo.words.as_deref().filter(|words| !words.trim().is_empty());
    let words = words.map(|words| Message::new("part-photo-words").with("text", words));
    match item.is_none() && words.is_none() {
        true => about("fact-photo", photo.placenta),
        false => joined(about("fact-photo-of", photo.placenta), [item, words]),
    }
}

fn photo_measure_line(measure: &PhotoMeasure) -> Message {
    with_parts(about("fact-photo-measured", measure.placenta), measure.sizes.parts())
}

fn temperature(tenths: crate::quantity::Temperature) -> Message {
    Message::new("part-temperature").with("value", f64::from(tenths.get()) / 10.0)
}

/// Fills `parts` with the given messages, one after another.
fn joined<const N: usize>(line: Message, parts: [Option<Message>; N]) -> Message {
    with_parts(line, parts.into_iter().flatten().collect())
}

fn with_parts(line: Message, parts: Vec<Message>) -> Message {
    line.with("parts", all_of(parts))
}

/// The messages one after another.
#[must_use]
pub fn all_of(parts: impl IntoIterator<Item = Message>) -> Message {
    chained(parts.into_iter().collect()).unwrap_or_else(|| Message::new("part-none"))
}

fn chained(parts: Vec<Message>) -> Option<Message> {
    parts.into_iter().rev().fold(None, |rest: Option<Message>, part| {
        Some(match rest {
            None => part,
            Some(rest) => Message::new("joined").with("first", part).with("rest", rest),
        })
    })
}

/// The kebab-case name of a unit variant, as stored.
pub fn code<T: serde::Serialize>(variant: &T) -> String {
    serde_json::to_value(variant).ok().and_then(|value| value.as_str().map(|text| text.replace('_', "-"))).unwrap_or_default()
}

impl Compared {
    /// By how much the other phone's clock is ahead or behind, and how surely.
    #[must_use]
    pub fn words(&self) -> Message {
        let apart = self.ahead_ms.saturating_abs();
        if apart <= self.error_ms {
            let most = give_or_take(apart.saturating_add(self.error_ms));
            return Message::new("fact-clocks-alike").with("most", most);
        }
        let way = if self.ahead_ms < 0 { "back" } else { "forward" };
        let line = Message::new("fact-clocks-compared").with("way", way).with("by", span(self.ahead_ms));
        line.with("error", give_or_take(self.error_ms))
    }
}

fn joined_line(told: &Joined) -> Message {
    let ago = |ms| Elapsed { ms, certainty: Certainty::Measured, least_ms: None, error_ms: 0 }.clock();
    let marks: Vec<&Told> = told.told.iter().filter(|told| told.fact.is_mark()).collect();
    let babies = marks.iter().filter_map(|told| if let Fact::BabyBorn { baby } = *told.fact { Some(baby) } else { None });
    let of = babies.max().unwrap_or(1);
    let part =
        |told: &&Told| Message::new("part-told").with("what", told.fact.describe().with("of", of)).with("ago", ago(told.ago_ms));
    with_parts(Message::new("fact-birth-joined").with("label", told.label.as_str()), marks.iter().map(part).collect())
}
