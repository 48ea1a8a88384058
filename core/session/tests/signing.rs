//! Who signs, and what is added after a signature.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use secundine_domain::entry::EntryId;
use secundine_domain::fact::Fact;
use secundine_domain::time::Precision;
use secundine_record::words::Words;
use secundine_session::api::{ApiError, At, Phase, Request, Response, Signer};

#[path = "common/room.rs"]
mod room;

use room::Room;

impl Room {
    fn note(&mut self, text: &str, at: At) -> EntryId {
        self.clock.advance(60_000);
        let fact = Fact::Noted { text: text.to_owned() };
        let Response::Record { entry } = self.session.call(Request::Record { birth: self.birth, fact, at }).unwrap() else {
            unreachable!()
        };
        entry
    }

    fn sign(&mut self, signer: Option<Signer>) -> Result<(), ApiError> {
        self.clock.advance(60_000);
        self.session.call(Request::Sign { birth: self.birth, signer }).map(|_| ())
    }

    /// What was added after the first signature.
    fn added(&mut self) -> Vec<String> {
        let view = self.view();
        let added: Vec<String> =
            view.timeline.iter().filter(|line| line.after_signing).map(|line| Words::english().say(&line.message)).collect();
        assert_eq!(view.addenda, !added.is_empty());
        added
    }
}

fn now() -> At {
    At::Now { ago_ms: 0 }
}

fn signer(name: &str, role: &str) -> Option<Signer> {
    Some(Signer { name: name.to_owned(), role: role.to_owned() })
}

#[test]
fn two_persons_sign_and_the_second_signature_adds_nothing() {
    let mut room = Room::new(None);
    room.note("all calm", now());
    room.sign(None).unwrap();
    room.sign(signer("  Mara ", " second midwife ")).unwrap();
    let view = room.view();
    let signatures: Vec<(String, String)> = view
        .timeline
        .iter()
        .filter_map(|line| match &line.fact {
            Fact::Signed { name, role, .. } => Some((format!("{name}, {role}"), line.author.clone())),
            _ => None,
        })
        .collect();
    let by_ida = |signed: &str| (signed.to_owned(), "Ida".to_owned());
    assert_eq!(signatures, [by_ida("Ida, midwife"), by_ida("Mara, second midwife")]);
    assert_eq!(view.phase, Phase::Signed);
    assert_eq!(room.added(), Vec::<String>::new());
    for nameless in ["", "  "] {
        assert_eq!(room.sign(signer(nameless, "midwife")).unwrap_err().message.id, "error-no-signer");
    }
    assert_eq!(room.view().timeline.len(), view.timeline.len(), "nothing was written");
}

#[test]
fn a_request_without_a_signer_is_the_practitioners() {
    let mut room = Room::new(None);
    let request = format!(r#"{{"request":"sign","birth":"{}"}}"#, room.birth.0);
    room.session.call(serde_json::from_str(&request).unwrap()).unwrap();
    assert!(room.view().timeline.iter().any(|line| matches!(&line.fact, Fact::Signed { name, .. } if name == "Ida")));
}

#[test]
fn what_is_added_after_the_first_signature_is_marked_whenever_it_happened() {
    let mut room = Room::new(None);
    let before = room.note("before", now());
    assert_eq!(room.added(), Vec::<String>::new());
    room.sign(None).unwrap();
    let typed = At::Typed { date: "2026-11-25".to_owned(), clock: "02:39".to_owned(), precision: Precision::Exact };
    room.note("happened before all", typed);
    room.sign(None).unwrap();
    room.note("after both", now());
    assert_eq!(room.added(), ["happened before all", "after both"]);
    // A correction tells its own time; it does not make the line an addition.
    let (birth, fact) = (room.birth, Some(Fact::Noted { text: "before, put right".to_owned() }));
    let reason = "misheard".to_owned();
    room.session.call(Request::Amend { birth, entry: before, fact, at: None, reason }).unwrap();
    assert_eq!(room.added(), ["happened before all", "after both"]);
}
