//! Findings and reminders of small stories, as text: message ids with what fills them, and the entries they rest on.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use std::fmt::Write as _;

use common::{MINUTE, Phone, born, care, chose, clock, examined, jug, look, placenta, protocol, seen};
use secundine_domain::assess::{About, FindingState, assess};
use secundine_domain::due::due;
use secundine_domain::examination::Examination;
use secundine_domain::fact::{Answer, Care, Fact};
use secundine_domain::message::{Arg, Message};
use secundine_domain::protocol::Protocol;

/// `id` or `id(name: value, …)`.
fn say(message: &Message) -> String {
    let arg = |(name, arg): (&String, &Arg)| match arg {
        Arg::Number(number) => format!("{name}: {number}"),
        Arg::Text(text) => format!("{name}: {text:?}"),
        Arg::Message(inner) => format!("{name}: {}", say(inner)),
    };
    let args: Vec<String> = message.args.iter().map(arg).collect();
    if args.is_empty() { message.id.clone() } else { format!("{}({})", message.id, args.join(", ")) }
}

/// Everything that can be said at this moment, one thing a line.
fn read(phone: &Phone, protocol: Option<&Protocol>) -> String {
    let (chart, now) = (phone.chart(), phone.now());
    let mut text = String::new();
    for finding in assess(&chart, protocol, &now) {
        let level = finding.level.map(|level| format!(" {level:?}")).unwrap_or_default();
        let on: Vec<String> = finding.rests_on.iter().map(|entry| format!("#{}", entry.n)).collect();
        let whose = finding
            .threshold
            .map(|threshold| format!("\n      {}; {:?}", threshold.source, threshold.status))
            .unwrap_or_default();
        writeln!(text, "  {:?}{level}: {} [{}]{whose}", finding.state, say(&finding.message), on.join(" ")).unwrap();
    }
    for due in due(&chart, protocol, &now) {
        let clock = clock(due.in_ms);
        writeln!(text, "  due in {clock}: {} {:?} {}; {:?}", due.id, due.level, due.source, due.status).unwrap();
    }
    text
}

/// Each minute from the last entry on, in one line.
fn minutes(phone: &mut Phone, protocol: &Protocol, count: usize) -> String {
    let line = |phone: &mut Phone, minute: usize| {
        let stage = phone.chart().third_stage(&phone.now()).unwrap().elapsed.clock();
        let findings = assess(&phone.chart(), Some(protocol), &phone.now());
        let found = findings.iter().find(|finding| finding.about == About::ThirdStage).unwrap();
        let level = found.level.map(|level| format!(" {level:?}")).unwrap_or_default();
        let coming: Vec<String> = due(&phone.chart(), Some(protocol), &phone.now())
            .iter()
            .map(|due| format!("{} in {}", due.id, clock(due.in_ms)))
            .collect();
        phone.pass(MINUTE);
        format!("{minute:>2} min  {stage:>7}  {:?}{level}; {}\n", found.state, coming.join(", "))
    };
    (0..count).map(|minute| line(phone, minute)).collect()
}

fn born_with(kind: Care) -> Phone {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.mark(care(kind));
    phone
}

fn at_placenta() -> Phone {
    let mut phone = born_with(Care::Physiological);
    phone.pass(10 * MINUTE).mark(placenta(&[1]));
    phone
}

const QUESTIONS: [(&str, &str); 4] = [("amnion", "whole"), ("chorion", "whole"), ("edge-vessels", "none"), ("lobes", "meet")];

#[test]
fn a_slow_placenta_with_physiological_care() {
    let mut phone = born_with(Care::Physiological);
    insta::assert_snapshot!("slow placenta, minute by minute", minutes(&mut phone, protocol("nice-rcog"), 62));
    insta::assert_snapshot!("slow placenta, at 62 min", read(&phone, Some(protocol("nice-rcog"))));
    phone.mark(placenta(&[1]));
    phone.pass(MINUTE);
    insta::assert_snapshot!("slow placenta, a minute after it is born", read(&phone, Some(protocol("nice-rcog"))));
}

#[test]
fn a_slow_placenta_with_active_care_and_the_limits_of_another_protocol() {
    let mut phone = born_with(Care::Active);
    insta::assert_snapshot!("active care, minute by minute", minutes(&mut phone, protocol("who"), 32));
}

#[test]
fn six_hundred_millilitres() {
    let mut phone = born_with(Care::Active);
    phone.pass(4 * MINUTE).mark(jug(350));
    phone.pass(MINUTE).mark(seen(250));
    phone.pass(MINUTE).mark(look(104, 108));
    let all: Vec<String> =
        Protocol::published().iter().map(|protocol| format!("{}\n{}", protocol.id, read(&phone, Some(protocol)))).collect();
    insta::assert_snapshot!("600 mL under each protocol", all.join("\n"));
}

#[test]
fn nothing_recorded() {
    let phone = Phone::first();
    insta::assert_snapshot!("nothing recorded", read(&phone, Some(protocol("who"))));
    for protocol in Protocol::published() {
        let findings = assess(&phone.chart(), Some(protocol), &phone.now());
        assert_eq!(findings.len(), 9, "time, blood, shock index and six signs");
        for finding in findings {
            assert_eq!((finding.state, finding.level), (FindingState::NotRecorded, None));
            assert!(finding.message.id.contains("not-recorded"), "{}", finding.message.id);
        }
    }
}

#[test]
fn a_sign_that_was_not_looked_at_is_not_recorded_beside_those_that_were() {
    let mut phone = at_placenta();
    phone.mark(look(84, 118));
    insta::assert_snapshot!("pulse and systolic pressure only", read(&phone, Some(protocol("acog-aap"))));
}

