//! Every request while the names are hidden: it works, or says that they are hidden.

use std::collections::BTreeSet;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Apgar, Client, Condition, Fact, Loss, Medicine, MotherObservation, Practice, VoiceNote};
use secundine_domain::file::FileId;
use secundine_domain::photo::{Reference, Tracing};
use secundine_domain::protocol::OwnChange;
use secundine_session::api::{
    At, DeviceTold, ErrorCode, FileKind, LockedMark, Outgoing, RehearsalMode, Request, Response, Slot, SyncRole, TypedPlace,
};
use ts_rs::{Config, TS};

use super::{Desk, PASSPHRASE, placenta};

fn nowhere() -> TypedPlace {
    TypedPlace::Folder { path: "/nowhere".into() }
}

/// What is allowed while hidden. No arm for the rest: a new request has to be thought of here.
fn allowed(request: &Request, running: BirthId) -> bool {
    match request {
        Request::Status
        | Request::Unlock { .. }
        | Request::UnlockByDevice
        | Request::Lock
        | Request::Rest
        | Request::ShowNames { .. }
        | Request::Protocols
        | Request::Births { .. }
        | Request::BabyBornNow { .. }
        | Request::FilePart { kind: FileKind::Voice, .. } => true,
        Request::Birth { birth }
        | Request::ChartPicture { birth }
        | Request::Handover { birth }
        | Request::Sketch { birth, .. }
        | Request::Record { birth, .. }
        | Request::Amend { birth, .. }
        | Request::Retract { birth, .. } => *birth == running,
        Request::Elsewhere { what } => matches!(**what, Request::Record { .. }) && allowed(what, running),
        Request::CreatePractice { .. }
        | Request::Keys
        | Request::AddDeviceKey { .. }
        | Request::RevokeKey { .. }
        | Request::ChangePassphrase { .. }
        | Request::RenewRecovery { .. }
        | Request::CheckRecovery { .. }
        | Request::BeforeBirth { .. }
        | Request::Backups
        | Request::MakeBackup
        | Request::BackupPart { .. }
        | Request::Restore { .. }
        | Request::ReadDamaged { .. }
        | Request::Salvage { .. }
        | Request::Wipe { .. }
        | Request::LockedMark { .. }
        | Request::LockedUndo
        | Request::DescribePractice { .. }
        | Request::WriteAs { .. }
        | Request::OwnProtocol
        | Request::ChangeOwnProtocol { .. }
        | Request::FillOwnProtocol
        | Request::ExportOwnProtocol
        | Request::ImportOwnProtocol { .. }
        | Request::Examining
        | Request::OrderExamination { .. }
        | Request::LoadPlacentaWeights { .. }
        | Request::Medicines
        | Request::Server
        | Request::SetServer { .. }
        | Request::Term
        | Request::SetTerm { .. }
        | Request::TryServer
        | Request::Sending { .. }
        | Request::AskSending { .. }
        | Request::TakeBackSending { .. }
        | Request::SendWaiting { .. }
        | Request::ListMedicines { .. }
        | Request::WeighedItems
        | Request::ToWriteUp
        | Request::RegisterBirth { .. }
        | Request::Sign { .. }
        | Request::HandoverCode { .. }
        | Request::WriteFile { .. }
        | Request::FilePart { kind: FileKind::Photo, .. }
        | Request::ReadFile { .. }
        | Request::MeasurePhoto { .. }
        | Request::Verify
        | Request::Rehearse { .. }
        | Request::EndRehearsal
        // A code bears the label, and whoever joins sees it.
        | Request::ShowCode { .. }
        | Request::ReadCode { .. }
        | Request::TakeCode { .. }
        | Request::SameBirth { .. }
        | Request::Sync
        | Request::FoundSync { .. }
        | Request::SyncCard
        | Request::ReadSyncCode { .. }
        | Request::AdmitToSync { .. }
        | Request::JoinSync { .. }
        | Request::RecoverSync { .. }
        | Request::SetSyncPlace { .. }
        | Request::TrySyncPlace { .. }
        | Request::SyncNow { .. }
        | Request::PauseSync
        | Request::SetSyncRole { .. }
        | Request::RemoveFromSync { .. }
        | Request::AcceptHeld { .. }
        | Request::AskErasure { .. }
        | Request::FetchFile { .. } => false,
    }
}

