//! What must be in the charts: a plain list, kept beside the program.

use std::collections::{BTreeMap, BTreeSet};

use secundine_domain::entry::{BirthId, EntryId};
use secundine_domain::fact::{BabyNo, Fact, Loss};
use secundine_domain::time::{Certainty, Stamp};
use secundine_session::api::{BirthView, ClockView, LineView};

/// How far a distance may be from the true one, ms.
const EXACT_MS: i64 = 1_000;

/// A moment as the clocks of the device said, and as it truly was.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What the clocks said.
    pub stamp: Stamp,
    /// On a clock that nobody can set, ms.
    pub true_ms: i64,
    /// How often the wall clock had been set.
    pub settings: u32,
}

/// When something happened.
#[derive(Clone, Debug, PartialEq)]
pub enum When {
    Marked(Mark),
    Typed { wall_ms: i64, offset_min: i32, estimated: bool },
}

/// An entry that was acknowledged, as it stands now.
#[derive(Clone, Debug)]
pub struct Written {
    pub birth: BirthId,
    pub fact: Fact,
    pub when: When,
    /// How often it was put right or taken out.
    pub amended: usize,
    pub retracted: bool,
}

#[derive(Default)]
pub struct Model {
    pub written: BTreeMap<EntryId, Written>,
    /// The births in the order in which they were begun.
    pub births: Vec<BirthId>,
    /// Version of each birth when it was last seen, and how many entries it had, amendments too.
    versions: BTreeMap<BirthId, (usize, String)>,
    /// How many distances were compared.
    pub distances: usize,
}

impl When {
    fn wall_ms(&self) -> i64 {
        match self {
            Self::Marked(mark) => mark.stamp.wall_ms,
            Self::Typed { wall_ms, .. } => *wall_ms,
        }
    }

    /// Date and time of day as they are to be shown.
    pub fn shown(&self) -> (String, String) {
        let (offset_min, digits) = match self {
            Self::Marked(mark) => (mark.stamp.offset_min, 8),
            Self::Typed { offset_min, .. } => (*offset_min, 5),
        };
        let (date, clock) = calendar(self.wall_ms() + i64::from(offset_min) * 60_000);
        (date, clock[..digits].to_owned())
    }
}

/// Local milliseconds since 1970 as date and time of day, worked out by hand (days to civil, public domain).
pub fn calendar(local_ms: i64) -> (String, String) {
    let (days, second) = (local_ms.div_euclid(86_400_000), local_ms.rem_euclid(86_400_000) / 1000);
    let shifted = days + 719_468;
    let (era, day_of_era) = (shifted.div_euclid(146_097), shifted.rem_euclid(146_097));
    let year_of_era = (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * month + 2) / 5 + 1;
    let (month, year) = if month < 10 { (month + 3, year_of_era + era * 400) } else { (month - 9, year_of_era + era * 400 + 1) };
    let date = format!("{year:04}-{month:02}-{day:02}");
    (date, format!("{:02}:{:02}:{:02}", second / 3600, second / 60 % 60, second % 60))
}

impl Model {
    pub fn write(&mut self, entry: EntryId, birth: BirthId, fact: Fact, when: When) {
        let written = Written { birth, fact, when, amended: 0, retracted: false };
        assert!(self.written.insert(entry, written).is_none(), "{entry} was given twice");
        if !self.births.contains(&birth) {
            self.births.push(birth);
        }
    }

    pub fn of(&self, birth: BirthId) -> impl Iterator<Item = (EntryId, &Written)> {
        self.written.iter().filter(move |(_, written)| written.birth == birth).map(|(entry, written)| (*entry, written))
    }

    pub fn standing(&self, birth: BirthId) -> impl Iterator<Item = &Written> {
        self.of(birth).map(|(_, written)| written).filter(|written| !written.retracted)
    }

    pub fn babies(&self, birth: BirthId) -> BTreeSet<BabyNo> {
        self.standing(birth)
            .filter_map(|written| if let Fact::BabyBorn { baby } = written.fact { Some(baby) } else { None })
            .collect()
    }

    /// Whether a baby waits for its placenta.
    pub fn third_stage_runs(&self, birth: BirthId) -> bool {
        let delivered: BTreeSet<BabyNo> = self.delivered(birth).collect();
        self.babies(birth).iter().any(|baby| !delivered.contains(baby))
    }

    pub fn delivered(&self, birth: BirthId) -> impl Iterator<Item = BabyNo> {
        self.standing(birth)
            .flat_map(|written| if let Fact::PlacentaBorn { babies } = &written.fact { babies.clone() } else { Vec::new() })
    }

    /// Entries of a birth, amendments too.
    fn count(&self, birth: BirthId) -> usize {
        self.of(birth).map(|(_, written)| 1 + written.amended).sum()
    }

