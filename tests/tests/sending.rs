//! A birth is sent to a server: once, however often it is tried; and nothing in the practice waits for it.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a test may stop at the first surprise"
)]

mod desk;
mod small_server;

use std::io::{BufRead, BufReader, Write};
use std::net::TcpListener;
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};
use std::sync::Arc;
use std::time::{Duration, Instant};

use desk::{Desk, Refusal, note};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Fact, SharedHow, SharedTo, SharedWhat};
use secundine_record::words::Words;
use secundine_session::api::{
    FailureView, RehearsalMode, Request, Response, ScenarioName, SendingState, SendingView, ServerView, TriedView,
};
use secundine_session::sending::{Answer, Courier, Errand, NoAnswer};
use secundine_session::{Paths, Session, SharedSession};
use serde_json::{Value, json};
use small_server::{Do, SmallServer, http};

const MINUTE: i64 = 60_000;

fn set(session: &SharedSession, address: &str, token: Option<&str>) -> ServerView {
    let set = Request::SetServer { address: address.to_owned(), token: token.map(str::to_owned) };
    match session.call(set).unwrap() {
        Response::SetServer(view) => view,
        other => unreachable!("{other:?}"),
    }
}

fn ask(session: &SharedSession, birth: BirthId) -> SendingView {
    match session.call(Request::AskSending { birth }).unwrap() {
        Response::AskSending(view) => view,
        other => unreachable!("{other:?}"),
    }
}

fn sending(session: &SharedSession, birth: BirthId) -> SendingView {
    match session.call(Request::Sending { birth }).unwrap() {
        Response::Sending(view) => view,
        other => unreachable!("{other:?}"),
    }
}

fn send(session: &SharedSession, birth: Option<BirthId>) -> u32 {
    match session.call(Request::SendWaiting { birth, language: Some("en".to_owned()) }).unwrap() {
        Response::SendWaiting { waiting } => waiting,
        other => unreachable!("{other:?}"),
    }
}

/// Looks until it is so.
fn until<T>(mut look: impl FnMut() -> Option<T>) -> T {
    let begun = Instant::now();
    loop {
        if let Some(found) = look() {
            return found;
        }
        assert!(begun.elapsed() < Duration::from_secs(60), "it does not come to that");
        std::thread::sleep(Duration::from_millis(10));
    }
}

fn settled(session: &SharedSession, birth: BirthId) -> SendingView {
    let begun = Instant::now();
    loop {
        let view = sending(session, birth);
        if view.state == SendingState::NotAsked {
            return view;
        }
        assert!(begun.elapsed() < Duration::from_secs(60), "{view:?}");
        std::thread::sleep(Duration::from_millis(10));
    }
}

fn failed(session: &SharedSession, birth: BirthId) -> FailureView {
    until(|| match sending(session, birth).state {
        SendingState::Waiting { failure } => failure,
        _ => None,
    })
}

fn said(failure: &FailureView) -> String {
    desk::in_catalogue(&failure.said);
    Words::english().say(&failure.said)
}

fn desk_and_server() -> (tempfile::TempDir, Desk, SmallServer) {
    let folder = tempfile::tempdir().unwrap();
    let (desk, server) = (Desk::new(folder.path()), SmallServer::start());
    set(&desk.session, &server.address, Some("s3cr3t-token"));
    (folder, desk, server)
}

