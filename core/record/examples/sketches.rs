//! Writes the drawings of a few invented placentas as SVG files, and a record and every paper of each, into the folder given as
//! the first argument.

use std::fmt::Write as _;
use std::path::Path;

use secundine_domain::chart::{Chart, fold};
use secundine_domain::entry::{BirthId, DeviceId, Entry, EntryId};
use secundine_domain::examination::{Fill, PathStep, Side, What, sketch};
use secundine_domain::fact::{Answer, BabyNo, Client, Fact, Place, Practice};
use secundine_domain::time::{Occurred, Stamp};
use secundine_record::words::Words;
use secundine_record::{Form, Origin, form_pdf, parents_pdf, pdf};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("give the folder to write to")?;
    std::fs::create_dir_all(&folder)?;
    for (name, babies, told) in cases() {
        let sketch = sketch(&chart(babies, &told), 1);
        for (side, drawn) in [("fetal", &sketch.fetal), ("maternal", &sketch.maternal)] {
            std::fs::write(Path::new(&folder).join(format!("{name}-{side}.svg")), svg(drawn)?)?;
        }
        let chart = chart(babies, &told);
        let practice = Practice {
            name: "Heron House".to_owned(),
            practitioner: "Ida".to_owned(),
            role: "midwife".to_owned(),
            protocol: None,
        };
        let now = now();
        let origin = Origin { practice: &practice, version: "0123456789abcdef", written: &now, words: Words::english() };
        let papers = [
            ("record", pdf(&chart, &origin)?),
            ("laboratory", form_pdf(&chart, &origin, Form::Laboratory, 1)?),
            ("family", form_pdf(&chart, &origin, Form::Family, 1)?),
            ("parents", parents_pdf(&chart, &origin)?),
        ];
        for (paper, pdf) in papers {
            std::fs::write(Path::new(&folder).join(format!("{name}-{paper}.pdf")), pdf.bytes)?;
        }
    }
    Ok(())
}

