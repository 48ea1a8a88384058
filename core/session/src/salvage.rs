//! What became of a damaged store, in words.

use std::path::Path;

use secundine_domain::message::Message;
use secundine_store::{Missing, Report};

use crate::api::SalvageView;

/// Most gaps that are named one by one.
const GAPS: usize = 20;

/// A report in words. `set_aside` is where the damaged files are, once the store was built anew.
#[must_use]
pub fn view(report: &Report, set_aside: Option<&Path>) -> SalvageView {
    SalvageView {
        entries: number(report.entries),
        births: number(report.births),
        missing: number(report.missing_count()),
        report: words(report),
        set_aside: set_aside.map(|folder| folder.display().to_string()),
    }
}

fn words(report: &Report) -> Vec<Message> {
    let mut words: Vec<Message> = report.missing.iter().take(GAPS).map(missing).collect();
    let counted = [
        ("salvage-missing-more", report.missing.iter().skip(GAPS).fold(0, |sum: u64, gap| sum.saturating_add(gap.count()))),
        ("salvage-births", report.births_touched),
        ("salvage-unprovable", report.unprovable),
        ("salvage-contradicting", report.contradicting),
        ("salvage-unreadable", report.unreadable),
        ("salvage-newer", report.newer),
        ("salvage-pages", report.pages.len() as u64),
    ];
    words.extend(counted.into_iter().filter(|(_, n)| *n > 0).map(|(id, n)| Message::new(id).with("n", number(n))));
    let told =
        [("salvage-unchecked", report.unchecked), ("salvage-head", report.head_unread), ("salvage-inbox", report.inbox_lost)];
    words.extend(told.into_iter().filter(|(_, is)| *is).map(|(id, _)| Message::new(id)));
    if report.missing.is_empty() {
        words.insert(0, Message::new(if report.entries == 0 { "salvage-nothing" } else { "salvage-none-missing" }));
    }
    words
}

fn missing(gap: &Missing) -> Message {
    // The first digits tell the devices of one practice apart.
    let device: String = gap.device.to_string().chars().take(8).collect();
    let message = Message::new("salvage-missing").with("device", device).with("n", number(gap.count()));
    message.with("first", number(gap.first)).with("last", number(gap.last))
}

fn number(value: u64) -> u32 {
    u32::try_from(value).unwrap_or(u32::MAX)
}