#[test]
fn it_is_taken_and_stands_in_the_chart_with_its_version() {
    let (_folder, desk, server) = desk_and_server();
    let birth = desk.birth;
    let version = desk.view(birth).version;
    assert_eq!(sending(&desk.session, birth).state, SendingState::NotAsked);
    assert_eq!(send(&desk.session, Some(birth)), 0, "nobody asked for it");
    assert_eq!(ask(&desk.session, birth).state, SendingState::Waiting { failure: None });
    assert_eq!(desk.view(birth).version, version, "to ask changes nothing in the birth");
    assert_eq!(send(&desk.session, None), 1);
    let taken = settled(&desk.session, birth).taken.unwrap();
    assert_eq!((taken.version.as_str(), taken.server.as_deref()), (version.as_str(), Some(server.address.as_str())));
    assert!(taken.current);
    {
        let held = server.held.lock().unwrap();
        let (head, body) = &held.requests[0];
        assert!(head.starts_with("POST /fhir HTTP/1.1"), "{head}");
        let head = head.to_ascii_lowercase();
        assert!(head.contains("authorization: bearer s3cr3t-token"), "{head}");
        assert!(head.contains("content-type: application/fhir+json"), "{head}");
        let entries = body["entry"].as_array().unwrap();
        assert_eq!((body["type"].as_str(), held.resources.len()), (Some("transaction"), entries.len()));
        let composition = entries.iter().find(|one| one["resource"]["resourceType"] == "Composition").unwrap();
        assert_eq!(composition["resource"]["status"], "final", "signed, and nothing since");
        assert!(!body.to_string().contains("s3cr3t"), "the token is in no record");
    }
    let line = desk.view(birth).timeline.into_iter().find(|line| matches!(line.fact, Fact::Shared(_))).unwrap();
    let Fact::Shared(shared) = &line.fact else { unreachable!() };
    assert_eq!((shared.what, shared.to, shared.how), (SharedWhat::Fhir, SharedTo::Server, SharedHow::Network));
    desk::in_catalogue(&line.message);
    assert_eq!(
        Words::english().say(&line.message),
        format!("Given to server, {}: record for another program (over the network), version {}", server.address, &version[..16])
    );
    assert_eq!(server.requests(), 1);
    assert_eq!(send(&desk.session, None), 0);

    // What is written since is told, and can be sent too.
    desk.record(birth, note("one thing more")).unwrap();
    assert!(!sending(&desk.session, birth).taken.unwrap().current);
    let before = server.counts();
    ask(&desk.session, birth);
    send(&desk.session, None);
    let again = settled(&desk.session, birth).taken.unwrap();
    assert!(again.current && again.version != taken.version);
    let mut expected = before;
    // The note, and that the first version was given to the server.
    *expected.get_mut("Observation").unwrap() += 2;
    *expected.get_mut("Provenance").unwrap() += 2;
    assert_eq!(server.counts(), expected);
}

#[test]
fn a_server_that_cannot_at_present_is_asked_again_after_a_pause() {
    let (_folder, desk, server) = desk_and_server();
    let busy = json!({ "resourceType": "OperationOutcome", "issue": [{ "severity": "error", "code": "transient", "diagnostics": "later" }] });
    server.next(Do::Say(500, busy));
    ask(&desk.session, desk.birth);
    send(&desk.session, None);
    let failure = failed(&desk.session, desk.birth);
    assert_eq!(said(&failure), "The server cannot take it at present (status 500).");
    assert!(failure.again);
    assert_eq!(Words::english().say(&failure.entries[0]), "later (transient)");
    desk.clock.advance(4 * MINUTE);
    assert_eq!(send(&desk.session, None), 1);
    std::thread::sleep(Duration::from_millis(100));
    assert_eq!(server.requests(), 1, "not before its time");
    desk.clock.advance(MINUTE);
    send(&desk.session, None);
    settled(&desk.session, desk.birth);
    assert_eq!(server.requests(), 2);
}

#[test]
fn a_connection_that_breaks_doubles_nothing() {
    let (_folder, desk, server) = desk_and_server();
    server.next(Do::CutInTheMiddle);
    server.next(Do::KeepAndCut);
    ask(&desk.session, desk.birth);
    send(&desk.session, None);
    let failure = failed(&desk.session, desk.birth);
    assert!(failure.again && said(&failure).contains("sending again doubles nothing"), "{}", said(&failure));
    assert_eq!(server.counts().len(), 0);
    desk.clock.advance(5 * MINUTE);
    send(&desk.session, None);
    until(|| (server.counts().len() > 5).then_some(()));
    let later = until(|| Some(failed(&desk.session, desk.birth)).filter(|later| later.clock != failure.clock));
    assert!(later.again);
    let kept = server.counts();
    desk.clock.advance(10 * MINUTE);
    send(&desk.session, None);
    settled(&desk.session, desk.birth);
    assert_eq!((server.requests(), server.counts()), (2, kept), "what was kept before is found again");
}

