//! How many chorions there appear to be, from what is seen of the discs, the dividing membrane and the babies.

use std::collections::BTreeSet;

use super::{Case, Figure, Input, input};
use crate::fact::Sex;
use crate::growth::latest;
use crate::message::Message;

/// What one sign speaks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Speaks {
    Dichorionic,
    Monochorionic,
    /// No dividing membrane at all, unless it was torn away.
    Monoamniotic,
}

/// The item, its choice, and what it speaks for. Source: pathologyoutlines.com, twins; WebPath PLAC005; seen (two layers alone
/// being monochorionic is from memory).
const SIGNS: [(&str, &str, Speaks); 7] = [
    ("dividing-look", "thick", Speaks::Dichorionic),
    ("dividing-look", "thin", Speaks::Monochorionic),
    ("dividing-look", "none", Speaks::Monoamniotic),
    ("dividing-layers", "four", Speaks::Dichorionic),
    ("dividing-layers", "two", Speaks::Monochorionic),
    ("crossing-vessels", "stop", Speaks::Dichorionic),
    ("crossing-vessels", "cross", Speaks::Monochorionic),
];

/// None for a single baby. It is what appears: a laboratory decides.
pub(super) fn figure(case: Case<'_>) -> Option<Figure> {
    if case.chart.babies.len() < 2 {
        return None;
    }
    let mut inputs: Vec<Input> = Vec::new();
    let mut speak = BTreeSet::new();
    for (item, option, speaks) in SIGNS {
        if case.examined.says(item, None, option) {
            inputs.push(input(&format!("exam-{item}"), Message::new(format!("exam-{item}-{option}"))));
            speak.insert(speaks);
        }
    }
    // A separate disc usually has its own chorion; an extra lobe of a shared placenta can look like one. Source: as above, seen.
    if case.babies.len() == 1 && case.chart.placentas.len() > 1 {
        inputs.push(input("figure-input-discs", Message::new("figure-input-separate")));
        speak.insert(Speaks::Dichorionic);
    }
    // Babies of both sexes: from memory, unverified.
    if of_both_sexes(case) {
        inputs.push(input("figure-input-sexes", Message::new("figure-input-both-sexes")));
        speak.insert(Speaks::Dichorionic);
    }
    let of = Vec::from_iter(speak);
    let appears = match of.as_slice() {
        [] => return Some(Figure::needs("chorionicity", Message::new("figure-input-twin-signs"), inputs)),
        [Speaks::Dichorionic] => "figure-appears-dichorionic",
        [Speaks::Monochorionic] => "figure-appears-monochorionic",
        [Speaks::Monoamniotic] | [Speaks::Monochorionic, Speaks::Monoamniotic] => "figure-appears-monoamniotic",
        _ => "figure-appears-unclear",
    };
    Some(Figure::known("chorionicity", Message::new(appears), None, inputs))
}

fn of_both_sexes(case: Case<'_>) -> bool {
    let sex = |wanted: Sex| case.chart.babies.iter().any(|(no, baby)| latest(baby, *no).sex == Some(wanted));
    sex(Sex::Female) && sex(Sex::Male)
}
