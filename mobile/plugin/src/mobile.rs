//! The way to Kotlin and Swift.

use std::sync::Arc;

use secundine_store::PlatformKeys;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use tauri::plugin::mobile::PluginInvokeError;
use tauri::plugin::{PluginApi, PluginHandle};
use tauri::{AppHandle, Manager, Runtime};

use crate::{Failure, Native, PhoneKeys};

#[cfg(target_os = "android")]
const PACKAGE: &str = "org.secundine.phone";

#[cfg(target_os = "ios")]
tauri::ios_plugin_binding!(init_plugin_phone);

/// The way to Kotlin or Swift.
pub struct Phone<R: Runtime>(PluginHandle<R>);

impl<R: Runtime> Clone for Phone<R> {
    fn clone(&self) -> Self {
        Self(self.0.clone())
    }
}

pub(crate) fn begin<R: Runtime>(_: &AppHandle<R>, api: PluginApi<R, ()>) -> Result<Phone<R>, Failure> {
    #[cfg(target_os = "android")]
    let handle = api.register_android_plugin(PACKAGE, "PhonePlugin");
    #[cfg(target_os = "ios")]
    let handle = api.register_ios_plugin(init_plugin_phone);
    Ok(Phone(handle.map_err(told)?))
}

pub(crate) fn platform_keys<R: Runtime>(app: &AppHandle<R>) -> Option<Arc<dyn PlatformKeys>> {
    let phone = app.try_state::<Phone<R>>()?.inner().clone();
    Some(Arc::new(PhoneKeys::new(phone)))
}

impl<R: Runtime> Phone<R> {
    /// Has Kotlin or Swift do something, by the name of its method there.
    ///
    /// # Errors
    /// [`Failure`] says why it was not done.
    pub async fn ask<T: DeserializeOwned>(&self, command: &str, payload: impl Serialize) -> Result<T, Failure> {
        self.0.run_mobile_plugin_async(command, payload).await.map_err(told)
    }
}

impl<R: Runtime> Native for Phone<R> {
    fn run(&self, command: &str, payload: Value) -> Result<Value, Failure> {
        self.0.run_mobile_plugin(command, payload).map_err(told)
    }
}

fn told(error: PluginInvokeError) -> Failure {
    match error {
        PluginInvokeError::InvokeRejected(why) => Failure::told(why.code.as_deref(), why.message),
        other => Failure::failed(other),
    }
}
