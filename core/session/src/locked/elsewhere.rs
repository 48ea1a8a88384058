//! What could not be saved in the database goes into the inbox while the practice is open.

use secundine_domain::entry::BirthId;
use secundine_domain::message::Message;
use secundine_store::{RECORD_MAX, Store};

use super::Writer;
use super::record::Record;
use crate::api::ApiError;
use crate::practice::Draft;

/// Puts a draft on disk, in another file than the database. One that names [`BirthId::PRACTICE`] opens a chart of its own
/// when it is brought in.
///
/// # Errors
/// [`crate::api::ErrorCode::NotSaved`]: it is NOT on disk here either. [`crate::api::ErrorCode::Impossible`]: it is too long.
pub(crate) fn keep_elsewhere(store: &Store, writer: &mut Writer, draft: Draft) -> Result<(), ApiError> {
    let Draft { birth, occurred, recorded, fact, amends } = draft;
    let birth = Some(birth).filter(|birth| *birth != BirthId::PRACTICE);
    let mut record = Record::new(birth, fact, occurred, recorded, None);
    record.amends = amends;
    let bytes = record.encode_vouched(store).map_err(|_| ApiError::internal())?;
    if bytes.len() > RECORD_MAX {
        return Err(ApiError::impossible(Message::new("error-too-long-elsewhere")));
    }
    Ok(writer.inbox.append(&bytes)?)
}
