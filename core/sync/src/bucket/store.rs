//! What all three kinds of bucket have in common: an object store, asked from a thread that waits.

use std::future::Future;
use std::ops::Range;
use std::pin::pin;
use std::sync::OnceLock;
use std::time::Duration;

use futures_util::{StreamExt, stream};
use object_store::path::Path;
use object_store::{BackoffConfig, Error, GetOptions, GetRange, ObjectStore, ObjectStoreExt, PutMode, PutOptions, RetryConfig};
use tokio::runtime::{Builder, Runtime};

use super::why::{found, why};
use super::wire::{Beyond, Most};
use super::{Bucket, BucketError, Listed};

/// How many are fetched at a time over a network.
pub(super) const AHEAD: usize = 8;

/// How much of what is fetched at a time may lie in memory, bytes.
const TOGETHER: u64 = 32 << 20;

/// One kind of store, and where it differs from the others.
pub(super) trait Kind: Send + Sync {
    /// How many are fetched at a time.
    const AHEAD: usize;

    fn store(&self) -> &dyn ObjectStore;

    /// Everything that begins with `prefix` and comes after `after`; more and in any order does no harm.
    async fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError>;

    /// Whether it is there at all, as far as that can be seen without asking.
    fn ready(&self) -> Result<(), BucketError> {
        Ok(())
    }

    /// The size of what lies under a name, where the store answers to a range beyond it by no word of its own.
    fn size(&self, _: &str) -> Option<u64> {
        None
    }

    /// See [`Bucket::put`].
    async fn put(&self, path: &Path, bytes: &[u8]) -> Result<(), BucketError> {
        self.store().put(path, bytes.to_vec().into()).await.map(drop).map_err(|error| why(&error))
    }

    /// See [`Bucket::put_new`].
    async fn put_new(&self, path: &Path, bytes: &[u8]) -> Result<bool, BucketError> {
        match self.store().put_opts(path, bytes.to_vec().into(), PutOptions::from(PutMode::Create)).await {
            Ok(_) => Ok(true),
            Err(Error::AlreadyExists { .. } | Error::Precondition { .. }) => Ok(false),
            Err(error) => Err(why(&error)),
        }
    }
}

/// A bucket of one kind.
pub(super) struct Shelf<K>(pub K);

impl<K: Kind> Shelf<K> {
    /// Does it, if the bucket is there; an error of one that went meanwhile is that it is gone.
    fn ask<T>(&self, work: impl Future<Output = Result<T, BucketError>>) -> Result<T, BucketError> {
        self.0.ready()?;
        let answer = waiting()?.block_on(work);
        if answer.is_err() {
            self.0.ready()?;
        }
        answer
    }

    async fn fetch(&self, name: &str, range: Option<Range<u64>>, most: u64) -> Result<Vec<u8>, BucketError> {
        let mut options = GetOptions { range: range.map(GetRange::Bounded), ..GetOptions::default() };
        options.extensions.insert(Most(most));
        let answer = match self.0.store().get_opts(&path(name)?, options).await {
            Err(error) if found::<Beyond>(&error).is_some() => return Ok(Vec::new()),
            Err(error) => return Err(why(&error)),
            Ok(answer) => answer,
        };
        if answer.range.end.saturating_sub(answer.range.start) > most {
            return Err(BucketError::TooLarge);
        }
        Ok(answer.bytes().await.map_err(|error| why(&error))?.into())
    }
}

impl<K: Kind> Bucket for Shelf<K> {
    fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError> {
        let mut all = self.ask(self.0.list(prefix, after))?;
        all.retain(|one| {
            is_name(&one.name) && one.name.starts_with(prefix) && after.is_none_or(|after| one.name.as_str() > after)
        });
        all.sort_unstable();
        all.dedup();
        Ok(all)
    }

    fn get(&self, name: &str, most: u64) -> Result<Vec<u8>, BucketError> {
        self.ask(self.fetch(name, None, most))
    }

    fn get_range(&self, name: &str, range: Range<u64>) -> Result<Vec<u8>, BucketError> {
        let beyond = |size: u64| range.start >= size;
        if range.is_empty() || self.0.size(name).is_some_and(beyond) {
            return Ok(Vec::new());
        }
        let most = range.end - range.start;
        self.ask(self.fetch(name, Some(range), most))
    }

    fn put(&self, name: &str, bytes: &[u8]) -> Result<(), BucketError> {
        self.ask(async { self.0.put(&path(name)?, bytes).await.map_err(not_absent) })
    }

    fn put_new(&self, name: &str, bytes: &[u8]) -> Result<bool, BucketError> {
        self.ask(async { self.0.put_new(&path(name)?, bytes).await.map_err(not_absent) })
    }

    fn remove(&self, name: &str) -> Result<(), BucketError> {
        self.ask(async {
            match self.0.store().delete(&path(name)?).await.map_err(|error| why(&error)) {
                Ok(()) | Err(BucketError::Absent) => Ok(()),
                Err(error) => Err(error),
            }
        })
    }

    fn get_each(&self, names: &[String], most: u64, take: &mut dyn FnMut(usize, Result<Vec<u8>, BucketError>) -> bool) {
        let together = usize::try_from(TOGETHER / most.max(1)).unwrap_or(usize::MAX).clamp(1, K::AHEAD);
        let mut ahead = pin!(stream::iter(names).map(|name| self.fetch(name, None, most)).buffered(together));
        // `take` is called outside of the waiting, so that it may ask the bucket as well.
        for k in 0..names.len() {
            let next = self.ask(async { ahead.next().await.unwrap_or(Err(BucketError::Absent)) });
            if !take(k, next) {
                return;
            }
        }
    }
}

/// Nothing can be absent where something is put, but the place for it.
fn not_absent(error: BucketError) -> BucketError {
    if error == BucketError::Absent { BucketError::NoBucket } else { error }
}

/// Parts of letters, digits and hyphens, with `/` between them.
pub(super) fn is_name(name: &str) -> bool {
    let is_part = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-');
    name.split('/').all(is_part)
}

fn path(name: &str) -> Result<Path, BucketError> {
    let path = is_name(name).then(|| Path::parse(name).ok()).flatten();
    path.ok_or_else(|| BucketError::Broken(format!("no name: {name:?}")))
}

/// The folder that everything which begins with `prefix` lies in, however deep.
pub(super) fn folder_of(prefix: &str) -> Option<Path> {
    Path::parse(prefix.rsplit_once('/')?.0).ok()
}

/// Tried once more, and soon, where a connection broke: whoever asks knows better when to come back.
pub(super) fn retries() -> RetryConfig {
    let backoff = BackoffConfig {
        init_backoff: Duration::from_millis(100),
        max_backoff: Duration::from_millis(200),
        ..BackoffConfig::default()
    };
    RetryConfig { backoff, max_retries: 1, retry_timeout: Duration::from_secs(5) }
}

/// Where the stores' own tasks run. Whoever asks waits in a thread of its own.
fn waiting() -> Result<&'static Runtime, BucketError> {
    static WAITING: OnceLock<Option<Runtime>> = OnceLock::new();
    let runtime = WAITING.get_or_init(|| {
        Builder::new_current_thread().enable_time().max_blocking_threads(2 * AHEAD).thread_name("bucket").build().ok()
    });
    runtime.as_ref().ok_or_else(|| BucketError::Broken("no thread can be begun".to_owned()))
}
