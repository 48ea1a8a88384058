//! A photograph of twelve million pixels: decoded and measured on, and taken in whole. Prints time and peak memory.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a bench stops at the first surprise and prints what it finds"
)]

use std::f64::consts::TAU;
use std::hint::black_box;
use std::io::Cursor;
use std::time::Instant;

use image::{ImageFormat, Rgb, RgbImage};
use secundine_domain::photo::{Pixel, Reference, Tracing};
use secundine_session::picture;
use secundine_tests::measure::report;

const GOAL_MS: f64 = 500.0;
const GOAL_MB: u64 = 150;

fn main() {
    let file = photograph();
    println!("a JPEG of 4000 by 3000 pixels, {:.1} MB", file.len() as f64 / 1e6);
    let tracing = tracing();
    let (took, peak) = report("decoded, and a disc measured on it", || {
        let image = picture::upright(&file).unwrap().image;
        let sizes = tracing.measure(image.width(), image.height(), None).unwrap();
        black_box((image, sizes));
    });
    println!("    goal {GOAL_MS} ms, {GOAL_MB} MB: {}", if took < GOAL_MS && peak < GOAL_MB { "met" } else { "MISSED" });
    report("taken in: decoded, turned, encoded anew, and a small one", || drop(black_box(picture::take(&file).unwrap())));
    let began = Instant::now();
    (0..100).for_each(|_| _ = black_box(tracing.measure(4_000, 3_000, None)));
    println!("of which the measure: {:.2} ms", began.elapsed().as_secs_f64() * 10.0);
}

/// Texture all over, as cloth and tissue have.
fn photograph() -> Vec<u8> {
    let image = RgbImage::from_fn(4_000, 3_000, |x, y| {
        let noise = (x.wrapping_mul(2_654_435_761) ^ y.wrapping_mul(40_503).wrapping_mul(x | 1)) >> 27;
        let tone = |base: u32| (base + noise + (x / 7 + y / 5) % 24) as u8;
        Rgb([tone(120), tone(60), tone(70)])
    });
    let mut bytes = Vec::new();
    image.write_to(&mut Cursor::new(&mut bytes), ImageFormat::Jpeg).unwrap();
    bytes
}

/// Two cards 500 mm below a camera that looks straight down, 6 pixels to a mm.
fn tracing() -> Tracing {
    let pixel = |x: f64, y: f64| Pixel { x: ((2_000.0 + 6.0 * x) * 10.0) as i32, y: ((1_500.0 + 6.0 * y) * 10.0) as i32 };
    let card = |x: f64| [(-27.0, -42.8), (27.0, -42.8), (27.0, 42.8), (-27.0, 42.8)].map(|(a, b)| pixel(x + a, b));
    let outline = (0..36).map(|n| f64::from(n) * TAU / 36.0).map(|angle| pixel(95.0 * angle.cos(), 80.0 * angle.sin()));
    Tracing {
        reference: Reference::TwoCards,
        corners: [card(-160.0), card(160.0)].concat(),
        outline: outline.collect(),
        insertion: None,
        thickness: 20,
    }
}
