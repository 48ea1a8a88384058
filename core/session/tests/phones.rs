//! Two phones of one practice at one birth: joined by a code, the clocks compared, the charts merged.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
#![allow(clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::fs;
use std::sync::Arc;

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use image::{GrayImage, ImageFormat, Luma};
use secundine_domain::assess::FindingState;
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Client, Fact, Loss, Practice};
use secundine_domain::quantity::Volume;
use secundine_domain::time::{Boot, Certainty, Stamp};
use secundine_record::words::Words;
use secundine_session::api::{
    AlikeView, ApiError, At, BirthView, CodeRead, CodeTaken, CodeView, ErrorCode, Phase, QrView, Request, Response,
};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use tempfile::TempDir;

#[path = "common/backed.rs"]
mod backed;
#[path = "common/code.rs"]
#[allow(dead_code, reason = "only the modules are read here")]
mod code;

use backed::back_up;

const PASSPHRASE: &str = "seven quiet herons";
const START: i64 = 1_795_570_800_000;
const HOUR: i64 = 3_600_000;

struct Phone {
    session: Session,
    clock: HandClock,
    _folder: TempDir,
}

impl Phone {
    fn empty(boot: &str, wall_ms: i64) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let boot = Some(Boot { id: boot.to_owned(), since_ms: 9_000_000 });
        let clock = HandClock::at(Stamp { wall_ms, offset_min: 60, zone: None, boot });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let session = Session::new(paths, Arc::new(clock.clone()));
        Self { session, clock, _folder: folder }
    }

    fn call(&mut self, request: Request) -> Result<Response, ApiError> {
        self.session.call(request)
    }

    /// Gives everything of this phone to another one.
    fn give_to(&mut self, other: &mut Self) {
        // A backup is named by the second.
        self.clock.advance(1_000);
        let made = back_up(&mut self.session);
        let base64 = BASE64_STANDARD.encode(fs::read(made.path).unwrap());
        other.call(Request::BackupPart { offset: 0, base64 }).unwrap();
        other.call(Request::Restore { passphrase: PASSPHRASE.to_owned() }).unwrap();
    }

    fn mark(&mut self, birth: BirthId, fact: Fact) {
        self.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).unwrap();
    }

    fn view(&mut self, birth: BirthId) -> BirthView {
        let Response::Birth(view) = self.call(Request::Birth { birth }).unwrap() else { unreachable!() };
        *view
    }

    fn show(&mut self, birth: BirthId, answer: bool) -> CodeView {
        let Response::ShowCode(code) = self.call(Request::ShowCode { birth, answer }).unwrap() else { unreachable!() };
        code
    }

    fn read(&mut self, picture: Option<String>, text: Option<String>) -> Result<CodeRead, ApiError> {
        let Response::ReadCode(read) = self.call(Request::ReadCode { picture, text })? else { unreachable!() };
        Ok(read)
    }

    fn take(&mut self, text: &str, ago_ms: Option<u32>) -> Result<CodeTaken, ApiError> {
        let Response::TakeCode(taken) = self.call(Request::TakeCode { text: text.to_owned(), ago_ms })? else { unreachable!() };
        Ok(taken)
    }
}

/// Two phones of one practice: the second was set up from a backup of the first. Its clock is so far ahead.
fn two(ahead_ms: i64) -> (Phone, Phone) {
    let mut a = Phone::empty("of a", START);
    let (name, practitioner, role) = ("Heron House".to_owned(), "Ida".to_owned(), "midwife".to_owned());
    let practice = Practice { name, practitioner, role, protocol: Some("nice-rcog".to_owned()) };
    a.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
    let mut b = Phone::empty("of b", START + 1_000 + ahead_ms);
    a.give_to(&mut b);
    (a, b)
}

fn pass(a: &Phone, b: &Phone, ms: i64) {
    a.clock.advance(ms);
    b.clock.advance(ms);
}

fn born(phone: &mut Phone) -> BirthId {
    let Response::BabyBornNow { birth, .. } = phone.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else { unreachable!() };
    birth
}

