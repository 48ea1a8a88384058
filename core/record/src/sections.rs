//! The sections of the record, one function each.

use secundine_domain::assess::{Finding, FindingState, Threshold, blood as add_up};
use secundine_domain::chart::Mark;
use secundine_domain::chart::State;
use secundine_domain::fact::{Client, Fact};
use secundine_domain::message::Message;
use secundine_domain::protocol::Level;
use secundine_domain::time::{Certainty, Elapsed, date_words};

use crate::document::Source;
use crate::page::{Align, Block, Cell, Column, Notice, Shape, Span, Table};

mod after;
pub(crate) mod examination;
mod given;
mod looks;
mod newborn;
mod photos;
mod timeline;

pub(crate) use after::{account, leaving};
pub(crate) use examination::examinations;
pub(crate) use given::medicines;
pub(crate) use newborn::babies;
pub(crate) use photos::photographs;
pub use timeline::after_signing;
pub(crate) use timeline::{Days, timeline};

/// Entries of a long night. Ours.
const LONG: usize = 120;

pub(crate) type Pair = (String, Vec<Span>);

/// Who, where, by whose protocol.
pub(crate) fn birth(source: &Source) -> Vec<Block> {
    let Source { chart, words, .. } = source;
    let client = chart.client.as_ref();
    let allergies = client.and_then(|client| client.allergies.clone());
    let allergies = allergies.map(|text| if text.trim().is_empty() { words.plain("record-none-known") } else { text });
    let protocol = protocol(source).map_or(words.plain("record-no-protocol"), |known| words.say(&known));
    let care = chart.care().map(|care| words.say(&secundine_domain::fact::care_words(care)));
    let pair = |id: &str, value: Option<String>| (words.plain(id), told(source, value));
    let mut short = mother(source);
    short.push(pair("record-allergies", allergies));
    let long = vec![pair("record-care", care), pair("record-protocol", Some(protocol)), practice(source)];
    vec![Block::ShortFacts(short), Block::Facts(long)]
}

/// The protocol in force, by its name, edition and id.
pub(crate) fn protocol(source: &Source) -> Option<Message> {
    let id = source.chart.chosen.as_ref().map_or("", |chosen| chosen.id.as_str());
    source.protocol.map(|known| {
        let value = Message::new("record-protocol-value").with("title", known.title.as_str()).with("id", id);
        value.with("edition", known.edition.as_str()).with("checked", date_words(&known.checked))
    })
}

/// The mother and her pregnancy.
pub(crate) fn mother(source: &Source) -> Vec<Pair> {
    let Source { chart, words, .. } = source;
    let unknown = Client::default();
    let client = chart.client.as_ref().unwrap_or(&unknown);
    let gestation = client.gestation.map(|days| {
        words.say(&Message::new("record-gestation-value").with("weeks", days.get() / 7).with("days", days.get() % 7))
    });
    let parity = match (client.gravida, client.para) {
        (None, None) => None,
        (gravida, para) => {
            let text = |count: Option<secundine_domain::quantity::Count>| {
                count.map_or("–".to_owned(), |count| count.get().to_string())
            };
            Some(format!("{}, {}", text(gravida), text(para)))
        }
    };
    let pair = |id: &str, value: Option<String>| (words.plain(id), told(source, value));
    vec![
        pair("record-mother", Some(client.name.clone()).filter(|name| !name.trim().is_empty())),
        pair("record-born", client.born.clone()),
        pair("record-gestation", gestation),
        pair("record-parity", parity),
        pair("record-blood-group", client.blood_group.clone()),
    ]
}

/// The practice and its practitioner.
pub(crate) fn practice(source: &Source) -> Pair {
    let described = source.origin.practice;
    let parts = [&described.name, &described.practitioner, &described.role].map(|part| part.trim());
    let practice = parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
    (source.words.plain("record-practice"), told(source, Some(practice).filter(|practice| !practice.is_empty())))
}

/// A value, or that it is not recorded.
pub(crate) fn told(source: &Source, value: Option<String>) -> Vec<Span> {
    match value {
        Some(value) => vec![Span::plain(value)],
        None => vec![Span::plain(source.words.plain("record-not-recorded")).small()],
    }
}

