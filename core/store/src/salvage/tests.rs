//! Every page harmed in turn: what does not lie on it comes back, and what does is counted.

use std::collections::BTreeSet;

use proptest::prelude::*;
use secundine_domain::entry::{BirthId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Boot, Occurred, Stamp};
use sha2::{Digest, Sha256};
use tempfile::TempDir;

use super::*;

const PAGE: usize = 4096;

/// A practice whose files can be harmed, and what was written into it.
struct Harmed {
    folder: TempDir,
    key: DataKey,
    entries: Vec<Entry>,
}

fn note(id: EntryId, birth: BirthId, letters: usize) -> Entry {
    let recorded = Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None };
    let text = format!("note {} {}", id.n, "x".repeat(letters));
    let occurred = Occurred::Marked(recorded.clone());
    Entry { id, birth, author: "Ida".to_owned(), occurred, recorded, fact: Fact::Noted { text }, amends: None }
}

impl Harmed {
    /// Three births whose notes alternate, each of so many letters, some of their own length, of which one may be erased;
    /// closed, or with its log.
    fn new(entries: u64, letters: impl Fn(u64) -> usize, erased: Option<u64>, closed: bool) -> Self {
        let source = tempfile::tempdir().unwrap();
        let key = DataKey::random().unwrap();
        let mut store = Store::found(source.path(), key.clone()).unwrap();
        let first = store.next_id();
        let of = |n: u64| note(EntryId { n, ..first }, BirthId(EntryId { n: 1 + (n - 1) % 3, ..first }), letters(n));
        let entries: Vec<Entry> = (1..=entries).map(of).collect();
        for entry in &entries {
            store.append(entry).unwrap();
            let stamp =
                Stamp { boot: Some(Boot { id: "run".to_owned(), since_ms: entry.id.n as i64 }), ..entry.recorded.clone() };
            store.beat(&stamp.run().unwrap()).unwrap();
        }
        if let Some(n) = erased {
            store.erase(BirthId(EntryId { n, ..first })).unwrap();
        }
        let folder = if closed {
            store.close().unwrap();
            source
        } else {
            let folder = tempfile::tempdir().unwrap();
            for name in [DATABASE, LOG, HEAD, INBOX_RECIPIENT] {
                fs::copy(source.path().join(name), folder.path().join(name)).unwrap();
            }
            folder
        };
        Self { folder, key, entries }
    }

    /// Small notes, and now and then one that goes on over several pages.
    fn closed() -> Self {
        Self::new(40, |n| if n % 9 == 0 { 9_000 } else { 150 }, None, true)
    }

    /// The same once the second birth is erased.
    fn erased() -> Self {
        Self::new(40, |n| if n % 9 == 0 { 9_000 } else { 150 }, Some(2), true)
    }

    fn logged() -> Self {
        Self::new(40, |_| 150, None, false)
    }

    fn bytes(&self, name: &str) -> Vec<u8> {
        fs::read(self.folder.path().join(name)).unwrap()
    }

    fn put(&self, name: &str, bytes: &[u8]) {
        fs::write(self.folder.path().join(name), bytes).unwrap();
    }

    fn read(&self) -> Result<Salvaged, StoreError> {
        Salvaged::read(self.folder.path(), &self.key)
    }

    fn pages(&self, log: &str) -> Pages {
        let log = fs::read(self.folder.path().join(log)).unwrap_or_default();
        Pages::decrypt(&self.bytes(DATABASE), &log, &self.key.bytes())
    }

    fn all(&self) -> BTreeSet<u64> {
        self.entries.iter().map(|entry| entry.id.n).collect()
    }

