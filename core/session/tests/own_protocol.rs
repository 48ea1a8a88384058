//! The practice's own protocol through the one door: made, changed, told, chosen, written to a file and read from one.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "own_protocol/files.rs"]
mod files;

use std::collections::BTreeMap;
use std::sync::Arc;

use secundine_domain::assess::FindingState;
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, Loss, Practice};
use secundine_domain::message::Message;
use secundine_domain::protocol::{Milli, OWN, OwnChange, Protocol, Slot, State, Status, Step};
use secundine_domain::quantity::Volume;
use secundine_domain::time::Stamp;
use secundine_record::words::Words;
use secundine_session::api::{
    ApiError, At, BirthView, ErrorCode, ImportView, OwnField, OwnState, OwnView, RehearsalMode, Request, Response,
};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use tempfile::TempDir;

const PASSPHRASE: &str = "seven quiet herons";

struct Room {
    session: Session,
    clock: HandClock,
    folder: TempDir,
}

impl Room {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None });
        let mut room = Self { session: Self::session(&folder, &clock), clock, folder };
        room.call(Request::CreatePractice { practice: practice(None), passphrase: PASSPHRASE.to_owned() }).unwrap();
        room
    }

    fn session(folder: &TempDir, clock: &HandClock) -> Session {
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        Session::new(paths, Arc::new(clock.clone()))
    }

    /// A practice whose own protocol is the strictest of the three, and chosen.
    fn with_own() -> Self {
        let mut room = Self::new();
        room.name();
        room.call(Request::FillOwnProtocol).unwrap();
        room.choose().unwrap();
        room
    }

    fn call(&mut self, request: Request) -> Result<Response, ApiError> {
        self.clock.advance(1_000);
        self.session.call(request)
    }

    /// As after the program was ended.
    fn reopen(&mut self) {
        self.call(Request::Lock).unwrap();
        self.session = Self::session(&self.folder, &self.clock);
        self.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    }

    fn own(&mut self) -> OwnView {
        let Response::OwnProtocol(view) = self.call(Request::OwnProtocol).unwrap() else { unreachable!() };
        view
    }

    fn change(&mut self, change: OwnChange) -> Result<OwnView, ApiError> {
        let Response::ChangeOwnProtocol(view) = self.call(Request::ChangeOwnProtocol { change })? else { unreachable!() };
        Ok(view)
    }

    fn put(&mut self, slot: &str, state: Option<State>) -> Result<OwnView, ApiError> {
        self.change(OwnChange { fields: BTreeMap::from([(slot.parse().unwrap(), state)]), ..OwnChange::default() })
    }

    fn name(&mut self) {
        let text = |text: &str| Some(text.to_owned());
        let change = OwnChange { title: text("Ours"), edition: text("first"), checked: text("2026-11-25"), ..Default::default() };
        self.change(change).unwrap();
    }

    fn choose(&mut self) -> Result<(), ApiError> {
        self.call(Request::DescribePractice { practice: practice(Some(OWN)) }).map(|_| ())
    }

    fn protocols(&mut self) -> (Vec<Protocol>, Option<OwnState>) {
        let Response::Protocols { protocols, own } = self.call(Request::Protocols).unwrap() else { unreachable!() };
        (protocols, own)
    }

    fn born(&mut self) -> BirthId {
        let Response::BabyBornNow { birth, .. } = self.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
        birth
    }

    fn record(&mut self, birth: BirthId, fact: Fact) -> Result<(), ApiError> {
        self.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).map(|_| ())
    }

    fn bled(&mut self, birth: BirthId, ml: i64) {
        self.record(birth, Fact::BloodLoss(Loss::Jug { volume: Volume::new(ml).unwrap() })).unwrap();
    }

    fn view(&mut self, birth: BirthId) -> BirthView {
        let Response::Birth(view) = self.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        *view
    }

    /// What is found of the blood, in words, and by whose threshold.
    fn blood(&mut self, birth: BirthId) -> (FindingState, String, Option<String>) {
        let findings = self.view(birth).findings;
        let blood = findings.into_iter().find(|finding| said(&finding.message).starts_with("Blood loss")).unwrap();
        (blood.state, said(&blood.message), blood.threshold.map(|threshold| threshold.source))
    }

    fn import(&mut self, text: &str) -> ImportView {
        let Response::ImportOwnProtocol(view) = self.call(Request::ImportOwnProtocol { text: text.to_owned() }).unwrap() else {
            unreachable!()
        };
        view
    }

    fn export(&mut self) -> String {
        let Response::ExportOwnProtocol { path } = self.call(Request::ExportOwnProtocol).unwrap() else { unreachable!() };
        std::fs::read_to_string(path).unwrap()
    }
}

