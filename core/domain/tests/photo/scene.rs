//! Scenes that are known to the last micrometre: a camera above a table, cards or a frame on it, and a disc with a rim.

#![allow(dead_code, reason = "each test file uses its own part")]

use std::f64::consts::TAU;

use secundine_domain::photo::{Point, Reference, calipers, card, distance, signed_area};

/// Numbers by chance, the same in every run (SplitMix64).
pub struct Chance(pub u64);

impl Chance {
    pub fn between(&mut self, from: f64, to: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        from + (to - from) * ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Of a normal distribution (Box and Muller).
    pub fn normal(&mut self, deviation: f64) -> f64 {
        let (one, other) = (self.between(1e-12, 1.0), self.between(0.0, TAU));
        deviation * (-2.0 * one.ln()).sqrt() * other.cos()
    }

    pub fn near(&mut self, (x, y): Point, deviation: f64) -> Point {
        (x + self.normal(deviation), y + self.normal(deviation))
    }
}

type Vector = [f64; 3];

fn dot(a: Vector, b: Vector) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn cross([a, b, c]: Vector, [x, y, z]: Vector) -> Vector {
    [b * z - c * y, c * x - a * z, a * y - b * x]
}

/// A pinhole camera; the table is the plane z = 0, mm.
pub struct Eye {
    pub focal: f64,
    pub size: Point,
    pub at: Vector,
    right: Vector,
    down: Vector,
    ahead: Vector,
}

impl Eye {
    /// Looks at a place of the table from this distance, tilted towards `side`, and turned by `roll`; radians.
    pub fn at(focal: f64, size: Point, aim: Point, distance: f64, tilt: f64, side: f64, roll: f64) -> Self {
        let ahead = [-tilt.sin() * side.cos(), -tilt.sin() * side.sin(), -tilt.cos()];
        let at = [aim.0 - ahead[0] * distance, aim.1 - ahead[1] * distance, -ahead[2] * distance];
        let level = cross(ahead, [-side.sin(), side.cos(), 0.0]);
        let flat = [-side.sin(), side.cos(), 0.0];
        let turned = |a: Vector, b: Vector| std::array::from_fn(|n| a[n] * roll.cos() + b[n] * roll.sin());
        let right = turned(flat, level);
        Self { focal, size, at, right, down: cross(ahead, right), ahead }
    }

    pub fn sees(&self, (x, y): Point, z: f64) -> Point {
        let from = [x - self.at[0], y - self.at[1], z - self.at[2]];
        let deep = dot(from, self.ahead) / self.focal;
        (dot(from, self.right) / deep + self.size.0 / 2.0, dot(from, self.down) / deep + self.size.1 / 2.0)
    }

    pub fn has(&self, (x, y): Point) -> bool {
        (0.0..self.size.0).contains(&x) && (0.0..self.size.1).contains(&y)
    }

    /// Where the ray through a pixel meets the table.
    pub fn on_table(&self, (u, v): Point) -> Point {
        let (a, b) = ((u - self.size.0 / 2.0) / self.focal, (v - self.size.1 / 2.0) / self.focal);
        let ray: Vector = std::array::from_fn(|n| self.ahead[n] + a * self.right[n] + b * self.down[n]);
        let far = -self.at[2] / ray[2];
        (self.at[0] + far * ray[0], self.at[1] + far * ray[1])
    }
}

/// A disc whose rim is a closed curve, with its middle at 0.
pub struct Disc {
    pub radius: f64,
    /// Share of the radius and phase of the second, third and fourth wave round it.
    pub waves: [(f64, f64); 3],
    pub thickness: f64,
    /// Height of the rim as a share of the thickness, and how it varies round it.
    pub rim: f64,
    pub sway: (f64, f64),
    pub insertion: Point,
}

impl Disc {
    pub fn any(chance: &mut Chance) -> Self {
        let mut wave = |most: f64| (chance.between(0.0, most), chance.between(0.0, TAU));
        let waves = [wave(0.13), wave(0.04), wave(0.02)];
        let radius = chance.between(65.0, 115.0);
        let (far, way) = (radius * chance.between(0.0, 0.75), chance.between(0.0, TAU));
        Self {
            radius,
            waves,
            thickness: chance.between(10.0, 35.0),
            rim: chance.between(0.5, 1.0),
            sway: (0.05, chance.between(0.0, TAU)),
            insertion: (far * way.cos(), far * way.sin()),
        }
    }

