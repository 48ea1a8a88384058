//! The check of a practice through the one door.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "common/past.rs"]
mod past;

use std::path::PathBuf;
use std::sync::Arc;

use secundine_domain::fact::{Fact, Practice};
use secundine_domain::file::FileId;
use secundine_domain::time::Stamp;
use secundine_record::words::Words;
use secundine_session::api::{At, Request, Response, VerifyView};
use secundine_session::clock::HandClock;
use secundine_session::verify::view;
use secundine_session::{Paths, Session};
use secundine_store::{HeadSeen, Misfit, MisfitKind, Verdict};
use tempfile::TempDir;

const PASSPHRASE: &str = "seven quiet herons";

struct Practised {
    session: Session,
    folder: TempDir,
    recovery: String,
}

impl Practised {
    /// A birth of four entries after the practice's own: registered, baby born, two notes.
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock));
        let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
        let practice = Practice { name, practitioner, role, protocol: None };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = session.call(Request::CreatePractice { practice, passphrase }).unwrap()
        else {
            unreachable!()
        };
        let Response::BabyBornNow { birth, .. } = session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else {
            unreachable!()
        };
        for text in ["all calm", "still calm"] {
            let fact = Fact::Noted { text: text.to_owned() };
            session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
        }
        Self { session, folder, recovery: recovery.identity }
    }

    fn data(&self) -> PathBuf {
        self.folder.path().join("data")
    }

    fn verify(&mut self) -> VerifyView {
        let Response::Verify(view) = self.session.call(Request::Verify).unwrap() else { unreachable!() };
        view
    }

    fn lock(&mut self) {
        self.session.call(Request::Lock).unwrap();
    }

    fn unlock(&mut self) {
        self.session.call(Request::Unlock { passphrase: self.recovery.clone() }).unwrap();
    }

    /// Changes the locked practice's tables past the program.
    fn tamper(&self, statement: &str) {
        past::tamper(&self.data(), &self.recovery, statement);
    }
}

fn said(view: &VerifyView) -> [String; 2] {
    [&view.message, &view.head].map(|message| Words::english().say(message))
}

#[test]
fn an_open_practice_is_checked_and_a_locked_one_is_not() {
    let mut practised = Practised::new();
    let view = practised.verify();
    assert_eq!((view.ok, view.entries, view.devices, view.birth, &view.label), (true, 5, 1, None, &None));
    let fits = "5 entries of 1 device checked: each fits.".to_owned();
    assert_eq!(said(&view), [fits, "The end was held against the head, which tells of entry 5.".to_owned()]);
    practised.lock();
    let refused = practised.session.call(Request::Verify).unwrap_err();
    assert_eq!(refused.message.id, "error-locked");
}

#[test]
fn a_changed_entry_is_named_with_its_birth_and_the_label_stands_in_the_view_alone() {
    let mut practised = Practised::new();
    practised.lock();
    practised.tamper("UPDATE entry SET body = CAST(replace(CAST(body AS TEXT), 'still calm', 'not calm') AS BLOB) WHERE n = 5");
    practised.unlock();
    let view = practised.verify();
    assert_eq!((view.ok, view.entries), (false, 4));
    let [message, _] = said(&view);
    let birth = view.birth.unwrap();
    let device: String = birth.0.device.to_string().chars().take(8).collect();
    assert_eq!(message, format!("Entry 5 of device {device} was changed after it was written."));
    assert_eq!((birth.0.n, view.label.as_deref()), (2, Some("2026-11-25 02:40")));
}

#[test]
fn every_verdict_has_words() {
    let device = secundine_domain::entry::DeviceId([0xab; 16]);
    let kinds = [
        MisfitKind::Missing,
        MisfitKind::Twice,
        MisfitKind::Changed,
        MisfitKind::Unlinked,
        MisfitKind::Unsigned,
        MisfitKind::NoKey,
        MisfitKind::OtherKey,
        MisfitKind::CutOff,
        MisfitKind::Rewritten,
    ];
    let entries = kinds.map(|kind| Misfit::Entry { device, n: 7, birth: None, kind });
    let named = |missing| Misfit::File { file: FileId([0xcd; 32]), birth: None, missing };
    let files = [Misfit::Page { page: Some(3) }, Misfit::Page { page: None }, Misfit::Tables, named(true), named(false)];
    let mut sentences = Vec::new();
    for misfit in entries.iter().chain(&files) {
        let verdict = Verdict { entries: 6, devices: 1, files: 2, head: HeadSeen::At(9), misfit: Some(misfit.clone()) };
        let view = view(&verdict);
        assert!(Words::english().has(&view.message.id), "{}", view.message.id);
        assert!(!view.ok);
        let [sentence, _] = said(&view);
        let names_it = sentence.contains('7') && sentence.contains("abababab");
        assert_eq!(names_it, matches!(misfit, Misfit::Entry { .. }), "{sentence}");
        sentences.push(sentence);
    }
    sentences.sort_unstable();
    sentences.dedup();
    assert_eq!(sentences.len(), kinds.len() + files.len());
}