#[test]
fn what_a_server_refuses_is_told_entry_by_entry_and_not_sent_again_by_itself() {
    let (_folder, desk, server) = desk_and_server();
    let refused = json!({ "resourceType": "OperationOutcome", "issue": [
        { "severity": "warning", "code": "informational", "diagnostics": "be glad" },
        { "severity": "error", "code": "value", "diagnostics": "no such\u{1b} unit", "expression": ["Bundle.entry[1].resource.name"] },
        { "severity": "error", "code": "required", "details": { "text": "status is missing" }, "location": ["/f:Bundle/f:entry[1]/f:resource"] },
        { "severity": "fatal", "code": "invariant" } ] });
    server.next(Do::Say(422, refused));
    ask(&desk.session, desk.birth);
    send(&desk.session, None);
    let failure = failed(&desk.session, desk.birth);
    assert_eq!(said(&failure), "The server did not take it (status 422).");
    assert!(!failure.again);
    let told: Vec<String> = failure.entries.iter().map(|entry| Words::english().say(entry)).collect();
    let sent = server.held.lock().unwrap().requests[0].1.clone();
    let second = sent["entry"][1]["resource"]["resourceType"].as_str().unwrap();
    assert_eq!(told[0], "no words given (invariant)");
    assert_eq!(told[1], "Entry 1, Third stage and examination of the placenta (Composition): status is missing (required)");
    assert!(told[2].starts_with("Entry 2, ") && told[2].ends_with(&format!("({second}): no such unit (value)")), "{}", told[2]);
    assert_eq!(told.len(), 3, "no warning");
    desk.clock.advance(24 * 60 * MINUTE);
    assert_eq!(send(&desk.session, None), 1);
    std::thread::sleep(Duration::from_millis(100));
    assert_eq!(server.requests(), 1);
    send(&desk.session, Some(desk.birth));
    settled(&desk.session, desk.birth);
    assert_eq!(server.requests(), 2);
}

#[test]
fn only_a_server_that_tells_of_each_entry_has_taken_it() {
    let (_folder, desk, server) = desk_and_server();
    let birth = desk.birth;
    ask(&desk.session, birth);
    let half = json!({ "resourceType": "Bundle", "type": "transaction-response", "entry": [
        { "response": { "status": "201 Created" } },
        { "response": { "status": "422", "outcome": { "resourceType": "OperationOutcome",
            "issue": [{ "severity": "error", "code": "invalid", "diagnostics": "a bad name" }] } } },
        { "response": { "status": "412 Precondition Failed" } } ] });
    server.next(Do::Say(200, half));
    server.next(Do::Raw(http(200, "Content-Type: text/html\r\n", b"<html>Sign in to this network</html>")));
    server.next(Do::Say(401, Value::Null));
    server.next(Do::Raw(http(200, "", &vec![b' '; 9 << 20])));
    server.next(Do::Raw(b"HTTP/1.1 200 OK\r\nContent-Length: 5000\r\n\r\n{\"resourceType\"".to_vec()));
    let mut told = Vec::new();
    for _ in 0..5 {
        desk.clock.advance(1_000);
        let before = told.last().map(|(clock, _): &(String, FailureView)| clock.clone());
        send(&desk.session, Some(birth));
        let failure = until(|| Some(failed(&desk.session, birth)).filter(|failure| Some(&failure.clock) != before.as_ref()));
        told.push((failure.clock.clone(), failure));
    }
    let said: Vec<String> = told.iter().map(|(_, failure)| said(failure)).collect();
    assert!(said[0].starts_with("The server told of 1 of "), "{}", said[0]);
    let entries: Vec<String> = told[0].1.entries.iter().map(|entry| Words::english().say(entry)).collect();
    assert!(entries[0].ends_with(": a bad name (invalid)") && entries[1].ends_with("(412 Precondition Failed)"), "{entries:?}");
    assert_eq!(said[1], "What answers at this address does not answer in FHIR (status 200).");
    assert_eq!(said[2], "The server does not let this practice in (status 401). Check the token.");
    assert!(said[3].starts_with("The answer was too long"), "{}", said[3]);
    assert!(said[4].starts_with("The connection broke"), "{}", said[4]);
    let again: Vec<bool> = told.iter().map(|(_, failure)| failure.again).collect();
    assert_eq!(again, [false, false, false, false, true]);
    send(&desk.session, Some(birth));
    settled(&desk.session, birth);
}

