//! The picture of a birth: what stands in the record stands in it, at its moment, with what became of it.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::sync::Arc;

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Boot, Precision, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{At, BirthView, ChartPicture, PicturePoint, RehearsalMode, Request, Response, ScenarioName};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};

const SPEED: u32 = 60;

struct Drill {
    session: Session,
    clock: HandClock,
    birth: BirthId,
    _folder: tempfile::TempDir,
}

impl Drill {
    /// A birth that has been played for so many seconds.
    fn after(scenario: ScenarioName, seconds: i64) -> Self {
        let folder = tempfile::tempdir().unwrap();
        // 2026-11-25 02:40:00 at UTC+1.
        let boot = Some(Boot { id: "a".to_owned(), since_ms: 5_000_000 });
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock.clone()));
        let begin = Request::Rehearse { scenario, speed: SPEED, mode: RehearsalMode::Watch };
        let Response::Rehearse(status) = session.call(begin).unwrap() else { unreachable!() };
        let birth = status.rehearsal.unwrap().birth.unwrap();
        let drill = Self { session, clock, birth, _folder: folder };
        drill.pass(seconds);
        drill
    }

    fn pass(&self, seconds: i64) {
        self.clock.advance(seconds * 1000 / i64::from(SPEED));
    }

    fn picture(&mut self) -> ChartPicture {
        let Response::ChartPicture(picture) = self.session.call(Request::ChartPicture { birth: self.birth }).unwrap() else {
            unreachable!()
        };
        *picture
    }

    fn view(&mut self) -> BirthView {
        let Response::Birth(view) = self.session.call(Request::Birth { birth: self.birth }).unwrap() else { unreachable!() };
        *view
    }

    fn entry(&mut self, kind: impl Fn(&Fact) -> bool) -> EntryId {
        self.view().timeline.iter().find(|line| kind(&line.fact)).unwrap().entry
    }
}

/// The picture as a person reads it.
fn read(picture: &ChartPicture) -> String {
    let words = Words::english();
    let mut text = String::new();
    let mut span = |name: &str, from_ms: i64, to_ms: i64| writeln!(text, "{name}: {} to {} s", from_ms / 1000, to_ms / 1000);
    span("course", picture.course.from_ms, picture.course.to_ms).unwrap();
    span("whole", picture.whole.from_ms, picture.whole.to_ms).unwrap();
    let stage = picture.third_stage.unwrap();
    span("third stage", stage.from_ms, stage.to_ms).unwrap();
    for row in &picture.rows {
        writeln!(text, "{}", words.say(&row.name)).unwrap();
        row.points.iter().for_each(|point| writeln!(text, "  {}", said(point)).unwrap());
    }
    for lane in &picture.lanes {
        writeln!(text, "{}, {:?}", words.say(&lane.name), lane.grid).unwrap();
        for one in &lane.series {
            writeln!(text, "  {} ({:?})", words.say(&one.name), one.shape).unwrap();
            one.readings.iter().for_each(|is| writeln!(text, "    {}  {}", said(&is.point), words.say(&is.said)).unwrap());
        }
        lane.limits.iter().for_each(|line| writeln!(text, "  {:?} {}", line.level, words.say(&line.said)).unwrap());
    }
    text
}

fn said(point: &PicturePoint) -> String {
    let flags = [(point.corrected, "corrected"), (point.late, "late"), (point.retracted, "taken out")];
    let flags: Vec<&str> = flags.into_iter().filter(|(is, _)| *is).map(|(_, flag)| flag).collect();
    format!("{:>5} s {} {}", point.at_ms / 1000, point.clock, flags.join(", ")).trim_end().to_owned()
}

fn points(picture: &ChartPicture) -> Vec<&PicturePoint> {
    picture.rows.iter().flat_map(|row| &row.points).collect()
}

#[test]
fn the_quiet_night_as_a_picture() {
    insta::assert_snapshot!(read(&Drill::after(ScenarioName::QuietNight, 3_000).picture()));
}

#[test]
fn brisk_bleeding_as_a_picture() {
    insta::assert_snapshot!(read(&Drill::after(ScenarioName::BriskBleeding, 3_300).picture()));
}

