//! Puts the core's messages into words by the one catalogue that the screens use too.

use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use secundine_domain::message::{Arg, Message};
use unic_langid::LanguageIdentifier;

const ENGLISH: &str = include_str!("../../messages/en.ftl");

/// The catalogue of one language.
pub struct Words(FluentBundle<FluentResource>);

impl Words {
    /// English.
    #[must_use]
    pub fn english() -> &'static Self {
        static WORDS: LazyLock<Words> = LazyLock::new(|| Words::of(ENGLISH));
        &WORDS
    }

    fn of(text: &str) -> Self {
        // A message that does not parse is left out, and then shown by its id: a test finds any such.
        let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(rest, _)| rest);
        let english: LanguageIdentifier = "en".parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![english]);
        bundle.set_use_isolating(false);
        bundle.add_resource_overriding(resource);
        Self(bundle)
    }

    /// BCP 47 tag of the language.
    #[must_use]
    pub fn language(&self) -> &'static str {
        "en-GB"
    }

    /// Whether the catalogue has this message.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.0.has_message(id)
    }

    /// A message in words; one that is not in the catalogue is shown by its id.
    #[must_use]
    pub fn say(&self, message: &Message) -> String {
        let Some(pattern) = self.0.get_message(&message.id).and_then(|found| found.value()) else {
            return message.id.clone();
        };
        let mut args = FluentArgs::new();
        for (name, arg) in &message.args {
            args.set(name.as_str(), self.value(arg));
        }
        self.0.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned()
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_catalogue_parses_whole() {
        FluentResource::try_new(ENGLISH.to_owned()).map_err(|(_, errors)| errors).unwrap();
    }

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
    fn a_missing_message_shows_its_id() {
        assert_eq!(Words::english().plain("no-such-thing"), "no-such-thing");
    }
}
