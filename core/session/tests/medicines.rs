//! The practice's own list of medicines.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use std::sync::Arc;

use secundine_domain::fact::{Medicine, Practice};
use secundine_domain::time::Stamp;
use secundine_session::api::{ApiError, ErrorCode, Request, Response};
use secundine_session::clock::HandClock;
use secundine_session::{Paths, Session};

const PASSPHRASE: &str = "seven quiet herons";

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
    let clock = HandClock::at(Stamp { wall_ms: 1_795_570_800_000, offset_min: 60, zone: None, boot: None });
    let paths = Paths { data: folder.path().join("data"), records: folder.path().join("records") };
    let mut session = Session::new(paths, Arc::new(clock.clone()));
    let practice =
        Practice { name: "Heron House".to_owned(), practitioner: "Ida".to_owned(), role: "midwife".to_owned(), protocol: None };
    session.call(Request::CreatePractice { practice, passphrase: PASSPHRASE.to_owned() }).unwrap();
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
