//! Generates the Kotlin, Swift and Python sides from the built library.

fn main() {
    uniffi::uniffi_bindgen_main();
}
