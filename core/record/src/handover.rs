//! A birth handed over in SBAR order: what is said over the telephone, shown as a code, and printed on one page.
//!
//! The order is that of handovers between home, ambulance and hospital (Home Birth Summit transfer guideline); which facts stand
//! in it is our own choice. It recommends nothing: what is asked for is what the author wrote.

use secundine_domain::assess::Threshold;
use secundine_domain::chart::Chart;
use secundine_domain::message::Message;
use secundine_domain::protocol::Level;
use secundine_domain::time::{Occurred, Stamp, date_words};

use crate::document::{Origin, Source};
use crate::words::Words;

mod items;
mod sheet;
mod text;
mod topic;

pub use sheet::{transfer_document, transfer_pdf};
pub use text::{CODE_MOST, CodeText};
pub use topic::{Part, Topic};

/// A moment that lies further back than this is told with its date. Our own choice: a night has each time of day once.
const WITH_DATE_MS: u64 = 20 * 3_600_000;

/// What is handed over.
#[derive(Clone, Debug, PartialEq)]
pub struct Handover {
    /// When it is told.
    pub made: Stamp,
    /// A rehearsal, not a birth.
    pub rehearsal: bool,
    /// Everything, in the order in which it is read out.
    pub items: Vec<Item>,
}

/// One thing that is told. It is told whole or not at all.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it is about.
    pub topic: Topic,
    /// The name of that: items of one topic and one name stand together.
    pub label: Message,
    /// What is told.
    pub said: Message,
    /// When that was, where it is one moment.
    pub at: Option<Occurred>,
    /// Local time of it, `03:12`, with its date where that lies long ago.
    pub when: Option<Message>,
    /// Whether its age matters to whoever hears it.
    pub ages: bool,
    /// That there is nothing to tell, and nobody would miss it.
    pub is_nothing: bool,
    /// How much a finding of the protocol asks for attention there.
    pub level: Option<Level>,
    /// The threshold that was passed.
    pub threshold: Option<Threshold>,
}

impl Handover {
    /// What is known now, by the words of the protocol in force.
    #[must_use]
    pub fn of(chart: &Chart, origin: &Origin) -> Self {
        let items = items::items(&Source::new(chart, origin));
        Self { made: origin.written.clone(), rehearsal: chart.rehearsal, items }
    }

    /// Without what a view without names cannot tell: it would say "not recorded" of what is only hidden.
    #[must_use]
    pub fn without_people(mut self) -> Self {
        self.items.retain(|item| !item.topic.is_of_people());
        self
    }

    /// The items of one part, those that stand together in one run each.
    pub fn groups(&self, part: Part) -> impl Iterator<Item = &[Item]> {
        self.items.chunk_by(Item::stands_with).filter(move |group| group.first().is_some_and(|item| item.topic.part() == part))
    }

    /// The places of the items, what is kept longest first: of each topic a few, then the rest of each.
    fn by_importance(&self) -> Vec<usize> {
        let mut order: Vec<(bool, usize, usize, usize)> = Vec::new();
        let mut place = 0;
        for group in self.items.chunk_by(Item::stands_with) {
            for (n, item) in group.iter().enumerate() {
                let nth = if item.topic.newest_first() { group.len() - 1 - n } else { n };
                let late = item.is_nothing || nth >= item.topic.few();
                order.push((late, item.topic.importance(), nth, place + n));
            }
            place += group.len();
        }
        order.sort_unstable();
        order.into_iter().map(|(.., place)| place).collect()
    }

    /// The same with only the items at these places, in the order in which they are read out.
    fn only(&self, kept: &[usize]) -> Self {
        let items = self.items.iter().enumerate().filter(|(place, _)| kept.contains(place)).map(|(_, item)| item.clone());
        Self { items: items.collect(), ..self.clone() }
    }

    /// As much as `fits`, whole items, the least important left out first; none longer than `one_most` bytes, which alone
    /// would push out many others. None where not even the empty handover fits.
    fn fitted<T>(&self, words: &Words, one_most: usize, fits: impl Fn(&Self) -> Option<T>) -> Option<(Self, T)> {
        let short = |place: &usize| self.items.get(*place).is_some_and(|item| item.line(words).len() <= one_most);
        let order: Vec<usize> = self.by_importance().into_iter().filter(short).collect();
        let kept = |count: usize| {
            let kept = self.only(order.get(..count).unwrap_or(&order));
            fits(&kept).map(|made| (kept, made))
        };
        if let Some(all) = kept(order.len()) {
            return Some(all);
        }
        let (mut fitting, mut most, mut least) = (kept(0)?, order.len(), 0);
        // What fits grows with each item left out, so the place from which on it fits is found by halves.
        while most - least > 1 {
            let middle = usize::midpoint(least, most);
            match kept(middle) {
                Some(made) => (fitting, least) = (made, middle),
                None => most = middle,
            }
        }
        Some(fitting)
    }
}

impl Item {
    fn stands_with(&self, other: &Self) -> bool {
        (self.topic, &self.label) == (other.topic, &other.label)
    }

    /// Time and words, as one reads it out.
    #[must_use]
    pub fn line(&self, words: &Words) -> String {
        let said = words.say(&self.said);
        self.when.as_ref().map_or_else(|| said.clone(), |when| format!("{} {said}", words.say(when)))
    }
}

/// Date and time to the minute at which it is told.
fn when_made(handover: &Handover) -> Message {
    dated(&handover.made.date(), &handover.made.clock())
}

fn dated(date: &str, clock: &str) -> Message {
    Message::new("date-clock").with("date", date_words(date)).with("clock", to_minute(clock))
}

fn to_minute(clock: &str) -> String {
    clock.chars().take(5).collect()
}

/// A moment to the minute, with its date where that lies long ago.
fn when(chart: &Chart, at: &Occurred, now: &Stamp) -> Message {
    match chart.until(at, now).ms.unsigned_abs() < WITH_DATE_MS {
        true => Message::new("value-text").with("value", to_minute(&at.clock())),
        false => dated(&at.date(), &at.clock()),
    }
}
