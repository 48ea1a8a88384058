//! The practice's own list of medicines.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use secundine_domain::fact::Medicine;
use secundine_session::Session;
use secundine_session::api::{ApiError, ErrorCode, Request, Response};

#[path = "common/room.rs"]
mod room;

use room::{PASSPHRASE, founded};

fn medicine(name: &str, dose: &str) -> Medicine {
    Medicine { name: name.to_owned(), dose: dose.to_owned(), route: "IM".to_owned(), ..Medicine::default() }
}

fn list(session: &mut Session, medicines: Vec<Medicine>) -> Result<Vec<Medicine>, ApiError> {
    match session.call(Request::ListMedicines { medicines })? {
        Response::ListMedicines { medicines } => Ok(medicines),
        _ => unreachable!(),
    }
}

#[test]
fn the_list_is_kept_and_a_known_name_brings_what_is_known() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, clock) = founded(folder.path(), None);
    let Response::Medicines { medicines } = session.call(Request::Medicines).unwrap() else { unreachable!() };
    assert_eq!(medicines, []);

    let listed = list(&mut session, vec![medicine(" Ergometrine", "500 micrograms"), medicine("arnica", "")]).unwrap();
    assert_eq!(listed[0].listed.as_deref(), Some("ergometrine"));
    assert!(listed[0].uterotonic, "as it is known, whatever was said");
    assert_eq!((listed[1].listed.as_deref(), listed[1].uterotonic), (None, false));

    let refused = list(&mut session, vec![medicine(" ", "5 mL")]).unwrap_err();
    assert_eq!((refused.code, refused.message.id.as_str()), (ErrorCode::Impossible, "impossible-no-medicine"));

    clock.advance(1_000);
    let shorter = list(&mut session, vec![medicine("arnica", "")]).unwrap();
    session.call(Request::Lock).unwrap();
    session.call(Request::Unlock { passphrase: PASSPHRASE.to_owned() }).unwrap();
    let Response::Medicines { medicines } = session.call(Request::Medicines).unwrap() else { unreachable!() };
    assert_eq!(medicines, shorter, "the last list holds");
}
