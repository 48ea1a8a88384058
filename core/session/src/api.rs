//! What can be asked of the core, and what it answers. One variant of [`Response`] for each of [`Request`], by the same name.

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::message::Message;
use secundine_domain::protocol::Protocol;
use secundine_domain::time::{Certainty, Precision};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

mod birth;
mod keeping;
mod locked;
mod verify;

pub use birth::{
    BabyView, BirthView, EarlierView, ExaminationView, ItemView, LineView, MarkView, NextMark, OptionView, PlacentaView,
    ProtocolLine,
};
pub use keeping::{BackupLine, BackupMade, BackupsView, KeysView, QrView, RecoveryView, RestoredView, SalvageView, Slot};
pub use locked::{DrainedView, LockedCord, LockedLine, LockedMark, LockedView};
pub use verify::VerifyView;

/// A question or an order.
#[derive(Clone, Debug, Deserialize, Serialize, TS)]
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
    /// The backups on this device.
    Backups,
    /// Makes a backup: one sealed file.
    MakeBackup,
    /// A part of a backup's file that is to be restored, in order; the one at 0 begins anew.
    BackupPart {
        /// Where it belongs.
        #[ts(type = "number")]
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
    /// The protocols that can be chosen.
    Protocols,
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
    /// Writes the record as a PDF file.
    WriteRecord {
        /// For which birth.
        birth: BirthId,
    },
    /// Checks every page and every entry of the practice: whether all is as it was written.
    Verify,
    /// Begins a rehearsal in a practice of its own, apart from every real record.
    Rehearse {
        /// How fast its clock runs: 1 is real time.
        speed: u32,
        /// Whether the script acts by itself, or only tells what happens while the person records.
        mode: RehearsalMode,
    },
    /// Ends the rehearsal and throws its records away.
    EndRehearsal,
}

/// A person who signs beside the practitioner. Her name is typed on this device, so the entry's author stays who it is.
#[derive(Clone, Debug, Deserialize, Serialize, TS)]
pub struct Signer {
    /// Name as printed.
    pub name: String,
    /// Role.
    pub role: String,
}

/// How a rehearsal is played.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum RehearsalMode {
    /// The script records by itself.
    Watch,
    /// The script tells what happens; the person records.
    Drill,
}

/// When something happened.
#[derive(Clone, Debug, Deserialize, Serialize, TS)]
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

/// The answer to a [`Request`].
#[derive(Clone, Debug, Serialize, TS)]
#[serde(tag = "response", rename_all = "snake_case")]
pub enum Response {
    /// How things stand.
    Status(StatusView),
    /// The practice is founded and open.
    CreatePractice {
        /// What opens it if the passphrase is lost. Shown once, kept nowhere on the device.
        recovery: RecoveryView,
    },
    /// Open.
    Unlock(StatusView),
    /// Open.
    UnlockByDevice(StatusView),
    /// Closed.
    Lock(StatusView),
    /// Locked, or the names hidden.
    Rest(StatusView),
    /// The names are shown.
    ShowNames(StatusView),
    /// The ways to the practice's key.
    Keys(KeysView),
    /// Added.
    AddDeviceKey(KeysView),
    /// Taken out.
    RevokeKey(KeysView),
    /// The new passphrase holds, and the old one no longer.
    ChangePassphrase,
    /// The new identity holds.
    RenewRecovery {
        /// What opens the practice if the passphrase is lost. Shown once, kept nowhere on the device.
        recovery: RecoveryView,
    },
    /// The identity is well formed.
    CheckRecovery {
        /// Its words.
        words: Vec<String>,
        /// Whether it opens this practice.
        opens: bool,
    },
    /// The backups on this device.
    Backups(BackupsView),
    /// Made, and read back.
    MakeBackup(BackupMade),
    /// Kept until the rest has come.
    BackupPart,
    /// Restored, and open.
    Restore(RestoredView),
    /// Open to be read.
    ReadDamaged(StatusView),
    /// Built anew, and open.
    Salvage(StatusView),
    /// On disk.
    Elsewhere(StatusView),
    /// Destroyed.
    Wipe(StatusView),
    /// On disk.
    LockedMark(LockedView),
    /// On disk.
    LockedUndo(LockedView),
    /// Written.
    DescribePractice(StatusView),
    /// The protocols that can be chosen.
    Protocols {
        /// Each whole, with its sources.
        protocols: Vec<Protocol>,
    },
    /// Births, newest first.
    Births {
        /// One line each.
        births: Vec<BirthLine>,
        /// How many there are in all.
        count: u32,
    },
    /// Registered and recorded, and on disk.
    BabyBornNow {
        /// The new birth.
        birth: BirthId,
        /// The entry of the baby's birth.
        entry: EntryId,
    },
    /// Registered, and on disk.
    RegisterBirth {
        /// The new birth.
        birth: BirthId,
    },
    /// Everything about one birth.
    Birth(Box<BirthView>),
    /// On disk.
    Record {
        /// The new entry.
        entry: EntryId,
    },
    /// On disk.
    Amend {
        /// The new entry.
        entry: EntryId,
    },
    /// On disk.
    Retract {
        /// The new entry.
        entry: EntryId,
    },
    /// On disk.
    Sign {
        /// The new entry.
        entry: EntryId,
    },
    /// The file is written.
    WriteRecord {
        /// Where.
        path: String,
        /// How many pages it has.
        pages: u32,
    },
    /// What the check found.
    Verify(VerifyView),
    /// The rehearsal runs.
    Rehearse(StatusView),
    /// Back in the practice.
    EndRehearsal(StatusView),
}

/// How things stand.
#[derive(Clone, Debug, PartialEq, Serialize, TS)]
pub struct StatusView {
    /// None, without its keys, locked or open.
    pub door: Door,
    /// The practice, when open.
    pub practice: Option<Practice>,
    /// The rehearsal, if one runs.
    pub rehearsal: Option<RehearsalView>,
    /// What was marked since it was locked, when locked.
    pub locked: Option<LockedView>,
    /// What was brought in from the time it was locked: only in the answer to unlocking, where there was anything.
    pub drained: Option<DrainedView>,
    /// Nobody had touched for a while: the names are hidden, and only births whose third stage runs can be worked with.
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
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
#[derive(Clone, Debug, PartialEq, Serialize, TS)]
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
#[derive(Clone, Debug, Serialize, TS)]
pub struct BirthLine {
    /// Which.
    pub birth: BirthId,
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
}

/// Where a birth stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
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
#[derive(Clone, Debug, PartialEq, Serialize, TS)]
pub struct ClockView {
    /// Milliseconds from its start to now or to its end.
    #[ts(type = "number")]
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
#[derive(Clone, Debug, PartialEq, Serialize, TS)]
pub struct ApiError {
    /// What kind of failure.
    pub code: ErrorCode,
    /// What was wrong and what to do, in words.
    pub message: Message,
}

/// Kinds of failure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
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
