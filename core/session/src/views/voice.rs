//! Voice notes, and those that still have to be written up.

use secundine_domain::chart::{Chart, Noted};
use secundine_domain::entry::BirthId;
use secundine_domain::fact::{Chapter, VoiceNote, WrittenUp};
use secundine_domain::message::Message;
use secundine_domain::time::{Certainty, Elapsed};

use super::client_name;
use crate::api::{ApiError, ChapterView, VoiceView, WaitingNote, WrittenView};
use crate::practice::OpenPractice;

/// The voice notes of a birth, in order of time.
pub(super) fn voices(birth: BirthId, chart: &Chart) -> Vec<VoiceView> {
    chart.voices.iter().map(|note| view(birth, chart, note)).collect()
}

/// The voice notes of the practice that still have to be written up, those that have waited longest first.
pub(crate) fn to_write_up(open: &mut OpenPractice) -> Result<Vec<WaitingNote>, ApiError> {
    let mut waiting = Vec::new();
    for birth in open.births_with_voices()? {
        let chart = open.chart(birth)?;
        waiting.extend(chart.to_write_up().map(|note| {
            let line = WaitingNote { label: chart.label.clone(), client: client_name(&chart), note: view(birth, &chart, note) };
            (note.mark.at.wall_ms(), line)
        }));
    }
    waiting.sort_by_key(|(wall_ms, line)| (*wall_ms, line.note.entry));
    Ok(waiting.into_iter().map(|(_, line)| line).collect())
}

fn view(birth: BirthId, chart: &Chart, note: &Noted<VoiceNote>) -> VoiceView {
    let Noted { what, mark, author } = note;
    VoiceView {
        birth,
        entry: mark.entry,
        said: chart.say_voice(what),
        date: mark.at.date(),
        clock: mark.at.clock(),
        author: author.clone(),
        file: what.file,
        media: what.media.clone(),
        ms: what.ms,
        chapters: what.chapters.iter().map(chapter).collect(),
        written: chart.written_up(what).map(written),
    }
}

fn chapter(Chapter { item, at_ms }: &Chapter) -> ChapterView {
    let from_start = Elapsed { ms: i64::from(*at_ms), certainty: Certainty::Measured, least_ms: None, error_ms: 0 };
    ChapterView { title: Message::new(format!("exam-{item}")), at_ms: *at_ms, at: from_start.clock() }
}

fn written(Noted { what: WrittenUp { text, .. }, mark, author }: &Noted<WrittenUp>) -> WrittenView {
    let when = format!("{} {}", mark.at.date(), mark.at.clock());
    WrittenView { entry: mark.entry, text: text.clone(), author: author.clone(), when }
}
