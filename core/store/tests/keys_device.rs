//! A key that this device's system keeps: one more way in, never the only one, and gone for good when it is taken out.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::vault::Vault;
use common::{Founded, numbers, passphrase};
use secundine_store::{
    DEVICE_KEY, DEVICE_NAME, ExposeSecret, PASSPHRASE_KEY, Passphrase, PlatformError, RECOVERY_KEY, Slot, Store, StoreError,
};

const ALL: [Slot; 3] = [Slot::Passphrase, Slot::Recovery, Slot::Device];

fn with_device(entries: usize) -> (Founded, Vault, secundine_domain::entry::BirthId) {
    let (founded, birth) = Founded::with_birth(entries);
    let vault = Vault::at(founded.path());
    Store::add_device(founded.path(), founded.recovery.clone(), &vault).unwrap();
    (founded, vault, birth)
}

fn refused(founded: &Founded, vault: &Vault) -> StoreError {
    Store::open_with_device(founded.path(), vault).err().unwrap()
}

#[test]
fn the_device_opens_what_the_passphrase_does() {
    let (founded, vault, birth) = with_device(2);
    assert_eq!(Store::slots(founded.path()), ALL);
    assert_eq!(numbers(&Store::open_with_device(founded.path(), &vault).unwrap(), birth), [1, 2]);
    Store::opens_with_device(founded.path(), &vault).unwrap();
    // Neither the wrap nor the name tells the secret, and the secret is not the data key.
    let secret = fs::read(founded.file(&format!("vault/{}.secret", vault.names()[0]))).unwrap();
    assert!(secret.starts_with(b"AGE-SECRET-KEY-1"));
    for name in [DEVICE_KEY, DEVICE_NAME, PASSPHRASE_KEY, RECOVERY_KEY] {
        let bytes = fs::read(founded.file(name)).unwrap();
        assert!(!bytes.windows(20).any(|part| secret.windows(20).any(|secret| part == secret)), "{name}");
    }
    assert!(!secret.windows(64).any(|part| part == founded.data_key().as_bytes()));
    // The passphrase adds it as well, in place of the one before.
    let before = vault.names();
    Store::add_device(founded.path(), passphrase(), &vault).unwrap();
    assert!(vault.names().len() == 1 && vault.names() != before);
    assert!(Store::open_with_device(founded.path(), &vault).is_ok());
}

#[test]
fn two_practices_on_one_device_have_secrets_of_their_own() {
    let (one, vault, _) = with_device(1);
    let (other, birth) = Founded::with_birth(3);
    Store::add_device(other.path(), other.recovery.clone(), &vault).unwrap();
    assert_eq!(vault.names().len(), 2);
    Store::wipe(one.path(), Some(&vault)).unwrap();
    assert_eq!(vault.names().len(), 1);
    assert_eq!(numbers(&Store::open_with_device(other.path(), &vault).unwrap(), birth), [1, 2, 3]);
}

#[test]
fn a_key_store_that_fails_leaves_the_passphrase_and_says_how_it_failed() {
    let (founded, vault, birth) = with_device(1);
    for how in [PlatformError::Refused, PlatformError::Failed("busy".to_owned()), PlatformError::NotThere] {
        vault.fail(Some(how.clone()));
        assert!(matches!(refused(&founded, &vault), StoreError::Platform(told) if told == how));
        assert_eq!(Store::slots(founded.path()), ALL, "and nothing is changed");
    }
    vault.fail(None);
    assert_eq!(numbers(&Store::open_with_device(founded.path(), &vault).unwrap(), birth), [1]);
    assert_eq!(numbers(&Store::open(founded.path(), passphrase()).unwrap(), birth), [1]);
}

#[test]
fn what_cannot_be_kept_is_not_added() {
    let founded = Founded::new();
    let vault = Vault::at(founded.path());
    vault.fail(Some(PlatformError::Refused));
    let kept = Store::add_device(founded.path(), founded.recovery.clone(), &vault);
    assert!(matches!(kept, Err(StoreError::Platform(PlatformError::Refused))));
    assert_eq!(Store::slots(founded.path()), ALL[..2]);
    vault.fail(None);
    assert!(matches!(refused(&founded, &vault), StoreError::NoSlot(Slot::Device)));
    let wrong = Store::add_device(founded.path(), Passphrase::from("AGE-SECRET-KEY-1".to_owned()), &vault);
    assert!(matches!(wrong, Err(StoreError::WrongPassphrase)));
    assert_eq!(vault.names(), Vec::<String>::new());
    // What the failure left behind is not in the way.
    Store::finish_revoking(founded.path(), Some(&vault)).unwrap();
    assert!(!founded.file(DEVICE_NAME).exists());
    Store::add_device(founded.path(), founded.recovery.clone(), &vault).unwrap();
    assert!(Store::open_with_device(founded.path(), &vault).is_ok());
}

