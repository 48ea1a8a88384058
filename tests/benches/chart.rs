//! Reading a chart of 300 entries, watching one of 500, and opening a practice of 1,000 births.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a bench stops at the first surprise and prints what it finds"
)]

use std::hint::black_box;
use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use secundine_domain::assess::assess;
use secundine_domain::chart::fold;
use secundine_domain::due::due;
use secundine_domain::entry::{Amendment, BirthId, DeviceId, Entry, EntryId};
use secundine_domain::fact::{Answer, Care, Fact, Loss, MotherObservation};
use secundine_domain::protocol::Protocol;
use secundine_domain::quantity::{HeartRate, Pressure, Volume};
use secundine_domain::time::{Boot, Occurred, Stamp};
use secundine_session::api::{Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};
use secundine_store::{Passphrase, Store};

const PASSPHRASE: &str = "seven quiet herons";
const BIRTHS: u64 = 1_000;
const ENTRIES: usize = 10;
const LISTED: u32 = 50;

fn main() {
    chart();
    practice();
}

fn chart() {
    let birth = BirthId(EntryId { device: DeviceId([7; 16]), n: 1 });
    let entries = entries(birth, 300);
    let protocol = Protocol::find("who");
    assert!(protocol.is_some());
    let now = stamp(entries.len() as u64 + 1);
    let took = median(400, || {
        let chart = fold(birth, &entries);
        black_box((assess(&chart, protocol, &now), due(&chart, protocol, &now)));
    });
    let alone = median(400, || {
        black_box(fold(birth, &entries));
    });
    report("a chart of 300 entries: fold, assess, due", took, Duration::from_millis(1));
    println!("    of which fold {:.3} ms", alone.as_secs_f64() * 1e3);

    let entries = self::entries(birth, 500);
    let now = stamp(entries.len() as u64 + 1);
    let long = fold(birth, &entries);
    let watched = median(400, || {
        black_box((assess(&long, protocol, &now), due(&long, protocol, &now)));
    });
    let clone = median(400, || {
        black_box(long.clone());
    });
    report("a chart of 500 entries: assess, due", watched, Duration::from_millis(1));
    println!("    beside copying that chart once: {:.2}", watched.as_secs_f64() / clone.as_secs_f64());
}

fn practice() {
    // Beside the build, which is on a disk, unlike many folders for passing files.
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let data = folder.path().join("data");
    let (mut store, recovery) = Store::create(&data, Passphrase::from(PASSPHRASE.to_owned())).unwrap();
    for _ in 0..BIRTHS {
        let birth = BirthId(store.next_id());
        store.append_all(&entries(birth, ENTRIES)).unwrap();
    }
    store.close().unwrap();

    let by_identity = median(15, || {
        let store = Store::open_with_identity(&data, &recovery).unwrap();
        let births = store.births().unwrap();
        assert_eq!(births.len() as u64, BIRTHS);
        for birth in births.iter().take(LISTED as usize) {
            black_box(fold(birth.id, store.entries(birth.id).unwrap().iter().map(|stored| &stored.entry)));
        }
    });
    report("1,000 births: open by the identity, newest 50", by_identity, Duration::from_millis(300));

    let mut unlocks = Vec::new();
    let mut lists = Vec::new();
    for _ in 0..7 {
        let mut session = session(folder.path());
        let start = Instant::now();
        session.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
        unlocks.push(start.elapsed());
        let start = Instant::now();
        let listed = session.call(Request::Births { skip: 0, take: LISTED }).unwrap();
        lists.push(start.elapsed());
        let Response::Births { births, count, .. } = listed else { unreachable!() };
        assert_eq!((births.len(), u64::from(count)), (LISTED as usize, BIRTHS));
    }
    println!(
        "    the whole unlock, key stretching and all: {:.0} ms; then the newest 50: {:.1} ms",
        middle(unlocks),
        middle(lists)
    );
}

fn session(folder: &Path) -> Session {
    let paths = Paths { data: folder.join("data"), records: folder.join("records") };
    Session::new(paths, Arc::new(HandClock::at(stamp(0))))
}

fn report(name: &str, took: Duration, goal: Duration) {
    let met = if took < goal { "met" } else { "MISSED" };
    println!("{name}: {:.3} ms (goal below {} ms: {met})", took.as_secs_f64() * 1e3, goal.as_millis());
}

fn median(times: usize, mut work: impl FnMut()) -> Duration {
    let mut taken: Vec<Duration> = (0..times)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed()
        })
        .collect();
    taken.sort();
    taken[times / 2]
}

/// The middle of some times, ms.
fn middle(mut times: Vec<Duration>) -> f64 {
    times.sort();
    times[times.len() / 2].as_secs_f64() * 1e3
}

fn stamp(n: u64) -> Stamp {
    let ms = i64::try_from(n).unwrap() * 20_000;
    let boot = Some(Boot { id: "0c8f7a9e-3b1d-4c55-9a55-1f2e3d4c5b6a".to_owned(), since_ms: 5_000_000 + ms });
    Stamp { wall_ms: 1_795_570_800_000 + ms, offset_min: 60, zone: Some("Europe/Prague".to_owned()), boot }
}

/// A birth of so many entries: its events, then blood, looks at the mother, answers and corrections in turn.
fn entries(birth: BirthId, count: usize) -> Vec<Entry> {
    let opening = [
        Fact::BirthRegistered { label: "2026-11-25 03:12".to_owned(), rehearsal: false },
        Fact::ProtocolChosen { protocol: "who".to_owned(), own: None },
        Fact::CareChosen { care: Care::Physiological },
        Fact::BabyBorn { baby: 1 },
        Fact::CordClamped { baby: 1 },
        Fact::PlacentaBorn { babies: vec![1] },
    ];
    let entry = |k: usize| {
        let id = EntryId { n: birth.0.n + k as u64, ..birth.0 };
        let recorded = stamp(id.n);
        let fact = opening.get(k).cloned().unwrap_or_else(|| later(k));
        // Each tenth puts the one before it right.
        let amends = (k > 10 && k.is_multiple_of(10))
            .then(|| Amendment { entry: EntryId { n: id.n - 1, ..id }, reason: "a slip".to_owned() });
        Entry { id, birth, author: "Ida Reiher".to_owned(), occurred: Occurred::Marked(recorded.clone()), recorded, fact, amends }
    };
    (0..count).map(entry).collect()
}

fn later(k: usize) -> Fact {
    match k % 3 {
        0 => Fact::BloodLoss(Loss::Jug { volume: Volume::new(5).unwrap() }),
        1 => Fact::MotherObserved(MotherObservation {
            pulse: Some(HeartRate::new(84).unwrap()),
            systolic: Some(Pressure::new(118).unwrap()),
            ..MotherObservation::default()
        }),
        _ => Fact::Examined {
            placenta: 1,
            item: "lobes".to_owned(),
            cord: None,
            answer: Answer::Choice { option: "meet".to_owned() },
        },
    }
}
