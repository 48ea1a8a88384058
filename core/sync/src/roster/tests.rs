//! What comes of acts, in whatever order they arrive.

use super::*;

fn public(n: u8) -> [u8; 32] {
    ed25519_dalek::SigningKey::from_bytes(&[n; 32]).verifying_key().to_bytes()
}

fn device(n: u8) -> DeviceId {
    device_with(&public(n)).unwrap()
}

fn charter() -> Charter {
    Charter { founder: Bytes(public(1)), recovery: Bytes(public(99)), recipient: "age1".to_owned(), salt: Bytes([0; 16]) }
}

fn record(author: u8, seq: u64, clock: u64, seen: &[(u8, u64)], act: Act) -> Record {
    let seen = seen.iter().map(|(n, seq)| Seen::new(device(*n), *seq, [0; 32])).collect();
    Record { author: Bytes(device(author).0), seq, hash: Bytes([0; 32]), entry: Entry { clock, wall_ms: 0, seen, act } }
}

fn add(n: u8, role: Role) -> Act {
    Act::Add { public: Bytes(public(n)), kem: "age1".to_owned(), label: format!("M{n}"), role }
}

fn remove(n: u8) -> Act {
    Act::Remove { device: Bytes(device(n).0), segment: 3 }
}

fn found() -> Record {
    record(1, 1, 1, &[], Act::Found { label: "Ida".to_owned(), kem: "age1".to_owned() })
}

/// The roster of these acts, after it was seen to be the same in every order of them.
fn roster(records: &[Record]) -> Roster {
    let first = Roster::of(&charter(), records);
    for turn in 0..records.len() {
        let mut turned = records.to_vec();
        turned.rotate_left(turn);
        assert_eq!(Roster::of(&charter(), &turned), first);
        turned.reverse();
        assert_eq!(Roster::of(&charter(), &turned), first);
    }
    first
}

#[test]
fn only_leads_add_and_remove_and_nobody_founds_but_the_founder() {
    let roster = roster(&[
        found(),
        record(1, 2, 2, &[], add(2, Role::Member)),
        record(2, 1, 3, &[], add(3, Role::Lead)),
        record(4, 1, 1, &[], Act::Found { label: "Eve".to_owned(), kem: "age1".to_owned() }),
        record(4, 2, 2, &[], add(5, Role::Lead)),
        record(2, 2, 4, &[], remove(1)),
    ]);
    assert_eq!(roster.present().map(|(device, _)| device).collect::<BTreeSet<_>>(), BTreeSet::from([device(1), device(2)]));
}

#[test]
fn a_removal_wins_over_what_it_had_not_seen() {
    let before = [found(), record(1, 2, 2, &[], add(2, Role::Lead)), record(2, 1, 3, &[], add(3, Role::Member))];
    let late = record(2, 2, 4, &[], add(4, Role::Lead));
    let removal = record(1, 3, 5, &[(2, 1)], remove(2));
    let roster = roster(&[before.as_slice(), &[late, removal]].concat());
    assert!(roster.member(device(2)).is_none() && roster.member(device(4)).is_none());
    assert!(roster.member(device(3)).is_some(), "what was seen stays");
    assert_eq!(roster.members[&device(2)].removed.unwrap().segment, 3);
}

#[test]
fn of_two_who_remove_each_other_the_first_lead_stays_and_the_sheet_comes_before_all() {
    let before = [found(), record(1, 2, 2, &[], add(2, Role::Lead))];
    let each = [record(1, 3, 3, &[(2, 0)], remove(2)), record(2, 1, 3, &[(1, 2)], remove(1))];
    let both = roster(&[before.as_slice(), &each].concat());
    assert!(both.member(device(1)).is_some() && both.member(device(2)).is_none());
    let sheet = record(99, 1, 3, &[(1, 2)], remove(1));
    let all = roster(&[before.as_slice(), &each, &[sheet]].concat());
    assert!(all.member(device(1)).is_none() && all.member(device(2)).is_some());
}

#[test]
fn what_is_sealed_from_now_on_no_removed_device_has_a_key_for() {
    let epoch = |n: u8, counter, members: &[u8]| Act::Epoch {
        counter,
        epoch: EpochId([n; 8]),
        file: Bytes([n; 32]),
        members: members.iter().map(|n| Bytes(device(*n).0)).collect(),
    };
    let mut acts = vec![
        found(),
        record(1, 2, 2, &[], epoch(1, 1, &[1])),
        record(1, 3, 3, &[], add(2, Role::Lead)),
        record(1, 4, 4, &[], epoch(1, 1, &[1, 2])),
    ];
    assert_eq!(roster(&acts).current_epoch().unwrap().epoch, EpochId([1; 8]));
    acts.push(record(1, 5, 5, &[], remove(2)));
    assert!(roster(&acts).current_epoch().is_none());
    acts.push(record(1, 6, 6, &[], epoch(2, 2, &[1])));
    assert_eq!(roster(&acts).current_epoch().unwrap().epoch, EpochId([2; 8]));
}

#[test]
fn a_birth_is_erased_once_two_have_said_so_and_students_do_not_count() {
    let erase = Act::Erase { birth: Bytes([5; 24]) };
    let mut acts = vec![
        found(),
        record(1, 2, 2, &[], add(2, Role::Member)),
        record(1, 3, 3, &[], add(3, Role::Student)),
        record(1, 4, 4, &[], erase.clone()),
        record(1, 5, 5, &[], erase.clone()),
        record(3, 1, 6, &[], erase.clone()),
    ];
    assert_eq!(roster(&acts).erased().count(), 0);
    let asked: Vec<_> = roster(&acts).asked().map(|(birth, who, _)| (birth, who)).collect();
    let birth = BirthId(EntryId { device: DeviceId([5; 16]), n: u64::from_be_bytes([5; 8]) });
    assert_eq!(asked, [(birth, device(1))]);
    acts.push(record(2, 1, 7, &[], erase));
    assert_eq!(roster(&acts).erased().collect::<Vec<_>>(), [&[5; 24]]);
    assert_eq!(roster(&acts).asked().count(), 0);
}
