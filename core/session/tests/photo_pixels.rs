//! Photographs that were rendered, with a lens, noise and blur: decoded as any other, corners and outline found in the pixels,
//! measured, and held against the truth.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at the first surprise")]

#[path = "../../domain/tests/photo/scene.rs"]
mod scene;

use std::f64::consts::TAU;

use image::codecs::jpeg::JpegEncoder;
use image::{ExtendedColorType, ImageEncoder, RgbImage};
use scene::{Chance, Disc, Eye, Scene, card_at};
use secundine_domain::photo::{Pixel, Point, Reference, Tracing};
use secundine_session::picture;

const SIZE: (u32, u32) = (1200, 900);
/// Pixels between two that are looked at first.
const STEP: u32 = 4;
/// A card's corners are rounded by this, mm.
const ROUND: f64 = 3.18;

fn scene(chance: &mut Chance) -> Scene {
    let disc = Disc { radius: chance.between(50.0, 62.0), rim: 1.0, sway: (0.0, 0.0), ..Disc::any(chance) };
    // 50 mm on a film of 36 by 24 mm.
    let focal = 50.0 / 43.2666 * 1500.0;
    let (tilt, side) = (chance.between(0.0, 14.0_f64.to_radians()), chance.between(0.0, TAU));
    let far = chance.between(520.0, 545.0);
    let eye = Eye::at(focal, (1200.0, 900.0), (0.0, 0.0), far, tilt, side, 0.0);
    // Which way the picture lies on the table: the cards go to its left and right.
    let (left, right) = (eye.on_table((0.0, 450.0)), eye.on_table((1200.0, 450.0)));
    let way = (right.1 - left.1).atan2(right.0 - left.0);
    let mut beside = |way: f64| {
        let far = disc.radius * 1.15 + 62.0;
        card_at((far * way.cos(), far * way.sin()), way + TAU / 4.0 + chance.normal(0.15))
    };
    let things = [beside(way), beside(way + TAU / 2.0)].concat();
    Scene { eye, disc, reference: Reference::TwoCards, things }
}

/// Whether a place of the table lies under a card.
fn on_card(corners: &[Point], (x, y): Point) -> bool {
    let (a, b, d) = (corners[0], corners[1], corners[3]);
    let along = |to: Point| {
        let length = (to.0 - a.0).hypot(to.1 - a.1);
        (((x - a.0) * (to.0 - a.0) + (y - a.1) * (to.1 - a.1)) / length, length)
    };
    let beyond = |(at, length): (f64, f64)| f64::max(ROUND - at, at - (length - ROUND)).max(0.0);
    let (one, other) = (along(b), along(d));
    let inside = |(at, length): (f64, f64)| (0.0..=length).contains(&at);
    inside(one) && inside(other) && beyond(one).hypot(beyond(other)) <= ROUND
}

/// The colour at a place of the picture, without any blur.
fn colour(scene: &Scene, pixel: Point) -> [f64; 3] {
    let height = scene.disc.thickness * scene.disc.rim;
    let table = scene.eye.on_table(pixel);
    // Where the same ray meets the level of the rim.
    let share = height / scene.eye.at[2];
    let rim = (table.0 + share * (scene.eye.at[0] - table.0), table.1 + share * (scene.eye.at[1] - table.1));
    let edge = scene.disc.edge(rim.1.atan2(rim.0));
    if rim.0.hypot(rim.1) <= edge.0.hypot(edge.1) {
        return [120.0, 32.0, 44.0];
    }
    if scene.things.chunks(4).any(|card| on_card(card, table)) {
        return [244.0, 240.0, 228.0];
    }
    let light = 110.0 + pixel.0 / 60.0;
    [light, light + 6.0, light]
}

