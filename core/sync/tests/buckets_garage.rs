//! A cluster of three nodes of Garage, as a practice may have it: it keeps to the laws, one node may go, and each key does what
//! it may. `make soak-garage` builds Garage and runs this.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, reason = "a test that tells figures")]

mod buckets_laws;
mod buckets_servers;
mod cluster;

use std::time::{Duration, Instant};

use buckets_servers::{KEY, SECRET, beside_the_floor, s3, s3_over};
use cluster::Cluster;
use secundine_sync::{Bucket, BucketError, Place, open, probe};

const MOST: u64 = 1 << 20;

fn name(round: &str, k: usize) -> String {
    format!("practice/0f/device/{round}/{k:012}-5feceb66ffc86f38d952786c6d696c79")
}

/// Puts and gets two hundred, and says how long each took at the middle.
fn two_hundred(bucket: &dyn Bucket, round: &str) {
    let bytes = buckets_laws::bytes(600);
    let timed = |work: &dyn Fn(usize)| {
        let mut all: Vec<Duration> = (0..200)
            .map(|k| {
                let started = Instant::now();
                work(k);
                started.elapsed()
            })
            .collect();
        all.sort_unstable();
        (all[100], all[197])
    };
    let puts = timed(&|k| bucket.put(&name(round, k), &bytes).unwrap());
    let gets = timed(&|k| assert_eq!(bucket.get(&name(round, k), MOST), Ok(bytes.clone())));
    println!("{round}: 200 puts, p50 and p99 {puts:?}; 200 gets {gets:?}; no error");
}

#[test]
#[ignore = "rclone is needed: `make soak-garage`"]
fn how_long_all_takes_beside_rclone() {
    let place = tempfile::tempdir().unwrap();
    let (disk, kept) = (place.path().join("disk"), place.path().join("kept"));
    std::fs::create_dir_all(kept.join("practice")).unwrap();
    std::fs::create_dir(&disk).unwrap();
    let address = s3_over(&kept);
    let folder = open(&Place::Folder { path: disk.clone() }).unwrap();
    let store = s3(&address, "practice", SECRET);
    for k in 0..500 {
        for bucket in [&folder, &store] {
            bucket.put(&name("floor", k), &buckets_laws::bytes(8_192)).unwrap();
        }
    }
    let from = ["folder", disk.to_str().unwrap()];
    println!("folder: {}", beside_the_floor(&*folder, &from, "practice/0f/", ""));
    let from = ["s3", &address, "garage", "practice", KEY];
    println!("S3 over a folder: {}", beside_the_floor(&*store, &from, "practice/0f/", SECRET));
}

/// Asks until it works; tells how long that took where it did not at once. A node that stayed up tries those that went each half
/// minute (Garage 2.5.0).
fn until<T>(mut ask: impl FnMut() -> Result<T, BucketError>) -> T {
    let started = Instant::now();
    loop {
        match ask() {
            Ok(answer) => {
                if started.elapsed() > Duration::from_secs(1) {
                    println!("it answered after {:?}", started.elapsed());
                }
                return answer;
            }
            Err(error) => {
                let passing = matches!(error, BucketError::Busy(_) | BucketError::Slow | BucketError::NoConnection);
                assert!(passing && started.elapsed() < Duration::from_secs(120), "{error:?}");
                std::thread::sleep(Duration::from_millis(500));
            }
        }
    }
}

