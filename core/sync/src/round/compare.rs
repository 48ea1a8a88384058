//! Whether all have been shown the same: what each device says it has seen, held against what is here.

use std::collections::{BTreeMap, BTreeSet};

use secundine_domain::entry::DeviceId;

use super::At;
use crate::roster::Seen;
use crate::{SyncError, Trouble, member, notes};

/// Compares the segments.
pub(crate) fn segments(at: &mut At<'_, '_>) -> Result<(), SyncError> {
    let (peers, own) = at.with(|store| Ok((notes::peers(store)?, notes::own(store)?)))?;
    let me = at.device;
    let mut heads: BTreeMap<DeviceId, (u64, Vec<u8>)> =
        peers.iter().map(|(device, peer)| (*device, (peer.seq, peer.hash.to_vec()))).collect();
    heads.insert(me, (own.seq, own.hash.to_vec()));
    for (device, peer) in &peers {
        if at.roster.member(*device).is_none() {
            // Somebody who was removed may say anything.
            continue;
        }
        for seen in &peer.seen {
            segment(at, &heads, seen);
        }
    }
    Ok(())
}

/// Acts upon the roster that somebody who belongs to the practice has seen and that are not here: whose, and from which on.
pub(crate) fn acts_behind(at: &At<'_, '_>) -> Result<BTreeSet<Trouble>, SyncError> {
    let (records, peers) = at.with(|store| Ok((notes::records(store)?, notes::peers(store)?)))?;
    let heads = member::heads(&records);
    let heads: BTreeMap<DeviceId, u64> = heads.iter().map(|head| (head.device(), head.seq)).collect();
    let told = peers.iter().filter(|(device, _)| at.roster.member(**device).is_some()).flat_map(|(_, peer)| &peer.acts);
    let behind = told.filter_map(|seen| {
        let (device, seq) = (seen.device(), heads.get(&seen.device()).copied().unwrap_or(0));
        (seen.seq > seq).then_some(Trouble::Withheld { device, seq: seq + 1 })
    });
    Ok(behind.collect())
}

fn segment(at: &mut At<'_, '_>, heads: &BTreeMap<DeviceId, (u64, Vec<u8>)>, seen: &Seen) {
    let device = seen.device();
    let Some(member) = at.roster.members.get(&device) else { return };
    let held = member.removed.is_some_and(|removed| seen.seq > removed.segment);
    let (seq, hash) = heads.get(&device).map_or((0, &[][..]), |(seq, hash)| (*seq, hash.as_slice()));
    if seen.seq > seq && !held {
        let trouble = match device == at.device {
            // More was written under this device's name than it has written.
            true => Trouble::Forked { device, seq: seq + 1 },
            false => Trouble::Withheld { device, seq: seq + 1 },
        };
        // What does not open or fit is told of by its own trouble.
        if !at.report.troubles.iter().any(|one| concerns(one, device)) {
            at.report.troubles.insert(trouble);
        }
    } else if seen.seq == seq && seq > 0 && seen.hash.0.as_slice() != hash {
        at.report.troubles.insert(Trouble::Forked { device, seq });
    }
}

fn concerns(trouble: &Trouble, of: DeviceId) -> bool {
    match trouble {
        Trouble::Withheld { device, .. }
        | Trouble::RolledBack { device, .. }
        | Trouble::Forked { device, .. }
        | Trouble::Misfit { device, .. }
        | Trouble::NoBirthKey { device, .. }
        | Trouble::Held { device, .. } => *device == of,
        Trouble::Altered { name }
        | Trouble::Swapped { name }
        | Trouble::Unsigned { name }
        | Trouble::NoKey { name }
        | Trouble::Unreadable { name } => name.contains(&of.to_string()),
    }
}
