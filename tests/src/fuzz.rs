//! What is tried on any bytes, by the fuzzers (`make fuzz`) and again by every test run on the bytes that they once found
//! worth keeping (`tests/fuzz/corpus`). Each fails by a panic where what must hold does not.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use age::x25519;
use secundine_domain::assess::assess;
use secundine_domain::chart::{Chart, fold};
use secundine_domain::due::due;
use secundine_domain::entry::Entry;
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::message::Arg;
use secundine_domain::protocol::{OwnProtocol, Protocol};
use secundine_domain::time::Stamp;
use secundine_record::Origin;
use secundine_record::fhir::{self, Handover};
use secundine_record::words::Words;
use secundine_session::api::Request;
use secundine_session::{bad_request, picture as pictures};
use secundine_store::{Extract, Passphrase, StoreError, check_archive, check_backup, fuzzing, salvage_pages};

/// What is tried on any bytes.
pub type Target = fn(&[u8]);

/// Every target by its name, which is also the name of its corpus.
pub const TARGETS: [(&str, Target); 13] = [
    ("stored_facts", stored_facts),
    ("inbox", inbox),
    ("mark", mark),
    ("protocol", protocol),
    ("head", head),
    ("key_file", key_file),
    ("backup", backup),
    ("salvage", salvage),
    ("request", request),
    ("picture", picture),
    ("bundle", bundle),
    ("code", code),
    ("envelope", envelope),
];

/// Opens the corpus's inbox files and key files; belongs to no practice.
pub const IDENTITY: &str = "AGE-SECRET-KEY-1W4273P3KSACDY0FU67KGF3RSYY5Q7MMF7JAZPHGW2008C5J3RSCSY09R47";
/// Opens the corpus's key files.
pub const PASSPHRASE: &str = "seven quiet herons";
/// The chains whose heads the corpus holds.
pub const HEADS: [u64; 3] = [1, 1_234, u64::MAX];

/// Most entries that are read together: beyond that one run takes too long to try many.
const ENTRIES: usize = 40;

static OWN: LazyLock<Option<x25519::Identity>> = LazyLock::new(|| IDENTITY.parse().ok());

/// Stored entries, one a line. What decodes is read back as it was; the chart of any entries can be read.
pub fn stored_facts(bytes: &[u8]) {
    let entries: Vec<Entry> = bytes.split(|byte| *byte == b'\n').filter_map(decoded).take(ENTRIES).collect();
    let Some(first) = entries.first() else { return };
    let chart = fold(first.birth, &entries);
    assert_eq!(chart, fold(first.birth, entries.iter().rev()), "the order of entries changes nothing");
    for entry in &entries {
        read_chart(&chart, &entry.recorded);
    }
}

fn decoded(line: &[u8]) -> Option<Entry> {
    let entry = Entry::decode(line).ok()?;
    let again = entry.encode().and_then(|bytes| Entry::decode(&bytes));
    assert_eq!(again.ok().as_ref(), Some(&entry), "read back as it was");
    Some(entry)
}

/// Everything that is told of a chart.
fn read_chart(chart: &Chart, now: &Stamp) {
    for protocol in Protocol::published().iter().map(Some).chain([chart.protocol(), None]) {
        let _ = (assess(chart, protocol, now), due(chart, protocol, now));
    }
    for line in &chart.lines {
        let entry = line.shown();
        let _ = (chart.say(&entry.fact), chart.written_apart(entry), chart.since_birth(&entry.occurred));
        let _ = (entry.occurred.date(), entry.occurred.clock(), line.current().fact.check());
        let _ = Protocol::published().iter().filter(|protocol| chart.is_late(entry, protocol)).count();
    }
    chart.babies.keys().filter_map(|baby| chart.cord_pulsation(*baby, now)).for_each(|elapsed| drop(elapsed.words()));
    chart.oddities.iter().for_each(|odd| drop(odd.message()));
}

