//! Whoever changes, removes, moves, adds or cuts entries past the program is found out, by the number of the first one.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;

use common::chained::{Chained, OTHERS, Scribe, at};
use rusqlite::{Connection, params};
use secundine_domain::entry::DeviceId;
use secundine_store::{HEAD, HeadSeen, Misfit, MisfitKind, Verdict};

const ENTRIES: u64 = 24;

fn small() -> Chained {
    Chained::new(ENTRIES, 40)
}

#[test]
fn what_was_written_fits_open_or_closed() {
    let chained = small();
    let fits = Verdict { entries: ENTRIES + OTHERS, devices: 2, files: 0, head: HeadSeen::At(ENTRIES), misfit: None };
    assert_eq!(chained.after(|_| ()), fits, "triggers that are put back are the same");
    let mut store = chained.founded.open();
    let birth = store.births().unwrap()[0].id;
    common::write(&mut store, birth, 3);
    assert_eq!(store.verify().unwrap(), Verdict { entries: fits.entries + 3, head: HeadSeen::At(ENTRIES + 3), ..fits });
}

#[test]
fn an_empty_store_fits_and_has_no_head() {
    let verdict = common::Founded::new().open().verify().unwrap();
    assert_eq!(verdict, Verdict { entries: 0, devices: 0, files: 0, head: HeadSeen::Nothing, misfit: None });
}

#[test]
fn any_entry_that_is_removed_is_missed() {
    let chained = small();
    for (device, last) in [(chained.own, ENTRIES), (chained.other, OTHERS)] {
        for n in 1..=last {
            let verdict = chained.after(|raw| {
                assert_eq!(raw.execute("DELETE FROM entry WHERE device = ?1 AND n = ?2", params![device.0, n]).unwrap(), 1);
            });
            let expected = match n {
                n if n < last => Some((device, n, MisfitKind::Missing)),
                n if device == chained.own => Some((device, n, MisfitKind::CutOff)),
                // Another device's head is not here: its last entry can be missing without showing.
                _ => None,
            };
            assert_eq!(at(&verdict), expected, "{n}");
        }
    }
}

#[test]
fn any_two_entries_that_are_swapped_are_found_out_at_the_first() {
    let chained = Chained::new(12, 40);
    for (from, to) in (1..=12).flat_map(|from| (from + 1..=12).map(move |to| (from, to))) {
        for (columns, kind) in [("body", MisfitKind::Changed), ("body, link, signature", MisfitKind::Unlinked)] {
            let verdict = chained.after(|raw| {
                let (first, second) = (row(raw, chained.own, from), row(raw, chained.own, to));
                for (n, (body, link, signature)) in [(from, second), (to, first)] {
                    let all = "UPDATE entry SET body = ?1, link = ?2, signature = ?3 WHERE device = ?4 AND n = ?5";
                    let done = match columns {
                        "body" => {
                            let only = "UPDATE entry SET body = ?1 WHERE device = ?2 AND n = ?3";
                            raw.execute(only, params![body, chained.own.0, n])
                        }
                        _ => raw.execute(all, params![body, link, signature, chained.own.0, n]),
                    };
                    assert_eq!(done.unwrap(), 1);
                }
            });
            assert_eq!(at(&verdict), Some((chained.own, from, kind)), "{from} {to} {columns}");
        }
    }
}

