//! Photographs: how many, what of, and by which name each lies in the practice. The pictures are not printed.

use secundine_domain::fact::Fact;
use secundine_domain::message::Message;

use crate::document::Source;
use crate::page::{Block, Span};

/// Digits of a file's name that tell it from the others.
const NAME: usize = 16;

/// The photographs and what was measured on them; nothing where there are none.
pub(crate) fn photographs(source: &Source) -> Vec<Block> {
    let (chart, words) = (source.chart, source.words);
    if chart.photos.is_empty() && chart.photo_measures.is_empty() {
        return Vec::new();
    }
    let count = u32::try_from(chart.photos.len()).unwrap_or(u32::MAX);
    let kept = Message::new("record-photos-kept").with("count", count);
    let name = |file: &dyn ToString| file.to_string().chars().take(NAME).collect::<String>();
    let photos = chart.photos.iter().map(|noted| {
        let said = words.say(&chart.say(&Fact::PhotoTaken(noted.what.clone())));
        let file = words.say(&Message::new("record-photo-file").with("name", name(&noted.what.file)));
        (words.say(&noted.mark.at.words()), vec![Span::plain(said), Span::plain(format!("\n{file}")).small()])
    });
    let measures = chart.photo_measures.iter().map(|noted| {
        let said = words.say(&chart.say(&Fact::PhotoMeasured(Box::new(noted.what.clone()))));
        let file = words.say(&Message::new("record-photo-file").with("name", name(&noted.what.file)));
        (words.say(&noted.mark.at.words()), vec![Span::plain(said), Span::plain(format!("\n{file}")).small()])
    });
    vec![
        Block::Heading(words.plain("record-photos")),
        Block::Paragraph(vec![Span::plain(words.say(&kept))]),
        Block::Facts(photos.chain(measures).collect()),
    ]
}
