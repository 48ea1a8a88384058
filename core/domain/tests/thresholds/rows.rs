//! One row for each threshold of each protocol: the value just below, at and above it, and what is passed there.
//! Limits and statuses are copied from our reference sheet "Third stage, first hours and transfer", table of defaults,
//! not from the protocol files.

use Expect::{Caution, Limit, None, Note};
use secundine_domain::protocol::Status::{self, Borrowed, Choice, Memory, SecondHand, Seen};
use secundine_domain::protocol::Watch::{
    self, AntiDWindow, BloodLoss, Diastolic, FirstFeed, NewbornHeartRate, NewbornRespirations, NewbornTemperature, Pulse,
    Respirations, Saturation, ShockIndex, Systolic, Temperature, ThirdStageActive, ThirdStagePhysiological, TimeToUrine,
    TranexamicWindow,
};

/// What a value passes: nothing, or the threshold at that number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Expect {
    None,
    Note(f64),
    Caution(f64),
    Limit(f64),
}

#[derive(Clone, Debug)]
pub struct Row {
    pub protocol: &'static str,
    pub watch: Watch,
    pub limit: f64,
    pub status: Status,
    /// The publication that the limit comes from.
    pub source: &'static str,
    /// Below, at and above, in the unit of the watch, rising.
    pub reads: [(f64, Expect); 3],
}

