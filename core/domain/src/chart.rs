//! A chart is its entries: [`fold`] reads any set of them, in any order, into what is known of a birth.

use std::collections::{BTreeMap, BTreeSet};

use crate::entry::{BirthId, DeviceId, Entry, EntryId};
use crate::examination::{Examined, WeightTable};
use crate::fact::{
    Apgar, BabyNo, Care, Client, Compared, Fact, Joined, LeavingStep, Loss, Medicine, MotherObservation, NewbornEvent,
    NewbornMeasures, NextContact, Perineum, Photo, PhotoMeasure, ResponseStep, Shared, VoiceNote, WrittenUp,
};
use crate::growth::latest;
use crate::message::Message;
use crate::protocol::Protocol;
use crate::quantity::Minutes;
use crate::time::{Certainty, Elapsed, Occurred, Run, Stamp};
use offsets::Offsets;
use runs::Runs;
use timebase::Timebase;

mod account;
mod again;
mod apply;
mod clock_changes;
mod lines;
mod oddities;
mod offsets;
mod phones;
mod runs;
mod timebase;
mod voice;

pub use clock_changes::CLOCK_STEP_MS;
pub use lines::{Line, State};
pub use oddities::{Odd, Oddity};
pub use offsets::Offset;

/// What is known of one birth.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Chart {
    /// What tells this birth from others.
    pub label: String,
    /// A drill or a demonstration.
    pub rehearsal: bool,
    /// The mother.
    pub client: Option<Client>,
    /// The protocol whose limits are watched.
    pub chosen: Option<Chosen>,
    /// How the third stage is cared for, in order of time: the last holds.
    pub cares: Vec<Noted<Care>>,
    /// The babies, in order.
    pub babies: BTreeMap<BabyNo, Baby>,
    /// The placentas, each named by its first baby.
    pub placentas: BTreeMap<BabyNo, Placenta>,
    /// What is known of the examination, by placenta.
    pub examinations: BTreeMap<BabyNo, Examined>,
    /// The table that a placenta's weight is held against.
    pub weights: Option<Box<WeightTable>>,
    /// Photographs, in order of time.
    pub photos: Vec<Noted<Photo>>,
    /// Measures on photographs, in order of time.
    pub photo_measures: Vec<Noted<PhotoMeasure>>,
    /// Blood, in order of time.
    pub losses: Vec<Noted<Loss>>,
    /// Looks at the mother, in order of time.
    pub observations: Vec<Noted<MotherObservation>>,
    /// Medicines, in order of time.
    pub medicines: Vec<Noted<Medicine>>,
    /// Steps of the response when it goes wrong, in order of time.
    pub responses: Vec<Noted<ResponseStep>>,
    /// When somebody was concerned, in order of time.
    pub concerns: Vec<Mark>,
    /// Looks at the perineum, in order of time.
    pub perinea: Vec<Noted<Perineum>>,
    /// How long it takes to the hospital, in order of time: the last holds.
    pub travels: Vec<Noted<Minutes>>,
    /// When and how the family is seen next, in order of time: the last holds.
    pub contacts: Vec<Noted<NextContact>>,
    /// What was seen to before leaving, in order of time.
    pub leavings: Vec<Noted<LeavingStep>>,
    /// When the author left the home.
    pub left: Option<Mark>,
    /// What is asked of whoever takes over, in order of time: the last holds.
    pub asked_for: Vec<Noted<String>>,
    /// What was given out of hand, in order of time.
    pub shared: Vec<Noted<Shared>>,
    /// Voice notes, in order of time.
    pub voices: Vec<Noted<VoiceNote>>,
    /// What was written up from voice notes, in order of time.
    pub written_up: Vec<Noted<WrittenUp>>,
    /// Signatures, in order of time.
    pub signatures: Vec<Noted<Signature>>,
    /// What other phones told this one when it joined, in order of time.
    pub joined: Vec<Noted<Joined>>,
    /// Comparisons of two phones' clocks, in order of time.
    pub compared: Vec<Noted<Compared>>,
    /// Whether other births are this one, in order of time: the last of each holds.
    pub same: Vec<Noted<(BirthId, bool)>>,
    /// Every entry with what became of it, in order of time.
    pub lines: Vec<Line>,
    /// What is odd about the entries: shown, never refused.
    pub oddities: Vec<Oddity>,
    /// The entry that was written last, a correction too.
    pub last_written: Option<EntryId>,
    runs: Runs,
    base: Timebase,
    offsets: Offsets,
    /// The phone that registered the birth.
    told_by: Option<DeviceId>,
    /// That its entry is not here.
    opening_missing: bool,
    /// Placentas that only another phone has marked yet.
    told_placentas: Vec<(Vec<BabyNo>, Mark)>,
}

