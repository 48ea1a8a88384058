//! Charts as the page draws them: everything in words or message ids, so that the page works nothing out.

use std::path::{Path, PathBuf};

use secundine_domain::assess::{ALWAYS_OFFERED, apgar_minutes, assess, blood, blood_share};
use secundine_domain::chart::{Chart, Line, Mark, State};
use secundine_domain::due::due;
use secundine_domain::entry::BirthId;
use secundine_domain::fact::BabyNo;
use secundine_domain::growth::growth;
use secundine_domain::medicines::{Caution, KnownMedicine, known};
use secundine_domain::message::Message;
use secundine_domain::picture::{ChartPicture, chart_picture as picture_of};
use secundine_domain::protocol::Protocol;
use secundine_domain::quantity::Years;
use secundine_domain::time::{Elapsed, Stamp};
use secundine_store::Birth;

use crate::api::{
    AlikeView, ApiError, BabyView, BirthLine, BirthView, CautionView, ClockView, MarkView, MedicineView, Outgoing, Phase,
    PlacentaView, ProtocolLine, Response,
};
use crate::hide;
use crate::practice::{OpenPractice, term};

mod after;
mod before;
mod emergency;
mod examination;
mod handover;
mod locked;
mod marks;
mod own;
mod phones;
mod photos;
mod signed;
mod sketch;
mod timeline;
mod voice;
mod weighed;

pub(crate) use before::{Known, before_birth};
pub(crate) use handover::handover;
pub(crate) use locked::{locked, locked_line};
pub(crate) use marks::next_baby;
pub(crate) use own::{own_protocol, own_state};
pub(crate) use photos::measured;
pub(crate) use signed::signed;
pub(crate) use sketch::drawn;
pub(crate) use voice::to_write_up;
pub(crate) use weighed::weighed_items;

/// The picture of a birth, in which hidden words are told as hidden.
pub(crate) fn chart_picture(chart: &Chart, now: &Stamp) -> ChartPicture {
    let mut picture = picture_of(chart, now);
    for limit in picture.lanes.iter_mut().flat_map(|lane| &mut lane.limits) {
        limit.said = hide::said(limit.said.clone());
    }
    picture
}

/// One page of the list of births.
pub(crate) fn births(open: &mut OpenPractice, skip: u32, take: u32, now: &Stamp) -> Result<Response, ApiError> {
    let all = open.births()?;
    let count = counted(all.len());
    let page = all.into_iter().skip(index(skip)).take(index(take));
    let page = page.map(|birth| Ok((birth, open.chart(birth.id)?))).collect::<Result<Vec<_>, ApiError>>()?;
    let term = open.term()?;
    let births = page
        .iter()
        .map(|(birth, chart)| Ok(line(birth.id, open.band(birth.id)?, chart, term, now)))
        .collect::<Result<_, ApiError>>()?;
    let alike = open.alike(&page)?.into_iter().filter_map(|pair| alike(pair, &page)).collect();
    Ok(Response::Births { births, count, alike })
}

fn alike((one, other): (BirthId, BirthId), page: &[(Birth, Chart)]) -> Option<AlikeView> {
    let of = |id| page.iter().find(|(birth, _)| birth.id == id).map(|(_, chart)| chart);
    let (chart, other_chart) = (of(one)?, of(other)?);
    let (one_label, other_label) = (chart.label.clone(), other_chart.label.clone());
    Some(AlikeView { one, one_label, other, other_label, client: client_name(chart)? })
}

/// One line of the list.
pub(crate) fn line(birth: BirthId, band: u8, chart: &Chart, term: Option<Years>, now: &Stamp) -> BirthLine {
    let born = chart.first_birth();
    BirthLine {
        birth,
        band,
        label: chart.label.clone(),
        client: client_name(chart),
        date: chart.lines.first().map(|line| line.first.occurred.date()).unwrap_or_default(),
        born: born.map(|mark| mark.at.clock()),
        phase: phase(chart),
        rehearsal: chart.rehearsal,
        third_stage: third_stage(chart, now, 1),
        to_write_up: counted(chart.to_write_up().count()),
        past_term: term::past(term, chart, now),
    }
}

/// The mother's name, once recorded.
fn client_name(chart: &Chart) -> Option<String> {
    chart.client.as_ref().map(|client| client.name.clone()).filter(|name| !name.trim().is_empty())
}