type Short = (Watch, f64, Status, &'static str, [(f64, Expect); 3]);

pub fn rows() -> Vec<Row> {
    let of = |protocol, rows: Vec<Short>| {
        rows.into_iter().map(move |(watch, limit, status, source, reads)| Row { protocol, watch, limit, status, source, reads })
    };
    let nice = nice().into_iter().chain(windows(Seen, (Memory, "NICE, from memory"), (Memory, "NICE, from memory")));
    let who = who().into_iter().chain(windows(Borrowed, (Seen, "WHO 2018"), (SecondHand, "WHO pocket book")));
    let acog = acog().into_iter().chain(windows(Memory, (Borrowed, "WHO 2018"), (Borrowed, "WHO pocket book")));
    let mother = of("nice-rcog", nice.collect()).chain(of("who", who.collect())).chain(of("acog-aap", acog.collect()));
    mother.chain(newborn().into_iter().flat_map(|(protocol, rows)| of(protocol, rows))).collect()
}

/// The times that run from the birth: the same numbers in all three, from sources that differ.
fn windows(anti_d: Status, urine: (Status, &'static str), feed: (Status, &'static str)) -> Vec<Short> {
    let hundredth = |hours: f64| hours - 0.01 / 3_600.0;
    vec![
        (TranexamicWindow, 180.0, Memory, "WHO 2017, from memory", [(179.0, None), (180.0, None), (180.01, Caution(180.0))]),
        (TimeToUrine, 6.0, urine.0, urine.1, [(hundredth(6.0), None), (6.0, Caution(6.0)), (7.0, Caution(6.0))]),
        (FirstFeed, 60.0, feed.0, feed.1, [(short_of(60.0), None), (60.0, Caution(60.0)), (61.0, Caution(60.0))]),
        (AntiDWindow, 48.0, Choice, "own choice", [(hundredth(48.0), None), (48.0, Caution(48.0)), (49.0, Caution(48.0))]),
        (
            AntiDWindow,
            72.0,
            anti_d,
            "NHS Highland; ACOG from memory",
            [(71.0, Caution(48.0)), (72.0, Caution(48.0)), (72.01, Limit(72.0))],
        ),
    ]
}

/// A hundredth of a second short of so many minutes.
const fn short_of(minutes: f64) -> f64 {
    minutes - 0.01 / 60.0
}

fn nice() -> Vec<Short> {
    let (nice, rcog) = ("NICE CG190 and NG235, second-hand", "RCOG GTG 52, 2016");
    let (mhyre, transfer) = ("Mhyre 2014", "NICE transfer criteria, from memory, unverified");
    vec![
        (
            ThirdStageActive,
            20.0,
            Choice,
            "own choice after Magann 2005 and Frolova 2016",
            [(short_of(20.0), None), (20.0, Caution(20.0)), (21.0, Caution(20.0))],
        ),
        (ThirdStageActive, 30.0, SecondHand, nice, [(short_of(30.0), Caution(20.0)), (30.0, Limit(30.0)), (31.0, Limit(30.0))]),
        (
            ThirdStagePhysiological,
            45.0,
            Choice,
            "own choice",
            [(short_of(45.0), None), (45.0, Caution(45.0)), (46.0, Caution(45.0))],
        ),
        (
            ThirdStagePhysiological,
            60.0,
            SecondHand,
            nice,
            [(short_of(60.0), Caution(45.0)), (60.0, Limit(60.0)), (61.0, Limit(60.0))],
        ),
        (BloodLoss, 300.0, Choice, "own choice", [(299.0, None), (300.0, Caution(300.0)), (301.0, Caution(300.0))]),
        (BloodLoss, 500.0, Seen, rcog, [(499.0, Caution(300.0)), (500.0, Limit(500.0)), (501.0, Limit(500.0))]),
        (BloodLoss, 1000.0, Seen, rcog, [(999.0, Limit(500.0)), (1000.0, Limit(500.0)), (1001.0, Limit(1000.0))]),
        (BloodLoss, 2000.0, Seen, rcog, [(1999.0, Limit(1000.0)), (2000.0, Limit(1000.0)), (2001.0, Limit(2000.0))]),
        (ShockIndex, 0.9, Borrowed, "Nathan 2015", [(0.89, None), (0.9, Caution(0.9)), (0.91, Caution(0.9))]),
        (ShockIndex, 1.7, Borrowed, "Nathan 2015", [(1.69, Caution(0.9)), (1.7, Limit(1.7)), (1.71, Limit(1.7))]),
        (Pulse, 50.0, Borrowed, mhyre, [(49.0, Limit(50.0)), (50.0, None), (51.0, None)]),
        (Pulse, 120.0, Memory, transfer, [(119.0, None), (120.0, None), (121.0, Limit(120.0))]),
        (Systolic, 90.0, Borrowed, mhyre, [(89.0, Limit(90.0)), (90.0, None), (91.0, None)]),
        (Systolic, 140.0, Memory, transfer, [(139.0, None), (140.0, Limit(140.0)), (141.0, Limit(140.0))]),
        (Systolic, 160.0, Memory, transfer, [(159.0, Limit(140.0)), (160.0, Limit(160.0)), (161.0, Limit(160.0))]),
        (Diastolic, 90.0, Memory, transfer, [(89.0, None), (90.0, Limit(90.0)), (91.0, Limit(90.0))]),
        (Diastolic, 110.0, Memory, transfer, [(109.0, Limit(90.0)), (110.0, Limit(110.0)), (111.0, Limit(110.0))]),
        (Respirations, 10.0, Borrowed, mhyre, [(9.0, Limit(10.0)), (10.0, None), (11.0, None)]),
        (Respirations, 30.0, Borrowed, mhyre, [(29.0, None), (30.0, None), (31.0, Limit(30.0))]),
        (Temperature, 37.5, Memory, transfer, [(37.4, None), (37.5, Limit(37.5)), (37.6, Limit(37.5))]),
        (Temperature, 38.0, Memory, transfer, [(37.9, Limit(37.5)), (38.0, Limit(38.0)), (38.1, Limit(38.0))]),
        (Saturation, 95.0, Borrowed, mhyre, [(94.0, Limit(95.0)), (95.0, None), (96.0, None)]),
    ]
}

fn who() -> Vec<Short> {
    let (choice, retained) = ("own choice after Magann 2005 and Frolova 2016", "WHO RHL, retained placenta, 2012");
    let (press, mhyre) = ("WHO, FIGO and ICM, October 2025, second-hand", "Mhyre 2014");
    let labour = "WHO Labour Care Guide 2020, made for labour; from memory, unverified";
    vec![
        (ThirdStageActive, 20.0, Choice, choice, [(short_of(20.0), None), (20.0, Caution(20.0)), (21.0, Caution(20.0))]),
        (ThirdStageActive, 30.0, Seen, retained, [(short_of(30.0), Caution(20.0)), (30.0, Limit(30.0)), (31.0, Limit(30.0))]),
        (ThirdStageActive, 60.0, Seen, retained, [(short_of(60.0), Limit(30.0)), (60.0, Limit(60.0)), (61.0, Limit(60.0))]),
        (ThirdStagePhysiological, 20.0, Choice, choice, [(short_of(20.0), None), (20.0, Caution(20.0)), (21.0, Caution(20.0))]),
        (
            ThirdStagePhysiological,
            30.0,
            Seen,
            retained,
            [(short_of(30.0), Caution(20.0)), (30.0, Limit(30.0)), (31.0, Limit(30.0))],
        ),
        (
            ThirdStagePhysiological,
            60.0,
            Seen,
            retained,
            [(short_of(60.0), Limit(30.0)), (60.0, Limit(60.0)), (61.0, Limit(60.0))],
        ),
        (BloodLoss, 300.0, SecondHand, press, [(299.0, None), (300.0, Caution(300.0)), (301.0, Caution(300.0))]),
        (BloodLoss, 500.0, SecondHand, press, [(499.0, Caution(300.0)), (500.0, Limit(500.0)), (501.0, Limit(500.0))]),
        (
            BloodLoss,
            1000.0,
            Borrowed,
            "E-MOTIVE, Lancet Glob Health 2025",
            [(999.0, Limit(500.0)), (1000.0, Limit(1000.0)), (1001.0, Limit(1000.0))],
        ),
        (ShockIndex, 1.0, Memory, "WHO 2025, from memory, unverified", [(0.99, None), (1.0, None), (1.01, Caution(1.0))]),
        (ShockIndex, 1.7, Borrowed, "Nathan 2015", [(1.69, Caution(1.0)), (1.7, Limit(1.7)), (1.71, Limit(1.7))]),
        (Pulse, 60.0, Memory, labour, [(59.0, Limit(60.0)), (60.0, None), (61.0, None)]),
        (Pulse, 120.0, Memory, labour, [(119.0, None), (120.0, Limit(120.0)), (121.0, Limit(120.0))]),
        (Systolic, 80.0, Memory, labour, [(79.0, Limit(80.0)), (80.0, None), (81.0, None)]),
        (Systolic, 140.0, Memory, labour, [(139.0, None), (140.0, Limit(140.0)), (141.0, Limit(140.0))]),
        (Diastolic, 90.0, Memory, labour, [(89.0, None), (90.0, Limit(90.0)), (91.0, Limit(90.0))]),
        (Respirations, 10.0, Borrowed, mhyre, [(9.0, Limit(10.0)), (10.0, None), (11.0, None)]),
        (Respirations, 30.0, Borrowed, mhyre, [(29.0, None), (30.0, None), (31.0, Limit(30.0))]),
        (Temperature, 35.0, Memory, labour, [(34.9, Limit(35.0)), (35.0, None), (35.1, None)]),
        (Temperature, 37.5, Memory, labour, [(37.4, None), (37.5, Limit(37.5)), (37.6, Limit(37.5))]),
        (Saturation, 95.0, Borrowed, mhyre, [(94.0, Limit(95.0)), (95.0, None), (96.0, None)]),
    ]
}

fn acog() -> Vec<Short> {
    let (choice, us) = ("own choice after Magann 2005 and Frolova 2016", "US practice, from memory, unverified");
    let (press, mhyre) = ("WHO, FIGO and ICM, October 2025", "Mhyre 2014");
    vec![
        (ThirdStageActive, 20.0, Choice, choice, [(short_of(20.0), None), (20.0, Caution(20.0)), (21.0, Caution(20.0))]),
        (ThirdStageActive, 30.0, Memory, us, [(short_of(30.0), Caution(20.0)), (30.0, Limit(30.0)), (31.0, Limit(30.0))]),
        (ThirdStagePhysiological, 20.0, Choice, choice, [(short_of(20.0), None), (20.0, Caution(20.0)), (21.0, Caution(20.0))]),
        (ThirdStagePhysiological, 30.0, Memory, us, [(short_of(30.0), Caution(20.0)), (30.0, Limit(30.0)), (31.0, Limit(30.0))]),
        (BloodLoss, 300.0, Borrowed, press, [(299.0, None), (300.0, Note(300.0)), (301.0, Note(300.0))]),
        (
            BloodLoss,
            500.0,
            Memory,
            "ACOG PB 183, 2017, from memory, unverified",
            [(499.0, Note(300.0)), (500.0, Caution(500.0)), (501.0, Caution(500.0))],
        ),
        (
            BloodLoss,
            1000.0,
            Seen,
            "ACOG PB 183, 2017",
            [(999.0, Caution(500.0)), (1000.0, Limit(1000.0)), (1001.0, Limit(1000.0))],
        ),
        (ShockIndex, 0.9, Borrowed, "Nathan 2015", [(0.89, None), (0.9, Caution(0.9)), (0.91, Caution(0.9))]),
        (ShockIndex, 1.7, Borrowed, "Nathan 2015", [(1.69, Caution(0.9)), (1.7, Limit(1.7)), (1.71, Limit(1.7))]),
        (Pulse, 50.0, Seen, mhyre, [(49.0, Limit(50.0)), (50.0, None), (51.0, None)]),
        (Pulse, 120.0, Seen, mhyre, [(119.0, None), (120.0, None), (121.0, Limit(120.0))]),
        (Systolic, 90.0, Seen, mhyre, [(89.0, Limit(90.0)), (90.0, None), (91.0, None)]),
        (Systolic, 160.0, Seen, mhyre, [(159.0, None), (160.0, None), (161.0, Limit(160.0))]),
        (Diastolic, 100.0, Seen, mhyre, [(99.0, None), (100.0, None), (101.0, Limit(100.0))]),
        (Respirations, 10.0, Seen, mhyre, [(9.0, Limit(10.0)), (10.0, None), (11.0, None)]),
        (Respirations, 30.0, Seen, mhyre, [(29.0, None), (30.0, None), (31.0, Limit(30.0))]),
        (Temperature, 38.0, Memory, "ACOG, from memory, unverified", [(37.9, None), (38.0, Limit(38.0)), (38.1, Limit(38.0))]),
        (Saturation, 95.0, Seen, mhyre, [(94.0, Limit(95.0)), (95.0, None), (96.0, None)]),
    ]
}

/// The babies' signs, which are alike but for their temperature and the upper mark of their breathing.
fn newborn() -> [(&'static str, Vec<Short>); 3] {
    let (range, us) = ("WHO, 36.5 to 37.5 °C, second-hand", "36.5 to 37.4 °C, second-hand");
    let (refer, memory) = ("NICE referral criteria, from memory, unverified", "WHO and NICE, 30 to 60, from memory, unverified");
    let cool = |status, source| -> Short {
        (NewbornTemperature, 36.5, status, source, [(36.4, Caution(36.5)), (36.5, None), (36.6, None)])
    };
    let alike = || -> Vec<Short> {
        vec![
            (NewbornHeartRate, 100.0, Memory, refer, [(99.0, Limit(100.0)), (100.0, None), (101.0, None)]),
            (NewbornHeartRate, 160.0, Memory, refer, [(159.0, None), (160.0, None), (161.0, Limit(160.0))]),
            (NewbornRespirations, 30.0, Memory, memory, [(29.0, Limit(30.0)), (30.0, None), (31.0, None)]),
        ]
    };
    let over_60 = |status, source| -> Short {
        (NewbornRespirations, 60.0, status, source, [(59.0, None), (60.0, None), (61.0, Limit(60.0))])
    };
    let nice = [
        cool(Borrowed, range),
        (NewbornTemperature, 37.5, Memory, refer, [(37.4, None), (37.5, Limit(37.5)), (37.6, Limit(37.5))]),
        (NewbornTemperature, 38.0, Memory, refer, [(37.9, Limit(37.5)), (38.0, Limit(38.0)), (38.1, Limit(38.0))]),
        over_60(Memory, refer),
    ];
    let who = [
        cool(SecondHand, range),
        (NewbornTemperature, 37.5, SecondHand, range, [(37.4, None), (37.5, None), (37.6, Limit(37.5))]),
        (NewbornRespirations, 60.0, Memory, memory, [(59.0, None), (60.0, Limit(60.0)), (61.0, Limit(60.0))]),
    ];
    let acog = [
        cool(SecondHand, us),
        (NewbornTemperature, 37.4, SecondHand, us, [(37.3, None), (37.4, None), (37.5, Limit(37.4))]),
        over_60(SecondHand, "abstract of a textbook, 40 to 60, second-hand"),
    ];
    let with = |rows: Vec<Short>| rows.into_iter().chain(alike()).collect();
    [("nice-rcog", with(nice.into())), ("who", with(who.into())), ("acog-aap", with(acog.into()))]
}
