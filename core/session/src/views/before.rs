//! Before a birth: each thing on this device in words. It tells what is in place and what is not, and calls nothing safe.

use secundine_domain::chart::CLOCK_STEP_MS;
use secundine_domain::message::Message;
use secundine_domain::time::{Stamp, parse_local, span};

use crate::api::{DeviceTold, Standing, Thing, ThingView};
use crate::practice::ClockSince;

/// Percent of charge under which it is told. (ours)
const LEAST_BATTERY: u8 = 20;
/// Percent of volume up to which it is told. (ours)
const FAINT: u8 = 30;
/// Bytes under which it is told that there is little room: 500 MB. (ours)
const LEAST_FREE: u64 = 500_000_000;
/// Days after which a backup is told to be old. (ours)
const OLD_DAYS: i64 = 7;
const DAY_MS: i64 = 86_400_000;

/// What is known without asking the device.
pub(crate) struct Known {
    /// Bytes that are free, where the system tells.
    pub free: Option<u64>,
    pub clock: ClockSince,
    pub device_key: bool,
    /// Local date and time of the last backup, `2026-11-25 03:12`.
    pub backup: Option<String>,
    /// The choice of the protocol in words.
    pub protocol: Option<Message>,
}

pub(crate) fn before_birth(device: &DeviceTold, known: &Known, now: &Stamp) -> Vec<ThingView> {
    let asked = |thing, told: Option<bool>| match told {
        Some(true) => view(thing, Standing::InPlace, plain(thing, "yes")),
        Some(false) => view(thing, Standing::NotInPlace, plain(thing, "no")),
        None => view(thing, Standing::CannotTell, Message::new("thing-cannot-tell")),
    };
    let percent = |thing, told: Option<u8>, enough: fn(u8) -> bool| match told {
        Some(value) => view(thing, standing(enough(value)), Message::new("thing-percent").with("value", u32::from(value))),
        None => asked(thing, None),
    };
    vec![
        asked(Thing::Notifications, device.notifications),
        asked(Thing::ExactReminders, device.exact_reminders),
        percent(Thing::Volume, device.volume, |value| value > FAINT),
        asked(Thing::Vibration, device.vibration),
        percent(Thing::Battery, device.battery, |value| value >= LEAST_BATTERY),
        space(known.free),
        clock(known.clock, now),
        asked(Thing::Awake, device.awake),
        asked(Thing::Key, Some(known.device_key)),
        backup(known.backup.as_deref(), now),
        match &known.protocol {
            Some(said) => view(Thing::Protocol, Standing::InPlace, said.clone()),
            None => asked(Thing::Protocol, Some(false)),
        },
    ]
}

fn space(free: Option<u64>) -> ThingView {
    let Some(free) = free else { return view(Thing::Space, Standing::CannotTell, Message::new("thing-cannot-tell")) };
    let megabytes = u32::try_from(free / 1_000_000).unwrap_or(u32::MAX);
    view(Thing::Space, standing(free >= LEAST_FREE), plain(Thing::Space, "free").with("megabytes", megabytes))
}

fn clock(since: ClockSince, now: &Stamp) -> ThingView {
    let at = |standing, id| view(Thing::Clock, standing, plain(Thing::Clock, id).with("clock", now.date_and_clock()));
    match since {
        ClockSince::Measured { by_ms } if by_ms.unsigned_abs() > CLOCK_STEP_MS.into() => {
            let mut set = at(Standing::NotInPlace, "set");
            set.said = set.said.with("way", if by_ms < 0 { "back" } else { "forward" }).with("by", span(by_ms));
            set
        }
        ClockSince::Measured { .. } => at(Standing::InPlace, "steady"),
        ClockSince::Compared { by_ms } if by_ms < -i64::from(CLOCK_STEP_MS) => {
            let mut behind = at(Standing::NotInPlace, "behind");
            behind.said = behind.said.with("by", span(by_ms));
            behind
        }
        ClockSince::Compared { .. } => at(Standing::InPlace, "after"),
        ClockSince::Nothing => at(Standing::CannotTell, "nothing"),
    }
}

