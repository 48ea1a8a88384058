//! The file itself: no bit of it can change, and no part of it can go, without being told.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::os::unix::fs::FileExt;

use common::chained::{Chained, Copy, at};
use secundine_store::{DATABASE, HeadSeen, MisfitKind};

const PAGE: usize = 4096;

/// A store of about 64 KiB.
fn pages() -> Chained {
    Chained::new(44, 300)
}

/// Flips one bit, asks, and flips it back.
fn flipped(copy: &Copy, name: &str, bit: usize, ask: impl FnOnce() -> bool) -> bool {
    let file = fs::File::options().read(true).write(true).open(copy.file(name)).unwrap();
    let (mut byte, offset) = ([0], u64::try_from(bit / 8).unwrap());
    file.read_exact_at(&mut byte, offset).unwrap();
    file.write_all_at(&[byte[0] ^ 1 << (bit % 8)], offset).unwrap();
    let answer = ask();
    file.write_all_at(&byte, offset).unwrap();
    answer
}

/// A bit in every stretch of 64 bytes, by chance. `SEED` plays one run again.
fn sample(bytes: usize) -> impl Iterator<Item = usize> {
    let given = std::env::var("SEED").ok().and_then(|seed| seed.parse().ok());
    let mut state: u64 = given.unwrap_or_else(|| u64::from_le_bytes(*chance().first_chunk().unwrap()));
    println!("SEED={state}");
    (0..bytes / 64).map(move |stretch| {
        // splitmix64
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = state;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        stretch * 512 + usize::try_from((mixed ^ (mixed >> 31)) % 512).unwrap()
    })
}

fn chance() -> [u8; 8] {
    let mut bytes = [0; 8];
    getrandom::fill(&mut bytes).unwrap();
    bytes
}

#[test]
fn a_changed_bit_in_any_stretch_of_the_file_is_told() {
    let chained = pages();
    let copy = chained.copy();
    let whole = fs::read(copy.file(DATABASE)).unwrap();
    assert!((14 * PAGE..20 * PAGE).contains(&whole.len()), "{}", whole.len());
    for bit in sample(whole.len()) {
        assert!(flipped(&copy, DATABASE, bit, || copy.is_found_out()), "bit {bit}");
    }
    assert!(fs::read(copy.file(DATABASE)).unwrap() == whole, "looking changes nothing");
    assert!(!copy.is_found_out());
}

#[test]
#[ignore = "half a million bits: make soak"]
fn a_change_of_any_bit_of_the_file_is_told() {
    let chained = pages();
    let bits = fs::read(chained.copy().file(DATABASE)).unwrap().len() * 8;
    let workers = std::thread::available_parallelism().map_or(1, usize::from);
    // Opened anew for each bit: what has once met a damaged page answers that it is damaged for good.
    let every = |copy: Copy, first: usize| {
        let bits = (first..bits).step_by(workers);
        let told = bits.map(|bit| assert!(flipped(&copy, DATABASE, bit, || copy.is_found_out()), "bit {bit}")).count();
        assert!(!copy.is_found_out());
        told
    };
    let copies: Vec<Copy> = (0..workers).map(|_| chained.copy()).collect();
    let told: usize = std::thread::scope(|scope| {
        let started = copies.into_iter().enumerate().map(|(first, copy)| scope.spawn(move || every(copy, first)));
        started.collect::<Vec<_>>().into_iter().map(|worker| worker.join().unwrap()).sum()
    });
    assert_eq!(told, bits);
    println!("{told} of {bits} changed bits were told");
}

#[test]
fn a_file_that_is_too_short_or_too_long_or_has_an_empty_page_is_told() {
    let chained = pages();
    let copy = chained.copy();
    let whole = fs::read(copy.file(DATABASE)).unwrap();
    let told = |bytes: &[u8], how: &str| {
        fs::write(copy.file(DATABASE), bytes).unwrap();
        assert!(copy.is_found_out(), "{how}");
    };
    for page in 0..whole.len() / PAGE {
        told(&whole[..page * PAGE], &format!("cut before page {}", page + 1));
        told(&whole[..page * PAGE + 100], &format!("cut in page {}", page + 1));
        let mut emptied = whole.clone();
        emptied[page * PAGE..(page + 1) * PAGE].fill(0);
        told(&emptied, &format!("page {} empty", page + 1));
        told(&[&whole, &whole[page * PAGE..(page + 1) * PAGE]].concat(), &format!("page {} once more", page + 1));
    }
    told(&[whole.as_slice(), &[0]].concat(), "one byte more");
    told(&[whole.as_slice(), &[0; PAGE]].concat(), "an empty page more");
    fs::write(copy.file(DATABASE), &whole).unwrap();
    assert!(!copy.is_found_out());
}

const LOG: &str = "secundine.db-wal";
/// Header of the log, and a page with its header.
const LOG_HEADER: usize = 32;
const FRAME: usize = 24 + PAGE;

#[test]
fn a_log_that_is_cut_or_changed_is_told_by_the_head() {
    let chained = Chained::new(6, 40);
    let mut store = chained.founded.open();
    let birth = store.births().unwrap()[0].id;
    common::write(&mut store, birth, 8);
    // Copied while it is open, these files are what a kill leaves behind.
    let copy = chained.copy();
    let (whole, database) = (fs::read(copy.file(LOG)).unwrap(), fs::read(copy.file(DATABASE)).unwrap());
    let frames = (whole.len() - LOG_HEADER) / FRAME;
    assert!(frames >= 8 && (whole.len() - LOG_HEADER).is_multiple_of(FRAME), "{}", whole.len());
    let verdict = |log: &[u8]| {
        fs::write(copy.file(DATABASE), &database).unwrap();
        fs::write(copy.file(LOG), log).unwrap();
        copy.verify().unwrap()
    };
    let fits = verdict(&whole);
    assert_eq!((fits.misfit, fits.head), (None, HeadSeen::At(14)));
    let cut = |log: &[u8], how: &str| match at(&verdict(log)) {
        Some((device, n, MisfitKind::CutOff)) if device == chained.own => n,
        other => unreachable!("{how}: {other:?}"),
    };
    let found: Vec<u64> = (0..frames).map(|kept| cut(&whole[..LOG_HEADER + kept * FRAME], &format!("{kept} frames"))).collect();
    assert!(found.is_sorted() && found[0] == 7 && found[frames - 1] == 14, "{found:?}");
    assert_eq!(cut(&[], "no log"), 7);
    for bit in sample(whole.len()) {
        let mut changed = whole.clone();
        changed[bit / 8] ^= 1 << (bit % 8);
        cut(&changed, &format!("bit {bit}"));
    }
}
