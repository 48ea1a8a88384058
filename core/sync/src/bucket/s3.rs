//! A bucket of a store that speaks S3.

use object_store::aws::{AmazonS3, AmazonS3Builder, S3ConditionalPut};
use object_store::list::{PaginatedListOptions, PaginatedListStore};
use object_store::{ClientOptions, ObjectStore};

use super::store::{AHEAD, Kind, Shelf, retries};
use super::why::why;
use super::wire::Wire;
use super::{BucketError, Listed};

/// More names than any practice has.
const MOST_NAMES: usize = 4_000_000;

pub(super) struct S3(AmazonS3);

impl S3 {
    /// Asks nothing yet. Every request is signed, with the bytes that it carries; the secret itself never leaves the phone.
    pub(super) fn open(endpoint: &str, region: &str, bucket: &str, key: &str, secret: &str) -> Result<Shelf<Self>, BucketError> {
        let builder = AmazonS3Builder::new()
            .with_endpoint(endpoint.trim_end_matches('/'))
            .with_region(region)
            .with_bucket_name(bucket)
            .with_access_key_id(key)
            .with_secret_access_key(secret)
            .with_virtual_hosted_style_request(false)
            .with_conditional_put(S3ConditionalPut::ETagMatch)
            .with_disable_bulk_delete(true)
            .with_client_options(ClientOptions::new().with_allow_http(true))
            .with_retry(retries())
            .with_http_connector(Wire::new(None));
        Ok(Shelf(Self(builder.build().map_err(|error| why(&error))?)))
    }
}

impl Kind for S3 {
    const AHEAD: usize = AHEAD;

    fn store(&self) -> &dyn ObjectStore {
        &self.0
    }

    async fn list(&self, prefix: &str, after: Option<&str>) -> Result<Vec<Listed>, BucketError> {
        // Garage lists nothing where `after` comes before the prefix (2.5.0), and such an `after` leaves nothing out.
        let after = after.filter(|after| *after >= prefix);
        let mut all = Vec::new();
        let mut page_token = None;
        loop {
            let offset = after.map(str::to_owned);
            let asked = PaginatedListOptions { offset, page_token: page_token.clone(), ..PaginatedListOptions::default() };
            let page = self.0.list_paginated(Some(prefix).filter(|prefix| !prefix.is_empty()), asked).await;
            let page = page.map_err(|error| why(&error))?;
            all.extend(page.result.objects.into_iter().map(|one| Listed { name: one.location.into(), bytes: one.size }));
            if page.page_token.is_none() {
                return Ok(all);
            }
            if page.page_token == page_token || all.len() > MOST_NAMES {
                return Err(BucketError::Broken("the listing does not end".to_owned()));
            }
            page_token = page.page_token;
        }
    }
}
