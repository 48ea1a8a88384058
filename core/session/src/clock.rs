//! Where the time comes from.

mod blind;

use std::sync::{Arc, Mutex, PoisonError};

use chrono::Local;
use secundine_domain::time::{Boot, Stamp};

pub(crate) use blind::BlindClock;

/// A source of time.
pub trait Clock: Send + Sync {
    /// Reads all clocks of the device back to back.
    fn now(&self) -> Stamp;
}

/// The clocks of this device.
pub struct SystemClock {
    zone: Option<String>,
    boot_id: Option<String>,
}

impl SystemClock {
    /// Asks the system once for what does not change while the program runs.
    #[must_use]
    pub fn new() -> Self {
        Self { zone: iana_time_zone::get_timezone().ok(), boot_id: boot_id() }
    }
}

impl Default for SystemClock {
    fn default() -> Self {
        Self::new()
    }
}

impl Clock for SystemClock {
    fn now(&self) -> Stamp {
        let local = Local::now();
        let since_ms = since_boot_ms();
        let boot = self.boot_id.clone().zip(since_ms).map(|(id, since_ms)| Boot { id, since_ms });
        Stamp {
            wall_ms: local.timestamp_millis(),
            offset_min: local.offset().local_minus_utc() / 60,
            zone: self.zone.clone(),
            boot,
        }
    }
}

/// Milliseconds since boot on the clock that runs through suspend.
#[cfg(any(target_os = "linux", target_os = "android"))]
fn since_boot_ms() -> Option<i64> {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::Boottime);
    Some(time.tv_sec * 1000 + time.tv_nsec / 1_000_000)
}

/// Apple's CLOCK_MONOTONIC runs through suspend, as `mach_continuous_time` does and its CLOCK_UPTIME_RAW does not; a wall clock
/// that is set does not move it.
#[cfg(target_vendor = "apple")]
fn since_boot_ms() -> Option<i64> {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::Monotonic);
    Some(time.tv_sec * 1000 + time.tv_nsec / 1_000_000)
}

#[cfg(not(any(target_os = "linux", target_os = "android", target_vendor = "apple")))]
fn since_boot_ms() -> Option<i64> {
    None
}

/// Names this run of the device. Where the system does not tell, distances come from the wall clock and say so.
#[cfg(not(any(target_os = "android", target_vendor = "apple")))]
fn boot_id() -> Option<String> {
    id_of_kernel()
}

#[cfg(not(target_vendor = "apple"))]
fn id_of_kernel() -> Option<String> {
    std::fs::read_to_string("/proc/sys/kernel/random/boot_id").ok().map(|text| text.trim().to_owned())
}

/// Names this run of the device. Android hides the kernel's name from programs, by a rule that differs between devices; how
/// often the device has booted is told to all of them, and the Kotlin side leaves it in the process before anything else runs
/// there (mobile/plugin, `Boot`). Where neither is told, distances come from the wall clock and say so.
#[cfg(target_os = "android")]
fn boot_id() -> Option<String> {
    boots(std::env::var("SECUNDINE_BOOT").ok().as_deref()).or_else(id_of_kernel)
}

/// A name made of how often the device has booted. A number alone could be taken for another device's: the name is made blind
/// before it is written anywhere, and never leaves the device.
#[cfg(any(target_os = "android", test))]
fn boots(told: Option<&str>) -> Option<String> {
    let count: u32 = told?.parse().ok().filter(|count| *count > 0)?;
    Some(format!("boot {count}"))
}

/// Names this run of the device. The name of the setting is in no public header of Apple's; where it is gone, distances
/// come from the wall clock and say so.
#[cfg(target_vendor = "apple")]
fn boot_id() -> Option<String> {
    use sysctl::Sysctl;
    let told = sysctl::Ctl::new("kern.bootsessionuuid").and_then(|setting| setting.value_string());
    told.ok().map(|text| text.trim().to_owned()).filter(|text| !text.is_empty())
}

/// A clock that is moved by hand, for rehearsals played at once and for tests.
#[derive(Clone)]
pub struct HandClock(Arc<Mutex<Stamp>>);

impl HandClock {
    /// Stands at this moment.
    #[must_use]
    pub fn at(stamp: Stamp) -> Self {
        Self(Arc::new(Mutex::new(stamp)))
    }

    /// Moves both the wall and the running clock.
    pub fn advance(&self, ms: i64) {
        self.change(|stamp| {
            stamp.wall_ms += ms;
            if let Some(boot) = &mut stamp.boot {
                boot.since_ms += ms;
            }
        });
    }

    /// Changes the stamp in any way, such as setting the wall clock alone.
    pub fn change(&self, change: impl FnOnce(&mut Stamp)) {
        change(&mut self.0.lock().unwrap_or_else(PoisonError::into_inner));
    }
}

impl Clock for HandClock {
    fn now(&self) -> Stamp {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }
}

/// A clock that starts with another and runs faster, for rehearsals.
pub(crate) struct FastClock {
    source: Arc<dyn Clock>,
    start: Stamp,
    speed: i64,
}

impl FastClock {
    pub(crate) fn new(source: Arc<dyn Clock>, speed: u32) -> Self {
        Self { start: source.now(), source, speed: i64::from(speed) }
    }

    /// Milliseconds since the start, on this clock.
    pub(crate) fn elapsed_ms(&self) -> i64 {
        let now = self.source.now();
        let real = match (&self.start.boot, &now.boot) {
            (Some(start), Some(now)) => now.since_ms - start.since_ms,
            _ => now.wall_ms - self.start.wall_ms,
        };
        real.saturating_mul(self.speed)
    }

    /// This clock at a moment of the script.
    pub(crate) fn at(&self, elapsed_ms: i64) -> Stamp {
        let mut stamp = self.start.clone();
        stamp.wall_ms += elapsed_ms;
        if let Some(boot) = &mut stamp.boot {
            boot.since_ms += elapsed_ms;
        }
        stamp
    }
}

/// The same moment, so many milliseconds earlier.
pub(crate) fn earlier(mut stamp: Stamp, ms: i64) -> Stamp {
    stamp.wall_ms -= ms;
    if let Some(boot) = &mut stamp.boot {
        boot.since_ms -= ms;
    }
    stamp
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_run_is_named_by_how_often_the_device_has_booted() {
        assert_eq!(boots(Some("41")).as_deref(), Some("boot 41"));
        for none in [None, Some(""), Some("0"), Some("-1"), Some("x"), Some("4.5")] {
            assert_eq!(boots(none), None, "{none:?}");
        }
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn the_clock_of_this_device_tells_of_its_run() {
        let clock = SystemClock::new();
        let (one, other) = (clock.now().boot.unwrap(), clock.now().boot.unwrap());
        assert!(one.id == other.id && other.since_ms >= one.since_ms && one.since_ms > 0);
    }
}
