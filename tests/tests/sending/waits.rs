//! Nothing in the practice waits for a server, and what is to be sent waits for everything.

use std::net::TcpListener;
use std::sync::Arc;
use std::time::{Duration, Instant};

use secundine_domain::fact::Fact;
use secundine_session::api::{RehearsalMode, Request, Response, ScenarioName, SendingState, SendingView};
use secundine_session::sending::{Answer, Courier, Errand, NoAnswer};
use secundine_session::{Paths, Session, SharedSession};

use crate::desk::{self, Desk, Refusal, note};
use crate::small_server::SmallServer;
use crate::{ask, desk_and_server, failed, said, send, sending, set, settled, until};

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
