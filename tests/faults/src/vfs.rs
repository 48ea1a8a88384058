//! The shim: a VFS that hands every call on to SQLite's own, unless the plan says that it fails.

#![allow(unsafe_code, reason = "a VFS is a table of C functions: there is no other way to stand under SQLite")]

use std::ffi::{c_char, c_int, c_void};
use std::ptr::{null, null_mut};
use std::sync::atomic::{AtomicPtr, Ordering};
use std::sync::{Mutex, Once, PoisonError};

use rusqlite::ffi;

use crate::plan::{self, Call, Event, Failure, Part};

/// An open file. SQLite's own file lies behind it in the same piece of memory.
#[repr(C)]
struct Shim {
    base: ffi::sqlite3_file,
    part: Part,
}

/// SQLite's own VFS.
static REAL: AtomicPtr<ffi::sqlite3_vfs> = AtomicPtr::new(null_mut());

/// What a file held when it was last synced, for a sync that loses what came after.
static SYNCED: Mutex<[Vec<u8>; 4]> = Mutex::new([const { Vec::new() }; 4]);

static METHODS: ffi::sqlite3_io_methods = ffi::sqlite3_io_methods {
    // No shared memory: the store has the database to itself and keeps the log's index on the heap.
    iVersion: 1,
    xClose: Some(close),
    xRead: Some(read),
    xWrite: Some(write),
    xTruncate: Some(truncate),
    xSync: Some(sync),
    xFileSize: Some(size),
    xLock: Some(lock),
    xUnlock: Some(unlock),
    xCheckReservedLock: Some(check_reserved),
    xFileControl: Some(control),
    xSectorSize: Some(sector),
    xDeviceCharacteristics: Some(device),
    xShmMap: None,
    xShmLock: None,
    xShmBarrier: None,
    xShmUnmap: None,
    xFetch: None,
    xUnfetch: None,
};

/// Makes the shim the default VFS of this process. Every database that is opened afterwards goes through it.
///
/// # Panics
/// Where SQLite has no VFS of its own, or does not take this one.
pub fn register() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        // SAFETY: SQLite gives its own VFS, which lives as long as the process, or null. The copy is leaked, so that it
        // lives as long too; the functions that are not replaced make no use of the pointer that they are called with.
        unsafe {
            let real = ffi::sqlite3_vfs_find(c"unix".as_ptr());
            assert!(!real.is_null(), "SQLite has no VFS of its own");
            REAL.store(real, Ordering::SeqCst);
            let mut shim = Box::new(*real);
            shim.zName = c"secundine-faults".as_ptr();
            shim.pNext = null_mut();
            shim.szOsFile += c_int::try_from(size_of::<Shim>()).unwrap_or_default();
            shim.xOpen = Some(open);
            shim.xDelete = Some(delete);
            assert_eq!(ffi::sqlite3_vfs_register(Box::leak(shim), 1), ffi::SQLITE_OK);
        }
    });
}

/// SQLite's own file behind this one, and its methods.
///
/// # Safety
/// The file was opened by [`open`].
unsafe fn behind(file: *mut ffi::sqlite3_file) -> (*mut ffi::sqlite3_file, &'static ffi::sqlite3_io_methods) {
    // SAFETY: `register` asked for room for both, and `open` filled the second, whose methods are static.
    unsafe {
        let real = file.cast::<u8>().add(size_of::<Shim>()).cast::<ffi::sqlite3_file>();
        (real, &*(*real).pMethods)
    }
}

/// Which part of the store this file is.
///
/// # Safety
/// The file was opened by [`open`].
unsafe fn part(file: *mut ffi::sqlite3_file) -> Part {
    // SAFETY: `open` made it a `Shim`.
    unsafe { (*file.cast::<Shim>()).part }
}

/// Calls the method of SQLite's own file.
macro_rules! pass {
    ($file:expr, $method:ident $(, $argument:expr)*) => {{
        // SAFETY: the file was opened by `open`, and the arguments are SQLite's own.
        unsafe {
            let (real, methods) = behind($file);
            methods.$method.map_or(ffi::SQLITE_IOERR, |method| method(real $(, $argument)*))
        }
    }};
}

