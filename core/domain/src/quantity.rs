//! One type per physical quantity: the unit is in the type, the range is checked when the value is built.
//!
//! The ranges tell a slip of the finger from a number that can be; they are our own choice and say nothing of what is
//! usual or wanted. They may widen in later versions and never narrow, so that every stored value stays readable.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A number that this quantity cannot have.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[error("{quantity} {value} is not between {min} and {max} {unit}")]
pub struct OutOfRange {
    /// Message id of the quantity's name.
    pub quantity: &'static str,
    /// What was offered, in `unit`.
    pub value: i64,
    /// Least value taken.
    pub min: u32,
    /// Greatest value taken.
    pub max: u32,
    /// UCUM code of the unit.
    pub unit: &'static str,
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $id:literal, $unit:literal, $min:literal..=$max:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[cfg_attr(feature = "types", derive(ts_rs::TS))]
        #[serde(try_from = "i64", into = "u32")]
        #[cfg_attr(feature = "types", ts(as = "u32"))]
        pub struct $name(u32);

        impl $name {
            /// UCUM code of the unit.
            pub const UNIT: &'static str = $unit;

            /// The quantity, if the number can be.
            ///
            /// # Errors
            /// [`OutOfRange`] tells the range when the number is outside it.
            pub fn new(value: i64) -> Result<Self, OutOfRange> {
                match u32::try_from(value) {
                    Ok(inside) if ($min..=$max).contains(&inside) => Ok(Self(inside)),
                    _ => Err(OutOfRange { quantity: $id, value, min: $min, max: $max, unit: $unit }),
                }
            }

            /// The number, in the unit of the type.
            #[must_use]
            pub fn get(self) -> u32 {
                self.0
            }
        }

        impl TryFrom<i64> for $name {
            type Error = OutOfRange;
            fn try_from(value: i64) -> Result<Self, OutOfRange> {
                Self::new(value)
            }
        }

        impl From<$name> for u32 {
            fn from(value: $name) -> u32 {
                value.0
            }
        }
    };
}

quantity!(/** A volume of blood, mL. */ Volume, "quantity-volume", "mL", 0..=15_000);
quantity!(/** What an item on the scale weighs, g. */ ItemWeight, "quantity-item-weight", "g", 0..=20_000);
quantity!(/** A baby's weight, g. */ BirthWeight, "quantity-birth-weight", "g", 200..=8_000);
quantity!(/** A length, mm. */ Length, "quantity-length", "mm", 1..=3_000);
quantity!(/** Heart beats in a minute. */ HeartRate, "quantity-heart-rate", "/min", 0..=300);
quantity!(/** A blood pressure, mmHg. */ Pressure, "quantity-pressure", "mm[Hg]", 0..=300);
quantity!(/** Breaths in a minute. */ RespiratoryRate, "quantity-respiratory-rate", "/min", 0..=120);
quantity!(/** A body temperature in tenths of a degree Celsius. */ Temperature, "quantity-temperature", "0.1.Cel", 250..=450);
quantity!(/** Oxygen saturation, %. */ Saturation, "quantity-saturation", "%", 0..=100);
quantity!(/** Gestation in completed days. */ Gestation, "quantity-gestation", "d", 140..=315);
quantity!(/** A number of things or times. */ Count, "quantity-count", "1", 0..=200);
quantity!(/** One of the five parts of the Apgar score. */ ApgarPart, "quantity-apgar-part", "{score}", 0..=2);
quantity!(/** A grown person's weight in hundreds of grams. */ BodyWeight, "quantity-body-weight", "hg", 250..=3_500);
quantity!(/** Pain as the person says, from none to the worst. */ PainScore, "quantity-pain", "{score}", 0..=10);
quantity!(/** Whole years. */ Years, "quantity-years", "a", 1..=100);
quantity!(/** Whole minutes. */ Minutes, "quantity-minutes", "min", 0..=1_440);

/// How high the fundus stands, finger-breadths: above the umbilicus more than 0, below it less.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "types", derive(ts_rs::TS))]
#[serde(try_from = "i64", into = "i64")]
#[cfg_attr(feature = "types", ts(as = "i32"))]
pub struct FundalHeight(i8);

impl FundalHeight {
    /// The height, if it can be.
    ///
    /// # Errors
    /// Outside ten finger-breadths above or below.
    pub fn new(value: i64) -> Result<Self, NoFundalHeight> {
        i8::try_from(value).ok().filter(|fingers| (-10..=10).contains(fingers)).map(Self).ok_or(NoFundalHeight(value))
    }

    /// Finger-breadths above the umbilicus.
    #[must_use]
    pub fn get(self) -> i8 {
        self.0
    }
}

/// A height that no fundus has.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
#[error("fundal height {0} is not between -10 and 10 finger-breadths")]
pub struct NoFundalHeight(i64);

impl TryFrom<i64> for FundalHeight {
    type Error = NoFundalHeight;
    fn try_from(value: i64) -> Result<Self, NoFundalHeight> {
        Self::new(value)
    }
}

impl From<FundalHeight> for i64 {
    fn from(height: FundalHeight) -> Self {
        Self::from(height.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn takes_both_ends_and_refuses_the_next() {
        assert_eq!(BirthWeight::new(200).unwrap().get(), 200);
        assert_eq!(BirthWeight::new(8_000).unwrap().get(), 8_000);
        for outside in [199, 8_001, -1, i64::MAX] {
            assert_eq!(BirthWeight::new(outside).unwrap_err().value, outside);
        }
    }

    #[test]
    fn a_stored_number_outside_the_range_is_refused_with_its_range() {
        let refusal = serde_json::from_str::<Volume>("99999").unwrap_err().to_string();
        assert!(refusal.contains("99999 is not between 0 and 15000 mL"), "{refusal}");
    }
}
