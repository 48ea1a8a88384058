//! Founding a practice's sharing, and joining it in person.

use age::secrecy::ExposeSecret;
use age::x25519;
use secundine_domain::entry::DeviceId;
use secundine_store::{Note, Store, device_with};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use super::act::{Author, act, change, wrap};
use super::{current, lead, lineage, roster};
use crate::SyncError;
use crate::cbor::{self, Bytes};
use crate::charter::{Charter, SharedSecret, Sheet};
use crate::envelope::random;
use crate::epoch::Epoch;
use crate::notes::{self, Me, Own};
use crate::roster::{Act, Role};

const JOINING: &str = "joining";

/// What a phone that wants to join shows. It holds no secret.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Card {
    /// Public key of the device.
    pub public: Bytes<32>,
    /// Its age recipient.
    pub kem: String,
    /// The name under which it wants to join.
    pub label: String,
}

/// What a lead shows in answer, sealed to the phone that joins.
#[derive(Clone, Serialize, Deserialize)]
pub(crate) struct Welcome {
    charter: Charter,
    secret: SharedSecret,
    /// Where the practice shares.
    place: serde_bytes::ByteBuf,
    label: String,
}

/// The age identity of a phone that has shown its card.
#[derive(Serialize, Deserialize)]
struct Joining {
    kem: String,
    label: String,
}

impl Card {
    /// The card of this phone. Shown again, it is the same. A phone that was removed goes on as a new device from here: nobody
    /// comes back as who was removed.
    ///
    /// # Errors
    /// [`SyncError::SharesAlready`], or what the store says.
    pub fn of(store: &mut Store, label: &str) -> Result<Self, SyncError> {
        if current(store)?.is_some() {
            if roster(store)?.members.get(&store.device()).is_none_or(|member| member.removed.is_none()) {
                return Err(SyncError::SharesAlready);
            }
            store.renew_device()?;
        }
        let kept: Option<Joining> = store.noted(JOINING, &[])?.and_then(|bytes| cbor::read(&bytes).ok());
        let identity = match kept.as_ref().map(|kept| kept.kem.parse::<x25519::Identity>()) {
            Some(Ok(identity)) => identity,
            _ => x25519::Identity::generate(),
        };
        let joining = Joining { kem: identity.to_string().expose_secret().to_owned(), label: label.to_owned() };
        store.note_down(&[Note::Put(JOINING, Vec::new(), cbor::write(&joining)?)])?;
        Ok(Self { public: Bytes(store.public()), kem: identity.to_public().to_string(), label: label.to_owned() })
    }

    /// The device that showed it.
    #[must_use]
    pub fn device(&self) -> Option<DeviceId> {
        device_with(&self.public.0)
    }

    /// 32 bytes that both phones work out from what they have shown each other: said aloud as words, they tell whether
    /// anybody stands between them.
    #[must_use]
    pub fn check(&self, welcome: &[u8]) -> [u8; 32] {
        let hash = Sha256::new().chain_update(b"secundine joins 1").chain_update(self.public.0);
        hash.chain_update(self.kem.as_bytes()).chain_update(Sha256::digest(welcome)).finalize().into()
    }
}

/// Makes this phone the first of a practice that shares. Gives the identity that is printed as the practice's recovery sheet,
/// and is kept nowhere.
///
/// # Errors
/// [`SyncError::SharesAlready`], or what the store says.
pub fn found(store: &mut Store, label: &str, place: Vec<u8>, now_ms: i64) -> Result<Zeroizing<String>, SyncError> {
    if current(store)?.is_some() {
        return Err(SyncError::SharesAlready);
    }
    let sheet = Sheet::new(x25519::Identity::generate())?;
    let kem = x25519::Identity::generate();
    let charter = Charter {
        founder: Bytes(store.public()),
        recovery: Bytes(sheet.signer.verifying_key().to_bytes()),
        recipient: sheet.identity.to_public().to_string(),
        salt: Bytes(random()?),
    };
    let me = Me::new(charter, sheet.secret.clone(), store.device(), &kem, label.to_owned(), place);
    let mut notes = vec![me.put()?];
    notes.extend(lineage(store)?);
    let mut own = Own::default();
    let mut records = Vec::new();
    let epoch = Epoch::random(1)?;
    let author = Author::phone(store);
    let found = Act::Found { label: label.to_owned(), kem: kem.to_public().to_string() };
    notes.push(notes::put_epoch(&epoch)?);
    notes.extend(act(&me, &author, &epoch, &mut own, &mut records, found, now_ms)?);
    notes.extend(wrap(&me, &author, &epoch, &epoch, &[], &mut own, &mut records, now_ms)?);
    notes.push(notes::put_own(&own)?);
    drop(author);
    store.note_down(&notes)?;
    Ok(Zeroizing::new(sheet.identity.to_string().expose_secret().to_owned()))
}

