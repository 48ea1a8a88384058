//! Vectors of the inbox's files.

use age::x25519::Identity;
use serde_json::{Value, json};

use super::seal::{File, MAGIC, Ratchet, flipped, header, plain_header};

/// One vector: files by name, and what must come of them.
fn vector(name: &str, files: &[(&str, Vec<u8>)], (class, records, lost_tail): (&str, &[&str], u32), why: &str) -> Value {
    let files: serde_json::Map<String, Value> =
        files.iter().map(|(name, bytes)| ((*name).to_owned(), hex::encode(bytes).into())).collect();
    json!({ "name": name, "why": why, "files": files, "expect": { "class": class, "records": records, "lost_tail": lost_tail } })
}

pub fn all(identity: &Identity) -> Vec<Value> {
    let (three, mut made) = (File::new(1, 1, None, &["one", "two", "three"], identity), Vec::new());
    let whole = three.bytes();
    let (head, one, two) = (three.header.len(), three.records[0].len(), three.records[1].len());
    let one_file = |name: &str, bytes: Vec<u8>, class: &str, records: &[&str], why: &str| {
        vector(name, &[("1.inbox", bytes)], (class, records, 0), why)
    };

    made.push(one_file("three records", whole.clone(), "whole", &["one", "two", "three"], "As the program writes it."));
    made.push(one_file(
        "one record",
        three.of(&[0]),
        "whole",
        &["one"],
        "As a kill between two records leaves it; the end of a file is not sealed.",
    ));
    made.push(one_file("no record", three.of(&[]), "whole", &[], "A header alone is a file of no records."));
    let long = "x".repeat(3000);
    made.push(one_file(
        "a long record",
        File::new(2, 1, None, &[&long], identity).bytes(),
        "whole",
        &[&long],
        "More than one block of the cipher.",
    ));
    let named = vector(
        "a number that the name does not have",
        &[("7.inbox", File::new(3, 400, None, &["one"], identity).bytes())],
        ("whole", &["one"], 0),
        "The header tells the order, not the name.",
    );
    made.push(named);
    let second = File::new(4, 2, Some(three.tail), &["four"], identity);
    let pair = |first: Vec<u8>| [("1.inbox", first), ("2.inbox", second.bytes())];
    made.push(vector(
        "two files",
        &pair(whole.clone()),
        ("whole", &["one", "two", "three", "four"], 0),
        "The second tells how far the first had come.",
    ));
    made.push(vector(
        "two files under each other's names",
        &[("1.inbox", second.bytes()), ("2.inbox", whole.clone())],
        ("whole", &["one", "two", "three", "four"], 0),
        "The order is that of the sealed numbers.",
    ));
    made.push(vector(
        "a first file cut between two records",
        &pair(three.of(&[0, 1])),
        ("whole", &["one", "two", "four"], 1),
        "The second file knows of three records.",
    ));
    made.push(vector(
        "a first file that is gone",
        &[("2.inbox", second.bytes())],
        ("whole", &["four"], 1),
        "The second file knows of it.",
    ));
    let mut other = three.tail;
    other.2[0] ^= 1;
    let doubts = File::new(5, 2, Some(other), &["four"], identity);
    made.push(vector(
        "another last tag than the second file knows",
        &[("1.inbox", whole.clone()), ("2.inbox", doubts.bytes())],
        ("whole", &["one", "two", "three", "four"], 1),
        "The last record is not the one that was acknowledged.",
    ));

    let cut = |length: usize| whole[..length].to_vec();
    made.push(one_file("empty", Vec::new(), "torn", &[], "The first write was lost whole."));
    made.push(one_file("zeros", vec![0; 600], "torn", &[], "A file system kept the length and lost the bytes."));
    made.push(one_file("cut in the title", cut(9), "torn", &[], "Nothing in it was acknowledged."));
    made.push(one_file("cut after the title", cut(MAGIC.len()), "torn", &[], "Nothing in it was acknowledged."));
    made.push(one_file("cut in the header's length", cut(MAGIC.len() + 1), "torn", &[], "Nothing in it was acknowledged."));
    made.push(one_file("cut in the header", cut(head - 1), "torn", &[], "Nothing in it was acknowledged."));
    made.push(one_file("cut in a record's length", cut(head + one + 2), "torn", &["one"], "What verifies before it comes in."));
    made.push(one_file(
        "cut after a record's length",
        cut(head + one + 4),
        "torn",
        &["one"],
        "What verifies before it comes in.",
    ));
    made.push(one_file("cut in a record", cut(head + one + 6), "torn", &["one"], "What verifies before it comes in."));
    made.push(one_file(
        "cut in a record's tag",
        cut(head + one + two - 1),
        "torn",
        &["one"],
        "What verifies before it comes in.",
    ));
    made.push(one_file(
        "a last record that does not verify",
        flipped(&whole, whole.len() - 1),
        "torn",
        &["one", "two"],
        "The end of a write may be lost while its length was kept.",
    ));
    made.push(one_file(
        "zeros after the last record",
        [whole.clone(), vec![0; 64]].concat(),
        "torn",
        &["one", "two", "three"],
        "Room that was made and never written.",
    ));

    let room = vec![0xff; 300];
    made.push(one_file(
        "room after the last record",
        [whole.clone(), room.clone()].concat(),
        "whole",
        &["one", "two", "three"],
        "Made for more records, and not written yet.",
    ));
    made.push(one_file(
        "a record whose end still is room",
        [cut(whole.len() - 9), room.clone()].concat(),
        "torn",
        &["one", "two"],
        "Part of a write was lost.",
    ));
    made.push(one_file(
        "a record whose beginning still is room",
        [cut(head + one + two), vec![0xff; 12], whole[head + one + two + 12..].to_vec(), room.clone()].concat(),
        "torn",
        &["one", "two"],
        "Parts of a write may come to the disk in any order.",
    ));
    made.push(one_file(
        "zeros in the room",
        [whole.clone(), vec![0; 64], room.clone()].concat(),
        "torn",
        &["one", "two", "three"],
        "A file system kept the length of a write and lost its bytes.",
    ));
    made.push(one_file(
        "text in the room",
        [whole.clone(), b"and more, that nobody sealed, of more than one record".repeat(2), room].concat(),
        "damaged",
        &["one", "two", "three"],
        "Not what a loss of power leaves.",
    ));

    made.push(one_file(
        "a later form",
        [b"secundine inbox 2\n", &whole[MAGIC.len()..]].concat(),
        "damaged",
        &[],
        "This program reads form 1 alone.",
    ));
    made.push(one_file(
        "another title",
        [b"secundina inbox 1\n", &whole[MAGIC.len()..]].concat(),
        "damaged",
        &[],
        "No file of an inbox.",
    ));
    made.push(one_file(
        "a header for somebody else",
        File::new(1, 1, None, &["one"], &Identity::generate()).bytes(),
        "damaged",
        &[],
        "Sealed to another recipient.",
    ));
    made.push(one_file("a header that was altered", flipped(&whole, head - 1), "damaged", &[], "age refuses it."));
    made.push(one_file(
        "a header's length that is one too small",
        flipped(&whole, MAGIC.len() + 1),
        "damaged",
        &[],
        "age refuses what is left.",
    ));
    let plain = plain_header([1; 32], 1, None);
    let with = |plain: &[u8]| [header(MAGIC, plain, identity), three.of(&[0, 1, 2])[head..].to_vec()].concat();
    made.push(one_file(
        "a sealed header that is too short",
        with(&plain[..plain.len() - 1]),
        "damaged",
        &[],
        "Its parts have fixed lengths.",
    ));
    made.push(one_file(
        "a sealed header that is too long",
        with(&[plain.clone(), vec![0]].concat()),
        "damaged",
        &[],
        "Its parts have fixed lengths.",
    ));
    made.push(one_file(
        "another seed",
        with(&plain_header([9; 32], 1, None)),
        "damaged",
        &[],
        "No record verifies, and more than one follows.",
    ));
    made.push(one_file("an altered record", flipped(&whole, head + 5), "damaged", &[], "It does not verify, and others follow."));
    made.push(one_file(
        "an altered tag",
        flipped(&whole, head + one - 1),
        "damaged",
        &[],
        "It does not verify, and others follow.",
    ));
    made.push(one_file("a record's length that is too great", flipped(&whole, head), "damaged", &[], "Greater than any record."));
    made.push(one_file(
        "a record's length that is off by one",
        flipped(&whole, head + 3),
        "damaged",
        &[],
        "The tag is looked for in the wrong place.",
    ));
    made.push(one_file(
        "two records that changed places",
        three.of(&[1, 0, 2]),
        "damaged",
        &[],
        "Each is sealed with the key of its place.",
    ));
    made.push(one_file(
        "a record that stands twice",
        three.of(&[0, 0, 1, 2]),
        "damaged",
        &["one"],
        "Each is sealed with the key of its place.",
    ));
    made.push(one_file(
        "a record that was taken out",
        three.of(&[0, 2, 2]),
        "damaged",
        &["one"],
        "Each is bound to the one before it.",
    ));
    let foreign = File::new(6, 1, None, &["six", "seven"], identity);
    let mixed = [three.of(&[0]), foreign.records.concat()].concat();
    made.push(one_file("records of another file", mixed, "damaged", &["one"], "Another seed."));
    let sealed_as = |count: u64, tag: [u8; 16]| {
        let mut ratchet = Ratchet { count, tag, ..Ratchet::new([1; 32]) };
        [three.header.clone(), ratchet.seal(b"one"), ratchet.seal(b"two")].concat()
    };
    made.push(one_file(
        "a record sealed under another number",
        sealed_as(5, [0; 16]),
        "damaged",
        &[],
        "The number is bound to it.",
    ));
    made.push(one_file(
        "a record sealed after another one",
        sealed_as(0, [7; 16]),
        "damaged",
        &[],
        "The tag before it is bound to it.",
    ));
    made.push(one_file(
        "a key that did not turn",
        {
            let (mut first, mut second) = (Ratchet::new([1; 32]), Ratchet::new([1; 32]));
            let one = first.seal(b"one");
            (second.count, second.tag) = (first.count, first.tag);
            [three.header.clone(), one, second.seal(b"two"), second.seal(b"three")].concat()
        },
        "damaged",
        &["one"],
        "Each record has a key of its own.",
    ));
    made.push(one_file(
        "text after the last record",
        [whole.clone(), b"and more, that nobody sealed, of more than one record".repeat(2)].concat(),
        "damaged",
        &["one", "two", "three"],
        "Not what a loss of power leaves.",
    ));
    made
}
