//! How a round gets at the store: for a moment at a time, so that a mark never waits for the network.

use std::cell::RefCell;

use secundine_store::Store;

use crate::SyncError;

/// Whoever has the store, and lets it be used between two calls to the network.
pub trait Access {
    /// Does some short work with the store; gives no where the practice was locked meanwhile.
    fn with(&self, work: &mut dyn FnMut(&mut Store)) -> bool;
}

/// A store that nobody else uses.
pub struct Alone<'a>(RefCell<&'a mut Store>);

impl<'a> Alone<'a> {
    /// This one.
    pub fn new(store: &'a mut Store) -> Self {
        Self(RefCell::new(store))
    }
}

impl Access for Alone<'_> {
    fn with(&self, work: &mut dyn FnMut(&mut Store)) -> bool {
        self.0.try_borrow_mut().map(|mut store| work(&mut store)).is_ok()
    }
}

/// Works with the store.
///
/// # Errors
/// What the work answers; [`SyncError::Closed`] where the practice was locked.
pub(crate) fn with<T>(access: &dyn Access, work: impl FnOnce(&mut Store) -> Result<T, SyncError>) -> Result<T, SyncError> {
    let (mut work, mut done) = (Some(work), None);
    access.with(&mut |store| done = work.take().map(|work| work(store)));
    done.unwrap_or(Err(SyncError::Closed))
}
