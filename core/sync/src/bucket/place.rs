//! Where a bucket is, and what opens it.

use std::fmt;
use std::net::IpAddr;
use std::path::PathBuf;

use serde::{Deserialize, Serialize};
use ureq::http::Uri;

use super::folder::Folder;
use super::s3::S3;
use super::webdav::WebDav;
use super::{Bucket, BucketError};

/// What nobody is to read over a shoulder or in a log.
#[derive(Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Secret(pub String);

impl fmt::Debug for Secret {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("…")
    }
}

/// Where a bucket is, with what is needed to open it. To be kept sealed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "kind")]
pub enum Place {
    /// A folder that this device can write to by its path: a stick, a share, a disk.
    Folder {
        /// Its path on this device.
        path: PathBuf,
    },
    /// A bucket of a store that speaks S3, asked in path style.
    S3 {
        /// `https://host` or `https://host:port`.
        endpoint: String,
        /// What the store calls its region.
        region: String,
        /// Name of the bucket.
        bucket: String,
        /// Id of the key.
        key: String,
        /// Its secret.
        secret: Secret,
    },
    /// A folder of a server that speaks WebDAV, with a name and a password.
    WebDav {
        /// `https://host/path`.
        url: String,
        /// Name of the user there.
        user: String,
        /// Her password there; one made for this alone.
        password: Secret,
    },
}

/// Opens a bucket. Over a network nothing is asked yet: [`super::probe`] does. Every call of it waits, so that it is to be used
/// from a thread that may, and from none in which an async runtime does its own work.
///
/// # Errors
/// [`BucketError::NoBucket`] for a folder that is not there; [`BucketError::Address`] for an address that cannot be used.
pub fn open(place: &Place) -> Result<Box<dyn Bucket>, BucketError> {
    match place {
        Place::Folder { path } => Ok(Box::new(Folder::open(path)?)),
        Place::S3 { endpoint, region, bucket, key, secret } => {
            let url = address(endpoint, in_the_clear_at_home)?;
            let is_part = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_graphic() && byte != b'/');
            let bare = matches!(url.path(), "" | "/") && is_part(region) && is_part(bucket) && is_part(key) && bucket != "..";
            if !bare {
                return Err(BucketError::Address);
            }
            Ok(Box::new(S3::open(endpoint, region, bucket, key, &secret.0)?))
        }
        Place::WebDav { url, user, password } => {
            Ok(Box::new(WebDav::open(&address(url, in_the_clear_here)?, user, &password.0)?))
        }
    }
}

/// An address over TLS; or one that may do without.
fn address(text: &str, in_the_clear: fn(&str) -> bool) -> Result<Uri, BucketError> {
    let url: Uri = text.trim().parse().map_err(|_| BucketError::Address)?;
    let authority = url.authority().ok_or(BucketError::Address)?;
    let host = authority.host().trim_start_matches('[').trim_end_matches(']');
    let allowed = match url.scheme_str() {
        Some("https") => true,
        Some("http") => in_the_clear(host),
        _ => false,
    };
    if !allowed || host.is_empty() || authority.as_str().contains('@') || url.query().is_some() {
        return Err(BucketError::Address);
    }
    Ok(url)
}

/// On this device, where a password meets nobody.
fn in_the_clear_here(host: &str) -> bool {
    host == "localhost" || host.parse().is_ok_and(|address: IpAddr| address.is_loopback())
}

/// Or in the practice's own network: what goes over the line is sealed and signed, and a key signs and is not sent (decision 0030).
/// Only by number, since a name can lead anywhere.
fn in_the_clear_at_home(host: &str) -> bool {
    let at_home = |address| match address {
        IpAddr::V4(address) => address.is_private() || address.is_link_local(),
        IpAddr::V6(address) => address.is_unique_local() || address.is_unicast_link_local(),
    };
    in_the_clear_here(host) || host.parse().is_ok_and(at_home)
}
