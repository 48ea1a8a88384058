//! The examination of placenta, membranes and cord: what is asked in which order, and what the answers add up to.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::fact::Answer;
use crate::message::Message;
use crate::protocol::{Level, Milli, Status, Step};

/// The items, in the order of work.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Examination {
    /// The items.
    #[serde(rename = "item")]
    pub items: Vec<Item>,
}

/// One thing to look at or measure.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Item {
    /// Stable id.
    pub id: String,
    /// Where it belongs.
    pub part: Part,
    /// How it is answered.
    pub kind: Kind,
    /// The choices of a choice.
    #[serde(default, rename = "option")]
    pub options: Vec<Choice>,
    /// The choices that leave no doubt that all is here; empty for an item that does not bear on it.
    #[serde(default)]
    pub whole: Vec<String>,
    /// Least number that can be, in the unit of the kind.
    #[serde(default)]
    pub min: u32,
    /// Greatest number that can be.
    #[serde(default)]
    pub max: u32,
    /// Published values to hold a measure against.
    #[serde(default, rename = "step")]
    pub steps: Vec<Step>,
}

/// Where an item belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    /// The side that lay on the uterus.
    MaternalSide,
    /// The side that the baby lay on.
    FetalSide,
    /// Amnion and chorion.
    Membranes,
    /// The cord.
    Cord,
    /// The placenta as a whole.
    Disc,
}

/// How an item is answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub enum Kind {
    /// One of several choices.
    #[serde(rename = "choice")]
    Choice,
    /// A length, mm.
    #[serde(rename = "mm")]
    Millimetres,
    /// A weight, g.
    #[serde(rename = "g")]
    Grams,
    /// A number of things.
    #[serde(rename = "count")]
    Count,
}

/// A choice; one with a level is unusual and says why it counts.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// Stable id within the item.
    pub id: String,
    /// How much it asks for attention.
    pub level: Option<Level>,
    /// Where that comes from.
    pub source: Option<String>,
    /// How well that was checked.
    pub status: Option<Status>,
}

/// What was found for one placenta.
pub type Answers = BTreeMap<String, Answer>;

/// Whether all of it is here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Completeness {
    /// Each of the questions that bear on it was answered without doubt.
    NoDoubtRecorded,
    /// These items were answered with no, or could not be told.
    Doubt(Vec<String>),
    /// These items are not answered yet; none so far raises a doubt.
    NotRecorded(Vec<String>),
}

impl Examination {
    /// The examination that comes with the program.
    #[must_use]
    pub fn standard() -> &'static Self {
        static STANDARD: LazyLock<Examination> =
            LazyLock::new(|| toml::from_str(include_str!("examination.toml")).unwrap_or_default());
        &STANDARD
    }

    /// The item of that id.
    #[must_use]
    pub fn item(&self, id: &str) -> Option<&Item> {
        self.items.iter().find(|item| item.id == id)
    }

    /// Whether all of the placenta and membranes is here, as far as the answers tell. Any doubt outweighs what is missing.
    #[must_use]
    pub fn completeness(&self, answers: &Answers) -> Completeness {
        let (mut doubt, mut missing) = (Vec::new(), Vec::new());
        for item in self.items.iter().filter(|item| !item.whole.is_empty()) {
            match answers.get(&item.id) {
                None => missing.push(item.id.clone()),
                Some(Answer::Choice { option }) if item.whole.contains(option) => {}
                Some(_) => doubt.push(item.id.clone()),
            }
        }
        match (doubt.is_empty(), missing.is_empty()) {
            (false, _) => Completeness::Doubt(doubt),
            (true, false) => Completeness::NotRecorded(missing),
            (true, true) => Completeness::NoDoubtRecorded,
        }
    }
}

/// What makes an answer unusual.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unusual {
    /// How much it asks for attention.
    pub level: Level,
    /// Where that comes from.
    pub source: String,
    /// How well that was checked.
    pub status: Status,
    /// What the source says, for a measure.
    pub words: Option<String>,
}

impl Item {
    /// Whether this answer can be given to this item.
    ///
    /// # Errors
    /// A message that says what can.
    pub fn check(&self, answer: &Answer) -> Result<(), Message> {
        match answer {
            Answer::CouldNotTell => Ok(()),
            Answer::Choice { option } if self.options.iter().any(|choice| choice.id == *option) => Ok(()),
            Answer::Measure { value } if self.kind != Kind::Choice && (self.min..=self.max).contains(value) => Ok(()),
            Answer::Measure { value } if self.kind != Kind::Choice => Err(Message::new("impossible-measure")
                .with("item", Message::new(format!("exam-{}", self.id)))
                .with("value", self.measure_words(*value))
                .with("min", self.measure_words(self.min))
                .with("max", self.measure_words(self.max))),
            _ => Err(Message::new("impossible-answer").with("item", Message::new(format!("exam-{}", self.id)))),
        }
    }