    /// What is kept is as it was written, what is missing is counted, and what cannot be proved stands after a gap.
    fn check(&self, salvaged: &Salvaged, place: &str) -> BTreeSet<u64> {
        let kept: BTreeSet<u64> = salvaged.entries.iter().map(|kept| kept.row.n).collect();
        for Kept { row, .. } in &salvaged.entries {
            let written = &self.entries[row.n as usize - 1];
            assert_eq!(row.digest, <[u8; 32]>::from(Sha256::digest(written.encode().unwrap())), "{place}");
            let body = row.body.as_ref().map(|body| Entry::decode(body).unwrap());
            assert_eq!(body, body.as_ref().map(|_| written.clone()), "{place}");
        }
        let whole = salvaged.entries.iter().filter(|kept| kept.row.body.is_some()).count();
        let report = &salvaged.report;
        assert_eq!((report.entries as usize, report.contradicting, report.unreadable), (whole, 0, 0), "{place}");
        assert_eq!(report.missing_count() as usize, self.entries.len() - kept.len(), "{place}: {:?}", report.missing);
        for missing in &report.missing {
            assert!((missing.first..=missing.last).all(|n| !kept.contains(&n)), "{place}");
        }
        if salvaged.devices.is_empty() {
            assert_eq!(report.unprovable, report.entries, "{place}");
        } else {
            let after_gap = |n: &&u64| **n > 1 && !kept.contains(&(**n - 1));
            assert!(report.unprovable as usize <= kept.iter().filter(after_gap).count(), "{place}");
        }
        kept
    }
}

#[test]
fn a_healthy_store_reads_as_the_store_itself_reads_it() {
    for harmed in [Harmed::closed(), Harmed::logged()] {
        let salvaged = harmed.read().unwrap();
        assert_eq!(harmed.check(&salvaged, "healthy"), harmed.all());
        let whole = Report { entries: 40, births: 3, ..Report::default() };
        assert_eq!(salvaged.report, whole);
        assert!(salvaged.report.is_whole() && salvaged.entries.iter().all(|kept| kept.proved));
        assert_eq!(salvaged.found.runs["run"].since_ms, 40);
        let connection = in_memory().unwrap();
        salvaged.fill(&connection).unwrap();
        let read = Store::reading(harmed.folder.path(), harmed.key.clone(), connection).unwrap();
        let store = Store::with_key(harmed.folder.path(), harmed.key.clone()).unwrap();
        assert_eq!(read.births().unwrap(), store.births().unwrap());
        for birth in store.births().unwrap() {
            assert_eq!(read.entries(birth.id).unwrap(), store.entries(birth.id).unwrap());
        }
        assert_eq!(read.runs().unwrap(), store.runs().unwrap());
    }
}

#[test]
fn what_does_not_lie_on_a_page_that_is_zeroed_comes_back_and_the_rest_is_counted() {
    each_page_is_zeroed(&Harmed::closed());
}

#[test]
fn the_same_where_a_birth_was_erased() {
    let harmed = Harmed::erased();
    let salvaged = harmed.read().unwrap();
    assert_eq!(harmed.check(&salvaged, "healthy"), harmed.all());
    assert_eq!(salvaged.report, Report { entries: 27, births: 2, ..Report::default() });
    each_page_is_zeroed(&harmed);
    each_page_has_a_flipped_bit(&Harmed::erased());
}

fn each_page_is_zeroed(harmed: &Harmed) {
    let healthy = harmed.bytes(DATABASE);
    let rows = harmed.read().unwrap().entries;
    let mut costly = 0;
    for page in 0..healthy.len() / PAGE {
        let mut bytes = healthy.clone();
        bytes[page * PAGE..(page + 1) * PAGE].fill(0);
        harmed.put(DATABASE, &bytes);
        let salvaged = harmed.read().unwrap();
        let kept = harmed.check(&salvaged, &format!("page {page}"));
        let number = page as u32 + 1;
        let elsewhere = rows.iter().filter(|kept| !kept.row.pages.contains(&number)).map(|kept| kept.row.n);
        assert_eq!(kept, elsewhere.collect(), "page {number}");
        // The salt goes with the first page.
        assert_eq!(salvaged.report.unchecked, page == 0);
        assert!(page == 0 || salvaged.report.pages == [number], "{:?}", salvaged.report.pages);
        let whole = salvaged.entries.iter().filter(|kept| kept.row.body.is_some()).map(|kept| kept.row.n);
        let gaps = whole.filter(|n| *n > 1 && !kept.contains(&(n - 1))).count();
        if !salvaged.devices.is_empty() {
            assert_eq!(salvaged.report.unprovable as usize, gaps, "page {number}");
        }
        costly += usize::from(kept.len() < 40);
        assert!(!salvaged.report.is_whole(), "page {number}");
    }
    assert!(costly > 10, "{costly}");
}

