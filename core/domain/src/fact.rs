//! What can be written down. A new kind is one variant here, one arm in [`Fact::describe`], and its words in the catalogue.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use crate::entry::{BirthId, EntryId};
use crate::examination::WeightTable;
use crate::file::FileId;
use crate::message::{Arg, Message};
use crate::protocol::{OwnChange, Protocol};
use crate::quantity::{BodyWeight, Count, Gestation, Length, Minutes, Years};

mod answer;
mod describe;
mod leaving;
mod loss;
mod medicine;
mod mother;
mod newborn;
mod phones;
mod photo;
mod response;
mod shared;
mod voice;

pub use answer::{Answer, Place};
pub use describe::{all_of, care_words, code, condition_words, of_cord};
pub use leaving::{LeavingStep, NextContact};
pub use loss::Loss;
pub use medicine::Medicine;
pub use mother::{
    AlsoTorn, Bladder, Bleeding, Consciousness, FundalPosition, Fundus, MotherObservation, Perineum, RectalExamination, Repair,
    Tear,
};
pub use newborn::{Apgar, Breathing, NewbornEvent, NewbornMeasures, Sex};
pub use phones::{Compared, Joined, Told};
pub use photo::{Photo, PhotoMeasure};
pub use response::{ResponseStep, SeparationSign};
pub use shared::{Server, Shared, SharedHow, SharedTo, SharedWhat};
pub use voice::{Chapter, VoiceNote, WrittenUp};

/// A baby of this birth, counted from 1 in the order of birth.
pub type BabyNo = u8;