/// One of each at least; those of a birth once for each of the births.
fn every(births: [BirthId; 2], entries: [EntryId; 2]) -> Vec<Request> {
    let practice = || Practice { name: "B".to_owned(), practitioner: "B".to_owned(), role: String::new(), protocol: None };
    let secret = || PASSPHRASE.to_owned();
    let record = |birth| Request::Record { birth, fact: Fact::CordCut { baby: 1 }, at: At::Now { ago_ms: 0 } };
    let mut all = vec![
        Request::Status,
        Request::CreatePractice { practice: practice(), passphrase: secret() },
        Request::Unlock { passphrase: secret() },
        Request::UnlockByDevice,
        Request::Lock,
        Request::Rest,
        Request::ShowNames { passphrase: secret() },
        Request::Keys,
        Request::AddDeviceKey { passphrase: secret() },
        Request::RevokeKey { slot: Slot::Recovery, passphrase: secret() },
        Request::ChangePassphrase { old: secret(), new: secret() },
        Request::RenewRecovery { passphrase: secret() },
        Request::CheckRecovery { recovery: secret() },
        Request::BeforeBirth { device: DeviceTold::default() },
        Request::Backups,
        Request::MakeBackup,
        Request::BackupPart { offset: 0, base64: String::new() },
        Request::Restore { passphrase: secret() },
        Request::ReadDamaged { passphrase: secret() },
        Request::Salvage { passphrase: secret() },
        Request::Elsewhere { what: Box::new(Request::Keys) },
        Request::Elsewhere { what: Box::new(Request::Lock) },
        Request::Elsewhere { what: Box::new(Request::Elsewhere { what: Box::new(Request::Lock) }) },
        Request::Wipe { passphrase: secret(), words: "Heron House".to_owned() },
        Request::LockedMark { mark: LockedMark::BabyBorn, ago_ms: 0 },
        Request::LockedUndo,
        Request::DescribePractice { practice: practice() },
        Request::Protocols,
        Request::WriteAs { scribe: None },
        Request::OwnProtocol,
        Request::ChangeOwnProtocol { change: OwnChange { title: Some("B".to_owned()), ..OwnChange::default() } },
        Request::FillOwnProtocol,
        Request::ExportOwnProtocol,
        Request::ImportOwnProtocol { text: String::new() },
        Request::Examining,
        Request::OrderExamination { items: Vec::new() },
        Request::LoadPlacentaWeights { text: None },
        Request::Medicines,
        Request::Server,
        Request::SetServer { address: String::new(), token: None },
        Request::Term,
        Request::SetTerm { years: None },
        Request::TryServer,
        Request::SendWaiting { birth: None, language: None },
        Request::ListMedicines { medicines: vec![Medicine { name: "C".to_owned(), ..Medicine::default() }] },
        Request::WeighedItems,
        Request::ToWriteUp,
        Request::Births { skip: 0, take: 9 },
        Request::BabyBornNow { ago_ms: 0 },
        Request::RegisterBirth { label: "B".to_owned() },
        Request::FilePart { kind: FileKind::Voice, offset: 0, base64: String::new(), end: true },
        Request::FilePart { kind: FileKind::Photo, offset: 0, base64: String::new(), end: true },
        Request::ReadFile { file: FileId([0; 32]), offset: 0 },
        Request::Verify,
        Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill },
        Request::EndRehearsal,
        Request::ReadCode { picture: None, text: Some(String::new()) },
        Request::TakeCode { text: String::new(), ago_ms: None },
    ];
    for (birth, entry) in births.into_iter().zip(entries) {
        let reason = || "why".to_owned();
        all.extend([
            Request::Birth { birth },
            record(birth),
            Request::Elsewhere { what: Box::new(record(birth)) },
            Request::Amend { birth, entry, fact: None, at: None, reason: reason() },
            Request::Retract { birth, entry, reason: reason() },
            Request::Sign { birth, signer: None },
            Request::Sending { birth },
            Request::AskSending { birth },
            Request::TakeBackSending { birth },
            Request::WriteFile { birth, file: Outgoing::Record, language: None },
            Request::WriteFile { birth, file: Outgoing::Laboratory { placenta: 1 }, language: None },
            Request::ChartPicture { birth },
            Request::Handover { birth },
            Request::HandoverCode { birth, language: None },
            Request::WriteFile { birth, file: Outgoing::Transfer, language: None },
            Request::Sketch { birth, placenta: 1 },
            Request::ShowCode { birth, answer: false },
            Request::SameBirth { birth, other: births[0], same: true },
            Request::Sync,
            Request::FoundSync { place: nowhere() },
            Request::SyncCard,
            Request::ReadSyncCode { picture: None, text: None },
            Request::AdmitToSync { code: String::new(), role: SyncRole::Member },
            Request::JoinSync { code: String::new() },
            Request::RecoverSync { sheet: String::new(), place: nowhere() },
            Request::SetSyncPlace { place: nowhere() },
            Request::TrySyncPlace { place: nowhere() },
            Request::SyncNow { by_hand: true, metered: false },
            Request::PauseSync,
            Request::SetSyncRole { device: String::new(), role: SyncRole::Lead },
            Request::RemoveFromSync { device: String::new() },
            Request::AcceptHeld { device: String::new(), segment: 1 },
            Request::AskErasure { birth },
            Request::FetchFile { file: FileId([7; 32]) },
            Request::MeasurePhoto { birth, file: FileId([0; 32]), tracing: tracing(), keep: true },
        ]);
    }
    all
}

