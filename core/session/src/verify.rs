//! The check of a practice, in words.

use std::collections::BTreeMap;

use secundine_domain::entry::BirthId;
use secundine_domain::message::Message;
use secundine_store::{Extract, HeadSeen, Misfit, MisfitKind, PAPER_DIGITS, Stored, Verdict, shown_on_paper};

use crate::api::{ApiError, VerifyView};

/// A verdict in words; the birth's label is left out.
#[must_use]
pub fn view(verdict: &Verdict) -> VerifyView {
    let (entries, devices) = (number(verdict.entries), number(verdict.devices));
    let fits = || {
        let fits = Message::new("verify-fits").with("entries", entries).with("devices", devices);
        match number(verdict.files) {
            0 => fits,
            files => Message::new("verify-fits-files").with("fits", fits).with("files", files),
        }
    };
    let birth = match verdict.misfit {
        Some(Misfit::Entry { birth, .. } | Misfit::File { birth, .. }) => birth,
        _ => None,
    };
    VerifyView {
        ok: verdict.misfit.is_none(),
        entries,
        devices,
        message: verdict.misfit.as_ref().map_or_else(fits, misfit),
        head: match verdict.head {
            HeadSeen::Nothing => Message::new("verify-head-nothing"),
            HeadSeen::Unreadable => Message::new("verify-head-unreadable"),
            HeadSeen::At(n) => Message::new("verify-head-at").with("n", number(n)),
        },
        birth,
        label: None,
    }
}

/// Whether an archive fits, and what is to be said of it.
#[must_use]
pub fn archive(extract: &Extract) -> (bool, Vec<Message>) {
    let births = extract.births.keys().filter(|birth| **birth != BirthId::PRACTICE).count();
    let fits = Message::new("archive-fits")
        .with("entries", number(extract.entries()))
        .with("births", number(births as u64))
        .with("devices", number(extract.devices));
    let files = number(extract.damaged_files);
    let mut said = vec![extract.misfit.as_ref().map_or(fits, misfit)];
    said.extend((files > 0).then(|| Message::new("archive-files-damaged").with("count", files)));
    said.push(Message::new(if extract.birth.is_some() { "archive-of-one-birth" } else { "archive-whole" }));
    (extract.misfit.is_none() && files == 0, said)
}

/// Whether one of these births is the one that a paper shows, by the digits of its version; and the answer in words.
///
/// # Errors
/// Where these are not the digits of a version, or too few.
pub fn paper(births: &BTreeMap<BirthId, Vec<Stored>>, digits: &str) -> Result<(bool, Message), ApiError> {
    let plain: String = digits.split_whitespace().collect();
    if plain.len() < PAPER_DIGITS || !plain.bytes().all(|byte| byte.is_ascii_hexdigit()) {
        let least = number(PAPER_DIGITS as u64);
        return Err(ApiError::impossible(Message::new("error-paper-digits").with("least", least)));
    }
    let found = births.iter().find_map(|(birth, entries)| Some((birth, entries.len(), shown_on_paper(entries, &plain)?)));
    let Some((birth, all, shown)) = found else { return Ok((false, Message::new("paper-of-nothing"))) };
    let message = Message::new(if shown == all { "paper-shows-all" } else { "paper-shows-some" });
    let message = message.with("birth", birth.0.to_string()).with("shown", number(shown as u64));
    Ok((true, message.with("later", number(all.saturating_sub(shown) as u64))))
}

/// What does not fit, in words.
pub(crate) fn misfit(misfit: &Misfit) -> Message {
    match misfit {
        Misfit::Page { page: Some(page) } => Message::new("verify-misfit-page").with("page", number(*page)),
        Misfit::Page { page: None } => Message::new("verify-misfit-file"),
        Misfit::File { file, missing, .. } => {
            let id = if *missing { "verify-misfit-file-missing" } else { "verify-misfit-file-changed" };
            Message::new(id).with("file", short(file))
        }
        Misfit::Tables => Message::new("verify-misfit-tables"),
        Misfit::Entry { device, n, kind, .. } => {
            let id = match kind {
                MisfitKind::Missing => "verify-misfit-missing",
                MisfitKind::Twice => "verify-misfit-twice",
                MisfitKind::Changed => "verify-misfit-changed",
                MisfitKind::Unlinked => "verify-misfit-unlinked",
                MisfitKind::Unsigned => "verify-misfit-unsigned",
                MisfitKind::NoKey => "verify-misfit-no-key",
                MisfitKind::OtherKey => "verify-misfit-other-key",
                MisfitKind::CutOff => "verify-misfit-cut-off",
                MisfitKind::Rewritten => "verify-misfit-rewritten",
            };
            Message::new(id).with("n", number(*n)).with("device", short(device))
        }
    }
}

/// The first digits of an id tell the devices, and the files, of one practice apart.
pub(crate) fn short(id: impl ToString) -> String {
    id.to_string().chars().take(8).collect()
}

/// A count as it is shown.
pub(crate) fn number(value: u64) -> u32 {
    u32::try_from(value).unwrap_or(u32::MAX)
}
