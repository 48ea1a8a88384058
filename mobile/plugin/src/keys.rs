//! The key store of the device's system, as the core asks it: Android's Keystore, Apple's keychain with the Secure Enclave.
//!
//! It is never the only way to a practice: the store refuses to take the passphrase out, and asks for it before this way is
//! added (`Store::add_device`, `Store::revoke`).

use secundine_store::{ExposeSecret, Passphrase, PlatformError, PlatformKeys};
use serde_json::{Value, json};

use crate::{Code, Failure};

/// Most bytes of a secret.
const SECRET_MAX: usize = 100;

/// The way to Kotlin or Swift, waiting for the answer.
pub trait Native: Send + Sync {
    /// Has it do something, by the name of its method there.
    ///
    /// # Errors
    /// [`Failure`] says why it was not done.
    fn run(&self, command: &str, payload: Value) -> Result<Value, Failure>;
}

/// The key store behind [`Native`]. No page can reach it: its commands are in no capability.
pub struct PhoneKeys<N>(N);

impl<N: Native> PhoneKeys<N> {
    /// Asks there.
    pub fn new(native: N) -> Self {
        Self(native)
    }

    fn ask(&self, command: &str, payload: Value) -> Result<Value, PlatformError> {
        self.0.run(command, payload).map_err(|Failure { code, message }| match code {
            Code::NotThere => PlatformError::NotThere,
            Code::Refused => PlatformError::Refused,
            Code::Cannot | Code::Failed => PlatformError::Failed(message),
        })
    }
}

impl<N: Native> PlatformKeys for PhoneKeys<N> {
    fn keep(&self, name: &str, secret: &Passphrase) -> Result<(), PlatformError> {
        self.ask("keepSecret", json!({ "name": name, "secret": secret.expose_secret() })).map(|_| ())
    }

    fn fetch(&self, name: &str) -> Result<Passphrase, PlatformError> {
        let answer = self.ask("fetchSecret", json!({ "name": name }))?;
        let secret = answer.get("secret").and_then(Value::as_str);
        // What is not what was kept must not pass for a wrong key.
        let secret = secret.filter(|text| text.is_ascii() && (1..=SECRET_MAX).contains(&text.len()));
        secret.map(|text| Passphrase::from(text.to_owned())).ok_or_else(|| PlatformError::Failed("no secret came".to_owned()))
    }

    fn remove(&self, name: &str) -> Result<(), PlatformError> {
        self.ask("removeSecret", json!({ "name": name })).map(|_| ())
    }
}
