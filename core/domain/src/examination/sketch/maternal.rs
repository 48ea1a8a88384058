//! The maternal side: furrows hinted, gaps, clots that stick, firm areas.

use std::f64::consts::{PI, TAU};

use super::edge::{Edge, Point, round, smooth, straight};
use super::{Fill, On, Pad, Trace, What, measure, name};

/// Width of a gap or a firm area, mm, where none is recorded.
const USUAL_GAP: f64 = 34.0;
const USUAL_FIRM: f64 = 15.0;
/// Of a clot whose share of the surface is not recorded.
const USUAL_CLOT: f64 = 45.0;

impl Pad<'_> {
    pub(super) fn maternal_side(&mut self) {
        self.furrows();
        self.clots();
        self.firm_areas();
        self.gaps();
    }

    /// Short lines that close no lobe, so that none can be counted.
    fn furrows(&mut self) {
        let reach = self.edge.smaller_half() * 0.3;
        for n in 0..11 {
            let (share, turn) = (f64::from(n) + 0.6, f64::from(n) * 2.4);
            let from_middle = (share / 11.0).sqrt() * 0.8;
            let middle =
                Point::new(self.edge.half_length * from_middle * turn.cos(), self.edge.half_breadth * from_middle * turn.sin());
            let lean = turn + PI * 0.62 + 0.5 * (share * 1.7).sin();
            let way = Point::new(lean.cos(), lean.sin()) * reach;
            let bow = way.across() * 0.22;
            let points = [middle - way * 0.5, middle + bow, middle + way * 0.5];
            if points.iter().all(|point| self.edge.contains(*point)) {
                self.draw(On::Maternal, Trace::new(What::Furrow, smooth(&points, false), 0.6));
            }
        }
    }

    /// Together as large as their share of the surface.
    fn clots(&mut self) {
        if !self.says("maternal-clot", "adherent") {
            return;
        }
        let places = self.points("clot-place", None);
        if places.is_empty() {
            self.missing.push(name("clot-place"));
            return;
        }
        let share = measure(self.examined, "clot-share", None);
        if share.is_none() {
            self.unmeasured.push(name("clot-share"));
        }
        let number = f64::from(u32::try_from(places.len()).unwrap_or(1));
        let Edge { half_length, half_breadth, .. } = self.edge;
        let radius = share.map_or(USUAL_CLOT / 2.0, |percent| (percent / 100.0 * half_length * half_breadth / number).sqrt());
        // How the whole share is parted among several is not known.
        let dashed = share.is_none() || places.len() > 1;
        for (middle, _) in places {
            self.draw(On::Maternal, Trace::new(What::Clot, round(middle, radius), 1.2).filled(Fill::Tint).dashed(dashed));
        }
    }

    fn firm_areas(&mut self) {
        if self.says("maternal-surface", "firm-areas") && self.points("firm-places", None).is_empty() {
            self.missing.push(name("firm-places"));
        }
        self.spots(On::Maternal, What::FirmArea, "firm-places", USUAL_FIRM);
    }

    fn gaps(&mut self) {
        if !["gap", "torn"].iter().any(|option| self.says("lobes", option)) {
            return;
        }
        let places = self.points("gap-place", None);
        if places.is_empty() {
            self.missing.push(name("gap-place"));
        } else if places.iter().any(|(_, size)| size.is_none()) {
            self.unmeasured.push(name("gap-place"));
        }
        for (middle, size) in places {
            self.gap(middle, size.unwrap_or(USUAL_GAP) / 2.0, size.is_none());
        }
    }

    /// A piece bitten out: of its ragged edge only that is drawn which lies in the disc.
    fn gap(&mut self, middle: Point, radius: f64, dashed: bool) {
        let ragged: Vec<Point> = (0..22)
            .map(|n| {
                let turn = TAU * f64::from(n) / 22.0;
                let reach = radius * if n % 2 == 0 { 1.0 } else { 0.86 };
                middle + Point::new(turn.cos(), turn.sin()) * reach
            })
            .collect();
        self.draw(On::Maternal, Trace::new(What::Gap, straight(&ragged, true), 0.0).filled(Fill::Ground));
        let line = |steps| Trace::new(What::Gap, steps, 1.5).dashed(dashed);
        let inside = self.within(&ragged);
        if inside.is_empty() {
            self.draw(On::Maternal, line(straight(&ragged, true)));
        }
        for run in inside {
            self.draw(On::Maternal, line(straight(&run, false)));
        }
    }

    /// The runs of a closed line that lie in the disc, each from edge to edge.
    fn within(&self, closed: &[Point]) -> Vec<Vec<Point>> {
        let Some(last) = closed.last() else { return Vec::new() };
        let mut runs: Vec<Vec<Point>> = Vec::new();
        let mut before = *last;
        for point in closed {
            match (self.edge.contains(before), self.edge.contains(*point)) {
                (true, true) => match runs.last_mut() {
                    Some(run) => run.push(*point),
                    None => runs.push(vec![before, *point]),
                },
                (false, true) => runs.push(vec![self.crossing(*point, before), *point]),
                (true, false) => match runs.last_mut() {
                    Some(run) => run.push(self.crossing(before, *point)),
                    None => runs.push(vec![before, self.crossing(before, *point)]),
                },
                (false, false) => {}
            }
            before = *point;
        }
        runs
    }

    /// Where the way from inside to outside meets the edge.
    fn crossing(&self, inside: Point, outside: Point) -> Point {
        let (mut low, mut high) = (0.0, 1.0);
        for _ in 0..20 {
            let middle = f64::midpoint(low, high);
            if self.edge.contains(inside + (outside - inside) * middle) { low = middle } else { high = middle }
        }
        inside + (outside - inside) * low
    }
}
