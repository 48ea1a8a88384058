//! Any entries at all: every kind, every clock, every tangle of corrections. Boxed, or the strategies overflow the stack.

use proptest::collection::{btree_set, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use secundine_domain::entry::{Amendment, BirthId, DeviceId, Entry, EntryId};
use secundine_domain::examination::{Examination, Kind, Weighed, WeightRow, WeightTable};
use secundine_domain::fact::{
    AlsoTorn, Answer, Apgar, BabyNo, Bladder, Bleeding, Breathing, Care, Chapter, Client, Compared, Condition, Consciousness,
    Fact, FundalPosition, Fundus, Joined, LeavingStep, Loss, Medicine, MotherObservation, NewbornEvent, NewbornMeasures,
    NextContact, Perineum, Photo, PhotoMeasure, Place, Practice, RectalExamination, Repair, ResponseStep, RhD, SeparationSign,
    Server, Sex, Shared, SharedHow, SharedTo, SharedWhat, Tear, Told, VoiceNote, WrittenUp,
};
use secundine_domain::file::FileId;
use secundine_domain::photo::{FocalFrom, Pixel, Reference, Size, Sizes, ToEdge, Tracing};
use secundine_domain::protocol::{Milli, OwnChange, OwnProtocol, Protocol, Slot, State, Status, Step};
use secundine_domain::quantity::{
    ApgarPart, BirthWeight, BodyWeight, Count, FundalHeight, Gestation, HeartRate, ItemWeight, Length, Minutes, PainScore,
    Pressure, RespiratoryRate, Saturation, Temperature, Volume, Years,
};
use secundine_domain::time::{Boot, Occurred, Precision, Run, Stamp};

use super::{BIRTH, HOUR, START, id};

/// Mostly of one night, now and then at the end of all time.
fn moment(from: i64) -> BoxedStrategy<i64> {
    prop_oneof![12 => from..from + 4 * HOUR, 2 => from - 48 * HOUR..from + 48 * HOUR, 1 => any::<i64>(), 1 => select(vec![i64::MIN, i64::MAX, 0])]
    .boxed()
}

/// An offset that exists, or one that cannot.
fn offset() -> BoxedStrategy<i32> {
    prop_oneof![9 => select(vec![0, 60, 120, -300, 345, 840]), 1 => any::<i32>()].boxed()
}

fn boot() -> BoxedStrategy<Option<Boot>> {
    let run = (select(vec!["a", "b", "c"]), moment(5_000_000));
    prop_oneof![4 => run.prop_map(|(id, since_ms)| Some(Boot { id: id.to_owned(), since_ms })), 1 => Just(None)].boxed()
}

pub fn stamp() -> BoxedStrategy<Stamp> {
    let zone = option::of(Just("Europe/Amsterdam".to_owned()));
    (moment(START), offset(), zone, boot())
        .prop_map(|(wall_ms, offset_min, zone, boot)| Stamp { wall_ms, offset_min, zone, boot })
        .boxed()
}

/// What a device has kept of its runs, some of them run by entries too.
pub fn runs() -> impl Strategy<Value = Vec<Run>> {
    vec(stamp(), 0..6).prop_map(|stamps| stamps.iter().filter_map(Stamp::run).collect())
}

pub fn occurred() -> BoxedStrategy<Occurred> {
    let precision = select(vec![Precision::Exact, Precision::Estimated]);
    let typed = (moment(START), offset(), precision);
    prop_oneof![
        2 => stamp().prop_map(Occurred::Marked),
        1 => typed.prop_map(|(wall_ms, offset_min, precision)| Occurred::Typed { wall_ms, offset_min, precision }),
    ]
    .boxed()
}

fn text() -> BoxedStrategy<String> {
    prop_oneof![4 => "[a-z ]{0,8}", 1 => any::<String>()].boxed()
}

fn baby() -> impl Strategy<Value = BabyNo> {
    prop_oneof![9 => 1_u8..4, 1 => any::<u8>()]
}

fn babies() -> impl Strategy<Value = Vec<BabyNo>> {
    vec(baby(), 0..4)
}

fn volume() -> impl Strategy<Value = Volume> {
    (0..=15_000_i64).prop_map(|ml| Volume::new(ml).unwrap())
}

pub fn loss() -> BoxedStrategy<Loss> {
    let weight = || (0..=20_000_i64).prop_map(|g| ItemWeight::new(g).unwrap());
    prop_oneof![
        (text(), weight(), weight()).prop_map(|(item, gross, dry)| Loss::Weighed { item, gross, dry }),
        volume().prop_map(|volume| Loss::Jug { volume }),
        volume().prop_map(|volume| Loss::Seen { volume }),
    ]
    .boxed()
}

fn observation() -> BoxedStrategy<MotherObservation> {
    let signs = (
        option::of((0..=300_i64).prop_map(|v| HeartRate::new(v).unwrap())),
        option::of((0..=300_i64).prop_map(|v| Pressure::new(v).unwrap())),
        option::of((0..=300_i64).prop_map(|v| Pressure::new(v).unwrap())),
        option::of((0..=120_i64).prop_map(|v| RespiratoryRate::new(v).unwrap())),
        option::of((250..=450_i64).prop_map(|v| Temperature::new(v).unwrap())),
        option::of((0..=100_i64).prop_map(|v| Saturation::new(v).unwrap())),
        option::of(select(vec![Fundus::Firm, Fundus::FirmsWhenRubbed, Fundus::Soft])),
        option::of(select(vec![Bleeding::Light, Bleeding::Moderate, Bleeding::Heavy, Bleeding::Trickle, Bleeding::Clots])),
    );
    let felt = (
        option::of(select(vec![
            Consciousness::Alert,
            Consciousness::Confused,
            Consciousness::Voice,
            Consciousness::Pain,
            Consciousness::Unresponsive,
        ])),
        option::of((-10..=10_i64).prop_map(|v| FundalHeight::new(v).unwrap())),
        option::of(select(vec![FundalPosition::Central, FundalPosition::Left, FundalPosition::Right])),
        option::of(select(vec![Bladder::PassedUrine, Bladder::NotPalpable, Bladder::Palpable, Bladder::Drained])),
        option::of(volume()),
        option::of((0..=10_i64).prop_map(|v| PainScore::new(v).unwrap())),
    );
    (signs, felt)
        .prop_map(|(signs, felt)| {
            let (pulse, systolic, diastolic, respirations, temperature, saturation, fundus, bleeding) = signs;
            let (response, fundal_height, fundal_position, bladder, urine, pain) = felt;
            MotherObservation {
                pulse,
                systolic,
                diastolic,
                respirations,
                temperature,
                saturation,
                fundus,
                bleeding,
                response,
                fundal_height,
                fundal_position,
                bladder,
                urine,
                pain,
            }
        })
        .boxed()
}

fn perineum() -> BoxedStrategy<Perineum> {
    let tear = select(vec![
        Tear::NotExamined,
        Tear::Intact,
        Tear::First,
        Tear::Second,
        Tear::ThirdA,
        Tear::ThirdB,
        Tear::ThirdC,
        Tear::Fourth,
    ]);
    let torn = select(vec![
        AlsoTorn::Episiotomy,
        AlsoTorn::Labial,
        AlsoTorn::Clitoral,
        AlsoTorn::Vaginal,
        AlsoTorn::Cervical,
        AlsoTorn::Buttonhole,
    ]);
    let rectal = option::of(select(vec![RectalExamination::Done, RectalExamination::Declined]));
    let repair = option::of(select(vec![Repair::NotNeeded, Repair::Sutured, Repair::Unsutured, Repair::InHospital]));
    (tear, btree_set(torn, 0..4), rectal, repair)
        .prop_map(|(tear, also, rectal, repair)| Perineum { tear, also, rectal, repair })
        .boxed()
}

fn apgar() -> impl Strategy<Value = Apgar> {
    let parts = [0; 5].map(|least: i64| (least..=2).prop_map(|v| ApgarPart::new(v).unwrap()));
    (baby(), 0..=1_440_i64, parts).prop_map(|(baby, minute, [colour, heart_rate, reflex, tone, breathing])| Apgar {
        baby,
        minute: Minutes::new(minute).unwrap(),
        colour,
        heart_rate,
        reflex,
        tone,
        breathing,
    })
}

fn measures() -> BoxedStrategy<NewbornMeasures> {
    let length = || option::of((1..=3_000_i64).prop_map(|v| Length::new(v).unwrap()));
    let weight = option::of((200..=8_000_i64).prop_map(|v| BirthWeight::new(v).unwrap()));
    let temperature = option::of((250..=450_i64).prop_map(|v| Temperature::new(v).unwrap()));
    let seen = (
        option::of(select(vec![Sex::Female, Sex::Male, Sex::Unclear])),
        option::of((0..=300_i64).prop_map(|v| HeartRate::new(v).unwrap())),
        option::of((0..=120_i64).prop_map(|v| RespiratoryRate::new(v).unwrap())),
        option::of(select(vec![
            Breathing::Crying,
            Breathing::Regular,
            Breathing::Irregular,
            Breathing::Grunting,
            Breathing::None,
        ])),
    );
    (baby(), weight, length(), length(), temperature, seen)
        .prop_map(|(baby, weight, length, head, temperature, (sex, heart_rate, respirations, breathing))| NewbornMeasures {
            baby,
            weight,
            length,
            head,
            temperature,
            sex,
            heart_rate,
            respirations,
            breathing,
        })
        .boxed()
}

fn client() -> BoxedStrategy<Client> {
    let count = || option::of((0..=200_i64).prop_map(|v| Count::new(v).unwrap()));
    let gestation = option::of((140..=315_i64).prop_map(|v| Gestation::new(v).unwrap()));
    let words = || option::of(text());
    let body = (
        option::of((250..=3_500_i64).prop_map(|v| BodyWeight::new(v).unwrap())),
        option::of((1..=3_000_i64).prop_map(|v| Length::new(v).unwrap())),
        option::of(btree_set(select(vec![Condition::Hypertension, Condition::Asthma]), 0..3)),
        option::of(select(vec![RhD::Negative, RhD::Positive])),
    );
    ((text(), words(), gestation, count(), count(), words(), words()), body)
        .prop_map(|((name, born, gestation, gravida, para, blood_group, allergies), (weight, height, conditions, rhd))| Client {
            name,
            born,
            gestation,
            gravida,
            para,
            blood_group,
            allergies,
            weight,
            height,
            conditions,
            rhd,
        })
        .boxed()
}

fn medicine() -> BoxedStrategy<Medicine> {
    let words = || option::of(text());
    ((text(), text(), text(), any::<bool>()), (words(), words(), words(), words(), option::of(baby())))
        .prop_map(|((name, dose, route, uterotonic), (listed, site, batch, giver, baby))| Medicine {
            name,
            dose,
            route,
            uterotonic,
            listed,
            site,
            batch,
            giver,
            baby,
        })
        .boxed()
}

/// What happens from the placenta to the leaving.
fn photo() -> BoxedStrategy<Fact> {
    let files = (any::<[u8; 32]>(), any::<[u8; 32]>());
    (baby(), files, any::<(u32, u32)>(), option::of(Just("lobes".to_owned())), option::of(text()), option::of(any::<u32>()))
        .prop_map(|(placenta, (file, small), (width, height), item, words, focal)| {
            let (file, small) = (FileId(file), FileId(small));
            Fact::PhotoTaken(Photo { placenta, file, small, width, height, item, words, focal })
        })
        .boxed()
}

fn photo_measure() -> BoxedStrategy<Fact> {
    let pixel = || (any::<i32>(), any::<i32>()).prop_map(|(x, y)| Pixel { x, y });
    let size = || any::<(u32, u32)>().prop_map(|(value, plus_minus)| Size { value, plus_minus });
    let reference =
        prop_oneof![Just(Reference::OneCard), Just(Reference::TwoCards), any::<u32>().prop_map(|side| Reference::Frame { side })];
    let tracing = (reference, vec(pixel(), 0..9), vec(pixel(), 0..30), option::of(pixel()), any::<u32>()).prop_map(
        |(reference, corners, outline, insertion, thickness)| Tracing { reference, corners, outline, insertion, thickness },
    );
    let edge = option::of((size(), any::<bool>()).prop_map(|(distance, outside)| ToEdge { distance, outside }));
    let from = select(vec![FocalFrom::Plane, FocalFrom::Camera, FocalFrom::Usual]);
    let sizes = (size(), size(), size(), edge, any::<(u32, u32)>(), from).prop_map(
        |(length, breadth, area, insertion, (tilt, height), focal_from)| Sizes {
            length,
            breadth,
            area,
            insertion,
            tilt,
            height,
            focal_from,
        },
    );
    (baby(), any::<[u8; 32]>(), any::<(u32, u32, u32)>(), option::of(any::<u32>()), tracing, sizes)
        .prop_map(|(placenta, file, (width, height, formula), focal, tracing, sizes)| {
            let file = FileId(file);
            Fact::PhotoMeasured(Box::new(PhotoMeasure { placenta, file, width, height, focal, tracing, sizes, formula }))
        })
        .boxed()
}

fn course() -> BoxedStrategy<Fact> {
    let event = select(vec![
        NewbornEvent::SkinToSkin,
        NewbornEvent::SkinToSkinEnded,
        NewbornEvent::FirstFeed,
        NewbornEvent::PassedUrine,
        NewbornEvent::PassedMeconium,
        NewbornEvent::VitaminKDeclined,
    ]);
    let sign = select(vec![
        SeparationSign::UterusFirmer,
        SeparationSign::BloodGush,
        SeparationSign::UterusRises,
        SeparationSign::CordLengthens,
        SeparationSign::Urge,
    ]);
    let step = select(vec![
        ResponseStep::HelpCalled,
        ResponseStep::HelpArrived,
        ResponseStep::AmbulanceCalled,
        ResponseStep::AmbulanceArrived,
        ResponseStep::UterusMassaged,
        ResponseStep::BladderEmptied,
        ResponseStep::VeinOpened,
        ResponseStep::FluidStarted,
        ResponseStep::CompressionStarted,
        ResponseStep::CompressionEnded,
        ResponseStep::OxygenStarted,
        ResponseStep::BleedingControlled,
        ResponseStep::TransferLeft,
        ResponseStep::TransferArrived,
        ResponseStep::HandedOver,
    ]);
    prop_oneof![
        (baby(), event).prop_map(|(baby, event)| Fact::NewbornEvent { baby, event }),
        perineum().prop_map(Fact::PerineumExamined),
        sign.prop_map(|sign| Fact::SeparationSeen { sign }),
        step.prop_map(|step| Fact::ResponseMarked { step }),
        Just(Fact::ConcernMarked),
        Just(Fact::MomentMarked),
        (1..4_u8, 1..20_u64, any::<u32>())
            .prop_map(|(device, n, after_ms)| Fact::TouchedAgain { entry: id(device, n), after_ms }),
        (0..=1_440_i64).prop_map(|v| Fact::TravelTimeSet { minutes: Minutes::new(v).unwrap() }),
        (text(), text(), option::of(prop_oneof![Just("2026-11-27T10:00".to_owned()), text()]))
            .prop_map(|(when, call, at)| Fact::NextContactPlanned(NextContact { when, call, at })),
        select(LeavingStep::ALL.to_vec()).prop_map(|step| Fact::LeavingMarked { step }),
        Just(Fact::HomeLeft),
        text().prop_map(|text| Fact::AskedFor { text }),
        shared().prop_map(Fact::Shared),
    ]
    .boxed()
}

fn shared() -> BoxedStrategy<Shared> {
    let (what, to) = (select(SharedWhat::ALL.to_vec()), select(SharedTo::ALL.to_vec()));
    (what, to, select(SharedHow::ALL.to_vec()), option::of(text()), option::of(text()))
        .prop_map(|(what, to, how, name, version)| Shared { what, to, how, name, version })
        .boxed()
}

/// An item that exists with an answer that may or may not be one of its own, or an item that does not exist.
fn examined() -> BoxedStrategy<Fact> {
    let item = (any::<Index>(), answer(), any::<Index>(), 0..3_u8).prop_map(|(item, other, option, how)| {
        let item = item.get(&Examination::standard().items);
        let option = || option.get(&item.options).id.clone();
        let own = match item.kind {
            _ if how == 0 => other,
            Kind::Choice => Answer::Choice { option: option() },
            Kind::Choices => Answer::Choices { options: [option()].into() },
            Kind::Pieces | Kind::Coils | Kind::Places => other,
            Kind::Millimetres | Kind::Grams | Kind::Percent => Answer::Measure { value: item.min },
        };
        (item.id.clone(), own)
    });
    let item = prop_oneof![9 => item, 1 => text().prop_map(|item| (item, Answer::CouldNotTell))];
    let fact = (baby(), option::of(baby()), item);
    fact.prop_map(|(placenta, cord, (item, answer))| Fact::Examined { placenta, item, cord, answer }).boxed()
}

fn weights() -> impl Strategy<Value = WeightTable> {
    let row = (20..45_u32, vec(0..3_000_u32, 0..4)).prop_map(|(week, grams)| WeightRow { week, grams });
    let weighed = select(vec![Weighed::Untrimmed, Weighed::Trimmed]);
    (text(), weighed, vec(1..100_u32, 0..4), vec(row, 0..4)).prop_map(|(source, weighed, centiles, rows)| WeightTable {
        source,
        weighed,
        centiles,
        rows,
    })
}

/// Any answer at all.
fn answer() -> impl Strategy<Value = Answer> {
    let place = (-3_500..3_500_i32, -3_500..3_500_i32, option::of(0..400_u32)).prop_map(|(x, y, size)| Place { x, y, size });
    prop_oneof![
        Just(Answer::CouldNotTell),
        Just(Answer::Choice { option: "no such choice".to_owned() }),
        (0..3_000_u32).prop_map(|value| Answer::Measure { value }),
        (vec(any::<u32>(), 0..4), any::<bool>()).prop_map(|(lengths, all)| Answer::Pieces { lengths, all }),
        (any::<u32>(), 0..900_u32).prop_map(|(coils, over)| Answer::Coils { coils, over }),
        vec(place, 0..4).prop_map(|places| Answer::Places { places }),
    ]
}

fn protocol() -> impl Strategy<Value = String> {
    prop_oneof![select(vec!["nice-rcog", "who", "acog-aap"]).prop_map(str::to_owned), text()]
}

/// A state that a field can be in; none is open.
pub fn field() -> BoxedStrategy<(Slot, Option<State>)> {
    let slots: Vec<Slot> = OwnProtocol::default().slots().into_iter().collect();
    let every = (select(slots), 0..4_u8, 0..3_000_u32, text());
    every
        .prop_map(|(slot, how, by, words)| {
            let published = Protocol::published().iter().flat_map(Protocol::numbers).find(|(at, _)| *at == slot);
            let state = match (how, published.map(|(_, state)| state)) {
                (0, _) => None,
                (1, _) if slot.can_be_off() => Some(State::Off),
                (2, Some(State::Step(step))) => {
                    let value = Milli(step.value.0 + i64::from(by));
                    Some(State::Step(Step { value, source: format!("our own {words}"), words, status: Status::Choice, ..step }))
                }
                (_, published) => published,
            };
            (slot, state)
        })
        .boxed()
}

/// A change of a practice's own protocol in fewer fields than this.
pub fn own_change(most: usize) -> BoxedStrategy<OwnChange> {
    let head = (option::of(text()), option::of(text()), option::of(Just("2026-11-25".to_owned())));
    (head, vec(field(), 0..most))
        .prop_map(|((title, edition, checked), fields)| OwnChange {
            title,
            edition,
            checked,
            fields: fields.into_iter().collect(),
        })
        .boxed()
}

fn own() -> impl Strategy<Value = Option<Box<Protocol>>> {
    option::weighted(0.2, select(Protocol::published()).prop_map(Box::new))
}

/// A voice note and what is written up from one; few names, so that they meet.
fn voice() -> BoxedStrategy<Fact> {
    let file = || (0_u8..3).prop_map(|n| FileId([n; 32]));
    let item = (any::<Index>(), any::<u32>())
        .prop_map(|(item, at_ms)| Chapter { item: item.get(&Examination::standard().items).id.clone(), at_ms });
    let note = (option::of(baby()), file(), any::<u32>(), vec(item, 0..4)).prop_map(|(placenta, file, ms, chapters)| VoiceNote {
        placenta,
        file,
        ms,
        media: "audio/webm".to_owned(),
        chapters,
    });
    let written = (file(), text()).prop_map(|(file, text)| WrittenUp { file, text });
    prop_oneof![note.prop_map(Fact::VoiceNoted), written.prop_map(Fact::WrittenUp)].boxed()
}

pub fn fact() -> BoxedStrategy<Fact> {
    let practice = (text(), text(), text(), option::of(protocol()));
    let people = prop_oneof![
        practice.prop_map(|(name, practitioner, role, protocol)| Fact::PracticeDescribed(Practice {
            name,
            practitioner,
            role,
            protocol
        })),
        vec(medicine(), 0..4).prop_map(|medicines| Fact::MedicinesListed { medicines }),
        option::of((text(), option::of(text())))
            .prop_map(|server| Fact::ServerSet { server: server.map(|(address, token)| Server { address, token }) }),
        option::of(1..=100_i64).prop_map(|years| Fact::TermSet { years: years.map(|years| Years::new(years).unwrap()) }),
        any::<bool>().prop_map(|waits| Fact::SendingWaits { birth: super::BIRTH, waits }),
        vec(text(), 0..4).prop_map(|items| Fact::ExaminationOrdered { items }),
        option::of(weights()).prop_map(|table| Fact::PlacentaWeights { table: table.map(Box::new) }),
        (text(), any::<bool>()).prop_map(|(label, rehearsal)| Fact::BirthRegistered { label, rehearsal }),
        client().prop_map(Fact::ClientRecorded),
        (protocol(), own()).prop_map(|(protocol, own)| Fact::ProtocolChosen { protocol, own }),
        (own_change(4), own()).prop_map(|(change, finished)| Fact::OwnProtocolChanged { change, finished }),
        text().prop_map(|text| Fact::Noted { text }),
        (text(), text(), text()).prop_map(|(name, role, version)| Fact::Signed { name, role, version }),
        (text(), text()).prop_map(|(kind, stored)| Fact::Unknown { kind, stored }),
        Just(Fact::Retracted),
    ];
    let stage = prop_oneof![
        select(vec![Care::Physiological, Care::Active]).prop_map(|care| Fact::CareChosen { care }),
        baby().prop_map(|baby| Fact::BabyBorn { baby }),
        baby().prop_map(|baby| Fact::CordPulsationStopped { baby }),
        baby().prop_map(|baby| Fact::CordClamped { baby }),
        baby().prop_map(|baby| Fact::CordCut { baby }),
        babies().prop_map(|babies| Fact::PlacentaBorn { babies }),
        babies().prop_map(|babies| Fact::MembranesBorn { babies }),
    ];
    let after = prop_oneof![
        loss().prop_map(Fact::BloodLoss),
        observation().prop_map(Fact::MotherObserved),
        apgar().prop_map(Fact::ApgarScored),
        measures().prop_map(Fact::NewbornMeasured),
        medicine().prop_map(Fact::MedicineGiven),
        course(),
        examined(),
        voice(),
        photo(),
        photo_measure(),
    ];
    prop_oneof![8 => people, 12 => stage, 8 => after, 4 => phones()].boxed()
}

fn device() -> impl Strategy<Value = DeviceId> {
    (1_u8..5).prop_map(|device| DeviceId([device; 16]))
}

/// What several phones at one birth tell each other.
fn phones() -> BoxedStrategy<Fact> {
    let mark = prop_oneof![
        4 => baby().prop_map(|baby| Fact::BabyBorn { baby }),
        2 => babies().prop_map(|babies| Fact::PlacentaBorn { babies }),
        1 => text().prop_map(|text| Fact::Noted { text }),
    ];
    let told = (1_u8..4, 1_u64..30, mark, moment(0)).prop_map(|(device, n, fact, ago_ms)| Told {
        entry: id(device, n),
        fact: Box::new(fact),
        ago_ms,
    });
    let care = select(vec![None, Some(Care::Physiological), Some(Care::Active)]);
    let joined = (device(), text(), option::of(protocol()), care, vec(told, 0..4));
    let error = prop_oneof![4 => 0..20_000_i64, 1 => any::<i64>()];
    prop_oneof![
        1 => joined.prop_map(|(from, label, protocol, care, told)| Fact::BirthJoined(Joined { from, label, protocol, care, told })),
        2 => (device(), moment(-HOUR), error)
            .prop_map(|(other, ahead_ms, error_ms)| Fact::ClocksCompared(Compared { other, ahead_ms, error_ms })),
        1 => (1_u64..30, any::<bool>()).prop_map(|(n, same)| Fact::SameBirth { other: BirthId(id(2, n)), same }),
    ]
    .boxed()
}

/// Which entry an amendment names.
#[derive(Clone, Debug)]
enum Target {
    None,
    /// One of the set: an earlier one, a later one, or itself.
    Of(Index),
    Missing(u64),
}

type Draft = ((u8, bool, String), (Occurred, Stamp), Fact, Target, String);

fn draft() -> BoxedStrategy<Draft> {
    let target = prop_oneof![3 => Just(Target::None), 2 => any::<Index>().prop_map(Target::Of), 1 => (900_u64..903).prop_map(Target::Missing)];
    let who = (1_u8..4, prop::bool::weighted(0.1), text());
    (who, (occurred(), stamp()), fact(), target, text()).boxed()
}

fn assemble(drafts: Vec<Draft>) -> Vec<Entry> {
    let ids: Vec<EntryId> = (1..).zip(&drafts).map(|(n, ((device, ..), ..))| id(*device, n)).collect();
    let entry = |(own, ((_, other, author), (occurred, recorded), fact, target, reason)): (EntryId, Draft)| {
        let target = match target {
            Target::None => None,
            Target::Of(index) => Some(*index.get(&ids)),
            Target::Missing(n) => Some(id(9, n)),
        };
        let birth = if other { BirthId(id(2, 700)) } else { BIRTH };
        Entry { id: own, birth, author, occurred, recorded, fact, amends: target.map(|entry| Amendment { entry, reason }) }
    };
    ids.iter().copied().zip(drafts).map(entry).collect()
}

/// Entries of three phones, each with an id of its own, some of another birth.
pub fn entries() -> impl Strategy<Value = Vec<Entry>> {
    vec(draft(), 0..24).prop_map(assemble)
}

pub fn entry() -> impl Strategy<Value = Entry> {
    vec(draft(), 1..4).prop_map(|drafts| assemble(drafts).swap_remove(0))
}
