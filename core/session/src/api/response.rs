//! What the core answers.

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::Medicine;
use secundine_domain::protocol::Protocol;
use secundine_domain::quantity::Years;
use serde::Serialize;

use super::{
    AlikeView, BackupsView, BirthLine, BirthView, ChartPicture, CodeRead, CodeTaken, CodeView, ExaminingView, FileBytes,
    HandoverCode, HandoverView, ImportView, KeptFile, KeysView, LockedView, MeasuredView, OwnState, OwnView, RecoveryView,
    RestoredView, SendingView, ServerView, SketchView, StatusView, SyncCode, SyncCodeRead, SyncView, ThingView, VerifyView,
    WaitingNote, WeighedItem,
};

/// The answer to a [`Request`].
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
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
    /// What is in place, and what is not.
    BeforeBirth {
        /// Each thing, in the order in which it is shown.
        things: Vec<ThingView>,
    },
    /// The backups on this device.
    Backups(BackupsView),
    /// It was begun; [`Request::Backups`] tells how far it is.
    MakeBackup(BackupsView),
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
    /// Entries bear that name.
    WriteAs(StatusView),
    /// The protocols that can be chosen.
    Protocols {
        /// Each whole, with its sources; the practice's own among them once it was finished.
        protocols: Vec<Protocol>,
        /// How far the practice's own has come; none where no practice is open.
        own: Option<OwnState>,
    },
    /// The practice's own protocol.
    OwnProtocol(OwnView),
    /// Written.
    ChangeOwnProtocol(OwnView),
    /// Written.
    FillOwnProtocol(OwnView),
    /// The file is written.
    ExportOwnProtocol {
        /// Where.
        path: String,
    },
    /// What came of the file.
    ImportOwnProtocol(ImportView),
    /// How the practice examines.
    Examining(ExaminingView),
    /// On disk.
    OrderExamination(ExaminingView),
    /// On disk.
    LoadPlacentaWeights(ExaminingView),
    /// As listed last.
    Medicines {
        /// In the order in which they are offered; empty until the practice lists some.
        medicines: Vec<Medicine>,
    },
    /// On disk.
    ListMedicines {
        /// As they stand now.
        medicines: Vec<Medicine>,
    },
    /// For how long this practice means to keep its records.
    Term {
        /// Years from the birth; none where it sets no term.
        years: Option<Years>,
    },
    /// On disk.
    SetTerm {
        /// As it holds now.
        years: Option<Years>,
    },
    /// Where this practice sends records.
    Server(ServerView),
    /// On disk.
    SetServer(ServerView),
    /// It is being asked.
    TryServer(ServerView),
    /// How the birth stands with the server.
    Sending(SendingView),
    /// On disk.
    AskSending(SendingView),
    /// On disk.
    TakeBackSending(SendingView),
    /// They are being sent.
    SendWaiting {
        /// How many births wait.
        waiting: u32,
    },
    /// The kinds of items that were weighed in this practice.
    WeighedItems {
        /// Latest first, each kind once.
        items: Vec<WeighedItem>,
    },
    /// The voice notes that still have to be written up.
    ToWriteUp {
        /// Those that have waited longest first.
        notes: Vec<WaitingNote>,
    },
    /// Births, newest first.
    Births {
        /// One line each.
        births: Vec<BirthLine>,
        /// How many there are in all.
        count: u32,
        /// Pairs among them that may be one birth, registered twice.
        alike: Vec<AlikeView>,
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
    /// What is handed over.
    Handover(HandoverView),
    /// The code, with what it says.
    HandoverCode(HandoverCode),
    /// The file is written.
    WriteFile {
        /// Where.
        path: String,
        /// How many pages it has; 0 for a file without pages.
        pages: u32,
        /// How large it is.
        bytes: u32,
    },
    /// As drawn from the entries.
    ChartPicture(Box<ChartPicture>),
    /// As drawn from the answers.
    Sketch(Box<SketchView>),
    /// Held in memory until the rest has come; with the last part, sealed and on disk.
    FilePart {
        /// What is on disk.
        kept: Option<KeptFile>,
    },
    /// A part of it.
    ReadFile(FileBytes),
    /// Measured.
    MeasurePhoto {
        /// What came of it.
        measured: MeasuredView,
        /// The entry, where it was written down.
        entry: Option<EntryId>,
    },
    /// What the check found.
    Verify(VerifyView),
    /// The rehearsal runs.
    Rehearse(StatusView),
    /// Back in the practice.
    EndRehearsal(StatusView),
    /// The code.
    ShowCode(CodeView),
    /// What it says.
    ReadCode(CodeRead),
    /// On disk.
    TakeCode(CodeTaken),
    /// On disk.
    SameBirth {
        /// The new entry.
        entry: EntryId,
    },
    /// How they share.
    Sync(SyncView),
    /// This phone is the first of a practice that shares.
    FoundSync {
        /// What gets the practice back if every phone is lost. Show it once; it is kept nowhere.
        recovery: RecoveryView,
    },
    /// The code.
    SyncCard(SyncCode),
    /// What it says.
    ReadSyncCode(SyncCodeRead),
    /// What the other phone is to read.
    AdmitToSync(SyncCode),
    /// Joined.
    JoinSync {
        /// The words that the lead's phone shows too.
        words: Vec<String>,
    },
    /// Begun.
    RecoverSync(SyncView),
    /// Set.
    SetSyncPlace(SyncView),
    /// Begun.
    TrySyncPlace(SyncView),
    /// Begun, if it was time.
    SyncNow(SyncView),
    /// Paused.
    PauseSync(SyncView),
    /// Changed.
    SetSyncRole(SyncView),
    /// Removed.
    RemoveFromSync(SyncView),
    /// Taken in with the next round.
    AcceptHeld(SyncView),
    /// Asked.
    AskErasure(SyncView),
    /// Begun, if it is not here.
    FetchFile(SyncView),
}
