//! What an answer means: taken, or what was wrong, entry by entry.

use secundine_domain::message::Message;
use serde_json::Value;

use super::{Answer, NoAnswer};
use crate::api::ApiError;
use crate::views::counted;

/// Faults that are told one by one; what is beyond is counted.
const MOST_TOLD: usize = 20;
/// Letters of what a server says that are told.
const MOST_LETTERS: usize = 300;

/// Why a server does not have it, as far as is known.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Failure {
    pub said: Message,
    /// What it found, in the order of the entries where it names them.
    pub entries: Vec<Message>,
    /// How many more it found.
    pub more: usize,
    pub again: Again,
}

/// When it is tried again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Again {
    /// As soon as somebody looks: there was no connection.
    AtOnce,
    /// After a pause: the server cannot at present, or did not answer.
    Later,
    /// When a person asks: it would be refused again.
    ByHand,
}

impl Failure {
    fn plain(said: Message, again: Again) -> Self {
        Self { said, entries: Vec::new(), more: 0, again }
    }
}

impl From<NoAnswer> for Failure {
    fn from(none: NoAnswer) -> Self {
        let (id, again) = match none {
            NoAnswer::NoConnection => ("sending-no-connection", Again::AtOnce),
            NoAnswer::NotTrusted => ("sending-not-trusted", Again::ByHand),
            NoAnswer::Broken => ("sending-broken", Again::Later),
            NoAnswer::TooLong => ("sending-answer-long", Again::ByHand),
        };
        Self::plain(Message::new(id), again)
    }
}

/// A fault of our own: tried again later.
impl From<ApiError> for Failure {
    fn from(error: ApiError) -> Self {
        Self::plain(error.message, Again::Later)
    }
}

/// Whether all of a transaction was kept. A status of 2xx alone does not say so: each entry has to be told as kept.
pub(crate) fn taken(answer: &Answer, letter: &[u8]) -> Result<(), Failure> {
    let sent: Value = serde_json::from_slice(letter).unwrap_or_default();
    let said: Value = serde_json::from_slice(&answer.body).unwrap_or_default();
    let faults = faults(&said, list(&sent, "entry"));
    let failure = |said: Message, again: Again| {
        let more = faults.len().saturating_sub(MOST_TOLD);
        Err(Failure { said, entries: faults.iter().take(MOST_TOLD).cloned().collect(), more, again })
    };
    match answer.status {
        200..=299 if said.get("type").and_then(Value::as_str) != Some("transaction-response") => {
            failure(Message::new("sending-no-fhir").with("status", u32::from(answer.status)), Again::ByHand)
        }
        200..=299 => {
            let (of, kept) = (list(&sent, "entry").len(), list(&said, "entry").iter().filter(|entry| is_kept(entry)).count());
            match kept == of && list(&said, "entry").len() == of {
                true => Ok(()),
                false => {
                    failure(Message::new("sending-not-all").with("kept", counted(kept)).with("of", counted(of)), Again::ByHand)
                }
            }
        }
        status => failure(status_words(status), if is_passing(status) { Again::Later } else { Again::ByHand }),
    }
}

/// What a server tells of itself: that it takes what we send, or why it would not.
pub(crate) fn capable(answer: &Answer) -> Result<Message, Message> {
    if !(200..=299).contains(&answer.status) {
        return Err(status_words(answer.status));
    }
    let said: Value = serde_json::from_slice(&answer.body).unwrap_or_default();
    if text(&said, "/resourceType") != Some("CapabilityStatement") {
        return Err(Message::new("sending-no-fhir").with("status", u32::from(answer.status)));
    }
    let version = clean(text(&said, "/fhirVersion").unwrap_or("?"));
    if !version.starts_with("4.0") {
        return Err(Message::new("sending-other-version").with("version", version));
    }
    let transactions = list(&said, "rest").iter().flat_map(|rest| list(rest, "interaction"));
    match transactions.filter_map(|one| text(one, "/code")).any(|code| code == "transaction") {
        true => Ok(Message::new("sending-server-well").with("version", version)),
        false => Err(Message::new("sending-no-transactions")),
    }
}

fn is_kept(entry: &Value) -> bool {
    text(entry, "/response/status").is_some_and(|status| status.starts_with("200") || status.starts_with("201"))
}