/// A picture as another phone's camera may take it: the code somewhere on it, turned, grey and a little blurred.
fn picture(code: &QrView) -> String {
    let dark = code::modules(code);
    let (scale, quiet, side) = (9_u32, 90_u32, u32::try_from(dark.len()).unwrap());
    let pixels = side * scale + 2 * quiet;
    let sharp = GrayImage::from_fn(pixels + 200, pixels + 340, |x, y| {
        let module = |at: u32| at.checked_sub(quiet + 60).map(|at| at / scale).filter(|at| *at < side);
        match (module(x), module(y)) {
            (Some(x), Some(y)) if dark[y as usize][x as usize] => Luma([40]),
            _ if x > quiet / 2 && y > quiet / 2 => Luma([210]),
            _ => Luma([90]),
        }
    });
    let blurred = image::imageops::rotate90(&image::imageops::blur(&sharp, 1.5));
    let mut bytes = Vec::new();
    blurred.write_to(&mut std::io::Cursor::new(&mut bytes), ImageFormat::Jpeg).unwrap();
    BASE64_STANDARD.encode(bytes)
}

fn say(message: &secundine_domain::message::Message) -> String {
    Words::english().say(message)
}

fn since(view: &BirthView) -> Vec<(String, String)> {
    let marks = view.timeline.iter().filter(|line| line.fact.is_mark() || matches!(line.fact, Fact::BloodLoss(_)));
    marks.map(|line| (say(&line.message), line.since_birth.clone().unwrap())).collect()
}

#[test]
fn two_phones_an_hour_apart_record_one_birth_and_their_charts_merge() {
    let (mut a, mut b) = two(HOUR);
    let birth = born(&mut a);
    a.mark(birth, Fact::CareChosen { care: secundine_domain::fact::Care::Physiological });
    pass(&a, &b, 4 * 60_000);

    // A shows, B reads a picture that is some seconds old.
    let code = a.show(birth, false);
    pass(&a, &b, 700);
    let read = b.read(Some(picture(&code.code)), None).unwrap();
    assert_eq!((read.text.as_str(), read.birth, read.answer, read.here), (code.text.as_str(), birth, false, false));
    pass(&a, &b, 5_000);
    let taken = b.take(&read.text, Some(5_000)).unwrap();
    assert_eq!(say(&taken.compared.unwrap()), "Clocks compared: the other phone is 59 min 50 s behind this one (± 10 s)");

    // B answers, A reads: half of what both ways took bounds the difference.
    pass(&a, &b, 9_000);
    let answer = b.show(birth, true);
    pass(&a, &b, 900);
    let read = a.read(Some(picture(&answer.code)), None).unwrap();
    assert!(read.answer);
    let taken = a.take(&read.text, Some(0)).unwrap();
    assert_eq!(say(&taken.compared.unwrap()), "Clocks compared: the other phone is 59 min 59 s ahead of this one (± 1 s)");

    // B knows of the birth what was told, and says what it does not know.
    let view = b.view(birth);
    assert_eq!(
        (view.label.as_str(), view.phase, view.protocol.unwrap().id.as_str()),
        (a.view(birth).label.as_str(), Phase::ThirdStage, "nice-rcog")
    );
    assert_eq!(view.phones.awaits.map(|message| message.id).as_deref(), Some("phones-partial"));
    assert_eq!(view.babies.len(), 1);
    assert_eq!(a.view(birth).phones.awaits.map(|message| message.id).as_deref(), Some("phones-awaited"));
    // 4:00, and since then all but the 0.7 s that the code was old.
    let stage = view.third_stage.unwrap();
    assert_eq!((stage.elapsed_ms, stage.certainty), (4 * 60_000 + 14_900, Certainty::Measured));

    // Both record, in turn.
    pass(&a, &b, 60_000);
    b.mark(birth, Fact::CordClamped { baby: 1 });
    pass(&a, &b, 20_000);
    a.mark(birth, Fact::CordCut { baby: 1 });
    pass(&a, &b, 240_000);
    b.mark(birth, Fact::PlacentaBorn { babies: vec![1] });
    pass(&a, &b, 30_000);
    a.mark(birth, Fact::BloodLoss(Loss::Jug { volume: Volume::new(200).unwrap() }));

    a.give_to(&mut b);
    b.give_to(&mut a);
    let (on_a, on_b) = (a.view(birth), b.view(birth));
    let told: Vec<_> = since(&on_a).into_iter().map(|(what, _)| what).collect();
    assert_eq!(told, ["Baby born", "Cord clamped", "Cord cut", "Placenta born", "Blood in the jug: 200 mL"]);
    assert_eq!(since(&on_a), since(&on_b));
    for view in [&on_a, &on_b] {
        assert_eq!((view.phase, view.phones.awaits.clone()), (Phase::AfterPlacenta, None));
        let stage = view.third_stage.clone().unwrap();
        assert_eq!(stage.certainty, Certainty::Compared);
        // The placenta came 9:35.6 after the baby.
        assert!((stage.elapsed_ms - 575_600).abs() <= 800, "{stage:?}");
        let beside: Vec<_> = view.timeline.iter().filter(|line| line.common.is_some()).map(|line| line.fact.clone()).collect();
        assert!(beside.contains(&Fact::CordClamped { baby: 1 }) && !beside.contains(&Fact::CordCut { baby: 1 }), "{beside:?}");
        assert!(view.findings.iter().all(|finding| finding.message.id != "finding-elsewhere"));
    }
    assert_eq!(on_a.version, on_b.version);

    // At parting once more: what drifted is shown.
    b.clock.change(|stamp| stamp.boot.as_mut().unwrap().since_ms += 3_000);
    b.clock.change(|stamp| stamp.wall_ms += 3_000);
    let code = a.show(birth, false);
    assert!(b.read(None, Some(code.text.clone())).unwrap().here);
    b.take(&code.text, Some(0)).unwrap();
    let answer = b.show(birth, true);
    let taken = a.take(&answer.text, Some(0)).unwrap();
    assert_eq!(say(&taken.compared.unwrap()), "Clocks compared: the other phone is 1 h 0 min ahead of this one (± 0 s)");
    let phones = a.view(birth).phones;
    assert_eq!(say(&phones.drift.unwrap()), format!("Since {} the difference changed by 3 s (± 1 s)", phones.compared[1].clock));
    assert!(b.view(birth).timeline.iter().filter(|line| matches!(line.fact, Fact::BirthJoined(_))).count() == 1, "joined once");
}