/// A protocol that was chosen for a birth.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chosen {
    /// Its id.
    pub id: String,
    /// The practice's own, as it was then.
    pub own: Option<Box<Protocol>>,
}

/// A baby and its cord.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Baby {
    /// Birth.
    pub born: Option<Mark>,
    /// End of cord pulsation.
    pub pulsation_stopped: Option<Mark>,
    /// Cord clamped.
    pub clamped: Option<Mark>,
    /// Cord cut.
    pub cut: Option<Mark>,
    /// Apgar scores, in order of time.
    pub apgars: Vec<Noted<Apgar>>,
    /// Measures, in order of time.
    pub measures: Vec<Noted<NewbornMeasures>>,
    /// What happened to it, in order of time.
    pub events: Vec<Noted<NewbornEvent>>,
}

/// A placenta and its membranes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placenta {
    /// The babies that it fed.
    pub babies: Vec<BabyNo>,
    /// Birth of the placenta.
    pub born: Option<Mark>,
    /// Birth of the membranes.
    pub membranes: Option<Mark>,
}

/// A moment, and the entry that it rests on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// When.
    pub at: Occurred,
    /// The entry in force.
    pub entry: EntryId,
}

/// A fact with its moment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Noted<T> {
    /// The fact.
    pub what: T,
    /// When and by which entry.
    pub mark: Mark,
    /// By whom.
    pub author: String,
}

/// A signature.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signature {
    /// Name as printed.
    pub name: String,
    /// Role.
    pub role: String,
    /// SHA-256 of what was signed, hexadecimal.
    pub version: String,
}

/// The third stage as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ThirdStage {
    /// Birth of the last baby.
    pub from: Mark,
    /// Birth of the last placenta, once every baby has one.
    pub to: Option<Mark>,
    /// From there to here, or to now.
    pub elapsed: Elapsed,
}

/// Reads entries into a chart. Total: any entries, any order, any number of times, one answer. Entries of other births
/// are left out.
#[must_use]
pub fn fold<'a>(birth: BirthId, entries: impl IntoIterator<Item = &'a Entry>) -> Chart {
    fold_with(birth, entries, &[])
}

/// [`fold`] on the device that has kept these runs of its own clock, in any order: it knows more of distances across its
/// restarts.
#[must_use]
pub fn fold_with<'a>(birth: BirthId, entries: impl IntoIterator<Item = &'a Entry>, kept: &[Run]) -> Chart {
    fold_joined(&BTreeSet::from([birth]), entries, kept)
}

