//! The scale of one lane: round numbers from below what was read to above it, with the nearest line of the protocol on
//! either side.

use crate::protocol::Milli;

/// Parts that a scale is divided into, about. Ours.
const PARTS: i64 = 3;
/// The least step, in thousandths: no sign is read finer than a tenth.
const LEAST_STEP: i64 = 100;

/// A scale in thousandths of a unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Scale {
    pub low: Milli,
    pub high: Milli,
    step: i64,
}

/// What a scale has to hold, in thousandths; it grows as more is put in.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Reach(Option<(i64, i64)>);

impl Reach {
    /// With one value more.
    pub fn with(self, value: Milli) -> Self {
        let Milli(value) = value;
        Self(Some(self.0.map_or((value, value), |(low, high)| (low.min(value), high.max(value)))))
    }

    /// With both.
    pub fn and(self, other: Self) -> Self {
        other.0.map_or(self, |(low, high)| self.with(Milli(low)).with(Milli(high)))
    }

    /// With the nearest line above and the nearest below; `upper` where larger values pass it.
    pub fn to_lines(self, lines: impl Iterator<Item = (Milli, bool)> + Clone) -> Self {
        let Some((low, high)) = self.0 else { return self };
        let above = lines.clone().filter(|(Milli(value), upper)| *upper && *value >= high).map(|(value, _)| value).min();
        let below = lines.filter(|(Milli(value), upper)| !*upper && *value <= low).map(|(value, _)| value).max();
        [above, below].into_iter().flatten().fold(self, Self::with)
    }

    /// The scale; none where nothing was read.
    pub fn scale(self) -> Option<Scale> {
        let (low, high) = self.0?;
        let span = match high - low {
            0 => high.abs() / 10,
            span => span,
        };
        let step = round_up(span / PARTS);
        let low = low.div_euclid(step) * step;
        let high = (-(-high).div_euclid(step) * step).max(low + step);
        Some(Scale { low: Milli(low), high: Milli(high), step })
    }
}

impl Scale {
    /// Where it is numbered, least first.
    pub fn grid(self) -> Vec<f64> {
        let (Milli(low), Milli(high)) = (self.low, self.high);
        let count = (high - low) / self.step;
        (0..=count).map(|n| f64::from(Milli(low + n * self.step))).collect()
    }

    /// Whether a value lies on it.
    pub fn holds(self, value: Milli) -> bool {
        (self.low..=self.high).contains(&value)
    }
}

/// The next of 1, 2, 5, 10, 20, 50 and so on, at or above it.
fn round_up(least: i64) -> i64 {
    let mut ten = LEAST_STEP;
    loop {
        if let Some(step) = [1, 2, 5].into_iter().map(|n| n * ten).find(|step| *step >= least) {
            return step;
        }
        ten = ten.saturating_mul(10);
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

    use super::*;

    fn scale(values: &[u32], lines: &[(u32, bool)]) -> Scale {
        let reach = values.iter().fold(Reach::default(), |reach, value| reach.with(Milli::from(*value)));
        let lines: Vec<(Milli, bool)> = lines.iter().map(|(value, upper)| (Milli::from(*value), *upper)).collect();
        reach.to_lines(lines.iter().copied()).scale().unwrap()
    }

    #[test]
    fn it_reaches_to_the_nearest_line_on_either_side_and_no_further() {
        let found = scale(&[82, 96], &[(50, false), (40, false), (100, true), (120, true)]);
        assert_eq!(found.grid(), [40.0, 60.0, 80.0, 100.0]);
        let past = scale(&[82, 130], &[(100, true), (120, true)]);
        assert_eq!(past.grid(), [80.0, 100.0, 120.0, 140.0]);
    }

    #[test]
    fn one_value_alone_has_a_scale() {
        assert_eq!(scale(&[92], &[]).grid(), [90.0, 95.0]);
        assert_eq!(scale(&[0], &[]).grid(), [0.0, 0.1]);
        assert_eq!(Reach::default().scale(), None);
    }

    #[test]
    fn tenths_of_a_degree_are_told_apart() {
        let degrees = Reach::default().with(Milli(36_700)).with(Milli(36_900)).scale().unwrap();
        assert_eq!(degrees.grid(), [36.7, 36.8, 36.9]);
        assert!(degrees.holds(Milli(36_700)) && degrees.holds(Milli(36_900)) && !degrees.holds(Milli(37_000)));
    }

    #[test]
    fn no_value_makes_it_run_away() {
        let wide = Reach::default().with(Milli(0)).with(Milli(i64::MAX / 4)).scale().unwrap();
        assert!(wide.grid().len() < 8);
    }
}
