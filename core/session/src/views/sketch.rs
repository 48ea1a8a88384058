//! The drawing of a placenta, and what can be set on it.

use secundine_domain::chart::Chart;
use secundine_domain::examination::{Examined, Item, Kind, Part, asked, sketch};
use secundine_domain::fact::{BabyNo, of_cord};
use secundine_domain::message::Message;

use crate::api::{PlaceItem, SketchView};

pub(crate) fn drawn(chart: &Chart, order: &[String], placenta: BabyNo) -> SketchView {
    let examined = chart.examined(placenta);
    let asked = asked(examined, &chart.fed(placenta), order).into_iter().filter(|(item, _)| item.kind == Kind::Places);
    let items = asked.map(|(one, cord)| item(examined, one, cord)).collect();
    SketchView { placenta, sketch: sketch(chart, placenta), items }
}

fn item(examined: &Examined, item: &Item, cord: Option<BabyNo>) -> PlaceItem {
    PlaceItem {
        item: item.id.clone(),
        cord,
        question: of_cord(item.name(), cord),
        how: Message::new(format!("exam-{}-how", item.id)),
        maternal: item.part == Part::MaternalSide,
        max: item.max,
        sizes: item.sizes.clone(),
        places: examined.places(&item.id, cord).to_vec(),
        entry: examined.at(&item.id, cord).map(|given| given.entry),
    }
}
