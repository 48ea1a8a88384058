//! What each signature covers, where not all of it was on the phone that signed.

use std::collections::{BTreeMap, BTreeSet};

use secundine_domain::chart::Chart;
use secundine_domain::entry::{BirthId, DeviceId, EntryId};
use secundine_domain::message::Message;
use secundine_store::{Stored, version};

use super::counted;
use crate::api::SignedView;

/// Most states of the record that are tried for one signature. Our own choice: two phones have a few hundred.
const TRIES: usize = 4_000;
/// So much of a version names it to a person.
const SHORT: usize = 12;

/// Every signature with what was not in it; empty where each covers all that was written before it.
pub(crate) fn signed(chart: &Chart, entries: &[Stored]) -> Vec<SignedView> {
    let devices: BTreeSet<DeviceId> = entries.iter().map(|stored| stored.entry.id.device).collect();
    if devices.len() < 2 || chart.signatures.is_empty() {
        return Vec::new();
    }
    let order: Vec<EntryId> = chart.written_order();
    let mut all_whole = true;
    let view = |signature: &secundine_domain::chart::Noted<secundine_domain::chart::Signature>| {
        let entry = signature.mark.entry;
        let before: BTreeSet<EntryId> = order.iter().copied().take_while(|id| *id != entry).collect();
        let covered = covered(entry, &signature.what.version, entries);
        let missing = covered.as_ref().map(|covered| before.difference(covered).count());
        let id = match missing {
            None => "signed-unknown",
            Some(0) => "signed-whole",
            Some(_) => "signed-without",
        };
        all_whole &= missing == Some(0);
        SignedView {
            entry,
            whole: missing == Some(0),
            said: Message::new(id)
                .with("version", signature.what.version.chars().take(SHORT).collect::<String>())
                .with("count", counted(missing.unwrap_or(0))),
        }
    };
    let views: Vec<SignedView> = chart.signatures.iter().map(view).collect();
    if all_whole { Vec::new() } else { views }
}

/// The entries that a signature covers: all of its own phone before it, and of each other phone the first ones up to some number,
/// under the names of the birth that it knew; told by which of these has the version that was signed. None where none has.
fn covered(signature: EntryId, signed: &str, entries: &[Stored]) -> Option<BTreeSet<EntryId>> {
    let own = entries.iter().find(|stored| stored.entry.id == signature)?.entry.birth;
    let births: BTreeSet<BirthId> = entries.iter().map(|stored| stored.entry.birth).collect();
    let of_own: Vec<&Stored> = entries.iter().filter(|stored| stored.entry.birth == own).collect();
    let all: Vec<&Stored> = entries.iter().collect();
    let scopes = if births.len() > 1 { vec![of_own, all] } else { vec![all] };
    scopes.into_iter().find_map(|scope| within(signature, signed, &scope))
}

fn within(signature: EntryId, signed: &str, scope: &[&Stored]) -> Option<BTreeSet<EntryId>> {
    let mut others: BTreeMap<DeviceId, Vec<&Stored>> = BTreeMap::new();
    let mut base: Vec<Stored> = Vec::new();
    for stored in scope {
        let id = stored.entry.id;
        if id.device != signature.device {
            others.entry(id.device).or_default().push(stored);
        } else if id.n < signature.n {
            base.push((*stored).clone());
        }
    }
    others.values_mut().for_each(|of| of.sort_by_key(|stored| stored.entry.id));
    let tries = others.values().try_fold(1_usize, |sum, of| sum.checked_mul(of.len() + 1)).filter(|tries| *tries <= TRIES)?;
    (0..tries).rev().find_map(|mut number| {
        let mut state = base.clone();
        for of in others.values() {
            let (taken, rest) = (number % (of.len() + 1), number / (of.len() + 1));
            number = rest;
            state.extend(of.iter().take(taken).map(|stored| (*stored).clone()));
        }
        (version(&state) == signed).then(|| state.iter().map(|stored| stored.entry.id).collect())
    })
}