/// [`fold_with`] of births that are one, as somebody has said: all their entries are read, and the birth is told by the clock of
/// the first of them.
#[must_use]
pub fn fold_joined<'a>(births: &BTreeSet<BirthId>, entries: impl IntoIterator<Item = &'a Entry>, kept: &[Run]) -> Chart {
    let mut unique: BTreeMap<EntryId, &Entry> = BTreeMap::new();
    for entry in entries.into_iter().filter(|entry| births.contains(&entry.birth)) {
        unique.entry(entry.id).and_modify(|kept| *kept = (*kept).min(entry)).or_insert(entry);
    }
    let runs = Runs::of(&unique, kept);
    let mut base = Timebase::of(&unique, &runs);
    let told_by = births.first().map(|birth| birth.0.device);
    let offsets = told_by.map(|phone| Offsets::of(phone, &unique, &base)).unwrap_or_default();
    base.put_right(&offsets, &runs);
    let (lines, missing) = lines::lines(&unique, &base);
    let last_written = unique.values().max_by_key(|entry| (base.written(entry), entry.id)).map(|entry| entry.id);
    let opening_missing = births.iter().any(|birth| !unique.contains_key(&birth.0));
    let mut chart = Chart { lines, last_written, runs, base, offsets, told_by, opening_missing, ..Chart::default() };
    apply::apply(&mut chart);
    oddities::find(&mut chart, &missing);
    chart
}

impl Chart {
    /// The protocol whose limits are watched; none while none is chosen, or this version does not know it.
    #[must_use]
    pub fn protocol(&self) -> Option<&Protocol> {
        let Chosen { id, own } = self.chosen.as_ref()?;
        own.as_deref().or_else(|| Protocol::find(id))
    }

    /// How far apart two moments are, by all that is known of the devices' clocks and their restarts.
    #[must_use]
    pub fn elapsed(&self, from: &Occurred, to: &Occurred) -> Elapsed {
        self.between_phones(from, to).unwrap_or_else(|| self.runs.elapsed(from, to))
    }

    /// From a moment of the chart to now. What was marked before now does not lie after it, whatever the wall clock says.
    #[must_use]
    pub fn until(&self, from: &Occurred, now: &Stamp) -> Elapsed {
        let elapsed = self.elapsed(from, &Occurred::Marked(now.clone()));
        match (from, elapsed.certainty) {
            (Occurred::Marked(_), Certainty::AcrossRestart | Certainty::Compared | Certainty::NotCompared) if elapsed.ms < 0 => {
                Elapsed::at_least(0)
            }
            _ => elapsed,
        }
    }

    /// What was found at a placenta; nothing where it was not looked at.
    #[must_use]
    pub fn examined(&self, placenta: BabyNo) -> &Examined {
        static NOTHING: Examined = Examined { given: BTreeMap::new(), last: None };
        self.examinations.get(&placenta).unwrap_or(&NOTHING)
    }

    /// The babies that a placenta fed; of one that is not marked, the baby that names it.
    #[must_use]
    pub fn fed(&self, placenta: BabyNo) -> Vec<BabyNo> {
        self.placentas.get(&placenta).map_or_else(|| vec![placenta], |known| known.babies.clone())
    }

    /// What is asked of whoever takes over; none where nothing is.
    #[must_use]
    pub fn asks(&self) -> Option<&Noted<String>> {
        self.asked_for.last().filter(|asked| !asked.what.trim().is_empty())
    }

    /// How the third stage is cared for now.
    #[must_use]
    pub fn care(&self) -> Option<Care> {
        self.cares.last().map(|care| care.what)
    }

    /// The third stage, from the birth of the last baby; `None` before any birth.
    #[must_use]
    pub fn third_stage(&self, now: &Stamp) -> Option<ThirdStage> {
        let from = self.last_birth()?.clone();
        let to = self.last_placenta();
        let elapsed = self.to_mark_or_now(&from, to.as_ref(), now);
        Some(ThirdStage { from, to, elapsed })
    }

    fn to_mark_or_now(&self, from: &Mark, to: Option<&Mark>, now: &Stamp) -> Elapsed {
        to.map_or_else(|| self.until(&from.at, now), |mark| self.elapsed(&from.at, &mark.at))
    }

