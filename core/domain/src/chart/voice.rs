//! Voice notes, and what has become of them.

use super::{Chart, Noted};
use crate::fact::{VoiceNote, WrittenUp};
use crate::message::Message;

impl Chart {
    /// The writing-up of a voice note that holds: the last; none while it still has to be written up.
    #[must_use]
    pub fn written_up(&self, note: &VoiceNote) -> Option<&Noted<WrittenUp>> {
        self.written_up.iter().rev().find(|written| written.what.file == note.file)
    }

    /// The voice notes that still have to be written up, in order of time.
    pub fn to_write_up(&self) -> impl Iterator<Item = &Noted<VoiceNote>> {
        self.voices.iter().filter(|note| self.written_up(&note.what).is_none())
    }

    /// What a voice note is and how long it plays, in words.
    #[must_use]
    pub fn say_voice(&self, note: &VoiceNote) -> Message {
        Message::new("fact-voice-noted").with("what", note.what(self.placentas.len())).with("length", note.length())
    }

    /// The same with what has become of it, where it stands in the chart.
    pub(super) fn say_voice_state(&self, note: &VoiceNote) -> Message {
        let said = self.say_voice(note);
        let stands = self.voices.iter().any(|known| known.what.file == note.file);
        let (id, when) = match (stands, self.written_up(note)) {
            (false, _) => return said,
            (true, None) => ("fact-voice-open", None),
            (true, Some(written)) => ("fact-voice-written", Some(&written.mark.at)),
        };
        let said = Message { id: id.to_owned(), ..said };
        when.map_or(said.clone(), |at| said.with("when", at.words()))
    }
}