/// The durations of the third stage, the blood lost in it, and its marks.
pub(crate) fn times(source: &Source) -> Vec<Block> {
    let Source { chart, words, .. } = source;
    let mut marks = Vec::new();
    for (no, baby) in &chart.babies {
        let baby_no = *no;
        marks.push(mark(source, baby.born.as_ref(), &Fact::BabyBorn { baby: baby_no }));
        marks.push(mark(source, baby.pulsation_stopped.as_ref(), &Fact::CordPulsationStopped { baby: baby_no }));
        marks.push(mark(source, baby.clamped.as_ref(), &Fact::CordClamped { baby: baby_no }));
        marks.push(mark(source, baby.cut.as_ref(), &Fact::CordCut { baby: baby_no }));
    }
    for placenta in chart.placentas.values() {
        let babies = placenta.babies.clone();
        marks.push(mark(source, placenta.born.as_ref(), &Fact::PlacentaBorn { babies: babies.clone() }));
        marks.push(mark(source, placenta.membranes.as_ref(), &Fact::MembranesBorn { babies }));
    }
    if marks.is_empty() {
        return Vec::new();
    }
    vec![Block::Heading(words.plain("record-durations")), Block::Facts(durations(source)), Block::ShortFacts(marks)]
}

/// One mark: its time, and how long after the first birth.
pub(crate) fn mark(source: &Source, mark: Option<&Mark>, fact: &Fact) -> Pair {
    let what = source.words.say(&source.chart.say(fact));
    let Some(mark) = mark else { return (what, told(source, None)) };
    let mut value = vec![Span::plain(mark.at.clock())];
    let since = source.chart.since_birth(&mark.at).filter(|_| !matches!(fact, Fact::BabyBorn { baby: 1 }));
    value.extend(since.map(|elapsed| {
        let since = Message::new("record-since-value").with("value", elapsed.clock());
        Span::plain(format!("  {}", source.words.say(&since))).small()
    }));
    (what, value)
}

fn durations(source: &Source) -> Vec<Pair> {
    let Source { chart, origin, words, .. } = source;
    let mut pairs: Vec<Pair> = chart
        .babies
        .iter()
        .filter(|(_, baby)| baby.pulsation_stopped.is_some())
        .filter_map(|(no, _)| {
            let name = words.say(&chart.numbered(Message::new("record-cord-pulsed"), *no));
            Some((name, duration(source, chart.cord_pulsation(*no, origin.written)?)))
        })
        .collect();
    if let Some(stage) = chart.third_stage(origin.written) {
        let mut value = duration(source, stage.elapsed);
        if stage.to.is_none() {
            let running = Message::new("record-third-stage-running").with("value", stage.elapsed.clock());
            value = vec![Span::plain(words.say(&running))];
        }
        pairs.push((words.plain("record-third-stage"), value));
    }
    pairs.push((words.plain("record-blood"), blood(source)));
    pairs
}

/// A duration, with how well it is known where that is not from the running clock.
fn duration(source: &Source, elapsed: Elapsed) -> Vec<Span> {
    let mut spans = vec![Span::plain(source.words.say(&elapsed.words())).bold()];
    let doubt = match elapsed.certainty {
        Certainty::Measured => None,
        Certainty::AcrossRestart => Some("record-across-restart"),
        Certainty::AtLeast => Some("record-set-back"),
        Certainty::Typed => Some("record-typed"),
        Certainty::Compared => Some("record-compared"),
        Certainty::NotCompared => Some("record-not-compared"),
    };
    spans.extend(doubt.map(|id| Span::plain(format!("  {}", source.words.plain(id))).small()));
    spans
}

/// Notices for what was passed, then what was not, then what cannot be told.
pub(crate) fn findings(source: &Source) -> Vec<Block> {
    let words = source.words;
    let mut blocks = vec![Block::Heading(words.plain("record-findings"))];
    blocks.extend(source.findings.iter().filter_map(|finding| notice(source, finding)));
    let listed = |states: &[FindingState]| {
        let said = source.findings.iter().filter(|finding| finding.level.is_none() && states.contains(&finding.state));
        said.map(|finding| words.say(&in_a_list(&finding.message))).collect::<Vec<_>>().join("; ")
    };
    let rest = [
        ("record-within", listed(&[FindingState::Within])),
        ("record-open", listed(&[FindingState::NotRecorded, FindingState::CannotAssess])),
    ];
    let pairs: Vec<Pair> = rest
        .into_iter()
        .filter(|(_, said)| !said.is_empty())
        .map(|(id, said)| (words.plain(id), vec![Span::plain(said)]))
        .collect();
    if !pairs.is_empty() {
        blocks.push(Block::Facts(pairs));
    }
    blocks
}

/// A finding under a heading that already says how it stands.
fn in_a_list(message: &Message) -> Message {
    let id = match message.id.as_str() {
        "finding-within" => "record-finding-value",
        "finding-not-recorded" => "record-finding-name",
        other => other,
    };
    Message { id: id.to_owned(), args: message.args.clone() }
}