#[test]
#[ignore = "Garage takes a quarter of an hour to build: `make soak-garage`"]
fn a_cluster_keeps_to_the_laws_and_one_node_may_go() {
    let mut cluster = Cluster::start();
    let started = Instant::now();
    buckets_laws::all(&*cluster.node(1), "laws");
    buckets_laws::put_over(&*cluster.node(1), "laws");
    buckets_laws::probed(&*cluster.node(1), "laws", false);
    println!("the laws: {:?}", started.elapsed());

    two_hundred(&*cluster.node(1), "three-nodes");
    let [endpoint, key, secret] =
        ["/endpoints/0", "/key", "/secret"].map(|at| cluster.known.pointer(at).unwrap().as_str().unwrap());
    let from = ["s3", endpoint, "garage", "practice", key];
    println!("cluster: {}", beside_the_floor(&*cluster.node(1), &from, "laws/practice/0f/device/b2/", secret));
    cluster.order("kill 3");
    assert_eq!(cluster.node(3).get(&name("three-nodes", 0), MOST), Err(BucketError::NoConnection));
    two_hundred(&*cluster.node(1), "two-nodes");
    assert_eq!(cluster.node(2).list("practice/0f/device/", None).unwrap().len(), 400);

    cluster.order("kill 2");
    let bucket = cluster.node(1);
    for came in [
        bucket.put(&name("one-node", 0), b"x"),
        bucket.get(&name("two-nodes", 0), MOST).map(drop),
        bucket.list("practice/0f/", None).map(drop),
    ] {
        assert!(matches!(came, Err(BucketError::Busy(503) | BucketError::Slow)), "too few are up: {came:?}");
    }

    cluster.order("start 2");
    cluster.order("start 3");
    let back = cluster.node(3);
    let listed = until(|| back.list("practice/0f/device/two-nodes/", None));
    assert_eq!(listed.len(), 200, "what was put while it was away");
    for one in listed {
        assert_eq!(until(|| back.get(&one.name, MOST)), buckets_laws::bytes(600));
    }
    until(|| back.put(&name("one-node", 0), b"x"));
    assert_eq!(until(|| cluster.node(1).get(&name("one-node", 0), MOST)), b"x");
}

#[test]
#[ignore = "Garage takes a quarter of an hour to build: `make soak-garage`"]
fn each_key_does_what_it_may() {
    let mut cluster = Cluster::start();
    let (no, name) = (BucketError::Refused(403), "probe-1");
    let own = cluster.known.clone();
    cluster.node(1).put("a/b", b"x").unwrap();

    let reads = cluster.order("key reads read");
    let probed = probe(&*cluster.through(1, &reads, |_| ()), name);
    assert_eq!((probed.unreadable(), probed.unwritable(), &probed.removes), (None, Some(&no), &Err(no.clone())), "{probed:?}");
    let writes = cluster.order("key writes write");
    let probed = probe(&*cluster.through(1, &writes, |_| ()), name);
    assert_eq!((probed.unreadable(), probed.unwritable()), (Some(&no), None), "{probed:?}");
    let nothing = cluster.order("key nothing none");
    let probed = probe(&*cluster.through(1, &nothing, |_| ()), name);
    assert_eq!((probed.unreadable(), probed.unwritable()), (Some(&no), Some(&no)), "{probed:?}");

    let told = |change: fn(&mut [String; 5])| cluster.through(1, &own, change).get("a/b", 9);
    assert_eq!(told(|_| ()), Ok(b"x".to_vec()));
    assert_eq!(told(|all| all[4] = "0".repeat(64)), Err(BucketError::Refused(403)), "another secret");
    assert_eq!(told(|all| all[3] = "GK0123456789abcdef01234567".to_owned()), Err(BucketError::Refused(403)), "no such key");
    assert_eq!(told(|all| all[1] = "elsewhere".to_owned()), Err(BucketError::Refused(400)), "another region");
    assert_eq!(told(|all| all[2] = "nowhere".to_owned()), Err(BucketError::NoBucket), "no such bucket");

    cluster.order("quota 1");
    // It counts in its own time.
    let full = (0..50).find_map(|k| {
        std::thread::sleep(Duration::from_millis(100));
        cluster.node(1).put(&format!("a/{k}"), b"x").err()
    });
    assert_eq!(full, Some(BucketError::Full));
    assert_eq!(cluster.node(1).get("a/b", 9), Ok(b"x".to_vec()));
    cluster.order("quota none");
    assert_eq!(cluster.node(1).put("a/c", b"x"), Ok(()));
}
