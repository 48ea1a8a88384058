//! The examination of placenta, membranes and cord: what is asked in which order, and what the answers add up to.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::fact::{Answer, Place};
use crate::message::Message;
use crate::protocol::{Level, Milli, Status, Step};

mod answers;
mod figures;
mod order;
mod reasons;
mod sketch;
mod weights;

pub use answers::{Asked, Completeness, Examined, Given};
pub use figures::{Beside, Figure, Input, figures};
pub use order::{asked, in_order_of};
pub use reasons::{Reason, To, reasons, untold};
pub use sketch::{Fill, PathStep, Side, Sketch, Trace, ViewBox, What, sketch};
pub use weights::{Standing, Weighed, WeightRow, WeightTable, Wrong};

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
    /// The choices of a choice, or of several.
    #[serde(default, rename = "option")]
    pub options: Vec<Choice>,
    /// Of several choices, the one that excludes all others.
    #[serde(default)]
    pub none: Option<String>,
    /// Whether all choices are offered at one touch.
    #[serde(default)]
    pub all: bool,
    /// The choices that leave no doubt that all is here; empty for an item that does not bear on it.
    #[serde(default)]
    pub whole: Vec<String>,
    /// Asked only after this answer.
    #[serde(default)]
    pub only: Option<Only>,
    /// Whether it is asked only where one disc fed several babies.
    #[serde(default)]
    pub several: bool,
    /// Whether it is asked of each cord.
    #[serde(default)]
    pub cord: bool,
    /// Least number that can be, in the unit of the kind.
    #[serde(default)]
    pub min: u32,
    /// Greatest number that can be: of a measure, of coils, of points.
    #[serde(default)]
    pub max: u32,
    /// Values that are offered at one touch.
    #[serde(default)]
    pub quick: Vec<u32>,
    /// Widths of a point that are offered at one touch, mm; none where no width is asked.
    #[serde(default)]
    pub sizes: Vec<u32>,
    /// Published values to hold a measure against, the farthest first.
    #[serde(default, rename = "step")]
    pub steps: Vec<Step>,
}

/// The answer after which an item is asked.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Only {
    /// Id of the item that was answered so.
    pub item: String,
    /// Any of these.
    pub options: Vec<String>,
}

/// Where an item belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    /// What is laid out before.
    Preparation,
    /// The side that the baby lay on.
    FetalSide,
    /// Amnion and chorion.
    Membranes,
    /// The cord.
    Cord,
    /// The side that lay on the uterus.
    MaternalSide,
    /// The placenta as a whole.
    Disc,
    /// What becomes of it.
    After,
}

/// How an item is answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub enum Kind {
    /// One of several choices.
    #[serde(rename = "choice")]
    Choice,
    /// Those of several choices that hold.
    #[serde(rename = "choices")]
    Choices,
    /// A length, mm.
    #[serde(rename = "mm")]
    Millimetres,
    /// A weight, g.
    #[serde(rename = "g")]
    Grams,
    /// A share, %.
    #[serde(rename = "%")]
    Percent,
    /// Pieces of cord, mm.
    #[serde(rename = "pieces")]
    Pieces,
    /// Coils over a length of cord.
    #[serde(rename = "coils")]
    Coils,
    /// Points on the drawing.
    #[serde(rename = "places")]
    Places,
}

impl Kind {
    /// Whether it is answered by one number.
    #[must_use]
    pub fn is_measure(self) -> bool {
        matches!(self, Self::Millimetres | Self::Grams | Self::Percent)
    }
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

/// Farthest that a point can lie from the middle, thousandths of half the disc.
pub const FARTHEST: i32 = 3_000;

/// Longest stretch of cord, mm, and most pieces of one.
const LONGEST_MM: u32 = 3_000;
const MOST_PIECES: usize = 12;

impl Item {
    /// Whether this answer can be given to this item.
    ///
    /// # Errors
    /// A message that says what can.
    pub fn check(&self, answer: &Answer) -> Result<(), Message> {
        match (self.kind, answer) {
            (_, Answer::CouldNotTell) => Ok(()),
            (Kind::Choice | Kind::Choices, Answer::Choice { option }) if self.choice(option).is_some() => Ok(()),
            (Kind::Choices, Answer::Choices { options }) => self.fit_together(options),
            (Kind::Pieces, Answer::Measure { value }) => self.in_range(*value),
            (Kind::Pieces, Answer::Pieces { lengths, .. }) if (1..=MOST_PIECES).contains(&lengths.len()) => {
                self.in_range(lengths.iter().copied().fold(0, u32::saturating_add))
            }
            (Kind::Coils, Answer::Coils { coils, over }) if *coils <= self.max && (1..=LONGEST_MM).contains(over) => Ok(()),
            (Kind::Places, Answer::Places { places }) if self.can_lie(places) => Ok(()),
            (kind, Answer::Measure { value }) if kind.is_measure() => self.in_range(*value),
            _ => Err(self.impossible()),
        }
    }

