//! The check of a practice, in words.

use secundine_domain::message::Message;
use secundine_store::{HeadSeen, Misfit, MisfitKind, Verdict};

use crate::api::VerifyView;

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
