//! Which entries a printed record shows, by the version that is printed on it.

use std::collections::BTreeMap;

use secundine_domain::entry::DeviceId;
use sha2::{Digest, Sha256};

use crate::Stored;

/// Fewest digits of a version that tell one: as many as are printed. Our own choice.
pub const PAPER_DIGITS: usize = 16;

/// Most states of a record that are tried. Our own choice: three devices with a hundred entries each have a million.
const TRIED: usize = 1 << 20;

/// How many of a birth's entries a record shows that bears this version, or its first digits; none where it is no state of
/// them. A record that was printed earlier shows each device's entries up to some number. Digits may be in groups.
#[must_use]
pub fn shown_on_paper(entries: &[Stored], digits: &str) -> Option<usize> {
    let digits: String = digits.split_whitespace().collect::<String>().to_ascii_lowercase();
    if digits.len() < PAPER_DIGITS || !digits.bytes().all(|byte| byte.is_ascii_hexdigit()) {
        return None;
    }
    let mut ordered: Vec<&Stored> = entries.iter().collect();
    ordered.sort_by_key(|stored| stored.entry.id);
    let mut devices: BTreeMap<DeviceId, Vec<[u8; 32]>> = BTreeMap::new();
    for stored in ordered {
        devices.entry(stored.entry.id.device).or_default().push(stored.digest);
    }
    let devices: Vec<Vec<[u8; 32]>> = devices.into_values().collect();
    let states = devices.iter().fold(1, |states: usize, of| states.saturating_mul(of.len() + 1));
    let least = if states > TRIED { usize::MAX } else { 0 };
    state(&devices, &Sha256::new(), least, &digits).filter(|shown| *shown > 0)
}

/// Tries the states of the remaining devices, those with most entries first: each has `least` of its entries or more, or all.
fn state(devices: &[Vec<[u8; 32]>], hash: &Sha256, least: usize, digits: &str) -> Option<usize> {
    let Some((first, rest)) = devices.split_first() else {
        return hex::encode(hash.clone().finalize()).starts_with(digits).then_some(0);
    };
    let mut hashes = vec![hash.clone()];
    for digest in first {
        hashes.push(hashes.last().unwrap_or(hash).clone().chain_update(digest));
    }
    let tried = hashes.iter().enumerate().skip(least.min(first.len())).rev();
    tried.into_iter().find_map(|(count, hash)| Some(count + state(rest, hash, least, digits)?))
}

#[cfg(test)]
#[allow(clippy::string_slice, reason = "digits")]
mod tests {
    use secundine_domain::entry::{BirthId, Entry, EntryId};
    use secundine_domain::fact::Fact;
    use secundine_domain::time::{Occurred, Stamp};

    use super::*;
    use crate::version;

    fn stored(device: u8, n: u64) -> Stored {
        let id = EntryId { device: DeviceId([device; 16]), n };
        let recorded = Stamp { wall_ms: 0, offset_min: 0, zone: None, boot: None };
        let occurred = Occurred::Marked(recorded.clone());
        let (author, fact) = (String::new(), Fact::ConcernMarked);
        let entry = Entry { id, birth: BirthId(id), author, occurred, recorded, fact, amends: None };
        Stored { digest: Sha256::digest(entry.encode().unwrap()).into(), entry }
    }

    #[test]
    fn a_paper_shows_all_entries_or_the_first_of_each_device_or_is_of_another_birth() {
        let of = |one: u64, two: u64| {
            (1..=two).map(|n| stored(2, n)).chain((1..=one).map(|n| stored(1, n * 7))).collect::<Vec<Stored>>()
        };
        let all = of(20, 10);
        assert_eq!(shown_on_paper(&all, &version(&all)), Some(30));
        assert_eq!(shown_on_paper(&all, &version(&all)[..16]), Some(30));
        assert_eq!(shown_on_paper(&all, &version(&of(13, 4))[..16].to_uppercase()), Some(17));
        let grouped = version(&of(20, 0));
        assert_eq!(shown_on_paper(&all, &format!(" {} {} ", &grouped[..8], &grouped[8..20])), Some(20));
        assert_eq!(shown_on_paper(&of(20, 9), &version(&all)), None, "one is missing");
        assert_eq!(shown_on_paper(&all, &version(&all)[..15]), None, "too few digits");
        assert_eq!(shown_on_paper(&all, "0123456789abcdef"), None);
        let long = of(2_000, 2_000);
        assert_eq!(shown_on_paper(&long, &version(&long)), Some(4_000), "where too many states are possible, all entries alone");
    }
}
