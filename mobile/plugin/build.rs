//! Names what the page may ask for, and where the Kotlin and the Swift lie. The key store is not among it: only the core asks that.

const COMMANDS: &[&str] =
    &["tell", "keep_awake", "buzz", "voices", "speak", "hush", "remind", "clock", "share", "volume_keys", "photograph"];

fn main() -> Result<(), Box<dyn std::error::Error>> {
    println!("cargo:rerun-if-changed=page/ports.js");
    tauri_plugin::Builder::new(COMMANDS).android_path("android").ios_path("ios").try_build()?;
    Ok(())
}
