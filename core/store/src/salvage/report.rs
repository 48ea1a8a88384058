//! What became of a damaged store, in numbers alone.

use std::fmt;

use secundine_domain::entry::DeviceId;

/// What could be read of a damaged store, and what could not.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// Entries that were read.
    pub entries: u64,
    /// Births among them.
    pub births: u64,
    /// Births of which something is surely missing or cannot be proved. What is missing may belong to any birth.
    pub births_touched: u64,
    /// Pages of the database that cannot be read whole, neither in the file nor in its log.
    pub pages: Vec<u32>,
    /// Whether no page could be checked, since the start of the file is lost.
    pub unchecked: bool,
    /// Numbers that were written and are not here.
    pub missing: Vec<Missing>,
    /// Entries that are kept but not proved: the one before is missing, or their device's key is.
    pub unprovable: u64,
    /// Rows that contradict others, or that their device has not signed: left out.
    pub contradicting: u64,
    /// Entries that cannot be understood: left out.
    pub unreadable: u64,
    /// Entries of a later version of the program: kept.
    pub newer: u64,
    /// Whether the inbox's key is lost, so that what waits in it cannot be read.
    pub inbox_lost: bool,
    /// Whether the head was there and none of the devices has signed it.
    pub head_unread: bool,
}

/// Entries of one device that are missing, from the first to the last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Missing {
    /// The device that wrote them.
    pub device: DeviceId,
    /// Number of the first, from 1 on.
    pub first: u64,
    /// Number of the last.
    pub last: u64,
}

impl Missing {
    /// How many.
    #[must_use]
    pub fn count(&self) -> u64 {
        self.last.saturating_sub(self.first).saturating_add(1)
    }
}

impl Report {
    /// How many entries are known to be missing.
    #[must_use]
    pub fn missing_count(&self) -> u64 {
        self.missing.iter().fold(0, |sum, missing| sum.saturating_add(missing.count()))
    }

    /// Whether everything was read and proved.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        let told = [self.unprovable, self.contradicting, self.unreadable];
        self.pages.is_empty() && self.missing.is_empty() && told == [0; 3] && !self.unchecked && !self.inbox_lost
    }
}

/// The report as it is put beside the damaged files.
impl fmt::Display for Report {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(out, "secundine salvage 1")?;
        writeln!(out, "entries read: {}", self.entries)?;
        writeln!(out, "births: {}", self.births)?;
        writeln!(out, "births touched: {}", self.births_touched)?;
        writeln!(out, "entries missing: {}", self.missing_count())?;
        for Missing { device, first, last } in &self.missing {
            writeln!(out, "missing of device {device}: {first} to {last}")?;
        }
        writeln!(out, "not provable: {}", self.unprovable)?;
        writeln!(out, "contradicting, left out: {}", self.contradicting)?;
        writeln!(out, "not understood, left out: {}", self.unreadable)?;
        writeln!(out, "of a later form, kept: {}", self.newer)?;
        writeln!(out, "pages not whole: {}", self.pages.len())?;
        for page in &self.pages {
            writeln!(out, "page {page}")?;
        }
        writeln!(out, "pages could be checked: {}", yes(!self.unchecked))?;
        writeln!(out, "head could be read, or was not there: {}", yes(!self.head_unread))?;
        writeln!(out, "key of the inbox read: {}", yes(!self.inbox_lost))
    }
}

fn yes(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}
