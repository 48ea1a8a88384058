//! A backup that is made at once.

use secundine_session::Session;
use secundine_session::api::{BackupMade, BackupState, BackupsView, Request, Response};

/// Asks for a backup and makes it.
pub fn back_up(session: &mut Session) -> BackupMade {
    session.call(Request::MakeBackup).unwrap();
    session.finish_backup();
    match session.call(Request::Backups).unwrap() {
        Response::Backups(BackupsView { asked: Some(BackupState::Made(made)), .. }) => made,
        other => unreachable!("{other:?}"),
    }
}