    /// Why an answer is unusual, if a source says so.
    #[must_use]
    pub fn unusual(&self, answer: &Answer) -> Option<Unusual> {
        match answer {
            Answer::Choice { option } => {
                let choice = self.options.iter().find(|choice| choice.id == *option)?;
                let (level, source, status) = (choice.level?, choice.source.clone()?, choice.status?);
                Some(Unusual { level, source, status, words: None })
            }
            Answer::Measure { value } => {
                let step = self.steps.iter().find(|step| step.passed_by(Milli::from(*value)))?;
                let (level, source, status) = (step.level, step.source.clone(), step.status);
                Some(Unusual { level, source, status, words: Some(step.words.clone()) })
            }
            Answer::CouldNotTell => None,
        }
    }

    /// A measure of this item with its unit, lengths in cm.
    #[must_use]
    pub fn measure_words(&self, value: u32) -> Message {
        match self.kind {
            Kind::Millimetres => Message::new("measure-cm").with("value", f64::from(value) / 10.0),
            Kind::Grams => Message::new("measure-g").with("value", value),
            Kind::Choice | Kind::Count => Message::new("measure-count").with("value", value),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn choice(option: &str) -> Answer {
        Answer::Choice { option: option.to_owned() }
    }

    fn all_whole() -> Answers {
        let standard = Examination::standard();
        let whole = standard.items.iter().filter(|item| !item.whole.is_empty());
        whole.map(|item| (item.id.clone(), choice(&item.whole[0]))).collect()
    }

    #[test]
    fn the_file_is_sound() {
        let standard: Examination = toml::from_str(include_str!("examination.toml")).unwrap();
        for item in &standard.items {
            assert_eq!(item.kind == Kind::Choice, !item.options.is_empty(), "{}", item.id);
            assert_eq!(item.kind == Kind::Choice, item.max == 0, "{}", item.id);
            for option in &item.options {
                let told = [option.source.is_some(), option.status.is_some()];
                assert_eq!(
                    told,
                    [option.level.is_some(); 2],
                    "{} {}: level, source and status come together",
                    item.id,
                    option.id
                );
            }
            for whole in &item.whole {
                assert!(item.options.iter().any(|option| option.id == *whole), "{} {whole}", item.id);
            }
        }
    }

    #[test]
    fn four_questions_tell_whether_all_is_here() {
        // Source: common practice; lobes that meet when cupped, both membranes, no vessel to a torn edge.
        let standard = Examination::standard();
        assert_eq!(all_whole().keys().collect::<Vec<_>>(), ["amnion", "chorion", "edge-vessels", "lobes"]);
        assert_eq!(standard.completeness(&all_whole()), Completeness::NoDoubtRecorded);
        assert!(matches!(standard.completeness(&Answers::new()), Completeness::NotRecorded(items) if items.len() == 4));
    }

    #[test]
    fn any_no_or_unsure_is_doubt_even_when_the_rest_is_missing() {
        let standard = Examination::standard();
        for (item, answer) in [("lobes", choice("gap")), ("amnion", Answer::CouldNotTell), ("edge-vessels", choice("torn-end"))] {
            let mut answers = all_whole();
            answers.insert(item.to_owned(), answer.clone());
            assert_eq!(standard.completeness(&answers), Completeness::Doubt(vec![item.to_owned()]));
            let alone = Answers::from([(item.to_owned(), answer)]);
            assert_eq!(standard.completeness(&alone), Completeness::Doubt(vec![item.to_owned()]));
        }
    }

    #[test]
    fn measures_at_and_beside_each_cut_off() {
        // Sources: `step` rows of examination.toml (ranges of 40 to 70 cm; thickness 2 to 4 cm, Yetter 1998).
        let unusual = |id: &str, value| Examination::standard().item(id).unwrap().unusual(&Answer::Measure { value }).is_some();
        assert_eq!([399, 400, 700, 701].map(|mm| unusual("cord-length", mm)), [true, false, false, true]);
        assert_eq!([19, 20, 40, 41].map(|mm| unusual("disc-thickness", mm)), [true, false, false, true]);
    }

    #[test]
    fn an_answer_that_the_item_does_not_have_is_refused() {
        let length = Examination::standard().item("cord-length").unwrap();
        assert!(length.check(&Answer::Measure { value: 9 }).is_err());
        assert!(length.check(&choice("none")).is_err());
        assert!(length.check(&Answer::CouldNotTell).is_ok());
        let knots = Examination::standard().item("knots").unwrap();
        assert!(knots.check(&choice("granny")).is_err());
        assert!(knots.check(&Answer::Measure { value: 3 }).is_err());
    }
}
