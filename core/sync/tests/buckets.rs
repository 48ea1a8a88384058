//! What every bucket keeps to, held against a folder and against a store that speaks S3.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::print_stdout,
    reason = "a test may stop at the first surprise, and tell what it saw"
)]

mod buckets_laws;
mod buckets_servers;

use std::fs;

use buckets_servers::{SECRET, s3, s3_over};
use secundine_sync::{BucketError, Place, Secret, open, probe};

#[test]
fn a_folder_keeps_to_the_laws() {
    let folder = tempfile::tempdir().unwrap();
    let bucket = open(&Place::Folder { path: folder.path().to_owned() }).unwrap();
    buckets_laws::all(&*bucket, "laws");
    buckets_laws::put_over(&*bucket, "laws");
    buckets_laws::probed(&*bucket, "laws", true);
}

#[test]
fn a_store_that_speaks_s3_keeps_to_the_laws() {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("practice")).unwrap();
    let bucket = s3(&s3_over(folder.path()), "practice", SECRET);
    buckets_laws::all(&*bucket, "laws");
    buckets_laws::put_over(&*bucket, "laws");
    buckets_laws::probed(&*bucket, "laws", true);
}

#[test]
fn a_wrong_secret_and_a_wrong_bucket_are_told_apart() {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("practice")).unwrap();
    let address = s3_over(folder.path());
    let wrong = s3(&address, "practice", "another");
    assert_eq!(wrong.put("a", b"x"), Err(BucketError::Refused(403)));
    assert_eq!(wrong.get("a", 9), Err(BucketError::Refused(403)));
    assert_eq!(wrong.list("a", None), Err(BucketError::Refused(403)));
    let nowhere = s3(&address, "nowhere", SECRET);
    assert_eq!(nowhere.list("a", None), Err(BucketError::NoBucket));
}

#[test]
#[ignore = "SECUNDINE_STORE='https://endpoint region bucket key secret': any store that a practice thinks of"]
fn a_store_named_by_hand_keeps_to_the_laws() {
    let named = std::env::var("SECUNDINE_STORE").unwrap();
    let [endpoint, region, bucket, key, secret] = *named.split(' ').collect::<Vec<_>>() else { panic!("five words") };
    let [endpoint, region, bucket, key] = [endpoint, region, bucket, key].map(str::to_owned);
    let bucket = open(&Place::S3 { endpoint, region, bucket, key, secret: Secret(secret.to_owned()) }).unwrap();
    let root = format!("laws-{}", std::process::id());
    buckets_laws::all(&*bucket, &root);
    let probed = probe(&*bucket, &format!("{root}/probe"));
    println!("{probed:?}");
    for one in bucket.list(&root, None).unwrap() {
        bucket.remove(&one.name).unwrap();
    }
}
