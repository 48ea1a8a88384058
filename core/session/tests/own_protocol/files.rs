//! Bad files, each told by line and path.

use secundine_domain::protocol::Protocol;

use super::{Room, said};

/// A published file as the program writes it, with one thing in place of another.
fn with(what: &str, put: &str) -> String {
    let good = Protocol::find("who").unwrap().file();
    assert!(good.contains(what), "{what} is not in\n{good}");
    good.replacen(what, put, 1)
}

#[test]
fn each_bad_file_is_told_by_line_and_path() {
    let first_step = "[[watch.step]]\nlevel = \"caution\"";
    let cases = [
        ("an empty file", String::new()),
        ("no TOML at all", "Dear colleague,\nour limits are these:\n500 mL.\n".to_owned()),
        ("a quote left open", with("title = \"WHO 2012 to 2025\"", "title = \"WHO 2012 to 2025")),
        ("the same key twice", with("title = ", "title = \"Ours\"\ntitle = ")),
        ("a number in quotes, and a word that is none", {
            let text = with("every = 15", "every = \"15\"");
            text.replacen("status = \"memory\"", "status = \"remembered\"", 1)
        }),
        ("a level that is not there", with("level = \"limit\"", "level = \"alarm\"")),
        ("a comparison by words", with("compare = \"<\"", "compare = \"below\"")),
        ("a watch that is not there", with("watch = \"pulse\"\nunit", "watch = \"heart\"\nunit")),
        ("another unit", with("unit = \"mm[Hg]\"", "unit = \"kPa\"")),
        ("a number below nothing", with("value = 300.0", "value = -300.0")),
        ("half a minute", with("every = 60", "every = 59.5")),
        ("no minutes at all", with("every = 15", "every = 0")),
        ("no source", with("source = \"WHO PCPNC\"", "source = \"  \"")),
        ("a line left out", with("words = \"Fast pulse\"\n", "")),
        ("a line too many", with("words = \"Fast pulse\"\n", "words = \"Fast pulse\"\ncolour = \"red\"\n")),
        ("two readings of a volume", with("value = 500.0", "value = 500.0\nagain = 30")),
        (
            "a sign beside a time",
            with(first_step, &format!("{first_step}\nwith = [{{ watch = \"pulse\", compare = \">\", value = 100 }}]")),
        ),
        ("limits out of order", with("value = 1000.0", "value = 400.0")),
        ("phases out of order", with("until = 240", "until = 30")),
        ("a watch twice", with("watch = \"diastolic\"\nunit", "watch = \"systolic\"\nunit")),
        ("a table for a list", with("[[mother]]", "[mother]").replacen("[[mother]]", "[another]", 1)),
        ("a day that is none", with("checked = \"2026-11-25\"", "checked = \"25 November\"")),
        ("what cannot be off, is off twice, or is nothing", {
            with("checked = ", "off = [\"late_entry\", \"mother.9\", \"mother.9\", \"mother\", 3]\nchecked = ")
        }),
        ("no grams", with("value = 1.0\n", "value = 0\n")),
    ];
    let mut room = Room::new();
    let mut told = String::new();
    for (what, text) in cases {
        let view = room.import(&text);
        assert!(view.own.is_none() && !view.errors.is_empty(), "{what}");
        told.push_str(&format!("{what}\n"));
        for error in view.errors {
            let path = if error.path.is_empty() { String::new() } else { format!(", {}", error.path) };
            told.push_str(&format!("  line {}{path}: {}\n", error.line, said(&error.problem)));
        }
    }
    assert!(room.own().log.is_empty(), "no bad file changed anything");
    insta::assert_snapshot!(told);
}
