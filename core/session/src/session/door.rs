//! The door: a practice is founded, opened, closed and destroyed, and marks are made in front of it.

use secundine_domain::fact::Practice;
use secundine_domain::message::Message;
use secundine_domain::time::Stamp;
use secundine_store::{ExposeSecret, Passphrase, Store, is_recovery_identity};

use super::Session;
use super::elsewhere::Kept;
use super::files::Passing;
use super::phones::Phones;
use crate::api::{ApiError, ErrorCode, LockedMark, LockedView, Response, StatusView};
use crate::locked::{Locked, Running, Writer};
use crate::own::Own;
use crate::practice::{OpenPractice, describable};
use crate::recovery;

impl Session {
    pub(super) fn create(&mut self, practice: Practice, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        describable(&practice, &Own::default())?;
        let (store, recovery) = Store::create(&self.paths.data, Passphrase::from(passphrase))?;
        self.practice = Some(OpenPractice::found(store, practice, now)?);
        Ok(Response::CreatePractice { recovery: recovery::view(recovery.expose_secret()) })
    }

    pub(super) fn unlock(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        if self.practice.is_some() {
            self.unhide(passphrase, now)?;
            return Ok(Response::Unlock(self.status(now)));
        }
        let secret = Passphrase::from(passphrase);
        let store = self.keys.attempt(now, |folder| match is_recovery_identity(&secret) {
            true => Store::open_with_identity(folder, &secret),
            false => Store::open(folder, secret),
        })?;
        Ok(Response::Unlock(self.admit(store, now)?))
    }

    /// Works with a store from now on, and brings in what was marked while it was locked.
    pub(super) fn admit(&mut self, store: Store, now: &Stamp) -> Result<StatusView, ApiError> {
        let mut open = OpenPractice::open(store)?;
        open.beat(now);
        self.marked = None;
        let marked = self.locked.take().and_then(Locked::end);
        let drained = open.bring_in(marked.as_ref());
        if drained.as_ref().is_none_or(|drained| drained.waiting == 0) {
            self.kept = Kept::default();
        }
        self.practice = Some(open);
        Ok(StatusView { drained, ..self.status(now) })
    }

    /// Everything of the practice is dropped but the marks of a third stage that runs.
    pub(super) fn lock(&mut self, now: &Stamp) -> Result<StatusView, ApiError> {
        self.not_rehearsing()?;
        self.hidden = None;
        self.marked = None;
        self.passing = Passing::default();
        self.phones = Phones::default();
        self.outbox.forget();
        self.sync.forget();
        self.copying.forget();
        if let Some(mut open) = self.practice.take() {
            let latest = self.latest.take().and_then(|birth| Some((birth, open.chart(birth).ok()?)));
            let running = latest.and_then(|(birth, chart)| Running::of(birth, &chart, now));
            self.locked = Some(Locked::new(running, self.writer()));
            open.close()?;
        }
        Ok(self.status(now))
    }

    /// The practice is closed before its files go; what fails after that is told and gone on with at the next start.
    pub(super) fn wipe(&mut self, passphrase: String, words: &str, now: &Stamp) -> Result<Response, ApiError> {
        self.really_open()?.is_named(words)?;
        self.keys.opens(passphrase, now)?;
        self.latest = None;
        self.kept = Kept::default();
        self.passing = Passing::default();
        self.outbox.forget();
        self.sync.forget();
        self.copying.forget();
        self.practice.take().map_or(Ok(()), OpenPractice::close)?;
        self.keys.wipe()?;
        self.clock.forget();
        Ok(Response::Wipe(self.status(now)))
    }

    pub(super) fn locked_mark(&mut self, mark: LockedMark, ago_ms: u32, now: &Stamp) -> Result<LockedView, ApiError> {
        let locked = self.locked()?;
        locked.mark(mark, ago_ms, now)?;
        Ok(locked.view(now))
    }

    /// The practice as it is while locked.
    pub(super) fn locked(&mut self) -> Result<&mut Locked, ApiError> {
        self.not_rehearsing()?;
        self.in_front()
    }

    /// The same, also while a rehearsal runs beside it.
    pub(super) fn in_front(&mut self) -> Result<&mut Locked, ApiError> {
        if self.practice.is_some() {
            return Err(ApiError::impossible(Message::new("error-not-locked")));
        }
        if !Store::exists(&self.paths.data) {
            return Err(ApiError::new(ErrorCode::NoPractice, "error-no-practice"));
        }
        let locked = self.locked.take().unwrap_or_else(|| Locked::new(None, self.writer()));
        Ok(self.locked.insert(locked))
    }

    /// The writing end of the inbox: the one that was begun while the practice was open, so that its files stand in one row.
    pub(super) fn writer(&mut self) -> Writer {
        self.kept.writer.take().unwrap_or_else(|| Writer::new(&self.paths.data))
    }
}
