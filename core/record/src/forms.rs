//! Papers that go with a placenta, each about one of them, and a page for the parents.

use secundine_domain::chart::{Chart, Mark};
use secundine_domain::fact::{BabyNo, Fact};
use secundine_domain::message::Message;
use secundine_domain::protocol::Status;
use secundine_domain::time::date_words;

use crate::document::{Origin, Source, headed, written};
use crate::page::{Block, Document, PageError, Pdf, Span};
use crate::sections::examination::by;
use crate::sections::{Pair, mark, told};

mod family;
mod keepsake;
mod laboratory;
mod parents;

pub use parents::{parents_document, parents_pdf};

/// Which paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A request to a laboratory.
    Laboratory,
    /// That the family takes it.
    Family,
}

/// A paper about the placenta of that name, as a PDF file.
///
/// # Errors
/// [`PageError`] when the file cannot be made.
pub fn form_pdf(chart: &Chart, origin: &Origin, form: Form, placenta: BabyNo) -> Result<Pdf, PageError> {
    written(&form_document(chart, origin, form, placenta), origin.words)
}

/// The same as a document.
#[must_use]
pub fn form_document(chart: &Chart, origin: &Origin, form: Form, placenta: BabyNo) -> Document {
    let source = Source::new(chart, origin);
    match form {
        Form::Laboratory => headed(&source, "form-laboratory", laboratory::blocks(&source, placenta)),
        Form::Family => headed(&source, "form-family", family::blocks(&source, placenta)),
    }
}

/// What is known of keeping a placenta: what it is about and what is said, in the catalogue; whose words they are, and how well
/// that was checked.
struct Keeping(&'static str, &'static str, &'static str, Status);

const COLD: Keeping = Keeping(
    "form-cold",
    "form-keep-cold",
    "pathologyoutlines.com; a Taylor & Francis chapter; an NHS laboratory holds them 14 days",
    Status::Seen,
);
const NOT_FROZEN: Keeping = Keeping("form-frozen", "form-keep-unfrozen", "advice on a histology mailing list", Status::Seen);
const NO_FORMALIN: Keeping = Keeping(
    "form-formalin",
    "form-keep-no-formalin",
    "local rules differ: one NHS Trust asks for it unless told otherwise",
    Status::Seen,
);
const BAGGED: Keeping =
    Keeping("form-carried", "form-keep-bagged", "remote-area manual 2019, on sending to a laboratory", Status::Seen);
const BURIAL: Keeping = Keeping("form-burying", "form-burial", "local laws differ; none was read", Status::CommonPractice);
const TISSUE: Keeping = Keeping("form-touching", "form-keep-gloves", "handling of human tissue", Status::CommonPractice);

fn keeping(source: &Source, told: &[Keeping]) -> Block {
    let pair = |Keeping(name, said, from, status): &Keeping| {
        (source.words.plain(name), vec![Span::plain(source.words.plain(said)), by(source, "", from, *status)])
    };
    Block::Facts(told.iter().map(pair).collect())
}

/// When the placenta and its membranes were born.
fn times(source: &Source, placenta: BabyNo) -> Vec<Pair> {
    let babies = source.chart.fed(placenta);
    let known = source.chart.placentas.get(&placenta);
    let born = known.and_then(|known| known.born.as_ref());
    let membranes = known.and_then(|known| known.membranes.as_ref());
    vec![
        dated(source, born, &Fact::PlacentaBorn { babies: babies.clone() }),
        dated(source, membranes, &Fact::MembranesBorn { babies }),
    ]
}

/// A mark with its date too.
fn dated(source: &Source, when: Option<&Mark>, fact: &Fact) -> Pair {
    let (what, mut value) = mark(source, when, fact);
    if let Some(when) = when {
        value.insert(0, Span::plain(format!("{} ", source.words.say(&date_words(&when.at.date())))));
    }
    (what, value)
}

/// Which placenta, by the babies that it fed.
fn which(source: &Source, placenta: BabyNo) -> Pair {
    let fed = source.chart.fed(placenta);
    let numbers: Vec<String> = fed.iter().map(BabyNo::to_string).collect();
    let several = source.chart.babies.len() > 1;
    let of = Message::new("form-of-babies").with("babies", numbers.join(" + "));
    let which = if several { source.words.say(&of) } else { source.words.plain("form-only-one") };
    (source.words.plain("form-which"), told(source, Some(which)))
}

fn paragraph(source: &Source, id: &str) -> Block {
    Block::Paragraph(vec![Span::plain(source.words.plain(id))])
}

fn bold(source: &Source, id: &str) -> Block {
    Block::Paragraph(vec![Span::plain(source.words.plain(id)).bold()])
}

pub(crate) fn heading(source: &Source, id: &str) -> Block {
    Block::Heading(source.words.plain(id))
}

/// Places to write on.
pub(crate) fn lines(source: &Source, ids: &[&str]) -> Block {
    Block::Signature(ids.iter().map(|id| source.words.plain(id)).collect())
}

fn ticks(source: &Source, ids: &[&str]) -> Block {
    Block::Ticks(ids.iter().map(|id| vec![Span::plain(source.words.plain(id))]).collect())
}
