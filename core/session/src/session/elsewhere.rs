//! What could not be saved is kept in another file.

use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, Request, Response};

impl Session {
    pub(super) fn elsewhere(&mut self, _request: Request, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }
}
