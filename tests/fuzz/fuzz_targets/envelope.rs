#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| secundine_tests::fuzz::envelope(bytes));
