//! What is told about a practice whose phones share their records.

use std::path::PathBuf;

use secundine_domain::entry::BirthId;
use secundine_domain::message::Message;
use serde::{Deserialize, Serialize};

use super::QrView;

/// Where a practice shares, as it is typed. An empty secret leaves the one that is there.
#[derive(Clone, Debug, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum TypedPlace {
    /// A folder that this device reaches by its path: a stick, a share, a disk.
    Folder {
        /// Its path.
        path: PathBuf,
    },
    /// A bucket of a store that speaks S3.
    S3 {
        /// `https://host` or `https://host:port`.
        endpoint: String,
        /// What the store calls its region.
        region: String,
        /// Name of the bucket.
        bucket: String,
        /// Id of the key.
        key: String,
        /// Its secret.
        secret: String,
    },
    /// A folder of a server that speaks WebDAV.
    WebDav {
        /// `https://host/path`.
        url: String,
        /// Name of the user there.
        user: String,
        /// Her password there.
        password: String,
    },
}

/// How the phones of the practice share.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SyncView {
    /// Whether this phone shares with a practice.
    pub shared: bool,
    /// This phone was removed from the practice, or is another device than the one that joined: it has to join anew.
    pub outside: bool,
    /// Where; no secret is told.
    pub place: Option<PlaceView>,
    /// What is going on.
    pub state: SyncState,
    /// When everything was last exchanged.
    pub last_good: Option<SyncTime>,
    /// Why the last round did not come to its end.
    pub failure: Option<Message>,
    /// Entries of this phone that the others cannot have yet.
    pub waiting: u32,
    /// Pictures and sounds of it that they cannot have yet.
    pub waiting_files: u32,
    /// Something has waited here for so long that it is told where the births are.
    pub overdue: bool,
    /// Whether this phone may let others in and remove them.
    pub leads: bool,
    /// Who belongs to the practice, and who did.
    pub members: Vec<MemberView>,
    /// What is not as it should be.
    pub troubles: Vec<TroubleView>,
    /// Births that one person wants erased, and that another has yet to ask for.
    pub erasures: Vec<ErasureView>,
    /// Bytes that the records of this phone take: the database and the files beside it.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub stored: u64,
    /// What came of trying a place; none where none was tried since the practice was opened.
    pub tried: Option<PlaceTried>,
}

/// Where a practice shares.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum PlaceView {
    /// A folder.
    Folder {
        /// Its path.
        path: String,
    },
    /// A bucket.
    S3 {
        /// Its server.
        endpoint: String,
        /// Its region.
        region: String,
        /// Its name.
        bucket: String,
        /// Id of the key.
        key: String,
    },
    /// A folder of a server.
    WebDav {
        /// Its address.
        url: String,
        /// Name of the user there.
        user: String,
    },
}

/// What is going on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "state", rename_all = "snake_case")]
pub enum SyncState {
    /// Nothing.
    Still,
    /// A round.
    Going {
        /// Entries that were given.
        sent: u32,
        /// Entries that are still to be given.
        to_send: u32,
        /// Entries that came.
        got: u32,
        /// Bytes that were given and that came.
        #[cfg_attr(feature = "types", ts(type = "number"))]
        bytes: u64,
    },
    /// It was paused by hand.
    Paused,
    /// It failed, and is tried again in so many seconds.
    Again {
        /// Seconds.
        seconds: u32,
    },
}

/// A moment on this phone's clock.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SyncTime {
    /// `2026-11-25`.
    pub date: String,
    /// `03:12:40`.
    pub clock: String,
}

/// What somebody may do in the practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum SyncRole {
    /// Lets others in and removes them.
    Lead,
    /// Writes and signs.
    Member,
    /// Writes, and does not sign.
    Student,
}

/// A phone of the practice.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct MemberView {
    /// Which: 32 hexadecimal digits.
    pub device: String,
    /// Whose.
    pub label: String,
    /// What they may do.
    pub role: SyncRole,
    /// This phone.
    pub this: bool,
    /// When it was let in.
    pub added: SyncTime,
    /// When it last told something, by its own clock.
    pub heard: Option<SyncTime>,
    /// When it was removed.
    pub removed: Option<SyncTime>,
}

/// A birth that one person wants erased. Nothing is erased until another has asked too.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct ErasureView {
    /// Which.
    pub birth: BirthId,
    /// What it is called; none where it is not on this phone, or while the names are hidden.
    pub label: Option<String>,
    /// Who asked; none where nobody knows the phone.
    pub who: Option<String>,
    /// It was asked for on this phone.
    pub this: bool,
    /// When, by the clock of the phone that asked.
    pub at: SyncTime,
}

/// Something that is not as it should be.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct TroubleView {
    /// What it is and what to do, in words.
    pub said: Message,
    /// What a removed phone wrote since may be taken in: its device, and the last segment that waits.
    pub held: Option<HeldView>,
}

/// What a removed phone wrote since.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct HeldView {
    /// Which phone.
    pub device: String,
    /// The last of the segments that wait.
    #[cfg_attr(feature = "types", ts(type = "number"))]
    pub segment: u64,
}

/// What came of trying a place.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(tag = "tried", rename_all = "snake_case")]
pub enum PlaceTried {
    /// It has not answered yet.
    Going,
    /// Its answer.
    Told {
        /// In words.
        said: Message,
        /// Whether the practice can share there.
        well: bool,
    },
}

/// A code that another phone reads, and the words that both say aloud.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SyncCode {
    /// The code as text, to be copied where there is no camera.
    pub text: String,
    /// The same to be drawn.
    pub code: QrView,
    /// Four words; none before both phones have seen each other.
    pub words: Vec<String>,
}

/// What another phone's code says.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct SyncCodeRead {
    /// The code as text.
    pub text: String,
    /// Who wants to join; none for the code that lets this phone in.
    pub label: Option<String>,
    /// Four words for the code that lets this phone in: the lead's phone shows the same, or it is another code. None else.
    pub words: Vec<String>,
}
