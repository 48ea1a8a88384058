//! Fifty words of people are planted; while they are hidden, no answer holds one of them.

use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Client, Fact, Loss, Medicine, Shared, SharedHow, SharedTo, SharedWhat, VoiceNote, WrittenUp};
use secundine_domain::file::FileId;
use secundine_domain::protocol::{ApgarAgain, ApgarTimes, Milli, OWN, OwnChange, Schedule, Setting, State, Step};
use secundine_session::SharedSession;
use secundine_session::api::{At, Outgoing, Request, Response, Signer};

use super::{Desk, PASSPHRASE};

/// `canary-07-heron`: one of each number, so that it is known which one flew.
struct Canaries(u32);

impl Canaries {
    fn next(&mut self) -> String {
        self.0 += 1;
        format!("canary-{:02}-heron", self.0)
    }
}

/// Of an earlier form the date of birth is shown nowhere.
fn client(canaries: &mut Canaries, holds: bool) -> Client {
    Client {
        name: canaries.next(),
        born: holds.then(|| canaries.next()),
        blood_group: Some(canaries.next()),
        allergies: Some(canaries.next()),
        ..Client::default()
    }
}

/// Facts that hold words, with a correction and a taking back of each; eight words and more at a time.
fn plant(desk: &mut Desk, birth: BirthId, canaries: &mut Canaries) {
    let (gross, dry) = (serde_json::from_str("300").unwrap(), serde_json::from_str("100").unwrap());
    let medicine = |canaries: &mut Canaries| {
        let (name, dose, route) = (canaries.next(), canaries.next(), canaries.next());
        Fact::MedicineGiven(Medicine { name, dose, route, uterotonic: true, ..Medicine::default() })
    };
    let (what, to, how) = (SharedWhat::Record, SharedTo::Doctor, SharedHow::Paper);
    desk.write(birth, Fact::Shared(Shared { what, to, how, name: Some(canaries.next()), version: None }));
    desk.write(birth, Fact::AskedFor { text: canaries.next() });
    let note = desk.write(birth, Fact::Noted { text: canaries.next() });
    let taken = desk.write(birth, Fact::Noted { text: canaries.next() });
    let file = FileId([7; 32]);
    let (media, chapters) = ("audio/webm".to_owned(), Vec::new());
    desk.write(birth, Fact::VoiceNoted(VoiceNote { placenta: None, file, ms: 1, media, chapters }));
    desk.write(birth, Fact::WrittenUp(WrittenUp { file, text: canaries.next() }));
    let given = medicine(canaries);
    let given = desk.write(birth, given);
    let item = canaries.next();
    desk.write(birth, Fact::BloodLoss(Loss::Weighed { item, gross, dry }));
    let mother = Fact::ClientRecorded(client(canaries, false));
    let mother = desk.write(birth, mother);
    let mut amend = |entry, fact, reason| desk.call(Request::Amend { birth, entry, fact: Some(fact), at: None, reason });
    amend(note, Fact::Noted { text: canaries.next() }, canaries.next()).unwrap();
    amend(given, medicine(canaries), canaries.next()).unwrap();
    amend(mother, Fact::ClientRecorded(client(canaries, true)), canaries.next()).unwrap();
    desk.call(Request::Retract { birth, entry: taken, reason: canaries.next() }).unwrap();
    let signer = Some(Signer { name: canaries.next(), role: canaries.next() });
    desk.call(Request::Sign { birth, signer }).unwrap();
    desk.write(birth, Fact::CordClamped { baby: 1 });
}

/// A protocol of the practice's own with words of hers in every kind of field.
fn own_protocol(desk: &mut Desk, canaries: &mut Canaries) {
    desk.call(Request::FillOwnProtocol).unwrap();
    let Ok(Response::OwnProtocol(view)) = desk.call(Request::OwnProtocol) else { unreachable!() };
    let fields = view.groups.into_iter().flat_map(|group| group.fields);
    let mut ours = |slot: &str, state: State| match state {
        State::Off => State::Off,
        State::Setting(setting) => State::Setting(Setting { source: canaries.next(), ..setting }),
        State::Phase(phase) => State::Phase(Schedule { source: canaries.next(), ..phase }),
        State::Apgar(times) => {
            let again = times.again.map(|again| ApgarAgain { source: canaries.next(), words: canaries.next(), ..again });
            State::Apgar(ApgarTimes { source: canaries.next(), again, ..times })
        }
        // A limit that the births pass.
        State::Step(step) if slot == "blood-loss.limit.over.1" => {
            State::Step(Step { value: Milli(100_000), source: canaries.next(), words: canaries.next(), ..step })
        }
        State::Step(step) => State::Step(step),
    };
    let fields = fields.map(|field| (field.slot, Some(ours(&field.slot.to_string(), field.state.unwrap())))).collect();
    let (title, edition) = (Some(canaries.next()), Some(canaries.next()));
    let change = OwnChange { title, edition, checked: Some("2026-11-25".to_owned()), fields };
    desk.call(Request::ChangeOwnProtocol { change }).unwrap();
}

