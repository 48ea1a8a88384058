//! The standards as numbers: parameters from the folder `growth`, and the distributions that they belong to.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use statrs::distribution::{ContinuousCDF, Normal, StudentsT};

use super::Size;

/// The first day of gestation in the tables of INTERGROWTH-21st, 33+0 weeks.
pub const FIRST_DAY: u32 = 231;
/// The last, 42+6 weeks.
pub const LAST_DAY: u32 = 300;

/// By whether it is a girl, and day of gestation.
type Table = BTreeMap<(bool, u32), SkewT>;

static WEIGHT: LazyLock<Table> = LazyLock::new(|| table(include_str!("../../growth/intergrowth21-weight-kg.csv")));
static LENGTH: LazyLock<Table> = LazyLock::new(|| table(include_str!("../../growth/intergrowth21-length-cm.csv")));
static HEAD: LazyLock<Table> = LazyLock::new(|| table(include_str!("../../growth/intergrowth21-head-cm.csv")));
static WHO_WEIGHT: LazyLock<BTreeMap<bool, [f64; 3]>> =
    LazyLock::new(|| who_table(include_str!("../../growth/who2006-birth-weight-kg.csv")));

/// Parameters of the skew-t distribution type 3 (Fernandez and Steel 1998, as in the R package gamlss.dist).
#[derive(Clone, Copy, Debug, PartialEq)]
struct SkewT {
    mu: f64,
    sigma: f64,
    /// Skew; 1 where there is none.
    nu: f64,
    /// Degrees of freedom.
    tau: f64,
}

impl SkewT {
    /// The share of values up to this one, 0 to 1; none for parameters of no such distribution.
    ///
    /// With z = (y − μ)/σ and T the distribution of Student's t with τ degrees of freedom: 2 T(νz)/(1 + ν²) below μ, and
    /// (1 + 2ν² (T(z/ν) − ½))/(1 + ν²) from there on.
    fn share(self, value: f64) -> Option<f64> {
        let Self { mu, sigma, nu, tau } = self;
        let student = StudentsT::new(0.0, 1.0, tau).ok()?;
        let z = (value - mu) / sigma;
        let both = 1.0 + nu * nu;
        Some(if z < 0.0 { 2.0 * student.cdf(nu * z) / both } else { (1.0 + 2.0 * nu * nu * (student.cdf(z / nu) - 0.5)) / both })
    }
}

/// The centile of a size at this gestation, 0 to 100, by INTERGROWTH-21st. `value` is in the unit of its size, g or mm;
/// none outside the tables.
#[must_use]
pub fn intergrowth(size: Size, girl: bool, gestation: u32, value: u32) -> Option<f64> {
    let (table, per_unit) = match size {
        Size::Weight => (&WEIGHT, 1_000.0),
        Size::Length => (&LENGTH, 10.0),
        Size::Head => (&HEAD, 10.0),
    };
    Some(table.get(&(girl, gestation))?.share(f64::from(value) / per_unit)? * 100.0)
}

/// The centile of a weight in g among babies born at term, 0 to 100, by WHO 2006: z = ((y/M)^L − 1)/(L S), Cole and Green
/// 1992; none for a weight of 0.
#[must_use]
pub fn who_weight(girl: bool, grams: u32) -> Option<f64> {
    let [l, m, s] = *WHO_WEIGHT.get(&girl).filter(|_| grams > 0)?;
    let z = ((f64::from(grams) / 1_000.0 / m).powf(l) - 1.0) / (l * s);
    Some(Normal::standard().cdf(z) * 100.0)
}

/// The rows of a table, as their columns; a row that is none is left out, and missed by a test.
fn rows<'a, T>(text: &'a str, row: impl Fn(&[&'a str]) -> Option<T>) -> impl Iterator<Item = T> {
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    lines.filter_map(move |line| row(&line.split(',').collect::<Vec<_>>()))
}

fn table(text: &str) -> Table {
    let row = |columns: &[&str]| {
        let [days, _, _, sex, mu, sigma, nu, tau] = columns else { return None };
        let [mu, sigma, nu, tau] = numbers([mu, sigma, nu, tau])?;
        Some(((is_girl(sex)?, days.parse().ok()?), SkewT { mu, sigma, nu, tau }))
    };
    rows(text, row).collect()
}

fn who_table(text: &str) -> BTreeMap<bool, [f64; 3]> {
    let row = |columns: &[&str]| {
        let [sex, l, m, s] = columns else { return None };
        Some((is_girl(sex)?, numbers([l, m, s])?))
    };
    rows(text, row).collect()
}

fn is_girl(sex: &str) -> Option<bool> {
    match sex {
        "Female" => Some(true),
        "Male" => Some(false),
        _ => None,
    }
}

fn numbers<const N: usize>(texts: [&str; N]) -> Option<[f64; N]> {
    let numbers = texts.map(|text| text.parse().ok());
    numbers.iter().all(Option::is_some).then(|| numbers.map(|number: Option<f64>| number.unwrap_or_default()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_day_of_each_table_is_read() {
        for table in [&WEIGHT, &LENGTH, &HEAD] {
            let days = |girl| table.keys().filter(move |(of, _)| *of == girl).map(|(_, day)| *day).collect::<Vec<_>>();
            let all: Vec<u32> = (FIRST_DAY..=LAST_DAY).collect();
            assert_eq!((days(false), days(true)), (all.clone(), all));
        }
        assert_eq!(WHO_WEIGHT.len(), 2);
    }
}
