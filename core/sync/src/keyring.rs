//! Keys of births: what a device wrote about a birth is sealed once more under a key of its own, which lies apart, so that
//! a birth can be erased from what can never be changed.

use secundine_store::{Note, Store};
use serde::{Deserialize, Serialize};

use crate::SyncError;
use crate::cbor::Bytes;
use crate::envelope::{Header, Kind, hash, random};
use crate::notes::{self, BirthKey, Named, Out, Own};
use crate::round::sealer::Sealer;

/// How many keys lie in a part. A part is written anew with each key that is added.
const PART: u32 = 256;

/// What a part holds.
#[derive(Serialize, Deserialize)]
pub(crate) struct Part {
    pub keys: Vec<(Bytes<24>, Bytes<32>)>,
}

/// The keys of these births for what this device writes, made where there are none; the parts that they lie in are queued
/// before anything that is sealed with them.
pub(crate) fn keys_for(
    store: &Store,
    births: &[[u8; 24]],
    own: &mut Own,
    sealer: &Sealer<'_>,
    put: &mut Vec<Note>,
) -> Result<Vec<Bytes<32>>, SyncError> {
    let mut keys = Vec::new();
    let mut made = Vec::new();
    let mut all = None;
    for birth in births {
        let key = match notes::birth_key(store, birth)? {
            Some(known) => known.key,
            None => {
                let all = match &mut all {
                    Some(all) => all,
                    none => none.insert(notes::birth_keys(store)?),
                };
                let part = u32::try_from(all.len()).unwrap_or(u32::MAX) / PART;
                let new = BirthKey { key: Bytes(random()?), part };
                put.push(notes::put_birth_key(birth, &new)?);
                made.push(part);
                let key = new.key;
                all.insert(*birth, new);
                key
            }
        };
        keys.push(key);
    }
    made.sort_unstable();
    made.dedup();
    for part in made {
        let keys = all.iter().flatten().filter(|(_, key)| key.part == part);
        let keys = keys.map(|(birth, key)| (Bytes(*birth), key.key)).collect();
        put_part(part, &Part { keys }, own, sealer, put)?;
    }
    Ok(keys)
}

/// Queues a part in the place of the one that was there.
pub(crate) fn put_part(part: u32, body: &Part, own: &mut Own, sealer: &Sealer<'_>, put: &mut Vec<Note>) -> Result<(), SyncError> {
    let before = own.keyrings.get(&part).cloned().unwrap_or_default();
    let seq = before.seq + 1;
    let header = Header { seq, part, parts: 0, ..sealer.header(Kind::Keyring, [0; 32])? };
    let object = sealer.seal(&header, body)?;
    let name = sealer.names.keyring(sealer.device, part, seq, &hash(&object));
    let bytes = Some(serde_bytes::ByteBuf::from(object));
    put.push(notes::enqueue(own, &Out { name: name.clone(), bytes, segment: None, entries: 0 })?);
    if !before.name.is_empty() {
        put.push(notes::enqueue(own, &Out { name: before.name, bytes: None, segment: None, entries: 0 })?);
    }
    own.keyrings.insert(part, Named { seq, name });
    Ok(())
}
