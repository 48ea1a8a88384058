//! A small server of FHIR on loopback that keeps what it is sent, and can be told to go wrong.

use std::collections::{BTreeMap, VecDeque};
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex};
use std::thread;

use serde_json::{Value, json};

/// What becomes of a request.
pub enum Do {
    /// It is kept and answered.
    Take,
    /// It is answered so, and not kept.
    Say(u16, Value),
    /// It is answered by these bytes, and not kept.
    Raw(Vec<u8>),
    /// It is kept, and the connection cut.
    KeepAndCut,
    /// The connection is cut in the middle of the request.
    CutInTheMiddle,
    /// It is told that it came, and kept and answered when that is allowed.
    Hang(Sender<()>, Receiver<()>),
}

#[derive(Default)]
pub struct Held {
    /// Each resource under its type and id.
    pub resources: BTreeMap<String, Value>,
    /// The head and the body of each request.
    pub requests: Vec<(String, Value)>,
}

pub struct SmallServer {
    pub address: String,
    pub held: Arc<Mutex<Held>>,
    script: Arc<Mutex<VecDeque<Do>>>,
}

impl SmallServer {
    pub fn start() -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = format!("http://{}/fhir", listener.local_addr().unwrap());
        let (held, script) = (Arc::<Mutex<Held>>::default(), Arc::<Mutex<VecDeque<Do>>>::default());
        let (all, next) = (Arc::clone(&held), Arc::clone(&script));
        thread::spawn(move || {
            for stream in listener.incoming() {
                let what = next.lock().unwrap().pop_front().unwrap_or(Do::Take);
                let all = Arc::clone(&all);
                thread::spawn(move || serve(stream.unwrap(), what, &all));
            }
        });
        Self { address, held, script }
    }

    /// What becomes of the next requests, one after another; of all after them, that they are kept.
    pub fn next(&self, what: Do) {
        self.script.lock().unwrap().push_back(what);
    }

    /// A request that hangs: tells that it came, and is let go.
    pub fn hang(&self) -> (Receiver<()>, Sender<()>) {
        let ((came, comes), (go, goes)) = (channel(), channel());
        self.next(Do::Hang(came, goes));
        (comes, go)
    }

    pub fn requests(&self) -> usize {
        self.held.lock().unwrap().requests.len()
    }

    /// How many resources of each type.
    pub fn counts(&self) -> BTreeMap<String, usize> {
        let held = self.held.lock().unwrap();
        held.resources.values().fold(BTreeMap::new(), |mut counts, one| {
            *counts.entry(one["resourceType"].as_str().unwrap().to_owned()).or_default() += 1;
            counts
        })
    }
}

fn serve(mut stream: TcpStream, what: Do, held: &Mutex<Held>) {
    if matches!(what, Do::CutInTheMiddle) {
        let _ = stream.read(&mut [0; 512]);
        return;
    }
    let Some((head, body)) = request(&mut stream) else { return };
    held.lock().unwrap().requests.push((head.clone(), body.clone()));
    let keep = || keep(&mut held.lock().unwrap().resources, &body);
    match what {
        Do::Take if head.starts_with("GET") => answer(&mut stream, 200, &capability()),
        Do::Take => answer(&mut stream, 200, &keep()),
        Do::Say(status, value) => answer(&mut stream, status, &value),
        Do::Raw(bytes) => drop(stream.write_all(&bytes)),
        Do::KeepAndCut => drop(keep()),
        Do::Hang(came, goes) => {
            let _ = came.send(());
            let _ = goes.recv();
            answer(&mut stream, 200, &keep());
        }
        Do::CutInTheMiddle => (),
    }
}

fn request(stream: &mut TcpStream) -> Option<(String, Value)> {
    let mut bytes = Vec::new();
    let mut part = [0; 8192];
    loop {
        let end = bytes.windows(4).position(|four| four == b"\r\n\r\n");
        if let Some(end) = end {
            let head = String::from_utf8(bytes[..end].to_vec()).unwrap();
            let length = head.lines().find_map(|line| line.to_ascii_lowercase().strip_prefix("content-length: ")?.parse().ok());
            let length: usize = length.unwrap_or(0);
            if bytes.len() >= end + 4 + length {
                return Some((head, serde_json::from_slice(&bytes[end + 4..]).unwrap_or_default()));
            }
        }
        match stream.read(&mut part) {
            Ok(0) | Err(_) => return None,
            Ok(read) => bytes.extend_from_slice(&part[..read]),
        }
    }
}

pub fn http(status: u16, more: &str, body: &[u8]) -> Vec<u8> {
    let mut bytes =
        format!("HTTP/1.1 {status} X\r\n{more}Content-Length: {}\r\nConnection: close\r\n\r\n", body.len()).into_bytes();
    bytes.extend_from_slice(body);
    bytes
}

fn answer(stream: &mut TcpStream, status: u16, value: &Value) {
    let body = serde_json::to_vec(value).unwrap();
    let _ = stream.write_all(&http(status, "Content-Type: application/fhir+json\r\n", &body));
}

pub fn capability() -> Value {
    json!({ "resourceType": "CapabilityStatement", "fhirVersion": "4.0.1",
        "rest": [{ "mode": "server", "interaction": [{ "code": "transaction" }] }] })
}

/// Keeps a transaction as the standard has it: what is there by its identifier is not made again, and PUT takes its place.
fn keep(resources: &mut BTreeMap<String, Value>, transaction: &Value) -> Value {
    let entries = transaction["entry"].as_array().unwrap().iter().map(|entry| {
        let (resource, request) = (&entry["resource"], &entry["request"]);
        let kind = resource["resourceType"].as_str().unwrap();
        let url = request["url"].as_str().unwrap();
        let query = request["ifNoneExist"].as_str().or_else(|| url.split_once('?').map(|(_, query)| query));
        let place = match query {
            Some(query) => resources
                .iter()
                .find(|(_, one)| one["resourceType"] == kind && answers(one, query))
                .map(|(place, _)| place.clone()),
            None => Some(url.to_owned()),
        };
        let known = place.as_ref().is_some_and(|place| resources.contains_key(place));
        let place = place.unwrap_or_else(|| format!("{kind}/made-{}", resources.len()));
        if !known || request["method"] == "PUT" {
            resources.insert(place, resource.clone());
        }
        json!({ "response": { "status": if known { "200 OK" } else { "201 Created" } } })
    });
    let entries: Vec<Value> = entries.collect();
    json!({ "resourceType": "Bundle", "type": "transaction-response", "entry": entries })
}

fn answers(resource: &Value, query: &str) -> bool {
    let (system, value) = query.strip_prefix("identifier=").unwrap().split_once('|').unwrap();
    let is = |one: &Value| one["system"] == system && one["value"] == value;
    match &resource["identifier"] {
        Value::Array(all) => all.iter().any(is),
        one => is(one),
    }
}