#[test]
fn a_code_that_is_typed_compares_nothing_until_it_is_answered() {
    let (mut a, mut b) = two(-HOUR);
    let birth = born(&mut a);
    let text = a.show(birth, false).text;
    pass(&a, &b, 90_000);
    let taken = b.take(&text, None).unwrap();
    assert!(taken.compared.is_none() && taken.answers);
    assert!(b.view(birth).phones.compared.is_empty());
    let answer = b.show(birth, true).text;
    pass(&a, &b, 90_000);
    let taken = a.take(&answer, None).unwrap();
    assert_eq!(say(&taken.compared.unwrap()), "Clocks compared: the other phone is 1 h 0 min behind this one (± 1 min 30 s)");
}

#[test]
fn a_wall_clock_set_between_code_and_answer_is_not_measured_as_the_way() {
    let (mut a, mut b) = two(0);
    let birth = born(&mut a);
    let text = a.show(birth, false).text;
    a.clock.change(|stamp| stamp.wall_ms += HOUR);
    pass(&a, &b, 1_000);
    b.take(&text, Some(0)).unwrap();
    b.clock.change(|stamp| stamp.wall_ms -= HOUR);
    let answer = b.show(birth, true).text;
    pass(&a, &b, 1_000);
    let taken = a.take(&answer, Some(0)).unwrap();
    // By what the clocks say now it is an hour: A's was set forth, B's was told as it ran when it read.
    assert_eq!(say(&taken.compared.unwrap()), "Clocks compared: the other phone is 1 h 0 min behind this one (± 1 s)");
}

#[test]
fn the_joined_birth_stands_in_the_list_and_outlasts_the_lock() {
    let (mut a, mut b) = two(0);
    born(&mut b);
    pass(&a, &b, 60_000);
    let birth = born(&mut a);
    b.take(&a.show(birth, false).text, Some(0)).unwrap();
    b.call(Request::Lock).unwrap();
    b.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    let Response::Births { births, .. } = b.call(Request::Births { skip: 0, take: 9 }).unwrap() else { unreachable!() };
    assert_eq!(births[0].birth, birth, "the latest first");
    // What was read is forgotten with the lock.
    let error = b.call(Request::ShowCode { birth, answer: true }).unwrap_err();
    assert_eq!(error.message.id, "error-no-code-read");
}