/// Everything about one birth.
pub(crate) fn birth(
    birth: BirthId,
    band: u8,
    chart: &Chart,
    order: &[String],
    version: String,
    now: &Stamp,
    speed: u32,
) -> BirthView {
    let protocol = chart.protocol();
    let findings = assess(chart, protocol, now);
    let marks = marks::all(chart);
    let timeline = timeline::lines(chart, protocol);
    BirthView {
        birth,
        band,
        label: chart.label.clone(),
        rehearsal: chart.rehearsal,
        today: now.date(),
        clock: now.clock(),
        phase: phase(chart),
        client: chart.client.clone(),
        protocol: protocol.map(|known| ProtocolLine {
            id: known.id.clone(),
            title: known.title.clone(),
            edition: known.edition.clone(),
        }),
        care: chart.care(),
        third_stage: third_stage(chart, now, speed),
        babies: chart.babies.keys().filter_map(|no| baby(chart, protocol, *no, now, speed)).collect(),
        apgar_offered: ALWAYS_OFFERED.to_vec(),
        placentas: chart
            .placentas
            .values()
            .map(|placenta| PlacentaView {
                babies: placenta.babies.clone(),
                born: placenta.born.as_ref().map(|mark| mark_view(chart, mark)),
                membranes: placenta.membranes.as_ref().map(|mark| mark_view(chart, mark)),
            })
            .collect(),
        next: marks::next(chart),
        marks,
        groups: marks::groups(chart),
        emergency: emergency::emergency(chart, now, speed),
        medicines: medicines(chart),
        blood: blood(chart, protocol),
        blood_share: blood_share(chart, protocol),
        blood_curve: after::curve(chart, protocol, now),
        leaving: after::before_leaving(chart, &findings),
        travel: chart.travels.last().map(|travel| travel.what.get()),
        contact: chart.contacts.last().map(|contact| contact.what.clone()),
        asked_for: chart.asks().map(|asked| asked.what.clone()),
        examinations: examination::examinations(chart, protocol, order, &findings),
        photos: photos::photos(chart),
        voices: voice::voices(birth, chart),
        to_write_up: counted(chart.to_write_up().count()),
        findings,
        due: due(chart, protocol, now),
        addenda: timeline.iter().any(|line| line.after_signing),
        timeline,
        version,
        signed: Vec::new(),
        phones: phones::phones(chart),
    }
}

fn medicines(chart: &Chart) -> Vec<MedicineView> {
    let client = chart.client.as_ref();
    let caution = |(message, caution): (Message, &Caution)| CautionView {
        message,
        source: caution.source.clone(),
        status: caution.status.name(),
    };
    let view = |known: &KnownMedicine| MedicineView {
        id: known.id.clone(),
        name: known.name.clone(),
        uterotonic: known.uterotonic,
        cautions: known.cautions(client).into_iter().map(caution).collect(),
    };
    known().iter().map(view).collect()
}

/// Where a file about a birth goes: named by what it is, date and time, never by the client's name.
pub(crate) fn file_path(folder: &Path, rehearsal: bool, file: Outgoing, now: &Stamp) -> PathBuf {
    let kind = match (rehearsal, file.name()) {
        (false, name) => name.to_owned(),
        (true, "record") => "rehearsal".to_owned(),
        (true, name) => format!("rehearsal-{name}"),
    };
    folder.join(format!("{kind}-{}-{}.{}", now.date(), now.clock().replace(':', ""), file.ending()))
}

fn phase(chart: &Chart) -> Phase {
    let signed = chart.signatures.last().map(|signature| signature.mark.entry);
    if signed.is_some() && signed == chart.last_written { Phase::Signed } else { unsigned(chart) }
}

/// Where a birth stands, signed or not.
pub(crate) fn unsigned(chart: &Chart) -> Phase {
    let born = chart.babies.values().filter(|baby| baby.born.is_some()).count();
    let delivered: usize =
        chart.placentas.values().filter(|placenta| placenta.born.is_some()).map(|placenta| placenta.babies.len()).sum();
    match (born, delivered) {
        (0, _) => Phase::Waiting,
        (born, delivered) if delivered >= born => Phase::AfterPlacenta,
        _ => Phase::ThirdStage,
    }
}

fn clock(elapsed: Elapsed, running: bool, speed: u32) -> ClockView {
    ClockView { elapsed_ms: elapsed.ms, text: elapsed.clock(), running, speed, certainty: elapsed.certainty }
}

fn third_stage(chart: &Chart, now: &Stamp, speed: u32) -> Option<ClockView> {
    chart.third_stage(now).map(|stage| clock(stage.elapsed, stage.to.is_none(), speed))
}

fn baby(chart: &Chart, protocol: Option<&Protocol>, no: BabyNo, now: &Stamp, speed: u32) -> Option<BabyView> {
    let baby = chart.babies.get(&no)?;
    let view = |mark: &Option<Mark>| mark.as_ref().map(|mark| mark_view(chart, mark));
    // A clamped cord no longer tells how long it would have pulsed, so its clock stands.
    let cord = match (&baby.pulsation_stopped, &baby.clamped) {
        (None, Some(_)) => None,
        (stopped, _) => chart.cord_pulsation(no, now).map(|elapsed| clock(elapsed, stopped.is_none(), speed)),
    };
    Some(BabyView {
        baby: no,
        cord,
        born: view(&baby.born),
        pulsation_stopped: view(&baby.pulsation_stopped),
        clamped: view(&baby.clamped),
        cut: view(&baby.cut),
        apgar_minutes: baby.apgars.iter().map(|apgar| apgar.what.minute.get()).collect(),
        apgar_offered: apgar_minutes(chart, protocol, no),
        seen: chart.seen_of_baby(no),
        growth: growth(chart, no),
    })
}

fn mark_view(chart: &Chart, mark: &Mark) -> MarkView {
    let since = chart.since_birth(&mark.at);
    MarkView {
        entry: mark.entry,
        clock: mark.at.clock(),
        since_birth: since.map(|elapsed| elapsed.clock()).unwrap_or_default(),
        certainty: since.map_or(secundine_domain::time::Certainty::Measured, |elapsed| elapsed.certainty),
    }
}

/// Whether a line still counts.
fn stands(line: &Line) -> bool {
    line.state() != State::Retracted
}

/// How many there are, as the page is told.
pub(crate) fn counted(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}

/// A count of the list as a number of the program.
pub(crate) fn index(count: u32) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}