    /// Holds a chart against the list.
    pub fn check(&mut self, view: &BirthView, now: &Mark) {
        let birth = view.birth;
        let lines: BTreeMap<EntryId, &LineView> = view.timeline.iter().map(|line| (line.entry, line)).collect();
        assert_eq!(lines.len(), view.timeline.len(), "an entry stands twice");
        let known: Vec<EntryId> = self.of(birth).map(|(entry, _)| entry).collect();
        assert_eq!(lines.keys().copied().collect::<Vec<_>>(), known, "every acknowledged entry stands once, and no other");
        let first_signature =
            self.of(birth).find(|(_, written)| matches!(written.fact, Fact::Signed { .. })).map(|(entry, _)| entry);
        for (entry, written) in self.of(birth) {
            let line = lines[&entry];
            assert_eq!((&line.date, &line.clock), (&written.when.shown().0, &written.when.shown().1), "{written:?}");
            assert_eq!(line.fact, written.fact, "{entry}");
            assert_eq!((line.retracted, line.earlier.len()), (written.retracted, written.amended), "{entry} {written:?}");
            assert_eq!(line.estimated, matches!(written.when, When::Typed { estimated: true, .. }), "{entry}");
            let signature = matches!(written.fact, Fact::Signed { .. });
            assert_eq!(line.after_signing, !signature && first_signature.is_some_and(|signed| entry > signed), "{entry}");
            assert_eq!(line.author, super::PRACTITIONER);
        }
        self.check_version(view);
        let (jug, seen) = self.blood(birth);
        assert_eq!((view.blood.measured, view.blood.seen), (jug, seen), "blood");
        self.check_clocks(view, now);
    }

    /// The version is another one if, and only if, something was written.
    fn check_version(&mut self, view: &BirthView) {
        let count = self.count(view.birth);
        if let Some((before, version)) = self.versions.insert(view.birth, (count, view.version.clone())) {
            assert_eq!(before == count, version == view.version, "{before} entries, then {count}");
        }
    }

    fn blood(&self, birth: BirthId) -> (u32, u32) {
        self.standing(birth).fold((0, 0), |(jug, seen), written| match &written.fact {
            Fact::BloodLoss(Loss::Jug { volume }) => (jug + volume.get(), seen),
            Fact::BloodLoss(Loss::Seen { volume }) => (jug, seen + volume.get()),
            _ => (jug, seen),
        })
    }

    fn check_clocks(&mut self, view: &BirthView, now: &Mark) {
        let birth = view.birth;
        let now = When::Marked(now.clone());
        let born: Vec<&Written> = self.standing(birth).filter(|written| matches!(written.fact, Fact::BabyBorn { .. })).collect();
        let placentas: Vec<&Written> =
            self.standing(birth).filter(|written| matches!(written.fact, Fact::PlacentaBorn { .. })).collect();
        let running = self.third_stage_runs(birth);
        let mut seen = Vec::new();
        // Which of several is the last one cannot be told here where one was typed, or where the same was marked twice.
        if let (Some(from), to) = (last(&born), last(&placentas))
            && (running || to.is_some())
            && self.delivered(birth).count() == self.delivered(birth).collect::<BTreeSet<_>>().len()
            && born.len() == self.babies(birth).len()
        {
            let clock = view.third_stage.clone().unwrap();
            assert_eq!(clock.running, running);
            seen.push((from.clone(), if running { now.clone() } else { to.unwrap().clone() }, clock));
        }
        for baby in &view.babies {
            let of = |is: &dyn Fn(&Fact) -> bool| {
                let found: Vec<&Written> = self.standing(birth).filter(|written| is(&written.fact)).collect();
                (found.len() <= 1).then(|| found.first().map(|written| written.when.clone()))
            };
            let born = of(&|fact| *fact == Fact::BabyBorn { baby: baby.baby });
            let stopped = of(&|fact| *fact == Fact::CordPulsationStopped { baby: baby.baby });
            if let (Some(Some(from)), Some(to), Some(clock)) = (born, stopped, baby.cord.clone()) {
                assert_eq!(clock.running, to.is_none());
                seen.push((from, to.unwrap_or_else(|| now.clone()), clock));
            }
        }
        for (from, to, clock) in seen {
            is_right(&from, &to, &clock);
            self.distances += 1;
        }
    }
}

/// The last of several marks. None where there are none, or one of several was typed.
fn last<'a>(of: &[&'a Written]) -> Option<&'a When> {
    let true_ms = |written: &&&Written| if let When::Marked(mark) = &written.when { Some(mark.true_ms) } else { None };
    match of {
        [one] => Some(&one.when),
        several if several.iter().all(|written| true_ms(&written).is_some()) => {
            several.iter().max_by_key(true_ms).map(|written| &written.when)
        }
        _ => None,
    }
}

/// Right to a second, or told as less certain.
fn is_right(from: &When, to: &When, clock: &ClockView) {
    let place = format!("{from:?} {to:?} {clock:?}");
    let (When::Marked(first), When::Marked(second)) = (from, to) else {
        assert_eq!((clock.elapsed_ms, clock.certainty), (to.wall_ms() - from.wall_ms(), Certainty::Typed), "{place}");
        return;
    };
    let truth = second.true_ms - first.true_ms;
    let run = |mark: &Mark| mark.stamp.boot.as_ref().unwrap().id.clone();
    let exact = (clock.elapsed_ms - truth).abs() <= EXACT_MS;
    match clock.certainty {
        Certainty::Measured => assert!(exact && run(first) == run(second), "{place}"),
        _ if run(first) == run(second) => unreachable!("one run of the clock measures: {place}"),
        Certainty::AcrossRestart => assert!(exact || first.settings != second.settings, "{place}"),
        Certainty::AtLeast => {
            assert!(clock.elapsed_ms.abs() <= truth.abs() + EXACT_MS && first.settings != second.settings, "{place}")
        }
        Certainty::Typed | Certainty::Compared | Certainty::NotCompared => unreachable!("{place}"),
    }
}
