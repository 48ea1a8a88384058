//! What was taken is there once, and stands in the chart.

use secundine_domain::fact::{Fact, SharedHow, SharedTo, SharedWhat};
use secundine_record::words::Words;
use secundine_session::api::SendingState;

use crate::desk::{self, note};
use crate::small_server::Do;
use crate::{MINUTE, ask, desk_and_server, failed, said, send, sending, settled, until};

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
