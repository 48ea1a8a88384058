//! What only a phone can do: the page's commands, which go on to Kotlin and Swift, and the key store of the device's system
//! for the core. On a desk each command answers that it cannot.

mod commands;
#[cfg(desktop)]
mod desktop;
mod failure;
mod keys;
#[cfg(mobile)]
mod mobile;
mod records;

use std::sync::Arc;

use secundine_store::PlatformKeys;
use tauri::plugin::{Builder, TauriPlugin};
use tauri::{Manager, Runtime};

#[cfg(desktop)]
use desktop as side;
#[cfg(mobile)]
use mobile as side;

pub use failure::{Code, Failure};
pub use keys::{Native, PhoneKeys};
pub use records::Records;
pub use side::Phone;

/// What stands as `window.secundine` before the page loads, on a phone alone: on a desk the web's own ways are the better ones.
#[cfg_attr(desktop, allow(dead_code, reason = "only a phone has ports"))]
const PORTS: &str = include_str!("../page/ports.js");

/// The plugin, called `phone`.
#[must_use]
pub fn init<R: Runtime>() -> TauriPlugin<R> {
    let builder = Builder::new("phone")
        .invoke_handler(tauri::generate_handler![
            commands::tell,
            commands::keep_awake,
            commands::buzz,
            commands::voices,
            commands::speak,
            commands::hush,
            commands::remind,
            commands::clock,
            commands::share,
            commands::volume_keys,
            commands::photograph,
        ])
        .setup(|app, api| {
            app.manage(side::begin(app, api)?);
            Ok(())
        });
    #[cfg(mobile)]
    let builder = builder.js_init_script(PORTS);
    builder.build()
}

/// The key store of this device's system; none on a desk.
#[must_use]
pub fn platform_keys<R: Runtime>(app: &tauri::AppHandle<R>) -> Option<Arc<dyn PlatformKeys>> {
    side::platform_keys(app)
}
