//! Births as chance would have them: the program is held against a plain list of what it acknowledged.
//!
//! `SECUNDINE_BIRTHS` sets how many births a run simulates at least, `SECUNDINE_SEED` plays one night again.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::print_stderr,
    reason = "a test may stop at the first surprise, and tells its seed"
)]

mod chance;
#[path = "simulate/model.rs"]
mod model;
#[path = "simulate/night.rs"]
mod night;
#[path = "simulate/world.rs"]
mod world;

use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};

use chance::{seed_of_now, variable};
use world::{Founded, World};

const PRACTITIONER: &str = "Ida";

#[test]
fn every_chart_is_what_was_acknowledged() {
    let founded = Founded::new();
    if let Some(seed) = variable("SECUNDINE_SEED") {
        night(&founded, seed);
        return;
    }
    let wanted = variable("SECUNDINE_BIRTHS").unwrap_or(30);
    let (mut births, mut entries, mut distances, mut locked, mut restarts, mut nights) = (0, 0, 0, 0, 0, 0);
    for seed in seed_of_now().. {
        let world = catch_unwind(AssertUnwindSafe(|| night(&founded, seed))).unwrap_or_else(|failure| {
            eprintln!("SECUNDINE_SEED={seed} cargo test -p secundine-tests --test simulate");
            resume_unwind(failure)
        });
        births += world.model.births.len();
        entries += world.model.written.len();
        distances += world.model.distances;
        locked += world.brought_in;
        restarts += world.restarts;
        nights += 1;
        if births >= wanted {
            break;
        }
    }
    eprintln!(
        "{births} births in {nights} nights: {entries} entries and their amendments, {locked} of them made while locked, \
         {restarts} restarts, {distances} distances compared"
    );
    let enough = entries > 6 * births && distances > births && locked > births && restarts > nights;
    assert!(enough, "too little was done to be a test");
}

/// One night from its beginning to a check of the whole store.
fn night(founded: &Founded, seed: u64) -> World {
    let mut world = World::new(founded, seed);
    let length = world.chance.between(40, 160);
    for _ in 0..length {
        night::something_happens(&mut world);
    }
    night::ends(&mut world);
    world
}
