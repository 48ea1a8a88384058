//! One birth as the page draws it.

use secundine_domain::assess::{Blood, Finding};
use secundine_domain::due::Due;
use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{BabyNo, Care, Client, Fact, NextContact};
use secundine_domain::growth::Growth;
use secundine_domain::leaving::LeavingItem;
use secundine_domain::message::Message;
use secundine_domain::protocol::Level;
use secundine_domain::quantity::ItemWeight;
use secundine_domain::time::Certainty;
use serde::Serialize;

use super::{ClockView, ExaminationView, Phase, PhonesView, PhotoView, SignedView, VoiceView};

/// A kind of item that was weighed before, with its weight when dry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct WeighedItem {
    /// What it is called.
    pub item: String,
    /// Weight when dry, g.
    pub dry: ItemWeight,
}

/// Everything about one birth.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BirthView {
    /// Which.
    pub birth: BirthId,
    /// Its band on every screen, 0 to 5; births registered one after the other have different ones.
    pub band: u8,
    /// What tells it from others.
    pub label: String,
    /// A rehearsal, not a birth.
    pub rehearsal: bool,
    /// Local date now, `2026-11-25`.
    pub today: String,
    /// Local time now, `03:12:40`.
    pub clock: String,
    /// Where it stands.
    pub phase: Phase,
    /// The mother.
    pub client: Option<Client>,
    /// Id and title of the protocol in force.
    pub protocol: Option<ProtocolLine>,
    /// How the third stage is cared for.
    pub care: Option<Care>,
    /// From the birth of the last baby to the last placenta.
    pub third_stage: Option<ClockView>,
    /// The babies, in order.
    pub babies: Vec<BabyView>,
    /// Minutes at which an Apgar score is offered of a baby that is not among them.
    pub apgar_offered: Vec<u32>,
    /// The placentas born, each named by its first baby.
    pub placentas: Vec<PlacentaView>,
    /// The next likely marks, likeliest first, at most four.
    pub next: Vec<NextMark>,
    /// Every mark that can be made now, in the order of events.
    pub marks: Vec<NextMark>,
    /// Marks that can be made again, in groups.
    pub groups: Vec<MarkGroup>,
    /// The response when it goes wrong.
    pub emergency: EmergencyView,
    /// Medicines known by name, with what the mother's record has against each.
    pub medicines: Vec<MedicineView>,
    /// Blood, mL.
    pub blood: Blood,
    /// The blood as a share of all that she has, by her weight; none while either is not recorded.
    pub blood_share: Option<Message>,
    /// The blood as it grew; none before a birth.
    pub blood_curve: Option<BloodCurve>,
    /// What is looked through before leaving; empty before a birth.
    pub leaving: Vec<LeavingLine>,
    /// Minutes to the hospital, as recorded last.
    pub travel: Option<u32>,
    /// When and how the family is seen next, as recorded last.
    pub contact: Option<NextContact>,
    /// What is asked of whoever takes over, as written last.
    pub asked_for: Option<String>,
    /// Held against the protocol.
    pub findings: Vec<Finding>,
    /// What comes next.
    pub due: Vec<Due>,
    /// Every entry, in order of time.
    pub timeline: Vec<LineView>,
    /// Whether anything was added after the first signature.
    pub addenda: bool,
    /// The examination, one for each placenta born.
    pub examinations: Vec<ExaminationView>,
    /// Photographs of placentas, in order of time.
    pub photos: Vec<PhotoView>,
    /// Voice notes, in order of time.
    pub voices: Vec<VoiceView>,
    /// How many of them still have to be written up.
    pub to_write_up: u32,
    /// SHA-256 of all entries, hexadecimal: what a signature would sign.
    pub version: String,
    /// Each signature with what was not in it; empty where each covers all that was written before it.
    pub signed: Vec<SignedView>,
    /// Other phones at this birth.
    pub phones: PhonesView,
}

/// The response when it goes wrong.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct EmergencyView {
    /// From its first mark to now or to its end; none before there is one.
    pub since: Option<ClockView>,
    /// Every mark that it has, in the order in which they are offered; each can be made again.
    pub marks: Vec<EmergencyMark>,
    /// The entries that tell what was seen and done from the first mark on, in order of time.
    pub account: Vec<EntryId>,
}

/// A mark of the response, and when it was made.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct EmergencyMark {
    /// What it writes.
    pub fact: Fact,
    /// What stands on the button.
    pub label: Message,
    /// Local times at which it was made.
    pub clocks: Vec<String>,
}

/// The sum of the blood over time, and the protocol's marks on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BloodCurve {
    /// After each amount, in order of time.
    pub points: Vec<BloodPoint>,
    /// Milliseconds from the birth of the last baby to now.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub now_ms: i64,
    /// The protocol's volumes, least first.
    pub marks: Vec<BloodMark>,
}

