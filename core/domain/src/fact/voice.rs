//! Words that were spoken and kept, to be written up later.

use serde::{Deserialize, Serialize};

use super::BabyNo;
use crate::examination::Examination;
use crate::file::FileId;
use crate::message::Message;
use crate::time::span;

/// A voice note: the recording lies in a sealed file, what is known of it here.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct VoiceNote {
    /// The placenta that was looked at, named by its first baby.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "types", ts(optional))]
    pub placenta: Option<BabyNo>,
    /// The recording, sealed.
    pub file: FileId,
    /// How long it plays, ms.
    pub ms: u32,
    /// Media type of the recording, `audio/webm;codecs=opus`.
    pub media: String,
    /// What was looked at while it was spoken, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub chapters: Vec<Chapter>,
}

/// A stretch of a voice note, until the next one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct Chapter {
    /// Id of the item of the examination that was on the screen.
    pub item: String,
    /// Where it begins, ms of the recording.
    pub at_ms: u32,
}

/// A voice note was listened to, and what it says now stands in the record.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct WrittenUp {
    /// The note's recording.
    pub file: FileId,
    /// What was typed from it; empty where it added nothing to what stands elsewhere.
    pub text: String,
}

impl VoiceNote {
    /// Why this cannot be a voice note.
    #[must_use]
    pub fn problem(&self) -> Option<Message> {
        let in_order = self.chapters.is_sorted_by(|one, next| one.at_ms <= next.at_ms);
        let inside = self.chapters.iter().all(|chapter| chapter.at_ms <= self.ms);
        let known = self.chapters.iter().all(|chapter| Examination::standard().item(&chapter.item).is_some());
        let fits = self.ms > 0 && self.media.starts_with("audio/") && in_order && inside && known;
        (!fits).then(|| Message::new("impossible-voice-note"))
    }

    /// How long it plays, in words: whole seconds, one at least.
    #[must_use]
    pub fn length(&self) -> Message {
        span(i64::from(self.ms.max(1000)))
    }

    /// What it is, in words, where `of` tells how many placentas there are.
    #[must_use]
    pub fn what(&self, of: usize) -> Message {
        match self.placenta {
            Some(placenta) => {
                let of = u32::try_from(of.max(1)).unwrap_or(u32::MAX);
                Message::new("voice-examination").with("placenta", placenta).with("of", of)
            }
            None => Message::new("voice-note"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn note() -> VoiceNote {
        let chapters = [("amnion", 0), ("chorion", 4_000)].map(|(item, at_ms)| Chapter { item: item.to_owned(), at_ms });
        VoiceNote {
            placenta: Some(1),
            file: FileId([0x0f; 32]),
            ms: 200_000,
            media: "audio/webm;codecs=opus".to_owned(),
            chapters: chapters.to_vec(),
        }
    }

    #[test]
    fn what_can_be_no_recording_is_refused() {
        assert_eq!(note().problem(), None);
        let changed = |change: &dyn Fn(&mut VoiceNote)| {
            let mut note = note();
            change(&mut note);
            note.problem().is_some()
        };
        assert!(changed(&|note| note.ms = 0));
        assert!(changed(&|note| note.media = "text/html".to_owned()));
        assert!(changed(&|note| note.chapters.swap(0, 1)));
        assert!(changed(&|note| note.ms = 3_999));
        assert!(changed(&|note| note.chapters[1].item = "no such item".to_owned()));
    }

    #[test]
    fn a_length_is_told_in_whole_seconds() {
        let said = |ms| VoiceNote { ms, chapters: Vec::new(), ..note() }.length();
        let minutes = |minutes, seconds| Message::new("span-minutes").with("minutes", minutes).with("seconds", seconds);
        assert_eq!(said(200_000), minutes("3", "20"));
        assert_eq!(said(1), Message::new("span-seconds").with("seconds", "1"));
        assert_eq!(said(60_999), minutes("1", "0"));
    }
}
