//! The shell around [`SharedSession`]: it finds the folders, opens the window and passes the one call on.

use std::error::Error;
use std::path::PathBuf;
use std::sync::Arc;

use secundine_session::api::{ApiError, Request, Response};
use secundine_session::clock::SystemClock;
use secundine_session::{Paths, Session, SharedSession, bad_request, panics_tell_only_where};
use tauri::{Manager, State};

/// Overrides the folder of the practice and of the records, for demonstrations and tests.
const FOLDER: &str = "SECUNDINE_FOLDER";

/// Opens the window and stays until it is closed.
///
/// # Errors
/// What kept the window from opening.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn run() -> Result<(), Box<dyn Error>> {
    panics_tell_only_where();
    tauri::Builder::default()
        .setup(|app| {
            let session = Session::new(paths(app)?, Arc::new(SystemClock::new()));
            app.manage(SharedSession::new(session));
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![call])
        .run(tauri::generate_context!())?;
    Ok(())
}

/// Runs on a worker thread, so that the window never waits for the disk.
#[tauri::command(async)]
fn call(session: State<'_, SharedSession>, request: serde_json::Value) -> Result<Response, ApiError> {
    let request: Request = serde_json::from_value(request).map_err(|error| bad_request(&error))?;
    session.call(request)
}

fn paths(app: &tauri::App) -> Result<Paths, Box<dyn Error>> {
    if let Some(folder) = std::env::var_os(FOLDER).map(PathBuf::from) {
        return Ok(Paths { data: folder.join("practice"), records: folder.join("records") });
    }
    let records = app.path().document_dir().unwrap_or(app.path().app_data_dir()?.join("records"));
    Ok(Paths { data: app.path().app_data_dir()?.join("practice"), records: records.join("Secundine") })
}
