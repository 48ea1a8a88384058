//! What a panic tells on standard error, which may end up in a system's log or a crash report.

use std::panic::{self, Location};

/// From now on a panic anywhere in this process tells its place and nothing else. What it says otherwise may quote what was
/// at hand: a text that is cut in the middle of a letter is printed whole. Every shell calls this before anything else.
pub fn panics_tell_only_where() {
    panic::set_hook(Box::new(|panic| eprintln!("{}", told(panic.location()))));
}

fn told(place: Option<&Location<'_>>) -> String {
    let place = place.map_or_else(|| "an unknown place".to_owned(), ToString::to_string);
    format!("A fault of the program at {place}.")
}
