//! A birth is sent to a server: once, however often it is tried; and nothing in the practice waits for it.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a test may stop at the first surprise"
)]

mod desk;
#[path = "sending/once.rs"]
mod once;
#[path = "sending/others.rs"]
mod others;
#[path = "sending/refused.rs"]
mod refused;
mod small_server;
#[path = "sending/waits.rs"]
mod waits;

use std::time::{Duration, Instant};

use desk::Desk;
use secundine_domain::entry::BirthId;
use secundine_record::words::Words;
use secundine_session::SharedSession;
use secundine_session::api::{FailureView, Request, Response, SendingState, SendingView, ServerView};
use small_server::SmallServer;

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
