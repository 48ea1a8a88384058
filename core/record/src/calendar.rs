//! What is planned after a birth, for any calendar (iCalendar, RFC 5545).
//!
//! A calendar lies on other people's servers and screens. So an event says that it is a visit and for which birth, by the
//! label that the practice gave it, and nothing of mother, baby or what was found: whoever made the entry knows where to look.
//! No event has an alarm of its own.

use secundine_domain::chart::Chart;
use secundine_domain::due::window;
use secundine_domain::entry::BirthId;
use secundine_domain::message::Message;
use secundine_domain::protocol::Watch;
use secundine_domain::time::{Stamp, calendar_utc};

use crate::words::Words;

/// Most bytes of a line, without its end (RFC 5545, 3.1).
const LINE: usize = 75;

/// The next contact where its day is written, and the ends of the protocol's windows that are still to come; none where there
/// is neither. A contact stands at its local time, whatever the zone of whoever reads it; the end of a window at its moment in UTC.
#[must_use]
pub fn calendar(birth: BirthId, chart: &Chart, written: &Stamp, words: &Words) -> Option<Vec<u8>> {
    let stamp = calendar_utc(written.wall_ms)?;
    let say = |id: &str| words.say(&Message::new(id).with("label", chart.label.as_str()));
    let contact = chart.contacts.last().and_then(|contact| contact.what.moment()).map(|(day, time)| {
        let start = match time {
            Some(time) => format!("DTSTART:{}T{}", day.format("%Y%m%d"), time.format("%H%M%S")),
            None => format!("DTSTART;VALUE=DATE:{}", day.format("%Y%m%d")),
        };
        ("contact".to_owned(), start, say("calendar-visit"))
    });
    let ends = chart.protocol().into_iter().flat_map(|protocol| {
        // Counted from the last mark, since the first ones pass; by numbers, since a name would tell what is watched.
        (1..).zip(Watch::WINDOWS).flat_map(move |(n, watch)| {
            let marks = window(chart, protocol, watch, written).into_iter().rev();
            (1..).zip(marks).map(move |(k, due)| (format!("{n}-{k}"), due.in_ms))
        })
    });
    let ends = ends.filter_map(|(name, in_ms)| {
        let end = calendar_utc(written.wall_ms.saturating_add(in_ms))?;
        Some((name, format!("DTSTART:{end}"), say("calendar-record")))
    });
    let events: Vec<_> = contact.into_iter().chain(ends).collect();
    if events.is_empty() {
        return None;
    }
    let mut out = String::new();
    let mut line = |text: &str| fold(&mut out, text);
    for head in ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Secundine//Secundine//EN", "METHOD:PUBLISH"] {
        line(head);
    }
    for (name, start, summary) in events {
        line("BEGIN:VEVENT");
        // The same event has the same name in every file, so that a calendar puts the new one in the place of the old.
        line(&format!("UID:{}-{name}@secundine", birth.0));
        line(&format!("DTSTAMP:{stamp}"));
        line(&start);
        line(&format!("SUMMARY:{}", escaped(&summary)));
        line("CLASS:PRIVATE");
        line("END:VEVENT");
    }
    line("END:VCALENDAR");
    Some(out.into_bytes())
}

/// Text as a value (RFC 5545, 3.3.11); control characters, which it may not have, are replaced.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for character in text.chars() {
        match character {
            '\\' | ';' | ',' => out.extend(['\\', character]),
            '\n' => out.push_str("\\n"),
            _ if character.is_control() => out.push('\u{fffd}'),
            _ => out.push(character),
        }
    }
    out
}

/// A line, broken where it is too long: never inside of a character.
fn fold(out: &mut String, text: &str) {
    let mut length = 0;
    for character in text.chars() {
        if length + character.len_utf8() > LINE {
            out.push_str("\r\n ");
            length = 1;
        }
        out.push(character);
        length += character.len_utf8();
    }
    out.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_line_is_folded_between_characters_and_unfolds_to_what_it_was() {
        for text in ["x".repeat(75), "x".repeat(76), "ő".repeat(400), "👩‍🍼 مريم ".repeat(30)] {
            let mut out = String::new();
            fold(&mut out, &text);
            assert!(out.split("\r\n").all(|line| line.len() <= LINE), "{out}");
            assert_eq!(out.replace("\r\n ", "").trim_end_matches("\r\n"), text);
            assert_eq!(out.contains("\r\n "), text.len() > 75);
        }
    }

    #[test]
    fn a_text_cannot_end_its_event() {
        assert_eq!(escaped("a;b,c\\d\nEND:VEVENT\r\0"), "a\\;b\\,c\\\\d\\nEND:VEVENT\u{fffd}\u{fffd}");
    }
}