/// The blood after one amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BloodPoint {
    /// Milliseconds from the birth of the last baby.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub at_ms: i64,
    /// Sum until then, mL.
    pub total: u32,
}

/// A volume at which the protocol has a mark.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BloodMark {
    /// mL.
    pub volume: f64,
    /// How much it asks for attention.
    pub level: Level,
}

/// One item of what is looked through before leaving.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct LeavingLine {
    /// What.
    pub item: LeavingItem,
    /// The same in words.
    pub name: Message,
    /// The baby or placenta, where there are several.
    pub of: Option<BabyNo>,
    /// What is recorded; none where nothing is.
    pub said: Option<Message>,
    /// Local time of it, where it is one moment.
    pub clock: Option<String>,
    /// Whether all is recorded that the item asks for.
    pub recorded: bool,
    /// How much a finding of the protocol asks for attention there.
    pub level: Option<Level>,
}

/// A medicine known by name.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct MedicineView {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Whether it makes the uterus contract.
    pub uterotonic: bool,
    /// Cautions, never blocks.
    pub cautions: Vec<CautionView>,
}

/// A caution for one mother and one medicine.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct CautionView {
    /// What the record says.
    pub message: Message,
    /// Where the caution comes from.
    pub source: String,
    /// How well that was checked, in words.
    pub status: Message,
}

/// A protocol in one line.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ProtocolLine {
    /// Id.
    pub id: String,
    /// Title.
    pub title: String,
    /// Edition.
    pub edition: String,
}

/// A baby and its cord.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BabyView {
    /// Counted from 1.
    pub baby: BabyNo,
    /// How long the cord pulsed, or has pulsed.
    pub cord: Option<ClockView>,
    /// Birth.
    pub born: Option<MarkView>,
    /// End of cord pulsation.
    pub pulsation_stopped: Option<MarkView>,
    /// Cord clamped.
    pub clamped: Option<MarkView>,
    /// Cord cut.
    pub cut: Option<MarkView>,
    /// Minutes at which an Apgar score is on record.
    pub apgar_minutes: Vec<u32>,
    /// Minutes at which one is offered.
    pub apgar_offered: Vec<u32>,
    /// The latest of each that was measured or seen of it; none before anything was.
    pub seen: Option<Message>,
    /// The centiles of its size at birth, or why there are none; empty before its size is on record.
    pub growth: Vec<Growth>,
}

/// A placenta and its membranes.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct PlacentaView {
    /// The babies that it fed; the first names it.
    pub babies: Vec<BabyNo>,
    /// Birth of the placenta.
    pub born: Option<MarkView>,
    /// Birth of the membranes.
    pub membranes: Option<MarkView>,
}

/// A moment on record.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct MarkView {
    /// The entry, as first written.
    pub entry: EntryId,
    /// Local time.
    pub clock: String,
    /// Since the birth of this baby, `m:ss`; empty for the birth itself.
    pub since_birth: String,
    /// How well that is known.
    pub certainty: Certainty,
}

/// A mark that can be made with one touch.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct NextMark {
    /// What it writes.
    pub fact: Fact,
    /// What stands on the button.
    pub label: Message,
}

/// Marks under a heading of their own.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct MarkGroup {
    /// The heading.
    pub title: Message,
    /// The marks, in the order in which they are offered.
    pub marks: Vec<NextMark>,
}

/// One entry with what became of it.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct LineView {
    /// The entry, as first written.
    pub entry: EntryId,
    /// Local date on which it happened.
    pub date: String,
    /// Local time at which it happened.
    pub clock: String,
    /// The time of it by the clock that the birth is told by, where another phone's clock said so much else that it matters.
    pub common: Option<Message>,
    /// Since the first birth, `m:ss`; none before there is one.
    pub since_birth: Option<String>,
    /// What, as it stands now.
    pub message: Message,
    /// The fact as it stands now, to begin a correction from.
    pub fact: Fact,
    /// Who wrote it.
    pub author: String,
    /// Local date and time of writing, where that differs from the moment itself by a minute or more.
    pub written: Option<String>,
    /// Typed and guessed.
    pub estimated: bool,
    /// Written so long after it happened that the protocol calls it late.
    pub late: bool,
    /// First written after the first signature; signatures themselves are not meant.
    pub after_signing: bool,
    /// Taken out of the chart.
    pub retracted: bool,
    /// Earlier forms, oldest first.
    pub earlier: Vec<EarlierView>,
    /// What is odd about it.
    pub oddities: Vec<Message>,
    /// Touches that came again too soon to be marks of their own.
    pub again: Vec<Message>,
    /// A moment that still has to be named.
    pub unnamed: bool,
}

/// An earlier form of an entry, and why it was left.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct EarlierView {
    /// Local time as it stood.
    pub clock: String,
    /// What, as it stood.
    pub message: Message,
    /// Who changed it.
    pub changed_by: String,
    /// Local date and time of the change.
    pub changed: String,
    /// Why.
    pub reason: String,
}