unsafe extern "C" fn open(
    _vfs: *mut ffi::sqlite3_vfs,
    name: ffi::sqlite3_filename,
    file: *mut ffi::sqlite3_file,
    flags: c_int,
    out: *mut c_int,
) -> c_int {
    let part = match flags & (ffi::SQLITE_OPEN_MAIN_DB | ffi::SQLITE_OPEN_WAL | ffi::SQLITE_OPEN_MAIN_JOURNAL) {
        ffi::SQLITE_OPEN_MAIN_DB => Part::Database,
        ffi::SQLITE_OPEN_WAL => Part::Log,
        ffi::SQLITE_OPEN_MAIN_JOURNAL => Part::Journal,
        _ => Part::Other,
    };
    // SAFETY: SQLite gives memory of the size that `register` asked for. Without methods it does not close the file.
    unsafe {
        file.cast::<Shim>().write(Shim { base: ffi::sqlite3_file { pMethods: null() }, part });
        if plan::judge(Call::Open).is_some() {
            return ffi::SQLITE_CANTOPEN;
        }
        let (vfs, real) = (REAL.load(Ordering::SeqCst), file.cast::<u8>().add(size_of::<Shim>()).cast());
        let opened = (*vfs).xOpen.map_or(ffi::SQLITE_CANTOPEN, |open| open(vfs, name, real, flags, out));
        if opened == ffi::SQLITE_OK {
            (*file).pMethods = &raw const METHODS;
            if plan::forgets() {
                remember(file);
            }
        }
        opened
    }
}

unsafe extern "C" fn delete(_vfs: *mut ffi::sqlite3_vfs, name: *const c_char, sync_folder: c_int) -> c_int {
    if plan::judge(Call::Delete).is_some() {
        return ffi::SQLITE_IOERR_DELETE;
    }
    let vfs = REAL.load(Ordering::SeqCst);
    // SAFETY: the VFS is SQLite's own, and the name is a C text that SQLite gave.
    let (done, name) = unsafe {
        let done = (*vfs).xDelete.map_or(ffi::SQLITE_IOERR, |delete| delete(vfs, name, sync_folder));
        (done, std::ffi::CStr::from_ptr(name).to_bytes())
    };
    let part = if name.ends_with(b"-wal") { Part::Log } else { Part::Journal };
    if done == ffi::SQLITE_OK {
        plan::note(|| Event::Delete(part));
        if sync_folder != 0 {
            plan::note(|| Event::Sync(part));
        }
    }
    done
}

unsafe extern "C" fn close(file: *mut ffi::sqlite3_file) -> c_int {
    pass!(file, xClose)
}

unsafe extern "C" fn read(file: *mut ffi::sqlite3_file, to: *mut c_void, length: c_int, at: i64) -> c_int {
    match plan::judge(Call::Read) {
        Some(_) => ffi::SQLITE_IOERR_READ,
        None => pass!(file, xRead, to, length, at),
    }
}

unsafe extern "C" fn write(file: *mut ffi::sqlite3_file, from: *const c_void, length: c_int, at: i64) -> c_int {
    let failure = plan::judge(Call::Write);
    let length = match failure {
        None => length,
        Some(Failure::Short | Failure::ShortFull) => length / 2,
        Some(Failure::Full) => return ffi::SQLITE_FULL,
        Some(Failure::Io | Failure::Lost) => return ffi::SQLITE_IOERR_WRITE,
    };
    let done = pass!(file, xWrite, from, length, at);
    if done == ffi::SQLITE_OK {
        plan::note(|| {
            // SAFETY: SQLite gives so many bytes to write.
            let bytes = unsafe { std::slice::from_raw_parts(from.cast::<u8>(), usize::try_from(length).unwrap_or_default()) };
            // SAFETY: the file was opened by `open`.
            Event::Write(unsafe { part(file) }, at.cast_unsigned(), bytes.to_vec())
        });
    }
    match failure {
        None => done,
        Some(Failure::ShortFull) => ffi::SQLITE_FULL,
        Some(_) => ffi::SQLITE_IOERR_WRITE,
    }
}

