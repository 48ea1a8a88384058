//! Numbers by chance, the same for the same seed.

#![allow(dead_code, reason = "each test file uses its own part")]

use std::time::{SystemTime, UNIX_EPOCH};

/// splitmix64, public domain.
pub struct Chance(pub u64);

impl Chance {
    /// From 0 on, below the limit.
    pub fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (mixed ^ (mixed >> 31)) % limit
    }

    /// From the first to the last, both taken.
    pub fn between(&mut self, first: i64, last: i64) -> i64 {
        first + i64::try_from(self.below(u64::try_from(last - first).unwrap() + 1)).unwrap()
    }

    /// Once in so many times.
    pub fn once_in(&mut self, times: u64) -> bool {
        self.below(times) == 0
    }

    pub fn one_of<T: Clone>(&mut self, choices: &[T]) -> T {
        choices[usize::try_from(self.below(choices.len() as u64)).unwrap()].clone()
    }
}

/// A number from the environment.
pub fn variable<T: std::str::FromStr>(name: &str) -> Option<T> {
    std::env::var(name).ok().map(|text| text.parse().unwrap_or_else(|_| unreachable!("{name} is no number: {text}")))
}

/// Another seed each time, where none is given.
pub fn seed_of_now() -> u64 {
    SystemTime::now().duration_since(UNIX_EPOCH).unwrap().as_secs()
}
