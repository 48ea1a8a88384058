//! What a server answers when it does not take a birth, and what comes of it.

use std::net::TcpListener;
use std::process::{Command, Stdio};
use std::time::Duration;

use secundine_record::words::Words;
use secundine_session::api::{FailureView, Request, Response, ServerView, TriedView};
use serde_json::{Value, json};

use crate::desk::Desk;
use crate::small_server::{Do, SmallServer, http};
use crate::{MINUTE, ask, desk_and_server, failed, said, send, set, settled, until};

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