    fn in_range(&self, value: u32) -> Result<(), Message> {
        if (self.min..=self.max).contains(&value) {
            return Ok(());
        }
        Err(Message::new("impossible-measure")
            .with("item", self.name())
            .with("value", self.measure_words(value))
            .with("min", self.measure_words(self.min))
            .with("max", self.measure_words(self.max)))
    }

    /// Several choices are each the item's own, and the one that excludes others stands alone.
    fn fit_together(&self, options: &BTreeSet<String>) -> Result<(), Message> {
        let known = !options.is_empty() && options.iter().all(|option| self.choice(option).is_some());
        let alone = options.len() < 2 || self.none.as_ref().is_none_or(|none| !options.contains(none));
        if known && alone { Ok(()) } else { Err(self.impossible()) }
    }

    fn can_lie(&self, places: &[Place]) -> bool {
        let inside = |value: i32| (-FARTHEST..=FARTHEST).contains(&value);
        let size = |size: Option<u32>| size.is_none_or(|mm| (1..=LONGEST_MM).contains(&mm));
        let number = u32::try_from(places.len()).unwrap_or(u32::MAX);
        (1..=self.max).contains(&number) && places.iter().all(|place| inside(place.x) && inside(place.y) && size(place.size))
    }

    fn impossible(&self) -> Message {
        Message::new("impossible-answer").with("item", self.name())
    }

    /// What is asked.
    #[must_use]
    pub fn name(&self) -> Message {
        Message::new(format!("exam-{}", self.id))
    }

    /// The choice of that id.
    #[must_use]
    pub fn choice(&self, id: &str) -> Option<&Choice> {
        self.options.iter().find(|choice| choice.id == id)
    }

    /// Why an answer is unusual, if a source says so: the gravest of its choices, or the farthest threshold that it passes.
    #[must_use]
    pub fn unusual(&self, answer: &Answer) -> Option<Unusual> {
        match answer {
            Answer::Choice { .. } | Answer::Choices { .. } => {
                let unusual = answer.options().filter_map(|option| self.choice(option)?.unusual());
                unusual.reduce(|first, next| if next.level > first.level { next } else { first })
            }
            _ => {
                let value = Milli::from(answer.measure()?);
                Some(self.steps.iter().find(|step| step.passed_by(value))?.into())
            }
        }
    }

    /// A measure of this item with its unit, lengths in cm.
    #[must_use]
    pub fn measure_words(&self, value: u32) -> Message {
        match self.kind {
            Kind::Millimetres | Kind::Pieces => centimetres(value),
            Kind::Grams => Message::new("measure-g").with("value", value),
            Kind::Percent => Message::new("value-percent").with("value", value),
            Kind::Choice | Kind::Choices | Kind::Coils | Kind::Places => Message::new("measure-count").with("value", value),
        }
    }
}

/// A length in words, cm.
#[must_use]
pub fn centimetres(mm: u32) -> Message {
    Message::new("measure-cm").with("value", f64::from(mm) / 10.0)
}

impl Choice {
    fn unusual(&self) -> Option<Unusual> {
        Some(Unusual { level: self.level?, source: self.source.clone()?, status: self.status?, words: None })
    }
}

impl From<&Step> for Unusual {
    fn from(step: &Step) -> Self {
        Self { level: step.level, source: step.source.clone(), status: step.status, words: Some(step.words.clone()) }
    }
}

impl Answer {
    /// The choices that were named.
    pub fn options(&self) -> impl Iterator<Item = &str> {
        let one = if let Self::Choice { option } = self { Some(option) } else { None };
        let several = if let Self::Choices { options } = self { Some(options) } else { None };
        one.into_iter().chain(several.into_iter().flatten()).map(String::as_str)
    }