type Told = (&'static str, Option<BabyNo>, Answer);

fn chart(babies: &[BabyNo], told: &[Told]) -> Chart {
    let birth = BirthId(EntryId { device: DeviceId([1; 16]), n: 1 });
    let mut facts = vec![Fact::BirthRegistered { label: "Example".to_owned(), rehearsal: true }];
    let client = Client { name: "Rosa Amberly".to_owned(), born: Some("1993-08-14".to_owned()), ..Client::default() };
    facts.push(Fact::ClientRecorded(client));
    facts.extend(babies.iter().map(|baby| Fact::BabyBorn { baby: *baby }));
    facts.push(Fact::PlacentaBorn { babies: babies.to_vec() });
    facts.extend(told.iter().map(|(item, cord, answer)| Fact::Examined {
        placenta: 1,
        item: (*item).to_owned(),
        cord: *cord,
        answer: answer.clone(),
    }));
    let now = now();
    let entries: Vec<Entry> = (1..)
        .zip(facts)
        .map(|(n, fact)| Entry {
            id: EntryId { device: DeviceId([1; 16]), n },
            birth,
            author: "Ada".to_owned(),
            occurred: Occurred::Marked(now.clone()),
            recorded: now.clone(),
            fact,
            amends: None,
        })
        .collect();
    fold(birth, &entries)
}

fn now() -> Stamp {
    Stamp { wall_ms: 1_795_574_400_000, offset_min: 0, zone: None, boot: None }
}

fn mm(item: &'static str, value: u32) -> Told {
    (item, None, Answer::Measure { value })
}

fn is(item: &'static str, option: &str) -> Told {
    (item, None, Answer::Choice { option: option.to_owned() })
}

fn put(item: &'static str, places: &[(i32, i32, Option<u32>)]) -> Told {
    let places = places.iter().map(|(x, y, size)| Place { x: *x, y: *y, size: *size }).collect();
    (item, None, Answer::Places { places })
}

fn of(cord: BabyNo, (item, _, answer): Told) -> Told {
    (item, Some(cord), answer)
}

fn cases() -> Vec<(&'static str, &'static [BabyNo], Vec<Told>)> {
    let disc = |length, breadth| vec![mm("disc-length", length), mm("disc-breadth", breadth)];
    let mut whole = disc(190, 175);
    whole.extend([is("shape", "round"), is("fetal-vessels", "to-edge"), put("insertion-place", &[(250, -330, None)])]);
    whole.extend([is("amnion", "whole"), is("chorion", "whole"), mm("tear-edge", 90), put("tear-place", &[(-700, 900, None)])]);
    whole.push(mm("cord-thickness", 13));
    let mut twins = disc(260, 180);
    twins.extend([is("shape", "round"), is("amnion", "whole"), is("chorion", "whole")]);
    twins.extend([of(1, is("insertion", "central")), of(1, put("insertion-place", &[(-500, 0, None)]))]);
    twins.extend([of(2, is("insertion", "velamentous")), of(2, put("insertion-place", &[(1250, 200, None)]))]);
    let mut bad = disc(180, 150);
    bad.extend([is("shape", "extra-lobe"), mm("extra-lobe-size", 45), put("extra-lobe-place", &[(1200, -700, None)])]);
    bad.extend([mm("insertion-edge", 8), is("edge-vessels", "torn-end"), is("amnion", "ragged"), mm("tear-edge", 30)]);
    bad.extend([is("rim", "folded"), mm("rim-share", 60), put("lump-places", &[(-300, 300, Some(25))])]);
    bad.extend([is("maternal-clot", "adherent"), mm("clot-share", 12), put("clot-place", &[(-300, -250, None)])]);
    bad.extend([is("lobes", "torn"), put("gap-place", &[(750, 600, None)]), is("maternal-surface", "firm-areas")]);
    bad.push(put("firm-places", &[(200, 100, Some(30)), (-500, 500, Some(12)), (300, -600, None)]));
    let mut lobed = disc(220, 150);
    lobed.extend([is("shape", "two-lobes"), is("insertion", "marginal"), mm("insertion-edge", 15), is("rim", "flat")]);
    let guess = vec![is("shape", "thin-spread"), is("insertion", "furcate")];
    let nothing = vec![mm("disc-length", 200)];
    let edge = vec![
        mm("disc-length", 190),
        mm("disc-breadth", 170),
        mm("insertion-edge", 25),
        is("insertion", "velamentous"),
        mm("tear-edge", 0),
    ];
    vec![
        ("whole", &[1], whole),
        ("twins", &[1, 2], twins),
        ("bad-night", &[1], bad),
        ("two-lobes", &[1], lobed),
        ("spread", &[1], guess),
        ("length-only", &[1], nothing),
        ("velamentous", &[1], edge),
    ]
}

fn svg(side: &Side) -> Result<String, std::fmt::Error> {
    let view = side.view;
    let mut text = format!(
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='{} {} {} {}' width='{}' stroke-linecap='round' stroke-linejoin='round'>\n<rect x='{}' y='{}' width='100%' height='100%' fill='white'/>",
        view.x,
        view.y,
        view.width,
        view.height,
        view.width * 2.0,
        view.x,
        view.y,
    );
    for trace in &side.traces {
        let mut path = String::new();
        for step in &trace.steps {
            match step {
                PathStep::Move { x, y } => write!(path, "M{x} {y}")?,
                PathStep::Line { x, y } => write!(path, "L{x} {y}")?,
                PathStep::Curve { x1, y1, x2, y2, x, y } => write!(path, "C{x1} {y1} {x2} {y2} {x} {y}")?,
                PathStep::Close => path.push('Z'),
            }
        }
        let fill = match trace.fill {
            Fill::None => "none",
            Fill::Ground => "white",
            Fill::Tint => "#ddd",
            Fill::Solid => "black",
        };
        let soft = matches!(trace.what, What::Vessel | What::Furrow | What::Membranes);
        let stroke = if soft { "#777" } else { "black" };
        let dash = if trace.dashed { "stroke-dasharray='4 3.5'" } else { "" };
        writeln!(text, "<path d='{path}' fill='{fill}' stroke='{stroke}' stroke-width='{}' {dash}/>", trace.weight)?;
    }
    text.push_str("</svg>\n");
    Ok(text)
}