/// One thing that was seen, done or measured.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "kind", content = "data", rename_all = "snake_case")]
pub enum Fact {
    /// The practice and the person who works with this phone.
    PracticeDescribed(Practice),
    /// The practice's own protocol was changed.
    OwnProtocolChanged {
        /// What was put in place of what stood there.
        change: OwnChange,
        /// What it came to, where it was finished then.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "types", ts(optional))]
        finished: Option<Box<Protocol>>,
    },
    /// The medicines that this practice gives, as it usually gives them: the whole list, in the order in which it is offered.
    MedicinesListed {
        /// Each with name, dose and route; nothing else of it is used.
        medicines: Vec<Medicine>,
    },
    /// Where records are sent: the last holds.
    ServerSet {
        /// The server; none once it was taken away.
        server: Option<Server>,
    },
    /// How long the practice means to keep a birth: the last holds. Nothing is ever erased by it.
    TermSet {
        /// Years from the birth; none where the practice sets no term.
        years: Option<Years>,
    },
    /// A birth waits to be sent to the server, or no longer: the last holds. Of the practice, so that the birth's own entries are the
    /// same before and after somebody asked.
    SendingWaits {
        /// Which birth.
        birth: BirthId,
        /// Whether it waits.
        waits: bool,
    },
    /// Opens a chart.
    BirthRegistered {
        /// What tells this birth from others until there is a name.
        label: String,
        /// A drill or a demonstration, not a birth.
        rehearsal: bool,
    },
    /// The mother.
    ClientRecorded(Client),
    /// The protocol whose limits are watched at this birth.
    ProtocolChosen {
        /// Id of the protocol.
        protocol: String,
        /// The practice's own protocol as it was then, so that what was found by it stays found by it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "types", ts(optional))]
        own: Option<Box<Protocol>>,
    },
    /// How the third stage is cared for.
    CareChosen {
        /// Physiological or active.
        care: Care,
    },
    /// A baby is born: the third stage begins with the last one.
    BabyBorn {
        /// Which.
        baby: BabyNo,
    },
    /// The cord no longer pulses.
    CordPulsationStopped {
        /// Which baby's.
        baby: BabyNo,
    },
    /// The cord is clamped.
    CordClamped {
        /// Which baby's.
        baby: BabyNo,
    },
    /// The cord is cut.
    CordCut {
        /// Which baby's.
        baby: BabyNo,
    },
    /// A placenta is born.
    PlacentaBorn {
        /// The babies that it fed: one, or more for a fused disc.
        babies: Vec<BabyNo>,
    },
    /// The membranes are born, with or after their placenta.
    MembranesBorn {
        /// The babies of that placenta.
        babies: Vec<BabyNo>,
    },
    /// Blood, measured or judged by eye.
    BloodLoss(Loss),
    /// A look at the mother.
    MotherObserved(MotherObservation),
    /// The five parts of the Apgar score.
    ApgarScored(Apgar),
    /// Measures of a baby.
    NewbornMeasured(NewbornMeasures),
    /// A medicine was given.
    MedicineGiven(Medicine),
    /// A baby was laid skin to skin, fed, or the like.
    NewbornEvent {
        /// Which baby.
        baby: BabyNo,
        /// What.
        event: NewbornEvent,
    },
    /// The perineum was looked at.
    PerineumExamined(Perineum),
    /// A sign that the placenta may have separated.
    SeparationSeen {
        /// Which.
        sign: SeparationSign,
    },
    /// A step of the response when it goes wrong.
    ResponseMarked {
        /// Which.
        step: ResponseStep,
    },
    /// The author is concerned, whatever the numbers say: no time limit is waited for.
    ConcernMarked,
    /// How long it takes from this home to the hospital.
    TravelTimeSet {
        /// Minutes.
        minutes: Minutes,
    },
    /// When and how the family is seen next, and whom they call until then.
    NextContactPlanned(NextContact),
    /// Something that is seen to before the author leaves.
    LeavingMarked {
        /// What.
        step: LeavingStep,
    },
    /// The author left the home.
    HomeLeft,
    /// What the author asks of whoever takes over: the last holds, and an empty text asks for nothing.
    AskedFor {
        /// In the author's own words.
        text: String,
    },
    /// Something was given out of hand.
    Shared(Shared),
    /// An item of the examination was answered.
    Examined {
        /// The placenta, named by its first baby.
        placenta: BabyNo,
        /// Id of the item in `examination.toml`.
        item: String,
        /// Whose cord, where one disc fed several babies and the item is about a cord.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "types", ts(optional))]
        cord: Option<BabyNo>,
        /// What was found.
        answer: Answer,
    },
    /// The practice's table of placental weights; in a birth's chart, the one that a weight is held against there.
    PlacentaWeights {
        /// The whole table; none once it was taken away.
        table: Option<Box<WeightTable>>,
    },
    /// The order in which this practice examines: ids of items, those not named after the one that they follow in the usual order.
    ExaminationOrdered {
        /// In order; empty for the usual order.
        items: Vec<String>,
    },
    /// A photograph was taken of a placenta.
    PhotoTaken(Photo),
    /// The disc of a placenta was measured on a photograph.
    PhotoMeasured(Box<PhotoMeasure>),
    /// Words of the author's own.
    Noted {
        /// What they say.
        text: String,
    },
    /// A moment that is named later, by putting it right.
    MomentMarked,
    /// The button of a mark was touched once more, too soon after it to be a mark of its own.
    TouchedAgain {
        /// The mark, as first written.
        entry: EntryId,
        /// Milliseconds from its touch to this one.
        after_ms: u32,
    },
    /// Words were spoken and kept, to be written up later.
    VoiceNoted(VoiceNote),
    /// A voice note was written up.
    WrittenUp(WrittenUp),
    /// This phone goes on with a birth that another one knows.
    BirthJoined(Joined),
    /// The clocks of two phones were compared.
    ClocksCompared(Compared),
    /// Whether this birth and another one of the practice are the same: the last holds.
    SameBirth {
        /// The other.
        other: BirthId,
        /// Whether they are.
        same: bool,
    },
    /// Takes the amended entry out of the chart; it stays readable.
    Retracted,
    /// The author stands by the record as it was at this moment.
    Signed {
        /// Name as printed.
        name: String,
        /// Role, such as midwife.
        role: String,
        /// SHA-256 of the entries signed, hexadecimal.
        version: String,
    },
    /// A fact that this version of the program does not know: kept whole, shown as unknown.
    Unknown {
        /// Its kind, as stored.
        kind: String,
        /// Its stored form.
        stored: String,
    },
}

/// The practice and the person who works with this phone.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Practice {
    /// Name of the practice.
    pub name: String,
    /// Name of the practitioner, as it should be printed.
    pub practitioner: String,
    /// Role, such as midwife or student midwife.
    pub role: String,
    /// The protocol that new births begin with; none until somebody chooses.
    pub protocol: Option<String>,
}

/// The mother, as far as the record needs her.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Client {
    /// Name.
    pub name: String,
    /// Date of birth, `1994-05-17`.
    pub born: Option<String>,
    /// Gestation at the birth, days.
    pub gestation: Option<Gestation>,
    /// Pregnancies, this one counted.
    pub gravida: Option<Count>,
    /// Births before this one.
    pub para: Option<Count>,
    /// Blood group and Rh factor as written.
    pub blood_group: Option<String>,
    /// Allergies as told; an empty text is "none known", none at all is "not asked".
    pub allergies: Option<String>,
    /// Weight at booking, hundreds of grams.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub weight: Option<BodyWeight>,
    /// Height, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub height: Option<Length>,
    /// Conditions that some medicines are a caution with; an empty set is "none known", none at all is "not asked".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub conditions: Option<BTreeSet<Condition>>,
    /// Rh factor D.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub rhd: Option<RhD>,
}

