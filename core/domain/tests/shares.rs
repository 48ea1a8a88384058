//! The share of her blood that a loss is, and the age of the shock index.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use common::{MINUTE, Phone, born, jug, look, protocol, seen};
use secundine_domain::assess::{About, Finding, FindingState, assess, blood_share};
use secundine_domain::fact::{Client, Fact};
use secundine_domain::message::{Arg, Message, decimal};
use secundine_domain::protocol::Watch;
use secundine_domain::quantity::BodyWeight;

fn weighing(hectograms: i64) -> Fact {
    Fact::ClientRecorded(Client { weight: BodyWeight::new(hectograms).ok(), ..Client::default() })
}

fn text(message: &Message, name: &str) -> Arg {
    message.args.get(name).cloned().unwrap()
}

/// Source: NHS Highland, postpartum haemorrhage guideline, seen: 100 mL/kg at term; 65 kg have 6500 mL, 500 mL are 7.7 %.
#[test]
fn the_share_of_her_blood_follows_her_weight_at_booking() {
    for (hectograms, losses, volume, share) in [
        (650, vec![jug(500)], 6_500, "7.7"),
        (650, vec![jug(499)], 6_500, "7.7"),
        (650, vec![jug(649)], 6_500, "10.0"),
        (650, vec![jug(650)], 6_500, "10.0"),
        (650, vec![jug(660)], 6_500, "10.2"),
        (650, vec![jug(300), seen(200)], 6_500, "7.7"),
        (485, vec![jug(0)], 4_850, "0.0"),
        (250, vec![jug(2_500)], 2_500, "100.0"),
    ] {
        let mut phone = Phone::first();
        phone.mark(weighing(hectograms));
        losses.iter().for_each(|loss| {
            phone.mark(loss.clone());
        });
        let message = blood_share(&phone.chart(), None).unwrap();
        assert_eq!(text(&message, "volume"), Arg::from(u32::try_from(volume).unwrap()), "{hectograms}");
        let (whole, tenths) = share.split_once('.').unwrap();
        assert_eq!(text(&message, "share"), decimal(whole, tenths).into(), "{hectograms}: {losses:?}");
    }
}

#[test]
fn without_weight_or_blood_there_is_no_share() {
    let mut phone = Phone::first();
    phone.mark(jug(500));
    assert_eq!(blood_share(&phone.chart(), None), None, "no mother is recorded");
    phone.mark(Fact::ClientRecorded(Client::default()));
    assert_eq!(blood_share(&phone.chart(), None), None, "her weight is not recorded");
    let mut phone = Phone::first();
    phone.mark(weighing(650));
    assert_eq!(blood_share(&phone.chart(), None), None, "no blood is recorded");
}

fn shock_index(phone: &Phone, id: &str) -> Finding {
    let findings = assess(&phone.chart(), Some(protocol(id)), &phone.now());
    findings.into_iter().find(|found| found.about == About::Watch { watch: Watch::ShockIndex }).unwrap()
}

fn value(found: &Finding) -> Message {
    let Arg::Message(message) = text(&found.message, "value") else { unreachable!() };
    message
}

/// The interval is the protocol's own: 15 min in the first two hours (NICE), 15 and then 60 min (WHO).
#[test]
fn a_shock_index_tells_the_age_of_its_reading_and_when_that_is_stale() {
    for (id, read_at, age_ms, expected) in [
        ("nice-rcog", 5, 0, "value-read"),
        ("nice-rcog", 5, 15 * MINUTE - 1, "value-read"),
        ("nice-rcog", 5, 15 * MINUTE, "value-read"),
        ("nice-rcog", 5, 15 * MINUTE + 1, "value-stale"),
        ("nice-rcog", 119, 300 * MINUTE, "value-read"),
        ("who", 90, 60 * MINUTE, "value-read"),
        ("who", 90, 60 * MINUTE + 1, "value-stale"),
    ] {
        for systolic in [110, 60] {
            let mut phone = Phone::first();
            phone.mark(born(1));
            phone.pass(read_at * MINUTE).mark(look(90, systolic));
            let fresh = shock_index(&phone, id);
            phone.pass(age_ms);
            let found = shock_index(&phone, id);
            assert_eq!(value(&found).id, expected, "{id}, read at {read_at} min, {age_ms} ms ago");
            assert_eq!((found.state, found.level), (fresh.state, fresh.level), "age changes words only");
        }
    }
}

#[test]
fn a_shock_index_not_recorded_has_no_age() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    let found = shock_index(&phone, "nice-rcog");
    assert_eq!((found.state, found.message.id.as_str()), (FindingState::NotRecorded, "finding-not-recorded"));
}