#[test]
fn what_is_no_code_or_not_for_this_phone_is_refused_and_writes_nothing() {
    let (mut a, mut b) = two(0);
    let birth = born(&mut a);
    let id = |error: ApiError| error.message.id;
    let blank = GrayImage::from_pixel(300, 300, Luma([200]));
    let mut bytes = Vec::new();
    blank.write_to(&mut std::io::Cursor::new(&mut bytes), ImageFormat::Png).unwrap();
    assert_eq!(id(b.read(Some(BASE64_STANDARD.encode(bytes)), None).unwrap_err()), "error-no-code-seen");
    assert_eq!(id(b.read(Some("AAAA".to_owned()), None).unwrap_err()), "error-no-picture");
    let handover = a.call(Request::HandoverCode { birth, language: None }).unwrap();
    let Response::HandoverCode(handover) = handover else { unreachable!() };
    assert_eq!(id(b.read(Some(picture(&handover.code)), None).unwrap_err()), "error-code-not-ours");
    let code = a.show(birth, false);
    assert_eq!(id(a.take(&code.text, Some(0)).unwrap_err()), "error-code-own");
    b.take(&code.text, Some(0)).unwrap();
    let answer = b.show(birth, true).text;
    assert_eq!(id(b.take(&answer, Some(0)).unwrap_err()), "error-code-own");
    // An answer to a code of before the lock.
    a.call(Request::Lock).unwrap();
    a.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    a.show(birth, false);
    assert_eq!(id(a.take(&answer, Some(0)).unwrap_err()), "error-code-not-asked");
    assert!(a.view(birth).phones.compared.is_empty());
    for request in
        [Request::ShowCode { birth: BirthId::PRACTICE, answer: false }, Request::TakeCode { text: String::new(), ago_ms: None }]
    {
        assert!(matches!(a.call(request).unwrap_err().code, ErrorCode::NotFound | ErrorCode::Impossible));
    }
}

#[test]
fn nothing_is_called_passed_on_the_phone_that_joined() {
    let (mut a, mut b) = two(0);
    let birth = born(&mut a);
    b.take(&a.show(birth, false).text, Some(0)).unwrap();
    pass(&a, &b, 3 * HOUR);
    let (on_a, on_b) = (a.view(birth), b.view(birth));
    assert!(on_b.findings.iter().all(|finding| !matches!(finding.state, FindingState::Near | FindingState::Passed)));
    assert!(on_b.due.is_empty());
    assert_ne!(on_a.findings, on_b.findings);
}

/// The mother at a birth that is registered on this phone.
fn registered(phone: &mut Phone, label: &str, name: &str, day: &str) -> BirthId {
    let Response::RegisterBirth { birth } = phone.call(Request::RegisterBirth { label: label.to_owned() }).unwrap() else {
        unreachable!()
    };
    let client = Client { name: name.to_owned(), born: Some(day.to_owned()), ..Client::default() };
    phone.mark(birth, Fact::ClientRecorded(client));
    birth
}

fn listed(phone: &mut Phone) -> (Vec<BirthId>, Vec<AlikeView>) {
    let Response::Births { births, alike, .. } = phone.call(Request::Births { skip: 0, take: 9 }).unwrap() else {
        unreachable!()
    };
    (births.iter().map(|line| line.birth).collect(), alike)
}

