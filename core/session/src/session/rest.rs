//! What is shown when nobody has touched for a while.

use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, Response};

impl Session {
    pub(super) fn rest(&mut self, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn show_names(&mut self, _passphrase: String, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }
}
