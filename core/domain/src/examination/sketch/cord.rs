//! The fetal side: where each cord goes in, the vessels from there, the rim, and what was marked.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_3, TAU};

use super::edge::{Point, round, smooth, straight};
use super::{Fill, On, Pad, Trace, What, measure, name};
use crate::fact::{BabyNo, of_cord};

/// From the edge where a cord in the membranes has no distance on record, mm.
const USUAL_IN_MEMBRANES: f64 = 30.0;
/// Length of the piece of cord that is drawn, and its thickness where it is not recorded: means of 10 and 12 mm, Proctor and
/// others, seen.
const STUB: f64 = 58.0;
const USUAL_THICKNESS: f64 = 11.0;
/// How far inside the edge a ring is drawn, as a share of half the breadth.
const RING: f64 = 0.14;
/// Width of a mark where none is recorded.
const USUAL_LUMP: f64 = 15.0;

/// A cord as it is drawn.
struct Cord {
    of: Option<BabyNo>,
    at: Point,
    dashed: bool,
    /// Where vessels come onto the disc.
    roots: Vec<Point>,
}

impl Pad<'_> {
    pub(super) fn fetal_side(&mut self) {
        let cords: Vec<Cord> = self.cords.clone().into_iter().enumerate().filter_map(|(n, of)| self.cord(n, of)).collect();
        self.vessels(&cords);
        self.between_cords(&cords);
        self.rim();
        self.spots(On::Fetal, What::Lump, "lump-places", USUAL_LUMP);
        for (n, cord) in cords.iter().enumerate() {
            let other = cords.get(if n == 0 { 1 } else { 0 }).map(|other| other.at);
            self.stub(cord, other);
        }
    }

    /// Where a cord goes in: as marked, else at its distance from the edge, else as it was named.
    fn cord(&mut self, n: usize, of: Option<BabyNo>) -> Option<Cord> {
        let says = |option: &str| self.examined.says("insertion", of, option);
        let (bare, furcate, central) = (says("velamentous"), says("furcate"), says("central"));
        let (named, off_centre) = (says("marginal") || bare || furcate || central || says("eccentric"), says("eccentric"));
        let marked = self.points("insertion-place", of).first().map(|(point, _)| *point);
        let distance = measure(self.examined, "insertion-edge", of);
        let t = self.side(n);
        let from_edge = |mm: f64| if bare { self.edge.at(t) + self.edge.outward(t) * mm } else { self.edge.inwards(t, mm) };
        let at = match (marked, distance) {
            (Some(point), _) => point,
            (None, Some(mm)) => from_edge(mm),
            (None, None) if bare => from_edge(USUAL_IN_MEMBRANES),
            (None, None) if central || furcate => Point::MIDDLE,
            (None, None) if off_centre => self.edge.at(t) * 0.5,
            // Marginal: at the edge.
            (None, None) if named => self.edge.inwards(t, 5.0),
            (None, None) => {
                self.missing.push(of_cord(name("insertion"), of));
                return None;
            }
        };
        if marked.is_none() {
            self.unplaced.push(of_cord(name("insertion-place"), of));
        }
        let roots = self.roots(at, furcate);
        Some(Cord { of, at, dashed: marked.is_none(), roots })
    }

    /// On which side a cord is drawn whose angle is not known: across the breadth, where every distance from the edge has room.
    fn side(&self, n: usize) -> f64 {
        let first = match (self.examined.says("shape", None, "two-lobes"), self.edge.half_length < self.edge.half_breadth) {
            (true, _) => FRAC_PI_3 * 2.0,
            (false, true) => 0.0,
            (false, false) => -FRAC_PI_2,
        };
        first + TAU * f64::from(u8::try_from(n).unwrap_or(0)) / f64::from(u8::try_from(self.cords.len()).unwrap_or(1).max(1))
    }

    fn roots(&self, at: Point, furcate: bool) -> Vec<Point> {
        let t = self.edge.nearest(at);
        // At the very edge it is marginal, not bare.
        if !self.edge.contains(at) && self.edge.at(t).to(at) > 1.0 {
            return [-0.16, 0.0, 0.16].map(|by| self.edge.at(t + by)).to_vec();
        }
        if furcate {
            let around = |turn: f64| at + Point::new(turn.cos(), turn.sin()) * 13.0;
            return [0.4, 2.5, 4.6].map(around).to_vec();
        }
        vec![at]
    }

    /// From each root towards the edge, each stretch of it to the cord that is nearest.
    fn vessels(&mut self, cords: &[Cord]) {
        let roots: Vec<Point> = cords.iter().flat_map(|cord| cord.roots.iter().copied()).collect();
        let reach = match (self.says("fetal-vessels", "short"), self.examined.get("fetal-vessels")) {
            (true, _) => 0.68,
            (false, Some(_)) => 0.93,
            (false, None) => 0.85,
        };
        let clear = self.edge.smaller_half() * 0.3;
        for n in 0..13_u32 {
            let turn = TAU * f64::from(n) / 13.0 + 0.14 * (f64::from(n) * 2.4).sin();
            let far = self.edge.at(turn);
            let Some(from) = roots.iter().copied().min_by(|one, other| one.to(far).total_cmp(&other.to(far))) else { return };
            let Some(to) = (from.to(far) > clear).then(|| far * reach) else { continue };
            let (way, side) = (to - from, if n % 2 == 0 { 1.0 } else { -1.0 });
            let bend = from + way * 0.5 + way.across() * (0.09 * side);
            self.vessel(&[from, bend, to], 1.0);
            let twig = self.edge.at(turn - side * 0.2) * (reach - 0.04);
            self.vessel(&[bend, (bend + twig) * 0.5 + way.across() * (0.03 * side), twig], 0.7);
        }
    }

    /// From each of two cords towards the other, short of the middle between them: whether vessels cross is asked, not drawn.
    fn between_cords(&mut self, cords: &[Cord]) {
        let [first, second] = cords else { return };
        let middle = (first.at + second.at) * 0.5;
        for from in [first, second] {
            let root = from.roots.iter().copied().min_by(|one, other| one.to(middle).total_cmp(&other.to(middle)));
            let Some(root) = root else { continue };
            let way = (middle - root) * 0.85;
            for side in [-1.0, 1.0] {
                let bend = root + way * 0.5 + way.across() * (0.22 * side);
                self.vessel(&[root, bend, root + way + way.across() * (0.3 * side)], 0.8);
            }
        }
    }

    fn vessel(&mut self, points: &[Point], weight: f64) {
        // Between two lobes a straight way can lead outside.
        let between = points.iter().zip(points.iter().skip(1)).map(|(one, next)| (*one + *next) * 0.5);
        if points.iter().copied().skip(1).chain(between).all(|point| self.edge.contains(point)) {
            self.draw(On::Fetal, Trace::new(What::Vessel, smooth(points, false), weight));
        }
    }

    /// A ring inside the edge over its share of the way round: one line where flat, two with ticks where folded.
    fn rim(&mut self) {
        let folded = self.says("rim", "folded");
        if !folded && !self.says("rim", "flat") {
            return;
        }
        let (share, known) = self.length_or("rim-share", 50.0);
        let share = share / 100.0;
        let dashed = !known || share < 1.0;
        if dashed {
            self.unplaced.push(name("rim"));
        }
        let inside = self.edge.smaller_half() * RING;
        let from = -FRAC_PI_2 - TAU * share / 2.0;
        // Seen from inside the ring the steps are even round the disc, not along its edge.
        let edge = self.edge;
        let ring = |inside: f64| smooth(&edge.ring(from, share, 48, |_| -inside), false);
        self.draw(On::Fetal, Trace::new(What::Rim, ring(inside), 1.2).dashed(dashed));
        if folded {
            self.draw(On::Fetal, Trace::new(What::Rim, ring(inside + 5.0), 1.2).dashed(dashed));
            let outer = edge.ring(from, share, 32, |_| -inside);
            let inner = edge.ring(from, share, 32, |_| -inside - 5.0);
            let ticks = outer.into_iter().zip(inner).flat_map(|(out, inner)| straight(&[out, inner], false)).collect();
            self.draw(On::Fetal, Trace::new(What::Rim, ticks, 0.7));
        }
    }

    /// The first piece of a cord, with its vessels where they run bare, and its clamps.
    fn stub(&mut self, cord: &Cord, other: Option<Point>) {
        let away = cord.at - other.unwrap_or(Point::MIDDLE);
        let ahead = if away.length() > self.edge.smaller_half() * 0.2 { away.unit() } else { Point::new(0.6, -0.8) };
        let divided = cord.roots.len() > 1;
        // Furcate: the cord ends above the disc, and its vessels run on to it one by one.
        let from = if divided && self.edge.contains(cord.at) { cord.at + ahead * 26.0 } else { cord.at };
        if divided {
            for (n, root) in cord.roots.iter().enumerate() {
                let side = f64::from(u8::try_from(n).unwrap_or(0)) - 1.0;
                let bend = (from + *root) * 0.5 + (*root - from).across() * (0.12 * side);
                self.draw(On::Fetal, Trace::new(What::BareVessel, smooth(&[from, bend, *root], false), 1.3));
            }
        }
        let thickness = measure(self.examined, "cord-thickness", cord.of);
        if thickness.is_none() {
            self.unmeasured.push(of_cord(name("cord-thickness"), cord.of));
        }
        let half = thickness.unwrap_or(USUAL_THICKNESS) / 2.0;
        let middle = |n: u32| {
            let share = f64::from(n) / 10.0;
            from + ahead * (STUB * share) + ahead.across() * (5.0 * (share * TAU * 0.8).sin())
        };
        let beside = |n: u32, side: f64| middle(n) + (middle(n + 1) - middle(n)).unit().across() * (half * side);
        let there = (0..=10).map(|n| beside(n, 1.0));
        let back = (0..=10).rev().map(|n| beside(n, -1.0));
        let outline: Vec<Point> = there.chain(back).collect();
        let stub = Trace::new(What::Cord, smooth(&outline, true), 1.3).filled(Fill::Ground).dashed(thickness.is_none());
        self.draw(On::Fetal, stub);
        for n in 0..u32::from(cord.of.unwrap_or(0)).min(6) {
            self.clamp(middle(9 - n), (middle(10 - n) - middle(9 - n)).unit().across() * (half + 4.0));
        }
        // Where its place is a guess it is hollow.
        let fill = if cord.dashed { Fill::Ground } else { Fill::Solid };
        self.draw(On::Fetal, Trace::new(What::Insertion, round(from, half * 0.6), 1.0).filled(fill).dashed(cord.dashed));
    }

    /// A bar across the cord.
    fn clamp(&mut self, at: Point, half: Point) {
        self.draw(On::Fetal, Trace::new(What::Clamp, straight(&[at - half, at + half], false), 3.0));
    }
}