#[test]
fn a_flipped_bit_costs_at_most_the_entries_on_its_page() {
    each_page_has_a_flipped_bit(&Harmed::closed());
}

fn each_page_has_a_flipped_bit(harmed: &Harmed) {
    let healthy = harmed.bytes(DATABASE);
    let rows = harmed.read().unwrap().entries;
    let (mut saved, mut on_page) = (0, 0);
    for page in 0..healthy.len() / PAGE {
        for at in [20, 1_999, 3_500, 4_020, 4_090] {
            let mut bytes = healthy.clone();
            bytes[page * PAGE + at] ^= 0x10;
            harmed.put(DATABASE, &bytes);
            let salvaged = harmed.read().unwrap();
            let number = page as u32 + 1;
            let kept = harmed.check(&salvaged, &format!("page {number} byte {at}"));
            assert_eq!(salvaged.report.pages, [number]);
            for Kept { row, .. } in &rows {
                match row.pages.contains(&number) {
                    true => (on_page, saved) = (on_page + 1, saved + usize::from(kept.contains(&row.n))),
                    false => assert!(kept.contains(&row.n), "page {number} byte {at}: {}", row.n),
                }
            }
        }
    }
    assert!(saved > on_page / 2, "of {on_page} entries on a page with a flipped bit only {saved} came back");
}

#[test]
fn of_a_database_cut_short_what_lies_before_the_cut_comes_back() {
    let harmed = Harmed::closed();
    let healthy = harmed.bytes(DATABASE);
    let rows = harmed.read().unwrap().entries;
    for page in 1..healthy.len() / PAGE {
        for cut in [page * PAGE, page * PAGE + 2_000] {
            harmed.put(DATABASE, &healthy[..cut]);
            let salvaged = match harmed.read() {
                // Nothing but the first page is left.
                Err(StoreError::NothingRead) => {
                    assert!(rows.iter().all(|kept| kept.row.pages.iter().any(|number| *number as usize > page)), "{cut}");
                    continue;
                }
                read => read.unwrap(),
            };
            let kept: BTreeSet<u64> = salvaged.entries.iter().map(|kept| kept.row.n).collect();
            for Kept { row, .. } in &rows {
                let before = row.pages.iter().all(|number| *number as usize <= page);
                assert!(!before || kept.contains(&row.n), "{cut}: {}", row.n);
            }
            if !salvaged.heads.is_empty() {
                harmed.check(&salvaged, &format!("cut at {cut}"));
            }
        }
    }
}

#[test]
fn each_frame_of_the_log_harmed_in_turn_costs_only_what_stands_nowhere_else() {
    let harmed = Harmed::new(16, |_| 150, None, false);
    let healthy = harmed.bytes(LOG);
    let frames = (healthy.len() - 32) / (24 + PAGE);
    assert!(frames > 16, "{frames}");
    // Which of the pages hold the whole body of which entry; the frames come after the pages of the database.
    let bodies: Vec<Vec<u8>> = harmed.entries.iter().map(|entry| entry.encode().unwrap()).collect();
    let holds = |page: &Page, body: &[u8]| page.bytes.windows(body.len()).any(|part| part == body);
    let on =
        |page: &Page| -> BTreeSet<u64> { (1..).zip(&bodies).filter(|(_, body)| holds(page, body)).map(|(n, _)| n).collect() };
    let pages = harmed.pages(LOG).all;
    assert!(pages.iter().all(|page| page.whole), "so they stand in the order of the files");
    let on_pages: Vec<BTreeSet<u64>> = pages.iter().map(on).collect();
    let mut costly = 0;
    for frame in 0..frames {
        let (mut bytes, start) = (healthy.clone(), 32 + frame * (24 + PAGE));
        bytes[start..start + 24 + PAGE].fill(0);
        harmed.put(LOG, &bytes);
        let kept = harmed.check(&harmed.read().unwrap(), &format!("frame {frame}"));
        let at = pages.len() - frames + frame;
        let others = on_pages.iter().enumerate().filter(|(k, _)| *k != at);
        assert_eq!(kept, others.flat_map(|(_, on)| on).copied().collect(), "frame {frame}");
        costly += usize::from(kept.len() < 16);
    }
    assert!(costly >= 1, "the last frame holds what no other does");
    harmed.put(LOG, &healthy);
    // Neither the log's own header nor its checksums are asked.
    let mut bytes = healthy.clone();
    bytes[..32].fill(0);
    (0..frames).for_each(|frame| bytes[32 + frame * (24 + PAGE) + 8..][..16].fill(0));
    harmed.put(LOG, &bytes);
    assert_eq!(harmed.check(&harmed.read().unwrap(), "checksums"), harmed.all());
}

