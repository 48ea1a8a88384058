//! The rehearsal that comes with the program, played at once through the one door.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::fmt::Write as _;
use std::sync::Arc;

use secundine_domain::assess::Finding;
use secundine_domain::entry::BirthId;
use secundine_domain::time::{Boot, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{BirthView, Door, ErrorCode, Outgoing, RehearsalMode, Request, Response, ScenarioName, StatusView};
use secundine_session::clock::HandClock;
use secundine_session::rehearsal::Scenario;
use secundine_session::{Paths, Session};
use tempfile::TempDir;

const SPEED: u32 = 60;

struct Drill {
    session: Session,
    clock: HandClock,
    folder: TempDir,
}

impl Drill {
    fn begin(mode: RehearsalMode) -> Self {
        Self::play(ScenarioName::default(), mode)
    }

    fn play(scenario: ScenarioName, mode: RehearsalMode) -> Self {
        let folder = tempfile::tempdir().unwrap();
        // 2026-11-25 02:40:00 at UTC+1.
        let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock.clone()));
        session.call(Request::Rehearse { scenario, speed: SPEED, mode }).unwrap();
        Self { session, clock, folder }
    }

    /// Lets so many seconds of the scenario pass.
    fn pass(&self, seconds: i64) {
        self.clock.advance(seconds * 1000 / i64::from(SPEED));
    }

    fn status(&mut self) -> StatusView {
        let Response::Status(status) = self.session.call(Request::Status).unwrap() else { unreachable!() };
        status
    }

    fn birth_id(&mut self) -> BirthId {
        self.status().rehearsal.unwrap().birth.unwrap()
    }

    fn birth(&mut self) -> BirthView {
        let birth = self.birth_id();
        let Response::Birth(view) = self.session.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        *view
    }
}

/// The view as a person reads it.
fn read(view: &BirthView) -> String {
    let words = Words::english();
    let mut text = format!("{}  {}  {:?}\n", view.label, view.clock, view.phase);
    if let Some(stage) = &view.third_stage {
        writeln!(text, "third stage {}{}", stage.text, if stage.running { ", running" } else { "" }).unwrap();
    }
    for baby in &view.babies {
        let cord = baby.cord.as_ref().map(|cord| format!("{}{}", cord.text, if cord.running { ", running" } else { "" }));
        writeln!(text, "cord of baby {}: {}", baby.baby, cord.unwrap_or_else(|| "-".to_owned())).unwrap();
    }
    writeln!(text, "blood {} measured, {} by eye", view.blood.measured, view.blood.seen).unwrap();
    view.next.iter().for_each(|mark| writeln!(text, "next: {}", words.say(&mark.label)).unwrap());
    view.due.iter().for_each(|due| writeln!(text, "due in {} s: {}", due.in_ms / 1000, words.say(&due.message)).unwrap());
    view.findings.iter().for_each(|finding| writeln!(text, "{:?}: {}", finding.state, words.say(&finding.message)).unwrap());
    for line in &view.timeline {
        let since = line.since_birth.as_deref().unwrap_or("");
        writeln!(text, "{:>8} {since:>8}  {}{}", line.clock, words.say(&line.message), if line.late { "  (late)" } else { "" })
            .unwrap();
        line.earlier.iter().for_each(|old| {
            writeln!(text, "                    was: {} {}; {}", old.clock, words.say(&old.message), old.reason).unwrap();
        });
        line.oddities.iter().for_each(|odd| writeln!(text, "                    odd: {}", words.say(odd)).unwrap());
    }
    text
}

#[test]
fn it_plays_as_written() {
    let mut drill = Drill::begin(RehearsalMode::Watch);
    drill.pass(300);
    insta::assert_snapshot!("five minutes in", read(&drill.birth()));
    drill.pass(2_700);
    let end = drill.birth();
    insta::assert_snapshot!("at the end", read(&end));
    assert!(end.rehearsal);
    assert!(drill.status().rehearsal.unwrap().ended);
}

