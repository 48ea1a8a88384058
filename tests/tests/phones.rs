//! What goes to phones and cannot be built without the vendors' kits: the two projects, the script that builds them, the guide.
//! Everything that can be read is read, and held to a table of points; and each point is broken once, to see that it is told.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

#[path = "phones/android.rs"]
mod android;
#[path = "phones/apple.rs"]
mod apple;
#[path = "phones/bench.rs"]
mod bench;
#[path = "phones/files.rs"]
mod files;
#[path = "phones/icons.rs"]
mod icons;
#[path = "phones/native.rs"]
mod native;
#[path = "phones/script.rs"]
mod script;
#[path = "phones/shell.rs"]
mod shell;

use std::collections::BTreeSet;

use files::{Files, Point};

fn points() -> Vec<&'static Point> {
    android::POINTS.iter().chain(apple::POINTS).collect()
}

#[test]
fn every_point_of_the_projects_holds() {
    let files = Files::read();
    let broken: Vec<_> =
        points().into_iter().filter(|point| (point.holds)(&files) != Some(true)).map(|point| point.name).collect();
    assert!(broken.is_empty(), "{broken:#?}");
}

#[test]
fn a_point_that_is_broken_is_told() {
    let files = Files::read();
    let mut silent = Vec::new();
    for point in points() {
        assert!(!point.breaks.is_empty(), "{}: nothing breaks it", point.name);
        for (path, from, to) in point.breaks {
            if (point.holds)(&files.with(path, from, to)) == Some(true) {
                silent.push(format!("{}: `{from}` became `{to}` in {path}", point.name));
            }
        }
    }
    assert!(silent.is_empty(), "{silent:#?}");
}

#[test]
fn the_points_have_names_of_their_own() {
    let names: BTreeSet<_> = points().into_iter().map(|point| point.name).collect();
    assert_eq!(names.len(), points().len());
}