fn practice(protocol: Option<&str>) -> Practice {
    Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida".to_owned(),
        role: "midwife".to_owned(),
        protocol: protocol.map(str::to_owned),
    }
}

fn said(message: &Message) -> String {
    Words::english().say(message)
}

fn fields(view: &OwnView) -> BTreeMap<String, OwnField> {
    view.groups.iter().flat_map(|group| &group.fields).map(|field| (field.slot.to_string(), field.clone())).collect()
}

/// A limit of blood loss as the practice sets it.
fn ours(ml: u32) -> Option<State> {
    Some(State::Step(Step {
        level: secundine_domain::protocol::Level::Limit,
        compare: secundine_domain::protocol::Compare::AtLeast,
        value: Milli::from(ml),
        source: "our meeting of March".to_owned(),
        status: Status::Choice,
        words: "Ours".to_owned(),
        again: None,
        with: Vec::new(),
    }))
}

const FIRST: &str = "blood-loss.limit.over.1";

#[test]
fn it_starts_empty_and_cannot_be_used_until_nothing_is_open() {
    let mut room = Room::new();
    let view = room.own();
    assert_eq!((view.title.as_str(), view.state.open), ("", view.state.count));
    assert!(view.state.count > 30 && view.holds_since.is_none() && !view.holds_as_it_stands && view.log.is_empty());
    assert!(fields(&view).values().all(|field| field.state.is_none() && said(&field.words) == "open"), "nothing is preselected");
    assert_eq!(room.protocols().0.len(), 3);
    assert_eq!(room.choose().unwrap_err().message.id, "error-own-open");
    room.call(Request::FillOwnProtocol).unwrap();
    assert_eq!(room.own().state.open, 3, "its name is still open");
    assert_eq!(room.choose().unwrap_err().code, ErrorCode::NotFound);
    assert_eq!(room.call(Request::ExportOwnProtocol).unwrap_err().message.id, "error-own-open");
    let birth = room.born();
    assert_eq!(room.record(birth, chosen()).unwrap_err().message.id, "error-own-open");
    room.name();
    let (protocols, own) = room.protocols();
    assert_eq!((protocols[3].id.as_str(), own.unwrap().open), (OWN, 0));
    assert!(!room.own().in_use);
    room.choose().unwrap();
    assert!(room.own().in_use);
    room.record(birth, chosen()).unwrap();
    assert_eq!(room.view(birth).protocol.unwrap().title, "Ours");
}

fn chosen() -> Fact {
    Fact::ProtocolChosen { protocol: OWN.to_owned(), own: None }
}

