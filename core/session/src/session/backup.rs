//! Backups: made, read back, restored.

use secundine_domain::time::Stamp;

use super::Session;
use crate::api::{ApiError, Response};

impl Session {
    pub(super) fn backups(&mut self, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn make_backup(&mut self, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn backup_part(&mut self, _offset: u64, _base64: &str) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }

    pub(super) fn restore(&mut self, _passphrase: String, _now: &Stamp) -> Result<Response, ApiError> {
        Err(ApiError::internal())
    }
}