#[test]
fn without_its_log_a_store_gives_what_was_folded_in_and_the_head_tells_the_rest() {
    let harmed = Harmed::logged();
    for log in [&b""[..], &[0x5a; 40_000]] {
        harmed.put(LOG, log);
        // Nothing was folded in yet: of the tables themselves not even the first page is there.
        match harmed.read() {
            Err(StoreError::NothingRead) => {}
            read => drop(harmed.check(&read.unwrap(), "no log")),
        }
    }
    let mut store = Store::with_key(Harmed::closed().folder.path(), harmed.key.clone());
    assert!(store.is_err(), "another practice's key opens nothing");
    let half = Harmed::closed();
    store = Store::with_key(half.folder.path(), half.key.clone());
    let mut store = store.unwrap();
    let before = half.bytes(DATABASE);
    let birth = half.entries[0].birth;
    let next = store.next_id();
    (41..=45).for_each(|n| drop(store.append(&note(EntryId { n, ..next }, birth, 10)).unwrap()));
    let folder = tempfile::tempdir().unwrap();
    fs::copy(half.folder.path().join(HEAD), folder.path().join(HEAD)).unwrap();
    fs::write(folder.path().join(DATABASE), before).unwrap();
    let salvaged = Salvaged::read(folder.path(), &half.key).unwrap();
    let device = next.device;
    assert_eq!((salvaged.report.entries, salvaged.report.missing), (40, vec![Missing { device, first: 41, last: 45 }]));
}

#[test]
fn without_the_salt_every_entry_is_proved_by_its_chain_alone() {
    let harmed = Harmed::closed();
    let mut bytes = harmed.bytes(DATABASE);
    bytes[..16].fill(7);
    harmed.put(DATABASE, &bytes);
    let salvaged = harmed.read().unwrap();
    assert_eq!(harmed.check(&salvaged, "no salt"), harmed.all());
    assert!(salvaged.report.unchecked && salvaged.entries.iter().all(|kept| kept.proved));
    assert_eq!(salvaged.found.runs.len(), 0, "nothing proves a beat but the code of its page");
    assert!(salvaged.identity.is_some(), "the inbox's key has a checksum of its own");
    // The log has a copy of the salt where it has one of the first page.
    let logged = Harmed::logged();
    let mut bytes = logged.bytes(DATABASE);
    bytes.iter_mut().take(16).for_each(|byte| *byte = 7);
    logged.put(DATABASE, &bytes);
    let salvaged = logged.read().unwrap();
    assert_eq!(logged.check(&salvaged, "salt in the log"), logged.all());
    assert!(!salvaged.report.unchecked);
}

#[test]
fn two_pages_are_counted_as_one_damage() {
    let harmed = Harmed::closed();
    let healthy = harmed.bytes(DATABASE);
    let rows = harmed.read().unwrap().entries;
    let pages = healthy.len() / PAGE;
    for (one, other) in (1..pages).flat_map(|one| [(one, one + 1), (one, 1 + (one * 7) % (pages - 1))]) {
        let mut bytes = healthy.clone();
        for page in [one, other.min(pages - 1)] {
            bytes[page * PAGE..(page + 1) * PAGE].fill(0xa5);
        }
        harmed.put(DATABASE, &bytes);
        let hit = [one as u32 + 1, other.min(pages - 1) as u32 + 1];
        let kept = harmed.check(&harmed.read().unwrap(), &format!("{hit:?}"));
        let elsewhere = rows.iter().filter(|kept| !hit.iter().any(|page| kept.row.pages.contains(page)));
        assert_eq!(kept, elsewhere.map(|kept| kept.row.n).collect(), "{hit:?}");
    }
}