#[test]
fn a_change_tells_who_when_what_stood_there_and_what_stands_there_since() {
    let mut room = Room::with_own();
    let before = room.own().log.len();
    assert_eq!(before, 2, "the name, and the fill");
    room.put(FIRST, ours(400)).unwrap();
    let practice = Practice { practitioner: "Mara".to_owned(), ..practice(Some(OWN)) };
    room.call(Request::DescribePractice { practice }).unwrap();
    room.put("saturation.limit.under.1", Some(State::Off)).unwrap();
    room.put("saturation.limit.under.1", Some(State::Off)).unwrap();
    room.reopen();
    let log = room.own().log;
    assert_eq!(log.len(), before + 2, "what changes nothing is not written");
    let line = |at: usize| {
        let line = &log[at].changes[0];
        (log[at].author.as_str(), said(&line.field), said(&line.old), said(&line.new))
    };
    let (author, field, old, new) = line(0);
    assert_eq!((author, field.as_str(), new.as_str()), ("Mara", "Oxygen saturation: limit, low", "off"));
    assert!(old.starts_with("< 95 % (") && old.contains("borrowed from another guideline"), "{old}");
    let (author, field, old, new) = line(1);
    assert_eq!((author, field.as_str()), ("Ida", "Blood loss: limit"));
    assert!(old.starts_with("≥ 500 mL (NICE NG235 with RCOG GTG 52: RCOG GTG 52, 2016"), "{old}");
    assert_eq!(new, "≥ 400 mL (our meeting of March · our own choice, no source)");
    assert!(log.iter().all(|save| save.at.starts_with("2026-11-25 02:4")), "{:?}", log[0].at);
}

#[test]
fn a_birth_keeps_the_rule_it_was_begun_with_until_somebody_chooses_again_there() {
    let mut room = Room::with_own();
    room.put(FIRST, ours(400)).unwrap();
    let first = room.born();
    room.bled(first, 420);
    let by_the_old = room.blood(first);
    assert_eq!(by_the_old.0, FindingState::Passed);
    assert_eq!(by_the_old.2.as_deref(), Some("Ours: our meeting of March"));
    room.put(FIRST, ours(450)).unwrap();
    let second = room.born();
    room.bled(second, 420);
    assert_eq!(room.blood(second).0, FindingState::Near, "a birth begun after the change has the new limit");
    room.reopen();
    assert_eq!(room.blood(first), by_the_old, "what was found stays found");
    room.record(first, chosen()).unwrap();
    assert_eq!(room.blood(first).0, FindingState::Near);
}

#[test]
fn a_corrected_time_of_a_choice_changes_no_rule_and_no_rule_comes_from_outside() {
    let mut room = Room::with_own();
    let birth = room.born();
    room.put(FIRST, ours(400)).unwrap();
    let chosen_line =
        |view: BirthView| view.timeline.into_iter().find(|line| matches!(line.fact, Fact::ProtocolChosen { .. })).unwrap();
    let line = chosen_line(room.view(birth));
    let at = Some(At::Now { ago_ms: 1_000 });
    let reason = || "slip".to_owned();
    let amend = Request::Amend { birth, entry: line.entry, fact: Some(line.fact.clone()), at, reason: reason() };
    room.call(amend).unwrap();
    assert_eq!(chosen_line(room.view(birth)).fact, line.fact);
    let Fact::ProtocolChosen { own: Some(mut own), .. } = line.fact else { unreachable!() };
    own.title = "made up".to_owned();
    room.record(birth, Fact::ProtocolChosen { protocol: OWN.to_owned(), own: Some(own.clone()) }).unwrap();
    assert_eq!(room.view(birth).protocol.unwrap().title, "Ours");
    room.record(birth, Fact::ProtocolChosen { protocol: "who".to_owned(), own: Some(own) }).unwrap();
    assert_eq!(room.view(birth).protocol.unwrap().title, "WHO 2012 to 2025");
}

#[test]
fn while_a_field_is_open_again_what_was_finished_last_holds() {
    let mut room = Room::with_own();
    let since = room.own().holds_since;
    let view = room.put(FIRST, None).unwrap();
    assert_eq!((view.state.open, view.holds_as_it_stands, &view.holds_since), (1, false, &since));
    let (protocols, own) = room.protocols();
    assert_eq!((protocols.len(), own.unwrap().open), (4, 1));
    room.reopen();
    let birth = room.born();
    room.bled(birth, 500);
    assert_eq!(room.blood(birth).0, FindingState::Passed);
    let view = room.put(FIRST, ours(600)).unwrap();
    assert!(view.holds_as_it_stands && view.holds_since != since);
    let birth = room.born();
    room.bled(birth, 500);
    assert_eq!(room.blood(birth).0, FindingState::Near);
}