fn tracing() -> Tracing {
    Tracing { reference: Reference::OneCard, corners: Vec::new(), outline: Vec::new(), insertion: None, thickness: 20 }
}

/// Two births, one of them over; the names are hidden.
fn two() -> (Desk, [BirthId; 2], [EntryId; 2]) {
    let mut desk = Desk::new();
    let passphrase = desk.recovery.clone();
    desk.call(Request::AddDeviceKey { passphrase }).unwrap();
    let over = desk.born();
    let first = desk.write(over, placenta());
    let running = desk.born();
    let second = desk.write(running, Fact::CordClamped { baby: 1 });
    assert!(desk.rest().names_hidden);
    (desk, [over, running], [first, second])
}

#[test]
fn while_hidden_each_request_works_as_the_list_says_or_answers_that_names_are_hidden() {
    let (mut desk, births, entries) = two();
    let before = count(&mut desk);
    for request in every(births, entries) {
        let allowed = allowed(&request, births[1]);
        let told = format!("{request:?}");
        let answer = desk.call(request);
        match (&answer, allowed) {
            (Ok(_), true) => (),
            // Past the gate; what it answers beyond is not looked at here.
            (Err(error), true) => assert!(told.starts_with("Elsewhere") && error.code != ErrorCode::NamesHidden, "{told}"),
            (Err(error), false) => {
                assert_eq!((error.code, error.message.id.as_str()), (ErrorCode::NamesHidden, "error-names-hidden"), "{told}");
                assert!(desk.status().names_hidden, "{told}");
            }
            (Ok(_), false) => unreachable!("{told}: {answer:?}"),
        }
        if !desk.status().names_hidden {
            desk.unlock();
            assert!(desk.rest().names_hidden, "{told}");
        }
    }
    desk.unlock();
    assert_eq!(count(&mut desk), before + 1, "the one that was born meanwhile, and no other");
}

fn count(desk: &mut Desk) -> usize {
    desk.births().len() + usize::from(desk.status().names_hidden)
}

#[test]
fn no_request_is_left_out_of_the_list() {
    let (_desk, births, entries) = two();
    let listed: BTreeSet<String> = every(births, entries)
        .into_iter()
        .map(|request| serde_json::to_value(request).unwrap()["request"].as_str().unwrap().to_owned())
        .collect();
    let types = Request::inline(&Config::new());
    let known: BTreeSet<String> =
        types.split("\"request\": \"").skip(1).map(|after| after.split('"').next().unwrap().to_owned()).collect();
    assert!(known.len() > 35, "{known:?}");
    assert_eq!(listed, known);
}

