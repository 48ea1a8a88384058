//! What went wrong with sharing, and what to do about it, in words.

use crate::api::{HeldView, TroubleView};
use secundine_domain::message::{Arg, Message};
use secundine_sync::{BucketError, Probed, Roster, SyncError, Trouble};

/// Why a bucket did not do its part.
pub(crate) fn bucket_words(error: &BucketError) -> Message {
    let id = match error {
        BucketError::Absent => "sync-absent",
        BucketError::NoConnection => "sync-no-connection",
        BucketError::NotTrusted => "sync-not-trusted",
        BucketError::Refused(_) => "sync-refused",
        BucketError::NoBucket => "sync-no-bucket",
        BucketError::Full => "sync-full",
        BucketError::Busy(_) => "sync-busy",
        BucketError::Slow => "sync-slow",
        BucketError::TooLarge => "sync-too-large",
        BucketError::Address => "sync-address",
        BucketError::Clock => "sync-clock",
        BucketError::Broken(_) => "sync-broken",
    };
    Message::new(id)
}

/// Why sharing did not do what was asked.
pub(crate) fn error_words(error: &SyncError) -> Message {
    match error {
        SyncError::Bucket(error) => bucket_words(error),
        SyncError::Store(_) => Message::new("sync-store"),
        SyncError::NotShared => Message::new("sync-not-shared"),
        SyncError::SharesAlready => Message::new("sync-shares-already"),
        SyncError::NotMember => Message::new("sync-not-member"),
        SyncError::NotLead => Message::new("sync-not-lead"),
        SyncError::WrongCode => Message::new("sync-wrong-code"),
        SyncError::NoDevice => Message::new("sync-no-device"),
        SyncError::LastLead => Message::new("sync-last-lead"),
        SyncError::NothingToRecover => Message::new("sync-nothing-to-recover"),
        SyncError::Unreadable => Message::new("sync-unreadable"),
        SyncError::Paused | SyncError::Closed => Message::new("sync-paused"),
        SyncError::Internal(_) => Message::new("error-internal"),
    }
}

/// What a trial of a place came to.
pub(crate) fn probed_words(probed: &Probed) -> Result<Message, Message> {
    if let Some(error) = probed.unreadable().or(probed.unwritable()) {
        return Err(bucket_words(error));
    }
    match (probed.lists_after, &probed.removes) {
        (false, _) => Err(Message::new("sync-place-forgets")),
        (true, Ok(())) => Ok(Message::new("sync-place-well")),
        (true, Err(_)) => Ok(Message::new("sync-place-keeps")),
    }
}

/// What is not as it should be, and what can be done about it here.
pub(crate) fn trouble_view(trouble: &Trouble, roster: &Roster) -> TroubleView {
    let held = match trouble {
        Trouble::Held { device, seq, segments } => {
            Some(HeldView { device: device.to_string(), segment: seq.saturating_add(*segments).saturating_sub(1) })
        }
        _ => None,
    };
    TroubleView { said: trouble_words(trouble, roster), held }
}

fn trouble_words(trouble: &Trouble, roster: &Roster) -> Message {
    let whose = |device| {
        let label = roster.members.get(device).map(|member| member.label.clone());
        label.map_or_else(|| Arg::from(Message::new("sync-unknown-phone")), Arg::from)
    };
    match trouble {
        Trouble::Withheld { device, .. } => Message::new("sync-withheld").with("whose", whose(device)),
        Trouble::RolledBack { device, .. } => Message::new("sync-rolled-back").with("whose", whose(device)),
        Trouble::Forked { device, .. } => Message::new("sync-forked").with("whose", whose(device)),
        Trouble::Misfit { device, n } => {
            let n = u32::try_from(*n).unwrap_or(u32::MAX);
            Message::new("sync-misfit").with("whose", whose(device)).with("n", n)
        }
        Trouble::NoBirthKey { device, .. } => Message::new("sync-no-birth-key").with("whose", whose(device)),
        Trouble::Held { device, segments, .. } => {
            let many = u32::try_from(*segments).unwrap_or(u32::MAX);
            Message::new("sync-held").with("whose", whose(device)).with("many", many)
        }
        Trouble::Altered { name } => Message::new("sync-altered").with("name", short(name)),
        Trouble::Swapped { name } => Message::new("sync-swapped").with("name", short(name)),
        Trouble::Unsigned { name } => Message::new("sync-unsigned").with("name", short(name)),
        Trouble::NoKey { name } => Message::new("sync-no-key").with("name", short(name)),
        Trouble::Unreadable { name } => Message::new("sync-unreadable-object").with("name", short(name)),
    }
}

/// The end of a name, by which it is found in the bucket.
fn short(name: &str) -> String {
    name.rsplit('/').take(3).collect::<Vec<_>>().into_iter().rev().collect::<Vec<_>>().join("/")
}
