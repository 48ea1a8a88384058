//! A folder of a server that speaks WebDAV.
//!
//! Such a server knows no "only if nothing is there", and may show a half of what is being put; what is read from it is held
//! against its name, as from any other. Folders are listed one by one, since many servers refuse to list a tree.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use object_store::http::{HttpBuilder, HttpStore};
use object_store::path::Path;
use object_store::prefix::PrefixStore;
use object_store::{Error, ObjectStore, ObjectStoreExt, PutPayload};
use ureq::http::{HeaderValue, Uri};

use super::store::{AHEAD, Kind, Shelf, folder_of, retries};
use super::why::why;
use super::wire::Wire;
use super::{BucketError, Listed};

/// Deeper than any name of ours.
const DEEPEST: usize = 16;

/// The folder is made with the first that is put, where it is missing.
pub(super) struct WebDav(PrefixStore<HttpStore>);

impl WebDav {
    /// Asks nothing yet. Name and password go with each request.
    pub(super) fn open(url: &Uri, user: &str, password: &str) -> Result<Shelf<Self>, BucketError> {
        let named = STANDARD.encode(format!("{user}:{password}"));
        let mut authorization = HeaderValue::from_str(&format!("Basic {named}")).map_err(|_| BucketError::Address)?;
        authorization.set_sensitive(true);
        let (Some(scheme), Some(authority)) = (url.scheme_str(), url.authority()) else { return Err(BucketError::Address) };
        let store = HttpBuilder::new()
            .with_url(format!("{scheme}://{authority}"))
            .with_retry(retries())
            .with_http_connector(Wire::new(Some(authorization)))
            .build()
            .map_err(|error| why(&error))?;
        let folder = Path::from_url_path(url.path()).map_err(|_| BucketError::Address)?;
        Ok(Shelf(Self(PrefixStore::new(store, folder))))
    }
}

impl Kind for WebDav {
    const AHEAD: usize = AHEAD;

    fn store(&self) -> &dyn ObjectStore {
        &self.0
    }

    async fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError> {
        let mut all = Vec::new();
        let mut folders = vec![folder_of(prefix).unwrap_or_default()];
        while let Some(folder) = folders.pop() {
            let inside = self.0.list_with_delimiter(Some(&folder)).await.map_err(|error| why(&error))?;
            all.extend(inside.objects.into_iter().map(|one| Listed { name: one.location.into(), bytes: one.size }));
            // What is called so is not above what it lies in, and may hold what is sought.
            let may_hold = |other: &Path| {
                let other = format!("{other}/");
                (other.starts_with(prefix) || prefix.starts_with(&other))
                    && after.is_none_or(|after| other.as_str() > after || after.starts_with(&other))
            };
            let below = |other: &Path| other.parts_count() > folder.parts_count() && other.parts_count() <= DEEPEST;
            folders.extend(inside.common_prefixes.into_iter().filter(|other| below(other) && may_hold(other)));
        }
        Ok(all)
    }

    async fn put_new(&self, path: &Path, bytes: &[u8]) -> Result<bool, Error> {
        self.0.put(path, PutPayload::from(bytes.to_vec())).await.map(|_| true)
    }
}