#[test]
fn no_protocol() {
    let mut phone = born_with(Care::Active);
    phone.pass(90 * MINUTE).mark(jug(2_500));
    insta::assert_snapshot!("no protocol", read(&phone, None));
}

#[test]
fn care_not_recorded() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.pass(70 * MINUTE);
    insta::assert_snapshot!("care not recorded", read(&phone, Some(protocol("nice-rcog"))));
}

#[test]
fn an_examination_with_a_doubt() {
    let mut phone = at_placenta();
    phone.pass(5 * MINUTE).mark(chose("lobes", "gap"));
    phone.mark(chose("amnion", "whole"));
    phone.mark(examined("vessels", Answer::CouldNotTell));
    phone.mark(chose("insertion", "velamentous"));
    insta::assert_snapshot!("a doubt", read(&phone, None));
}

#[test]
fn an_examination_one_answer_at_a_time() {
    let mut phone = at_placenta();
    let mut text = read(&phone, None);
    for (item, option) in QUESTIONS {
        phone.pass(MINUTE).mark(chose(item, option));
        write!(text, "{item}\n{}", read(&phone, None)).unwrap();
    }
    phone.pass(MINUTE).mark(chose("lobes", "torn"));
    write!(text, "lobes looked at again\n{}", read(&phone, None)).unwrap();
    insta::assert_snapshot!("one answer at a time", text);
}

#[test]
fn no_doubt_rests_on_the_answers_that_say_so() {
    let mut phone = at_placenta();
    let answered = QUESTIONS.map(|(item, option)| phone.mark(chose(item, option)));
    let findings = assess(&phone.chart(), None, &phone.now());
    let found = findings.iter().find(|finding| finding.about == About::Completeness { placenta: 1 }).unwrap();
    assert_eq!(found.state, FindingState::Within);
    let mut rests_on = found.rests_on.clone();
    rests_on.sort_unstable();
    assert_eq!(rests_on, answered);
}

#[test]
fn a_doubt_is_told_also_when_no_placenta_is_marked_under_that_number() {
    let told = |phone: &Phone, placenta| {
        let findings = assess(&phone.chart(), None, &phone.now());
        findings.into_iter().find(|finding| finding.about == About::Completeness { placenta }).map(|finding| finding.state)
    };
    let mut unmarked = born_with(Care::Active);
    unmarked.mark(chose("lobes", "gap"));
    assert_eq!(told(&unmarked, 1), Some(FindingState::Passed), "its birth was never marked");
    let mut fused = born_with(Care::Active);
    fused.mark(born(2));
    fused.mark(placenta(&[1, 2]));
    fused.mark(Fact::Examined { placenta: 2, item: "lobes".to_owned(), cord: None, answer: Answer::CouldNotTell });
    assert_eq!((told(&fused, 1), told(&fused, 2)), (Some(FindingState::NotRecorded), Some(FindingState::Passed)));
}

/// Every id and text of a message.
fn words(message: &Message) -> Vec<String> {
    let inner = message.args.values().flat_map(|arg| match arg {
        Arg::Number(_) => Vec::new(),
        Arg::Text(text) => vec![text.clone()],
        Arg::Message(inner) => words(inner),
    });
    std::iter::once(message.id.clone()).chain(inner).collect()
}

/// One chart for each answer to each item of the examination, and some with numbers that pass nothing.
fn many_charts() -> Vec<Phone> {
    let mut phones = vec![Phone::first(), born_with(Care::Active), at_placenta()];
    let mut quiet = at_placenta();
    quiet.mark(look(80, 120));
    quiet.mark(jug(100));
    QUESTIONS.into_iter().for_each(|(item, option)| {
        quiet.mark(chose(item, option));
    });
    phones.push(quiet);
    for item in &Examination::standard().items {
        let choices = item.options.iter().map(|choice| Answer::Choice { option: choice.id.clone() });
        let measures = [item.min, item.max].map(|value| Answer::Measure { value });
        for answer in choices.chain(measures).chain([Answer::CouldNotTell]) {
            let mut phone = at_placenta();
            phone.mark(examined(&item.id, answer));
            phones.push(phone);
        }
    }
    phones
}

#[test]
fn nothing_is_ever_called_safe_or_normal() {
    const NEVER: [&str; 12] =
        ["safe", "safely", "normal", "normally", "fine", "ok", "okay", "good", "healthy", "reassuring", "clear", "unremarkable"];
    let mut said: Vec<String> = Vec::new();
    for phone in many_charts() {
        for protocol in Protocol::published().iter().map(Some).chain([None]) {
            for finding in assess(&phone.chart(), protocol, &phone.now()) {
                said.extend(words(&finding.message));
                said.extend(finding.threshold.and_then(|threshold| threshold.words));
            }
            said.extend(due(&phone.chart(), protocol, &phone.now()).iter().flat_map(|due| words(&due.message)));
        }
    }
    let steps = Protocol::published().iter().flat_map(|protocol| &protocol.watch).flat_map(|thresholds| &thresholds.step);
    said.extend(steps.map(|step| step.words.clone()));
    for text in &said {
        let mut parts = text.split(|letter: char| !letter.is_alphabetic()).map(str::to_lowercase);
        assert!(parts.all(|part| !NEVER.contains(&part.as_str())), "{text}");
    }
    for expected in ["finding-within", "finding-no-doubt", "finding-doubt", "finding-unusual"] {
        assert!(said.iter().any(|text| text == expected), "{expected} was among what was looked at");
    }
}
