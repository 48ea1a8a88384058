//! A desk has none of it, and says so.

use std::marker::PhantomData;
use std::sync::Arc;

use secundine_store::PlatformKeys;
use serde::Serialize;
use serde::de::DeserializeOwned;
use tauri::plugin::PluginApi;
use tauri::{AppHandle, Runtime};

use crate::Failure;

/// The way to Kotlin or Swift; here there is none.
pub struct Phone<R: Runtime>(PhantomData<fn() -> R>);

pub(crate) fn begin<R: Runtime>(_: &AppHandle<R>, _: PluginApi<R, ()>) -> Result<Phone<R>, Failure> {
    Ok(Phone(PhantomData))
}

pub(crate) fn platform_keys<R: Runtime>(_: &AppHandle<R>) -> Option<Arc<dyn PlatformKeys>> {
    None
}

impl<R: Runtime> Phone<R> {
    /// Nothing is done.
    ///
    /// # Errors
    /// Always: [`crate::Code::Cannot`].
    pub async fn ask<T: DeserializeOwned>(&self, command: &str, _: impl Serialize) -> Result<T, Failure> {
        Err(Failure::cannot(command))
    }
}
