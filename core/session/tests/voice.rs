//! Voice notes wait, in their birth and over all births, until they are written up.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::sync::Arc;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{Chapter, Fact, Practice, VoiceNote, WrittenUp};
use secundine_domain::file::FileId;
use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_session::api::{At, BirthView, ErrorCode, Request, Response, WaitingNote};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use tempfile::TempDir;

struct Desk {
    session: Session,
    clock: HandClock,
    _folder: TempDir,
}

impl Desk {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock.clone()));
        let [name, practitioner, role] = ["Heron House", "Ida", "midwife"].map(str::to_owned);
        let practice = Practice { name, practitioner, role, protocol: None };
        session.call(Request::CreatePractice { practice, passphrase: "seven quiet herons".to_owned() }).unwrap();
        Self { session, clock, _folder: folder }
    }

    fn born(&mut self) -> BirthId {
        self.clock.advance(60_000);
        let born = self.session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap();
        let Response::BabyBornNow { birth, .. } = born else { unreachable!() };
        birth
    }

    fn write(&mut self, birth: BirthId, fact: Fact) -> EntryId {
        self.clock.advance(1_000);
        let written = self.session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
        let Response::Record { entry } = written else { unreachable!() };
        entry
    }

    fn birth(&mut self, birth: BirthId) -> BirthView {
        let Response::Birth(view) = self.session.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        *view
    }

    fn waiting(&mut self) -> Vec<WaitingNote> {
        let Response::ToWriteUp { notes } = self.session.call(Request::ToWriteUp).unwrap() else { unreachable!() };
        notes
    }

    /// How many wait, by the list of births, newest first.
    fn counts(&mut self) -> Vec<u32> {
        let Response::Births { births, .. } = self.session.call(Request::Births { skip: 0, take: 9 }).unwrap() else {
            unreachable!()
        };
        births.into_iter().map(|line| line.to_write_up).collect()
    }
}

fn file(n: u8) -> FileId {
    FileId([n; 32])
}

fn note(n: u8) -> VoiceNote {
    let chapters = vec![Chapter { item: "amnion".to_owned(), at_ms: 0 }, Chapter { item: "chorion".to_owned(), at_ms: 80_500 }];
    VoiceNote { placenta: Some(1), file: file(n), ms: 200_000, media: "audio/webm".to_owned(), chapters }
}

#[test]
fn a_note_waits_in_its_birth_and_in_the_list_of_all_until_it_is_written_up() {
    let mut desk = Desk::new();
    assert_eq!(desk.waiting(), []);
    let first = desk.born();
    desk.write(first, Fact::PlacentaBorn { babies: vec![1] });
    let early = desk.write(first, Fact::VoiceNoted(note(1)));
    let second = desk.born();
    let late = desk.write(second, Fact::VoiceNoted(VoiceNote { placenta: None, chapters: Vec::new(), ..note(2) }));

    let listed: Vec<_> = desk.waiting().into_iter().map(|line| (line.note.birth, line.note.entry)).collect();
    assert_eq!(listed, [(first, early), (second, late)], "the one that has waited longest comes first");
    assert_eq!(desk.counts(), [1, 1]);
    let view = desk.birth(first);
    assert_eq!((view.to_write_up, view.voices.len()), (1, 1));
    let chapters: Vec<_> = view.voices[0].chapters.iter().map(|one| (one.title.id.as_str(), one.at.as_str())).collect();
    assert_eq!(chapters, [("exam-amnion", "0:00"), ("exam-chorion", "1:20")]);

    let up = desk.write(first, Fact::WrittenUp(WrittenUp { file: file(1), text: "chorion ragged".to_owned() }));
    assert_eq!(desk.waiting().len(), 1);
    assert_eq!(desk.counts(), [1, 0]);
    let view = desk.birth(first);
    let written = view.voices[0].written.clone().unwrap();
    assert_eq!(
        (view.to_write_up, written.entry, written.text.as_str(), written.author.as_str()),
        (0, up, "chorion ragged", "Ida")
    );

    let reason = "another note".to_owned();
    desk.session.call(Request::Retract { birth: first, entry: up, reason }).unwrap();
    assert_eq!(desk.waiting().len(), 2);
}

#[test]
fn a_note_that_cannot_be_is_refused_with_a_sentence() {
    let mut desk = Desk::new();
    let birth = desk.born();
    for wrong in [VoiceNote { ms: 0, ..note(1) }, VoiceNote { media: "text/html".to_owned(), ..note(1) }] {
        let record = Request::Record { birth, fact: Fact::VoiceNoted(wrong), at: At::Now { ago_ms: 0 } };
        let error = desk.session.call(record).unwrap_err();
        assert_eq!((error.code, error.message), (ErrorCode::Impossible, Message::new("impossible-voice-note")));
    }
    assert_eq!(desk.counts(), [0]);
}