fn row(raw: &Connection, device: DeviceId, n: u64) -> (Vec<u8>, Vec<u8>, Vec<u8>) {
    let select = "SELECT body, link, signature FROM entry WHERE device = ?1 AND n = ?2";
    raw.query_row(select, params![device.0, n], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap()
}

#[test]
fn any_part_of_any_entry_that_is_changed_is_found_out_there() {
    let chained = small();
    let changes = [
        ("UPDATE entry SET body = CAST(body || x'20' AS BLOB)", MisfitKind::Changed),
        (
            "UPDATE entry SET birth = (SELECT max(birth) FROM entry) WHERE birth < (SELECT max(birth) FROM entry)",
            MisfitKind::Changed,
        ),
        ("UPDATE entry SET link = zeroblob(32)", MisfitKind::Unlinked),
        ("UPDATE entry SET signature = zeroblob(64)", MisfitKind::Unsigned),
    ];
    for (device, last) in [(chained.own, ENTRIES), (chained.other, OTHERS)] {
        for n in 1..=last {
            for (change, kind) in changes {
                let joint = if change.contains(" WHERE ") { "AND" } else { "WHERE" };
                let mut changed = 0;
                let verdict = chained.after(|raw| {
                    let change = format!("{change} {joint} device = ?1 AND n = ?2");
                    changed = raw.execute(&change, params![device.0, n]).unwrap();
                });
                // Those of the last birth are there already.
                let expected = (changed == 1).then_some((device, n, kind));
                assert_eq!(at(&verdict), expected, "{n} {change}");
            }
        }
    }
}

#[test]
fn the_end_that_is_cut_off_is_told_by_the_head() {
    let chained = small();
    for left in 0..ENTRIES {
        let verdict = chained.after(|raw| {
            raw.execute("DELETE FROM entry WHERE device = ?1 AND n > ?2", params![chained.own.0, left]).unwrap();
        });
        assert_eq!(at(&verdict), Some((chained.own, left + 1, MisfitKind::CutOff)), "{left} left");
        assert_eq!(verdict.head, HeadSeen::At(ENTRIES));
    }
}

#[test]
fn an_entry_that_is_put_in_is_found_out() {
    let chained = small();
    let twice = chained.after(|raw| {
        let insert = "INSERT INTO entry SELECT (SELECT max(birth) FROM entry), device, n, body, link, signature FROM entry
                      WHERE device = ?1 AND n = 4";
        assert_eq!(raw.execute(insert, params![chained.own.0]).unwrap(), 1);
    });
    assert_eq!(at(&twice), Some((chained.own, 4, MisfitKind::Twice)));
    let added = chained.after(|raw| {
        let insert =
            "INSERT INTO entry SELECT birth, device, n + 1, body, link, signature FROM entry WHERE device = ?1 AND n = ?2";
        assert_eq!(raw.execute(insert, params![chained.own.0, ENTRIES]).unwrap(), 1);
    });
    assert_eq!(at(&added), Some((chained.own, ENTRIES + 1, MisfitKind::Unlinked)));
}

#[test]
fn a_chain_that_is_made_anew_with_another_key_does_not_fit_its_device() {
    let chained = small();
    let public = "UPDATE device SET public = ?1 WHERE id = ?2";
    let other = Scribe::new([8; 32]);
    let anew = chained.after(|raw| {
        raw.execute(public, params![other.key.verifying_key().to_bytes(), chained.other.0]).unwrap();
        let mut forger = Scribe::new([8; 32]);
        rewrite(raw, chained.other, &mut forger);
    });
    assert_eq!(at(&anew), Some((chained.other, 1, MisfitKind::OtherKey)));
    let gone = chained.after(|raw| {
        raw.execute("DELETE FROM device WHERE id = ?1", params![chained.other.0]).unwrap();
    });
    assert_eq!(at(&gone), Some((chained.other, 1, MisfitKind::NoKey)));
}

#[test]
fn a_chain_that_is_made_anew_with_its_own_key_contradicts_the_head() {
    let chained = small();
    let forge = |raw: &Connection| {
        let seed = raw.query_row("SELECT seed FROM device WHERE id = ?1", params![chained.own.0], |row| row.get(0)).unwrap();
        raw.execute("UPDATE entry SET body = CAST(body || x'20' AS BLOB) WHERE device = ?1 AND n = 5", params![chained.own.0])
            .unwrap();
        rewrite(raw, chained.own, &mut Scribe::new(seed));
    };
    assert_eq!(at(&chained.after(forge)), Some((chained.own, ENTRIES, MisfitKind::Rewritten)));
    // What the head's own text says that it cannot catch: whoever has the key takes the head away too.
    let copy = chained.copy();
    copy.tamper(forge);
    fs::remove_file(copy.file(HEAD)).unwrap();
    let verdict = copy.verify().unwrap();
    assert_eq!((verdict.misfit, verdict.head), (None, HeadSeen::Nothing));
}

/// Links and signs every entry of a device again.
fn rewrite(raw: &Connection, device: DeviceId, scribe: &mut Scribe) {
    let mut select = raw.prepare("SELECT n, birth, body FROM entry WHERE device = ?1 ORDER BY n").unwrap();
    let rows = select.query_map(params![device.0], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap();
    let rows: Vec<(u64, Vec<u8>, Vec<u8>)> = rows.collect::<Result<_, _>>().unwrap();
    for (n, birth, body) in rows {
        let (link, signature) = scribe.seal(&birth, &body);
        let update = "UPDATE entry SET link = ?1, signature = ?2 WHERE device = ?3 AND n = ?4";
        assert_eq!(raw.execute(update, params![link, signature, device.0, n]).unwrap(), 1);
    }
}

#[test]
fn a_missing_guard_and_a_strange_table_are_named() {
    let chained = small();
    for change in [
        "DROP TRIGGER entry_stays",
        "DROP TRIGGER device_remains",
        "CREATE TRIGGER odd AFTER INSERT ON entry BEGIN SELECT 1; END",
    ] {
        let copy = chained.copy();
        common::raw(&copy.file(secundine_store::DATABASE), &chained.founded.data_key()).execute_batch(change).unwrap();
        assert_eq!(copy.verify().unwrap().misfit, Some(Misfit::Tables), "{change}");
    }
}
