//! What a handover tells, in which part, and what of it is kept where there is no room for all.

/// The four parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Who, and how it stands now.
    Situation,
    /// What came before.
    Background,
    /// What was found and done.
    Assessment,
    /// What is asked for.
    Request,
}

impl Part {
    /// All of them, in order.
    pub const ALL: [Self; 4] = [Self::Situation, Self::Background, Self::Assessment, Self::Request];

    /// The catalogue's id of its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Situation => "handover-situation",
            Self::Background => "handover-background",
            Self::Assessment => "handover-assessment",
            Self::Request => "handover-request",
        }
    }
}

/// What an item is about, in the order in which it is read out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Topic {
    /// Who hands over.
    From,
    /// What tells this birth from others, which is often its address.
    Birth,
    /// The mother.
    Mother,
    /// Whether the placenta is born, and whether all of it is here.
    Placenta,
    /// Blood lost.
    Blood,
    /// The mother's latest signs.
    Signs,
    /// How long it takes to the hospital.
    Way,
    /// Pregnancies, births, gestation.
    Pregnancy,
    /// Blood group.
    Group,
    /// Allergies.
    Allergies,
    /// Conditions that some medicines are a caution with.
    Conditions,
    /// When each baby was born.
    Born,
    /// How the third stage is cared for.
    Care,
    /// Medicines given to the mother.
    Given,
    /// Whose limits are watched.
    Protocol,
    /// Limits that are passed.
    Limits,
    /// Cautions and notes that are passed.
    Cautions,
    /// The response.
    Done,
    /// The perineum.
    Perineum,
    /// Each baby.
    Baby,
    /// What is asked for.
    Asked,
}

/// What is kept longest first. Our own choice: who, how it stands now, what is asked for, what was given; then what the
/// hospital asks next; then the log, and what it has in its own papers.
const KEPT: [Topic; 21] = [
    Topic::Mother,
    Topic::Placenta,
    Topic::Blood,
    Topic::Asked,
    Topic::Born,
    Topic::Allergies,
    Topic::Given,
    Topic::Signs,
    Topic::Limits,
    Topic::Group,
    Topic::Baby,
    Topic::Pregnancy,
    Topic::Conditions,
    Topic::Way,
    Topic::From,
    Topic::Done,
    Topic::Perineum,
    Topic::Care,
    Topic::Cautions,
    Topic::Birth,
    Topic::Protocol,
];

impl Topic {
    /// The part in which it is told.
    #[must_use]
    pub const fn part(self) -> Part {
        match self {
            Self::From | Self::Mother | Self::Birth | Self::Placenta | Self::Blood | Self::Signs | Self::Way => Part::Situation,
            Self::Pregnancy
            | Self::Group
            | Self::Allergies
            | Self::Conditions
            | Self::Born
            | Self::Care
            | Self::Given
            | Self::Protocol => Part::Background,
            Self::Limits | Self::Cautions | Self::Done | Self::Perineum | Self::Baby => Part::Assessment,
            Self::Asked => Part::Request,
        }
    }

    /// Whether it tells who people are, or what they wrote of themselves.
    #[must_use]
    pub const fn is_of_people(self) -> bool {
        matches!(self, Self::From | Self::Mother | Self::Birth | Self::Pregnancy | Self::Group | Self::Allergies | Self::Asked)
    }

    /// The name of it in the catalogue.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::From => "handover-from",
            Self::Mother => "handover-mother",
            Self::Birth => "handover-birth",
            Self::Placenta => "handover-placenta",
            Self::Blood => "handover-blood",
            Self::Signs => "handover-signs",
            Self::Way => "handover-way",
            Self::Pregnancy => "handover-pregnancy",
            Self::Group => "handover-group",
            Self::Allergies => "handover-allergies",
            Self::Conditions => "handover-conditions",
            Self::Born => "handover-born",
            Self::Care => "handover-care",
            Self::Given => "handover-given",
            Self::Protocol => "handover-protocol",
            Self::Limits => "handover-limits",
            Self::Cautions => "handover-cautions",
            Self::Done => "handover-done",
            Self::Perineum => "handover-perineum",
            Self::Baby => "handover-baby",
            Self::Asked => "handover-asked",
        }
    }

    /// Its place among what is kept, 0 being kept longest.
    pub(super) fn importance(self) -> usize {
        KEPT.iter().position(|topic| *topic == self).unwrap_or(KEPT.len())
    }

    /// How many of its items are kept before the topics after it have theirs. Our own choice.
    pub(super) const fn few(self) -> usize {
        match self {
            // The look that was last, and the Apgar scores.
            Self::Signs | Self::Baby => 1,
            Self::Given | Self::Limits | Self::Cautions => 4,
            Self::Done => 6,
            _ => usize::MAX,
        }
    }

    /// Whether the latest of its items is kept longest; else the first is.
    pub(super) const fn newest_first(self) -> bool {
        matches!(self, Self::Given | Self::Done)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_topic_has_its_place_among_what_is_kept_and_stands_with_its_part() {
        let mut all = KEPT.to_vec();
        all.sort_unstable();
        assert!(all.windows(2).all(|pair| pair[0] < pair[1]), "twice: {all:?}");
        assert!(all.windows(2).all(|pair| pair[0].part() <= pair[1].part()), "out of order: {all:?}");
        assert_eq!(KEPT.len(), Topic::Asked as usize + 1, "one is left out");
    }
}
