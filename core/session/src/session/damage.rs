//! A damaged store: read as far as it can be, or built anew.

use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, Response};

impl Session {
    pub(super) fn read_damaged(&mut self, _passphrase: String, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn salvage(&mut self, _passphrase: String, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }
}