#[test]
fn every_entry_stands_in_it_once_and_every_reading_on_its_scale() {
    for scenario in ScenarioName::ALL {
        let mut drill = Drill::after(scenario, 4_000);
        let (picture, view) = (drill.picture(), drill.view());
        let drawn: Vec<EntryId> = points(&picture).iter().map(|point| point.entry).collect();
        let known: BTreeSet<EntryId> = view.timeline.iter().map(|line| line.entry).collect();
        assert_eq!((drawn.len(), drawn.into_iter().collect::<BTreeSet<_>>()), (known.len(), known), "{scenario:?}");
        for point in points(&picture) {
            assert!((picture.whole.from_ms..=picture.whole.to_ms).contains(&point.at_ms), "{scenario:?} {point:?}");
        }
        for lane in &picture.lanes {
            assert!((2..=9).contains(&lane.grid.len()), "{scenario:?} {:?}", lane.grid);
            let values = lane.series.iter().flat_map(|one| &one.readings).map(|reading| reading.value);
            values.chain(lane.grid.iter().copied()).for_each(|value| assert!((lane.low..=lane.high).contains(&value)));
        }
    }
}

#[test]
fn what_was_put_right_moves_and_what_was_taken_out_leaves_the_lanes() {
    let mut drill = Drill::after(ScenarioName::QuietNight, 3_000);
    let before = drill.picture();
    let birth = drill.birth;
    let entry = drill.entry(|fact| matches!(fact, Fact::MotherObserved(_)));
    let at = At::Typed { date: "2026-11-25".to_owned(), clock: "03:00".to_owned(), precision: Precision::Exact };
    let amend = Request::Amend { birth, entry, fact: None, at: Some(at), reason: "read off the wall".to_owned() };
    drill.session.call(amend).unwrap();
    let picture = drill.picture();
    let point = points(&picture).into_iter().find(|point| point.entry == entry).unwrap().clone();
    assert!(point.corrected && point.clock == "03:00");
    // 03:00:00 on the wall, told from what it said at 0.
    assert_eq!((picture.zero_local_ms + point.at_ms) % 86_400_000, 3 * 3_600_000);
    let reading = picture.lanes[1].series[0].readings.iter().find(|reading| reading.point.entry == entry).unwrap();
    assert_eq!(reading.point, point, "the lane has it where the row has it");

    drill.session.call(Request::Retract { birth, entry, reason: "another mother".to_owned() }).unwrap();
    let picture = drill.picture();
    assert!(points(&picture).iter().any(|point| point.entry == entry && point.retracted), "it stays to be seen");
    let read = picture.lanes.iter().flat_map(|lane| &lane.series).flat_map(|one| &one.readings);
    assert_eq!(read.filter(|reading| reading.point.entry == entry).count(), 0);
    assert_eq!(points(&picture).len(), points(&before).len());
}

#[test]
fn it_runs_to_now_while_a_placenta_is_awaited_and_no_further_afterwards() {
    let mut drill = Drill::after(ScenarioName::QuietNight, 400);
    let running = drill.picture();
    assert_eq!(running.course.to_ms, running.now_ms.max(running.course.from_ms + 600_000));
    assert_eq!(running.third_stage.unwrap().to_ms, running.now_ms);
    drill.pass(2_600);
    let ended = drill.picture();
    drill.pass(5 * 86_400);
    let later = drill.picture();
    assert_eq!((later.course, later.third_stage), (ended.course, ended.third_stage), "days later it is the same birth");
    assert!(later.now_ms > ended.now_ms && later.whole.to_ms == later.now_ms);
}

#[test]
fn before_a_birth_it_begins_with_the_first_entry() {
    let picture = Drill::after(ScenarioName::QuietNight, 1).picture();
    assert!(!picture.from_birth && picture.third_stage.is_none() && picture.lanes.is_empty());
    assert_eq!(points(&picture)[0].at_ms, 0);
    assert_eq!(picture.course.to_ms - picture.course.from_ms, 600_000);
}
