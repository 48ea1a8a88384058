//! A practice's own table of placental weights by week: read from a file with its source, since no verified one comes with the
//! program.

use serde::{Deserialize, Serialize};

use crate::message::Message;

/// Centiles of placental weight by completed week.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct WeightTable {
    /// Whose it is, as the file says.
    pub source: String,
    /// How the placentas were weighed.
    pub weighed: Weighed,
    /// The centiles of its columns, rising, 1 to 99.
    pub centiles: Vec<u32>,
    /// Its rows, by rising week.
    pub rows: Vec<WeightRow>,
}

/// The weights of one week.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
pub struct WeightRow {
    /// Completed week.
    pub week: u32,
    /// At each centile of the table, g, rising.
    pub grams: Vec<u32>,
}

/// How a placenta was weighed that can stand in a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Weighed {
    /// With cord and membranes.
    Untrimmed,
    /// Without.
    Trimmed,
}

/// Where a weight stands in a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Below the lowest centile, which is this.
    Below(u32),
    /// At or above the first centile, and below or at the second.
    Between(u32, u32),
    /// Above the highest centile, which is this.
    Above(u32),
}

/// What is wrong with a file, and in which line.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrong {
    /// Counted from 1; 0 where it is about the whole file.
    pub line: u32,
    /// What, and what to do.
    pub problem: Message,
}

/// Weeks of pregnancy that a table can have.
const WEEKS: std::ops::RangeInclusive<u32> = 20..=44;
/// Weights that a table can have, g.
const GRAMS: std::ops::RangeInclusive<u32> = 20..=3_000;

impl WeightTable {
    /// Reads a table: a line `# source: …`, a line `# weighed: untrimmed` or `trimmed`, a heading `week,p10,p50,p90` with the
    /// centiles that there are, and a row for each week, in g.
    ///
    /// # Errors
    /// The first thing that is wrong.
    pub fn parse(text: &str) -> Result<Self, Wrong> {
        let source = remark(text, "source").filter(|source| !source.is_empty());
        let source = source.ok_or_else(|| wrong(0, "weights-no-source"))?.to_owned();
        let weighed = match remark(text, "weighed") {
            Some("untrimmed") => Weighed::Untrimmed,
            Some("trimmed") => Weighed::Trimmed,
            _ => return Err(wrong(0, "weights-no-state")),
        };
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).trim(csv::Trim::All).from_reader(text.as_bytes());
        let heading = reader.headers().map_err(|fault| unreadable(&fault))?.clone();
        let centiles = heading_centiles(&heading)?;
        let mut rows: Vec<WeightRow> = Vec::new();
        for record in reader.records() {
            let record = record.map_err(|fault| unreadable(&fault))?;
            let line = record.position().map_or(0, |position| u32::try_from(position.line()).unwrap_or(0));
            let row = row(&record).ok_or_else(|| wrong(line, "weights-no-number"))?;
            if rows.last().is_some_and(|last| last.week >= row.week) {
                return Err(wrong(line, "weights-not-rising-weeks"));
            }
            if !row.grams.is_sorted_by(|one, next| one < next) {
                return Err(wrong(line, "weights-not-rising"));
            }
            rows.push(row);
        }
        if rows.is_empty() {
            return Err(wrong(0, "weights-empty"));
        }
        Ok(Self { source, weighed, centiles, rows })
    }

    /// Where so many g stand among placentas of that completed week; none where the table has no such week.
    #[must_use]
    pub fn standing(&self, week: u32, grams: u32) -> Option<Standing> {
        let row = self.rows.iter().find(|row| row.week == week)?;
        let marks = || self.centiles.iter().copied().zip(row.grams.iter().copied());
        let below = marks().rev().find(|(_, at)| *at <= grams);
        let above = marks().find(|(_, at)| *at >= grams);
        Some(match (below, above) {
            (None, _) => Standing::Below(*self.centiles.first()?),
            (_, None) => Standing::Above(*self.centiles.last()?),
            (Some((below, _)), Some((above, _))) => Standing::Between(below, above),
        })
    }
}

impl Weighed {
    /// The choice of `weighed-as` that says the same.
    #[must_use]
    pub fn option(self) -> &'static str {
        match self {
            Self::Untrimmed => "untrimmed",
            Self::Trimmed => "trimmed",
        }
    }
}