/// A file that is to be a photograph. What is taken is a picture again, of the same size.
pub fn picture(bytes: &[u8]) {
    let Ok(taken) = pictures::take(bytes) else { return };
    let again = pictures::take(&taken.file).map(|again| (again.width, again.height, again.focal));
    assert_eq!(again, Ok((taken.width, taken.height, None)), "what is kept is a picture, and tells nothing of the camera");
}

/// A bundle of FHIR. What is read is one birth in order, and the bundle of its entries reads as the same entries.
pub fn bundle(bytes: &[u8]) {
    let Ok(entries) = fhir::read(bytes) else { return };
    let Some(Entry { birth, recorded, .. }) = entries.first() else { return };
    assert!(entries.iter().all(|entry| entry.birth == *birth) && entries.is_sorted_by(|one, next| one.id < next.id));
    let practice = Practice { name: String::new(), practitioner: String::new(), role: String::new(), protocol: None };
    let origin = Origin { practice: &practice, version: "", written: recorded, words: Words::english() };
    let chart = fold(*birth, &entries);
    let handover =
        Handover { birth: *birth, chart: &chart, entries: &entries, origin: &origin, record: None, photos: &BTreeMap::new() };
    let again = fhir::write(&handover, fhir::Form::Document).and_then(|bytes| fhir::read(&bytes));
    assert_eq!(again.ok(), Some(entries), "read back as it was");
}

/// The text of a code that another phone shows. What is read is written again as one text.
pub fn code(bytes: &[u8]) {
    let Some(written) = std::str::from_utf8(bytes).ok().and_then(secundine_session::fuzzing::code) else { return };
    assert_eq!(secundine_session::fuzzing::code(&written).as_ref(), Some(&written));
}

/// What lies in a bucket: an object, or what is sealed in one.
pub fn envelope(bytes: &[u8]) {
    use secundine_session::fuzzing::sync;
    let _ = sync::body(bytes);
    let opened = sync::opened(bytes);
    let _ = opened.as_deref().map(sync::body);
    // Whatever is sealed comes out as it was.
    if opened.is_none() {
        let again = sync::object(bytes.len() % 4, bytes).and_then(|object| sync::opened(&object));
        assert_eq!(again.as_deref(), Some(bytes));
    }
}

/// A file of the inbox, or what follows its header. Records that verify are as many as the lengths tell, or fewer.
pub fn inbox(bytes: &[u8]) {
    let Some(read) = OWN.as_ref().and_then(|identity| fuzzing::read_inbox(bytes, identity)) else { return };
    assert_eq!(read.records.len() as u64, read.tail.count);
    assert!(read.records.iter().map(|record| record.len()).sum::<usize>() <= bytes.len());
    let Some(framed) = read.framed else { return };
    assert!(read.tail.count <= framed.count, "nothing verifies past the end");
    assert!(!read.whole || read.tail == framed, "without a key a whole file goes as far");
}

/// A record of the inbox once it is unsealed. One that is read is written again as it was.
pub fn mark(bytes: &[u8]) {
    let Some(written) = secundine_session::fuzzing::rewritten(bytes) else { return };
    assert_eq!(secundine_session::fuzzing::rewritten(&written), Some(written));
}