/// Whether the same may be taken another time.
fn is_passing(status: u16) -> bool {
    matches!(status, 408 | 425 | 429 | 500..)
}

fn status_words(status: u16) -> Message {
    let id = match status {
        300..=399 => "sending-elsewhere",
        401 | 403 => "sending-not-let-in",
        404 | 405 | 410 => "sending-no-place",
        413 => "sending-too-large",
        _ if is_passing(status) => "sending-server-busy",
        _ => "sending-refused",
    };
    Message::new(id).with("status", u32::from(status))
}

/// What a server found: as an outcome of the whole, or as the outcome of each entry.
fn faults(said: &Value, sent: &[Value]) -> Vec<Message> {
    let mut found: Vec<(usize, Message)> =
        issues(said).map(|issue| (place(issue), issue)).map(|(at, issue)| told(at, issue, sent)).collect();
    for (at, entry) in list(said, "entry").iter().enumerate().filter(|(_, entry)| !is_kept(entry)) {
        let outcome = entry.pointer("/response/outcome").unwrap_or(&Value::Null);
        let before = found.len();
        found.extend(issues(outcome).map(|issue| told(Some(at), issue, sent)));
        if found.len() == before {
            let code = clean(text(entry, "/response/status").unwrap_or("?"));
            found.push(told(Some(at), &serde_json::json!({ "code": code }), sent));
        }
    }
    found.sort_by_key(|(at, _)| *at);
    found.into_iter().map(|(_, message)| message).collect()
}

fn issues(outcome: &Value) -> impl Iterator<Item = &Value> {
    list(outcome, "issue").iter().filter(|issue| matches!(text(issue, "/severity"), Some("error" | "fatal") | None))
}

/// Which entry an issue is about: `Bundle.entry[3].resource.status`, or `/f:Bundle/f:entry[4]`, which counts from 1.
fn place(issue: &Value) -> Option<usize> {
    let path = text(issue, "/expression/0").or_else(|| text(issue, "/location/0"))?;
    let (before, rest) = path.split_once("entry[")?;
    let number: usize = rest.split_once(']')?.0.parse().ok()?;
    if before.ends_with("f:") { number.checked_sub(1) } else { Some(number) }
}

/// An issue in words, with the place that it is sorted by: those of no entry come first.
fn told(at: Option<usize>, issue: &Value, sent: &[Value]) -> (usize, Message) {
    let words = ["/details/text", "/diagnostics", "/details/coding/0/display"].iter().find_map(|path| text(issue, path));
    let said = words.map(clean).filter(|said| !said.is_empty());
    let said = said.map_or_else(|| Message::new("sending-no-words"), |said| Message::new("value-text").with("value", said));
    let code = clean(text(issue, "/code").unwrap_or("?"));
    let entry = at.and_then(|at| Some((at, sent.get(at)?.get("resource")?)));
    match entry {
        Some((at, resource)) => {
            let message = Message::new("sending-entry").with("n", counted(at + 1)).with("what", name(resource));
            (
                at + 1,
                message.with("kind", clean(text(resource, "/resourceType").unwrap_or("?"))).with("said", said).with("code", code),
            )
        }
        None => (0, Message::new("sending-issue").with("said", said).with("code", code)),
    }
}

/// What a resource is about, in the words that it was sent with.
fn name(resource: &Value) -> String {
    let paths =
        ["/code/text", "/medicationCodeableConcept/text", "/type/text", "/title", "/description", "/name/0/text", "/name"];
    clean(paths.iter().find_map(|path| text(resource, path)).or(text(resource, "/resourceType")).unwrap_or("?"))
}

/// Words of others, cut and without signs that steer.
fn clean(words: &str) -> String {
    let words: String = words
        .split(|letter: char| letter.is_control() || letter.is_whitespace())
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ");
    match words.char_indices().nth(MOST_LETTERS) {
        Some((at, _)) => format!("{}…", words.get(..at).unwrap_or_default()),
        None => words,
    }
}

fn text<'a>(value: &'a Value, path: &str) -> Option<&'a str> {
    value.pointer(path)?.as_str()
}

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value.get(name).and_then(Value::as_array).map_or(&[], Vec::as_slice)
}
