//! A birth by script: what is written to the store, in which groups, and when it is closed and opened again.

use std::path::Path;

use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::{Fact, Practice};
use secundine_domain::time::{Occurred, Stamp};
use secundine_store::{HEAD, Passphrase, Store, StoreError};

use crate::Chance;
use crate::plan::{self, Event};

/// One step of a script.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// Facts that are put on disk together.
    Write(Vec<Fact>),
    /// The store is closed and opened again.
    Reopen,
}

/// How a play begins: with a store that is open, or by opening it.
pub enum Begin {
    /// It was founded just now.
    Founded(Box<Store>),
    /// It is opened first.
    Closed,
}

/// What became of a play.
#[derive(Default)]
pub struct Played {
    /// Every entry that was handed to the store, whatever became of it.
    pub tried: Vec<Entry>,
    /// Those that the store said are on disk.
    pub acknowledged: Vec<Entry>,
    /// What the store said instead of saving.
    pub refused: Vec<StoreError>,
    /// What it said instead of opening or closing.
    pub shut: Vec<StoreError>,
    /// What the store did that it must not do.
    pub wrong: Vec<String>,
}

fn note(letters: usize) -> Fact {
    Fact::Noted { text: "quiet ".chars().cycle().take(letters.max(1)).collect() }
}

fn registered() -> Step {
    let chosen = Fact::ProtocolChosen { protocol: "who".to_owned(), own: None };
    Step::Write(vec![Fact::BirthRegistered { label: "Ada".to_owned(), rehearsal: false }, chosen])
}

/// The script of a seed. That of 0 is a plain birth of twelve entries after the registering; the others are by chance.
#[must_use]
pub fn script(seed: u64) -> Vec<Step> {
    let described = Practice {
        name: "Heron House".to_owned(),
        practitioner: "Ida".to_owned(),
        role: "midwife".to_owned(),
        protocol: Some("who".to_owned()),
    };
    let mut steps = vec![Step::Write(vec![Fact::PracticeDescribed(described)]), registered()];
    let write = |letters: &[usize]| Step::Write(letters.iter().map(|letters| note(*letters)).collect());
    if seed == 0 {
        steps.extend([write(&[40]), write(&[90]), write(&[60, 10, 300]), write(&[9_000]), Step::Reopen]);
        steps.extend([write(&[20]), write(&[1_500]), Step::Reopen, write(&[30]), write(&[70, 80]), write(&[10])]);
        return steps;
    }
    let mut chance = Chance(seed);
    for _ in 0..4 + chance.below(12) {
        let longest = [60, 60, 600, 5_000, 14_000][chance.below(5)];
        steps.push(match chance.below(8) {
            0 => Step::Reopen,
            1 => write(&[1 + chance.below(longest), 1 + chance.below(60), 1 + chance.below(60)]),
            _ => write(&[1 + chance.below(longest)]),
        });
    }
    steps
}

/// The play of one script on one folder.
pub struct Play<'a> {
    folder: &'a Path,
    identity: &'a Passphrase,
    birth: Option<BirthId>,
    /// Called when the store says that nothing more is written: a kill at this moment is tried on a copy.
    broken: &'a mut dyn FnMut(&Played),
    played: Played,
}

/// Plays a script.
pub fn play(folder: &Path, identity: &Passphrase, begin: Begin, steps: &[Step], broken: &mut dyn FnMut(&Played)) -> Played {
    let mut play = Play { folder, identity, birth: None, broken, played: Played::default() };
    let mut store = match begin {
        Begin::Founded(store) => Some(*store),
        Begin::Closed => play.open(),
    };
    for step in steps {
        let Some(open) = store.take() else { break };
        store = match step {
            Step::Write(facts) => play.write(open, facts),
            Step::Reopen => play.reopen(open),
        };
        if let Some(store) = &store {
            play.read(store);
        }
    }
    if let Some(Err(error)) = store.map(Store::close) {
        play.played.shut.push(error);
    }
    play.played
}

