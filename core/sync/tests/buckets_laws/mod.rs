//! What every bucket keeps to, whatever lies behind it.

#![allow(dead_code, reason = "each test file uses a part")]

use std::thread;
use std::time::Duration;

use secundine_sync::{Bucket, BucketError, Listed, probe};

/// More than any of them is read for.
const MOST: u64 = 64 << 20;
/// More than one page of a listing, which is a thousand.
const MANY: usize = 1_100;

/// All of them, below `root`, which nobody else uses.
pub fn all(bucket: &dyn Bucket, root: &str) {
    kept_as_given(bucket, root);
    nothing_there(bucket, root);
    no_more_than_asked(bucket, root);
    ranges(bucket, root);
    listed_in_order(bucket, root);
    in_pages(bucket, root);
    never_a_half(bucket, root);
    no_such_names(bucket, root);
    gone(bucket, root);
}

/// Bytes that repeat nowhere within 250 of them.
pub fn bytes(many: usize) -> Vec<u8> {
    (0..many).map(|k| u8::try_from((k * 7 + k / 251) % 251).unwrap()).collect()
}

fn names(all: &[Listed]) -> Vec<&str> {
    all.iter().map(|one| one.name.as_str()).collect()
}

fn kept_as_given(bucket: &dyn Bucket, root: &str) {
    let name = format!("{root}/practice/0f/device/9a3c/000000000001-5feceb66ffc86f38d952786c6d696c79");
    for many in [0, 1, 600, 10 << 20] {
        bucket.put(&name, &bytes(many)).unwrap();
        assert_eq!(bucket.get(&name, MOST), Ok(bytes(many)), "{many} bytes");
    }
    bucket.put(&name, &bytes(600)).unwrap();
    bucket.put(&name, &bytes(600)).unwrap();
    assert_eq!(bucket.get(&name, MOST), Ok(bytes(600)), "the same bytes once more do no harm");
    assert_eq!(bucket.list(&name, None), Ok(vec![Listed { name, bytes: 600 }]));
}

fn nothing_there(bucket: &dyn Bucket, root: &str) {
    let name = format!("{root}/nothing/here");
    assert_eq!(bucket.get(&name, MOST), Err(BucketError::Absent));
    assert_eq!(bucket.get_range(&name, 0..4), Err(BucketError::Absent));
    assert_eq!(bucket.list(&name, None), Ok(vec![]));
    assert_eq!(bucket.list(&format!("{root}/nothing/"), None), Ok(vec![]));
    assert_eq!(bucket.remove(&name), Ok(()));
}

fn no_more_than_asked(bucket: &dyn Bucket, root: &str) {
    let name = format!("{root}/size");
    bucket.put(&name, &bytes(1_000)).unwrap();
    assert_eq!(bucket.get(&name, 1_000), Ok(bytes(1_000)));
    assert_eq!(bucket.get(&name, 999), Err(BucketError::TooLarge));
    bucket.put(&name, &[]).unwrap();
    assert_eq!(bucket.get(&name, 0), Ok(vec![]));
}

fn ranges(bucket: &dyn Bucket, root: &str) {
    let name = format!("{root}/range");
    let whole = bytes(1_000);
    bucket.put(&name, &whole).unwrap();
    for (range, expected) in [
        (0..1_000, &whole[..]),
        (0..1, &whole[..1]),
        (500..600, &whole[500..600]),
        (990..2_000, &whole[990..]),
        (999..1_000, &whole[999..]),
        (1_000..1_001, &[]),
        (5_000..6_000, &[]),
        (5..5, &[]),
    ] {
        assert_eq!(bucket.get_range(&name, range.clone()), Ok(expected.to_vec()), "{range:?}");
    }
    bucket.put(&name, &[]).unwrap();
    assert_eq!(bucket.get_range(&name, 0..10), Ok(vec![]));
}

fn listed_in_order(bucket: &dyn Bucket, root: &str) {
    let here = |name: &str| format!("{root}/order/{name}");
    let sorted = ["10", "2/a", "2/b", "2-a", "2a", "B", "a", "a/b/c", "a-", "ab", "b"].map(here);
    // A folder cannot hold a file and a folder of one name; no practice has such names.
    let mut sorted: Vec<String> = sorted.into_iter().filter(|name| name != &here("a")).collect();
    sorted.sort();
    for name in sorted.iter().rev() {
        bucket.put(name, name.as_bytes()).unwrap();
    }
    let all = bucket.list(&here(""), None).unwrap();
    assert_eq!(names(&all), sorted);
    assert!(all.iter().all(|one| one.bytes == one.name.len() as u64));
    for prefix in ["2", "2/", "a", "a/b", "a/b/c", "zz"] {
        let expected: Vec<_> = sorted.iter().filter(|name| name.starts_with(&here(prefix))).collect();
        assert_eq!(names(&bucket.list(&here(prefix), None).unwrap()), expected, "{prefix}");
        for after in ["", "2/", "2/a", "2/aa", "a", "zz"] {
            let expected: Vec<_> = expected.iter().copied().filter(|name| **name > here(after)).collect();
            let listed = bucket.list(&here(prefix), Some(&here(after))).unwrap();
            assert_eq!(names(&listed), expected, "{prefix} after {after}");
        }
    }
}

/// A server may trip over what others do beside it; it is asked again, as a round does.
fn put(bucket: &dyn Bucket, name: &str, bytes: &[u8]) {
    let mut tries = (0..20).map(|_| bucket.put(name, bytes).inspect_err(|_| thread::sleep(Duration::from_millis(50))));
    let done = tries.find(|done| !matches!(done, Err(BucketError::Busy(_))));
    assert_eq!(done, Some(Ok(())), "{name}");
}