#[test]
fn a_birth_that_two_phones_registered_is_one_once_she_says_so() {
    let (mut a, mut b) = two(0);
    let one = registered(&mut a, "blue door", "Zoë Quill", "1996-11-20");
    registered(&mut a, "green door", "Zoë Quick", "1996-11-20");
    pass(&a, &b, 60_000);
    let other = registered(&mut b, "mill", " zoe  quill", "1996-11-20");
    a.mark(one, Fact::BabyBorn { baby: 1 });
    b.mark(other, Fact::PlacentaBorn { babies: vec![1] });
    pass(&a, &b, 60_000);
    let signed_alone = a.view(one).version;
    a.call(Request::Sign { birth: one, signer: None }).unwrap();
    a.give_to(&mut b);
    pass(&a, &b, 60_000);
    let (all, alike) = listed(&mut b);
    assert_eq!((all.len(), alike.len()), (3, 1), "{alike:?}");
    assert_eq!([alike[0].one, alike[0].other].iter().collect::<std::collections::BTreeSet<_>>(), [one, other].iter().collect());

    // Not the same: it is not asked again.
    let Response::SameBirth { entry } = b.call(Request::SameBirth { birth: other, other: one, same: false }).unwrap() else {
        unreachable!()
    };
    assert_eq!(listed(&mut b).1, []);
    let retract = Request::Retract { birth: other, entry, reason: "it is".to_owned() };
    b.call(retract).unwrap();
    assert_eq!(listed(&mut b).1.len(), 1);

    // The same: one line, and one chart under either name, on the other phone too.
    let said = b.call(Request::SameBirth { birth: one, other, same: true }).unwrap();
    let Response::SameBirth { entry } = said else { unreachable!() };
    b.give_to(&mut a);
    for phone in [&mut a, &mut b] {
        let (all, alike) = listed(phone);
        assert_eq!((all.len(), alike.len()), (2, 0));
        let (under_one, under_other) = (phone.view(one), phone.view(other));
        assert_eq!(under_one.phase, Phase::AfterPlacenta);
        assert_eq!((under_one.version.clone(), under_one.timeline.len()), (under_other.version, under_other.timeline.len()));
        // What was signed is as it was, and it is told what was not in it.
        let signature = under_one.timeline.iter().find_map(|line| match &line.fact {
            Fact::Signed { version, .. } => Some(version.clone()),
            _ => None,
        });
        assert_eq!(signature, Some(signed_alone.clone()));
        assert_eq!(under_one.signed.len(), 1);
        assert!(say(&under_one.signed[0].said).contains("without"), "{}", say(&under_one.signed[0].said));
    }
    // What is put right of one goes with it.
    let placenta = a.view(one).timeline.into_iter().find(|line| matches!(line.fact, Fact::PlacentaBorn { .. })).unwrap();
    a.call(Request::Retract { birth: one, entry: placenta.entry, reason: "slip".to_owned() }).unwrap();
    assert_eq!(a.view(other).phase, Phase::ThirdStage);

    a.call(Request::Retract { birth: one, entry, reason: "two births".to_owned() }).unwrap();
    assert_eq!(listed(&mut a).0.len(), 3);
    assert!(a.view(other).timeline.iter().any(|line| line.entry == placenta.entry && line.retracted));
    assert!(a.view(one).timeline.iter().all(|line| line.entry != placenta.entry));
}

#[test]
fn two_signatures_on_differing_records_say_what_was_not_in_each() {
    let (mut a, mut b) = two(0);
    let birth = born(&mut a);
    a.give_to(&mut b);
    pass(&a, &b, 60_000);
    a.mark(birth, Fact::CordClamped { baby: 1 });
    b.mark(birth, Fact::CordCut { baby: 1 });
    b.mark(birth, Fact::PlacentaBorn { babies: vec![1] });
    pass(&a, &b, 60_000);
    a.call(Request::Sign { birth, signer: None }).unwrap();
    pass(&a, &b, 60_000);
    b.call(Request::Sign { birth, signer: None }).unwrap();
    assert_eq!(a.view(birth).signed, [], "each phone by itself sees nothing amiss");
    a.give_to(&mut b);
    b.give_to(&mut a);
    let said = |phone: &mut Phone| phone.view(birth).signed.iter().map(|signed| say(&signed.said)).collect::<Vec<_>>();
    let [by_a, by_b] = &said(&mut a)[..] else { unreachable!() };
    assert!(by_a.ends_with("without 2 entries that were written before it on another phone"), "{by_a}");
    assert!(by_b.ends_with("without 2 entries that were written before it on another phone"), "{by_b}");
    assert_eq!(said(&mut a), said(&mut b));
    assert_eq!(a.view(birth).phase, Phase::AfterPlacenta, "nobody has signed the whole");
    // A signature on all of it says so.
    pass(&a, &b, 60_000);
    a.call(Request::Sign { birth, signer: None }).unwrap();
    assert!(said(&mut a)[2].ends_with("all that was written before it"));
    assert_eq!(a.view(birth).phase, Phase::Signed);
}
