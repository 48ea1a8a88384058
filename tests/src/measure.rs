//! How long something takes, and how much memory.

#![allow(clippy::print_stdout, reason = "what a bench finds is printed")]

use std::process::Command;
use std::time::Instant;

/// How often something is run; the middle counts.
const TIMES: usize = 7;

/// The median of seven runs in ms, and the most memory in MB that the program had meanwhile beyond what it had before. Both are
/// printed.
pub fn report(what: &str, run: impl Fn()) -> (f64, u64) {
    let before = memory("VmRSS");
    let cleared = std::fs::write("/proc/self/clear_refs", "5").is_ok();
    let mut took: Vec<f64> = (0..TIMES)
        .map(|_| {
            let began = Instant::now();
            run();
            began.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    took.sort_by(f64::total_cmp);
    let middle = took.get(TIMES / 2).copied().unwrap_or(f64::NAN);
    let peak = memory("VmHWM").saturating_sub(before) / 1024;
    let known = if cleared { "" } else { " (of the whole run)" };
    println!("{what}: {middle:.0} ms, {peak} MB at most{known}");
    (middle, peak)
}

/// Names what a program that was begun by [`report_alone`] measures.
const ALONE: &str = "SECUNDINE_MEASURED";

/// The same in a process of its own, so that no memory which was had before and given back hides what is taken: this program is
/// begun once more, up to here. So it must not have done the same before.
pub fn report_alone(what: &str, run: impl Fn()) -> (f64, u64) {
    match std::env::var(ALONE) {
        Ok(measured) if measured == what => {
            let (middle, peak) = report(what, run);
            println!("{middle} {peak}");
            std::process::exit(0)
        }
        Ok(_) => (f64::NAN, 0),
        Err(_) => {
            let begun = std::env::current_exe().and_then(|program| Command::new(program).env(ALONE, what).output());
            let told = begun.map(|output| String::from_utf8_lossy(&output.stdout).into_owned()).unwrap_or_default();
            let (said, numbers) = told.trim_end().rsplit_once('\n').unwrap_or_default();
            println!("{said}");
            let read = numbers.split_once(' ').and_then(|(middle, peak)| Some((middle.parse().ok()?, peak.parse().ok()?)));
            read.unwrap_or((f64::NAN, u64::MAX))
        }
    }
}

/// kB, as Linux tells it; 0 elsewhere.
fn memory(name: &str) -> u64 {
    let told = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = told.lines().find_map(|line| line.strip_prefix(name)?.strip_prefix(':'));
    line.and_then(|line| line.split_whitespace().next()?.parse().ok()).unwrap_or(0)
}
