//! Files through the one door: handed over in parts, read back in parts, and nothing of them left behind.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

use std::fs;
use std::io::Cursor;
use std::path::Path;
use std::sync::Arc;

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use image::{ImageFormat, Rgb, RgbImage};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Answer, Fact, Photo, Practice};
use secundine_domain::file::FileId;
use secundine_domain::photo::{Pixel, Reference, Tracing};
use secundine_domain::time::Stamp;
use secundine_record::fhir;
use secundine_session::api::{ApiError, At, ErrorCode, FileKind, KeptFile, KeptPicture, Outgoing, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::FILES;
use tempfile::TempDir;

const PART: usize = 1 << 20;
const PASSPHRASE: &str = "seven quiet herons";

struct Desk {
    session: Session,
    folder: TempDir,
    recovery: String,
}

impl Desk {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None });
        let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
        let mut session = Session::new(paths, Arc::new(clock));
        let practice =
            Practice { name: "Heron House".to_owned(), practitioner: "Ida".to_owned(), role: String::new(), protocol: None };
        let passphrase = PASSPHRASE.to_owned();
        let Response::CreatePractice { recovery } = session.call(Request::CreatePractice { practice, passphrase }).unwrap()
        else {
            unreachable!()
        };
        Self { session, folder, recovery: recovery.identity }
    }

    fn part(&mut self, kind: FileKind, offset: usize, part: &[u8], end: bool) -> Result<Option<KeptFile>, ApiError> {
        let (offset, base64) = (u32::try_from(offset).unwrap(), BASE64_STANDARD.encode(part));
        match self.session.call(Request::FilePart { kind, offset, base64, end })? {
            Response::FilePart { kept } => Ok(kept),
            other => unreachable!("{other:?}"),
        }
    }

    fn hand_over(&mut self, kind: FileKind, bytes: &[u8]) -> Result<KeptFile, ApiError> {
        let mut kept = None;
        let last = bytes.len().div_ceil(PART).max(1) - 1;
        for n in 0..=last {
            let part = &bytes[n * PART..bytes.len().min((n + 1) * PART)];
            kept = self.part(kind, n * PART, part, n == last)?;
        }
        Ok(kept.unwrap())
    }

    fn read(&mut self, file: FileId) -> Result<Vec<u8>, ApiError> {
        let mut bytes = Vec::new();
        loop {
            let offset = u32::try_from(bytes.len()).unwrap();
            let Response::ReadFile(part) = self.session.call(Request::ReadFile { file, offset })? else { unreachable!() };
            bytes.extend(BASE64_STANDARD.decode(&part.base64).unwrap());
            if part.base64.is_empty() || bytes.len() == part.length as usize {
                assert_eq!(bytes.len(), part.length as usize);
                return Ok(bytes);
            }
        }
    }

    fn born(&mut self) -> BirthId {
        let Response::BabyBornNow { birth, .. } = self.session.call(Request::BabyBornNow { ago_ms: 0 }).unwrap() else {
            unreachable!()
        };
        birth
    }

    fn record(&mut self, birth: BirthId, fact: Fact) -> Result<(), ApiError> {
        self.session.call(Request::Record { birth, fact, at: At::Now { ago_ms: 0 } }).map(drop)
    }
}

fn said<T: std::fmt::Debug>(answer: Result<T, ApiError>) -> (ErrorCode, String) {
    let error = answer.unwrap_err();
    (error.code, error.message.id)
}

/// A picture that does not pack well.
fn jpeg(side: u32) -> Vec<u8> {
    let image = RgbImage::from_fn(side, side, |x, y| {
        let noise = x.wrapping_mul(2_654_435_761).wrapping_add(y.wrapping_mul(40_503)).wrapping_mul(x ^ y) >> 16;
        Rgb([(noise & 255) as u8, (noise >> 8 & 255) as u8, (x & 255) as u8])
    });
    let mut bytes = Vec::new();
    image.write_to(&mut Cursor::new(&mut bytes), ImageFormat::Jpeg).unwrap();
    bytes
}

