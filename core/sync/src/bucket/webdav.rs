//! A folder of a server that speaks WebDAV.
//!
//! Such a server shows a half of what is still coming, so each is put beside its place and then moved there. It knows no "only
//! if nothing is there". Folders are listed one by one, since many servers refuse to list a tree.

use std::time::SystemTime;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use object_store::client::{HttpRequestBody, HttpService};
use object_store::http::{HttpBuilder, HttpStore};
use object_store::path::Path;
use object_store::prefix::PrefixStore;
use object_store::{ObjectStore, ObjectStoreExt};
use ureq::http::{HeaderValue, Request, Uri};

use super::store::{AHEAD, Kind, Shelf, folder_of, retries};
use super::why::{found, why};
use super::wire::Wire;
use super::{BucketError, Listed};

/// Deeper than any name of ours.
const DEEPEST: usize = 16;

/// The folder is made with the first that is put, where it is missing.
pub(super) struct WebDav {
    store: PrefixStore<HttpStore>,
    wire: Wire,
    /// Scheme, host and port.
    server: String,
    /// Where the folder is on it, as it is written in an address.
    folder: String,
}

impl WebDav {
    /// Asks nothing yet. Name and password go with each request.
    pub(super) fn open(url: &Uri, user: &str, password: &str) -> Result<Shelf<Self>, BucketError> {
        let named = STANDARD.encode(format!("{user}:{password}"));
        let mut authorization = HeaderValue::from_str(&format!("Basic {named}")).map_err(|_| BucketError::Address)?;
        authorization.set_sensitive(true);
        let (Some(scheme), Some(authority)) = (url.scheme_str(), url.authority()) else { return Err(BucketError::Address) };
        let (server, folder) = (format!("{scheme}://{authority}"), url.path().trim_end_matches('/').to_owned());
        let wire = Wire::new(Some(authorization));
        let store = HttpBuilder::new().with_url(&server).with_retry(retries()).with_http_connector(wire.clone()).build();
        let prefix = Path::from_url_path(url.path()).map_err(|_| BucketError::Address)?;
        let store = PrefixStore::new(store.map_err(|error| why(&error))?, prefix);
        Ok(Shelf(Self { store, wire, server, folder }))
    }

    /// Moves what lies under one name to another, over what lies there.
    async fn rename(&self, from: &Path, to: &Path) -> Result<(), BucketError> {
        let at = |name: &Path| format!("{}{}/{name}", self.server, self.folder);
        let request = Request::builder().method("MOVE").uri(at(from)).header("Destination", at(to)).header("Overwrite", "T");
        let request = request.body(HttpRequestBody::empty()).map_err(|_| BucketError::Address)?;
        let answer = self.wire.call(request).await;
        let broken = || BucketError::Broken("it cannot be moved to its place".to_owned());
        let answer = answer.map_err(|error| found::<BucketError>(&error).cloned().unwrap_or_else(broken))?;
        if answer.status().is_success() { Ok(()) } else { Err(BucketError::Refused(answer.status().as_u16())) }
    }
}

impl Kind for WebDav {
    const AHEAD: usize = AHEAD;

    fn store(&self) -> &dyn ObjectStore {
        &self.store
    }

    async fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError> {
        let mut all = Vec::new();
        let mut folders = vec![folder_of(prefix).unwrap_or_default()];
        while let Some(folder) = folders.pop() {
            let inside = self.store.list_with_delimiter(Some(&folder)).await.map_err(|error| why(&error))?;
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

    async fn put(&self, path: &Path, bytes: &[u8]) -> Result<(), BucketError> {
        // No name of ours has a point, and no two are put in the same moment.
        let moment = SystemTime::now().duration_since(SystemTime::UNIX_EPOCH).map_or(0, |since| since.as_nanos());
        let beside = Path::parse(format!("{path}.{moment:x}.part")).map_err(|error| BucketError::Broken(error.to_string()))?;
        self.store.put(&beside, bytes.to_vec().into()).await.map_err(|error| why(&error))?;
        self.rename(&beside, path).await
    }

    async fn put_new(&self, path: &Path, bytes: &[u8]) -> Result<bool, BucketError> {
        self.put(path, bytes).await.map(|()| true)
    }
}