    /// The placenta after which no baby waits for one. A second one for the same baby is an oddity and counts no more.
    #[must_use]
    pub fn last_placenta(&self) -> Option<Mark> {
        let mut delivered: BTreeSet<BabyNo> = BTreeSet::new();
        let mut last = None;
        for (babies, mark) in &self.told_placentas {
            delivered.extend(babies);
            last = Some(mark.clone());
        }
        for line in self.lines.iter().filter(|line| line.state() != State::Retracted) {
            let Fact::PlacentaBorn { babies } = &line.current().fact else { continue };
            let before = delivered.len();
            delivered.extend(babies);
            if delivered.len() > before {
                last = Some(Mark { at: line.current().occurred.clone(), entry: line.first.id });
            }
        }
        let born = self.babies.iter().filter(|(_, baby)| baby.born.is_some()).map(|(no, _)| no);
        last.filter(|_| born.into_iter().all(|no| delivered.contains(no)))
    }

    /// Where a mark stands among the lines: their order holds even where the wall clock was set in between.
    fn place(&self, mark: &Mark) -> Option<usize> {
        self.lines.iter().position(|line| line.first.id == mark.entry)
    }

    /// How long this cord pulsed, or has pulsed until now; `None` before the birth.
    #[must_use]
    pub fn cord_pulsation(&self, baby: BabyNo, now: &Stamp) -> Option<Elapsed> {
        let baby = self.babies.get(&baby)?;
        let born = baby.born.as_ref()?;
        Some(self.to_mark_or_now(born, baby.pulsation_stopped.as_ref(), now))
    }

    /// From the birth of the first baby to a moment.
    #[must_use]
    pub fn since_birth(&self, at: &Occurred) -> Option<Elapsed> {
        Some(self.elapsed(&self.first_birth()?.at, at))
    }

    /// The birth of the first baby.
    #[must_use]
    pub fn first_birth(&self) -> Option<&Mark> {
        self.babies.values().filter_map(|baby| baby.born.as_ref()).min_by_key(|mark| self.place(mark))
    }

    /// The birth of the last baby: from here the third stage runs.
    #[must_use]
    pub fn last_birth(&self) -> Option<&Mark> {
        self.babies.values().filter_map(|baby| baby.born.as_ref()).max_by_key(|mark| self.place(mark))
    }

    /// When it was written, where that is a minute or more away from the moment itself.
    #[must_use]
    pub fn written_apart<'a>(&self, entry: &'a Entry) -> Option<&'a Stamp> {
        (self.delay_ms(entry).unsigned_abs() >= 60_000).then_some(&entry.recorded)
    }

    /// Whether an entry was written later after the moment than the protocol's late-entry mark.
    #[must_use]
    pub fn is_late(&self, entry: &Entry, protocol: &Protocol) -> bool {
        self.delay_ms(entry) > protocol.late_entry.value.0.saturating_mul(60)
    }

    /// From the moment to its writing.
    fn delay_ms(&self, entry: &Entry) -> i64 {
        self.elapsed(&entry.occurred, &Occurred::Marked(entry.recorded.clone())).ms
    }

    /// A fact in words; `of` tells how many babies there are, so that a single one goes unnumbered.
    #[must_use]
    pub fn say(&self, fact: &Fact) -> Message {
        let about = match fact {
            Fact::VoiceNoted(note) => return self.say_voice_state(note),
            Fact::BabyBorn { baby } => *baby,
            _ => 0,
        };
        fact.describe().with("of", self.count().max(about))
    }

    /// The latest of each that was measured or seen of a baby, in words; none before anything was.
    #[must_use]
    pub fn seen_of_baby(&self, no: BabyNo) -> Option<Message> {
        let latest = latest(self.babies.get(&no)?, no);
        let said = (latest != NewbornMeasures::nothing(no)).then(|| Fact::NewbornMeasured(latest).describe())?;
        Some(Message { id: "part-seen".to_owned(), args: said.args })
    }

    /// A message about one baby, worded in the same way.
    #[must_use]
    pub fn numbered(&self, message: Message, baby: BabyNo) -> Message {
        message.with("baby", baby).with("of", self.count())
    }

    /// How many babies there are.
    fn count(&self) -> BabyNo {
        self.babies.keys().next_back().copied().unwrap_or(1)
    }
}
