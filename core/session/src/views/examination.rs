//! The examination of each placenta.

use secundine_domain::assess::Finding;
use secundine_domain::chart::{Chart, Placenta};
use secundine_domain::examination::{Asked, Examined, Item, Kind, asked, figures, in_order_of, reasons};
use secundine_domain::fact::{BabyNo, of_cord};
use secundine_domain::message::Message;
use secundine_domain::protocol::{Level, Protocol};

use super::counted;
use crate::api::{ExaminationView, ItemView, OptionView};

/// Stretches of cord that are easily measured, mm.
const STRETCHES_MM: [u32; 5] = [100, 200, 300, 400, 500];

/// One for each placenta born.
pub(super) fn examinations(
    chart: &Chart,
    protocol: Option<&Protocol>,
    order: &[String],
    findings: &[Finding],
) -> Vec<ExaminationView> {
    let born = chart.placentas.iter().filter(|(_, placenta)| placenta.born.is_some());
    born.map(|(no, Placenta { babies, .. })| {
        let examined = chart.examined(*no);
        let asked = asked(examined, babies, order).into_iter().filter(|(item, _)| item.kind != Kind::Places);
        let items: Vec<ItemView> =
            asked.map(|(one, cord)| item(examined, one, cord, level(findings, *no, &one.id, cord))).collect();
        let answered = items.iter().filter(|item| item.answer.is_some()).count();
        ExaminationView {
            placenta: *no,
            babies: babies.clone(),
            answered: counted(answered),
            own_order: !order.is_empty(),
            figures: figures(chart, *no),
            reasons: reasons(chart, protocol, *no),
            gone_through: if answered == items.len() { gone_through(examined, order) } else { None },
            items,
        }
    })
    .collect()
}

fn item(examined: &Examined, item: &Item, cord: Option<BabyNo>, level: Option<Level>) -> ItemView {
    let id = &item.id;
    let given = examined.at(id, cord);
    let option = |option: &str| OptionView { option: option.to_owned(), label: Message::new(format!("exam-{id}-{option}")) };
    ItemView {
        item: id.clone(),
        part: item.part,
        cord,
        kind: item.kind,
        question: of_cord(item.name(), cord),
        how: Message::new(format!("exam-{id}-how")),
        options: item.options.iter().map(|choice| option(&choice.id)).collect(),
        none: item.none.clone(),
        all: item.all,
        quick: item.quick.clone(),
        stretches: if item.kind == Kind::Coils { stretches(examined, cord) } else { Vec::new() },
        min: item.min,
        max: item.max,
        answer_words: given.map(|given| given.answer.describe(id)),
        answer: given.map(|given| given.answer.clone()),
        entry: given.map(|given| given.entry),
        level,
    }
}

/// Lengths of cord over which coils may have been counted, mm.
fn stretches(examined: &Examined, cord: Option<BabyNo>) -> Vec<u32> {
    let whole = examined.measure("cord-length", cord);
    whole.into_iter().chain(STRETCHES_MM.into_iter().filter(|mm| whole != Some(*mm))).collect()
}

/// The order in which the items were answered, where it is not the practice's.
fn gone_through(examined: &Examined, order: &[String]) -> Option<Vec<String>> {
    let mut given: Vec<_> = examined.given.iter().collect();
    given.sort_by_key(|(_, given)| given.entry);
    let mut items: Vec<String> = Vec::new();
    for (Asked { item, .. }, _) in given {
        if !items.contains(item) {
            items.push(item.clone());
        }
    }
    let ids = |order: &[String]| in_order_of(order).iter().map(|item| item.id.clone()).collect::<Vec<_>>();
    (ids(&items) != ids(order)).then_some(items)
}

fn level(findings: &[Finding], placenta: BabyNo, item: &str, of: Option<BabyNo>) -> Option<Level> {
    findings.iter().find(|finding| finding.about.is_of_answer(placenta, item, of) && finding.level.is_some())?.level
}
