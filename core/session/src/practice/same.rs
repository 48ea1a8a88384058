//! Births that stand under two names: two phones registered one birth, each for itself.

use std::collections::{BTreeMap, BTreeSet};

use icu_normalizer::DecomposingNormalizerBorrowed;
use secundine_domain::chart::{Chart, fold};
use secundine_domain::entry::{BirthId, Entry, EntryId};
use secundine_domain::fact::{Client, Fact};
use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_store::Birth;

use super::{Draft, OpenPractice};
use crate::api::ApiError;

/// Births that lie further apart are not asked about, ms. Our own choice.
const NEAR_MS: i64 = 3 * 24 * 3_600_000;

/// What was said of pairs of births.
#[derive(Default)]
pub(super) struct Same {
    groups: Vec<BTreeSet<BirthId>>,
    /// Pairs about which somebody has said something.
    said: BTreeSet<(BirthId, BirthId)>,
}

impl Same {
    /// Of each pair the last word holds, under whichever of the two it was said.
    fn read(charts: &[(BirthId, Chart)]) -> Self {
        let mut words: BTreeMap<(BirthId, BirthId), (i64, EntryId, bool)> = BTreeMap::new();
        for (birth, chart) in charts {
            for said in &chart.same {
                let (other, same) = said.what;
                let word = (said.mark.at.wall_ms(), said.mark.entry, same);
                let known = words.entry(pair(*birth, other)).or_insert(word);
                *known = word.max(*known);
            }
        }
        let mut same = Self { said: words.keys().copied().collect(), ..Self::default() };
        words.iter().filter(|(_, word)| word.2).for_each(|((one, other), _)| same.join(*one, *other));
        same
    }

    fn join(&mut self, one: BirthId, other: BirthId) {
        let (joined, apart): (Vec<_>, Vec<_>) =
            std::mem::take(&mut self.groups).into_iter().partition(|group| group.contains(&one) || group.contains(&other));
        self.groups = apart;
        self.groups.push(joined.into_iter().flatten().chain([one, other]).collect());
    }
}

fn pair(one: BirthId, other: BirthId) -> (BirthId, BirthId) {
    (one.min(other), one.max(other))
}

impl OpenPractice {
    /// All names of a birth; mostly the one.
    pub(super) fn names_of(&mut self, birth: BirthId) -> Result<BTreeSet<BirthId>, ApiError> {
        let group = self.same()?.groups.iter().find(|group| group.contains(&birth));
        Ok(group.cloned().unwrap_or_else(|| BTreeSet::from([birth])))
    }

    fn same(&mut self) -> Result<&Same, ApiError> {
        if self.same.is_none() {
            let mut charts = Vec::new();
            for birth in self.store.births_with("same_birth")? {
                let entries: Vec<Entry> = self.store.entries(birth)?.into_iter().map(|stored| stored.entry).collect();
                charts.push((birth, fold(birth, &entries)));
            }
            self.same = Some(Same::read(&charts));
        }
        self.same.as_ref().ok_or_else(ApiError::internal)
    }

    /// Whether an entry changes which births are one.
    pub(super) fn tells_of_same(&self, entry: &Entry) -> bool {
        let target = entry.amends.as_ref().map(|amends| amends.entry);
        let mut known = self.births.values().flatten().filter(|stored| Some(stored.entry.id) == target);
        matches!(entry.fact, Fact::SameBirth { .. }) || known.any(|stored| matches!(stored.entry.fact, Fact::SameBirth { .. }))
    }

    /// Each birth once, under the first of its names in this list.
    pub(super) fn once(&mut self, births: Vec<Birth>) -> Result<Vec<Birth>, ApiError> {
        let mut seen = BTreeSet::new();
        let mut once = Vec::with_capacity(births.len());
        for birth in births {
            let names = self.names_of(birth.id)?;
            if !seen.contains(&birth.id) {
                once.push(birth);
            }
            seen.extend(names);
        }
        Ok(once)
    }

    /// Says whether two births are the same.
    pub(crate) fn say_same(&mut self, birth: BirthId, other: BirthId, same: bool, now: &Stamp) -> Result<EntryId, ApiError> {
        if birth == other {
            return Err(ApiError::impossible(Message::new("error-same-birth")));
        }
        let (one, two) = (self.chart(birth)?, self.chart(other)?);
        if one.rehearsal != two.rehearsal {
            return Err(ApiError::impossible(Message::new("error-same-birth")));
        }
        self.write(Draft::now(birth, Fact::SameBirth { other, same }, now))
    }

    /// Pairs of these births that may be the same, and about which nobody has said anything: near in time, the mother of one
    /// name, and of one date of birth or under one label.
    pub(crate) fn alike(&mut self, births: &[(Birth, Chart)]) -> Result<Vec<(BirthId, BirthId)>, ApiError> {
        let mut found = Vec::new();
        for (at, (one, chart)) in births.iter().enumerate() {
            for (other, other_chart) in births.iter().skip(at + 1) {
                let near = one.registered_ms.saturating_sub(other.registered_ms).saturating_abs() <= NEAR_MS;
                if near && agree(chart, other_chart) && !self.same()?.said.contains(&pair(one.id, other.id)) {
                    found.push((one.id, other.id));
                }
            }
        }
        Ok(found)
    }
}

fn agree(one: &Chart, other: &Chart) -> bool {
    let (Some(a), Some(b)) = (&one.client, &other.client) else { return false };
    let born = |client: &Client| client.born.as_ref().map(|day| plain(day)).filter(|day| !day.is_empty());
    let named = !plain(&a.name).is_empty() && plain(&a.name) == plain(&b.name) && one.rehearsal == other.rehearsal;
    named
        && match (born(a), born(b)) {
            (Some(a), Some(b)) => a == b,
            _ => plain(&one.label) == plain(&other.label),
        }
}

/// Words without their accents, capitals and more than single spaces.
fn plain(words: &str) -> String {
    let apart = DecomposingNormalizerBorrowed::new_nfkd().normalize(words).into_owned();
    let letters: String = apart.chars().filter(|letter| !('\u{300}'..='\u{36f}').contains(letter)).collect();
    letters.to_lowercase().split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_one_however_it_was_typed() {
        for (one, other) in [("Zoë  Ångström", " zoe angstrom "), ("ŁUCJA", "łucja"), ("José", "Jose\u{301}")] {
            assert_eq!(plain(one), plain(other));
        }
        assert_ne!(plain("Rosa Quill"), plain("Rosa Quick"));
    }
}
