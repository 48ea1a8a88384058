//! Vectors of the chain of a device's entries, and of its head.

use ed25519_dalek::VerifyingKey;
use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::Fact;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};

use crate::common::chained::{Scribe, birth_key};
use crate::common::entry;

/// The seed of the device that checks, and of another one: for tests alone.
pub const OWN: [u8; 32] = [9; 32];
pub const OTHER: [u8; 32] = [7; 32];

/// An entry as it lies in the table.
#[derive(Clone)]
struct Row {
    device: [u8; 16],
    birth: Vec<u8>,
    n: u64,
    body: Vec<u8>,
    link: [u8; 32],
    signature: [u8; 64],
}

/// The next entry of this device, in this of its births.
fn write(scribe: &mut Scribe, birth: u64) -> Row {
    let id = scribe.next();
    let birth = BirthId(EntryId { n: birth, ..id });
    let fact = Fact::Noted { text: format!("entry {}", id.n) };
    let body = entry(id, birth, 1_795_570_800_000, fact).encode().unwrap();
    row(scribe, birth_key(birth), body)
}

fn row(scribe: &mut Scribe, birth: Vec<u8>, body: Vec<u8>) -> Row {
    let (link, signature) = scribe.seal(&birth, &body);
    Row { device: scribe.device().0, birth, n: scribe.n, body, link, signature }
}

fn several(scribe: &mut Scribe, count: u64) -> Vec<Row> {
    (0..count).map(|k| write(scribe, 1 + k % 2)).collect()
}

/// The head that tells of this entry.
fn head(row: &Row) -> String {
    format!("secundine head 1\n{:020}\n{}\n{}\n", row.n, hex::encode(row.link), hex::encode(row.signature))
}

fn device(scribe: &Scribe) -> (Vec<u8>, Vec<u8>) {
    (scribe.device().0.to_vec(), scribe.key.verifying_key().to_bytes().to_vec())
}

struct Case<'a> {
    name: &'a str,
    why: &'a str,
    rows: Vec<Row>,
    /// Beside the own one.
    devices: Vec<(Vec<u8>, Vec<u8>)>,
    head: Option<String>,
    /// Kind, device and number of what does not fit.
    misfit: Option<(&'a str, &'a Scribe, u64)>,
    /// What the head tells.
    told: Value,
}

impl Case<'_> {
    fn json(&self) -> Value {
        let row = |row: &Row| {
            json!({
                "device": hex::encode(row.device), "birth": hex::encode(&row.birth), "n": row.n, "body": hex::encode(&row.body),
                "link": hex::encode(row.link), "signature": hex::encode(row.signature),
            })
        };
        let misfit =
            self.misfit.as_ref().map(|(kind, of, n)| json!({ "kind": kind, "device": hex::encode(of.device().0), "n": n }));
        let devices: Vec<Value> =
            self.devices.iter().map(|(id, public)| json!({ "id": hex::encode(id), "public": hex::encode(public) })).collect();
        json!({
            "name": self.name, "why": self.why, "devices": devices, "entries": self.rows.iter().map(row).collect::<Vec<_>>(),
            "head": self.head, "expect": { "misfit": misfit, "head": self.told },
        })
    }
}

