//! What can be asked of the core.

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{BabyNo, Fact, Medicine, Practice};
use secundine_domain::file::FileId;
use secundine_domain::photo::Tracing;
use secundine_domain::protocol::OwnChange;
use secundine_domain::quantity::Years;
use secundine_domain::time::Precision;
use serde::{Deserialize, Serialize};

use super::{DeviceTold, FileKind, LockedMark, Outgoing, Slot, SyncRole, TypedPlace};

/// A question or an order.
#[derive(Clone, Debug, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "request", rename_all = "snake_case")]
pub enum Request {
    /// How things stand: is there a practice, is it open?
    Status,
    /// Founds a practice on this device.
    CreatePractice {
        /// The practice and the person.
        practice: Practice,
        /// What will open it.
        passphrase: String,
    },
    /// Opens the practice.
    Unlock {
        /// The passphrase, or the recovery identity as it was printed.
        passphrase: String,
    },
    /// Opens the practice with the key store of this device's system.
    UnlockByDevice,
    /// Closes it and forgets the key.
    Lock,
    /// Nobody has touched for as long as the person chose: locks, or where a third stage runs, hides the names.
    Rest,
    /// Shows the names again.
    ShowNames {
        /// The passphrase, or the recovery identity as it was printed.
        passphrase: String,
    },
    /// The ways to the practice's key.
    Keys,
    /// Makes the key store of this device's system a way to the key.
    AddDeviceKey {
        /// The passphrase, or the recovery identity that holds.
        passphrase: String,
    },
    /// Takes a way to the key out. The passphrase stays.
    RevokeKey {
        /// Which.
        slot: Slot,
        /// The passphrase.
        passphrase: String,
    },
    /// Gives the practice another passphrase.
    ChangePassphrase {
        /// The one that holds, or the recovery identity as it was printed.
        old: String,
        /// The one that is to hold.
        new: String,
    },
    /// Makes a new recovery identity; the one before no longer opens the practice as it is here.
    RenewRecovery {
        /// The passphrase, or the recovery identity that holds.
        passphrase: String,
    },
    /// Tells the words of a recovery identity, and whether it opens this practice.
    CheckRecovery {
        /// As it was printed.
        recovery: String,
    },
    /// What is in place before a birth, what is not, and what cannot be told.
    BeforeBirth {
        /// What the device tells of itself.
        device: DeviceTold,
    },
    /// The backups on this device.
    Backups,
    /// Begins a backup: one sealed file. Answered at once; [`Request::Backups`] tells what becomes of it.
    MakeBackup,
    /// A part of a backup's file that is to be restored, in order; the one at 0 begins anew.
    BackupPart {
        /// Where it belongs.
        #[cfg_attr(feature = "types", ts(type = "number"))]
        offset: u64,
        /// At most 1 MiB, as base64.
        base64: String,
    },
    /// Restores the backup whose parts were given: founds the practice anew where there is none, else adds what is not here.
    Restore {
        /// The backup's passphrase, or its recovery identity as it was printed.
        passphrase: String,
    },
    /// Opens what can be read of a damaged store, changing nothing: records can be read and printed, not written.
    ReadDamaged {
        /// The passphrase, or the recovery identity as it was printed.
        passphrase: String,
    },
    /// Sets the damaged files aside and builds the store anew from everything that can be read.
    Salvage {
        /// The passphrase, or the recovery identity as it was printed.
        passphrase: String,
    },
    /// Keeps something that could NOT be saved in another file; it goes into the chart at the next unlocking.
    Elsewhere {
        /// The request that failed: a baby's birth, a fact, an amendment or a retraction. Its `ago_ms` is counted anew.
        what: Box<Request>,
    },
    /// Destroys the practice on this device, for ever.
    Wipe {
        /// The passphrase, or the recovery identity that holds.
        passphrase: String,
        /// The practice's name, typed; the practitioner's where it has none.
        words: String,
    },
    /// Keeps a mark while the practice is locked; it goes into the chart when it is unlocked.
    LockedMark {
        /// What.
        mark: LockedMark,
        /// Milliseconds since the finger touched.
        ago_ms: u32,
    },
    /// Takes back the last mark that was kept while locked and still stands.
    LockedUndo,
    /// Changes name, person or protocol of the practice.
    DescribePractice {
        /// As it should stand from now on.
        practice: Practice,
    },
    /// Somebody else writes for the practitioner: entries bear her name from now on, until the lock or the next of these.
    WriteAs {
        /// Who writes; none for the practitioner herself.
        scribe: Option<String>,
    },
    /// The protocols that can be chosen.
    Protocols,
    /// The practice's own protocol, field by field.
    OwnProtocol,
    /// Changes the practice's own protocol; what is not named stays.
    ChangeOwnProtocol {
        /// What is put in place of what stands there.
        change: OwnChange,
    },
    /// Fills every open field of the own protocol with the strictest of the published ones.
    FillOwnProtocol,
    /// Writes the own protocol, once nothing in it is open, as a file.
    ExportOwnProtocol,
    /// Takes a protocol file for the own protocol; one with anything wrong changes nothing.
    ImportOwnProtocol {
        /// The text of the file.
        text: String,
    },
    /// How this practice examines: its order and its table of placental weights.
    Examining,
    /// Keeps an order of the examination for next time.
    OrderExamination {
        /// Ids of items, as [`ExaminationView`](super::ExaminationView) gives them; empty for the usual order.
        items: Vec<String>,
    },
    /// Takes a file for the practice's table of placental weights; it holds for births from then on.
    LoadPlacentaWeights {
        /// The text of the file; none takes the table away.
        text: Option<String>,
    },
    /// The medicines that this practice gives, as it lists them.
    Medicines,
    /// Lists the medicines that this practice gives; the list takes the place of the last one.
    ListMedicines {
        /// Name, dose and route of each, in the order in which they are offered.
        medicines: Vec<Medicine>,
    },
    /// Where this practice sends records.
    Server,
    /// Sets the server that records are sent to.
    SetServer {
        /// Its base address, https; empty takes it away.
        address: String,
        /// The bearer token; none keeps the one before where the server stays the same, empty takes it away.
        token: Option<String>,
    },
    /// Asks the server what it is. Answers at once; [`Request::Server`] then tells what came of it.
    TryServer,
    /// How a birth stands with the server.
    Sending {
        /// Which.
        birth: BirthId,
    },
    /// Asks for a birth to be sent: it waits until a server took it.
    AskSending {
        /// Which.
        birth: BirthId,
    },
    /// Takes that back.
    TakeBackSending {
        /// Which.
        birth: BirthId,
    },
    /// Sends what waits. Answers at once; [`Request::Sending`] then tells what came of it.
    SendWaiting {
        /// This one, whatever became of it before; none for all that are due.
        birth: Option<BirthId>,
        /// BCP 47 tag of the language to write in; English where there is none of that name.
        #[serde(default)]
        #[cfg_attr(feature = "types", ts(optional))]
        language: Option<String>,
    },
    /// For how long this practice means to keep its records.
    Term,
    /// Sets that. Nothing is ever erased by it.
    SetTerm {
        /// Years from the birth; none sets no term.
        years: Option<Years>,
    },
    /// The kinds of items that were weighed in this practice, with their weights when dry.
    WeighedItems,
    /// The voice notes of all births that still have to be written up.
    ToWriteUp,
    /// Births, newest first.
    Births {
        /// How many to leave out from the newest on.
        skip: u32,
        /// How many to give at most.
        take: u32,
    },
    /// A baby was born just now: registers a birth and records it, names left for later.
    BabyBornNow {
        /// Milliseconds since the finger touched.
        ago_ms: u32,
    },
    /// Registers a birth that has not happened yet, so that its page is ready.
    RegisterBirth {
        /// What tells it from others.
        label: String,
    },
    /// Everything about one birth.
    Birth {
        /// Which.
        birth: BirthId,
    },
    /// A birth as a picture over one axis of time.
    ChartPicture {
        /// Which.
        birth: BirthId,
    },
    /// Writes a fact.
    Record {
        /// For which birth.
        birth: BirthId,
        /// What.
        fact: Fact,
        /// When.
        at: At,
    },
    /// Puts an entry right; the old form stays readable.
    Amend {
        /// For which birth.
        birth: BirthId,
        /// The entry as first written.
        entry: EntryId,
        /// The fact as it should be; none to keep it.
        fact: Option<Fact>,
        /// The time as it should be; none to keep it.
        at: Option<At>,
        /// Why.
        reason: String,
    },
    /// Takes an entry out; it stays readable.
    Retract {
        /// For which birth.
        birth: BirthId,
        /// The entry as first written.
        entry: EntryId,
        /// Why.
        reason: String,
    },
    /// Signs the record as it stands.
    Sign {
        /// For which birth.
        birth: BirthId,
        /// Who signs; none for the practice's practitioner.
        signer: Option<Signer>,
    },
    /// What is handed over, in SBAR order.
    Handover {
        /// Of which birth.
        birth: BirthId,
    },
    /// The same as a code that any telephone reads.
    HandoverCode {
        /// Of which birth.
        birth: BirthId,
        /// BCP 47 tag of the language to say it in; English where there is none of that name.
        #[serde(default)]
        #[cfg_attr(feature = "types", ts(optional))]
        language: Option<String>,
    },
    /// Writes a file about a birth into the folder of the records.
    WriteFile {
        /// Which birth.
        birth: BirthId,
        /// Which file.
        file: Outgoing,
        /// BCP 47 tag of the language to write it in; English where there is none of that name.
        #[serde(default)]
        #[cfg_attr(feature = "types", ts(optional))]
        language: Option<String>,
    },
    /// The drawing of a placenta.
    Sketch {
        /// Of which birth.
        birth: BirthId,
        /// The placenta, named by its first baby.
        placenta: BabyNo,
    },
    /// A part of a file that a fact is to name, in order; the one at 0 begins anew. Nothing of it is on disk until the last.
    FilePart {
        /// What it is taken for.
        kind: FileKind,
        /// Where it belongs.
        offset: u32,
        /// At most 1 MiB, as base64.
        base64: String,
        /// Whether it is the last.
        end: bool,
    },
    /// A part of a file that a fact names.
    ReadFile {
        /// Which.
        file: FileId,
        /// From where on.
        offset: u32,
    },
    /// Measures the disc on a photograph.
    MeasurePhoto {
        /// Of which birth.
        birth: BirthId,
        /// The photograph.
        file: FileId,
        /// What was placed on it.
        tracing: Tracing,
        /// Whether to write it down; else it is only shown.
        keep: bool,
    },
    /// Checks every page and every entry of the practice: whether all is as it was written.
    Verify,
    /// Begins a rehearsal in a practice of its own, apart from every real record.
    Rehearse {
        /// Which birth is played.
        #[serde(default)]
        scenario: ScenarioName,
        /// How fast its clock runs: 1 is real time.
        speed: u32,
        /// Whether the script acts by itself, or only tells what happens while the person records.
        mode: RehearsalMode,
    },
    /// Ends the rehearsal and throws its records away.
    EndRehearsal,
    /// A code for the other phone at a birth, with the time in it: asked for anew each second.
    ShowCode {
        /// Which birth.
        birth: BirthId,
        /// The answer to the code that was read here; else the code by which the other phone joins.
        answer: bool,
    },
    /// What another phone's code says; nothing is written.
    ReadCode {
        /// A picture that shows it: JPEG or PNG, at most 1 MiB, as base64.
        picture: Option<String>,
        /// The code as text, where there is no picture.
        text: Option<String>,
    },
    /// Goes on with the birth of a code, or compares the clocks by an answer.
    TakeCode {
        /// As [`Request::ReadCode`] gave it.
        text: String,
        /// Milliseconds since its picture came; none where it was typed.
        ago_ms: Option<u32>,
    },
    /// Says whether two births are the same one, registered twice. Taken back like any entry.
    SameBirth {
        /// Under which it is written.
        birth: BirthId,
        /// The other.
        other: BirthId,
        /// Whether they are.
        same: bool,
    },
    /// How the phones of the practice share.
    Sync,
    /// Makes this phone the first of a practice that shares.
    FoundSync {
        /// Where.
        place: TypedPlace,
    },
    /// The code that this phone shows to join a practice that shares.
    SyncCard,
    /// What another phone's code says; nothing is done.
    ReadSyncCode {
        /// A picture that shows it: JPEG or PNG, at most 1 MiB, as base64.
        picture: Option<String>,
        /// The code as text, where there is no picture.
        text: Option<String>,
    },
    /// Lets the phone in that showed this code.
    AdmitToSync {
        /// As [`Request::ReadSyncCode`] gave it.
        code: String,
        /// What its person may do.
        role: SyncRole,
    },
    /// Joins the practice whose lead showed this code.
    JoinSync {
        /// As [`Request::ReadSyncCode`] gave it.
        code: String,
    },
    /// Gets the practice back by its recovery sheet alone.
    RecoverSync {
        /// The identity on it.
        sheet: String,
        /// Where the practice shares.
        place: TypedPlace,
    },
    /// Sets where the practice shares; the other phones have to be told by a person.
    SetSyncPlace {
        /// Where.
        place: TypedPlace,
    },
    /// Tries a place; [`Request::Sync`] tells what came of it.
    TrySyncPlace {
        /// Which.
        place: TypedPlace,
    },
    /// Exchanges what there is to exchange, if it is time for it.
    SyncNow {
        /// Whether a person asked: then it is time.
        by_hand: bool,
        /// Whether the line is paid for by its bytes: pictures and sounds wait then.
        metered: bool,
    },
    /// Stops exchanging until a person asks for it.
    PauseSync,
    /// Changes what somebody may do.
    SetSyncRole {
        /// Their phone.
        device: String,
        /// From now on.
        role: SyncRole,
    },
    /// Removes a phone from the practice.
    RemoveFromSync {
        /// Which.
        device: String,
    },
    /// Takes in what a removed phone wrote since.
    AcceptHeld {
        /// Which.
        device: String,
        /// The last segment that is taken in.
        #[cfg_attr(feature = "types", ts(type = "number"))]
        segment: u64,
    },
    /// Asks that a birth be erased on every phone; it is once two people have.
    AskErasure {
        /// Which.
        birth: BirthId,
    },
    /// Fetches a picture or sound that another phone gave; [`Request::Sync`] tells how far it is.
    FetchFile {
        /// Which.
        file: FileId,
    },
}