#[test]
fn on_a_phone_that_was_restored_the_passphrase_opens_and_the_key_can_be_made_anew() {
    let (founded, vault, birth) = with_device(1);
    vault.restored();
    assert!(matches!(refused(&founded, &vault), StoreError::Platform(PlatformError::NotThere)));
    assert_eq!(numbers(&Store::open(founded.path(), passphrase()).unwrap(), birth), [1]);
    Store::add_device(founded.path(), founded.recovery.clone(), &vault).unwrap();
    assert!(Store::open_with_device(founded.path(), &vault).is_ok());
    // A secret that is another's, and one that is no identity, are none.
    for secret in [Founded::new().recovery.expose_secret(), "no identity"] {
        fs::write(founded.file(&format!("vault/{}.secret", vault.names()[0])), secret).unwrap();
        assert!(matches!(refused(&founded, &vault), StoreError::Platform(PlatformError::NotThere)));
    }
}

#[test]
fn a_copy_of_the_device_s_files_does_not_open_once_the_key_is_taken_out() {
    let (founded, vault, _) = with_device(1);
    let copies = [DEVICE_KEY, DEVICE_NAME].map(|name| (name, fs::read(founded.file(name)).unwrap()));
    let witness = tempfile::tempdir().unwrap();
    fs::hard_link(founded.file(DEVICE_KEY), witness.path().join("wrap")).unwrap();
    Store::revoke(founded.path(), Slot::Device, passphrase(), Some(&vault)).unwrap();
    assert_eq!(Store::slots(founded.path()), ALL[..2]);
    assert!(matches!(refused(&founded, &vault), StoreError::NoSlot(Slot::Device)));
    assert_eq!(vault.names(), Vec::<String>::new());
    assert!(!founded.file(DEVICE_NAME).exists());
    let over = fs::read(witness.path().join("wrap")).unwrap();
    assert!(over.len() == copies[0].1.len() && !over.starts_with(b"age"), "written over, not only unlinked");
    for (name, copy) in &copies {
        fs::write(founded.file(name), copy).unwrap();
    }
    assert!(matches!(refused(&founded, &vault), StoreError::Platform(PlatformError::NotThere)));
    assert!(Store::open(founded.path(), passphrase()).is_ok());
}

#[test]
fn a_sheet_that_is_taken_out_opens_no_longer_and_another_can_be_made() {
    let (founded, birth) = Founded::with_birth(2);
    let copy = fs::read(founded.file(RECOVERY_KEY)).unwrap();
    Store::revoke(founded.path(), Slot::Recovery, passphrase(), None).unwrap();
    let by = |identity| Store::open_with_identity(founded.path(), identity);
    assert_eq!(Store::slots(founded.path()), [Slot::Passphrase]);
    assert!(matches!(by(&founded.recovery), Err(StoreError::NoSlot(Slot::Recovery))));
    let again = Store::revoke(founded.path(), Slot::Recovery, passphrase(), None);
    assert!(matches!(again, Err(StoreError::NoSlot(Slot::Recovery))));
    let recovery = Store::renew_recovery(founded.path(), passphrase()).unwrap();
    assert_eq!(numbers(&by(&recovery).unwrap(), birth), [1, 2]);
    assert!(matches!(by(&founded.recovery), Err(StoreError::WrongPassphrase)));
    fs::write(founded.file(RECOVERY_KEY), copy).unwrap();
    assert_eq!(numbers(&by(&founded.recovery).unwrap(), birth), [1, 2], "as decision 0009 says");
}

#[test]
fn only_the_passphrase_takes_a_key_out_and_it_stays_itself() {
    let (founded, vault, _) = with_device(1);
    let revoke = |slot, secret| Store::revoke(founded.path(), slot, secret, Some(&vault));
    assert!(matches!(revoke(Slot::Passphrase, passphrase()), Err(StoreError::PassphraseStays)));
    assert!(matches!(revoke(Slot::Device, founded.recovery.clone()), Err(StoreError::WrongPassphrase)));
    assert!(matches!(revoke(Slot::Recovery, "seven quiet heron".to_owned().into()), Err(StoreError::WrongPassphrase)));
    assert_eq!(Store::slots(founded.path()), ALL);
    assert!(Store::open_with_device(founded.path(), &vault).is_ok());
    let nowhere = founded.path().join("nowhere");
    assert!(matches!(Store::revoke(&nowhere, Slot::Device, passphrase(), None), Err(StoreError::NoPractice)));
}