/// What a midwife would have written in a log: each minute in which something is recorded, or in which the protocol's word
/// on it changes.
fn log(scenario: ScenarioName) -> String {
    let words = Words::english();
    let mut drill = Drill::play(scenario, RehearsalMode::Watch);
    let (mut text, mut told, mut seen) = (String::new(), Vec::new(), 0);
    while !drill.status().rehearsal.unwrap().ended {
        drill.pass(60);
        let view = drill.birth();
        let since = view.third_stage.as_ref().map_or("", |stage| stage.text.as_str()).to_owned();
        let lines = view.timeline.iter().skip(seen).map(|line| format!("{}  {}", line.clock, words.say(&line.message)));
        let graver = |finding: &&Finding| finding.level.is_some() && !told.contains(&key(finding));
        let passed = view.findings.iter().filter(graver);
        let passed: Vec<String> = passed
            .map(|finding| {
                let threshold = finding.threshold.as_ref().unwrap();
                let status = words.say(&threshold.status.name());
                format!(
                    "          {:?}: {} [{}; {status}]",
                    finding.level.unwrap(),
                    words.say(&finding.message),
                    threshold.source
                )
            })
            .collect();
        let body: Vec<String> = lines.chain(passed).collect();
        if !body.is_empty() {
            writeln!(text, "{}  third stage {since}", view.clock).unwrap();
            body.iter().for_each(|line| writeln!(text, "  {line}").unwrap());
        }
        told = view.findings.iter().map(key).collect();
        seen = view.timeline.len();
    }
    text
}

/// What a finding is about and how grave it is, whatever its value.
fn key(finding: &Finding) -> String {
    let source = finding.threshold.as_ref().map(|threshold| &threshold.source);
    let limit = finding.message.args.get("limit");
    format!("{:?} {:?} {source:?} {limit:?}", finding.about, finding.level)
}

#[test]
fn the_findings_of_each_night_read_like_a_log() {
    for scenario in ScenarioName::ALL {
        insta::assert_snapshot!(format!("log of {scenario:?}"), log(scenario));
    }
}

#[test]
fn its_record_is_marked_and_holds_the_durations() {
    let mut drill = Drill::begin(RehearsalMode::Watch);
    drill.pass(3_000);
    let birth = drill.birth_id();
    let Response::WriteFile { path, pages, .. } =
        drill.session.call(Request::WriteFile { birth, file: Outgoing::Record, language: None }).unwrap()
    else {
        unreachable!()
    };
    assert_eq!(pages, 5, "{path}");
    let bytes = std::fs::read(&path).unwrap();
    assert!(bytes.starts_with(b"%PDF-"));
    assert!(path.contains("rehearsal-2026-11-25-"), "{path}");
    assert!(std::path::Path::new(&path).starts_with(drill.folder.path()));
}

#[test]
fn in_a_drill_the_person_records() {
    let mut drill = Drill::begin(RehearsalMode::Drill);
    drill.pass(500);
    assert_eq!(drill.birth().timeline.len(), 2, "the chart is opened and a protocol chosen, nothing else");
    let cues = drill.status().rehearsal.unwrap().cues;
    assert_eq!(Words::english().say(cues.last().unwrap()), "Between two fingers the cord has gone still.");
}

#[test]
fn it_leaves_nothing_behind_and_touches_no_practice() {
    let mut drill = Drill::begin(RehearsalMode::Watch);
    drill.pass(3_000);
    let unlock = drill.session.call(Request::Unlock { passphrase: "whatever it is".to_owned() });
    assert_eq!(unlock.unwrap_err().code, ErrorCode::Rehearsal);
    drill.session.call(Request::EndRehearsal).unwrap();
    let status = drill.status();
    assert_eq!((status.door, status.rehearsal.is_none()), (Door::NoPractice, true));
    assert!(!drill.folder.path().join("data").exists());
}

#[test]
fn every_cue_stands_in_the_catalogue() {
    let words = Words::english();
    for name in ScenarioName::ALL {
        let scenario = Scenario::named(name).unwrap();
        assert!(words.has(&scenario.name));
        for cue in scenario.steps.iter().filter_map(|step| step.cue.as_ref()) {
            assert!(words.has(&format!("{}-{cue}", scenario.name)), "{cue}");
        }
    }
}
