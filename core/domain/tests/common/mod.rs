//! A phone with clocks that a test may wind, and short names for facts.

#![allow(dead_code, reason = "each test file uses its own part")]

pub mod arbitrary;

use secundine_domain::chart::{Chart, Odd, fold_with};
use secundine_domain::entry::{Amendment, BirthId, DeviceId, Entry, EntryId};
use secundine_domain::fact::{Answer, Apgar, BabyNo, Care, Compared, Fact, Loss, Medicine, MotherObservation};
use secundine_domain::protocol::Protocol;
use secundine_domain::quantity::{ApgarPart, HeartRate, ItemWeight, Minutes, Pressure, Volume};
use secundine_domain::time::{Boot, Certainty, Elapsed, Occurred, Precision, Run, Stamp};

/// 2026-11-25 02:40:00 UTC.
pub const START: i64 = 1_795_574_400_000;
pub const SECOND: i64 = 1_000;
pub const MINUTE: i64 = 60 * SECOND;
pub const HOUR: i64 = 60 * MINUTE;

/// The birth that the tests are about: opened by the first entry of device 1.
pub const BIRTH: BirthId = BirthId(EntryId { device: DeviceId([1; 16]), n: 1 });

pub fn id(device: u8, n: u64) -> EntryId {
    EntryId { device: DeviceId([device; 16]), n }
}

/// One phone: what it has written, and what its clocks say.
#[derive(Clone)]
pub struct Phone {
    pub entries: Vec<Entry>,
    /// What it has kept of the runs of its clock.
    pub runs: Vec<Run>,
    /// Time since the start as it truly passed, ms.
    pub true_ms: i64,
    /// The same at each entry.
    pub truth: Vec<i64>,
    /// Whether it has a clock that runs through suspend.
    pub running_clock: bool,
    device: u8,
    author: &'static str,
    wall_ms: i64,
    offset_min: i32,
    boot: u32,
    since_ms: i64,
}

impl Phone {
    /// The first phone of the birth; its entry 1 opens the chart.
    pub fn first() -> Self {
        Self::opened(true)
    }

    /// The same, with or without a clock that runs through suspend.
    pub fn opened(running_clock: bool) -> Self {
        let mut phone = Self { running_clock, ..Self::numbered(1, "Ada") };
        phone.mark(Fact::BirthRegistered { label: "Rosa".to_owned(), rehearsal: false });
        phone
    }

    pub fn numbered(device: u8, author: &'static str) -> Self {
        let since_ms = 5_000_000 * i64::from(device);
        Self {
            entries: Vec::new(),
            runs: Vec::new(),
            true_ms: 0,
            truth: Vec::new(),
            running_clock: true,
            device,
            author,
            wall_ms: START,
            offset_min: 60,
            boot: 1,
            since_ms,
        }
    }

    pub fn pass(&mut self, ms: i64) -> &mut Self {
        self.true_ms += ms;
        self.wall_ms += ms;
        self.since_ms += ms;
        self
    }

    /// Somebody, or the network, sets the wall clock.
    pub fn set_wall(&mut self, by_ms: i64) -> &mut Self {
        self.wall_ms += by_ms;
        self
    }

    pub fn set_offset(&mut self, offset_min: i32) -> &mut Self {
        self.offset_min = offset_min;
        self
    }

    /// Keeps this moment as the last of its run.
    pub fn beat(&mut self) -> &mut Self {
        self.runs.extend(self.now().run());
        self
    }

    /// By how much the wall clock is wrong, against the start.
    pub fn wrong_ms(&self) -> i64 {
        self.wall_ms - START - self.true_ms
    }

    /// Off and on again, which takes so long, 20 s or more.
    pub fn restart(&mut self, takes_ms: i64) -> &mut Self {
        self.true_ms += takes_ms;
        self.wall_ms += takes_ms;
        self.boot += 1;
        self.since_ms = 20 * SECOND;
        self
    }

    pub fn now(&self) -> Stamp {
        let boot = Boot { id: format!("{}-{}", self.device, self.boot), since_ms: self.since_ms };
        let boot = Some(boot).filter(|_| self.running_clock);
        Stamp { wall_ms: self.wall_ms, offset_min: self.offset_min, zone: None, boot }
    }

    /// Writes down what happens at this moment.
    pub fn mark(&mut self, fact: Fact) -> EntryId {
        self.write(Occurred::Marked(self.now()), fact, None)
    }

