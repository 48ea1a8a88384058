//! Backups: made, listed, taken in part by part, restored.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use secundine_domain::time::Stamp;
use secundine_store::{INCOMING, Inbox, Passphrase, Restored, Store, unfinished_backup};

use super::Session;
use crate::api::{ApiError, BackupLine, BackupMade, BackupsView, ErrorCode, Response, RestoredView};
use crate::backup::{self, BackupTask};
use crate::practice::OpenPractice;
use crate::verify::number;

/// Most bytes of a part.
const PART_MAX: usize = 1 << 20;

impl Session {
    pub(super) fn backups(&mut self) -> Result<BackupsView, ApiError> {
        self.not_rehearsing()?;
        let folder = self.backup_folder().to_string_lossy().into_owned();
        Ok(BackupsView { folder, backups: self.backup_lines(), asked: self.copying.asked() })
    }

    /// The backup that was made last; none where there is none.
    pub(super) fn last_backup(&self) -> Option<BackupLine> {
        self.backup_lines().into_iter().next()
    }

    fn backup_lines(&self) -> Vec<BackupLine> {
        let mut found: Vec<(Name, BackupLine)> = Vec::new();
        for file in fs::read_dir(self.backup_folder()).into_iter().flatten().flatten() {
            let file_name = file.file_name().to_string_lossy().into_owned();
            if let (Some(name), Ok(about)) = (Name::parse(&file_name), file.metadata()) {
                let line = BackupLine { made: name.made.clone(), bytes: about.len(), file: file_name };
                found.push((name, line));
            }
        }
        found.sort_by(|(one, _), (other, _)| other.cmp(one));
        found.into_iter().map(|(_, line)| line).collect()
    }

    pub(super) fn make_backup(&mut self, now: &Stamp) -> Result<BackupsView, ApiError> {
        let folder = self.backup_folder();
        // Asked twice, it is the one that is being made.
        if !self.copying.is_going() {
            let begun = self.really_open()?.store().begin_backup(now).map_err(backup::making)?;
            fs::create_dir_all(&folder).map_err(|_| backup::not_made())?;
            // One that was forgotten may be at its last bytes still, and takes away what has its passing name.
            if self.copying.is_at_rest() {
                tidy(&folder);
            }
            let is_free = |path: &PathBuf| !path.exists() && !unfinished_backup(path).exists();
            let free = (1..).map(|n| folder.join(Name::new(now, n).file())).find(is_free);
            self.copying.begin(begun, free.ok_or_else(backup::not_made)?);
        }
        self.backups()
    }

    /// Makes the backup that was asked for at once, for who has the session alone.
    pub fn finish_backup(&mut self) {
        let Some(task) = self.backup_to_begin() else { return };
        let number = task.number;
        let made = task.make(&mut |work| self.lend(number, work));
        self.backed_up(number, made);
    }

    /// The backup that a thread is to make now.
    pub(crate) fn backup_to_begin(&mut self) -> Option<BackupTask> {
        self.copying.next.take()
    }

    /// Lends the store to the making of a backup; gives no where the practice was closed since it was begun.
    pub(crate) fn lend(&self, number: u64, work: &mut dyn FnMut(&Store)) -> bool {
        let open = self.practice.as_ref().filter(|_| self.copying.is(number));
        open.map(|open| work(open.store())).is_some()
    }

    /// Keeps what came of it.
    pub(crate) fn backed_up(&mut self, number: u64, made: Result<BackupMade, ApiError>) {
        let waiting = Inbox::waiting(&self.paths.data).files;
        self.copying.end(number, made.map(|made| BackupMade { waiting, ..made }));
    }

    /// Where the parts come from is the page's business: they are only gathered.
    pub(super) fn backup_part(&mut self, offset: u64, base64: &str) -> Result<Response, ApiError> {
        let no_part = || ApiError::new(ErrorCode::Impossible, "error-backup-part");
        let part = BASE64_STANDARD.decode(base64).map_err(|_| no_part())?;
        if part.len() > PART_MAX {
            return Err(no_part());
        }
        let path = self.incoming();
        let length = fs::metadata(&path).map_or(0, |file| file.len());
        if offset != 0 && offset != length {
            return Err(no_part());
        }
        write_part(&path, offset, &part).map_err(|_| backup::not_restored())?;
        Ok(Response::BackupPart)
    }

    pub(super) fn restore(&mut self, passphrase: String, now: &Stamp) -> Result<Response, ApiError> {
        self.not_rehearsing()?;
        let (path, secret) = (self.incoming(), Passphrase::from(passphrase));
        let restored = match &self.practice {
            None if Store::exists(&self.paths.data) => return Err(ApiError::new(ErrorCode::Locked, "error-locked")),
            None => self.put_back(&path, secret, now)?,
            Some(_) => self.add(&path, secret, now)?,
        };
        // It lies in the backup's own file as well; what cannot be removed now is written over by the next.
        let _ = fs::remove_file(&path);
        Ok(Response::Restore(RestoredView {
            status: self.status(now),
            added: number(restored.added),
            known: number(restored.known),
            births: number(restored.births),
            made: minute(&restored.made),
            left_out: backup::left_out(&restored),
            refused: backup::told(&restored),
        }))
    }