#[test]
fn what_cannot_stand_in_a_field_is_refused_and_what_does_not_fit_together_holds_nothing() {
    let mut room = Room::with_own();
    let Some(State::Step(step)) = ours(400) else { unreachable!() };
    let refused = |room: &mut Room, slot: &str, state| room.put(slot, Some(state)).unwrap_err().message.id;
    let sourceless = State::Step(Step { source: String::new(), ..step.clone() });
    assert_eq!(refused(&mut room, FIRST, sourceless), "protocol-file-no-source");
    assert_eq!(refused(&mut room, "late_entry", State::Off), "protocol-file-never-off");
    assert_eq!(refused(&mut room, "pulse.limit.under.1", State::Step(step.clone())), "protocol-file-other-field");
    // 500 mL under the name of a source that has another number.
    let source = "NICE NG235 with RCOG GTG 52: RCOG GTG 52, 2016".to_owned();
    let other = Step { source, ..step.clone() };
    assert_eq!(refused(&mut room, FIRST, State::Step(other.clone())), "protocol-file-other-number");
    room.put(FIRST, Some(State::Step(Step { value: Milli(500_000), ..other }))).unwrap();
    let fact = Fact::OwnProtocolChanged { change: OwnChange::default(), finished: None };
    let birth = room.born();
    assert_eq!(room.record(birth, fact).unwrap_err().message.id, "error-not-recordable");
    let view = room.put(FIRST, ours(1_200)).unwrap();
    assert_eq!(
        view.problems.iter().map(said).collect::<Vec<_>>(),
        ["Blood loss: limit 2: must lie past the one before it of the same kind"]
    );
    assert!(!view.holds_as_it_stands && view.holds_since.is_some());
}

#[test]
fn a_field_shows_what_the_three_have_there_as_it_would_be_taken_over() {
    let mut room = Room::new();
    let fields = fields(&room.own());
    let offers = |slot: &str| -> Vec<String> {
        fields[slot].offers.iter().map(|offer| format!("{}: {}", offer.title, said(&offer.words))).collect()
    };
    assert_eq!(
        offers("third-stage-physiological.limit.over.1"),
        [
            "NICE NG235 with RCOG GTG 52: ≥ 60 min",
            "WHO 2012 to 2025: ≥ 30 min",
            "ACOG and AAP with the maternal early warning criteria: ≥ 30 min",
        ]
    );
    assert_eq!(offers("pulse.limit.over.again.1"), ["NICE NG235 with RCOG GTG 52: > 120 a minute, on two readings 30 min apart"]);
    let with = &fields["blood-loss.limit.over.with.1"].offers[0];
    assert_eq!(
        said(&with.words),
        "≥ 300 mL with Pulse > 100 a minute or Systolic pressure < 100 mmHg or Diastolic pressure < 60 mmHg or Shock index > 1.00"
    );
    assert!(said(with.whence.as_ref().unwrap()).ends_with("from memory, unverified"));
    let taken = room.put("pulse.limit.over.again.1", Some(fields["pulse.limit.over.again.1"].offers[0].state.clone())).unwrap();
    let taken = &self::fields(&taken)["pulse.limit.over.again.1"];
    let (source, status) = taken.state.as_ref().unwrap().whence().unwrap();
    assert_eq!((source, status), ("NICE NG235 with RCOG GTG 52: NICE, transfer criteria", Status::Memory));
    let limit = &fields[FIRST].offers[0];
    assert_eq!(said(limit.whence.as_ref().unwrap()), "RCOG GTG 52, 2016 · read in the source");
    assert_eq!(limit.state.whence().unwrap().1, Status::Borrowed);
}

#[test]
fn every_field_has_a_name_of_its_own() {
    let mut room = Room::new();
    let names: Vec<String> = fields(&room.own()).values().map(|field| said(&field.name)).collect();
    let unique: std::collections::BTreeSet<&String> = names.iter().collect();
    assert_eq!(unique.len(), names.len(), "{names:#?}");
    insta::assert_snapshot!(names.join("\n"));
}

