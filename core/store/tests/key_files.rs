//! Key files: what is in them, and what happens when one is harmed.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::{Founded, numbers, passphrase};
use secundine_domain::entry::BirthId;
use secundine_store::{PASSPHRASE_KEY, RECOVERY_KEY, Slot, Store, StoreError};

fn header(bytes: &[u8]) -> String {
    let end = bytes.windows(4).position(|four| four == b"\n---").unwrap();
    String::from_utf8(bytes[..end].to_vec()).unwrap()
}

/// The refusal of a harmed key file, which is one of two and never another.
fn refusal(result: Result<Store, StoreError>, how: &str) -> &'static str {
    match result {
        Err(StoreError::WrongPassphrase) => "wrong passphrase",
        Err(StoreError::DamagedKey(_)) => "damaged key",
        Err(other) => unreachable!("{how}: {other:?}"),
        Ok(_) => unreachable!("{how}: opened"),
    }
}

fn by_passphrase(founded: &Founded) -> Result<Store, StoreError> {
    Store::open(founded.path(), passphrase())
}

fn by_identity(founded: &Founded) -> Result<Store, StoreError> {
    Store::open_with_identity(founded.path(), &founded.recovery)
}

fn still_there(store: Result<Store, StoreError>, birth: BirthId) {
    assert_eq!(numbers(&store.unwrap(), birth), [1, 2]);
}

#[test]
fn the_files_are_plain_age_files_of_a_fixed_cost() {
    let founded = Founded::new();
    let by_passphrase = header(&fs::read(founded.file(PASSPHRASE_KEY)).unwrap());
    let stanza: Vec<&str> = by_passphrase.lines().nth(1).unwrap().split(' ').collect();
    assert!(by_passphrase.starts_with("age-encryption.org/v1\n"));
    assert_eq!((stanza[0], stanza[1], stanza[3]), ("->", "scrypt", "16"), "2^16 blocks, 64 MiB");
    let recovery = header(&fs::read(founded.file(RECOVERY_KEY)).unwrap());
    assert!(recovery.starts_with("age-encryption.org/v1\n-> X25519 "));
    let key = founded.data_key();
    assert!(key.len() == 64 && key.bytes().all(|byte| byte.is_ascii_hexdigit()));
}

#[test]
fn no_two_practices_share_a_key() {
    assert_ne!(Founded::new().data_key(), Founded::new().data_key());
}

#[test]
fn a_missing_file_leaves_the_other_way_in() {
    for (gone, other) in [(PASSPHRASE_KEY, RECOVERY_KEY), (RECOVERY_KEY, PASSPHRASE_KEY)] {
        let (founded, birth) = Founded::with_birth(2);
        fs::remove_file(founded.file(gone)).unwrap();
        assert!(Store::exists(founded.path()), "{other} still names a practice");
        let (refused, opened) = match gone {
            PASSPHRASE_KEY => (by_passphrase(&founded), by_identity(&founded)),
            _ => (by_identity(&founded), by_passphrase(&founded)),
        };
        match gone {
            PASSPHRASE_KEY => assert!(matches!(refused, Err(StoreError::DamagedKey(_)))),
            // As after it was taken out: the passphrase opens.
            _ => assert!(matches!(refused, Err(StoreError::NoSlot(Slot::Recovery)))),
        }
        still_there(opened, birth);
    }
}

#[test]
fn a_truncated_or_emptied_file_is_refused_clearly() {
    let (founded, birth) = Founded::with_birth(2);
    let (passphrase_key, recovery_key) = (founded.file(PASSPHRASE_KEY), founded.file(RECOVERY_KEY));
    let (by_pass, by_id) = (fs::read(&passphrase_key).unwrap(), fs::read(&recovery_key).unwrap());
    for length in 0..by_id.len() {
        fs::write(&recovery_key, &by_id[..length]).unwrap();
        refusal(by_identity(&founded), &format!("{length} bytes"));
    }
    for length in [0, 1, 20, 60, by_pass.len() / 2, by_pass.len() - 40, by_pass.len() - 1] {
        fs::write(&passphrase_key, &by_pass[..length]).unwrap();
        refusal(by_passphrase(&founded), &format!("{length} bytes"));
    }
    fs::write(&recovery_key, &by_id).unwrap();
    still_there(by_identity(&founded), birth);
    fs::write(&recovery_key, b"").unwrap();
    fs::write(&passphrase_key, &by_pass).unwrap();
    still_there(by_passphrase(&founded), birth);
}

#[test]
fn a_flipped_bit_anywhere_in_the_recovery_file_is_refused_clearly() {
    let (founded, birth) = Founded::with_birth(2);
    let path = founded.file(RECOVERY_KEY);
    let whole = fs::read(&path).unwrap();
    let mut seen = std::collections::BTreeSet::new();
    for place in 0..whole.len() * 8 {
        let mut harmed = whole.clone();
        harmed[place / 8] ^= 1 << (place % 8);
        fs::write(&path, &harmed).unwrap();
        seen.insert(refusal(by_identity(&founded), &format!("bit {place}")));
    }
    assert_eq!(seen.into_iter().collect::<Vec<_>>(), ["damaged key", "wrong passphrase"]);
    still_there(by_passphrase(&founded), birth);
}

#[test]
fn a_flipped_bit_in_the_passphrase_file_is_refused_clearly() {
    let (founded, birth) = Founded::with_birth(2);
    let path = founded.file(PASSPHRASE_KEY);
    let whole = fs::read(&path).unwrap();
    let header = header(&whole);
    // Every bit of the work factor, where a flip might ask for gigabytes, and one in each part of the file.
    let cost = header.find(" 16\n").unwrap() + 1;
    let body = header.len();
    let places = (cost * 8..(cost + 2) * 8).chain([0, 100, 180, 240, 330].map(|bit| bit.min(body * 8)));
    let places = places.chain([body * 8 + 9, (body + 20) * 8, (body + 60) * 8 + 3, whole.len() * 8 - 1]);
    for place in places {
        let mut harmed = whole.clone();
        harmed[place / 8] ^= 1 << (place % 8);
        fs::write(&path, &harmed).unwrap();
        refusal(by_passphrase(&founded), &format!("bit {place}"));
    }
    still_there(by_identity(&founded), birth);
}

#[test]
fn an_age_file_that_holds_something_else_is_a_damaged_key() {
    let founded = Founded::new();
    let identity = age::x25519::Identity::generate();
    for content in ["", "not a key", &"g".repeat(64), &"a".repeat(63), &"ä".repeat(32)] {
        fs::write(founded.file(RECOVERY_KEY), age::encrypt(&identity.to_public(), content.as_bytes()).unwrap()).unwrap();
        let refused = Store::open_with_identity(founded.path(), &identity.to_string());
        assert!(matches!(refused, Err(StoreError::DamagedKey(_))), "{content}");
    }
}

#[test]
fn the_key_of_another_practice_is_a_store_that_cannot_be_read() {
    let (one, other) = (Founded::new(), Founded::new());
    fs::copy(other.file(RECOVERY_KEY), one.file(RECOVERY_KEY)).unwrap();
    let refused = Store::open_with_identity(one.path(), &other.recovery);
    assert!(matches!(refused, Err(StoreError::Damaged(_))));
}