/// Every file under a folder.
fn under(folder: &Path) -> Vec<Vec<u8>> {
    let entries: Vec<_> = fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    entries.iter().flat_map(|path| if path.is_dir() { under(path) } else { vec![fs::read(path).unwrap()] }).collect()
}

#[test]
fn a_sound_comes_back_byte_by_byte_and_is_nowhere_in_plain() {
    let mut desk = Desk::new();
    let sound: Vec<u8> = b"canary of a voice, long enough".iter().copied().cycle().take(2 * PART + 77).collect();
    for bytes in [&sound[..], &sound[..PART], &sound[..1], &[]] {
        let kept = desk.hand_over(FileKind::Voice, bytes).unwrap();
        assert_eq!(kept.picture, None);
        assert_eq!(desk.read(kept.file).unwrap(), bytes, "{}", bytes.len());
    }
    let found = under(desk.folder.path());
    assert!(found.len() > 6);
    let canary = &sound[..24];
    assert!(found.iter().all(|bytes| !bytes.windows(24).any(|window| window == canary)));
}

#[test]
fn a_photograph_is_kept_with_a_small_one_and_named_by_a_fact() {
    let mut desk = Desk::new();
    let bytes = jpeg(1_400);
    assert!(bytes.len() > PART, "it takes two parts: {}", bytes.len());
    let kept = desk.hand_over(FileKind::Photo, &bytes).unwrap();
    let picture = kept.picture.unwrap();
    assert_eq!((picture.width, picture.height, picture.focal), (1_400, 1_400, None));
    for (file, side) in [(kept.file, 1_400), (picture.small, 480)] {
        let shown = image::load_from_memory(&desk.read(file).unwrap()).unwrap();
        assert_eq!((shown.width(), shown.height()), (side, side));
    }
    let birth = desk.born();
    let photo = Photo {
        placenta: 1,
        file: kept.file,
        small: picture.small,
        width: picture.width,
        height: picture.height,
        item: Some("lobes".to_owned()),
        words: None,
        focal: None,
    };
    desk.record(birth, Fact::PhotoTaken(photo.clone())).unwrap();
    let other = Photo { item: Some("moon".to_owned()), ..photo };
    assert_eq!(said(desk.record(birth, Fact::PhotoTaken(other))).1, "error-no-item");
    let Response::Verify(view) = desk.session.call(Request::Verify).unwrap() else { unreachable!() };
    assert!(view.ok && view.message.id == "verify-fits-files", "{view:?}");

    fs::remove_file(desk.folder.path().join("data").join(FILES).join(kept.file.to_string())).unwrap();
    assert_eq!(said(desk.read(kept.file)), (ErrorCode::NotFound, "error-no-file".to_owned()));
    let Response::Verify(view) = desk.session.call(Request::Verify).unwrap() else { unreachable!() };
    assert!(!view.ok && view.birth == Some(birth) && view.message.id == "verify-misfit-file-missing", "{view:?}");
}

#[test]
fn parts_come_in_order_and_what_is_refused_leaves_nothing() {
    let mut desk = Desk::new();
    let part = |desk: &mut Desk, offset, bytes: &[u8], end| desk.part(FileKind::Voice, offset, bytes, end);
    assert_eq!(said(part(&mut desk, 1, b"x", true)), (ErrorCode::Impossible, "error-file-part".to_owned()));
    assert_eq!(part(&mut desk, 0, b"first", false).unwrap(), None);
    assert_eq!(said(part(&mut desk, 4, b"x", true)).1, "error-file-part");
    assert_eq!(said(part(&mut desk, 0, &vec![0; PART + 1], true)).1, "error-file-part");
    // A part at 0 begins anew.
    assert_eq!(part(&mut desk, 0, b"again", false).unwrap(), None);
    let kept = part(&mut desk, 5, b" and on", true).unwrap().unwrap();
    assert_eq!(desk.read(kept.file).unwrap(), b"again and on");
    let base64 = "not base64".to_owned();
    assert_eq!(
        said(desk.session.call(Request::FilePart { kind: FileKind::Voice, offset: 0, base64, end: true })).1,
        "error-file-part"
    );

    let full = vec![7; PART];
    for n in 0..32 {
        part(&mut desk, n * PART, &full, false).unwrap();
    }
    assert_eq!(said(part(&mut desk, 32 * PART, b"x", true)).1, "error-file-large");
    for (bytes, id) in [(&b"GIF89a"[..], "error-no-picture"), (b"", "error-no-picture")] {
        assert_eq!(said(desk.hand_over(FileKind::Photo, bytes)), (ErrorCode::Impossible, id.to_owned()));
    }
    assert_eq!(fs::read_dir(desk.folder.path().join("data").join(FILES)).unwrap().count(), 1);
}