/// A condition of the mother that some medicines are a caution with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Condition {
    /// High blood pressure, also of pregnancy.
    Hypertension,
    /// Asthma.
    Asthma,
}

/// Rh factor D.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum RhD {
    /// Negative.
    Negative,
    /// Positive.
    Positive,
}

/// How the third stage is cared for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Care {
    /// No routine uterotonic; the mother's own effort. Components as NICE has them.
    Physiological,
    /// Routine uterotonic, deferred clamping, controlled cord traction.
    Active,
}

/// A number that is possible by itself but not in this fact.
#[derive(Clone, Debug, PartialEq)]
pub struct Impossible(pub Message);

impl Fact {
    /// Whether the parts fit together.
    ///
    /// # Errors
    /// [`Impossible`] says what does not fit and what to do.
    pub fn check(&self) -> Result<(), Impossible> {
        match self {
            Self::BloodLoss(Loss::Weighed { gross, dry, .. }) if gross < dry => {
                let message = Message::new("impossible-dry-weight").with("gross", gross.get()).with("dry", dry.get());
                Err(Impossible(message))
            }
            Self::MotherObserved(MotherObservation { systolic: Some(systolic), diastolic: Some(diastolic), .. })
                if systolic < diastolic =>
            {
                let message =
                    Message::new("impossible-pressure").with("systolic", systolic.get()).with("diastolic", diastolic.get());
                Err(Impossible(message))
            }
            Self::MotherObserved(observation) if *observation == MotherObservation::default() => {
                Err(Impossible(Message::new("impossible-nothing-observed")))
            }
            Self::BirthRegistered { label, .. } if label.trim().is_empty() => {
                Err(Impossible(Message::new("impossible-no-label")))
            }
            Self::Noted { text } if text.trim().is_empty() => Err(Impossible(Message::new("impossible-empty-note"))),
            Self::MedicinesListed { medicines } if medicines.iter().any(|medicine| medicine.name.trim().is_empty()) => {
                Err(Impossible(Message::new("impossible-no-medicine")))
            }
            Self::MedicineGiven(medicine) if medicine.name.trim().is_empty() => {
                Err(Impossible(Message::new("impossible-no-medicine")))
            }
            Self::PlacentaBorn { babies } | Self::MembranesBorn { babies } if babies.is_empty() => {
                Err(Impossible(Message::new("impossible-no-baby")))
            }
            Self::NewbornMeasured(measures) if *measures == NewbornMeasures::nothing(measures.baby) => {
                Err(Impossible(Message::new("impossible-nothing-observed")))
            }
            Self::NextContactPlanned(contact) if contact.at.is_some() && contact.moment().is_none() => {
                Err(Impossible(Message::new("error-no-time")))
            }
            Self::NextContactPlanned(contact) if contact.words().is_none() && contact.call.trim().is_empty() => {
                Err(Impossible(Message::new("impossible-empty-note")))
            }
            Self::VoiceNoted(note) => note.problem().map_or(Ok(()), |problem| Err(Impossible(problem))),
            Self::OwnProtocolChanged { change, .. } => change.problem().map_or(Ok(()), |problem| Err(Impossible(problem))),
            Self::Unknown { .. } => Err(Impossible(Message::new("impossible-unknown"))),
            _ => Ok(()),
        }
    }
}

impl Fact {
    /// Whether it is a moment of the birth itself, which carries no words.
    #[must_use]
    pub const fn is_mark(&self) -> bool {
        matches!(
            self,
            Self::BabyBorn { .. }
                | Self::CordPulsationStopped { .. }
                | Self::CordClamped { .. }
                | Self::CordCut { .. }
                | Self::PlacentaBorn { .. }
                | Self::MembranesBorn { .. }
        )
    }

    /// The files that it names. One that no fact names is of no use and does no harm.
    #[must_use]
    pub fn files(&self) -> Vec<FileId> {
        match self {
            Self::PhotoTaken(photo) => vec![photo.file, photo.small],
            Self::VoiceNoted(note) => vec![note.file],
            Self::PhotoMeasured(measure) => vec![measure.file],
            _ => Vec::new(),
        }
    }
}

impl From<BabyNo> for Arg {
    fn from(value: BabyNo) -> Self {
        Self::Number(f64::from(value))
    }
}
