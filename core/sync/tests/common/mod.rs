//! Phones, and a bucket in memory that does what it is told to do wrong.
#![allow(dead_code, clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "shared by several tests")]

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::Mutex;

use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use secundine_domain::fact::Fact;
use secundine_domain::time::{Occurred, Stamp};
use secundine_store::fuzzing::store_with_key;
use secundine_store::{Store, Stored, version};
use secundine_sync::{Alone, Bucket, BucketError, Card, Listed, Report, Role, SyncError, Wishes, admit, found, join, round};

pub const START_MS: i64 = 1_795_570_800_000;

/// Numbers that a seed gives.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }
    pub fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D)
    }
    pub fn below(&mut self, most: usize) -> usize {
        (self.next() >> 33) as usize % most.max(1)
    }
    pub fn one_in(&mut self, most: usize) -> bool {
        self.below(most) == 0
    }
}

/// What a bucket does wrong from now on.
#[derive(Clone, Copy, Default)]
pub struct Weather {
    /// One in so many calls finds no connection.
    pub lost: usize,
    /// One in so many puts is done and answered as failed.
    pub unanswered: usize,
    /// So many calls, then no connection at all: the phone dies there.
    pub dies_after: Option<usize>,
}

#[derive(Default)]
pub struct State {
    pub objects: BTreeMap<String, Vec<u8>>,
    /// Objects that are shown only after so many more calls.
    pub hidden: BTreeMap<String, usize>,
    pub calls: usize,
    pub gets: usize,
    pub lists: usize,
    pub puts: usize,
    pub bytes: usize,
    pub weather: Weather,
    pub delays: bool,
}

/// A bucket in memory.
pub struct Mem {
    pub state: Mutex<State>,
    dice: Mutex<Dice>,
}

impl Mem {
    pub fn new(seed: u64) -> Self {
        Self { state: Mutex::default(), dice: Mutex::new(Dice::new(seed)) }
    }

    pub fn set(&self, weather: Weather) {
        self.state.lock().unwrap().weather = weather;
    }

    fn call(&self) -> Result<(), BucketError> {
        let mut state = self.state.lock().unwrap();
        state.calls += 1;
        for left in state.hidden.values_mut() {
            *left = left.saturating_sub(1);
        }
        state.hidden.retain(|_, left| *left > 0);
        if let Some(left) = &mut state.weather.dies_after {
            if *left == 0 {
                return Err(BucketError::NoConnection);
            }
            *left -= 1;
        }
        let lost = state.weather.lost;
        match lost > 0 && self.dice.lock().unwrap().one_in(lost) {
            true => Err(BucketError::NoConnection),
            false => Ok(()),
        }
    }
}

impl Bucket for Mem {
    fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError> {
        self.call()?;
        let mut state = self.state.lock().unwrap();
        state.lists += 1;
        let shown = state.objects.iter().filter(|(name, _)| {
            name.starts_with(prefix) && after.is_none_or(|after| name.as_str() > after) && !state.hidden.contains_key(*name)
        });
        Ok(shown.map(|(name, bytes)| Listed { name: name.clone(), bytes: bytes.len() as u64 }).collect())
    }

    fn get(&self, name: &str, most: u64) -> Result<Vec<u8>, BucketError> {
        self.call()?;
        let mut state = self.state.lock().unwrap();
        state.gets += 1;
        if state.hidden.contains_key(name) {
            return Err(BucketError::Absent);
        }
        let bytes = state.objects.get(name).cloned().ok_or(BucketError::Absent)?;
        state.bytes += bytes.len();
        if bytes.len() as u64 > most { Err(BucketError::TooLarge) } else { Ok(bytes) }
    }

    fn get_range(&self, name: &str, range: Range<u64>) -> Result<Vec<u8>, BucketError> {
        let bytes = self.get(name, u64::MAX)?;
        let end = (range.end as usize).min(bytes.len());
        Ok(bytes.get(range.start as usize..end).unwrap_or_default().to_vec())
    }

    fn put(&self, name: &str, bytes: &[u8]) -> Result<(), BucketError> {
        self.call()?;
        let mut state = self.state.lock().unwrap();
        state.puts += 1;
        if let Some(known) = state.objects.get(name) {
            assert_eq!(known, bytes, "a retry sends the same bytes under the same name");
        } else if state.delays && self.dice.lock().unwrap().one_in(3) {
            let calls = self.dice.lock().unwrap().below(60);
            state.hidden.insert(name.to_owned(), calls);
        }
        state.objects.insert(name.to_owned(), bytes.to_vec());
        let unanswered = state.weather.unanswered;
        match unanswered > 0 && self.dice.lock().unwrap().one_in(unanswered) {
            true => Err(BucketError::Slow),
            false => Ok(()),
        }
    }

