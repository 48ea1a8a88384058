//! Puts the core's messages into words by the catalogues that the screens use too.
//!
//! A language is one file, `core/messages/XX.ftl`, XX being its BCP 47 tag; the build finds them. What a file lacks is said in
//! English.

use std::collections::BTreeMap;
use std::sync::{LazyLock, OnceLock};

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use secundine_domain::message::{Arg, Message};
use unic_langid::LanguageIdentifier;

/// The language of what another lacks.
const ENGLISH: &str = "en";

/// Tag and text of every catalogue.
static TEXTS: &[(&str, &str)] = &include!(concat!(env!("OUT_DIR"), "/catalogues.rs"));

/// The catalogue of one language.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
    tag: String,
}

impl Words {
    /// English.
    #[must_use]
    pub fn english() -> &'static Self {
        static NONE: LazyLock<Words> = LazyLock::new(|| Words::read(ENGLISH, ""));
        known(ENGLISH).unwrap_or(&NONE)
    }

    /// The language of a BCP 47 tag: `es` for `es-MX` where there is no catalogue of that name; English where none is known.
    #[must_use]
    pub fn of(tag: &str) -> &'static Self {
        let wider = tag.split(['-', '_']).next().unwrap_or_default();
        known(tag).or_else(|| known(wider)).unwrap_or_else(Self::english)
    }

    /// Tags of all languages that there are, in the order of the alphabet.
    pub fn tags() -> impl Iterator<Item = &'static str> {
        TEXTS.iter().map(|(tag, _)| *tag)
    }

    /// A catalogue from its text.
    #[must_use]
    pub fn read(tag: &str, text: &str) -> Self {
        // A message that does not parse is left out, and then said in English: a test finds any such.
        let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(rest, _)| rest);
        let language: LanguageIdentifier = tag.parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        bundle.set_use_isolating(false);
        bundle.add_resource_overriding(resource);
        let mut words = Self { bundle, tag: tag.to_owned() };
        if words.plain("language-decimal") == "," {
            words.bundle.set_formatter(Some(|value, _| match value {
                FluentValue::Number(number) => Some(number.as_string().replace('.', ",")),
                _ => None,
            }));
        }
        words
    }

    /// BCP 47 tag of the language.
    #[must_use]
    pub fn language(&self) -> &str {
        &self.tag
    }

    /// Says that nobody of the trade has read the translation; none where somebody has.
    #[must_use]
    pub fn draft(&self) -> Option<String> {
        (self.plain("language-status") == "machine-drafted").then(|| self.plain("language-machine-drafted"))
    }

    /// Whether the catalogue has this message itself.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.bundle.has_message(id)
    }

    /// A message in words; in English where the catalogue lacks it, and by its id where English does.
    #[must_use]
    pub fn say(&self, message: &Message) -> String {
        let Some(pattern) = self.bundle.get_message(&message.id).and_then(|found| found.value()) else {
            return if self.tag == ENGLISH { message.id.clone() } else { Self::english().say(message) };
        };
        let mut args = FluentArgs::new();
        for (name, arg) in &message.args {
            args.set(name.as_str(), self.value(arg));
        }
        self.bundle.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned()
    }

    /// A message without values, by its id.
    #[must_use]
    pub fn plain(&self, id: &str) -> String {
        self.say(&Message::new(id))
    }

    fn value<'a>(&self, arg: &'a Arg) -> FluentValue<'a> {
        match arg {
            Arg::Number(number) => FluentValue::from(*number),
            Arg::Text(text) => FluentValue::from(text.as_str()),
            Arg::Message(message) => FluentValue::from(self.say(message)),
        }
    }
}

/// The ids of every message, in the order of the English catalogue.
pub(crate) fn english_ids() -> impl Iterator<Item = &'static str> {
    let english = TEXTS.iter().filter(|(tag, _)| *tag == ENGLISH).flat_map(|(_, text)| text.lines());
    // What is indented goes on with the message before it.
    english.filter_map(|line| line.split_once(" =")).map(|(id, _)| id).filter(|id| !id.starts_with([' ', '#']))
}

/// The language of exactly this tag, read when it is first asked for.
fn known(tag: &str) -> Option<&'static Words> {
    static READ: LazyLock<BTreeMap<String, (&str, OnceLock<Words>)>> =
        LazyLock::new(|| TEXTS.iter().map(|(tag, text)| (tag.to_ascii_lowercase(), (*text, OnceLock::new()))).collect());
    let (tag, (text, words)) = READ.get_key_value(&tag.to_ascii_lowercase())?;
    Some(words.get_or_init(|| Words::read(tag, text)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn messages_nest_and_numbers_pick_their_form() {
        let words = Words::english();
        let length = Message::new("measure-cm").with("value", 54.5);
        let line = Message::new("fact-examined").with("item", Message::new("exam-cord-length")).with("answer", length);
        assert_eq!(words.say(&line), "Length of the cord: 54.5 cm");
        let born = |of: u32| words.say(&Message::new("fact-baby-born").with("of", of).with("baby", 2_u32));
        assert_eq!((born(1), born(2)), ("Baby born".to_owned(), "Baby 2 born".to_owned()));
    }

    #[test]
    fn a_text_alone_is_a_language_and_english_says_what_it_lacks() {
        let words = Words::read(
            "xx",
            "language-decimal = ,\nmeasure-cm = { $value } Maß\ndecimal = { $whole }{ language-decimal }{ $places }",
        );
        assert_eq!(words.say(&Message::new("measure-cm").with("value", 54.5)), "54,5 Maß");
        assert_eq!(words.say(&secundine_domain::message::decimal(7, "05")), "7,05");
        assert_eq!(words.plain("bleeding-heavy"), "bleeding heavy");
        assert_eq!(words.say(&Message::new("measure-g").with("value", 54.5)), "54.5 g", "English has its own sign");
        assert_eq!(words.plain("no-such-thing"), "no-such-thing");
    }

    #[test]
    fn a_tag_finds_the_nearest_language() {
        assert_eq!(Words::of("en-NZ").language(), "en");
        assert_eq!(Words::of("EN").language(), "en");
        assert_eq!(Words::of("no-such").language(), "en");
        assert_eq!(Words::of("").language(), "en");
    }
}
