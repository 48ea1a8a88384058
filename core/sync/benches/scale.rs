//! Fifty phones and five thousand births: the first copy onto a new phone beside `rclone copy` of the same bytes, from a folder on
//! the same disk and over a line of 40 Mbit/s; a day's round as the practice grows; and sealing a picture beside Debian's `age`.
//!
//! `SECUNDINE_BIRTHS=10` makes fewer births for each of the fifty phones.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a bench stops at the first surprise and prints what it finds"
)]

#[path = "../tests/common/mod.rs"]
mod common;

use std::fs::File;
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command};
use std::time::{Duration, Instant};

use chacha20poly1305::{AeadInPlace, ChaCha20Poly1305, KeyInit};
use common::{Phone, START_MS, practice};
use secundine_domain::entry::{BirthId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::file::FileId;
use secundine_domain::time::{Occurred, Stamp};
use secundine_sync::{Alone, Bucket, Place, Role, Secret, Wishes, open, round};
use sha2::{Digest, Sha256};

const PHONES: usize = 50;
const ENTRIES: u64 = 150;
const PICTURE: usize = 25 << 20;
const PICTURES: usize = 4;

fn main() {
    // A bench is asked for its list of tests too.
    if std::env::args().any(|argument| argument == "--list") {
        return;
    }
    if let Ok(root) = std::env::var("SECUNDINE_NEW_PHONE") {
        return new_phone(Path::new(&root));
    }
    let root = || tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    seal(root().path());
    scale(root().path());
}

fn births() -> usize {
    std::env::var("SECUNDINE_BIRTHS").ok().and_then(|many| many.parse().ok()).unwrap_or(100)
}

fn bucket(root: &Path) -> Box<dyn Bucket> {
    let path = root.join("bucket");
    std::fs::create_dir_all(&path).unwrap();
    open(&Place::Folder { path }).unwrap()
}

/// A birth of this phone, all of its entries in one write.
fn birth(phone: &mut Phone, at_ms: i64) {
    let author = phone.label.clone();
    let store = phone.store();
    let first = store.next_id();
    let birth = BirthId(first);
    let entry = |k: u64| {
        let recorded =
            Stamp { wall_ms: at_ms + 60_000 * k as i64, offset_min: 60, zone: Some("Europe/Oslo".to_owned()), boot: None };
        let fact = match k {
            0 => Fact::BirthRegistered { label: format!("birth {}", first.n), rehearsal: false },
            k => Fact::Noted { text: format!("Fundus firm at the umbilicus, lochia moderate, reading {k} of this night.") },
        };
        let id = EntryId { n: first.n + k, ..first };
        Entry { id, birth, author: author.clone(), occurred: Occurred::Marked(recorded.clone()), recorded, fact, amends: None }
    };
    store.append_all(&(0..ENTRIES).map(entry).collect::<Vec<_>>()).unwrap();
}

fn scale(root: &Path) {
    let births = births();
    let bucket = bucket(root);
    let mut phones: Vec<Phone> = (0..PHONES).map(|n| Phone::new(root, n, 0)).collect();
    practice(&mut phones, START_MS);
    let (mut made, mut now_ms) = (0, START_MS);
    // The reader looks in at a hundredth, at a tenth and at the end.
    let mut reader = Phone::new(root, PHONES, 0);
    common::welcome(&mut phones[0], &mut reader, Role::Member, now_ms);
    let begun = Instant::now();
    for upto in [births.div_ceil(100), births.div_ceil(10), births] {
        while made < upto {
            made += 1;
            now_ms += 86_400_000;
            for phone in &mut phones {
                birth(phone, now_ms);
                give(phone, &*bucket, now_ms);
            }
        }
        take(&mut reader, &*bucket, now_ms);
        now_ms += 86_400_000;
        birth(&mut phones[0], now_ms);
        give(&mut phones[0], &*bucket, now_ms);
        let (took, got) = take(&mut reader, &*bucket, now_ms);
        println!(
            "a day's round with {} births: {:.0} ms for {got} bytes, one new birth among them",
            made * PHONES,
            took.as_secs_f64() * 1e3
        );
    }
    println!("made {} births of {ENTRIES} entries in {:.0} s", births * PHONES, begun.elapsed().as_secs_f64());
    for new in [PHONES + 1, PHONES + 2] {
        common::welcome(&mut phones[0], &mut Phone::new(root, new, 0), Role::Member, now_ms);
    }
    take(&mut phones[0], &*bucket, now_ms);
    drop(phones);
    let mut from_disk = Command::new("rclone");
    from_disk.arg("copy").arg(root.join("bucket"));
    beside("from the same disk", root, from_disk, PHONES + 1, &Place::Folder { path: root.join("bucket") });
    let line = Line::over(&root.join("bucket"));
    let mut over_line = Command::new("rclone");
    over_line.args(["copy", ":webdav:", "--webdav-url", &line.url]);
    let place = Place::WebDav { url: line.url.clone(), user: "a".to_owned(), password: Secret("a".to_owned()) };
    beside("over a line of 40 Mbit/s", root, over_line, PHONES + 2, &place);
}

/// The first copy onto a new phone, in a process of its own, so that its memory is its own; and the floor.
fn beside(what: &str, root: &Path, rclone: Command, new: usize, place: &Place) {
    let floor = copied(root, rclone);
    let mut child = Command::new(std::env::current_exe().unwrap());
    child.env("SECUNDINE_NEW_PHONE", root).env("SECUNDINE_PHONE", new.to_string());
    let place = serde_json::to_string(place).unwrap();
    let output = child.env("SECUNDINE_PLACE", place).stderr(std::process::Stdio::inherit()).output().unwrap();
    assert!(output.status.success());
    let told = String::from_utf8(output.stdout).unwrap();
    let (rate, told) = told.split_once(' ').unwrap();
    let ratio = rate.parse::<f64>().unwrap() / floor;
    println!("first copy onto a new phone {what}: {}", told.trim());
    println!("floor, rclone copy of the bucket {what}: {:.1} MB/s, ratio {ratio:.2} (goal: at least 0.9)", floor / 1e6);
}

/// `rclone` gives the bucket by WebDAV, five million bytes a second.
struct Line {
    server: Child,
    url: String,
}

impl Line {
    fn over(bucket: &Path) -> Self {
        let free = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
        let mut server = Command::new("rclone");
        server.args(["serve", "webdav", "--config", "/dev/null", "--bwlimit", "5000000B", "--user", "a", "--pass", "a"]);
        let server = server.arg("--addr").arg(free.to_string()).arg(bucket).stderr(std::process::Stdio::null()).spawn().unwrap();
        while TcpStream::connect(free).is_err() {
            std::thread::sleep(Duration::from_millis(20));
        }
        Self { server, url: format!("http://{free}") }
    }
}

impl Drop for Line {
    fn drop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}

/// What a phone has to give, and what it knows of the others stays as it is.
fn give(phone: &mut Phone, bucket: &dyn Bucket, now_ms: i64) {
    let mut wishes = Wishes { now_ms, files: false, progress: &mut |progress| progress.to_send > 0 };
    let _ = round(&Alone::new(phone.store()), bucket, &mut wishes);
}

fn take(phone: &mut Phone, bucket: &dyn Bucket, now_ms: i64) -> (Duration, u64) {
    let begun = Instant::now();
    let mut wishes = Wishes { now_ms, files: false, progress: &mut |_| true };
    let (report, done) = round(&Alone::new(phone.store()), bucket, &mut wishes);
    done.unwrap();
    assert!(report.troubles.is_empty(), "{:?}", report.troubles);
    (begun.elapsed(), report.progress.got_bytes)
}

/// Bytes a second of a copy by rclone.
fn copied(root: &Path, mut rclone: Command) -> f64 {
    let to = root.join("copied");
    let obscured = Command::new("rclone").args(["obscure", "a"]).output().unwrap();
    rclone.args(["--config", "/dev/null", "--webdav-user", "a", "--webdav-pass"]);
    rclone.arg(String::from_utf8(obscured.stdout).unwrap().trim()).arg(&to);
    let begun = Instant::now();
    assert!(rclone.status().unwrap().success());
    let took = begun.elapsed();
    let bytes: u64 = walk(&to);
    std::fs::remove_dir_all(&to).unwrap();
    bytes as f64 / took.as_secs_f64()
}

fn walk(folder: &Path) -> u64 {
    let files = std::fs::read_dir(folder).unwrap().map(Result::unwrap);
    files.map(|file| if file.path().is_dir() { walk(&file.path()) } else { file.metadata().unwrap().len() }).sum()
}

/// Bytes a second, and in words what it was.
fn new_phone(root: &Path) {
    let variable = |name: &str| std::env::var(name).unwrap();
    let bucket = open(&serde_json::from_str(&variable("SECUNDINE_PLACE")).unwrap()).unwrap();
    let mut phone = Phone::new(root, variable("SECUNDINE_PHONE").parse().unwrap(), 0);
    let (took, got) = take(&mut phone, &*bucket, START_MS + 86_400_000 * 400);
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let peak = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).unwrap().trim().to_owned();
    let entries = phone.entries().len();
    let rate = got as f64 / took.as_secs_f64();
    let (seconds, many) = (took.as_secs_f64(), rate / 1e6);
    println!("{rate} {got} bytes, {entries} entries in {seconds:.1} s: {many:.1} MB/s; at most {peak} of memory (goal: 200 MB)");
}

