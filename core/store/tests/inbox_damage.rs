//! Whatever happens to a file of the inbox, what verifies before it comes in, the rest is kept, and it is told.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::inbox::{Practice, drain, notes, written};
use secundine_store::{Drained, Store};

const TEXTS: [&str; 3] = ["one", "two", "three"];
/// Bytes of a record on disk.
const LAST: usize = 5 + 20;

fn without_last(file: &[u8]) -> &[u8] {
    let written = written(file);
    &written[..written.len() - LAST]
}

/// The store starts anew from the same disk each time.
struct Bench {
    practice: Practice,
    database: Vec<u8>,
    file: Vec<u8>,
}

impl Bench {
    fn new() -> Self {
        let practice = Practice::new();
        practice.write(&TEXTS);
        let database = fs::read(practice.path().join(secundine_store::DATABASE)).unwrap();
        let file = written(&fs::read(practice.inbox("1.inbox")).unwrap()).to_vec();
        Self { practice, database, file }
    }

    /// Drains with the file as it was changed.
    fn drain(&self, file: &[u8]) -> (Store, Drained) {
        for name in [secundine_store::DATABASE, secundine_store::HEAD] {
            let _ = fs::remove_file(self.practice.path().join(name));
        }
        let _ = fs::remove_dir_all(self.practice.inbox("damaged"));
        fs::write(self.practice.path().join(secundine_store::DATABASE), &self.database).unwrap();
        fs::write(self.practice.inbox("1.inbox"), file).unwrap();
        let mut store = self.practice.open();
        let drained = drain(&mut store, None);
        (store, drained)
    }

    fn flipped(&self, bit: usize) -> Vec<u8> {
        let mut file = self.file.clone();
        file[bit / 8] ^= 1 << (bit % 8);
        file
    }

    fn kept(&self) -> Vec<u8> {
        fs::read(self.practice.inbox("damaged/1.inbox")).unwrap_or_default()
    }
}

#[test]
fn a_last_record_cut_short_anywhere_is_dropped_and_told() {
    let bench = Bench::new();
    let whole = bench.file.len();
    for cut in 1..LAST {
        let torn = &bench.file[..whole - cut];
        let (store, drained) = bench.drain(torn);
        assert_eq!((drained.torn, drained.damaged, drained.entries), (1, 0, 2), "{cut}");
        assert_eq!(notes(&store), TEXTS[..2], "{cut}");
        assert_eq!(bench.kept(), torn, "{cut}");
    }
    // Cut between two records: nothing in the file tells that there was one more.
    let (store, drained) = bench.drain(&bench.file[..whole - LAST]);
    assert_eq!((drained.torn, drained.damaged, notes(&store)), (0, 0, TEXTS[..2].iter().map(ToString::to_string).collect()));
}

#[test]
fn an_end_that_was_never_written_is_dropped_and_told() {
    let bench = Bench::new();
    for zeros in [1, 4, 20, 4096, 200_000] {
        let (store, drained) = bench.drain(&[bench.file.as_slice(), &vec![0; zeros]].concat());
        assert_eq!((drained.torn, drained.damaged), (1, 0), "{zeros}");
        assert_eq!(notes(&store), TEXTS, "{zeros}");
    }
}

#[test]
fn a_last_record_that_was_written_over_its_room_in_part_is_dropped_and_told() {
    let bench = Bench::new();
    let room = vec![0xff; 4096];
    for cut in 1..LAST {
        let (begun, rest) = bench.file.split_at(bench.file.len() - cut);
        let unwritten = vec![0xff; rest.len()];
        let end_lost = [begun, &unwritten, &room].concat();
        let start = bench.file.len() - LAST;
        let beginning_lost = [&bench.file[..start], &unwritten, &bench.file[start + cut..], &room].concat();
        for torn in [end_lost, beginning_lost].iter().filter(|torn| !torn.starts_with(&bench.file)) {
            let (store, drained) = bench.drain(torn);
            assert_eq!((drained.torn, drained.damaged, drained.entries), (1, 0, 2), "{cut}");
            assert_eq!(notes(&store), TEXTS[..2], "{cut}");
            assert_eq!(bench.kept(), *torn, "{cut}");
        }
    }
}

#[test]
fn room_that_was_never_written_is_no_loss_and_a_bit_that_flips_in_it_is_told() {
    let bench = Bench::new();
    let file = [bench.file.as_slice(), &[0xff; 512]].concat();
    let (store, drained) = bench.drain(&file);
    assert_eq!((drained.torn, drained.damaged, notes(&store)), (0, 0, TEXTS.map(ToString::to_string).to_vec()));
    drop(store);
    for bit in (bench.file.len() * 8..file.len() * 8).step_by(97) {
        let mut file = file.clone();
        file[bit / 8] ^= 1 << (bit % 8);
        let (store, drained) = bench.drain(&file);
        assert_eq!((drained.torn + drained.damaged, notes(&store).len()), (1, 3), "bit {bit}");
        assert_eq!(bench.kept(), file, "bit {bit}");
    }
}