/// A person who signs beside the practitioner. Her name is typed on this device, so the entry's author stays who it is.
#[derive(Clone, Debug, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Signer {
    /// Name as printed.
    pub name: String,
    /// Role.
    pub role: String,
}

/// The births that come with the program, all invented.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum ScenarioName {
    /// A calm birth by night, with one slip that is put right.
    #[default]
    QuietNight,
    /// The placenta keeps the midwife waiting, far from the hospital.
    SlowPlacenta,
    /// Bleeding after the placenta, and a transfer.
    BriskBleeding,
    /// Two babies, two placentas.
    Twins,
}

impl ScenarioName {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::QuietNight, Self::SlowPlacenta, Self::BriskBleeding, Self::Twins];
}

/// How a rehearsal is played.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum RehearsalMode {
    /// The script records by itself.
    Watch,
    /// The script tells what happens; the person records.
    Drill,
}

/// When something happened.
#[derive(Clone, Debug, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "at", rename_all = "snake_case")]
pub enum At {
    /// Just now.
    Now {
        /// Milliseconds since the finger touched.
        ago_ms: u32,
    },
    /// At a typed local time.
    Typed {
        /// `2026-11-25`.
        date: String,
        /// `03:12`.
        clock: String,
        /// Known or guessed.
        precision: Precision,
    },
}
