//! Acts upon the roster that others have put into the bucket.

use std::collections::BTreeSet;

use secundine_domain::entry::DeviceId;

use super::check::{self, Wanted};
use crate::access::{Access, with};
use crate::bucket::{Bucket, BucketError};
use crate::cbor::Bytes;
use crate::envelope::{Kind, OBJECT_MAX};
use crate::names::Names;
use crate::notes::{self, Me};
use crate::roster::{Record, Roster};
use crate::{SyncError, Trouble};

/// Fetches the acts of everybody who is or was a lead, until there is nothing new.
pub(crate) fn pull(access: &dyn Access, me: &Me, bucket: &dyn Bucket, troubles: &mut BTreeSet<Trouble>) -> Result<(), SyncError> {
    until_nothing_is_new(access, me, bucket, troubles, |roster| roster.leads_ever().to_vec())
}

/// The same of everybody.
pub(crate) fn pull_all(
    access: &dyn Access,
    me: &Me,
    bucket: &dyn Bucket,
    troubles: &mut BTreeSet<Trouble>,
) -> Result<(), SyncError> {
    until_nothing_is_new(access, me, bucket, troubles, |roster| roster.members.keys().copied().collect())
}

fn until_nothing_is_new(
    access: &dyn Access,
    me: &Me,
    bucket: &dyn Bucket,
    troubles: &mut BTreeSet<Trouble>,
    who: impl Fn(&Roster) -> Vec<DeviceId>,
) -> Result<(), SyncError> {
    let mut done = BTreeSet::new();
    loop {
        let (roster, this) = with(access, |store| Ok((Roster::of(&me.charter, &notes::records(store)?), store.device())))?;
        let mut authors = who(&roster);
        authors.extend(me.charter.founder_id());
        authors.retain(|author| *author != this && done.insert(*author));
        if authors.is_empty() {
            return Ok(());
        }
        for author in authors {
            let public = roster.members.get(&author).map(|member| member.public);
            let public = public.or_else(|| (me.charter.founder_id() == Some(author)).then_some(me.charter.founder.0));
            let public = public.or_else(|| (me.charter.recovery_id() == Some(author)).then_some(me.charter.recovery.0));
            if let Some(public) = public {
                pull_of(access, me, bucket, author, &public, troubles)?;
            }
        }
    }
}

fn pull_of(
    access: &dyn Access,
    me: &Me,
    bucket: &dyn Bucket,
    author: DeviceId,
    public: &[u8; 32],
    troubles: &mut BTreeSet<Trouble>,
) -> Result<(), SyncError> {
    let practice = me.charter.practice();
    let names = Names::new(&practice);
    let records = with(access, |store| notes::records(store))?;
    let last = records.iter().filter(|record| record.author.0 == author.0).max_by_key(|record| record.seq);
    let (mut seq, mut hash) = last.map_or((0, [0; 32]), |last| (last.seq, last.hash.0));
    let by_seq = check::by_seq(bucket.list(&names.rosters(author), Some(&names.before_roster(author, seq)))?);
    let here = by_seq.get(&seq).is_some_and(|listed| listed.contains(&names.roster(author, seq, &hash)));
    if seq > 0 && !here {
        troubles.insert(Trouble::RolledBack { device: author, seq });
    }
    for (&next, listed) in by_seq.range(seq + 1..) {
        if next != seq + 1 {
            troubles.insert(Trouble::Withheld { device: author, seq: seq + 1 });
            return Ok(());
        }
        let mut found = None;
        for name in listed {
            let wanted = Wanted { kind: Kind::Roster, practice: &practice, device: author, public, seq: next };
            let bytes = match bucket.get(name, OBJECT_MAX) {
                Ok(bytes) => bytes,
                Err(BucketError::Absent) => continue,
                Err(BucketError::TooLarge) => {
                    troubles.insert(crate::trouble::Bad::Altered.named(name));
                    continue;
                }
                Err(error) => return Err(error.into()),
            };
            match check::object(bytes, name, &wanted) {
                Ok(_) if found.is_some() => {
                    troubles.insert(Trouble::Forked { device: author, seq: next });
                    return Ok(());
                }
                Ok(opened) if opened.header.before == hash => found = Some((name, opened)),
                Ok(_) => drop(troubles.insert(Trouble::Forked { device: author, seq: next })),
                Err(bad) => drop(troubles.insert(bad.named(name))),
            }
        }
        let Some((name, opened)) = found else {
            troubles.insert(Trouble::Withheld { device: author, seq: next });
            return Ok(());
        };
        match check::body(access, me, bucket, &opened)? {
            Ok(entry) => {
                let record = Record { author: Bytes(author.0), seq: next, hash: Bytes(opened.hash), entry };
                with(access, |store| Ok(store.note_down(&[notes::put_record(&record)?])?))?;
                (seq, hash) = (next, opened.hash);
            }
            Err(bad) => {
                troubles.insert(bad.named(name));
                return Ok(());
            }
        }
    }
    Ok(())
}