fn backup(made: Option<&str>, now: &Stamp) -> ThingView {
    let Some(made) = made else { return view(Thing::Backup, Standing::NotInPlace, plain(Thing::Backup, "none")) };
    let at = made.split_once(' ').and_then(|(date, clock)| parse_local(date, clock, now.offset_min));
    let days = at.map_or(0, |at| (now.wall_ms - at).max(0) / DAY_MS);
    let said = plain(Thing::Backup, "made").with("made", made).with("days", u32::try_from(days).unwrap_or(u32::MAX));
    view(Thing::Backup, standing(days <= OLD_DAYS), said)
}

fn standing(in_place: bool) -> Standing {
    if in_place { Standing::InPlace } else { Standing::NotInPlace }
}

fn plain(thing: Thing, what: &str) -> Message {
    Message::new(format!("thing-{}-{what}", code(thing)))
}

fn view(thing: Thing, standing: Standing, said: Message) -> ThingView {
    ThingView { thing, name: Message::new(format!("thing-{}", code(thing))), standing, said }
}

fn code(thing: Thing) -> String {
    serde_json::to_value(thing).ok().and_then(|value| value.as_str().map(str::to_owned)).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOW: i64 = 1_795_570_800_000;

    fn known() -> Known {
        let made = Some("2026-11-20 03:12".to_owned());
        Known {
            free: Some(500_000_000),
            clock: ClockSince::Measured { by_ms: 0 },
            device_key: true,
            backup: made,
            protocol: None,
        }
    }

    fn of(device: DeviceTold, known: &Known, thing: Thing) -> (Standing, String) {
        let now = Stamp { wall_ms: NOW, offset_min: 60, zone: None, boot: None };
        let found = before_birth(&device, known, &now).into_iter().find(|view| view.thing == thing).unwrap();
        (found.standing, found.said.id)
    }

    #[test]
    fn each_mark_below_at_and_above() {
        use Standing::{CannotTell, InPlace, NotInPlace};
        let told = |battery, volume| DeviceTold { battery, volume, ..DeviceTold::default() };
        for (battery, standing) in [(Some(19), NotInPlace), (Some(20), InPlace), (None, CannotTell)] {
            assert_eq!(of(told(battery, None), &known(), Thing::Battery).0, standing, "{battery:?}");
        }
        for (volume, standing) in [(Some(30), NotInPlace), (Some(31), InPlace), (None, CannotTell)] {
            assert_eq!(of(told(None, volume), &known(), Thing::Volume).0, standing, "{volume:?}");
        }
        for (free, standing) in [(Some(499_999_999), NotInPlace), (Some(500_000_000), InPlace), (None, CannotTell)] {
            assert_eq!(of(DeviceTold::default(), &Known { free, ..known() }, Thing::Space).0, standing, "{free:?}");
        }
        for (made, standing) in [("2026-11-18 02:39", InPlace), ("2026-11-17 02:41", InPlace), ("2026-11-17 02:40", NotInPlace)] {
            let known = Known { backup: Some(made.to_owned()), ..known() };
            assert_eq!(of(DeviceTold::default(), &known, Thing::Backup).0, standing, "{made}");
        }
        assert_eq!(of(DeviceTold::default(), &Known { backup: None, ..known() }, Thing::Backup).0, NotInPlace);
    }

    #[test]
    fn a_clock_that_was_set_is_told() {
        use ClockSince::{Compared, Measured, Nothing};
        for (clock, id) in [
            (Measured { by_ms: 2_000 }, "thing-clock-steady"),
            (Measured { by_ms: -2_001 }, "thing-clock-set"),
            (Compared { by_ms: -2_000 }, "thing-clock-after"),
            (Compared { by_ms: -2_001 }, "thing-clock-behind"),
            (Nothing, "thing-clock-nothing"),
        ] {
            assert_eq!(of(DeviceTold::default(), &Known { clock, ..known() }, Thing::Clock).1, id, "{clock:?}");
        }
    }
}