#[test]
fn every_fact_of_a_birth_can_be_written_while_hidden_but_who_the_mother_is() {
    let (mut desk, [_, running], _) = two();
    let apgar = r#"{"baby":1,"minute":1,"colour":2,"heart_rate":2,"reflex":2,"tone":1,"breathing":2}"#;
    let apgar: Apgar = serde_json::from_str(apgar).unwrap();
    let facts = [
        Fact::CordPulsationStopped { baby: 1 },
        Fact::CordCut { baby: 1 },
        Fact::BloodLoss(Loss::Seen { volume: serde_json::from_str("150").unwrap() }),
        Fact::MotherObserved(MotherObservation { pulse: Some(serde_json::from_str("80").unwrap()), ..Default::default() }),
        Fact::ApgarScored(apgar),
        Fact::MedicineGiven(Medicine {
            name: "Oxytocin".to_owned(),
            dose: "10 IU".to_owned(),
            route: "im".to_owned(),
            uterotonic: true,
            ..Medicine::default()
        }),
        Fact::Noted { text: "calm".to_owned() },
    ];
    for fact in facts.clone() {
        desk.write(running, fact);
    }
    for people in [Fact::ClientRecorded(Default::default()), Fact::AskedFor { text: "blood".to_owned() }] {
        assert_eq!(desk.record(running, people).unwrap_err().code, ErrorCode::NamesHidden);
    }
    desk.unlock();
    let written: Vec<Fact> = desk.birth(running).timeline.into_iter().map(|line| line.fact).collect();
    for fact in facts {
        assert!(written.contains(&fact), "{fact:?}");
    }
}

#[test]
fn what_a_medicine_is_a_caution_with_is_told_while_the_names_are_hidden() {
    let (mut desk, [_, running], _) = two();
    desk.unlock();
    let conditions = Some([Condition::Asthma].into());
    desk.write(running, Fact::ClientRecorded(Client { name: "Rosa".to_owned(), conditions, ..Client::default() }));
    let cautions = |desk: &mut Desk| {
        let medicines = desk.birth(running).medicines;
        let told = medicines
            .into_iter()
            .flat_map(|one| one.cautions.into_iter().map(move |caution| (one.id.clone(), caution.message.id)));
        told.collect::<Vec<_>>()
    };
    let shown = cautions(&mut desk);
    assert_eq!(shown, [("carboprost".to_owned(), "caution-on-record".to_owned())]);
    desk.call(Request::Rest).unwrap();
    assert!(desk.status().names_hidden);
    assert_eq!(cautions(&mut desk), shown);
    assert_eq!(desk.birth(running).client.unwrap().name, "");
}

#[test]
fn a_voice_note_can_be_spoken_while_the_names_are_hidden_and_is_listened_to_once_they_are_shown() {
    let (mut desk, [_, running], _) = two();
    let part = |kind| Request::FilePart { kind, offset: 0, base64: "c3Bva2Vu".to_owned(), end: true };
    let Response::FilePart { kept: Some(kept) } = desk.call(part(FileKind::Voice)).unwrap() else { unreachable!() };
    let note = VoiceNote { placenta: Some(1), file: kept.file, ms: 1, media: "audio/webm".to_owned(), chapters: Vec::new() };
    desk.write(running, Fact::VoiceNoted(note));
    let read = || Request::ReadFile { file: kept.file, offset: 0 };
    let refused = [read(), Request::ToWriteUp, part(FileKind::Photo)].map(|request| desk.call(request).unwrap_err().code);
    assert_eq!(refused, [ErrorCode::NamesHidden; 3]);
    assert_eq!(desk.births().iter().map(|line| line.to_write_up).collect::<Vec<_>>(), [1], "only how many there are is told");
    desk.unlock();
    let Response::ReadFile(whole) = desk.call(read()).unwrap() else { unreachable!() };
    assert_eq!(whole.base64, "c3Bva2Vu");
    let Response::ToWriteUp { notes } = desk.call(Request::ToWriteUp).unwrap() else { unreachable!() };
    assert_eq!(notes.len(), 1);
}