    /// The number that it comes to: a measure, or the sum of a cord's pieces, mm; none of no pieces.
    #[must_use]
    pub fn measure(&self) -> Option<u32> {
        match self {
            Self::Measure { value } => Some(*value),
            Self::Pieces { lengths, .. } => lengths.iter().copied().reduce(u32::saturating_add),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn choice(option: &str) -> Answer {
        Answer::Choice { option: option.to_owned() }
    }

    fn choices(options: &[&str]) -> Answer {
        Answer::Choices { options: options.iter().map(|option| (*option).to_owned()).collect() }
    }

    #[test]
    fn the_file_is_sound() {
        let standard: Examination = toml::from_str(include_str!("examination.toml")).unwrap();
        for item in &standard.items {
            let chosen = matches!(item.kind, Kind::Choice | Kind::Choices);
            assert_eq!(chosen, !item.options.is_empty(), "{}", item.id);
            assert_eq!(chosen, item.max == 0, "{}", item.id);
            assert!(item.quick.iter().all(|value| *value <= item.max), "{}", item.id);
            assert!(item.none.as_ref().is_none_or(|none| item.choice(none).is_some()), "{}", item.id);
            assert!(item.sizes.is_empty() || item.kind == Kind::Places, "{}", item.id);
            if let Some(only) = &item.only {
                let asked = standard.item(&only.item).unwrap();
                assert!(only.options.iter().all(|option| asked.choice(option).is_some()), "{}", item.id);
                assert!(!asked.cord && asked.only.is_none(), "{}: what follows an answer follows one about the whole", item.id);
            }
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
    fn of_several_choices_the_gravest_is_told_and_none_stands_alone() {
        let surface = Examination::standard().item("maternal-surface").unwrap();
        assert!(surface.check(&choices(&["gritty", "pale"])).is_ok());
        assert!(surface.check(&choices(&["gritty", "even"])).is_err());
        assert!(surface.check(&choices(&[])).is_err());
        assert!(surface.check(&choices(&["gritty", "no such choice"])).is_err());
        assert_eq!(surface.unusual(&choices(&["gritty"])), None);
        assert_eq!(surface.unusual(&choices(&["gritty", "pale"])).unwrap().level, Level::Caution);
        let marks = Examination::standard().item("fetal-marks").unwrap();
        assert_eq!(marks.unusual(&choices(&["cyst", "lump"])), marks.unusual(&choices(&["lump"])));
    }

    #[test]
    fn an_answer_that_the_item_does_not_have_is_refused() {
        let item = |id: &str| Examination::standard().item(id).unwrap();
        let pieces = |lengths: &[u32]| Answer::Pieces { lengths: lengths.to_vec(), all: true };
        assert!(item("cord-length").check(&Answer::Measure { value: 9 }).is_err());
        assert!(item("cord-length").check(&choice("none")).is_err());
        assert!(item("cord-length").check(&Answer::CouldNotTell).is_ok());
        assert!(item("cord-length").check(&pieces(&[300, 240])).is_ok());
        assert!(item("cord-length").check(&pieces(&[])).is_err());
        assert!(item("cord-length").check(&pieces(&[u32::MAX, u32::MAX])).is_err());
        assert!(item("cord-coils").check(&Answer::Coils { coils: 11, over: 500 }).is_ok());
        assert!(item("cord-coils").check(&Answer::Coils { coils: 11, over: 0 }).is_err());
        assert!(item("knots").check(&choice("granny")).is_err());
        assert!(item("knots").check(&Answer::Measure { value: 3 }).is_err());
        assert!(item("knots").check(&choices(&["none"])).is_err());
        let places = |places: &[(i32, i32)]| Answer::Places {
            places: places.iter().map(|(x, y)| Place { x: *x, y: *y, size: None }).collect(),
        };
        assert!(item("insertion-place").check(&places(&[(400, -200)])).is_ok());
        assert!(item("insertion-place").check(&places(&[(400, -200), (0, 0)])).is_err(), "a cord goes in at one place");
        assert!(item("insertion-place").check(&places(&[(3_001, 0)])).is_err());
        assert!(item("insertion-place").check(&places(&[])).is_err());
    }
}
