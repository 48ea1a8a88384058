//! Files that facts name: gathered in memory, sealed and kept, and given back in parts.

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use secundine_domain::file::FileId;
use secundine_domain::message::Message;
use secundine_store::{FILE_MAX, StoreError};
use zeroize::Zeroizing;

use super::Session;
use crate::api::{ApiError, ErrorCode, FileBytes, FileKind, KeptFile, KeptPicture, Response};
use crate::picture::{self, NoPicture, PIXELS_MAX};
use crate::practice::OpenPractice;
use crate::verify::number;

/// Most bytes of a part.
const PART_MAX: usize = 1 << 20;

/// What is on its way in or out, in plain: in memory only, and gone with the lock.
#[derive(Default)]
pub(super) struct Passing {
    coming: Zeroizing<Vec<u8>>,
    /// The file of which the last part was asked for.
    going: Option<(FileId, Zeroizing<Vec<u8>>)>,
}

impl Session {
    pub(super) fn file_part(&mut self, kind: FileKind, offset: u32, base64: &str, end: bool) -> Result<Response, ApiError> {
        self.open()?;
        let no_part = || ApiError::new(ErrorCode::Impossible, "error-file-part");
        let part = Zeroizing::new(BASE64_STANDARD.decode(base64).map_err(|_| no_part())?);
        let coming = &mut self.passing.coming;
        if offset == 0 {
            *coming = Zeroizing::default();
        }
        if part.len() > PART_MAX || usize::try_from(offset).ok() != Some(coming.len()) {
            return Err(no_part());
        }
        if coming.len() + part.len() > FILE_MAX {
            *coming = Zeroizing::default();
            return Err(not_kept(StoreError::TooLarge));
        }
        coming.extend_from_slice(&part);
        if !end {
            return Ok(Response::FilePart { kept: None });
        }
        let whole = std::mem::take(coming);
        let open = self.open()?;
        let kept = match kind {
            FileKind::Photo => keep_photo(open, &whole)?,
            FileKind::Voice => KeptFile { file: open.keep_file(&whole).map_err(not_kept)?, picture: None },
        };
        Ok(Response::FilePart { kept: Some(kept) })
    }

    pub(super) fn read_file(&mut self, file: FileId, offset: u32) -> Result<Response, ApiError> {
        let whole = match self.passing.going.take().filter(|(going, _)| *going == file) {
            Some((_, whole)) => whole,
            None => self.open()?.open_file(file).map_err(not_read)?,
        };
        let rest = whole.get(usize::try_from(offset).unwrap_or(usize::MAX)..).unwrap_or_default();
        let part = rest.get(..PART_MAX).unwrap_or(rest);
        let answer = FileBytes { length: number(whole.len() as u64), base64: BASE64_STANDARD.encode(part) };
        if part.len() < rest.len() {
            self.passing.going = Some((file, whole));
        }
        Ok(Response::ReadFile(answer))
    }
}

fn keep_photo(open: &OpenPractice, bytes: &[u8]) -> Result<KeptFile, ApiError> {
    let taken = picture::take(bytes).map_err(|error| match error {
        NoPicture::Unreadable => ApiError::impossible(Message::new("error-no-picture")),
        NoPicture::TooLarge => {
            ApiError::impossible(Message::new("error-picture-large").with("megapixels", number(PIXELS_MAX / 1_000_000)))
        }
    })?;
    let small = open.keep_file(&taken.small).map_err(not_kept)?;
    let file = open.keep_file(&taken.file).map_err(not_kept)?;
    let (width, height, focal) = (taken.width, taken.height, taken.focal);
    Ok(KeptFile { file, picture: Some(KeptPicture { small, width, height, focal }) })
}

/// Why a file is not on disk.
fn not_kept(error: StoreError) -> ApiError {
    match error {
        StoreError::Full | StoreError::NotSaved(_) => ApiError::new(ErrorCode::NotSaved, "error-file-not-saved"),
        other => other.into(),
    }
}

/// Why a file cannot be shown. The entries are not at stake.
fn not_read(error: StoreError) -> ApiError {
    match error {
        StoreError::NotRead(_) => ApiError::new(ErrorCode::NotRead, "error-file-not-read"),
        other => other.into(),
    }
}