fn notice(source: &Source, finding: &Finding) -> Option<Block> {
    let words = source.words;
    let (shape, word) = match finding.level? {
        Level::Limit => (Shape::Octagon, "record-notice-limit"),
        Level::Caution => (Shape::Triangle, "record-notice-caution"),
        Level::Note => (Shape::Circle, "record-notice-note"),
    };
    let mut text = vec![Span::plain(words.say(&finding.message))];
    text.extend(finding.threshold.as_ref().map(|threshold| {
        let said = threshold.words.as_deref().map_or(String::new(), |said| format!("{said}."));
        sourced(source, &said, threshold)
    }));
    Some(Block::Notice(Notice { shape, word: words.plain(word), text }))
}

/// Whose threshold or standard it is, small, on a line of its own.
pub(crate) fn sourced(source: &Source, said: &str, threshold: &Threshold) -> Span {
    let message = Message::new("record-finding-source")
        .with("words", said)
        .with("source", threshold.source.as_str())
        .with("status", threshold.status.name());
    Span::plain(format!("\n{}", source.words.say(&message).trim_start())).small()
}

/// The sum in bold, with its two parts; each amount stands in the timeline.
fn blood(source: &Source) -> Vec<Span> {
    if source.chart.losses.is_empty() {
        return told(source, None);
    }
    let sum = add_up(source.chart, source.protocol);
    let total = Message::new("value-millilitres").with("value", sum.total());
    let parts = Message::new("record-blood-parts").with("measured", sum.measured).with("seen", sum.seen);
    vec![Span::plain(source.words.say(&total)).bold(), Span::plain(format!("  {}", source.words.say(&parts))).small()]
}

/// Who stands by which version; else that nobody does, and room to sign by hand. Voice notes that are in no words yet are
/// told of.
pub(crate) fn signatures(source: &Source) -> Vec<Block> {
    let Source { chart, words, .. } = source;
    let mut blocks = vec![Block::Heading(words.plain("record-signatures"))];
    let waiting = u32::try_from(chart.to_write_up().count()).unwrap_or(u32::MAX);
    if waiting > 0 {
        let line = Message::new("record-to-write-up").with("count", waiting);
        blocks.push(Block::Paragraph(vec![Span::plain(words.say(&line))]));
    }
    if chart.signatures.is_empty() {
        let lines = vec![words.plain("record-sign-name"), words.plain("record-sign-date")];
        blocks.push(Block::Paragraph(vec![Span::plain(words.plain("record-unsigned")).bold()]));
        blocks.push(Block::Signature(lines));
    }
    for signature in &chart.signatures {
        let line = Message::new("record-signed")
            .with("name", signature.what.name.as_str())
            .with("role", signature.what.role.as_str())
            .with("when", signature.mark.at.words());
        let signs = Message::new("record-signed-version").with("version", signature.what.version.as_str());
        blocks.push(Block::Paragraph(vec![
            Span::plain(words.say(&line)).bold(),
            Span::plain(format!("\n{}", words.say(&signs))).small(),
        ]));
    }
    blocks.push(Block::Facts(version(source)));
    blocks
}

/// What this record was made of: the hash of its entries, how many they are, and how many lines no longer stand as first written.
fn version(source: &Source) -> Vec<Pair> {
    let Source { chart, origin, words, .. } = source;
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    let entries: usize = chart.lines.iter().map(|line| 1 + line.amendments.len()).sum();
    let in_state = |state: State| count(chart.lines.iter().filter(|line| line.state() == state).count());
    let changed = Message::new("record-changes-value")
        .with("corrected", in_state(State::Corrected))
        .with("retracted", in_state(State::Retracted));
    let of = Message::new("record-version-of").with("count", count(entries));
    let hash = vec![Span::plain(origin.version).small(), Span::plain(format!("\n{}", words.say(&of))).small()];
    vec![(words.plain("record-version"), hash), (words.plain("record-changes"), vec![Span::plain(words.say(&changed))])]
}

/// Whether the night has so many entries that its tables are set closer.
pub(crate) fn is_long(source: &Source) -> bool {
    source.chart.lines.len() > LONG
}

pub(crate) fn table(source: &Source, columns: &[(&str, u16, Align)], rows: Vec<Vec<Cell>>) -> Table {
    let columns =
        columns.iter().map(|(id, weight, align)| Column { head: source.words.plain(id), weight: *weight, align: *align });
    Table { columns: columns.collect(), rows, dense: is_long(source) }
}
