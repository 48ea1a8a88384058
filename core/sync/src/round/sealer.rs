//! Who seals and signs, under which epoch.

use secundine_domain::entry::DeviceId;
use secundine_store::Store;
use serde::Serialize;

use crate::SyncError;
use crate::cbor;
use crate::charter::SharedSecret;
use crate::envelope::{DOMAIN, Header, Kind, random, seal};
use crate::epoch::Epoch;
use crate::names::{Hash, Names};
use crate::notes::Me;

/// Signs a digest as one device.
pub(crate) type Sign<'a> = Box<dyn Fn(&[u8]) -> [u8; 64] + 'a>;

/// Seals and signs as one device.
pub(crate) struct Sealer<'a> {
    pub names: Names,
    pub device: DeviceId,
    practice: [u8; 16],
    epoch: Epoch,
    secret: &'a SharedSecret,
    sign: Sign<'a>,
}

impl<'a> Sealer<'a> {
    /// This phone.
    pub(crate) fn new(store: &'a Store, me: &'a Me, epoch: Epoch) -> Self {
        Self::signing(me, epoch, store.device(), Box::new(|digest| store.sign(DOMAIN, digest)))
    }

    /// Whoever signs so.
    pub(crate) fn signing(me: &'a Me, epoch: Epoch, device: DeviceId, sign: Sign<'a>) -> Self {
        let practice = me.charter.practice();
        Self { names: Names::new(&practice), device, practice, epoch, secret: &me.secret, sign }
    }

    /// A header of this device.
    pub(crate) fn header(&self, kind: Kind, before: Hash) -> Result<Header, SyncError> {
        let (practice, device, epoch) = (self.practice, self.device, self.epoch.id());
        Ok(Header { kind, practice, device, epoch, seq: 0, part: 0, parts: 1, before, salt: random()? })
    }

    /// The object of this header and body.
    pub(crate) fn seal(&self, header: &Header, body: &impl Serialize) -> Result<Vec<u8>, SyncError> {
        let body = zeroize::Zeroizing::new(cbor::write(body)?);
        seal(header, &body, &self.epoch, self.secret, &self.sign)
    }
}
