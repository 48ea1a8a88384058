//! Every kind of fact as resources. What has no published code has one of our own, and always words.

use secundine_domain::assess::loss_volume;
use secundine_domain::fact::{Fact, Loss, NewbornEvent, Perineum, PhotoMeasure, ResponseStep, Tear, care_words, code};

use super::codes::{Unit, absent, own};
use super::element::Value;
use super::resource::{Observation, Resource};
use super::told::{Made, Maker, Part, Told, Who};
use super::{client, examination, medicine, newborn, signs};

/// Where a fact stands in the document. No arm for the rest: a new kind has to be thought about.
pub(super) fn part(fact: &Fact) -> Part {
    match fact {
        Fact::ClientRecorded(_) | Fact::BirthRegistered { .. } | Fact::TravelTimeSet { .. } => Part::Mother,
        Fact::CareChosen { .. }
        | Fact::CordPulsationStopped { .. }
        | Fact::CordClamped { .. }
        | Fact::CordCut { .. }
        | Fact::PlacentaBorn { .. }
        | Fact::MembranesBorn { .. }
        | Fact::BloodLoss(_)
        | Fact::SeparationSeen { .. } => Part::ThirdStage,
        Fact::MotherObserved(_) | Fact::PerineumExamined(_) => Part::Signs,
        Fact::MedicineGiven(_) => Part::Medicines,
        Fact::Examined { .. } | Fact::PhotoTaken(_) | Fact::PhotoMeasured(_) | Fact::PlacentaWeights { .. } => Part::Placenta,
        Fact::BabyBorn { .. } | Fact::ApgarScored(_) | Fact::NewbornMeasured(_) | Fact::NewbornEvent { .. } => Part::Newborn,
        Fact::PracticeDescribed(_)
        | Fact::OwnProtocolChanged { .. }
        | Fact::MedicinesListed { .. }
        | Fact::ExaminationOrdered { .. }
        | Fact::ServerSet { .. }
        | Fact::TermSet { .. }
        | Fact::SendingWaits { .. }
        | Fact::ProtocolChosen { .. }
        | Fact::ResponseMarked { .. }
        | Fact::ConcernMarked
        | Fact::NextContactPlanned(_)
        | Fact::LeavingMarked { .. }
        | Fact::HomeLeft
        | Fact::AskedFor { .. }
        | Fact::Shared(_)
        | Fact::Noted { .. }
        | Fact::MomentMarked
        | Fact::TouchedAgain { .. }
        | Fact::VoiceNoted(_)
        | Fact::WrittenUp(_)
        | Fact::BirthJoined(_)
        | Fact::ClocksCompared(_)
        | Fact::SameBirth { .. }
        | Fact::Retracted
        | Fact::Signed { .. }
        | Fact::Unknown { .. } => Part::Course,
    }
}