#[test]
fn the_lock_forgets_what_was_on_its_way_and_shows_nothing() {
    let mut desk = Desk::new();
    let kept = desk.hand_over(FileKind::Voice, &vec![1; 2 * PART]).unwrap();
    desk.session.call(Request::ReadFile { file: kept.file, offset: 0 }).unwrap();
    desk.part(FileKind::Voice, 0, b"half a", false).unwrap();
    desk.session.call(Request::Lock).unwrap();
    assert_eq!(said(desk.read(kept.file)).0, ErrorCode::Locked);
    assert_eq!(said(desk.part(FileKind::Voice, 6, b" file", true)).0, ErrorCode::Locked);
    desk.session.call(Request::Unlock { passphrase: desk.recovery.clone() }).unwrap();
    assert_eq!(said(desk.part(FileKind::Voice, 6, b" file", true)).1, "error-file-part");
    assert_eq!(desk.read(kept.file).unwrap().len(), 2 * PART);
}

/// Two cards 500 mm below a lens of 3,000 pixels, the camera turned about the picture's middle line by so many degrees.
fn tracing(degrees: f64) -> Tracing {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let pixel = |(x, y): (f64, f64)| {
        let deep = 500.0 + x * sin;
        let tenths = |value: f64| (value * 10.0).round() as i32;
        Pixel { x: tenths(2_000.0 + 3_000.0 * x * cos / deep), y: tenths(1_500.0 + 3_000.0 * y / deep) }
    };
    let card = |x: f64| [(x, -42.8), (x + 53.98, -42.8), (x + 53.98, 42.8), (x, 42.8)].map(pixel);
    let outline = (0..36).map(|n| f64::from(n) * std::f64::consts::TAU / 36.0);
    Tracing {
        reference: Reference::TwoCards,
        corners: [card(-170.0), card(110.0)].concat(),
        outline: outline.map(|angle| pixel((90.0 * angle.cos(), 80.0 * angle.sin()))).collect(),
        insertion: Some(pixel((0.0, 0.0))),
        thickness: 20,
    }
}

#[test]
fn photographs_go_along_in_a_bundle_where_that_is_asked_for() {
    let mut desk = Desk::new();
    let birth = desk.born();
    desk.record(birth, Fact::PlacentaBorn { babies: vec![1] }).unwrap();
    let kept = desk.hand_over(FileKind::Photo, &jpeg(300)).unwrap();
    let KeptPicture { small, width, height, focal, .. } = kept.picture.unwrap();
    let words = Some("</rim> & cord".to_owned());
    let photo = Photo { placenta: 1, file: kept.file, small, width, height, item: None, words, focal };
    desk.record(birth, Fact::PhotoTaken(photo.clone())).unwrap();
    let write = |desk: &mut Desk, photos: bool| {
        let file = Outgoing::Fhir { photos };
        match desk.session.call(Request::WriteFile { birth, file, language: None })? {
            Response::WriteFile { path, bytes, .. } => Ok((fs::read(path).unwrap(), bytes)),
            other => unreachable!("{other:?}"),
        }
    };
    let pictures = |bundle: &[u8]| -> Vec<Vec<u8>> {
        let bundle: serde_json::Value = serde_json::from_slice(bundle).unwrap();
        let all = bundle["entry"].as_array().unwrap().iter().map(|one| &one["resource"]);
        let files = all.filter(|one| one["contentType"] == "image/jpeg");
        files.map(|one| BASE64_STANDARD.decode(one["data"].as_str().unwrap()).unwrap()).collect()
    };
    let (without, least) = write(&mut desk, false).unwrap();
    let (with, most) = write(&mut desk, true).unwrap();
    assert_eq!((least as usize, most as usize), (without.len(), with.len()), "its size is told");
    assert_eq!((pictures(&without), pictures(&with)), (vec![], vec![desk.read(kept.file).unwrap()]));
    assert_eq!(fhir::read(&with).unwrap(), fhir::read(&without).unwrap(), "what is read back are the entries");

    // One that is not here is told, and the bundle can still be had without.
    let nowhere = Photo { file: FileId([7; 32]), ..photo };
    desk.record(birth, Fact::PhotoTaken(nowhere)).unwrap();
    assert_eq!(said(write(&mut desk, true)), (ErrorCode::NotFound, "error-no-file".to_owned()));
    assert!(write(&mut desk, false).is_ok());
}