#[test]
fn a_mark_never_waits_for_a_server() {
    let (_folder, desk, server) = desk_and_server();
    let birth = desk.birth;
    let (came, go) = server.hang();
    ask(&desk.session, birth);
    send(&desk.session, None);
    came.recv_timeout(Duration::from_secs(30)).unwrap();
    let SendingState::Going { sent, of } = sending(&desk.session, birth).state else { panic!("it is on its way") };
    assert!(sent == of && of > 10_000, "{sent} of {of} bytes are with the server");
    let begun = Instant::now();
    for fact in [Fact::CordCut { baby: 1 }, note("in the meantime")] {
        desk.record(birth, fact).unwrap();
    }
    // It waits a minute for the server.
    assert!(begun.elapsed() < Duration::from_secs(20), "{:?}", begun.elapsed());
    assert!(server.held.lock().unwrap().resources.is_empty(), "the server has not answered yet");
    send(&desk.session, None);
    assert!(matches!(sending(&desk.session, birth).state, SendingState::Going { .. }));
    go.send(()).unwrap();
    let taken = settled(&desk.session, birth).taken.unwrap();
    assert!(!taken.current, "what was written in the meantime is not there");
    assert_eq!(server.requests(), 1, "asked twice, sent once");
}

#[test]
fn a_practice_that_is_locked_meanwhile_waits_still() {
    let (_folder, desk, server) = desk_and_server();
    let birth = desk.birth;
    let (came, go) = server.hang();
    ask(&desk.session, birth);
    send(&desk.session, None);
    came.recv_timeout(Duration::from_secs(30)).unwrap();
    desk.call(Request::Lock).unwrap();
    go.send(()).unwrap();
    until(|| (!server.counts().is_empty()).then_some(()));
    let kept = server.counts();
    std::thread::sleep(Duration::from_millis(200));
    desk.unlock().unwrap();
    let view = sending(&desk.session, birth);
    assert_eq!((view.state, view.taken), (SendingState::Waiting { failure: None }, None));
    send(&desk.session, None);
    settled(&desk.session, birth);
    assert_eq!((server.requests(), server.counts()), (2, kept));
}

#[test]
fn what_waits_outlasts_a_restart_and_goes_when_there_is_a_connection() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let birth = desk.birth;
    // A place where nobody listens.
    let place = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
    set(&desk.session, &format!("http://{place}"), None);
    ask(&desk.session, birth);
    send(&desk.session, None);
    let failure = failed(&desk.session, birth);
    assert_eq!((said(&failure).as_str(), failure.again), ("No connection to the server.", true));
    let other = desk.started_anew();
    desk.call(Request::Lock).unwrap();
    other.call(Request::Unlock { passphrase: desk::PASSPHRASE.to_owned() }).unwrap();
    assert_eq!(sending(&other, birth).state, SendingState::Waiting { failure: None });
    let server = SmallServer::start();
    let view = set(&other, &server.address, None);
    assert_eq!((view.address, view.token), (Some(server.address.clone()), false));
    send(&other, None);
    settled(&other, birth);

    // Taken back, it waits no more; and without a server nothing is asked for.
    ask(&other, birth);
    let back = other.call(Request::TakeBackSending { birth }).unwrap();
    assert!(matches!(back, Response::TakeBackSending(SendingView { state: SendingState::NotAsked, .. })), "{back:?}");
    assert_eq!(send(&other, None), 0);
    set(&other, "", None);
    let refused = Refusal::from(other.call(Request::AskSending { birth }).unwrap_err());
    assert!(refused.read().starts_with("not_found error-no-server"), "{}", refused.read());
    assert_eq!(server.requests(), 1);
}

#[test]
fn no_token_and_no_record_follow_a_redirection() {
    let (_folder, desk, server) = desk_and_server();
    let other = SmallServer::start();
    for status in [302, 307, 308] {
        server.next(Do::Raw(http(status, &format!("Location: {}\r\n", other.address), b"")));
        desk.clock.advance(1_000);
        ask(&desk.session, desk.birth);
        send(&desk.session, Some(desk.birth));
        let failure =
            until(|| Some(failed(&desk.session, desk.birth)).filter(|failure| said(failure).contains(&status.to_string())));
        assert!(said(&failure).starts_with("The server points to another address"), "{}", said(&failure));
    }
    assert_eq!((server.requests(), other.requests()), (3, 0));
}