#[test]
fn a_file_of_the_own_protocol_makes_it_again_in_another_practice() {
    let mut room = Room::with_own();
    room.put(FIRST, ours(400)).unwrap();
    room.put("saturation.limit.under.1", Some(State::Off)).unwrap();
    let text = room.export();
    assert!(text.contains("our meeting of March") && text.contains("off = [\"saturation.limit.under.1\"]"), "{text}");
    let mut other = Room::new();
    let view = other.import(&text);
    let count = room.own().state.count;
    assert_eq!((view.errors.len(), view.changed), (0, count));
    let view = view.own.unwrap();
    assert!(view.holds_as_it_stands);
    assert_eq!(view.log[0].changes.len(), usize::try_from(count).unwrap(), "the log tells every change");
    assert_eq!(other.export(), text);
    assert_eq!(other.import(&text).changed, 0);
    assert_eq!(other.own().log.len(), 1, "the same file again changes nothing");
}

#[test]
fn what_a_file_leaves_out_is_open_and_what_it_has_beyond_the_three_is_kept() {
    let mut room = Room::new();
    let nice = Protocol::find("nice-rcog").unwrap();
    let text = format!(
        "{}\n[[watch.step]]\nlevel = \"limit\"\ncompare = \">\"\nvalue = 150\nsource = \"ours\"\nstatus = \"choice\"\nwords = \"\"\n",
        nice.file()
    );
    let view = room.import(&text).own.unwrap();
    let beyond: Slot = "completeness.limit.over.2".parse().unwrap();
    assert!(fields(&view).contains_key(&beyond.to_string()));
    assert!(view.state.open > 0 && !view.holds_as_it_stands, "what only the others have is still to be decided");
    assert!(fields(&view)["blood-loss.limit.over.with.1"].state.is_none());
}

#[test]
fn a_bad_file_is_told_in_every_point_and_changes_nothing() {
    let mut room = Room::with_own();
    let (before, log) = (room.export(), room.own().log.len());
    let view = room.import(&before.replacen("level = \"limit\"", "level = \"alarm\"", 2));
    assert!(view.own.is_none() && view.changed == 0);
    assert_eq!(view.errors.len(), 2);
    assert_eq!((room.export(), room.own().log.len()), (before.clone(), log));
    let long = room.call(Request::ImportOwnProtocol { text: "#".repeat(32 * 1024 + 1) }).unwrap_err();
    assert_eq!((long.code, long.message.id.as_str()), (ErrorCode::Impossible, "error-protocol-too-long"));
    let many: String = (0..500).map(|n| format!("key{n} = 1\n")).collect();
    let view = room.import(&many);
    assert_eq!(view.errors.len() + usize::try_from(view.more).unwrap(), 500 + 8, "unknown keys, and what is missing");
    assert_eq!(view.errors.len(), 100);
}

#[test]
fn it_is_no_part_of_a_rehearsal() {
    let mut room = Room::with_own();
    room.call(Request::Rehearse { scenario: Default::default(), speed: 1, mode: RehearsalMode::Drill }).unwrap();
    assert_eq!(room.protocols().0.len(), 3);
    assert_eq!(room.call(Request::FillOwnProtocol).unwrap_err().message.id, "error-rehearsing");
}

#[test]
fn a_birth_that_begins_while_locked_has_the_own_protocol_too() {
    let mut room = Room::with_own();
    room.call(Request::Lock).unwrap();
    room.call(Request::LockedMark { mark: secundine_session::api::LockedMark::BabyBorn, ago_ms: 0 }).unwrap();
    room.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    let Response::Births { births, .. } = room.call(Request::Births { skip: 0, take: 9 }).unwrap() else { unreachable!() };
    assert_eq!(room.view(births[0].birth).protocol.unwrap().title, "Ours");
}