    pub fn edge(&self, angle: f64) -> Point {
        let waves = self.waves.iter().zip([2.0, 3.0, 4.0]).map(|((share, phase), n)| share * (n * angle + phase).cos());
        let radius = self.radius * (1.0 + waves.sum::<f64>());
        (radius * angle.cos(), radius * angle.sin())
    }

    pub fn height(&self, angle: f64) -> f64 {
        self.thickness * (self.rim + self.sway.0 * (angle + self.sway.1).cos())
    }

    /// Length, breadth, area, and distance from the insertion to the edge.
    pub fn truth(&self) -> [f64; 4] {
        let edge: Vec<Point> = (0..240).map(|n| self.edge(f64::from(n) * TAU / 240.0)).collect();
        let (length, breadth) = calipers(&edge);
        [length, breadth, signed_area(&edge).abs(), distance(&edge, self.insertion)]
    }
}

/// A card at this place, turned by this angle.
pub fn card_at((x, y): Point, angle: f64) -> Vec<Point> {
    let (sin, cos) = angle.sin_cos();
    let middle = |(a, b): Point| (a - 42.8, b - 26.99);
    card().map(middle).map(|(a, b)| (x + cos * a - sin * b, y + sin * a + cos * b)).to_vec()
}

/// A scene: what the camera sees of it, without any noise, is `corners` and `outline`.
pub struct Scene {
    pub eye: Eye,
    pub disc: Disc,
    pub reference: Reference,
    pub things: Vec<Point>,
}

impl Scene {
    /// Any scene that fits into a picture of twelve million pixels, with a lens of 21 to 32 mm on a film of 36 by 24 mm.
    pub fn any(chance: &mut Chance, kind: u32) -> Self {
        loop {
            let disc = Disc::any(chance);
            let film = (26.0 + chance.normal(2.6)).clamp(21.0, 32.0);
            let (tilt, side) = (chance.between(0.0, 24.0_f64.to_radians()), chance.between(0.0, TAU));
            let far = chance.between(420.0 / tilt.cos(), 800.0);
            let aim = (chance.normal(20.0), chance.normal(20.0));
            let eye = Eye::at(film / 43.2666 * 5000.0, (4000.0, 3000.0), aim, far, tilt, side, chance.between(0.0, TAU));
            let way = chance.between(0.0, TAU);
            let beside = |chance: &mut Chance, way: f64| {
                let far = disc.radius * 1.15 + chance.between(40.0, 60.0);
                card_at((far * way.cos(), far * way.sin()), chance.between(0.0, TAU))
            };
            let (reference, things) = match kind {
                1 => (Reference::OneCard, beside(chance, way)),
                2 => {
                    let opposite = way + TAU / 2.0 + chance.normal(0.2);
                    (Reference::TwoCards, [beside(chance, way), beside(chance, opposite)].concat())
                }
                _ => {
                    let frame = [(-150.0, -150.0), (150.0, -150.0), (150.0, 150.0), (-150.0, 150.0)];
                    (Reference::Frame { side: 300 }, frame.to_vec())
                }
            };
            let scene = Self { eye, disc, reference, things };
            if scene.corners().iter().chain(&scene.outline(60)).all(|point| scene.eye.has(*point)) {
                return scene;
            }
        }
    }

    pub fn corners(&self) -> Vec<Point> {
        self.things.iter().map(|corner| self.eye.sees(*corner, 0.0)).collect()
    }

    pub fn outline(&self, points: u32) -> Vec<Point> {
        let angle = |n: u32| f64::from(n) * TAU / f64::from(points);
        (0..points).map(|n| self.eye.sees(self.disc.edge(angle(n)), self.disc.height(angle(n)))).collect()
    }

    /// The outline as a hand draws it that is off by this many mm at each point.
    pub fn drawn(&self, chance: &mut Chance, points: u32, off: f64) -> Vec<Point> {
        let draw = |n: u32| {
            let angle = (f64::from(n) + chance.between(-0.3, 0.3)) * TAU / f64::from(points);
            let edge = self.disc.edge(angle);
            self.eye.sees(chance.near(edge, off), self.disc.height(angle))
        };
        (0..points).map(draw).collect()
    }

    pub fn insertion(&self) -> Point {
        self.eye.sees(self.disc.insertion, self.disc.thickness * self.disc.rim)
    }
}
