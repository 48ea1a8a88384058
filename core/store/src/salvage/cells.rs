//! The records on a page, found by their shape alone: neither the schema nor the tree above has to be there.
//!
//! On a whole page the page's own list tells where its cells are. On a page that is not whole each place is tried, so that
//! one damaged block costs the records in it and not those beside it. In index trees cells of leaves and of inner pages are
//! alike but for the child's number before the cell.

use std::collections::HashSet;

use sha2::{Digest, Sha256};
use zeroize::Zeroizing;

use super::pages::{Page, Pages, USABLE};

/// Kinds of page that are read: inner pages and leaves of index trees.
const INNER: u8 = 0x02;
const LEAF: u8 = 0x0a;

/// Most bytes of a record that stay on its page when it has overflow pages, and fewest (SQLite file format, 1.6).
const MOST_LOCAL: usize = (USABLE - 12) * 64 / 255 - 23;
const LEAST_LOCAL: usize = (USABLE - 12) * 32 / 255 - 23;
/// Bytes of an overflow page less the number of the next.
const OVERFLOW: usize = USABLE - 4;

/// Most overflow pages that are followed in all: no bytes can keep the reading from ending.
const STEPS: usize = 1 << 20;
/// Most versions of the overflow pages of one record that are tried.
const VERSIONS: usize = 4;
/// Most columns of a record that is looked for.
const COLUMNS: usize = 6;

/// A record with the bytes of its columns.
pub(super) struct Record {
    pub shape: Shape,
    /// Serial type and bytes of each column, as many as the shape has.
    pub columns: Vec<(u64, Zeroizing<Vec<u8>>)>,
    /// Every page that it lies on is as it was written.
    pub whole: bool,
    /// The pages that it lies on.
    pub pages: Vec<u32>,
}

/// What a record is, by the types of its columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shape {
    /// Birth 24, device 16, number, body, link 32, signature 64.
    Entry,
    /// Id 16, public key 32, seed 32 or none.
    Device,
    /// Boot, since and wall.
    Run,
    /// Digest 32, count, tag 16, whole, carry.
    Drained,
    /// The text "file-key", name of a file 32, its key 16.
    FileKey,
    /// The text "erased", name of an entry 24, what remains of it 152.
    Erased,
}

impl Shape {
    fn of(types: &[u64]) -> Option<Self> {
        let number = |kind: u64| matches!(kind, 1..=6 | 8 | 9);
        let blob = |kind: u64| kind >= 12 && kind.is_multiple_of(2);
        let text = |kind: u64| kind >= 13 && !kind.is_multiple_of(2);
        match *types {
            [60, 44, n, body, 76, 140] if number(n) && blob(body) => Some(Self::Entry),
            [44, 76, 0 | 76] => Some(Self::Device),
            [76, count, 44, whole, carry] if number(count) && number(whole) && blob(carry) => Some(Self::Drained),
            [29, 76, 44] => Some(Self::FileKey),
            [25, 60, 316] => Some(Self::Erased),
            [boot, since, wall] if text(boot) && number(since) && number(wall) => Some(Self::Run),
            _ => None,
        }
    }
}

/// Every record of a known shape. Of cells that are alike in several versions of a page the one of a whole page stands.
pub(super) fn records(pages: &Pages) -> Vec<Record> {
    let mut search = Search { pages, seen: HashSet::new(), steps: STEPS, found: Vec::new() };
    for page in &pages.all {
        places(page).for_each(|at| search.take(page, at).unwrap_or_default());
    }
    search.found
}

/// Where records may begin on a page.
fn places(page: &Page) -> Box<dyn Iterator<Item = usize> + '_> {
    if !page.whole {
        return Box::new(0..USABLE);
    }
    let (list, child) = match page.bytes.first() {
        Some(&LEAF) => (8, 0),
        Some(&INNER) => (12, 4),
        _ => return Box::new(std::iter::empty()),
    };
    let number = |at: usize| page.bytes.get(at..)?.first_chunk().map(|two| usize::from(u16::from_be_bytes(*two)));
    let count = number(3).unwrap_or(0).min(USABLE / 2);
    Box::new((0..count).filter_map(move |k| number(list + 2 * k)).map(move |at| at + child))
}

struct Search<'a> {
    pages: &'a Pages,
    /// Digests of the cells that were taken.
    seen: HashSet<[u8; 32]>,
    steps: usize,
    found: Vec<Record>,
}