unsafe extern "C" fn truncate(file: *mut ffi::sqlite3_file, length: i64) -> c_int {
    if plan::judge(Call::Truncate).is_some() {
        return ffi::SQLITE_IOERR_TRUNCATE;
    }
    let done = pass!(file, xTruncate, length);
    if done == ffi::SQLITE_OK {
        // SAFETY: the file was opened by `open`.
        plan::note(|| Event::Truncate(unsafe { part(file) }, length.cast_unsigned()));
    }
    done
}

unsafe extern "C" fn sync(file: *mut ffi::sqlite3_file, flags: c_int) -> c_int {
    match plan::judge(Call::Sync) {
        Some(Failure::Lost) => {
            // SAFETY: the file was opened by `open`.
            unsafe { forget(file) };
            return ffi::SQLITE_IOERR_FSYNC;
        }
        Some(_) => return ffi::SQLITE_IOERR_FSYNC,
        None => {}
    }
    // The plan alone says what is on disk: the tests' own files need not wait for a real one.
    let _ = flags;
    // SAFETY: the file was opened by `open`.
    plan::note(|| Event::Sync(unsafe { part(file) }));
    if plan::forgets() {
        // SAFETY: as above.
        unsafe { remember(file) };
    }
    ffi::SQLITE_OK
}

/// Remembers what the file holds.
///
/// # Safety
/// The file was opened by [`open`].
unsafe fn remember(file: *mut ffi::sqlite3_file) {
    let mut length = 0;
    let _ = pass!(file, xFileSize, &raw mut length);
    let mut bytes = vec![0; usize::try_from(length).unwrap_or_default()];
    if !bytes.is_empty() {
        let _ = pass!(file, xRead, bytes.as_mut_ptr().cast(), c_int::try_from(length).unwrap_or_default(), 0);
    }
    let mut synced = SYNCED.lock().unwrap_or_else(PoisonError::into_inner);
    // SAFETY: the file was opened by `open`.
    if let Some(place) = synced.get_mut(unsafe { part(file) } as usize) {
        *place = bytes;
    }
}

/// Puts the file back to what was remembered.
///
/// # Safety
/// The file was opened by [`open`].
unsafe fn forget(file: *mut ffi::sqlite3_file) {
    let synced = SYNCED.lock().unwrap_or_else(PoisonError::into_inner);
    // SAFETY: the file was opened by `open`.
    let Some(bytes) = synced.get(unsafe { part(file) } as usize) else { return };
    let _ = pass!(file, xTruncate, 0);
    if !bytes.is_empty() {
        let _ = pass!(file, xWrite, bytes.as_ptr().cast(), c_int::try_from(bytes.len()).unwrap_or_default(), 0);
    }
}

unsafe extern "C" fn size(file: *mut ffi::sqlite3_file, to: *mut i64) -> c_int {
    match plan::judge(Call::Size) {
        Some(_) => ffi::SQLITE_IOERR_FSTAT,
        None => pass!(file, xFileSize, to),
    }
}

unsafe extern "C" fn lock(file: *mut ffi::sqlite3_file, level: c_int) -> c_int {
    pass!(file, xLock, level)
}

unsafe extern "C" fn unlock(file: *mut ffi::sqlite3_file, level: c_int) -> c_int {
    pass!(file, xUnlock, level)
}

unsafe extern "C" fn check_reserved(file: *mut ffi::sqlite3_file, to: *mut c_int) -> c_int {
    pass!(file, xCheckReservedLock, to)
}

unsafe extern "C" fn control(file: *mut ffi::sqlite3_file, what: c_int, argument: *mut c_void) -> c_int {
    pass!(file, xFileControl, what, argument)
}

unsafe extern "C" fn sector(file: *mut ffi::sqlite3_file) -> c_int {
    pass!(file, xSectorSize)
}

unsafe extern "C" fn device(file: *mut ffi::sqlite3_file) -> c_int {
    pass!(file, xDeviceCharacteristics)
}