/// Two births, of which the second has a label of its own and both run; everything that can hold words holds some.
fn planted() -> (Desk, [BirthId; 2], u32) {
    let mut canaries = Canaries(0);
    let mut desk = Desk::of(&canaries.next(), &canaries.next(), &canaries.next());
    own_protocol(&mut desk, &mut canaries);
    let one = desk.born();
    let label = canaries.next();
    let Ok(Response::RegisterBirth { birth: other }) = desk.call(Request::RegisterBirth { label }) else { unreachable!() };
    desk.write(other, Fact::BabyBorn { baby: 1 });
    for birth in [one, other] {
        desk.write(birth, Fact::ProtocolChosen { protocol: OWN.to_owned(), own: None });
        plant(&mut desk, birth, &mut canaries);
    }
    (desk, [one, other], canaries.0)
}

fn found(answers: &[String]) -> Vec<String> {
    let all = answers.concat();
    let flown = |n: &u32| all.contains(&format!("canary-{n:02}-heron"));
    (1..=99).filter(flown).map(|n| n.to_string()).collect()
}

/// Every answer that may be had while hidden, as it goes over the boundary; refusals too.
fn answers(shared: &SharedSession, births: [BirthId; 2]) -> Vec<String> {
    let mut requests = vec![Request::Rest, Request::Status, Request::Births { skip: 0, take: 99 }, Request::Protocols];
    for birth in births {
        requests.push(Request::Birth { birth });
        requests.push(Request::Record { birth, fact: Fact::CordCut { baby: 1 }, at: At::Now { ago_ms: 0 } });
        requests.push(Request::Birth { birth });
        requests.push(Request::Handover { birth });
        requests.push(Request::HandoverCode { birth, language: None });
        requests.push(Request::WriteFile { birth, file: Outgoing::Record, language: None });
        requests.push(Request::Record { birth, fact: Fact::CordCut { baby: 1 }, at: At::Now { ago_ms: 0 } });
    }
    requests.extend([Request::BabyBornNow { ago_ms: 0 }, Request::Verify, Request::Keys, Request::Rest]);
    requests.extend([Request::ShowNames { passphrase: "AGE-SECRET-KEY-1".to_owned() }, Request::Births { skip: 0, take: 99 }]);
    let call = |request| {
        let text = serde_json::to_string(&request).unwrap();
        shared.call_json(&text).unwrap_or_else(|error| error)
    };
    requests.iter().map(call).collect()
}

#[test]
fn no_word_of_people_is_in_any_answer_while_they_are_hidden() {
    let (desk, births, planted) = planted();
    assert!(planted >= 50, "{planted}");
    let shared = SharedSession::new(desk.session);
    let told = answers(&shared, births);
    assert_eq!(found(&told), Vec::<String>::new());
    let all = told.concat();
    assert!(all.contains("\"names_hidden\":true") && all.contains("names-hidden") && all.contains("2026-11-25 03:12"));
    assert_eq!(all.matches("\"response\":\"birth\"").count(), 4, "the births themselves were looked at");
    // Nothing is lost: all of them are there once they are shown.
    let show = serde_json::to_string(&Request::ShowNames { passphrase: PASSPHRASE.to_owned() }).unwrap();
    let mut shown = vec![shared.call_json(&show).unwrap()];
    for birth in births {
        shown.push(shared.call_json(&serde_json::to_string(&Request::Birth { birth }).unwrap()).unwrap());
    }
    assert_eq!(found(&shown).len(), usize::try_from(planted).unwrap());
}

#[test]
fn the_search_finds_words_where_they_are_shown() {
    let (desk, births, planted) = planted();
    let shared = SharedSession::new(desk.session);
    let requests = [Request::Status, Request::Birth { birth: births[0] }, Request::Birth { birth: births[1] }];
    let told: Vec<String> =
        requests.iter().map(|request| shared.call_json(&serde_json::to_string(request).unwrap()).unwrap()).collect();
    assert_eq!(found(&told).len(), usize::try_from(planted).unwrap());
}
