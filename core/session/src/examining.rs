//! How a practice examines: the order that it keeps, and its table of placental weights.

use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::examination::WeightTable;
use secundine_domain::fact::Fact;
use secundine_domain::message::Message;
use secundine_domain::time::Stamp;

use crate::api::{ApiError, ExaminingView};
use crate::practice::{Draft, OpenPractice};

/// As the practice's entries say.
#[derive(Clone, Debug, Default)]
pub(crate) struct Examining {
    /// Ids of items; empty for the usual order.
    pub order: Vec<String>,
    /// None where the practice has none.
    pub weights: Option<Box<WeightTable>>,
}

impl Examining {
    /// What holds after these entries, in order of time.
    pub(crate) fn read(entries: &[Entry]) -> Self {
        entries.iter().fold(Self::default(), |known, entry| known.after(&entry.fact))
    }

    fn after(self, fact: &Fact) -> Self {
        match fact {
            Fact::ExaminationOrdered { items } => Self { order: items.clone(), ..self },
            Fact::PlacentaWeights { table } => Self { weights: table.clone(), ..self },
            _ => self,
        }
    }
}

impl OpenPractice {
    /// Keeps an order of the examination; an empty one is the usual.
    pub(crate) fn order_examination(&mut self, items: Vec<String>, now: &Stamp) -> Result<(), ApiError> {
        self.examine_so(Fact::ExaminationOrdered { items }, now)
    }

    /// Takes a file for the practice's table of weights, or takes the table away.
    pub(crate) fn load_weights(&mut self, text: Option<&str>, now: &Stamp) -> Result<(), ApiError> {
        let table = text.map(WeightTable::parse).transpose().map_err(|wrong| ApiError::impossible(wrong.problem))?;
        self.examine_so(Fact::PlacentaWeights { table: table.map(Box::new) }, now)
    }

    fn examine_so(&mut self, fact: Fact, now: &Stamp) -> Result<(), ApiError> {
        self.write(Draft::now(BirthId::PRACTICE, fact.clone(), now))?;
        self.examining = std::mem::take(&mut self.examining).after(&fact);
        Ok(())
    }

    /// The table that a new birth begins with.
    pub(crate) fn first_weights(&self) -> Option<Fact> {
        Some(Fact::PlacentaWeights { table: Some(self.examining.weights.clone()?) })
    }
}

/// As the page draws it.
pub(crate) fn view(examining: &Examining) -> ExaminingView {
    let own_order = !examining.order.is_empty();
    ExaminingView { own_order, weights: examining.weights.as_deref().and_then(words) }
}

/// What a table is, in words.
fn words(table: &WeightTable) -> Option<Message> {
    let (first, last) = (table.rows.first()?, table.rows.last()?);
    let state = Message::new(format!("exam-weighed-as-{}", table.weighed.option()));
    let words = Message::new("weights-table").with("source", table.source.as_str());
    Some(words.with("first", first.week).with("last", last.week).with("state", state))
}
