//! Makes the page's folder, so that the shell compiles before the page is built, and names the one command.

fn main() -> Result<(), Box<dyn std::error::Error>> {
    std::fs::create_dir_all("../ui/dist")?;
    println!("cargo:rerun-if-changed=../ui/dist");
    let manifest = tauri_build::AppManifest::new().commands(&["call"]);
    tauri_build::try_build(tauri_build::Attributes::new().app_manifest(manifest))?;
    Ok(())
}