/// The resources of a line. One about the examination may have none of its own: it then stands in that of its placenta.
pub(super) fn of_line(maker: &mut Maker, told: &Told) -> Vec<Made> {
    match &told.entry.fact {
        Fact::PracticeDescribed(_) => maker.in_words(told, "fhir-practice"),
        Fact::OwnProtocolChanged { .. }
        | Fact::MedicinesListed { .. }
        | Fact::ExaminationOrdered { .. }
        | Fact::ServerSet { .. }
        | Fact::TermSet { .. }
        | Fact::SendingWaits { .. }
        | Fact::BirthJoined(_)
        | Fact::ClocksCompared(_)
        | Fact::SameBirth { .. }
        | Fact::PlacentaWeights { .. } => maker.in_words(told, "fhir-setting"),
        Fact::BirthRegistered { label, .. } => maker.text(told, "fhir-chart-opened", label),
        Fact::ClientRecorded(known) => client::of(maker, told, known),
        Fact::ProtocolChosen { .. } => maker.in_words(told, "fhir-protocol"),
        Fact::CareChosen { care } => maker.choice(told, Who::Mother, "fhir-care", &care_words(*care).id),
        Fact::BabyBorn { baby } => maker.moment(told, Who::Baby(*baby), "fhir-baby-born"),
        Fact::CordPulsationStopped { baby } => maker.moment(told, Who::MotherFor(*baby), "fhir-cord-pulsation-stopped"),
        Fact::CordClamped { baby } => maker.procedure(told, Who::Baby(*baby), "fhir-cord-clamped"),
        Fact::CordCut { baby } => maker.procedure(told, Who::Baby(*baby), "fhir-cord-cut"),
        Fact::PlacentaBorn { .. } => maker.procedure(told, Who::Mother, "fhir-placenta-born"),
        Fact::MembranesBorn { .. } => maker.procedure(told, Who::Mother, "fhir-membranes-born"),
        Fact::BloodLoss(loss) => blood(maker, told, loss),
        Fact::MotherObserved(seen) => signs::of(maker, told, seen),
        Fact::ApgarScored(apgar) => newborn::apgar(maker, told, apgar),
        Fact::NewbornMeasured(measures) => newborn::measures(maker, told, measures),
        Fact::MedicineGiven(medicine) => medicine::given(maker, told, medicine),
        Fact::NewbornEvent { baby, event } => event_of(maker, told, Who::Baby(*baby), *event),
        Fact::PerineumExamined(perineum) => perineal(maker, told, perineum),
        Fact::SeparationSeen { sign } => {
            maker.choice(told, Who::Mother, "fhir-separation", &format!("separation-{}", code(sign)))
        }
        Fact::ResponseMarked { step } => response(maker, told, *step),
        Fact::ConcernMarked => maker.moment(told, Who::Mother, "fhir-concern"),
        Fact::TravelTimeSet { minutes } => {
            maker.only(told, Who::Mother, "fhir-travel", Some(Value::Quantity(Unit::Minute.of(minutes.get()))))
        }
        Fact::NextContactPlanned(_) => maker.in_words(told, "fhir-next-contact"),
        Fact::LeavingMarked { step } => maker.choice(told, Who::Mother, "fhir-leaving", &format!("leaving-{}", code(step))),
        Fact::HomeLeft => maker.moment(told, Who::Mother, "fhir-home-left"),
        Fact::Examined { placenta, item, cord, answer } => {
            examination::alone(maker, told, *placenta, item, *cord, answer).into_iter().collect()
        }
        Fact::PhotoTaken(photo) => {
            let said = maker.said(told);
            maker.only(told, Who::MotherFor(photo.placenta), "fhir-photo", Value::text(&said))
        }
        Fact::PhotoMeasured(measure) => photo_measured(maker, told, measure),
        Fact::AskedFor { text } => maker.text(told, "fhir-asked-for", text),
        Fact::Shared(_) => maker.in_words(told, "fhir-shared"),
        Fact::Noted { text } => maker.text(told, "fhir-note", text),
        Fact::MomentMarked => maker.moment(told, Who::Mother, "fhir-moment"),
        Fact::TouchedAgain { .. } => maker.in_words(told, "fhir-touched-again"),
        Fact::VoiceNoted(_) => maker.in_words(told, "fhir-voice-note"),
        Fact::WrittenUp(written) => maker.text(told, "fhir-written-up", &written.text),
        Fact::Retracted => maker.moment(told, Who::Mother, "fhir-retracted"),
        Fact::Signed { .. } => maker.in_words(told, "fhir-signed"),
        Fact::Unknown { .. } => maker.in_words(told, "fhir-unknown"),
    }
}