    /// Writes down what happened at a time that is typed, UTC.
    pub fn typed(&mut self, wall_ms: i64, fact: Fact) -> EntryId {
        self.write(self.typed_at(wall_ms), fact, None)
    }

    /// Puts an entry right, keeping its time.
    pub fn correct(&mut self, entry: EntryId, fact: Fact) -> EntryId {
        let earlier = self.entries.iter().find(|known| known.id == entry).map(|known| known.occurred.clone());
        let occurred = earlier.unwrap_or_else(|| Occurred::Marked(self.now()));
        self.write(occurred, fact, Some(entry))
    }

    /// Puts the time of an entry right.
    pub fn correct_to(&mut self, entry: EntryId, wall_ms: i64, fact: Fact) -> EntryId {
        self.write(self.typed_at(wall_ms), fact, Some(entry))
    }

    pub fn retract(&mut self, entry: EntryId) -> EntryId {
        self.correct(entry, Fact::Retracted)
    }

    /// The chart of what this phone has written and kept.
    pub fn chart(&self) -> Chart {
        fold_with(BIRTH, &self.entries, &self.runs)
    }

    fn typed_at(&self, wall_ms: i64) -> Occurred {
        Occurred::Typed { wall_ms, offset_min: self.offset_min, precision: Precision::Exact }
    }

    fn write(&mut self, occurred: Occurred, fact: Fact, amends: Option<EntryId>) -> EntryId {
        let id = id(self.device, self.entries.len() as u64 + 1);
        let amends = amends.map(|entry| Amendment { entry, reason: "read again".to_owned() });
        let author = self.author.to_owned();
        self.truth.push(self.true_ms);
        self.entries.push(Entry { id, birth: BIRTH, author, occurred, recorded: self.now(), fact, amends });
        id
    }
}

/// The other phone's clock, so far ahead of the one that writes.
pub fn compared(other: u8, ahead_ms: i64, error_ms: i64) -> Fact {
    Fact::ClocksCompared(Compared { other: DeviceId([other; 16]), ahead_ms, error_ms })
}

pub fn born(baby: BabyNo) -> Fact {
    Fact::BabyBorn { baby }
}

pub fn clamped(baby: BabyNo) -> Fact {
    Fact::CordClamped { baby }
}

pub fn cut(baby: BabyNo) -> Fact {
    Fact::CordCut { baby }
}

pub fn placenta(babies: &[BabyNo]) -> Fact {
    Fact::PlacentaBorn { babies: babies.to_vec() }
}

pub fn membranes(babies: &[BabyNo]) -> Fact {
    Fact::MembranesBorn { babies: babies.to_vec() }
}

pub fn care(care: Care) -> Fact {
    Fact::CareChosen { care }
}

pub fn oxytocin() -> Medicine {
    let [name, dose, route] = ["oxytocin", "10 IU", "IM"].map(str::to_owned);
    Medicine { name, dose, route, uterotonic: true, ..Medicine::default() }
}

pub fn jug(ml: i64) -> Fact {
    Fact::BloodLoss(Loss::Jug { volume: Volume::new(ml).unwrap() })
}

pub fn seen(ml: i64) -> Fact {
    Fact::BloodLoss(Loss::Seen { volume: Volume::new(ml).unwrap() })
}

pub fn pad(gross: i64, dry: i64) -> Fact {
    let (gross, dry) = (ItemWeight::new(gross).unwrap(), ItemWeight::new(dry).unwrap());
    Fact::BloodLoss(Loss::Weighed { item: "pad".to_owned(), gross, dry })
}

pub fn look(pulse: i64, systolic: i64) -> Fact {
    let (pulse, systolic) = (HeartRate::new(pulse).ok(), Pressure::new(systolic).ok());
    Fact::MotherObserved(MotherObservation { pulse, systolic, ..MotherObservation::default() })
}

pub fn chose(item: &str, option: &str) -> Fact {
    examined(item, Answer::Choice { option: option.to_owned() })
}

pub fn examined(item: &str, answer: Answer) -> Fact {
    Fact::Examined { placenta: 1, item: item.to_owned(), cord: None, answer }
}

pub fn pieces(lengths: &[u32], all: bool) -> Answer {
    Answer::Pieces { lengths: lengths.to_vec(), all }
}