    fn put_new(&self, name: &str, bytes: &[u8]) -> Result<bool, BucketError> {
        self.put(name, bytes).map(|()| true)
    }

    fn remove(&self, name: &str) -> Result<(), BucketError> {
        self.call()?;
        self.state.lock().unwrap().objects.remove(name);
        Ok(())
    }
}

/// A phone of the practice.
pub struct Phone {
    pub store: Option<Store>,
    folder: PathBuf,
    key: [u8; 32],
    pub label: String,
    pub skew_ms: i64,
    pub births: Vec<BirthId>,
    pub written: BTreeSet<EntryId>,
}

impl Phone {
    pub fn new(root: &Path, n: usize, skew_ms: i64) -> Self {
        let (folder, key) = (root.join(format!("phone-{n}")), [n as u8 + 1; 32]);
        std::fs::create_dir_all(&folder).unwrap();
        let store = Some(store_with_key(&folder, &key).unwrap());
        Self { store, folder, key, label: format!("Midwife {n}"), skew_ms, births: Vec::new(), written: BTreeSet::new() }
    }

    pub fn store(&mut self) -> &mut Store {
        self.store.as_mut().unwrap()
    }

    pub fn id(&self) -> DeviceId {
        self.store.as_ref().unwrap().device()
    }

    /// Is killed and started again.
    pub fn restart(&mut self) {
        drop(self.store.take());
        self.store = Some(store_with_key(&self.folder, &self.key).unwrap());
    }

    pub fn write(&mut self, birth: Option<BirthId>, text: &str, now_ms: i64) -> EntryId {
        let (wall_ms, label) = (now_ms + self.skew_ms, self.label.clone());
        let store = self.store.as_mut().unwrap();
        let id = store.next_id();
        let recorded = Stamp { wall_ms, offset_min: 0, zone: None, boot: None };
        let fact = match birth {
            Some(_) => Fact::Noted { text: text.to_owned() },
            None => Fact::BirthRegistered { label: text.to_owned(), rehearsal: false },
        };
        let birth = birth.unwrap_or(BirthId(id));
        let occurred = Occurred::Marked(recorded.clone());
        store.append(&Entry { id, birth, author: label, occurred, recorded, fact, amends: None }).unwrap();
        if !self.births.contains(&birth) {
            self.births.push(birth);
        }
        self.written.insert(id);
        id
    }

    pub fn round(&mut self, bucket: &dyn Bucket, now_ms: i64) -> (Report, Result<(), SyncError>) {
        let now_ms = now_ms + self.skew_ms;
        let mut wishes = Wishes { now_ms, files: true, progress: &mut |_| true };
        let (report, done) = round(&Alone::new(self.store.as_mut().unwrap()), bucket, &mut wishes);
        for birth in &report.births {
            if *birth != BirthId::PRACTICE && !self.births.contains(birth) {
                self.births.push(*birth);
            }
        }
        (report, done)
    }

    /// Every birth that is here, by the hash of its entries.
    pub fn versions(&self) -> BTreeMap<BirthId, String> {
        let store = self.store.as_ref().unwrap();
        let births = store.births().unwrap();
        births.into_iter().map(|birth| (birth.id, version(&store.entries(birth.id).unwrap()))).collect()
    }

    pub fn entries(&self) -> BTreeSet<EntryId> {
        let store = self.store.as_ref().unwrap();
        let births = store.births().unwrap().into_iter().map(|birth| birth.id).chain([BirthId::PRACTICE]);
        births.flat_map(|birth| store.entries(birth).unwrap()).map(|stored: Stored| stored.entry.id).collect()
    }
}

/// A folder in memory where there is one, since thousands of stores are made.
pub fn folder() -> tempfile::TempDir {
    let memory = Path::new("/dev/shm");
    if memory.is_dir() { tempfile::tempdir_in(memory).unwrap() } else { tempfile::tempdir().unwrap() }
}

/// Founds a practice on the first phone and lets the others join it, in person. Gives the sheet.
pub fn practice(phones: &mut [Phone], now_ms: i64) -> String {
    let (first, others) = phones.split_first_mut().unwrap();
    let label = first.label.clone();
    let sheet = found(first.store(), &label, b"here".to_vec(), now_ms).unwrap();
    for other in others {
        welcome(first, other, Role::Member, now_ms);
    }
    sheet.to_string()
}

/// A lead's phone lets another join.
pub fn welcome(lead: &mut Phone, other: &mut Phone, role: Role, now_ms: i64) {
    let label = other.label.clone();
    let card = Card::of(other.store(), &label).unwrap();
    let welcome = admit(lead.store(), &card, role, now_ms).unwrap();
    join(other.store(), &welcome).unwrap();
}
