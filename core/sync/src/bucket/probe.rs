//! What a bucket does and does not do, tried out with one small object.

use super::{Bucket, BucketError};

/// What came of it. Each is in a bucket's own words why it cannot be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Probed {
    /// Something can be put.
    pub puts: Result<(), BucketError>,
    /// A second put with the wish that nothing be there changed nothing. Most stores of one's own take the wish and do not heed
    /// it; no harm is done by that.
    pub honours_new: bool,
    /// What was put is read as it was put; nothing being there is told as that.
    pub reads: Result<(), BucketError>,
    /// A part of it is read as well.
    pub ranges: Result<(), BucketError>,
    /// It can be listed.
    pub lists: Result<(), BucketError>,
    /// What was put is in the listing that comes after, with its size.
    pub lists_after: bool,
    /// It can be removed. Nothing but this trial and a clearing out by hand removes anything.
    pub removes: Result<(), BucketError>,
}

impl Probed {
    /// Why nothing can be taken from it, if so.
    #[must_use]
    pub fn unreadable(&self) -> Option<&BucketError> {
        self.lists.as_ref().err().or(self.reads.as_ref().err())
    }

    /// Why nothing can be given to it, if so: a key may be for reading alone.
    #[must_use]
    pub fn unwritable(&self) -> Option<&BucketError> {
        self.puts.as_ref().err()
    }
}

/// Tries it under a name that nobody else uses. It is left there where it cannot be removed.
pub fn probe(bucket: &dyn Bucket, name: &str) -> Probed {
    let (first, second) = (format!("1 {name}"), format!("2 {name}"));
    let new = bucket.put_new(name, first.as_bytes());
    let again = new.as_ref().ok().map(|_| bucket.put_new(name, second.as_bytes()));
    // A key that may put and not put over keeps the first as well.
    let honours_new = matches!(again, Some(Ok(false) | Err(BucketError::Refused(_))));
    let puts = match (new, again) {
        // It lies there from another time.
        (Ok(false), Some(Ok(false))) => bucket.put(name, first.as_bytes()),
        (Ok(true), Some(Err(BucketError::Refused(_)))) => Ok(()),
        (Ok(_), Some(answer)) => answer.map(drop),
        (answer, _) => answer.map(drop),
    };
    let expected = if honours_new { &first } else { &second };
    let there = puts.is_ok().then_some(expected.as_bytes());
    let most = expected.len() as u64;
    let reads = read(bucket.get(name, most), there);
    let ranges = read(bucket.get_range(name, 1..4), there.and_then(|bytes| bytes.get(1..4)));
    let listed = bucket.list(name, None);
    let lists_after = listed.as_ref().is_ok_and(|all| all.iter().any(|one| one.name == name && one.bytes == most));
    Probed { puts, honours_new, reads, ranges, lists: listed.map(drop), lists_after, removes: bucket.remove(name) }
}

/// Whether what was read is what was put; where nothing could be put, that nothing is there is an answer.
fn read(answer: Result<Vec<u8>, BucketError>, there: Option<&[u8]>) -> Result<(), BucketError> {
    match (answer, there) {
        (Ok(bytes), Some(there)) if bytes != there => Err(BucketError::Broken("it gave other bytes than were put".to_owned())),
        (Err(BucketError::Absent), None) => Ok(()),
        (answer, _) => answer.map(drop),
    }
}