/// The scene as a camera writes it: each pixel is a mean over a disc about it, with noise, as JPEG with its lens told.
fn photograph(chance: &mut Chance, scene: &Scene) -> Vec<u8> {
    let near = [(0.0, 0.0), (0.7, 0.0), (-0.7, 0.0), (0.0, 0.7), (0.0, -0.7)];
    // Every fourth pixel tells where something ends; only there it is worth a closer look.
    let across = SIZE.0 / STEP + 1;
    let place = |n: u32| (f64::from(n % across * STEP), f64::from(n / across * STEP));
    let coarse: Vec<[f64; 3]> = (0..across * (SIZE.1 / STEP + 1)).map(|n| colour(scene, place(n))).collect();
    let image = RgbImage::from_fn(SIZE.0, SIZE.1, |x, y| {
        let first = y / STEP * across + x / STEP;
        let mut mean = coarse[first as usize];
        if [1, across, across + 1].iter().any(|more| (coarse[(first + more) as usize][2] - mean[2]).abs() > 5.0) {
            let (x, y) = (f64::from(x) + 0.5, f64::from(y) + 0.5);
            mean = [0.0; 3];
            for (a, b) in near {
                mean.iter_mut().zip(colour(scene, (x + a, y + b))).for_each(|(mean, value)| *mean += value / 5.0);
            }
        }
        image::Rgb(mean.map(|value| (value + chance.between(-5.0, 5.0)).clamp(0.0, 255.0) as u8))
    });
    let mut bytes = Vec::new();
    let mut encoder = JpegEncoder::new_with_quality(&mut bytes, 88);
    encoder.set_exif_metadata(exif(50)).unwrap();
    encoder.write_image(image.as_raw(), SIZE.0, SIZE.1, ExtendedColorType::Rgb8).unwrap();
    bytes
}

/// EXIF that tells the focal length as on film, and nothing else.
fn exif(mm: u8) -> Vec<u8> {
    let mut bytes = b"II*\0\x08\0\0\0\x01\0\x69\x87\x04\0\x01\0\0\0\x1a\0\0\0\0\0\0\0".to_vec();
    bytes.extend(b"\x01\0\x05\xa4\x03\0\x01\0\0\0");
    bytes.extend([mm, 0, 0, 0, 0, 0, 0, 0]);
    bytes
}

/// What the pixels are of.
struct Pixels(RgbImage);

impl Pixels {
    /// From 0 on a disc or the table to 1 on a card; between pixels, by the four about.
    fn card(&self, at: Point) -> f64 {
        (self.at(at, 2) - 120.0) / 110.0
    }

    /// From 0 elsewhere to 1 on the disc.
    fn disc(&self, at: Point) -> f64 {
        (self.at(at, 0) - self.at(at, 1)) / 88.0
    }

    fn at(&self, (x, y): Point, channel: usize) -> f64 {
        let (x, y) = ((x - 0.5).clamp(0.0, 1198.0), (y - 0.5).clamp(0.0, 898.0));
        let (left, top) = (x.floor(), y.floor());
        let pixel = |dx: u32, dy: u32| f64::from(self.0.get_pixel(left as u32 + dx, top as u32 + dy).0[channel]);
        let (a, b) = (x - left, y - top);
        (pixel(0, 0) * (1.0 - a) + pixel(1, 0) * a) * (1.0 - b) + (pixel(0, 1) * (1.0 - a) + pixel(1, 1) * a) * b
    }

    /// Where a value passes a half on the way from one place to another.
    fn edge(&self, of: impl Fn(&Self, Point) -> f64, from: Point, to: Point) -> Option<Point> {
        let steps = ((to.0 - from.0).hypot(to.1 - from.1) * 4.0) as u32;
        let at = |n: u32| {
            let share = f64::from(n) / f64::from(steps);
            (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1))
        };
        // Noise of one pixel is no edge: the value has to stay on the far side.
        (0..steps.saturating_sub(8)).find(|n| (0..8).all(|m| of(self, at(n + m)) < 0.5)).map(at)
    }

    /// The places of the cards, left and right of the disc.
    fn cards(&self) -> [Vec<Point>; 2] {
        let mut sides = [Vec::new(), Vec::new()];
        for (y, x) in (0..SIZE.1).step_by(2).flat_map(|y| (0..SIZE.0).step_by(2).map(move |x| (y, x))) {
            if self.0.get_pixel(x, y).0[2] > 175 {
                sides[usize::from(x > SIZE.0 / 2)].push((f64::from(x) + 0.5, f64::from(y) + 0.5));
            }
        }
        sides
    }
}

fn middle(points: &[Point]) -> Point {
    let sum = points.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
    (sum.0 / points.len() as f64, sum.1 / points.len() as f64)
}

fn apart(one: Point, other: Point) -> f64 {
    (one.0 - other.0).hypot(one.1 - other.1)
}

