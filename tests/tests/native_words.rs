//! Words that a phone's system has to know without the core are the catalogue's own.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::fs;
use std::path::PathBuf;

use secundine_record::words::Words;
use secundine_session::native::mark_words;

/// The text of a string in the resources of the Android plugin.
fn resource(language: &str, name: &str) -> String {
    let folder = if language == "en" { "values".to_owned() } else { format!("values-{language}") };
    let plugin = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../mobile/plugin/android/src/main/res");
    let path = plugin.join(folder).join("strings.xml");
    let text = fs::read_to_string(&path).unwrap_or_else(|error| unreachable!("{}: {error}", path.display()));
    let (_, after) = text.split_once(&format!("<string name=\"{name}\">")).unwrap();
    after.split_once("</string>").unwrap().0.to_owned()
}

/// The title of the intent in the strings of the iOS target.
fn title(language: &str) -> String {
    let words = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../mobile/plugin/ios/Words");
    let path = words.join(format!("{language}.lproj/Localizable.strings"));
    let text = fs::read_to_string(&path).unwrap_or_else(|error| unreachable!("{}: {error}", path.display()));
    let (_, after) = text.split_once("\"Baby born\" = \"").unwrap();
    after.split_once("\";").unwrap().0.to_owned()
}

#[test]
fn every_language_has_the_words_of_the_tile_and_of_the_intent() {
    for language in Words::tags() {
        let words = mark_words(language);
        assert_eq!(resource(language, "secundine_tile"), words.label, "{language}");
        assert_eq!(title(language), words.label, "{language}");
        assert_eq!(resource(language, "secundine_tile_not_saved"), words.not_saved, "{language}");
        for word in [words.label, words.not_saved, words.take_back, words.taken_back] {
            assert!(!word.contains(['\'', '"', '&', '<', '\\', '{']) && !word.starts_with("native-"), "{language}: {word}");
        }
    }
}