#[test]
fn a_disc_is_measured_by_the_core_and_offered_to_the_examination() {
    let mut desk = Desk::new();
    let birth = desk.born();
    desk.record(birth, Fact::PlacentaBorn { babies: vec![1] }).unwrap();
    let (file, small) = (FileId([1; 32]), FileId([2; 32]));
    let measure = |desk: &mut Desk, tracing: Tracing, keep: bool| match desk.session.call(Request::MeasurePhoto {
        birth,
        file,
        tracing,
        keep,
    })? {
        Response::MeasurePhoto { measured, entry } => Ok((measured, entry)),
        other => unreachable!("{other:?}"),
    };
    assert_eq!(said(measure(&mut desk, tracing(5.0), true)), (ErrorCode::NotFound, "error-no-photo".to_owned()));
    let photo = Photo { placenta: 1, file, small, width: 4_000, height: 3_000, item: None, words: None, focal: Some(3_000) };
    desk.record(birth, Fact::PhotoTaken(photo)).unwrap();
    assert_eq!(said(measure(&mut desk, tracing(27.0), true)).1, "photo-refused-tilted");
    let view = |desk: &mut Desk| match desk.session.call(Request::Birth { birth }).unwrap() {
        Response::Birth(view) => view,
        other => unreachable!("{other:?}"),
    };
    let (measured, entry) = measure(&mut desk, tracing(5.0), false).unwrap();
    assert!(entry.is_none() && view(&mut desk).photos[0].measures.is_empty(), "shown only");
    let (kept, entry) = measure(&mut desk, tracing(5.0), true).unwrap();
    assert_eq!(kept, measured);

    let shown = view(&mut desk);
    let [stands] = shown.photos[0].measures.as_slice() else { unreachable!() };
    assert_eq!(Some(stands.entry), entry);
    // 180 mm, less 20 mm of 500 for the thickness.
    let [length, breadth] = stands.offers.as_slice() else { unreachable!() };
    assert_eq!((length.item.as_str(), &length.answer), ("disc-length", &Answer::Measure { value: 173 }));
    assert_eq!((breadth.item.as_str(), &breadth.answer, breadth.taken), ("disc-breadth", &Answer::Measure { value: 154 }, false));
    let answer = length.answer.clone();
    desk.record(birth, Fact::Examined { placenta: 1, item: "disc-length".to_owned(), cord: None, answer }).unwrap();
    let again = view(&mut desk);
    let [length, breadth] = again.photos[0].measures[0].offers.as_slice() else { unreachable!() };
    assert!(length.taken && length.entry.is_some() && !breadth.taken && breadth.entry.is_none());

    // What was measured is not written by hand; a photograph that is taken out takes its measures from the list.
    let fact = again.timeline.iter().find(|line| Some(line.entry) == entry).unwrap().fact.clone();
    assert!(matches!(fact, Fact::PhotoMeasured(_)));
    assert_eq!(said(desk.record(birth, fact)).1, "error-not-recordable");
    let reason = "blurred".to_owned();
    desk.session.call(Request::Retract { birth, entry: again.photos[0].entry, reason }).unwrap();
    assert!(view(&mut desk).photos.is_empty());
    assert_eq!(said(measure(&mut desk, tracing(5.0), true)).1, "error-no-photo");
}
