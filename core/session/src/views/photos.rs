//! Photographs and what is measured on them.

use secundine_domain::chart::{Chart, Mark, Noted};
use secundine_domain::entry::EntryId;
use secundine_domain::examination::Examination;
use secundine_domain::fact::{Answer, Fact, Photo, PhotoMeasure};
use secundine_domain::message::Message;
use secundine_domain::photo::{FocalFrom, Sizes};

use crate::api::{MeasureView, MeasuredView, OfferView, PhotoView};
use crate::hide;

/// The photographs, in order of time.
pub(super) fn photos(chart: &Chart) -> Vec<PhotoView> {
    let view = |noted: &Noted<Photo>| {
        let photo = noted.what.clone();
        let measures = chart.photo_measures.iter().filter(|measure| measure.what.file == photo.file);
        PhotoView {
            entry: written(chart, &noted.mark),
            title: hide::said(chart.say(&Fact::PhotoTaken(photo.clone()))),
            date: noted.mark.at.date(),
            clock: noted.mark.at.clock(),
            measures: measures.map(|measure| self::measure(chart, &measure.what, &measure.mark)).collect(),
            photo,
        }
    };
    chart.photos.iter().map(view).collect()
}

fn measure(chart: &Chart, measure: &PhotoMeasure, mark: &Mark) -> MeasureView {
    let sizes = measure.sizes;
    let offers = [("disc-length", sizes.length), ("disc-breadth", sizes.breadth)];
    let offers = offers.into_iter().filter_map(|(item, size)| offer(chart, measure.placenta, item, (size.value + 50) / 100));
    MeasureView { entry: written(chart, mark), measured: measured(&sizes), offers: offers.collect() }
}

/// What a measure of so many mm would be as the answer to an item; none where the item does not take it.
fn offer(chart: &Chart, placenta: u8, id: &str, mm: u32) -> Option<OfferView> {
    let item = Examination::standard().item(id)?;
    let answer = Answer::Measure { value: mm };
    item.check(&answer).ok()?;
    let given = chart.examined(placenta).get(id);
    let entry = given.map(|given| first(chart, given.entry));
    Some(OfferView {
        item: id.to_owned(),
        question: Message::new(format!("exam-{id}")),
        said: answer.describe(id),
        taken: given.is_some_and(|given| given.answer == answer),
        answer,
        entry,
    })
}

/// Sizes in words.
pub(crate) fn measured(sizes: &Sizes) -> MeasuredView {
    let camera =
        Message::new("photo-camera").with("cm", f64::from(sizes.height / 10)).with("degrees", f64::from((sizes.tilt + 5) / 10));
    let focal = Message::new(match sizes.focal_from {
        FocalFrom::Plane => "photo-focal-plane",
        FocalFrom::Camera => "photo-focal-camera",
        FocalFrom::Usual => "photo-focal-usual",
    });
    MeasuredView { sizes: sizes.parts(), camera: vec![camera, focal] }
}

/// The entry of a mark as it was first written.
fn written(chart: &Chart, mark: &Mark) -> EntryId {
    first(chart, mark.entry)
}

fn first(chart: &Chart, entry: EntryId) -> EntryId {
    let line = chart.lines.iter().find(|line| line.first.id == entry || line.current().id == entry);
    line.map_or(entry, |line| line.first.id)
}
