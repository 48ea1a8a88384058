//! The membranes, their tears, lobes apart from the disc and the vessels that run or end in the membranes.

use super::edge::{Point, between, round, smooth, straight};
use super::{Fill, On, Pad, Trace, What, name};

/// How far the membranes are drawn round the disc, mm, and how far out a tear is drawn at most.
const LOOSE: f64 = 20.0;
const FARTHEST_TEAR: f64 = 160.0;
/// How far the membranes go beyond what lies in them.
const BEYOND: f64 = 16.0;
/// Half the length of a tear as drawn.
const HALF_TEAR: f64 = 15.0;
/// Width of an extra lobe and its way from the disc where they are not recorded.
const USUAL_LOBE: f64 = 50.0;
const USUAL_GAP: f64 = 20.0;
/// Where what has no place is drawn, as angles round the disc: below to the right and below to the left.
const LOBE_AT: f64 = 0.6;
const TEAR_AT: f64 = 2.4;

/// Something beyond the edge of the disc.
struct Beyond {
    /// From which place on the edge.
    t: f64,
    /// How far out, mm.
    distance: f64,
    /// How far out the membranes go round it, and how wide.
    reach: f64,
    half_width: f64,
    dashed: bool,
}

impl Pad<'_> {
    /// Also what lies in them, over and under the disc.
    pub(super) fn membranes_and_disc(&mut self) {
        let tears = self.tears();
        let lobes = self.lobes();
        self.loose_outline(tears.iter().chain(&lobes));
        for lobe in &lobes {
            self.lobe(lobe);
        }
        if self.says("edge-vessels", "torn-end") && lobes.is_empty() {
            self.torn_vessels(tears.first());
        }
        self.disc();
        // A tear at the very edge is seen.
        for tear in &tears {
            self.tear(tear);
        }
    }

    fn loose_outline<'b>(&mut self, beyond: impl Iterator<Item = &'b Beyond>) {
        let looked = ["amnion", "chorion"].iter().any(|item| self.examined.get(item).is_some());
        if !looked {
            self.missing.push(name("amnion"));
        }
        let beyond: Vec<&Beyond> = beyond.collect();
        let edge = self.edge;
        let outside = |t: f64| {
            let wave = LOOSE + 4.0 * (3.0 * t + 1.0).sin() + 2.5 * (7.0 * t).sin();
            let around = |one: &&Beyond| {
                // The farther out, the wider they are drawn along, as a loose sac hangs.
                let wide = (one.half_width + one.reach * 0.45) / edge.smaller_half() + 0.2;
                let near = (-(between(t, one.t) / wide).powi(2)).exp();
                wave + (one.reach - wave).max(0.0) * near
            };
            beyond.iter().map(around).fold(wave, f64::max)
        };
        let points = edge.ring(0.0, 1.0, 60, outside);
        let around = points.get(1..).unwrap_or_default();
        self.draw(On::Both, Trace::new(What::Membranes, smooth(around, true), 0.8).dashed(!looked));
    }

    /// Each place where they tore; where only one of place and distance is known, the other is a guess.
    fn tears(&mut self) -> Vec<Beyond> {
        let distance = super::measure(self.examined, "tear-edge", None);
        let places = self.points("tear-place", None);
        let edge = self.edge;
        let drawn = |t: f64, distance: f64, known: bool| {
            let dashed = !known || distance > FARTHEST_TEAR;
            let distance = distance.min(FARTHEST_TEAR);
            Beyond { t, distance, reach: distance + BEYOND, half_width: HALF_TEAR, dashed }
        };
        if distance.is_some_and(|mm| mm > FARTHEST_TEAR) || (distance.is_none() || places.len() > 1) && !places.is_empty() {
            self.unmeasured.push(name("tear-edge"));
        }
        if places.is_empty() {
            let distance = distance.into_iter();
            self.unplaced.extend(distance.clone().map(|_| name("tear-place")));
            return distance.map(|mm| drawn(TEAR_AT, mm, false)).collect();
        }
        // One distance was measured, of the tear that lies nearest to the edge: with several it is not known which.
        let known = distance.is_some() && places.len() == 1;
        places.iter().map(|(point, _)| drawn(edge.nearest(*point), distance.unwrap_or(LOOSE), known)).collect()
    }

    fn tear(&mut self, Beyond { t, distance, dashed, .. }: &Beyond) {
        let outward = self.edge.outward(*t);
        let middle = self.edge.at(*t) + outward * *distance;
        let along = outward.across();
        let jag = |n: i32, side: f64| {
            let share = f64::from(n) / 6.0;
            let deep = if n % 2 == 0 { 4.5 } else { 2.0 };
            middle + along * (HALF_TEAR * share) + outward * (side * deep * (1.0 - share.abs()))
        };
        let there = (-6..=6).map(|n| jag(n, 1.0));
        let back = (-5..=5).rev().map(|n| jag(n, -1.0));
        let points: Vec<Point> = there.chain(back).collect();
        self.draw(On::Both, Trace::new(What::Tear, straight(&points, true), 0.9).filled(Fill::Tint).dashed(*dashed));
    }

    fn lobes(&mut self) -> Vec<Beyond> {
        if !self.says("shape", "extra-lobe") {
            return Vec::new();
        }
        let (size, sized) = self.length_or("extra-lobe-size", USUAL_LOBE);
        let (gap, placed) = self.length_or("extra-lobe-gap", USUAL_GAP);
        let places = self.points("extra-lobe-place", None);
        let edge = self.edge;
        let lobe = |t: f64, known: bool| {
            let dashed = !known || !sized || !placed;
            Beyond { t, distance: gap + size / 2.0, reach: gap + size + BEYOND, half_width: size / 2.0 + 8.0, dashed }
        };
        if places.is_empty() {
            self.unplaced.push(name("extra-lobe-place"));
            return vec![lobe(LOBE_AT, false)];
        }
        if places.len() > 1 {
            self.unmeasured.push(name("extra-lobe-size"));
        }
        places.iter().map(|(point, _)| lobe(edge.nearest(*point), places.len() == 1)).collect()
    }

    /// An extra lobe, joined to the disc by vessels; broken ones where one was seen to end torn.
    fn lobe(&mut self, Beyond { t, distance, reach, dashed, .. }: &Beyond) {
        let outward = self.edge.outward(*t);
        let along = outward.across();
        let middle = self.edge.at(*t) + outward * *distance;
        let radius = reach - BEYOND - distance;
        let torn = self.says("edge-vessels", "torn-end");
        for side in [-1.0, 1.0] {
            let from = self.edge.at(t + side * 0.09) - outward * 8.0;
            let to = middle + along * (side * radius * 0.3) - outward * (radius * 0.55);
            if torn {
                self.torn_vessel(from, from + (to - from) * 0.4);
                self.torn_vessel(to, to + (from - to) * 0.22);
            } else {
                let bend = (from + to) * 0.5 + along * (side * 3.0);
                self.draw(On::Fetal, Trace::new(What::BareVessel, smooth(&[from, bend, to], false), 1.0));
            }
        }
        let lobe = Trace::new(What::ExtraLobe, round(middle, radius), 1.5).filled(Fill::Ground).dashed(*dashed);
        // On the fetal side the vessels run onto it.
        self.maternal.push(lobe.clone());
        self.fetal.insert(1.min(self.fetal.len()), lobe);
    }

    /// Vessels that leave the disc and end torn, where no lobe is here that they led to.
    fn torn_vessels(&mut self, tear: Option<&Beyond>) {
        let (t, room) = tear.map_or((LOBE_AT, LOOSE), |tear| (tear.t, tear.distance));
        if tear.is_none() {
            self.unplaced.push(name("edge-vessels"));
        }
        let outward = self.edge.outward(t);
        for side in [-1.0, 1.0] {
            let from = self.edge.at(t + side * 0.07) - outward * 6.0;
            self.torn_vessel(from, from + outward * (6.0 + (room - 6.0).clamp(8.0, 40.0)));
        }
    }

    /// Ends in a fork.
    fn torn_vessel(&mut self, from: Point, to: Point) {
        let (ahead, across) = ((to - from).unit(), (to - from).unit().across());
        let lines = [[from, to], [to, to + ahead * 3.0 + across * 3.0], [to, to + ahead * 3.0 - across * 3.0]];
        let steps = lines.iter().flat_map(|line| straight(line, false)).collect();
        self.draw(On::Fetal, Trace::new(What::TornVessel, steps, 1.2));
    }
}