#[test]
fn a_certificate_that_nobody_vouches_for_gets_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    let (key, certificate) = (folder.path().join("key.pem"), folder.path().join("certificate.pem"));
    let made = Command::new("openssl")
        .args([
            "req",
            "-x509",
            "-newkey",
            "ec",
            "-pkeyopt",
            "ec_paramgen_curve:prime256v1",
            "-nodes",
            "-days",
            "2",
            "-subj",
            "/CN=localhost",
        ])
        .args(["-addext", "subjectAltName=DNS:localhost"])
        .arg("-keyout")
        .arg(&key)
        .arg("-out")
        .arg(&certificate)
        .output()
        .unwrap();
    assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
    let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
    let mut server = Command::new("openssl")
        .args(["s_server", "-quiet", "-naccept", "1", "-accept", &port.to_string()])
        .arg("-key")
        .arg(&key)
        .arg("-cert")
        .arg(&certificate)
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    set(&desk.session, &format!("https://localhost:{port}/fhir"), Some("s3cr3t"));
    ask(&desk.session, desk.birth);
    let failure = until(|| {
        send(&desk.session, Some(desk.birth));
        // Until it listens, there is no connection.
        Some(failed(&desk.session, desk.birth)).filter(|failure| said(failure) != "No connection to the server.")
    });
    let _ = server.kill();
    let heard = server.wait_with_output().unwrap().stdout;
    assert_eq!(said(&failure), "No connection that can be trusted: the certificate does not fit. Nothing was sent.");
    assert!(!failure.again && heard.is_empty(), "{heard:?}");
}

#[test]
fn a_server_is_asked_what_it_is() {
    let (_folder, desk, server) = desk_and_server();
    let r5 = json!({ "resourceType": "CapabilityStatement", "fhirVersion": "5.0.0" });
    let silent = json!({ "resourceType": "CapabilityStatement", "fhirVersion": "4.0.1" });
    server.next(Do::Take);
    server.next(Do::Say(200, r5));
    server.next(Do::Say(200, silent));
    server.next(Do::Say(404, Value::Null));
    let told = || {
        desk.call(Request::TryServer).unwrap();
        until(|| match desk.call(Request::Server).unwrap() {
            Response::Server(ServerView { tried: Some(TriedView::Told { said, well }), token: true, .. }) => {
                Some((Words::english().say(&said), well))
            }
            _ => None,
        })
    };
    assert_eq!(told(), ("The server answers. It speaks FHIR 4.0.1 and takes transactions.".to_owned(), true));
    assert_eq!(told(), ("The server speaks FHIR 5.0.0. Records are sent in FHIR R4 (4.0).".to_owned(), false));
    assert_eq!(told(), ("The server answers, but does not say that it takes transactions.".to_owned(), false));
    assert_eq!(told(), ("Nothing is kept at this address (status 404). Check the address.".to_owned(), false));
    assert!(server.held.lock().unwrap().requests[0].0.starts_with("GET /fhir/metadata HTTP/1.1"));
}

/// Breaks down on its way.
struct Faint;

impl Courier for Faint {
    fn carry(&self, _: &Errand) -> Result<Answer, NoAnswer> {
        panic!("a fault of the shell's own way to the network")
    }
}

#[test]
fn a_courier_that_breaks_down_takes_nothing_with_it() {
    let folder = tempfile::tempdir().unwrap();
    let desk = Desk::new(folder.path());
    desk.call(Request::Lock).unwrap();
    let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
    let session = SharedSession::with_courier(Session::new(paths, Arc::new(desk.clock.clone())), Arc::new(Faint));
    session.call(Request::Unlock { passphrase: desk::PASSPHRASE.to_owned() }).unwrap();
    set(&session, "https://fhir.example", None);
    ask(&session, desk.birth);
    send(&session, None);
    assert!(failed(&session, desk.birth).again);
    session.call(Request::Record { birth: desk.birth, fact: note("still here"), at: desk::now() }).unwrap();
}

#[test]
fn a_rehearsal_sends_nothing() {
    let (_folder, desk, server) = desk_and_server();
    ask(&desk.session, desk.birth);
    desk.call(Request::Rehearse { scenario: ScenarioName::QuietNight, speed: 1, mode: RehearsalMode::Watch }).unwrap();
    for request in [Request::SendWaiting { birth: None, language: None }, Request::AskSending { birth: desk.birth }] {
        assert_eq!(Refusal::from(desk.call(request).unwrap_err()).code, "rehearsal");
    }
    desk.call(Request::EndRehearsal).unwrap();
    assert_eq!(server.requests(), 0);
}

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
