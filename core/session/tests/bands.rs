//! Births that are open at once are told apart by a band, which is the same on every screen of a birth.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use secundine_domain::entry::BirthId;
use secundine_session::Session;
use secundine_session::api::{BirthLine, Request, Response};

#[path = "common/room.rs"]
mod room;

use room::{PASSPHRASE, born, founded};

fn band(session: &mut Session, birth: BirthId) -> u8 {
    let Response::Birth(view) = session.call(Request::Birth { birth }).unwrap() else { unreachable!() };
    view.band
}

fn list(session: &mut Session) -> Vec<BirthLine> {
    let Response::Births { births, .. } = session.call(Request::Births { skip: 0, take: 20 }).unwrap() else { unreachable!() };
    births
}

#[test]
fn births_one_after_the_other_never_share_a_band() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, _) = founded(folder.path(), None);

    let births: Vec<BirthId> = (0..14).map(|_| born(&mut session)).collect();
    let bands: Vec<u8> = births.iter().map(|birth| band(&mut session, *birth)).collect();
    for six in bands.windows(6) {
        assert!(
            six.iter().all(|one| six.iter().filter(|other| one == *other).count() == 1),
            "two of six births share a band: {six:?}"
        );
    }
    for line in list(&mut session) {
        assert_eq!(line.band, band(&mut session, line.birth), "the list and the birth show one band");
    }

    session.call(Request::Lock).unwrap();
    session.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    let again: Vec<u8> = births.iter().map(|birth| band(&mut session, *birth)).collect();
    assert_eq!(again, bands, "a band stays when the practice is opened anew");
}