/// What is timed, under its name.
type Work<'a> = (&'static str, Box<dyn FnMut() + 'a>);

/// Pictures of 25 MB, 100 MB of them, sealed and opened beside Debian's `age` from file to file on the same disk; and what
/// each part of it takes alone. The middle of nine, in turns. Debian's `age` does not sync what it writes; ours does, so it
/// stands there a second time, synced.
fn seal(root: &Path) {
    let plain: Vec<u8> = (0..PICTURE).map(|n| (n as u32).wrapping_mul(2_654_435_761).to_le_bytes()[3]).collect();
    let identity = age::x25519::Identity::generate();
    let (recipient, key) = (identity.to_public(), root.join("key"));
    let to = recipient.to_string();
    std::fs::write(&key, secundine_store::ExposeSecret::expose_secret(&identity.to_string())).unwrap();
    let files: Vec<PathBuf> = (0..PICTURES).map(|n| root.join(format!("picture-{n}"))).collect();
    files.iter().for_each(|file| std::fs::write(file, &plain).unwrap());
    let sealed = age::encrypt(&recipient, &plain).unwrap();
    let debian = |arguments: &[&str], from: &str, to: &str, synced: bool| {
        for file in &files {
            let (from, to) = (file.with_extension(from), file.with_extension(to));
            assert!(Command::new("age").args(arguments).arg("-o").arg(&to).arg(from).status().unwrap().success());
            if synced {
                File::open(to).unwrap().sync_all().unwrap();
            }
        }
    };
    let mut phone = Phone::new(root, PHONES, 0);
    let kept: Vec<FileId> = files.iter().map(|_| phone.store().keep_file(&plain).unwrap()).collect();
    let store = phone.store();
    let cipher = ChaCha20Poly1305::new(&[7; 32].into());
    let mut chunk = vec![0; 64 << 10];
    let mut works: [Work; 10] = [
        (
            "ChaCha20-Poly1305 of the crate under age, in place",
            Box::new(|| {
                for _ in 0..PICTURES * PICTURE / chunk.len() {
                    done(cipher.encrypt_in_place_detached(&[0; 12].into(), b"", &mut chunk).unwrap());
                }
            }),
        ),
        ("SHA-256", Box::new(|| files.iter().for_each(|_| done(Sha256::digest(&plain))))),
        ("written and synced", Box::new(|| files.iter().for_each(|file| written(&file.with_extension("copy"), &plain)))),
        (
            "sealing: the age crate, in memory",
            Box::new(|| files.iter().for_each(|_| done(age::encrypt(&recipient, &plain).unwrap()))),
        ),
        (
            "sealing: ours, onto the disk and synced",
            Box::new(|| files.iter().for_each(|_| done(store.keep_file(&plain).unwrap()))),
        ),
        ("sealing: Debian's age", Box::new(|| debian(&["-r", &to], "", "age", false))),
        ("sealing: Debian's age, synced", Box::new(|| debian(&["-r", &to], "", "age", true))),
        (
            "opening: the age crate, in memory",
            Box::new(|| files.iter().for_each(|_| done(age::decrypt(&identity, &sealed).unwrap()))),
        ),
        ("opening: ours, from the disk", Box::new(|| kept.iter().for_each(|file| done(store.open_file(*file).unwrap())))),
        ("opening: Debian's age", Box::new(|| debian(&["-d", "-i", key.to_str().unwrap()], "age", "plain", false))),
    ];
    let mut times: [Vec<Duration>; 10] = Default::default();
    for _ in 0..9 {
        for ((_, work), times) in works.iter_mut().zip(&mut times) {
            let begun = Instant::now();
            work();
            times.push(begun.elapsed());
        }
    }
    let rates = times.map(|mut all| {
        all.sort();
        (PICTURES * PICTURE) as f64 / all[4].as_secs_f64() / 1e6
    });
    works.iter().zip(rates).for_each(|((what, _), rate)| println!("{what}: {rate:.0} MB/s"));
    for (what, ours, debian) in [("sealing", 4, 5), ("sealing, both synced,", 4, 6), ("opening", 8, 9)] {
        println!("{what} 100 MB beside Debian's age: ratio {:.2} (goal: at least 1)", rates[ours] / rates[debian]);
    }
}

/// It was worth its work.
fn done<T>(value: T) {
    std::hint::black_box(value);
}

fn written(path: &Path, bytes: &[u8]) {
    let mut file = File::create(path).unwrap();
    std::io::Write::write_all(&mut file, bytes).unwrap();
    file.sync_all().unwrap();
}
