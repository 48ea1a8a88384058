//! Where a practice shares, as it was typed and as it is shown.

use secundine_domain::message::Message;
use secundine_sync::{Place, Secret};

use crate::api::{ApiError, PlaceView, TypedPlace};

/// What was typed; an empty secret is the one that was there, for the same server.
pub(crate) fn placed(typed: TypedPlace, before: Option<&Place>) -> Result<Place, ApiError> {
    let empty = |text: &str| text.trim().is_empty();
    let missing = || ApiError::impossible(Message::new("sync-place-missing"));
    let trimmed = |text: String| text.trim().to_owned();
    Ok(match typed {
        TypedPlace::Folder { path } if path.is_absolute() => Place::Folder { path },
        TypedPlace::Folder { .. } => return Err(ApiError::impossible(Message::new("sync-place-path"))),
        TypedPlace::S3 { endpoint, region, bucket, key, secret } => {
            let kept = match before {
                Some(Place::S3 { endpoint: same, secret, .. }) if *same == endpoint.trim() => Some(secret.clone()),
                _ => None,
            };
            let secret = if empty(&secret) { kept.ok_or_else(missing)? } else { Secret(trimmed(secret)) };
            if [&endpoint, &bucket, &key].into_iter().any(|text| empty(text)) {
                return Err(missing());
            }
            let region = if empty(&region) { "us-east-1".to_owned() } else { trimmed(region) };
            Place::S3 { endpoint: trimmed(endpoint), region, bucket: trimmed(bucket), key: trimmed(key), secret }
        }
        TypedPlace::WebDav { url, user, password } => {
            let kept = match before {
                Some(Place::WebDav { url: same, password, .. }) if *same == url.trim() => Some(password.clone()),
                _ => None,
            };
            let password = if password.is_empty() { kept.ok_or_else(missing)? } else { Secret(password) };
            if empty(&url) {
                return Err(missing());
            }
            Place::WebDav { url: trimmed(url), user: trimmed(user), password }
        }
    })
}

/// As it is shown: without what opens it.
pub(crate) fn place_view(place: &Place) -> PlaceView {
    match place.clone() {
        Place::Folder { path } => PlaceView::Folder { path: path.display().to_string() },
        Place::S3 { endpoint, region, bucket, key, .. } => PlaceView::S3 { endpoint, region, bucket, key },
        Place::WebDav { url, user, .. } => PlaceView::WebDav { url, user },
    }
}