/// What a line `# name: …` says.
fn remark<'a>(text: &'a str, name: &str) -> Option<&'a str> {
    text.lines().find_map(|line| line.strip_prefix('#')?.trim().strip_prefix(name)?.trim_start().strip_prefix(':')).map(str::trim)
}

fn heading_centiles(heading: &csv::StringRecord) -> Result<Vec<u32>, Wrong> {
    let bad = || wrong(heading.position().map_or(1, |position| u32::try_from(position.line()).unwrap_or(1)), "weights-heading");
    let mut columns = heading.iter();
    if columns.next() != Some("week") {
        return Err(bad());
    }
    let centile = |name: &str| name.strip_prefix('p')?.parse().ok().filter(|centile| (1..=99).contains(centile));
    let centiles: Vec<u32> = columns.map(centile).collect::<Option<_>>().ok_or_else(bad)?;
    if centiles.is_empty() || !centiles.is_sorted_by(|one, next| one < next) {
        return Err(bad());
    }
    Ok(centiles)
}

fn row(record: &csv::StringRecord) -> Option<WeightRow> {
    let mut numbers = record.iter().map(|text| text.parse::<u32>().ok());
    let week = numbers.next()??;
    let grams = numbers.collect::<Option<Vec<u32>>>()?;
    (WEEKS.contains(&week) && grams.iter().all(|grams| GRAMS.contains(grams))).then_some(WeightRow { week, grams })
}

fn wrong(line: u32, problem: &str) -> Wrong {
    Wrong { line, problem: Message::new(problem).with("line", line) }
}

fn unreadable(fault: &csv::Error) -> Wrong {
    let line = fault.position().map_or(0, |position| u32::try_from(position.line()).unwrap_or(0));
    wrong(line, "weights-columns")
}

#[cfg(test)]
mod tests {
    use super::*;

    // Invented numbers: a table of no cohort.
    const TABLE: &str =
        "# source: A made-up cohort, for this test\n# weighed: untrimmed\nweek,p10,p50,p90\n39, 400, 500, 600\n40,410,510,610\n";

    #[test]
    fn a_table_is_read_and_a_weight_stands_in_it() {
        let table = WeightTable::parse(TABLE).unwrap();
        assert_eq!((table.source.as_str(), table.weighed), ("A made-up cohort, for this test", Weighed::Untrimmed));
        let at = |grams| table.standing(40, grams);
        assert_eq!(at(409), Some(Standing::Below(10)));
        assert_eq!(at(410), Some(Standing::Between(10, 10)));
        assert_eq!(at(411), Some(Standing::Between(10, 50)));
        assert_eq!(at(510), Some(Standing::Between(50, 50)));
        assert_eq!(at(610), Some(Standing::Between(90, 90)));
        assert_eq!(at(611), Some(Standing::Above(90)));
        assert_eq!(table.standing(41, 500), None);
    }

    #[test]
    fn what_is_wrong_is_said_with_its_line() {
        let said = |from: &str, to: &str| {
            let wrong = WeightTable::parse(&TABLE.replace(from, to)).unwrap_err();
            (wrong.line, wrong.problem.id)
        };
        assert_eq!(said("# source: A made-up cohort, for this test", ""), (0, "weights-no-source".to_owned()));
        assert_eq!(said("weighed: untrimmed", "weighed: somehow"), (0, "weights-no-state".to_owned()));
        assert_eq!(said("week,p10,p50,p90", "week,p10,p10,p90").1, "weights-heading");
        assert_eq!(said("week,p10,p50,p90", "ga,p10,p50,p90").1, "weights-heading");
        assert_eq!(said("40,410", "40,four"), (5, "weights-no-number".to_owned()));
        assert_eq!(said("40,410", "400,410"), (5, "weights-no-number".to_owned()));
        assert_eq!(said("40,410", "39,410"), (5, "weights-not-rising-weeks".to_owned()));
        assert_eq!(said("40,410", "40,520"), (5, "weights-not-rising".to_owned()));
        assert_eq!(said("40,410", "40"), (5, "weights-columns".to_owned()));
        assert_eq!(WeightTable::parse("# source: x\n# weighed: trimmed\nweek,p50\n").unwrap_err().problem.id, "weights-empty");
    }
}
