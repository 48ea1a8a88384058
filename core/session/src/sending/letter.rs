//! A birth on its way to a server. What it is made from is taken out of the session, so that it is written and sent while the
//! session goes on.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use secundine_domain::chart::Chart;
use secundine_domain::entry::{BirthId, Entry};
use secundine_domain::fact::{Practice, Server};
use secundine_domain::time::Stamp;
use secundine_record::Origin;
use secundine_record::fhir::Form;
use secundine_record::words::Words;
use secundine_store::version;

use super::answer::{Failure, taken};
use super::{Courier, Errand};
use crate::api::ApiError;
use crate::practice::OpenPractice;
use crate::session::{bundle, unsealed};

/// A birth as it stood when it was taken up.
pub(crate) struct Letter {
    pub birth: BirthId,
    pub server: Server,
    /// Which version of the entries it is.
    pub version: String,
    pub going: Arc<Going>,
    chart: Chart,
    entries: Vec<Entry>,
    practice: Practice,
    language: String,
    written: Stamp,
}

/// How far a letter is, bytes; nothing of nothing while it is written.
#[derive(Debug, Default)]
pub(crate) struct Going {
    sent: AtomicUsize,
    of: AtomicUsize,
}

impl Going {
    /// Bytes that were given to the network, and of how many.
    pub fn far(&self) -> (u32, u32) {
        let number = |count: &AtomicUsize| u32::try_from(count.load(Ordering::Relaxed)).unwrap_or(u32::MAX);
        (number(&self.sent), number(&self.of))
    }
}

impl Letter {
    pub fn of(open: &mut OpenPractice, birth: BirthId, server: Server, language: &str, written: Stamp) -> Result<Self, ApiError> {
        let chart = open.chart(birth)?;
        let stored = open.entries(birth)?;
        let (version, entries) = (version(stored), unsealed(stored));
        let (practice, language) = (open.described().clone(), language.to_owned());
        Ok(Self { birth, server, version, going: Arc::default(), chart, entries, practice, language, written })
    }

    /// The transaction that a server is asked to keep.
    fn bytes(&self) -> Result<Vec<u8>, ApiError> {
        let Self { birth, chart, entries, practice, version, written, .. } = self;
        let origin = Origin { practice, version, written, words: Words::of(&self.language) };
        bundle(*birth, chart, entries, &origin, (Form::Transaction, &BTreeMap::new()))
    }

    /// Writes it, sends it, and waits for the answer.
    pub fn carry(&self, courier: &dyn Courier) -> Result<(), Failure> {
        let bytes = self.bytes()?;
        self.going.of.store(bytes.len(), Ordering::Relaxed);
        let Server { address, token } = &self.server;
        let errand = Errand { url: address, token: token.as_deref(), body: Some(&bytes), sent: &self.going.sent };
        taken(&courier.carry(&errand)?, &bytes)
    }
}