fn in_pages(bucket: &dyn Bucket, root: &str) {
    let folder = format!("{root}/practice/0f/device/b2");
    let sorted: Vec<String> = (0..MANY).map(|k| format!("{folder}/{k:012}-{:032x}", k * k)).collect();
    thread::scope(|scope| {
        for part in sorted.chunks(MANY.div_ceil(4)) {
            scope.spawn(move || part.iter().for_each(|name| put(bucket, name, name.as_bytes())));
        }
    });
    let prefix = format!("{folder}/");
    assert_eq!(names(&bucket.list(&prefix, None).unwrap()), sorted);
    assert_eq!(names(&bucket.list(&prefix, Some(&sorted[20])).unwrap()), sorted[21..]);
    assert_eq!(names(&bucket.list(&prefix, Some(&sorted[MANY - 2])).unwrap()), sorted[MANY - 1..]);
    assert_eq!(bucket.list(&prefix, sorted.last().map(String::as_str)), Ok(vec![]));
    each_in_order(bucket, &sorted);
}

fn each_in_order(bucket: &dyn Bucket, sorted: &[String]) {
    let mut asked: Vec<String> = sorted[..100].to_vec();
    asked.insert(50, format!("{}-absent", sorted[50]));
    let mut came = 0;
    bucket.get_each(&asked, 1_000, &mut |k, answer| {
        assert_eq!(k, came, "in their order");
        let expected = if k == 50 { Err(BucketError::Absent) } else { Ok(asked[k].clone().into_bytes()) };
        assert_eq!(answer, expected);
        came += 1;
        true
    });
    assert_eq!(came, 101);
    let mut taken = 0;
    bucket.get_each(&asked, 1_000, &mut |_, _| {
        taken += 1;
        assert!(bucket.get(&asked[0], MOST).is_ok(), "it can be asked meanwhile");
        taken < 3
    });
    assert_eq!(taken, 3, "none is handed over after a no");
    bucket.get_each(&[], 1_000, &mut |_, _| unreachable!("there is none"));
}

/// What is listed is whole, while others are being put.
fn never_a_half(bucket: &dyn Bucket, root: &str) {
    let folder = format!("{root}/halves");
    let whole = bytes(2_000_000);
    thread::scope(|scope| {
        let putting: Vec<_> = (0..3)
            .map(|thread| {
                let (folder, whole) = (&folder, &whole);
                scope.spawn(move || {
                    (0..4).for_each(|k| put(bucket, &format!("{folder}/{thread}-{k}"), whole));
                })
            })
            .collect();
        while putting.iter().any(|one| !one.is_finished()) {
            let listed = match bucket.list(&folder, None) {
                // A server may trip over a file that is just put into its place: it is asked again, as a round does.
                Err(BucketError::Busy(_)) => continue,
                listed => listed.unwrap(),
            };
            assert!(listed.iter().all(|one| one.bytes == 2_000_000), "{listed:?}");
            if let Some(last) = listed.last() {
                assert!(bucket.get(&last.name, MOST) == Ok(whole.clone()), "{}", last.name);
            }
        }
    });
    assert_eq!(bucket.list(&folder, None).unwrap().len(), 12);
}

/// The same bytes again and again under one name, while it is read.
pub fn put_over(bucket: &dyn Bucket, root: &str) {
    let name = format!("{root}/at-once");
    let whole = bytes(300_000);
    thread::scope(|scope| {
        for _ in 0..4 {
            scope.spawn(|| {
                for _ in 0..5 {
                    bucket.put(&name, &whole).unwrap();
                    assert!(bucket.get(&name, MOST) == Ok(whole.clone()), "it is there, and whole");
                }
            });
        }
    });
}

fn no_such_names(bucket: &dyn Bucket, root: &str) {
    for part in ["", "/", "../../x", "a//b", ".", "a b", "a#1", "a%2fb", "é", "a/"] {
        let name = format!("{root}/{part}");
        assert!(matches!(bucket.put(&name, b"x"), Err(BucketError::Broken(_))), "{name}");
        assert!(matches!(bucket.get(&name, MOST), Err(BucketError::Broken(_))), "{name}");
    }
}

fn gone(bucket: &dyn Bucket, root: &str) {
    let name = format!("{root}/gone/one");
    bucket.put(&name, b"x").unwrap();
    assert_eq!(bucket.remove(&name), Ok(()));
    assert_eq!(bucket.get(&name, MOST), Err(BucketError::Absent));
    assert_eq!(bucket.list(&format!("{root}/gone/"), None), Ok(vec![]));
}

/// What a trial says of a bucket that allows everything.
pub fn probed(bucket: &dyn Bucket, root: &str, honours_new: bool) {
    let name = format!("{root}/probe-1");
    for _ in 0..2 {
        let probed = probe(bucket, &name);
        assert_eq!((probed.unwritable(), probed.unreadable()), (None, None), "{probed:?}");
        assert_eq!(probed.honours_new, honours_new, "{probed:?}");
        assert!(probed.ranges.is_ok() && probed.lists_after && probed.removes.is_ok(), "{probed:?}");
        assert_eq!(bucket.get(&name, MOST), Err(BucketError::Absent), "nothing is left");
    }
    bucket.put(&name, b"from another time").unwrap();
    let probed = probe(bucket, &name);
    assert_eq!((probed.unwritable(), probed.unreadable(), probed.honours_new), (None, None, honours_new), "{probed:?}");
}
