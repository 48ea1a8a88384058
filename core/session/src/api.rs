//! What can be asked of the core, and what it answers. One variant of [`Response`] for each of [`Request`], by the same name.

use secundine_domain::entry::BirthId;
use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_domain::time::Certainty;
use serde::Serialize;

mod before;
mod birth;
mod examination;
mod files;
mod handover;
mod keeping;
mod locked;
mod outgoing;
mod own;
mod phones;
mod photos;
mod request;
mod response;
mod sending;
mod sketch;
mod sync;
mod verify;
mod voice;

pub use before::{DeviceTold, Standing, Thing, ThingView};
pub use birth::{
    BabyView, BirthView, BloodCurve, BloodMark, BloodPoint, CautionView, EarlierView, EmergencyMark, EmergencyView, LeavingLine,
    LineView, MarkGroup, MarkView, MedicineView, NextMark, PlacentaView, ProtocolLine, WeighedItem,
};
pub use examination::{ExaminationView, ExaminingView, ItemView, OptionView};
pub use files::{FileBytes, FileKind, KeptFile, KeptPicture};
pub use handover::{HandoverCode, HandoverGroup, HandoverLine, HandoverPart, HandoverView};
pub use keeping::{
    BackupLine, BackupMade, BackupState, BackupsView, KeysView, QrView, RecoveryView, RestoredView, SalvageView, Slot,
};
pub use locked::{DrainedView, LockedCord, LockedLine, LockedMark, LockedView};
pub use outgoing::Outgoing;
pub use own::{ImportView, OwnField, OwnGroup, OwnLine, OwnOffer, OwnSave, OwnState, OwnView};
pub use phones::{AlikeView, CodeRead, CodeTaken, CodeView, ComparedLine, PhonesView, SignedView};
pub use photos::{MeasureView, MeasuredView, OfferView, PhotoView};
pub use request::{At, RehearsalMode, Request, ScenarioName, Signer};
pub use response::Response;
pub use secundine_domain::picture::{
    ChartPicture, PictureLane, PictureLimit, PicturePoint, PictureReading, PictureRow, PictureSeries, Shape, Span,
};
pub use sending::{FailureView, SendingState, SendingView, ServerView, TakenView, TriedView};
pub use sketch::{PlaceItem, SketchView};
pub use sync::{
    ErasureView, HeldView, MemberView, PlaceTried, PlaceView, SyncCode, SyncCodeRead, SyncRole, SyncState, SyncTime, SyncView,
    TroubleView, TypedPlace,
};
pub use verify::VerifyView;
pub use voice::{ChapterView, VoiceView, WaitingNote, WrittenView};

/// How things stand.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct StatusView {
    /// None, without its keys, locked or open.
    pub door: Door,
    /// The practice, when open.
    pub practice: Option<Practice>,
    /// Who writes in place of the practitioner, while somebody does.
    pub scribe: Option<String>,
    /// The rehearsal, if one runs.
    pub rehearsal: Option<RehearsalView>,
    /// What was marked since it was locked, when locked.
    pub locked: Option<LockedView>,
    /// What was brought in from the time it was locked: only in the answer to unlocking, where there was anything.
    pub drained: Option<DrainedView>,
    /// Nobody had touched for a while: the names are hidden, and only births whose third stage ran then can be worked with.
    pub names_hidden: bool,
    /// What was read of a damaged store, which is open to be read only; also in the answer to a salvage.
    pub salvage: Option<SalvageView>,
    /// Whether nothing can be written, since the store is damaged.
    pub read_only: bool,
    /// Whether the disk is full, and entries are written with the room that was kept for them.
    pub low_space: bool,
    /// Entries that were kept elsewhere and come into their charts at the next unlocking.
    pub elsewhere: u32,
    /// Whether the key store of this device's system opens the practice.
    pub device_key: bool,
    /// Version of the program.
    pub version: String,
}

/// Whether the practice can be worked with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Door {
    /// Nothing is here yet.
    NoPractice,
    /// A practice is here, and both its key files are missing: only a backup brings it back. Founding anew keeps its
    /// database under another name.
    KeysMissing,
    /// A passphrase is needed.
    Locked,
    /// Open.
    Open,
}

/// A running rehearsal.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct RehearsalView {
    /// The scenario's name.
    pub scenario: Message,
    /// How fast its clock runs.
    pub speed: u32,
    /// How it is played.
    pub mode: RehearsalMode,
    /// What happens at the moment, newest last.
    pub cues: Vec<Message>,
    /// Whether the script is at its end.
    pub ended: bool,
    /// The birth that the script records, once there is one.
    pub birth: Option<BirthId>,
}

/// A birth in the list.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct BirthLine {
    /// Which.
    pub birth: BirthId,
    /// Its band on every screen, 0 to 5; births registered one after the other have different ones.
    pub band: u8,
    /// What tells it from others.
    pub label: String,
    /// Name of the mother, once recorded.
    pub client: Option<String>,
    /// Local date of the first entry, `2026-11-25`.
    pub date: String,
    /// Local time of the first baby's birth.
    pub born: Option<String>,
    /// Where it stands.
    pub phase: Phase,
    /// A rehearsal, not a birth.
    pub rehearsal: bool,
    /// The third stage, running or ended.
    pub third_stage: Option<ClockView>,
    /// Voice notes that still have to be written up.
    pub to_write_up: u32,
    /// Older than the practice means to keep its records; it stays all the same.
    pub past_term: bool,
}

/// Where a birth stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Phase {
    /// No baby is born.
    Waiting,
    /// A placenta is awaited.
    ThirdStage,
    /// All placentas are born.
    AfterPlacenta,
    /// Signed, and nothing written since.
    Signed,
}

/// A clock: draw `elapsed_ms` plus the time since this answer came, while it runs.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ClockView {
    /// Milliseconds from its start to now or to its end.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub elapsed_ms: i64,
    /// The same as `m:ss` or `h:mm:ss`.
    pub text: String,
    /// Whether it still runs.
    pub running: bool,
    /// How fast it runs: 1, or more in a rehearsal.
    pub speed: u32,
    /// How well it is known.
    pub certainty: Certainty,
}

/// Why a request was not done. Codes and numbers only: nothing of a client's data.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ApiError {
    /// What kind of failure.
    pub code: ErrorCode,
    /// What was wrong and what to do, in words.
    pub message: Message,
}

/// Kinds of failure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ErrorCode {
    /// The practice is locked.
    Locked,
    /// There is a practice here already.
    AlreadyThere,
    /// There is no practice here.
    NoPractice,
    /// The passphrase does not fit.
    WrongPassphrase,
    /// After several wrong tries in a row the next one has to wait.
    Wait,
    /// A key file is missing or damaged.
    DamagedKey,
    /// The key store of this device's system does not open the practice; the passphrase does.
    Device,
    /// The system could not read the files just now; whether they are damaged is not known.
    NotRead,
    /// The store is damaged.
    DamagedStore,
    /// The store was written by a later version.
    NewerStore,
    /// Another window has the store open.
    InUse,
    /// The entry is NOT on disk.
    NotSaved,
    /// The values cannot be.
    Impossible,
    /// What was named is not here.
    NotFound,
    /// The names are hidden: the passphrase shows them.
    NamesHidden,
    /// The store is damaged and can only be read.
    ReadOnly,
    /// Not in a rehearsal, or only there.
    Rehearsal,
    /// A fault of the program.
    Internal,
}
