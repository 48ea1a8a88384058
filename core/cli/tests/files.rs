//! The files that leave, read by programs of others.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

mod common;

use std::fs;
use std::path::Path;

use common::{ODD, PASSPHRASE, Practised, output, program, python, text};
use secundine_session::api::{Outgoing, Request, Response};
use serde_json::Value;

/// A Python script's answer, as JSON.
fn read(script: &str, file: &Path) -> Value {
    serde_json::from_str(&output(text(&python()), &["-c", script, text(file)])).unwrap()
}

/// The rows of a table, by the names of its columns.
const READ_TABLE: &str = "import csv, json, sys
print(json.dumps(list(csv.DictReader(open(sys.argv[1], encoding='utf-8-sig', newline='')))))";

/// A practice whose birth has a note of ten thousand characters too, closed.
fn closed() -> Practised {
    let mut practised = Practised::busy();
    practised.note(&"ő".repeat(10_000));
    practised.lock();
    practised
}

fn exported(practised: &Practised, kind: &str, name: &str) -> std::path::PathBuf {
    let file = practised.folder.path().join(name);
    let (said, code) = practised.run("export", &[&practised.birth.0.to_string(), kind, text(&file)]);
    assert_eq!((said, code), (format!("{}\n", file.display()), 0));
    file
}

#[test]
fn births_are_listed_and_each_kind_of_file_is_written() {
    let practised = closed();
    let (listed, code) = practised.run("export", &[]);
    let lines: Vec<&str> = listed.lines().collect();
    assert!(lines.len() == 2 && code == 0, "{listed}");
    assert_eq!(lines[1], format!("{}\t2026-11-25 02:40", practised.birth.0));
    let begins: [(&str, &[u8]); 6] = [
        ("record", b"%PDF"),
        ("laboratory", b"%PDF"),
        ("family", b"%PDF"),
        ("csv", b"\xef\xbb\xbfbirth,"),
        ("calendar", b"BEGIN:VCALENDAR\r\n"),
        ("entries", b"{\"form\":1,"),
    ];
    for (kind, begins) in begins {
        // A placenta has to be there for its papers.
        if begins != b"%PDF" || kind == "record" {
            assert!(fs::read(exported(&practised, kind, kind)).unwrap().starts_with(begins), "{kind}");
        }
    }
    let file = practised.folder.path().join("named-by-label");
    assert_eq!(practised.run("export", &["2026-11-25 02:40", "csv", text(&file)]).1, 0);
    let refused = |birth: &str, kind: &str, file: &Path| practised.run("export", &[birth, kind, text(file)]);
    let other = practised.folder.path().join("other");
    let id = practised.birth.0.to_string();
    assert!(refused(&id, "csv", &file).0.starts_with("A file of this name is there already."));
    assert!(refused(&id, "novel", &other).0.starts_with("There is no file of this kind."));
    assert!(refused("2026", "csv", &other).0.contains("birth"));
    assert!(refused(&id, "family", &other).0.contains("placenta"));
    assert_eq!(refused(&id, "csv", &file.join("below")).1, 2);
    assert!(!other.exists());
}

