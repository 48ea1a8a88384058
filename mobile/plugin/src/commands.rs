//! The page's commands. Each goes on to the method of the same name in Kotlin and Swift.

use std::collections::BTreeMap;
use std::path::Path;

use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use tauri::{AppHandle, Manager, Runtime, State};

use crate::{Code, Failure, Phone, Records};

/// What the device tells of itself; none where it cannot tell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
#[serde(default)]
pub(crate) struct Told {
    notifications: Option<bool>,
    exact_reminders: Option<bool>,
    /// Percent.
    volume: Option<u8>,
    /// Percent.
    battery: Option<u8>,
    awake: Option<bool>,
    vibration: Option<bool>,
    metered: Option<bool>,
}

/// A time that is to come: no word says of what.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub(crate) struct Coming {
    in_ms: i64,
    level: Level,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Level {
    Note,
    Caution,
    Limit,
}

/// What the system shows, in the language of the page: the same for every reminder and every birth.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Words {
    reminder: String,
    note: String,
    caution: String,
    limit: String,
    clock: String,
}

/// The way to Kotlin or Swift.
fn phone<R: Runtime>(app: &AppHandle<R>) -> &Phone<R> {
    app.state::<Phone<R>>().inner()
}

#[tauri::command]
pub(crate) async fn tell<R: Runtime>(app: AppHandle<R>, ask: bool) -> Result<Told, Failure> {
    match phone(&app).ask("tell", json!({ "ask": ask })).await {
        Err(Failure { code: Code::Cannot, .. }) => Ok(Told::default()),
        told => told,
    }
}

#[tauri::command]
pub(crate) async fn keep_awake<R: Runtime>(app: AppHandle<R>, on: bool) -> Result<(), Failure> {
    done(phone(&app).ask("keepAwake", json!({ "on": on })).await)
}

#[tauri::command]
pub(crate) async fn buzz<R: Runtime>(app: AppHandle<R>, pattern: Vec<u32>) -> Result<(), Failure> {
    done(phone(&app).ask("buzz", json!({ "pattern": pattern })).await)
}

/// Whether a voice of this device alone speaks the language, by its BCP 47 tag.
#[tauri::command]
pub(crate) async fn voices<R: Runtime>(app: AppHandle<R>, language: String) -> Result<Value, Failure> {
    phone(&app).ask("voices", json!({ "language": language })).await
}

#[tauri::command]
pub(crate) async fn speak<R: Runtime>(app: AppHandle<R>, text: String, language: String) -> Result<(), Failure> {
    done(phone(&app).ask("speak", json!({ "text": text, "language": language })).await)
}

#[tauri::command]
pub(crate) async fn hush<R: Runtime>(app: AppHandle<R>) -> Result<(), Failure> {
    done(phone(&app).ask("hush", json!({})).await)
}

/// Replaces all time reminders of a group; without a group, those of all.
#[tauri::command]
pub(crate) async fn remind<R: Runtime>(
    app: AppHandle<R>,
    group: Option<String>,
    coming: Vec<Coming>,
    words: Words,
    patterns: BTreeMap<Level, Vec<u32>>,
) -> Result<(), Failure> {
    let payload = json!({ "group": group, "coming": coming, "words": words, "patterns": patterns });
    done(phone(&app).ask("remind", payload).await)
}

/// A clock on the locked screen that began so many milliseconds ago; none takes it away.
#[tauri::command]
pub(crate) async fn clock<R: Runtime>(app: AppHandle<R>, since_ms: Option<i64>, words: Words) -> Result<(), Failure> {
    done(phone(&app).ask("clock", json!({ "sinceMs": since_ms, "words": words })).await)
}

/// Offers a file; `{ "given": false }` where it was called off.
#[tauri::command]
pub(crate) async fn share<R: Runtime>(app: AppHandle<R>, records: State<'_, Records>, path: String) -> Result<Value, Failure> {
    let file = records.file(Path::new(&path))?;
    phone(&app).ask("share", json!({ "path": file })).await
}

/// Whether the volume keys are the page's.
#[tauri::command]
pub(crate) async fn volume_keys<R: Runtime>(app: AppHandle<R>, on: bool) -> Result<(), Failure> {
    done(phone(&app).ask("volumeKeys", json!({ "on": on })).await)
}

/// Takes a photograph, which comes in memory alone: `{ "base64": null }` where it was called off.
#[tauri::command]
pub(crate) async fn photograph<R: Runtime>(app: AppHandle<R>) -> Result<Value, Failure> {
    phone(&app).ask("photograph", json!({})).await
}

fn done(answer: Result<Value, Failure>) -> Result<(), Failure> {
    answer.map(|_| ())
}