#[test]
fn a_first_write_cut_short_anywhere_is_told_and_stops_nothing() {
    let bench = Bench::new();
    let header = bench.file.len() - LAST - 2 * 23;
    for length in 0..header {
        let (store, drained) = bench.drain(&bench.file[..length]);
        assert_eq!((drained.entries, drained.torn, drained.damaged), (0, 1, 0), "{length}");
        assert!(notes(&store).is_empty());
        assert_eq!(bench.kept().len(), length);
    }
}

#[test]
fn every_bit_that_flips_is_found_and_nothing_of_the_file_is_lost() {
    let bench = Bench::new();
    let header = bench.file.len() - LAST - 2 * 23;
    // Where nothing comes in the store stays as it is, and serves for the next bit too.
    let (mut empty, _) = bench.drain(b"");
    for bit in 0..header * 8 {
        fs::remove_dir_all(bench.practice.inbox("damaged")).unwrap();
        let file = bench.flipped(bit);
        fs::write(bench.practice.inbox("1.inbox"), &file).unwrap();
        let drained = drain(&mut empty, None);
        assert_eq!((drained.entries, drained.torn + drained.damaged), (0, 1), "bit {bit}");
        assert_eq!(bench.kept(), file, "bit {bit}");
    }
    assert!(notes(&empty).is_empty());
    drop(empty);
    for bit in header * 8..bench.file.len() * 8 {
        let file = bench.flipped(bit);
        let (store, drained) = bench.drain(&file);
        let before = ((bit / 8 - header) / 23).min(2);
        assert_eq!(drained.torn + drained.damaged, 1, "bit {bit}");
        assert_eq!(notes(&store), TEXTS[..before], "bit {bit}");
        assert_eq!(bench.kept(), file, "bit {bit}");
    }
}

#[test]
fn records_that_change_places_do_not_verify() {
    let bench = Bench::new();
    let first = bench.file.len() - LAST - 2 * 23;
    let (header, one, two) = (&bench.file[..first], &bench.file[first..first + 23], &bench.file[first + 23..first + 46]);
    for (order, verify) in [(vec![two, one], 0), (vec![one, one, two], 1), (vec![two], 0), (vec![one, two, two], 2)] {
        let (store, drained) = bench.drain(&[header, &order.concat()].concat());
        assert_eq!((drained.torn + drained.damaged, notes(&store).len()), (1, verify));
    }
}

#[test]
fn an_earlier_file_that_is_gone_or_lost_its_end_is_told() {
    for (what, lost) in [("nothing", 0), ("its end", 1), ("the file", 1)] {
        let practice = Practice::new();
        practice.write(&TEXTS);
        practice.write(&["four"]);
        let path = practice.inbox("1.inbox");
        let file = fs::read(&path).unwrap();
        match what {
            "its end" => fs::write(&path, without_last(&file)).unwrap(),
            "the file" => fs::remove_file(&path).unwrap(),
            _ => {}
        }
        let mut store = practice.open();
        let drained = drain(&mut store, None);
        assert_eq!((drained.lost_tail, drained.damaged), (lost, 0), "{what}");
        assert_eq!(notes(&store).last().unwrap(), "four", "{what}");
    }
}

#[test]
fn the_same_run_knows_how_far_it_had_come() {
    for (what, lost) in [("nothing", 0), ("its end", 1), ("the file", 1), ("the inbox", 1)] {
        let practice = Practice::new();
        let tail = practice.write(&TEXTS);
        let path = practice.inbox("1.inbox");
        let file = fs::read(&path).unwrap();
        match what {
            "its end" => fs::write(&path, without_last(&file)).unwrap(),
            "the file" => fs::remove_file(&path).unwrap(),
            "the inbox" => fs::remove_dir_all(practice.inbox("")).unwrap(),
            _ => {}
        }
        let mut store = practice.open();
        assert_eq!(drain(&mut store, tail.as_ref()).lost_tail, lost, "{what}");
    }
}

#[test]
fn what_was_drained_in_an_earlier_unlocking_is_known_to_the_next() {
    let practice = Practice::new();
    practice.write(&TEXTS);
    let first = fs::read(practice.inbox("1.inbox")).unwrap();
    practice.write(&["four"]);
    let second = fs::read(practice.inbox("2.inbox")).unwrap();
    fs::remove_file(practice.inbox("2.inbox")).unwrap();
    // The first alone, cut; then the second, which knows better.
    fs::write(practice.inbox("1.inbox"), without_last(&first)).unwrap();
    let mut store = practice.open();
    assert_eq!(drain(&mut store, None).lost_tail, 0);
    fs::write(practice.inbox("2.inbox"), second).unwrap();
    assert_eq!(drain(&mut store, None).lost_tail, 1);
}