impl Search<'_> {
    /// Takes the record that begins here, if one does.
    fn take(&mut self, page: &Page, at: usize) -> Option<()> {
        let (length, here) = varint(page.bytes.get(at..)?)?;
        let length = usize::try_from(length).ok().filter(|length| *length <= self.pages.all.len().saturating_mul(USABLE))?;
        let local = local_length(length);
        let start = at + here;
        let on_page = page.bytes.get(start..start.checked_add(local)?)?;
        let (shape, columns, header) = header(on_page)?;
        if columns.iter().try_fold(header, |sum, column| sum.checked_add(column.1))? != length {
            return None;
        }
        let next = match local < length {
            true => u32::from_be_bytes(*page.bytes.get(start + local..)?.first_chunk()?),
            false => 0,
        };
        let cell = Sha256::new().chain_update(on_page).chain_update(next.to_be_bytes()).finalize().into();
        if !self.seen.insert(cell) {
            return Some(());
        }
        let tries = if next == 0 { 1 } else { VERSIONS };
        for version in 0..tries {
            let mut record = Record { shape, columns: Vec::new(), whole: page.whole, pages: vec![page.number] };
            let Some(bytes) = self.gather(on_page, next, length, version, &mut record) else { continue };
            let mut rest = bytes.get(header..)?;
            for (kind, length) in &columns {
                let (column, after) = rest.split_at_checked(*length)?;
                record.columns.push((*kind, Zeroizing::new(column.to_vec())));
                rest = after;
            }
            let again = self.found.last().is_some_and(|last| version > 0 && last.columns == record.columns);
            if !again {
                self.found.push(record);
            }
        }
        Some(())
    }

    /// The bytes of a record that goes on from page to page.
    fn gather(
        &mut self,
        on_page: &[u8],
        mut next: u32,
        length: usize,
        version: usize,
        record: &mut Record,
    ) -> Option<Zeroizing<Vec<u8>>> {
        let mut bytes = Zeroizing::new(Vec::with_capacity(on_page.len()));
        bytes.extend_from_slice(on_page);
        while bytes.len() < length {
            self.steps = self.steps.checked_sub(1)?;
            let page = self.pages.version(next, version)?;
            record.whole &= page.whole;
            record.pages.push(next);
            let (following, part) = page.bytes.split_at_checked(4)?;
            next = u32::from_be_bytes(*following.first_chunk()?);
            let rest = length - bytes.len();
            bytes.extend_from_slice(part.get(..OVERFLOW.min(rest))?);
        }
        Some(bytes)
    }
}

/// How many bytes of a record stand on its own page.
fn local_length(length: usize) -> usize {
    if length <= MOST_LOCAL {
        return length;
    }
    let fitting = LEAST_LOCAL + (length - LEAST_LOCAL) % OVERFLOW;
    if fitting <= MOST_LOCAL { fitting } else { LEAST_LOCAL }
}

/// Serial type and length of each column.
type Columns = Vec<(u64, usize)>;

/// Shape of a record, serial type and length of each of its columns, and the length of its header.
fn header(record: &[u8]) -> Option<(Shape, Columns, usize)> {
    let (length, first) = varint(record)?;
    let length = usize::try_from(length).ok()?;
    let mut rest = record.get(first..length)?;
    let mut kinds = Vec::new();
    while !rest.is_empty() && kinds.len() < COLUMNS {
        let (kind, bytes) = varint(rest)?;
        kinds.push(kind);
        rest = rest.get(bytes..)?;
    }
    let shape = Shape::of(&kinds).filter(|_| rest.is_empty())?;
    let columns = kinds.into_iter().map(|kind| Some((kind, column_length(kind)?))).collect::<Option<_>>()?;
    Some((shape, columns, length))
}

fn column_length(kind: u64) -> Option<usize> {
    match kind {
        0 | 8 | 9 => Some(0),
        1..=4 => usize::try_from(kind).ok(),
        5 => Some(6),
        6 => Some(8),
        12.. => usize::try_from((kind - 12) / 2).ok(),
        _ => None,
    }
}

/// A whole number as SQLite stores it.
pub(super) fn integer(kind: u64, bytes: &[u8]) -> i64 {
    match kind {
        8 => 0,
        9 => 1,
        _ => {
            let sign = bytes.first().map_or(0, |first| if first & 0x80 == 0 { 0 } else { -1 });
            bytes.iter().fold(sign, |value, byte| (value << 8) | i64::from(*byte))
        }
    }
}

/// A number of variable length, and how many bytes it takes.
fn varint(bytes: &[u8]) -> Option<(u64, usize)> {
    let mut value = 0;
    for (k, byte) in bytes.iter().enumerate().take(8) {
        value = (value << 7) | u64::from(byte & 0x7f);
        if byte & 0x80 == 0 {
            return Some((value, k + 1));
        }
    }
    Some(((value << 8) | u64::from(*bytes.get(8)?), 9))
}