/// The four corners of a card: where lines fitted along its edges meet, not where its rounded tips are.
fn corners(pixels: &Pixels, card: &[Point]) -> Vec<Point> {
    let centre = middle(card);
    let farthest = |measure: &dyn Fn(Point) -> f64| *card.iter().max_by(|a, b| measure(**a).total_cmp(&measure(**b))).unwrap();
    let first = farthest(&|point| apart(point, centre));
    let third = farthest(&|point| apart(point, first));
    let off = |point: Point| (third.0 - first.0) * (point.1 - first.1) - (third.1 - first.1) * (point.0 - first.0);
    let tips = [first, farthest(&|point| off(point)), third, farthest(&|point| -off(point))];
    let lines: Vec<(Point, Point)> = (0..4)
        .map(|n| {
            let (from, to) = (tips[n], tips[(n + 1) % 4]);
            let found = (15..=85).step_by(2).filter_map(|percent| {
                let share = f64::from(percent) / 100.0;
                let on = (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1));
                // Square to the edge, from inside to outside.
                let (x, y) = ((to.1 - from.1) / apart(from, to), (from.0 - to.0) / apart(from, to));
                let sign = if (on.0 - centre.0) * x + (on.1 - centre.1) * y > 0.0 { 1.0 } else { -1.0 };
                let step = |by: f64| (on.0 + sign * x * by, on.1 + sign * y * by);
                pixels.edge(Pixels::card, step(-8.0), step(14.0))
            });
            fitted(&found.collect::<Vec<_>>())
        })
        .collect();
    (0..4).map(|n| meeting(lines[(n + 3) % 4], lines[n])).collect()
}

/// A point and a direction of the line that lies nearest.
fn fitted(points: &[Point]) -> (Point, Point) {
    assert!(points.len() > 20, "{}", points.len());
    let centre = middle(points);
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for (x, y) in points {
        let (x, y) = (x - centre.0, y - centre.1);
        (xx, xy, yy) = (xx + x * x, xy + x * y, yy + y * y);
    }
    let angle = f64::atan2(2.0 * xy, xx - yy) / 2.0;
    (centre, (angle.cos(), angle.sin()))
}

fn meeting((a, u): (Point, Point), (b, v): (Point, Point)) -> Point {
    let along = ((b.0 - a.0) * v.1 - (b.1 - a.1) * v.0) / (u.0 * v.1 - u.1 * v.0);
    (a.0 + along * u.0, a.1 + along * u.1)
}

#[test]
fn what_is_found_in_the_pixels_measures_as_it_is() {
    let mut chance = Chance(85);
    let (mut slips, mut covered, mut offs) = (Vec::new(), 0, Vec::new());
    for _ in 0..20 {
        let scene = scene(&mut chance);
        let taken = picture::take(&photograph(&mut chance, &scene)).unwrap();
        assert_eq!((taken.width, taken.height, taken.focal), (SIZE.0, SIZE.1, Some(1_733)));
        let pixels = Pixels(image::load_from_memory(&taken.file).unwrap().into_rgb8());
        let found: Vec<Point> = pixels.cards().iter().flat_map(|card| corners(&pixels, card)).collect();
        for corner in &found {
            let nearest = scene.corners().into_iter().map(|truth| apart(*corner, truth)).fold(f64::MAX, f64::min);
            slips.push(nearest);
        }
        let centre = scene.eye.sees((0.0, 0.0), scene.disc.thickness);
        let outline = (0..48).map(|n| f64::from(n) * TAU / 48.0).map(|angle| {
            let out = (centre.0 + 450.0 * angle.cos(), centre.1 + 450.0 * angle.sin());
            pixels.edge(Pixels::disc, centre, out).unwrap()
        });
        let tenths = |(x, y): Point| Pixel { x: (x * 10.0).round() as i32, y: (y * 10.0).round() as i32 };
        let tracing = Tracing {
            reference: Reference::TwoCards,
            corners: found.iter().copied().map(tenths).collect(),
            outline: outline.map(tenths).collect(),
            insertion: Some(tenths(scene.insertion())),
            thickness: scene.disc.thickness.round() as u32,
        };
        let sizes = tracing.measure(taken.width, taken.height, taken.focal).unwrap();
        let [length, breadth, area, distance] = scene.disc.truth();
        let edge = sizes.insertion.unwrap().distance;
        for (size, truth) in
            [(sizes.length, length * 100.0), (sizes.breadth, breadth * 100.0), (sizes.area, area), (edge, distance * 100.0)]
        {
            covered += usize::from((f64::from(size.value) - truth).abs() <= f64::from(size.plus_minus));
        }
        offs.push((f64::from(sizes.area.value) / area - 1.0).abs());
    }
    let mean = slips.iter().sum::<f64>() / slips.len() as f64;
    let worst = offs.iter().copied().fold(0.0, f64::max);
    assert!(slips.len() == 160 && mean < 0.5, "corners are found to {mean} pixels");
    assert!(covered >= 75, "{covered} of 80");
    assert!(worst < 0.03, "{worst}");
}
