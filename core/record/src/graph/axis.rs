//! The axis of time.

use secundine_domain::message::Message;
use secundine_domain::picture::Span;

use super::canvas::{Canvas, Pen};
use super::name;
use crate::page::Align;

const MINUTE: i64 = 60_000;
/// Between two ticks, in minutes: the first that leaves no more than [`TICKS`].
const STEPS: [i64; 11] = [1, 2, 5, 10, 15, 30, 60, 120, 240, 360, 720];
const TICKS: i64 = 8;
/// Room before the first and after the last, as a share of the whole.
const PAD: f32 = 0.03;

/// Where a moment lies.
pub(super) struct Axis {
    span: Span,
    zero_local_ms: i64,
    from_birth: bool,
    left: f32,
    width: f32,
}

impl Axis {
    pub fn new(span: Span, zero_local_ms: i64, from_birth: bool, (left, width): (f32, f32)) -> Self {
        Self { span, zero_local_ms, from_birth, left, width }
    }

    /// Left and right edge, in points.
    pub fn edges(&self) -> (f32, f32) {
        (self.left, self.left + self.width)
    }

    /// Whether a moment lies on it, ms.
    pub fn holds(&self, ms: i64) -> bool {
        (self.span.from_ms..=self.span.to_ms).contains(&ms)
    }

    /// Where a moment lies, in points.
    pub fn x(&self, ms: i64) -> f32 {
        let whole = (self.span.to_ms - self.span.from_ms).max(1) as f32;
        let share = ms.saturating_sub(self.span.from_ms) as f32 / whole;
        self.left + self.width * (PAD + (1.0 - 2.0 * PAD) * share)
    }

    /// Local time of its first and last moment.
    pub fn clocks(&self) -> (String, String) {
        (self.clock(self.span.from_ms), self.clock(self.span.to_ms))
    }

    fn clock(&self, ms: i64) -> String {
        let minutes = self.zero_local_ms.saturating_add(ms).div_euclid(MINUTE).rem_euclid(24 * 60);
        format!("{:02}:{:02}", minutes / 60, minutes % 60)
    }

    fn ticks(&self) -> Vec<i64> {
        let whole = self.span.to_ms - self.span.from_ms;
        let step = STEPS.into_iter().find(|step| whole / (step * MINUTE) <= TICKS).unwrap_or(1_440) * MINUTE;
        let first = -(-self.span.from_ms).div_euclid(step);
        (first..).map(|n| n * step).take_while(|ms| *ms <= self.span.to_ms).collect()
    }

    /// The axis below the lanes: what the clock said, and how long after the birth that was.
    pub fn draw(&self, canvas: &mut Canvas, y: f32) {
        let (left, right) = self.edges();
        canvas.line(&[(left, y), (right, y)], Pen::EDGE);
        name(canvas, y + 9.0, canvas.words.plain("record-time"), true);
        if self.from_birth {
            name(canvas, y + 19.0, canvas.words.plain("record-since"), false);
        }
        for ms in self.ticks() {
            let x = self.x(ms);
            canvas.line(&[(x, y), (x, y + 3.0)], Pen::EDGE);
            canvas.label((x, y + 9.0), self.clock(ms), Align::Centre, true);
            if self.from_birth {
                let since = Message::new("value-minutes").with("value", (ms / MINUTE) as f64);
                canvas.label((x, y + 19.0), canvas.words.say(&since), Align::Centre, false);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn axis(from_ms: i64, to_ms: i64) -> Axis {
        Axis::new(Span { from_ms, to_ms }, 9_660_000, true, (100.0, 300.0))
    }

    #[test]
    fn ticks_are_round_and_few_however_long_the_night() {
        assert_eq!(axis(-60_000, 10 * MINUTE).ticks().len(), 6);
        for hours in [1, 2, 5, 12, 24, 47] {
            let ticks = axis(-MINUTE, hours * 60 * MINUTE).ticks();
            assert!((3..=10).contains(&ticks.len()), "{hours} h: {ticks:?}");
            assert!(ticks.contains(&0), "{hours} h: {ticks:?}");
        }
    }

    #[test]
    fn every_moment_lies_between_the_edges_in_its_order() {
        let axis = axis(-60_000, 3_600_000);
        let places: Vec<f32> = [-60_000, 0, 1, 1_800_000, 3_600_000].map(|ms| axis.x(ms)).to_vec();
        assert!(places.is_sorted(), "{places:?}");
        assert!(places.iter().all(|x| (100.0..=400.0).contains(x)), "{places:?}");
        assert!(axis.holds(3_600_000) && !axis.holds(3_600_001));
        assert_eq!(axis.clocks(), ("02:40".to_owned(), "03:41".to_owned()));
    }
}