#[test]
fn of_garbage_nothing_is_read_and_that_is_said() {
    let harmed = Harmed::logged();
    for length in [0, 5, PAGE, 100_000] {
        let mut bytes = vec![0; length];
        getrandom::fill(&mut bytes).unwrap();
        harmed.put(DATABASE, &bytes);
        harmed.put(LOG, &bytes);
        assert!(matches!(harmed.read(), Err(StoreError::NothingRead)), "{length}");
    }
}

#[test]
fn an_entry_that_was_altered_with_the_key_is_left_out_and_told() {
    let harmed = Harmed::closed();
    let store = Store::with_key(harmed.folder.path(), harmed.key.clone()).unwrap();
    store.connection.execute_batch("DROP TRIGGER entry_stays").unwrap();
    let body = note(harmed.entries[4].id, harmed.entries[4].birth, 3).encode().unwrap();
    store.connection.execute("UPDATE entry SET body = ?1 WHERE n = 5", params![body]).unwrap();
    store.connection.execute("UPDATE entry SET signature = zeroblob(64) WHERE n = 7", []).unwrap();
    store.close().unwrap();
    let salvaged = harmed.read().unwrap();
    let report = &salvaged.report;
    assert_eq!((report.entries, report.contradicting, report.missing_count()), (38, 2, 2));
    // What follows the altered one is proved by its signed link; what follows the unsigned one is not.
    assert_eq!((report.unprovable, report.births_touched), (1, 2));
}

#[test]
fn an_entry_of_a_later_form_is_kept_and_told() {
    let harmed = Harmed::closed();
    let store = Store::with_key(harmed.folder.path(), harmed.key.clone()).unwrap();
    let at = EntryId { n: 41, ..harmed.entries[0].id };
    let (birth, body) = (crate::database::birth_key(harmed.entries[0].birth), br#"{"v":9,"what":"ever"}"#);
    let last = store.link_at(at.device, 40).unwrap().unwrap();
    let next = Position { n: 40, link: last }.then(&birth, &Sha256::digest(body).into());
    let seal = store.key.seal(&next);
    let insert = "INSERT INTO entry (birth, device, n, body, link, signature) VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
    store.connection.execute(insert, params![birth, at.device.0, 41, body, next.link, seal]).unwrap();
    store.close().unwrap();
    let report = harmed.read().unwrap().report;
    assert_eq!((report.entries, report.newer, report.missing_count()), (41, 1, 0));
}

/// The pages of a small store, decrypted, one after another.
fn plain() -> Vec<u8> {
    let harmed = Harmed::new(12, |n| if n == 5 { 9_000 } else { 100 }, None, true);
    let mut pages = harmed.pages(LOG).all;
    pages.sort_by_key(|page| page.number);
    pages.iter().flat_map(|page| page.bytes.iter().copied().chain([0; 80])).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn arbitrary_bytes_as_pages_end_in_a_report(bytes in prop::collection::vec(any::<u8>(), 0..20_000), kind in 0..3_usize, whole: bool) {
        let mut bytes = bytes;
        // As a leaf, as an inner page, or as anything.
        for page in bytes.chunks_mut(PAGE) {
            page[0] = [0x0a, 0x02, page[0]][kind];
        }
        prop_assert_eq!(salvage_pages(&bytes, whole).entries, 0);
    }

    #[test]
    fn harmed_bytes_of_a_store_never_give_an_entry_that_was_not_written(
        harms in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..40),
        whole: bool,
    ) {
        let mut bytes = PLAIN.with(Clone::clone);
        for (at, byte) in harms {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        let report = salvage_pages(&bytes, whole);
        prop_assert!(report.entries <= 12, "{:?}", report);
    }
}

thread_local! {
    static PLAIN: Vec<u8> = plain();
}
