//! The unit of each number in the table, as the stored form names the number.

use secundine_domain::quantity::{
    ApgarPart, BirthWeight, Count, Gestation, HeartRate, ItemWeight, Length, Minutes, PainScore, Pressure, RespiratoryRate,
    Saturation, Volume, Years,
};

/// A unit, by its UCUM code, and how many of what is stored make one of it.
#[derive(Clone, Copy)]
pub(super) struct Unit {
    pub code: &'static str,
    pub parts: u32,
}

impl Unit {
    pub const fn of(code: &'static str) -> Self {
        Self { code, parts: 1 }
    }
}

const fn tenths(code: &'static str) -> Unit {
    Unit { code, parts: 10 }
}

const fn hundredths(code: &'static str) -> Unit {
    Unit { code, parts: 100 }
}

const PIXEL: Unit = Unit::of("{pixel}");
/// A number that counts or names something.
const BARE: Unit = Unit::of("1");

const UNITS: &[(&str, Unit)] = &[
    ("apgar_scored.minute", Unit::of(Minutes::UNIT)),
    ("apgar_scored.colour", Unit::of(ApgarPart::UNIT)),
    ("apgar_scored.heart_rate", Unit::of(ApgarPart::UNIT)),
    ("apgar_scored.reflex", Unit::of(ApgarPart::UNIT)),
    ("apgar_scored.tone", Unit::of(ApgarPart::UNIT)),
    ("apgar_scored.breathing", Unit::of(ApgarPart::UNIT)),
    ("apgar_scored.total", Unit::of(ApgarPart::UNIT)),
    ("blood_loss.gross", Unit::of(ItemWeight::UNIT)),
    ("blood_loss.dry", Unit::of(ItemWeight::UNIT)),
    ("blood_loss.net", Unit::of(ItemWeight::UNIT)),
    ("blood_loss.volume", Unit::of(Volume::UNIT)),
    ("birth_joined.told.ago_ms", Unit::of("ms")),
    ("birth_joined.told.fact.data.baby", BARE),
    ("birth_joined.told.fact.data.babies", BARE),
    ("clocks_compared.ahead_ms", Unit::of("ms")),
    ("clocks_compared.error_ms", Unit::of("ms")),
    ("term_set.years", Unit::of(Years::UNIT)),
    ("client_recorded.gestation", Unit::of(Gestation::UNIT)),
    ("client_recorded.gravida", Unit::of(Count::UNIT)),
    ("client_recorded.para", Unit::of(Count::UNIT)),
    // Stored in hundreds of grams.
    ("client_recorded.weight", tenths("kg")),
    ("client_recorded.height", Unit::of(Length::UNIT)),
    ("mother_observed.pulse", Unit::of(HeartRate::UNIT)),
    ("mother_observed.systolic", Unit::of(Pressure::UNIT)),
    ("mother_observed.diastolic", Unit::of(Pressure::UNIT)),
    ("mother_observed.respirations", Unit::of(RespiratoryRate::UNIT)),
    ("mother_observed.temperature", tenths("Cel")),
    ("mother_observed.saturation", Unit::of(Saturation::UNIT)),
    ("mother_observed.fundal_height", Unit::of("{finger-breadth}")),
    ("mother_observed.urine", Unit::of(Volume::UNIT)),
    ("mother_observed.pain", Unit::of(PainScore::UNIT)),
    ("newborn_measured.weight", Unit::of(BirthWeight::UNIT)),
    ("newborn_measured.length", Unit::of(Length::UNIT)),
    ("newborn_measured.head", Unit::of(Length::UNIT)),
    ("newborn_measured.temperature", tenths("Cel")),
    ("newborn_measured.heart_rate", Unit::of(HeartRate::UNIT)),
    ("newborn_measured.respirations", Unit::of(RespiratoryRate::UNIT)),
    ("placenta_born.babies", BARE),
    ("membranes_born.babies", BARE),
    ("photo_taken.width", PIXEL),
    ("photo_taken.height", PIXEL),
    ("photo_taken.focal", PIXEL),
    ("photo_measured.width", PIXEL),
    ("photo_measured.height", PIXEL),
    ("photo_measured.focal", PIXEL),
    ("photo_measured.sizes.length.value", hundredths("mm")),
    ("photo_measured.sizes.length.plus_minus", hundredths("mm")),
    ("photo_measured.sizes.breadth.value", hundredths("mm")),
    ("photo_measured.sizes.breadth.plus_minus", hundredths("mm")),
    ("photo_measured.sizes.area.value", Unit::of("mm2")),
    ("photo_measured.sizes.area.plus_minus", Unit::of("mm2")),
    ("photo_measured.sizes.insertion.distance.value", hundredths("mm")),
    ("photo_measured.sizes.insertion.distance.plus_minus", hundredths("mm")),
    ("photo_measured.sizes.tilt", tenths("deg")),
    ("photo_measured.sizes.height", Unit::of("mm")),
    ("photo_measured.formula", BARE),
    ("touched_again.after_ms", Unit::of("ms")),
    ("travel_time_set.minutes", Unit::of(Minutes::UNIT)),
    ("voice_noted.ms", Unit::of("ms")),
    ("voice_noted.chapters.at_ms", Unit::of("ms")),
];

/// The unit of a number; none where this version knows none.
pub(super) fn unit(what: &str) -> Option<Unit> {
    // A numbered place has the unit of its kind.
    let plain = |part: &&str| !part.bytes().all(|byte| byte.is_ascii_digit());
    let kind = what.split('.').filter(plain).collect::<Vec<_>>().join(".");
    UNITS.iter().find(|(known, _)| *known == kind).map(|(_, unit)| *unit)
}