/// A protocol's text. A bad one is told by its places; a good one can be used, is the same on the page and after its own
/// file, and comes in as a practice's own.
pub fn protocol(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match Protocol::parse(text) {
        Err(errors) => {
            let lines = u32::try_from(text.split('\n').count()).unwrap_or(u32::MAX);
            assert!(!errors.is_empty() && errors.is_sorted_by_key(|error| error.line));
            assert!(errors.iter().all(|error| (1..=lines).contains(&error.line)), "a line that is not there: {errors:?}");
            let placeless = |id: &str| id == "protocol-file-syntax";
            assert!(errors.iter().all(|error| error.path.is_empty() == placeless(&error.problem.id)), "no path: {errors:?}");
        }
        Ok(protocol) => {
            assert_eq!(Protocol::parse(&protocol.file()).as_ref(), Ok(&protocol), "its own file is the same protocol");
            let own = OwnProtocol::of(&protocol);
            let change = OwnProtocol::default().difference(&own);
            assert_eq!(change.problem(), None, "what a file may hold can be written down");
            assert_eq!(OwnProtocol::default().changed(&change), own);
            if let Ok(finished) = own.finish() {
                assert_eq!(Protocol::parse(&finished.file()).as_ref(), Ok(&finished), "and can go out again");
            }
            let page = serde_json::to_string(&protocol).and_then(|page| serde_json::from_str(&page));
            assert_eq!(page.ok().as_ref(), Some(&protocol), "the page is told the same numbers");
            for thresholds in &protocol.watch {
                thresholds.step.iter().for_each(|step| drop(thresholds.watch.value_words(step.value)));
            }
            let _ = protocol.millilitres(u32::MAX);
        }
    }
}

/// A head's text. Nobody can make one without the device's key.
pub fn head(bytes: &[u8]) {
    let told = std::str::from_utf8(bytes).ok().and_then(fuzzing::read_head);
    assert!(told.is_none_or(|n| HEADS.contains(&n)), "a forged head: {told:?}");
}

/// A key file: it opens, or another key is asked for, or it is told to be damaged.
pub fn key_file(bytes: &[u8]) {
    let by_identity = OWN.as_ref().map_or(Ok(()), |identity| fuzzing::open_key_by_identity(bytes, identity));
    let by_passphrase = fuzzing::open_key_by_passphrase(bytes, Passphrase::from(PASSPHRASE.to_owned()));
    for opened in [by_identity, by_passphrase] {
        assert!(matches!(opened, Ok(()) | Err(StoreError::WrongPassphrase | StoreError::DamagedKey(_))), "{opened:?}");
    }
}

/// A backup, and the archive that lies sealed in one: it is read to its end and every entry fits, or it is told why not.
pub fn backup(bytes: &[u8]) {
    if let Ok((entries, births)) = check_archive(bytes) {
        assert!(births <= entries, "every birth has an entry");
    }
    if let Ok(extract) = Extract::read(bytes) {
        assert!(extract.births.values().all(|entries| !entries.is_empty()), "every birth has an entry");
    }
    let sealed = check_backup(bytes, &"0".repeat(64));
    assert!(matches!(sealed, Err(StoreError::NotBackup(_) | StoreError::DamagedBackup(_) | StoreError::OtherPractice)));
}

/// Pages of a damaged store, whether their checksums fit or not: what can be proved is counted, and nothing else.
pub fn salvage(bytes: &[u8]) {
    for whole in [true, false] {
        let report = salvage_pages(bytes, whole);
        assert!(report.births <= report.entries, "every birth has an entry");
    }
}

/// A request's JSON. What parses is written as it was read, and its fact is checked; a refusal quotes nothing.
pub fn request(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match serde_json::from_str::<Request>(text) {
        Ok(request) => {
            let written = serde_json::to_string(&request).ok();
            let again = written.as_deref().and_then(|text| serde_json::from_str::<Request>(text).ok());
            assert_eq!(again.and_then(|request| serde_json::to_string(&request).ok()), written);
            let _ = fact_of(&request).map(Fact::check);
        }
        Err(error) => {
            let told = bad_request(&error).message;
            let quoted = |arg: &Arg| matches!(arg, Arg::Text(text) if text.len() > "a minute".len());
            assert!(!told.args.values().any(quoted), "{told:?}");
        }
    }
}

fn fact_of(request: &Request) -> Option<&Fact> {
    match request {
        Request::Record { fact, .. } => Some(fact),
        Request::Amend { fact, .. } => fact.as_ref(),
        Request::Elsewhere { what } => fact_of(what),
        _ => None,
    }
}