pub fn all() -> Vec<Value> {
    let (own, other) = (Scribe::new(OWN), Scribe::new(OTHER));
    let (mut own_hand, mut other_hand) = (Scribe::new(OWN), Scribe::new(OTHER));
    let (rows, others) = (several(&mut own_hand, 4), several(&mut other_hand, 3));
    let both = || [rows.clone(), others.clone()].concat();
    let good = || Case {
        name: "",
        why: "",
        rows: rows.clone(),
        devices: vec![device(&other)],
        head: Some(head(&rows[3])),
        misfit: None,
        told: json!(4),
    };
    // A chain of the own device with something done to it.
    let harmed = |name, why, harm: &dyn Fn(&mut Vec<Row>), kind, n| {
        let mut case = Case { name, why, misfit: Some((kind, &own, n)), ..good() };
        harm(&mut case.rows);
        case
    };
    let of_other = |name, why, devices, misfit| Case { name, why, rows: both(), devices, misfit, ..good() };
    let headed = |name, why, head: Option<String>, told| Case { name, why, head, told, ..good() };
    let shared = Sha256::digest(nowhere())[..16].to_vec();

    let mut cases = vec![
        Case { name: "four entries of two births", why: "As the program writes them.", ..good() },
        Case {
            name: "one entry",
            why: "It follows from 32 zero bytes.",
            rows: rows[..1].to_vec(),
            head: Some(head(&rows[0])),
            told: json!(1),
            ..good()
        },
        Case {
            name: "no entry",
            why: "A practice that was just founded.",
            rows: Vec::new(),
            head: None,
            told: json!("nothing"),
            ..good()
        },
        of_other("entries of two devices", "Each has a chain of its own.", vec![device(&other)], None),
        headed(
            "a head that lags",
            "It is not synced: after a loss of power it may tell of an earlier entry.",
            Some(head(&rows[1])),
            json!(2),
        ),
        headed("no head", "It proves nothing, and accuses nobody.", None, json!("nothing")),
        Case {
            name: "a head of another device",
            why: "Signed by another device of the practice, of whose entries none is here: they are missing.",
            head: Some(head(&others[2])),
            misfit: Some(("cut_off", &other, 1)),
            told: json!("nothing"),
            ..good()
        },
        headed(
            "a head of a later form",
            "It counts as none.",
            Some(head(&rows[3]).replace("head 1", "head 2")),
            json!("unreadable"),
        ),
        headed(
            "a head with another number",
            "Its signature does not fit: it counts as none.",
            Some(head(&rows[3]).replace("0004\n", "0009\n")),
            json!("unreadable"),
        ),
        headed("a head that is cut", "It counts as none.", Some(head(&rows[3])[..90].to_owned()), json!("unreadable")),
        headed("an empty head", "It counts as none.", Some(String::new()), json!("unreadable")),
        harmed("an altered body", "The device signed something else.", &|rows| rows[1].body[20] ^= 1, "changed", 2),
        harmed("an entry moved to another birth", "The birth is in the link.", &|rows| rows[2].birth[23] = 5, "changed", 3),
        harmed(
            "two bodies exchanged",
            "The first of the two is named.",
            &|rows| {
                let first = std::mem::take(&mut rows[1].body);
                rows[1].body = std::mem::replace(&mut rows[2].body, first);
            },
            "changed",
            2,
        ),
        harmed("an altered link", "It follows from nothing, and nobody signed it.", &|rows| rows[1].link[0] ^= 1, "unlinked", 2),
        harmed(
            "two entries that changed numbers",
            "The number is in the link and in what is signed.",
            &|rows| (rows[1].n, rows[2].n) = (3, 2),
            "unlinked",
            2,
        ),
        harmed("an altered signature", "Nobody made it.", &|rows| rows[2].signature[5] ^= 1, "unsigned", 3),
        harmed(
            "the signature of another entry",
            "It signs another number and link.",
            &|rows| rows[2].signature = rows[1].signature,
            "unsigned",
            3,
        ),
        harmed("a signature of zeros", "Nobody made it.", &|rows| rows[0].signature = [0; 64], "unsigned", 1),
        harmed(
            "a signature plus the order of the group",
            "Only the least form of a signature counts.",
            &|rows| rows[0].signature = plus_order(rows[0].signature),
            "unsigned",
            1,
        ),
        harmed(
            "an entry signed by another device",
            "The link is right, the hand is not.",
            &|rows| {
                let mut forger = Scribe { key: Scribe::new(OTHER).key, n: 1, link: rows[0].link };
                let (birth, body) = (rows[1].birth.clone(), rows[1].body.clone());
                rows[1] = Row { device: rows[1].device, ..row(&mut forger, birth, body) };
            },
            "unsigned",
            2,
        ),
        harmed(
            "a chain that begins somewhere else",
            "Signed, but not after 32 zero bytes.",
            &|rows| {
                *rows = several(&mut Scribe { link: [1; 32], ..Scribe::new(OWN) }, 4);
            },
            "changed",
            1,
        ),
        harmed("a middle entry that is gone", "Later ones are here.", &|rows| drop(rows.remove(1)), "missing", 2),
        harmed("a first entry that is gone", "Later ones are here.", &|rows| drop(rows.remove(0)), "missing", 1),
        harmed("two entries that are gone", "The first of them is named.", &|rows| drop(rows.drain(1..3)), "missing", 2),
        harmed(
            "a number that stands twice",
            "In two births.",
            &|rows| {
                let again = Row { birth: rows[1].birth.clone(), ..rows[0].clone() };
                rows.push(again);
            },
            "twice",
            1,
        ),
        harmed("a last entry that is gone", "The head tells of it.", &|rows| drop(rows.pop()), "cut_off", 4),
        harmed("all entries gone", "The head tells of them.", &|rows| rows.clear(), "cut_off", 1),
        harmed(
            "a chain that was written anew",
            "By somebody who has the key; the head tells of another entry at this place.",
            &|rows| {
                let mut forger = Scribe { n: 2, link: rows[1].link, ..Scribe::new(OWN) };
                rows.truncate(2);
                rows.extend((0..2).map(|_| write(&mut forger, 7)));
            },
            "rewritten",
            4,
        ),
        of_other("entries of a device without a key", "Nothing can be checked.", Vec::new(), Some(("no_key", &other, 1))),
        of_other(
            "the key of another device",
            "An id vouches for its key.",
            vec![(device(&other).0, device(&own).1)],
            Some(("other_key", &other, 1)),
        ),
    ];
    let mut keyless = of_other("a key that is no point", "No key at all.", vec![(shared.clone(), nowhere())], None);
    keyless.rows.truncate(4);
    keyless.rows.extend(others.iter().cloned().map(|row| Row { device: shared.as_slice().try_into().unwrap(), ..row }));
    let mut made: Vec<Value> = cases.drain(..).map(|case| case.json()).collect();
    let mut json = keyless.json();
    json["expect"]["misfit"] = json!({ "kind": "no_key", "device": hex::encode(shared), "n": 1 });
    made.push(json);
    made
}

/// 32 bytes that are no point of the curve.
fn nowhere() -> Vec<u8> {
    let tried = (2_u8..).map(|k| [k; 32]);
    tried.into_iter().find(|bytes| VerifyingKey::from_bytes(bytes).is_err()).unwrap().to_vec()
}

/// The same signature with the order of the group added to its scalar.
fn plus_order(mut signature: [u8; 64]) -> [u8; 64] {
    let order = hex::decode("edd3f55c1a631258d69cf7a2def9de1400000000000000000000000000000010").unwrap();
    let mut carry = 0_u16;
    for (byte, add) in signature[32..].iter_mut().zip(order) {
        carry += u16::from(*byte) + u16::from(add);
        *byte = carry.to_le_bytes()[0];
        carry >>= 8;
    }
    signature
}