impl Play<'_> {
    /// Opens the store, a second time if need be.
    fn open(&mut self) -> Option<Store> {
        for _ in 0..2 {
            match Store::open_with_identity(self.folder, self.identity) {
                Ok(store) => return Some(store),
                Err(error) => self.played.shut.push(error),
            }
        }
        None
    }

    fn reopen(&mut self, store: Store) -> Option<Store> {
        if let Err(error) = store.close() {
            self.played.shut.push(error);
        }
        self.open()
    }

    fn entries(&mut self, store: &Store, facts: &[Fact]) -> Vec<Entry> {
        let mut id = store.next_id();
        let mut entries = Vec::new();
        for fact in facts {
            if matches!(fact, Fact::BirthRegistered { .. }) {
                self.birth = Some(BirthId(id));
            }
            let birth = if matches!(fact, Fact::PracticeDescribed(_)) { None } else { self.birth };
            let wall_ms = 1_795_570_800_000 + i64::try_from(id.n).unwrap_or_default() * 60_000;
            let recorded = Stamp { wall_ms, offset_min: 60, zone: None, boot: None };
            let occurred = Occurred::Marked(recorded.clone());
            let birth = birth.unwrap_or(BirthId::PRACTICE);
            let (author, fact) = ("Ida".to_owned(), fact.clone());
            entries.push(Entry { id, birth, author, occurred, recorded, fact, amends: None });
            id.n += 1;
        }
        entries
    }

    /// Puts facts on disk; where there was no room, tries once more.
    fn write(&mut self, mut store: Store, facts: &[Fact]) -> Option<Store> {
        for _ in 0..2 {
            let entries = self.entries(&store, facts);
            self.played.tried.extend_from_slice(&entries);
            plan::note(|| Event::Tried(self.played.tried.len()));
            let answer = match entries.as_slice() {
                [entry] => store.append(entry).map(|stored| vec![stored]),
                entries => store.append_all(entries),
            };
            match answer {
                Ok(stored) => {
                    if stored.iter().map(|stored| &stored.entry).ne(&entries) {
                        self.played.wrong.push("other entries were acknowledged than were given".to_owned());
                    }
                    self.played.acknowledged.extend(entries);
                    let head = std::fs::read(self.folder.join(HEAD)).unwrap_or_default();
                    plan::note(|| Event::Acknowledged(self.played.acknowledged.len(), head));
                    return Some(store);
                }
                Err(StoreError::Full) => self.played.refused.push(StoreError::Full),
                Err(error) => {
                    let not_saved = matches!(error, StoreError::NotSaved(_));
                    self.played.refused.push(error);
                    return if not_saved { self.after_a_break(store, facts) } else { Some(store) };
                }
            }
        }
        Some(store)
    }

    /// Nothing may be written now, not even when asked; then the store is dropped and opened again.
    fn after_a_break(&mut self, mut store: Store, facts: &[Fact]) -> Option<Store> {
        (self.broken)(&self.played);
        let before = plan::changes();
        for _ in 0..2 {
            let entries = self.entries(&store, facts);
            match store.append_all(&entries) {
                Err(StoreError::NotSaved(_)) => {}
                other => self.played.wrong.push(format!("after a failed write it said {:?}", other.map(|all| all.len()))),
            }
        }
        let more = plan::changes() - before;
        if more > 0 {
            self.played.wrong.push(format!("after a failed write the files were touched {more} times"));
        }
        self.read(&store);
        drop(store);
        self.open()
    }

    /// What is read is all that was acknowledged of the birth, or an error: never less, and nothing unwritten.
    fn read(&mut self, store: &Store) {
        let Some(birth) = self.birth else { return };
        let Ok(found) = store.entries(birth) else { return };
        let mut of_birth = self.played.acknowledged.iter().filter(|entry| entry.birth == birth);
        let lost = of_birth.find(|entry| !found.iter().any(|stored| stored.entry == **entry));
        if let Some(lost) = lost {
            self.played.wrong.push(format!("entry {} is not read back", lost.id.n));
        }
        if let Some(new) = found.iter().find(|stored| !self.played.tried.contains(&stored.entry)) {
            self.played.wrong.push(format!("entry {} was never written", new.entry.id.n));
        }
    }
}