/// One amount in mL, as the record adds it up; of a weighed one, what the scale said too.
fn blood(maker: &mut Maker, told: &Told, loss: &Loss) -> Vec<Made> {
    let method = match loss {
        Loss::Weighed { .. } => "fhir-method-weighed",
        Loss::Jug { .. } => "fhir-method-jug",
        Loss::Seen { .. } => "fhir-method-seen",
    };
    let volume = Value::Quantity(Unit::Millilitre.of(loss_volume(loss, maker.chart.protocol())));
    let grams = |id: &str, weight: u32| maker.component(id, Some(Value::Quantity(Unit::Gram.of(weight))));
    let component = match loss {
        Loss::Weighed { gross, dry, .. } => vec![grams("fhir-loss-gross", gross.get()), grams("fhir-loss-dry", dry.get())],
        Loss::Jug { .. } | Loss::Seen { .. } => Vec::new(),
    };
    let method = Some(own(maker.words, method));
    let weighed = !component.is_empty();
    let seen = Observation { method, component, ..maker.seen(told, Who::Mother, "fhir-blood-loss", Some(volume)) };
    let made = told.made("", Resource::Observation(Box::new(seen)));
    // Another protocol may make another volume of the same weight.
    vec![Made { replaces: made.replaces || weighed, ..made }]
}

fn event_of(maker: &mut Maker, told: &Told, who: Who, event: NewbornEvent) -> Vec<Made> {
    maker.choice(told, who, "fhir-newborn-event", &format!("newborn-{}", code(&event)))
}

fn perineal(maker: &mut Maker, told: &Told, Perineum { tear, also, rectal, repair }: &Perineum) -> Vec<Made> {
    let mut component: Vec<_> =
        also.iter().map(|torn| maker.chosen("fhir-also-torn", &format!("also-torn-{}", code(torn)))).collect();
    component.extend(rectal.map(|rectal| maker.chosen("fhir-rectal", &format!("rectal-examination-{}", code(&rectal)))));
    component.extend(repair.map(|repair| maker.chosen("fhir-repair", &format!("repair-{}", code(&repair)))));
    let mut seen = maker.seen(told, Who::Mother, "fhir-perineum", None);
    match tear {
        Tear::NotExamined => seen.data_absent_reason = Some(absent("not-performed", "Not Performed")),
        tear => {
            seen.value = Some(Value::Concept(own(maker.words, &format!("tear-{}", code(tear)))));
            seen.data_absent_reason = None;
        }
    }
    let seen = Observation { component, ..seen };
    vec![told.made("", Resource::Observation(Box::new(seen)))]
}

/// What hands do is a procedure, what else happens is seen.
fn response(maker: &mut Maker, told: &Told, step: ResponseStep) -> Vec<Made> {
    let id = format!("response-{}", code(&step));
    match step {
        ResponseStep::UterusMassaged
        | ResponseStep::BladderEmptied
        | ResponseStep::VeinOpened
        | ResponseStep::FluidStarted
        | ResponseStep::CompressionStarted
        | ResponseStep::OxygenStarted => maker.procedure(told, Who::Mother, &id),
        ResponseStep::HelpCalled
        | ResponseStep::HelpArrived
        | ResponseStep::AmbulanceCalled
        | ResponseStep::AmbulanceArrived
        | ResponseStep::CompressionEnded
        | ResponseStep::BleedingControlled
        | ResponseStep::TransferLeft
        | ResponseStep::TransferArrived
        | ResponseStep::HandedOver => maker.moment(told, Who::Mother, &id),
    }
}

/// What was measured on a photograph, with its plus-minus in words.
fn photo_measured(maker: &mut Maker, told: &Told, measure: &PhotoMeasure) -> Vec<Made> {
    // Hundredths of a mm.
    let length = |id: &str, hundredths: u32| {
        maker.component(id, Some(Value::Quantity(Unit::Centimetre.of(f64::from(hundredths) / 1000.0))))
    };
    let sizes = &measure.sizes;
    let component = vec![length("fhir-photo-length", sizes.length.value), length("fhir-photo-breadth", sizes.breadth.value)];
    let said = Value::text(&maker.said(told));
    let seen = maker.seen(told, Who::MotherFor(measure.placenta), "fhir-photo-measured", said);
    vec![told.made("", Resource::Observation(Box::new(Observation { component, ..seen })))]
}
