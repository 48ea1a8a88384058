//! Writes a specimen of every block to the path given as the first argument. All content is invented.

use secundine_record::page::{Align, Block, Cell, Column, Document, Made, Manner, Notice, Shape, Span, Table, write};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path = std::env::args().nth(1).ok_or("give the path of the file to write")?;
    let started = std::time::Instant::now();
    let pdf = write(&document(), &|page, pages| format!("Page {page} of {pages}"))?;
    let took = started.elapsed();
    std::fs::write(&path, &pdf.bytes)?;
    eprintln!("{} pages, {} bytes, {took:?}", pdf.pages, pdf.bytes.len());
    if !pdf.unprintable.is_empty() {
        eprintln!("no font for {:?}", pdf.unprintable);
    }
    Ok(())
}

fn document() -> Document {
    let mut blocks = vec![Block::Paragraph(vec![Span::plain(
        "Invented content. This page shows how a record looks, and tells nothing about any person or birth.",
    )])];
    blocks.extend(summary());
    blocks.extend(timeline());
    blocks.extend(examination());
    blocks.extend(ending());
    Document {
        title: "Third stage of labour".into(),
        language: "en-GB".into(),
        made: Made { year: 2026, month: 3, day: 14, hour: 6, minute: 40, second: 0, offset: 0 },
        label: "Eirlys Gŵynn  ·  14 March 2026  ·  record 7F3K".into(),
        banner: std::env::args().nth(2),
        footer: "Secundine record, made 14 March 2026 at 06:40. Entries to number 43.".into(),
        blocks,
        manner: Manner::default(),
    }
}

fn summary() -> Vec<Block> {
    let fact = |label: &str, value: &str| (label.to_owned(), vec![Span::plain(value)]);
    vec![
        Block::Heading("Summary".into()),
        Block::Facts(vec![
            fact("Birth of the baby", "14 March 2026, 04:12"),
            fact("Placenta out", "04:51, 39 minutes after the birth"),
            fact("Way it was born", "By her own effort, upright, no drug given"),
            (
                "Blood loss".into(),
                vec![
                    Span::plain("350 ml").struck(),
                    Span::plain("  420 ml").bold(),
                    Span::plain("  corrected 05:20, pads weighed again").small(),
                ],
            ),
            fact(
                "People present",
                "Two midwives, the partner and the grandmother. A third midwife was on the telephone from 04:35 until the \
                 placenta was out.",
            ),
            fact("Protocol", "Physiological, version 3"),
        ]),
        notice(
            Shape::Octagon,
            "Act now",
            "Loss over 500 ml was foretold by the rate between 04:40 and 04:46. Help was called at 04:46.",
        ),
        notice(
            Shape::Triangle,
            "Look closer",
            "No placenta 30 minutes after the birth. The plan was gone through with the woman at 04:43.",
        ),
        notice(Shape::Circle, "Worth knowing", "The bladder was full at 04:30 and emptied at 04:34."),
    ]
}

fn notice(shape: Shape, word: &str, text: &str) -> Block {
    Block::Notice(Notice { shape, word: word.into(), text: vec![Span::plain(text)] })
}

fn column(head: &str, weight: u16, align: Align) -> Column {
    Column { head: head.into(), weight, align }
}

fn cell(text: impl Into<String>) -> Cell {
    vec![Span::plain(text)]
}

fn timeline() -> Vec<Block> {
    let what = [
        "Fundus firm, at the navel",
        "Pulse 84, pressure 112 over 68",
        "A gush, then nothing",
        "Cord longer by a hand",
        "She says the cramps are stronger, and wants to squat. Helped onto the stool, warm cloth on her back",
        "Pad changed",
    ];
    let mut rows: Vec<Vec<Cell>> = (0..40_u32)
        .map(|at| {
            let minute = 12 + at;
            let what = what.get(at as usize % what.len()).copied().unwrap_or_default();
            let loss = if at % 3 == 0 { (20 + at * 10).to_string() } else { String::new() };
            vec![
                cell(format!("{:02}:{:02}", 4 + minute / 60, minute % 60)),
                cell(format!("+{at} min")),
                cell(what),
                cell(loss),
                cell(if at % 2 == 0 { "A. Rowe" } else { "T. Lind" }),
            ]
        })
        .collect();
    if let Some(loss) = rows.get_mut(12).and_then(|row| row.get_mut(3)) {
        *loss = vec![Span::plain("110").struck(), Span::plain(" 140").bold()];
    }
    if let Some(words) = rows.get_mut(12).and_then(|row| row.get_mut(2)) {
        *words = vec![
            Span::plain("Blood in the bowl measured. "),
            Span::plain("Corrected at 05:20 by T. Lind: the first reading left out the cloth.").small(),
        ];
    }
    vec![
        Block::Heading("What happened".into()),
        Block::Paragraph(cell("Times are by the clock of the device. The second column counts from the birth of the baby.")),
        Block::Table(Table {
            columns: vec![
                column("Time", 9, Align::Left),
                column("After birth", 12, Align::Right),
                column("What", 50, Align::Left),
                column("Loss, ml", 12, Align::Right),
                column("By", 13, Align::Left),
            ],
            rows,
            dense: false,
        }),
    ]
}

fn examination() -> Vec<Block> {
    let rows = [
        ("Maternal side", "Lobes complete, no gaps", "Seen by both midwives"),
        ("Fetal side", "Vessels end inside the edge", ""),
        ("Membranes", "Two, appear complete, one small tear", "Tear 4 cm from the edge"),
        ("Cord", "Three vessels, off centre", "48 cm"),
        ("Weight", "560 g", "With clots removed"),
    ];
    vec![
        Block::Heading("Examination of the placenta".into()),
        Block::Subheading("First look, 05:02".into()),
        Block::Table(Table {
            columns: vec![column("Part", 24, Align::Left), column("Finding", 44, Align::Left), column("Note", 32, Align::Left)],
            rows: rows
                .map(|(part, finding, note)| vec![vec![Span::plain(part).bold()], cell(finding), vec![Span::plain(note).small()]])
                .to_vec(),
            dense: false,
        }),
        Block::Paragraph(vec![
            Span::plain("Kept: ").bold(),
            Span::plain("the family keeps the placenta. It was wrapped and put on ice at 05:30."),
        ]),
    ]
}

fn ending() -> Vec<Block> {
    let labels = ["Name and signature", "Registration number", "Date and time"].map(str::to_owned).to_vec();
    vec![
        Block::Heading("Signatures".into()),
        Block::Paragraph(cell("By signing, each midwife says that this record is true to what she saw and did.")),
        Block::Signature(labels.clone()),
        Block::Gap(6.0),
        Block::Signature(labels),
    ]
}