#[test]
fn a_secret_that_resists_saves_no_wrap_and_is_tried_again() {
    let (founded, vault, _) = with_device(1);
    vault.fail(Some(PlatformError::Failed("busy".to_owned())));
    let revoked = Store::revoke(founded.path(), Slot::Device, passphrase(), Some(&vault));
    assert!(matches!(revoked, Err(StoreError::SecretLeft)));
    assert_eq!(Store::slots(founded.path()), ALL[..2]);
    assert!(matches!(Store::finish_revoking(founded.path(), Some(&vault)), Err(StoreError::SecretLeft)));
    vault.fail(None);
    assert_eq!(vault.names().len(), 1);
    Store::finish_revoking(founded.path(), Some(&vault)).unwrap();
    assert_eq!(vault.names(), Vec::<String>::new());
}

#[test]
fn after_a_wipe_no_slot_opens_even_from_copies() {
    let (founded, vault, _) = with_device(1);
    let copies = [DEVICE_KEY, DEVICE_NAME].map(|name| (name, fs::read(founded.file(name)).unwrap()));
    Store::wipe(founded.path(), Some(&vault)).unwrap();
    assert_eq!(Store::slots(founded.path()), []);
    assert!(matches!(refused(&founded, &vault), StoreError::NoPractice));
    assert!(matches!(Store::open(founded.path(), passphrase()), Err(StoreError::NoPractice)));
    assert!(matches!(Store::open_with_identity(founded.path(), &founded.recovery), Err(StoreError::NoPractice)));
    assert_eq!(vault.names(), Vec::<String>::new());
    let (store, _) = Store::create(founded.path(), passphrase()).unwrap();
    store.close().unwrap();
    for (name, copy) in &copies {
        fs::write(founded.file(name), copy).unwrap();
    }
    assert!(matches!(refused(&founded, &vault), StoreError::Platform(PlatformError::NotThere)));
}

#[test]
fn a_wipe_whose_secret_resists_is_gone_on_with_and_harms_no_practice_founded_after_it() {
    let (founded, vault, _) = with_device(1);
    vault.fail(Some(PlatformError::Failed("busy".to_owned())));
    assert!(matches!(Store::wipe(founded.path(), Some(&vault)), Err(StoreError::WipeUnfinished(_))));
    assert!(!Store::exists(founded.path()));
    let left: Vec<_> = fs::read_dir(founded.path()).unwrap().map(|file| file.unwrap().file_name()).collect();
    assert_eq!(left.len(), 3, "the name, that it was begun, and the vault: {left:?}");
    vault.fail(None);
    Store::finish_wipe(founded.path(), Some(&vault)).unwrap();
    assert_eq!((vault.names(), fs::read_dir(founded.path()).unwrap().count()), (Vec::new(), 1));
    // Given up on where another practice is founded instead.
    let (founded, vault, _) = with_device(1);
    vault.fail(Some(PlatformError::Failed("busy".to_owned())));
    assert!(Store::wipe(founded.path(), Some(&vault)).is_err());
    let (store, _) = Store::create(founded.path(), passphrase()).unwrap();
    store.close().unwrap();
    Store::finish_wipe(founded.path(), Some(&vault)).unwrap();
    assert!(Store::open(founded.path(), passphrase()).is_ok());
}

#[test]
fn an_identity_is_read_in_groups_in_lines_and_in_small_letters() {
    let (founded, birth) = Founded::with_birth(1);
    let text = founded.recovery.expose_secret().to_owned();
    let letters: Vec<char> = text.chars().collect();
    let grouped = |of: usize, with: &str| letters.chunks(of).map(String::from_iter).collect::<Vec<_>>().join(with);
    let forms = [grouped(4, " "), grouped(7, "\u{a0}"), grouped(20, "\r\n"), format!("\t{} \n", text.to_lowercase())];
    for form in forms {
        let typed = Passphrase::from(form.clone());
        assert!(secundine_store::is_recovery_identity(&typed), "{form}");
        assert_eq!(secundine_store::recovery_identity(&typed).unwrap().expose_secret(), text);
        assert_eq!(numbers(&Store::open_with_identity(founded.path(), &typed).unwrap(), birth), [1]);
        assert!(Store::opens(founded.path(), typed).is_ok());
    }
}

#[test]
fn every_slip_in_one_letter_of_an_identity_is_found() {
    let identity = Founded::new().recovery.expose_secret().to_owned();
    let found = |text: String| secundine_store::recovery_identity(&Passphrase::from(text)).is_none();
    let mut slips = 0;
    for place in 0..identity.len() {
        for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-".chars() {
            let mut letters: Vec<char> = identity.chars().collect();
            if letters[place] == letter {
                continue;
            }
            letters[place] = letter;
            assert!(found(letters.iter().collect()), "{letter} at {place}");
            slips += 1;
        }
        let mut letters: Vec<char> = identity.chars().collect();
        letters.remove(place);
        assert!(found(letters.iter().collect()), "left out at {place}");
    }
    assert_eq!((slips, identity.len()), (74 * 36, 74));
    assert!(!found(identity));
}