/// Takes somebody in who has shown this card. Gives the sealed welcome, to be shown to that phone alone.
///
/// # Errors
/// [`SyncError::NotLead`], [`SyncError::WrongCode`] for a card that is none, or what the store says.
pub fn admit(store: &mut Store, card: &Card, role: Role, now_ms: i64) -> Result<Vec<u8>, SyncError> {
    let (me, roster) = lead(store)?;
    let device = card.device().ok_or(SyncError::WrongCode)?;
    let kem: x25519::Recipient = card.kem.parse().map_err(|_| SyncError::WrongCode)?;
    match roster.members.get(&device) {
        Some(member) if member.removed.is_some() || member.kem != card.kem => return Err(SyncError::WrongCode),
        Some(_) => {}
        None => {
            let add = Act::Add { public: card.public, kem: card.kem.clone(), label: card.label.clone(), role };
            change(store, &me, Some(add), true, now_ms)?;
        }
    }
    let place = serde_bytes::ByteBuf::from(me.place.clone());
    let welcome = Welcome { charter: me.charter.clone(), secret: me.secret.clone(), place, label: card.label.clone() };
    let plain = Zeroizing::new(cbor::write(&welcome)?);
    age::encrypt(&kem, &plain).map_err(|error| SyncError::Internal(error.to_string()))
}

/// Looks whether this welcome lets this phone in. Nothing is done.
///
/// # Errors
/// [`SyncError::WrongCode`] where it does not, [`SyncError::SharesAlready`], or what the store says.
pub fn may_join(store: &Store, welcome: &[u8]) -> Result<(), SyncError> {
    match current(store)? {
        Some(_) => Err(SyncError::SharesAlready),
        None => welcomed(store, welcome).map(|_| ()),
    }
}

fn welcomed(store: &Store, welcome: &[u8]) -> Result<(x25519::Identity, Welcome), SyncError> {
    let joining: Joining = store.noted(JOINING, &[])?.map(|bytes| cbor::read(&bytes)).transpose()?.ok_or(SyncError::WrongCode)?;
    let kem: x25519::Identity = joining.kem.parse().map_err(|_| SyncError::WrongCode)?;
    let plain = age::decrypt(&kem, welcome).map(Zeroizing::new).map_err(|_| SyncError::WrongCode)?;
    Ok((kem, cbor::read(&plain).map_err(|_| SyncError::WrongCode)?))
}

/// Joins with the welcome that a lead's phone shows. What the practice has comes with the next round.
///
/// # Errors
/// [`SyncError::WrongCode`] where it is not for this phone, [`SyncError::SharesAlready`], or what the store says.
pub fn join(store: &mut Store, welcome: &[u8]) -> Result<Me, SyncError> {
    if current(store)?.is_some() {
        return Err(SyncError::SharesAlready);
    }
    let (kem, Welcome { charter, secret, place, label }) = welcomed(store, welcome)?;
    let me = Me::new(charter, secret, store.device(), &kem, label, place.into_vec());
    let mut notes = vec![me.put()?, notes::put_own(&Own::default())?, Note::Forget(JOINING, Vec::new())];
    notes.extend(notes::forget(store)?);
    notes.extend(lineage(store)?);
    store.note_down(&notes)?;
    Ok(me)
}
