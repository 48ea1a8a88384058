//! The shell around [`SharedSession`]: it finds the folders, opens the window and passes the one call on.

use std::error::Error;
use std::path::PathBuf;

use secundine_session::api::{ApiError, Request, Response};
use secundine_session::{Paths, SharedSession, bad_request, panics_tell_only_where};
use tauri::{Manager, State};

// What Kotlin and Swift call stands in this library: one library, one session (decision 0034).
secundine_bindings::uniffi_reexport_scaffolding!();

/// Overrides the folder of the practice and of the records, for demonstrations and tests.
const FOLDER: &str = "SECUNDINE_FOLDER";

/// Opens the window and stays until it is closed.
///
/// # Errors
/// What kept the window from opening.
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn run() -> Result<(), Box<dyn Error>> {
    panics_tell_only_where();
    come_back(tauri::Builder::default().plugin(secundine_phone::init()))
        .setup(|app| {
            let paths = paths(app)?;
            app.manage(secundine_phone::Records(paths.records.clone()));
            // Native code of this process may have it already.
            let session = SharedSession::of_process(paths);
            if let Some(keys) = secundine_phone::platform_keys(app.handle()) {
                // It fails only where the session can no longer be used, which the first call tells.
                let _ = session.keys_kept_by(keys);
            }
            app.manage(session);
            #[cfg(target_os = "linux")]
            come_back_here(app)?;
            Ok(())
        })
        .invoke_handler(tauri::generate_handler![call])
        .run(tauri::generate_context!())?;
    Ok(())
}

/// The system may end the process that draws the page; the core goes on, and the page is read again at the address that tells
/// which birth was open.
#[cfg(any(target_os = "macos", target_os = "ios"))]
fn come_back(builder: tauri::Builder<tauri::Wry>) -> tauri::Builder<tauri::Wry> {
    builder.on_web_content_process_terminate(|page| {
        // A page that cannot be read again stays blank, and the program is closed by hand: nothing is lost by either.
        let _ = page.reload();
    })
}

#[cfg(not(any(target_os = "macos", target_os = "ios")))]
fn come_back(builder: tauri::Builder<tauri::Wry>) -> tauri::Builder<tauri::Wry> {
    builder
}

#[cfg(target_os = "linux")]
fn come_back_here(app: &tauri::App) -> tauri::Result<()> {
    use webkit2gtk::WebViewExt;

    let Some(window) = app.get_webview_window("main") else { return Ok(()) };
    window.with_webview(|page| {
        page.inner().connect_web_process_terminated(|page, _| page.reload());
    })
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
    let own = app.path().app_data_dir()?.join("records");
    // What Android calls documents lies on the external storage, open to a computer at the cable.
    let records = if cfg!(target_os = "android") { own } else { app.path().document_dir().unwrap_or(own) };
    Ok(Paths { data: app.path().app_data_dir()?.join("practice"), records: records.join("Secundine") })
}
