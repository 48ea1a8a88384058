//! A server that somebody else wrote.

use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};
use std::sync::Arc;

use secundine_record::words::Words;
use secundine_session::api::{Request, Response, SendingState, ServerView, TriedView};
use secundine_session::{Paths, Session, SharedSession};
use serde_json::{Value, json};

use crate::desk::{self, Desk};
use crate::{ask, send, sending, set, settled, until};

/// A server that somebody else wrote.
struct RealServer {
    program: Child,
    told: BufReader<ChildStdout>,
    address: String,
}

impl RealServer {
    fn start() -> Self {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("fhir");
        let mut command = Command::new(folder.join("venv/bin/python"));
        command.arg(folder.join("server.py")).stdin(Stdio::piped()).stdout(Stdio::piped());
        let program = command.spawn();
        let mut program = program.unwrap_or_else(|error| panic!("{command:?}: {error}: `make tools-test` sets it up"));
        let mut told = BufReader::new(program.stdout.take().unwrap());
        let mut address = String::new();
        told.read_line(&mut address).unwrap();
        Self { program, told, address: address.trim().to_owned() }
    }

    fn held(&mut self) -> Vec<Value> {
        self.program.stdin.as_mut().unwrap().write_all(b"\n").unwrap();
        let mut line = String::new();
        self.told.read_line(&mut line).unwrap();
        serde_json::from_str(&line).unwrap()
    }
}

impl Drop for RealServer {
    fn drop(&mut self) {
        drop(self.program.stdin.take());
        let _ = self.program.wait();
    }
}

fn kinds(held: &[Value]) -> Vec<&str> {
    let mut kinds: Vec<&str> = held.iter().map(|one| one["resourceType"].as_str().unwrap()).collect();
    kinds.sort_unstable();
    kinds
}

#[test]
fn a_server_of_others_has_it_once_though_the_phone_died_before_it_knew() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let mut server = RealServer::start();
    set(&desk.session, &server.address, None);
    desk.call(Request::TryServer).unwrap();
    let (said, well) = until(|| match desk.call(Request::Server).unwrap() {
        Response::Server(ServerView { tried: Some(TriedView::Told { said, well }), .. }) => Some((said, well)),
        _ => None,
    });
    assert!(well, "{}", Words::english().say(&said));
    ask(&desk.session, desk.birth);
    let entries = desk.entries(desk.birth);
    // The disk as it is when the phone dies before it hears that the server took it.
    let died = tempfile::tempdir().unwrap();
    let copied = Command::new("cp").arg("-a").arg(folder.path().join("data")).arg(died.path()).status().unwrap();
    assert!(copied.success());
    send(&desk.session, None);
    let taken = settled(&desk.session, desk.birth).taken.unwrap();
    let once = server.held();
    assert!(once.len() > 15, "{:?}", kinds(&once));

    // The same facts are read back.
    let entry: Vec<Value> = once.iter().map(|one| json!({ "resource": one })).collect();
    let bundle = json!({ "resourceType": "Bundle", "type": "document", "entry": entry });
    let back = secundine_record::fhir::read(&serde_json::to_vec(&bundle).unwrap()).unwrap();
    let mut back: Vec<_> = back.into_iter().map(|entry| (entry.id, entry.fact)).collect();
    let mut sent = entries;
    back.sort();
    sent.sort();
    assert_eq!(back, sent);

    let paths = Paths { data: died.path().join("data"), records: died.path().join("records") };
    let anew = SharedSession::new(Session::new(paths, Arc::new(desk.clock.clone())));
    anew.call(Request::Unlock { passphrase: desk::PASSPHRASE.to_owned() }).unwrap();
    assert_eq!(sending(&anew, desk.birth).state, SendingState::Waiting { failure: None });
    send(&anew, None);
    assert_eq!(settled(&anew, desk.birth).taken.unwrap().version, taken.version);
    assert_eq!(kinds(&server.held()), kinds(&once), "sent again, nothing is doubled");
}
