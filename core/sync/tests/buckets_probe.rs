//! What a trial says of a key that may not do everything, and of a store that does not do as it says.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::ops::Range;

use secundine_sync::{Bucket, BucketError, Listed, Place, Probed, open, probe};

/// A bucket with a key of few rights, in a store that is not what it ought to be.
struct Odd {
    inside: Box<dyn Bucket>,
    writes: bool,
    reads: bool,
    removes: bool,
    puts_over: bool,
    honours_new: bool,
    alters: bool,
    lists_late: bool,
}

const NO: BucketError = BucketError::Refused(403);

impl Bucket for Odd {
    fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError> {
        let listed = self.inside.list(prefix, after).map(|all| if self.lists_late { vec![] } else { all });
        if self.reads { listed } else { Err(NO) }
    }

    fn get(&self, name: &str, most: u64) -> Result<Vec<u8>, BucketError> {
        let bytes = self
            .inside
            .get(name, most)
            .map(|bytes| if self.alters { bytes.iter().map(|byte| byte ^ 1).collect() } else { bytes });
        if self.reads { bytes } else { Err(NO) }
    }

    fn get_range(&self, name: &str, range: Range<u64>) -> Result<Vec<u8>, BucketError> {
        if self.reads { self.inside.get_range(name, range) } else { Err(NO) }
    }

    fn put(&self, name: &str, bytes: &[u8]) -> Result<(), BucketError> {
        let over = self.inside.get(name, 1_000).is_ok();
        if self.writes && (self.puts_over || !over) { self.inside.put(name, bytes) } else { Err(NO) }
    }

    fn put_new(&self, name: &str, bytes: &[u8]) -> Result<bool, BucketError> {
        if self.honours_new && self.writes { self.inside.put_new(name, bytes) } else { self.put(name, bytes).map(|()| true) }
    }

    fn remove(&self, name: &str) -> Result<(), BucketError> {
        if self.removes { self.inside.remove(name) } else { Err(NO) }
    }
}

/// Tried twice, as it is on two days.
fn tried(change: fn(&mut Odd)) -> [Probed; 2] {
    let folder = tempfile::tempdir().unwrap();
    let inside = open(&Place::Folder { path: folder.path().to_owned() }).unwrap();
    let mut odd = Odd {
        inside,
        writes: true,
        reads: true,
        removes: true,
        puts_over: true,
        honours_new: true,
        alters: false,
        lists_late: false,
    };
    change(&mut odd);
    [probe(&odd, "probe-1"), probe(&odd, "probe-1")]
}

fn all_well() -> Probed {
    Probed { puts: Ok(()), honours_new: true, reads: Ok(()), ranges: Ok(()), lists: Ok(()), lists_after: true, removes: Ok(()) }
}

#[test]
fn a_key_for_everything() {
    assert_eq!(tried(|_| ()), [all_well(), all_well()]);
    let unheeding = Probed { honours_new: false, ..all_well() };
    assert_eq!(tried(|odd| odd.honours_new = false), [unheeding.clone(), unheeding]);
}

#[test]
fn a_key_that_may_not_remove() {
    let kept = Probed { removes: Err(NO), ..all_well() };
    assert_eq!(tried(|odd| odd.removes = false), [kept.clone(), kept]);
    let unheeding = Probed { removes: Err(NO), honours_new: false, ..all_well() };
    let both = tried(|odd| (odd.removes, odd.honours_new) = (false, false));
    assert_eq!(both, [unheeding.clone(), unheeding]);
}

#[test]
fn a_key_that_may_not_put_over_what_is_there() {
    let [first, second] = tried(|odd| (odd.puts_over, odd.removes, odd.honours_new) = (false, false, false));
    assert_eq!(first, Probed { removes: Err(NO), ..all_well() });
    // On another day the name is taken, and nothing can be said of putting; a name that nobody used has to be chosen.
    assert_eq!(second.unwritable(), Some(&NO));
}

#[test]
fn a_key_for_reading_alone() {
    for probed in tried(|odd| (odd.writes, odd.removes) = (false, false)) {
        assert_eq!((probed.unreadable(), probed.unwritable()), (None, Some(&NO)), "{probed:?}");
        assert!(!probed.honours_new && !probed.lists_after);
    }
}

#[test]
fn a_key_for_writing_alone() {
    for probed in tried(|odd| odd.reads = false) {
        assert_eq!((probed.unreadable(), probed.unwritable()), (Some(&NO), None), "{probed:?}");
    }
}

#[test]
fn a_store_that_gives_other_bytes_or_lists_late() {
    for probed in tried(|odd| odd.alters = true) {
        assert!(matches!(probed.unreadable(), Some(BucketError::Broken(_))), "{probed:?}");
    }
    for probed in tried(|odd| odd.lists_late = true) {
        assert_eq!(probed, Probed { lists_after: false, ..all_well() });
    }
}
