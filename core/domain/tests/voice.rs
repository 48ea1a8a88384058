//! Voice notes: what is still to be written up, and how a chart tells it.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use common::{MINUTE, Phone, born, placenta};
use secundine_domain::chart::Chart;
use secundine_domain::fact::{Fact, VoiceNote, WrittenUp};
use secundine_domain::file::FileId;

fn note(file: u8) -> Fact {
    let media = "audio/webm".to_owned();
    Fact::VoiceNoted(VoiceNote { placenta: Some(1), file: name(file), ms: 200_000, media, chapters: Vec::new() })
}

fn written(file: u8, text: &str) -> Fact {
    Fact::WrittenUp(WrittenUp { file: name(file), text: text.to_owned() })
}

fn name(file: u8) -> FileId {
    FileId([file; 32])
}

fn open(chart: &Chart) -> Vec<FileId> {
    chart.to_write_up().map(|note| note.what.file).collect()
}

/// The ids under which the lines of voice notes are said.
fn said(chart: &Chart) -> Vec<String> {
    let voices = chart.lines.iter().filter(|line| matches!(line.first.fact, Fact::VoiceNoted(_)));
    voices.map(|line| chart.say(&line.shown().fact).id).collect()
}

#[test]
fn a_note_waits_until_it_is_written_up_and_again_once_that_is_taken_back() {
    let mut phone = Phone::first();
    phone.mark(born(1));
    phone.mark(placenta(&[1]));
    let first = phone.pass(MINUTE).mark(note(1));
    phone.pass(MINUTE).mark(note(2));
    assert_eq!(open(&phone.chart()), [name(1), name(2)]);
    assert_eq!(said(&phone.chart()), ["fact-voice-open", "fact-voice-open"]);

    let up = phone.pass(MINUTE).mark(written(2, "chorion ragged at the edge"));
    assert_eq!(open(&phone.chart()), [name(1)]);
    assert_eq!(said(&phone.chart()), ["fact-voice-open", "fact-voice-written"]);

    phone.correct(up, written(2, "chorion ragged at the edge, both sides"));
    let chart = phone.chart();
    let second = chart.voices.iter().find(|voice| voice.what.file == name(2)).unwrap();
    let up_now = chart.written_up(&second.what).unwrap();
    assert_eq!((up_now.what.text.as_str(), up_now.author.as_str()), ("chorion ragged at the edge, both sides", "Ada"));

    phone.retract(up);
    assert_eq!(open(&phone.chart()), [name(1), name(2)]);
    phone.retract(first);
    assert_eq!(open(&phone.chart()), [name(2)]);
    assert_eq!(said(&phone.chart()), ["fact-voice-noted", "fact-voice-open"], "one that is taken out waits for nobody");
}

#[test]
fn the_note_names_its_file_so_that_the_check_and_the_backup_look_for_it() {
    assert_eq!(note(3).files(), [name(3)]);
    assert_eq!(written(3, "chorion ragged").files(), [], "the note does that");
}

#[test]
fn the_placenta_is_named_where_there_are_several() {
    let mut phone = Phone::first();
    phone.mark(placenta(&[1]));
    phone.mark(note(1));
    let of = |phone: &Phone| serde_json::to_value(phone.chart().say(&note(1))).unwrap()["args"]["what"]["args"]["of"].clone();
    assert_eq!(of(&phone), 1.0);
    phone.mark(placenta(&[2]));
    assert_eq!(of(&phone), 2.0);
}