pub fn apgar(baby: BabyNo) -> Fact {
    let two = ApgarPart::new(2).unwrap();
    let minute = Minutes::new(5).unwrap();
    Fact::ApgarScored(Apgar { baby, minute, colour: two, heart_rate: two, reflex: two, tone: two, breathing: two })
}

pub fn protocol(id: &str) -> &'static Protocol {
    Protocol::find(id).unwrap()
}

/// What is odd about an entry.
pub fn odd(chart: &Chart, entry: EntryId) -> Vec<Odd> {
    chart.oddities.iter().filter(|oddity| oddity.entry == entry).map(|oddity| oddity.what).collect()
}

/// Milliseconds as a duration is written.
pub fn clock(ms: i64) -> String {
    Elapsed { ms, certainty: Certainty::Measured, least_ms: None, error_ms: 0 }.clock()
}

/// The ids of the lines, in their order.
pub fn order(chart: &Chart) -> Vec<EntryId> {
    chart.lines.iter().map(|line| line.first.id).collect()
}

/// The kind of a fact as stored. A new kind does not compile until it is named here; `stored_form.rs` then asks for its
/// fixture and `laws.rs` for its place among the facts that are drawn.
pub fn kind(fact: &Fact) -> &'static str {
    match fact {
        Fact::PracticeDescribed(_) => "practice_described",
        Fact::OwnProtocolChanged { .. } => "own_protocol_changed",
        Fact::ServerSet { .. } => "server_set",
        Fact::TermSet { .. } => "term_set",
        Fact::SendingWaits { .. } => "sending_waits",
        Fact::MedicinesListed { .. } => "medicines_listed",
        Fact::ExaminationOrdered { .. } => "examination_ordered",
        Fact::PlacentaWeights { .. } => "placenta_weights",
        Fact::BirthRegistered { .. } => "birth_registered",
        Fact::ClientRecorded(_) => "client_recorded",
        Fact::ProtocolChosen { .. } => "protocol_chosen",
        Fact::CareChosen { .. } => "care_chosen",
        Fact::BabyBorn { .. } => "baby_born",
        Fact::CordPulsationStopped { .. } => "cord_pulsation_stopped",
        Fact::CordClamped { .. } => "cord_clamped",
        Fact::CordCut { .. } => "cord_cut",
        Fact::PlacentaBorn { .. } => "placenta_born",
        Fact::MembranesBorn { .. } => "membranes_born",
        Fact::BloodLoss(_) => "blood_loss",
        Fact::MotherObserved(_) => "mother_observed",
        Fact::ApgarScored(_) => "apgar_scored",
        Fact::NewbornMeasured(_) => "newborn_measured",
        Fact::MedicineGiven(_) => "medicine_given",
        Fact::NewbornEvent { .. } => "newborn_event",
        Fact::PerineumExamined(_) => "perineum_examined",
        Fact::SeparationSeen { .. } => "separation_seen",
        Fact::ResponseMarked { .. } => "response_marked",
        Fact::ConcernMarked => "concern_marked",
        Fact::MomentMarked => "moment_marked",
        Fact::TouchedAgain { .. } => "touched_again",
        Fact::TravelTimeSet { .. } => "travel_time_set",
        Fact::NextContactPlanned(_) => "next_contact_planned",
        Fact::LeavingMarked { .. } => "leaving_marked",
        Fact::HomeLeft => "home_left",
        Fact::AskedFor { .. } => "asked_for",
        Fact::Shared(_) => "shared",
        Fact::Examined { .. } => "examined",
        Fact::PhotoMeasured(_) => "photo_measured",
        Fact::PhotoTaken(_) => "photo_taken",
        Fact::Noted { .. } => "noted",
        Fact::VoiceNoted(_) => "voice_noted",
        Fact::WrittenUp(_) => "written_up",
        Fact::BirthJoined(_) => "birth_joined",
        Fact::ClocksCompared(_) => "clocks_compared",
        Fact::SameBirth { .. } => "same_birth",
        Fact::Retracted => "retracted",
        Fact::Signed { .. } => "signed",
        Fact::Unknown { .. } => "unknown",
    }
}

/// Every kind that the program reads, as its own reader lists them when it meets another.
pub fn kinds() -> Vec<String> {
    let refusal = serde_json::from_str::<Fact>(r#"{"kind":"?"}"#).unwrap_err().to_string();
    refusal.split('`').skip(3).step_by(2).map(str::to_owned).collect()
}
