//! Which marks can be made with one touch, and which are likely next.

use secundine_domain::chart::{Baby, Chart};
use secundine_domain::fact::{BabyNo, Fact, LeavingStep, NewbornEvent, SeparationSign};
use secundine_domain::message::Message;

use crate::api::{MarkGroup, NextMark};

/// Most marks that are offered large.
const LARGE: usize = 3;

/// Every mark that is not yet on record, in the order of events; a further baby comes last.
pub(super) fn all(chart: &Chart) -> Vec<NextMark> {
    let mut facts = Vec::new();
    for (no, baby) in &chart.babies {
        facts.extend(cord(*no, baby));
    }
    facts.extend(placentas(chart));
    facts.push(Fact::BabyBorn { baby: next_baby(chart) });
    facts.into_iter().map(|fact| mark(chart, fact)).collect()
}

/// Marks that can be made again, in groups: the signs of separation while a placenta is awaited, what happens to each baby,
/// and the leaving.
pub(super) fn groups(chart: &Chart) -> Vec<MarkGroup> {
    let group =
        |title: Message, facts: Vec<Fact>| MarkGroup { title, marks: facts.into_iter().map(|fact| mark(chart, fact)).collect() };
    let mut groups = Vec::new();
    let born: Vec<BabyNo> = chart.babies.iter().filter(|(_, baby)| baby.born.is_some()).map(|(no, _)| *no).collect();
    if placentas(chart).iter().any(|fact| matches!(fact, Fact::PlacentaBorn { .. })) {
        let signs = SeparationSign::ALL.into_iter().map(|sign| Fact::SeparationSeen { sign });
        groups.push(group(Message::new("group-separation"), signs.collect()));
    }
    for baby in born {
        let events = NewbornEvent::ALL.into_iter().map(|event| Fact::NewbornEvent { baby, event });
        groups.push(group(chart.numbered(Message::new("group-newborn"), baby), events.collect()));
    }
    if chart.left.is_none() {
        groups.push(group(Message::new("group-leaving"), leaving(chart)));
    }
    groups
}

/// What is seen to before leaving, and the leaving itself.
fn leaving(chart: &Chart) -> Vec<Fact> {
    let open = LeavingStep::ALL.into_iter().filter(|step| chart.leavings.iter().all(|seen| seen.what != *step));
    open.map(|step| Fact::LeavingMarked { step }).chain([Fact::HomeLeft]).collect()
}

/// The likeliest first. Before a birth that is the baby; then the cord of each baby, then placenta and membranes.
pub(super) fn next(chart: &Chart) -> Vec<NextMark> {
    let mut facts: Vec<Fact> = Vec::new();
    if chart.babies.values().all(|baby| baby.born.is_none()) {
        facts.push(Fact::BabyBorn { baby: next_baby(chart) });
    }
    for (no, baby) in &chart.babies {
        // Pulsation is no longer felt for once the cord is clamped, and it is cut only then.
        facts.extend(cord(*no, baby).into_iter().filter(|fact| match fact {
            Fact::CordPulsationStopped { .. } => baby.clamped.is_none(),
            Fact::CordCut { .. } => baby.clamped.is_some(),
            _ => true,
        }));
    }
    facts.extend(placentas(chart));
    facts.into_iter().take(LARGE).map(|fact| mark(chart, fact)).collect()
}

fn cord(baby: BabyNo, known: &Baby) -> Vec<Fact> {
    if known.born.is_none() {
        return vec![Fact::BabyBorn { baby }];
    }
    let open = [
        (known.pulsation_stopped.is_none(), Fact::CordPulsationStopped { baby }),
        (known.clamped.is_none(), Fact::CordClamped { baby }),
        (known.cut.is_none(), Fact::CordCut { baby }),
    ];
    open.into_iter().filter(|(wanted, _)| *wanted).map(|(_, fact)| fact).collect()
}

/// The placenta of each baby that has none, then the membranes of each placenta that is here.
fn placentas(chart: &Chart) -> Vec<Fact> {
    let delivered =
        |no: &BabyNo| chart.placentas.values().any(|placenta| placenta.born.is_some() && placenta.babies.contains(no));
    let born = chart.babies.iter().filter(|(_, baby)| baby.born.is_some()).map(|(no, _)| *no);
    let mut facts: Vec<Fact> = born.filter(|no| !delivered(no)).map(|no| Fact::PlacentaBorn { babies: vec![no] }).collect();
    let bare = chart.placentas.values().filter(|placenta| placenta.born.is_some() && placenta.membranes.is_none());
    facts.extend(bare.map(|placenta| Fact::MembranesBorn { babies: placenta.babies.clone() }));
    facts
}

/// The number that the next baby takes.
pub(crate) fn next_baby(chart: &Chart) -> BabyNo {
    chart.babies.iter().filter(|(_, baby)| baby.born.is_some()).map(|(no, _)| *no).max().unwrap_or(0).saturating_add(1)
}

fn mark(chart: &Chart, fact: Fact) -> NextMark {
    let label = chart.say(&fact);
    NextMark { fact, label }
}