#[test]
fn a_spreadsheet_reads_every_value_and_runs_none() {
    let practised = closed();
    let rows = read(READ_TABLE, &exported(&practised, "csv", "table.csv"));
    let rows = rows.as_array().unwrap();
    let notes: Vec<&str> =
        rows.iter().filter(|row| row["what"] == "noted.text").map(|row| row["value"].as_str().unwrap()).collect();
    let long = "ő".repeat(10_000);
    let written: Vec<&str> = ["all calm", "still calm"].into_iter().chain(ODD).chain([long.as_str()]).collect();
    let plain: Vec<&str> = notes.iter().map(|note| note.strip_prefix('\'').unwrap_or(note)).collect();
    assert_eq!(plain, written);
    for row in rows {
        for (column, cell) in row.as_object().unwrap() {
            let cell = cell.as_str().unwrap();
            let number = cell.parse::<f64>().is_ok();
            assert!(number || !cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{column}: {cell}");
        }
    }
    assert_eq!(rows[0]["since_birth_s"], "0");
    assert!(rows.iter().any(|row| row["since_birth_s"] == "3600" && row["state"] == "stands"), "an hour later");
}

#[test]
fn a_calendar_takes_what_is_planned_and_learns_nothing_else() {
    const READ: &str = "import icalendar, json, sys
calendar = icalendar.Calendar.from_ical(open(sys.argv[1], 'rb').read())
print(json.dumps([[str(event['SUMMARY']), event['DTSTART'].dt.isoformat(), str(event['UID']), sorted(event.keys())]
                  for event in calendar.walk('VEVENT')]))";
    let practised = closed();
    let events = read(READ, &exported(&practised, "calendar", "c.ics"));
    let keys = ["CLASS", "DTSTAMP", "DTSTART", "SUMMARY", "UID"];
    let uid = format!("{}-contact@secundine", practised.birth.0);
    assert_eq!(events, serde_json::json!([["Home visit: 2026-11-25 02:40", "2026-11-27T10:00:00", uid, keys]]));

    let folder = practised.folder.path().join("rehearsed");
    let (said, code) = program(&["rehearse", text(&folder), "quiet-night", "--language", "fr"], "");
    assert_eq!(code, 0, "{said}");
    let calendar = said.lines().find(|path| path.ends_with(".ics")).unwrap();
    let events = read(READ, Path::new(calendar));
    let events = events.as_array().unwrap();
    assert!(!events.is_empty() && events.iter().all(|event| event[0] == "Voir le dossier : Birch Row 4"), "{events:?}");
}

/// A label may hold anything, and a calendar is read a line at a time.
#[test]
fn whatever_the_label_is_the_calendar_shows_it_whole_in_one_event() {
    const READ: &str = "import icalendar, json, sys
calendar = icalendar.Calendar.from_ical(open(sys.argv[1], 'rb').read())
print(json.dumps([[component.name for component in calendar.walk()],
                  [str(event['SUMMARY']) for event in calendar.walk('VEVENT')]]))";
    let mut practised = Practised::busy();
    let long = "ő👩‍🍼, ".repeat(400);
    let replaced = [
        ("a\rEND:VEVENT\r\nBEGIN:VALARM", "a\u{fffd}END:VEVENT\u{fffd}\nBEGIN:VALARM"),
        ("\u{0}\u{7}\u{85}x", "\u{fffd}\u{fffd}\u{fffd}x"),
        ("a\tb", "a\u{fffd}b"),
    ];
    let whole = ["\\n\\N\\\\;", "SUMMARY:x;y=\"z\"", "\nDTSTART:20260101", "\u{feff}x\u{2028}y", long.trim_end(), ODD[0], ODD[3]];
    for (label, shown) in whole.into_iter().map(|label| (label, label)).chain(replaced) {
        let registered = practised.session.call(Request::RegisterBirth { label: label.to_owned() }).unwrap();
        let Response::RegisterBirth { birth } = registered else { unreachable!() };
        practised.birth = birth;
        practised.plan("2026-11-27T10:00");
        let file = practised.write(Outgoing::Calendar);
        let bytes = fs::read(&file).unwrap();
        assert!(bytes.split(|byte| *byte == b'\n').all(|line| line.is_empty() || line.len() <= 76 && line.ends_with(b"\r")));
        let read = read(READ, &file);
        assert_eq!(read, serde_json::json!([["VCALENDAR", "VEVENT"], [format!("Home visit: {shown}")]]), "{label:?}");
    }
}

#[test]
fn a_rehearsal_leaves_its_files_and_nothing_else() {
    let folder = tempfile::tempdir().unwrap();
    let (said, code) = program(&["rehearse", text(folder.path())], "");
    assert_eq!(code, 0, "{said}");
    let mut files: Vec<String> =
        fs::read_dir(folder.path()).unwrap().map(|file| file.unwrap().path().display().to_string()).collect();
    files.sort_unstable();
    let mut told: Vec<String> = said.lines().map(str::to_owned).collect();
    told.sort_unstable();
    assert_eq!(files, told);
    let entries = told.iter().find(|path| path.ends_with(".jsonl")).unwrap();
    assert_eq!(program(&["verify", entries], "").1, 0);
    let (said, code) = program(&["rehearse", text(folder.path()), "loud-night"], "");
    assert!(said.starts_with("There is no scenario of this name.") && code == 2, "{said}");
    assert_eq!(program(&["export", text(folder.path())], PASSPHRASE).1, 2, "no practice is left behind");
}

/// `make soak-office`: LibreOffice is large.
#[test]
#[ignore = "needs LibreOffice"]
fn libreoffice_shows_the_same_values() {
    let practised = closed();
    let table = exported(&practised, "csv", "table.csv");
    let folder = practised.folder.path().join("office");
    let profile = format!("-env:UserInstallation=file://{}", text(&practised.folder.path().join("profile")));
    // Comma, double quote, UTF-8; and back, every cell as it is shown.
    let back = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1";
    let args = [profile.as_str(), "--headless", "--infilter=CSV:44,34,76,1,,0,false,true", "--convert-to", back, "--outdir"];
    output("soffice", &[args.as_slice(), &[text(&folder), text(&table)]].concat());
    let shown = fs::read_dir(&folder).unwrap().next().unwrap().unwrap().path();
    let (ours, theirs) = (read(READ_TABLE, &table), read(READ_TABLE, &shown));
    let (ours, theirs) = (ours.as_array().unwrap(), theirs.as_array().unwrap());
    assert_eq!(ours.len(), theirs.len());
    for (ours, theirs) in ours.iter().zip(theirs) {
        for (column, cell) in ours.as_object().unwrap() {
            let (ours, theirs) = (cell.as_str().unwrap(), theirs[column].as_str().unwrap());
            let same = ours == theirs || ours.replace("\r\n", "\n") == theirs || ours.eq_ignore_ascii_case(theirs);
            assert!(same, "{column}: {ours:?} is shown as {theirs:?}");
        }
    }
}