    fn put_back(&mut self, path: &Path, secret: Passphrase, now: &Stamp) -> Result<Restored, ApiError> {
        let (store, restored) = Store::restore(&self.paths.data, path, secret).map_err(backup::restoring)?;
        let mut open = OpenPractice::open(store)?;
        open.beat(now);
        self.locked = None;
        self.practice = Some(open);
        Ok(restored)
    }

    fn add(&mut self, path: &Path, secret: Passphrase, now: &Stamp) -> Result<Restored, ApiError> {
        self.really_open()?.is_backup_of(path).map_err(backup::restoring)?;
        self.keys.attempt(now, |folder| Store::opens_backup(folder, path, secret))?;
        self.really_open()?.add_backup(path).map_err(backup::restoring)
    }

    fn backup_folder(&self) -> PathBuf {
        self.paths.records.join("backups")
    }

    fn incoming(&self) -> PathBuf {
        self.paths.data.join(INCOMING)
    }
}

fn write_part(path: &Path, offset: u64, part: &[u8]) -> io::Result<()> {
    path.parent().map_or(Ok(()), fs::create_dir_all)?;
    let mut file = match offset {
        0 => File::create(path)?,
        _ => OpenOptions::new().append(true).open(path)?,
    };
    // A part that was written in part would not let the next one fit.
    file.write_all(part).inspect_err(|_| drop(file.set_len(offset)))
}

/// Removes what a backup left that was killed as it was made.
fn tidy(folder: &Path) {
    for file in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = file.file_name();
        if name.to_str().and_then(|name| name.strip_suffix(".unfinished")).and_then(Name::parse).is_some() {
            let _ = fs::remove_file(file.path());
        }
    }
}

fn minute(stamp: &Stamp) -> String {
    stamp.date_and_clock().chars().take(16).collect()
}

/// What a backup's file is called: in this order, the later one is the greater.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Name {
    /// `2026-11-25 03:12`.
    made: String,
    /// Counts those of one minute, from 1.
    n: u32,
}

impl Name {
    fn new(made: &Stamp, n: u32) -> Self {
        Self { made: minute(made), n }
    }

    fn file(&self) -> String {
        let made = self.made.replace(' ', "-").replace(':', "");
        let further = if self.n > 1 { format!("-{}", self.n) } else { String::new() };
        format!("secundine-backup-{made}{further}.tar")
    }

    fn parse(file: &str) -> Option<Self> {
        let stem = file.strip_prefix("secundine-backup-")?.strip_suffix(".tar")?;
        let (date, rest) = stem.split_at_checked(10)?;
        let (clock, further) = rest.strip_prefix('-')?.split_at_checked(4)?;
        let (hour, minute) = clock.split_at_checked(2)?;
        let n = further.strip_prefix('-').map_or(Some(1), |n| n.parse().ok())?;
        // Read back, it has to come to the same, so that nothing else is taken for one.
        let name = Self { made: format!("{date} {hour}:{minute}"), n };
        let digits = name.made.bytes().all(|byte| byte.is_ascii_digit() || b"-: ".contains(&byte));
        (digits && name.file() == file).then_some(name)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_reads_back_and_the_later_one_is_the_greater() {
        let at = |wall_ms| Stamp { wall_ms, offset_min: 60, zone: None, boot: None };
        let first = Name::new(&at(1_795_570_800_000), 1);
        assert_eq!(first.file(), "secundine-backup-2026-11-25-0240.tar");
        let tenth = Name::new(&at(1_795_570_800_000), 10);
        assert_eq!(tenth.file(), "secundine-backup-2026-11-25-0240-10.tar");
        let later = Name::new(&at(1_795_570_860_000), 1);
        assert!(first < Name { n: 9, ..first.clone() } && Name { n: 9, ..first.clone() } < tenth && tenth < later);
        for name in [first, tenth, later] {
            assert_eq!(Name::parse(&name.file()), Some(name));
        }
        for other in [
            "",
            "secundine-backup-.tar",
            "secundine-backup-2026-11-25-0240.tar.unfinished",
            "secundine-backup-2026-11-25-0240-1.tar",
            "secundine-backup-2026-11-25-02é.tar",
            "secundine-backup-2026-1x-25-0240.tar",
            "record-2026-11-25-024000.pdf",
        ] {
            assert_eq!(Name::parse(other), None, "{other}");
        }
    }
}
