//! Homography, area and calipers against OpenCV, on a thousand scenes by chance.
//!
//! `photo/opencv.csv.gz` was written by `photo/opencv.py` with OpenCV 5.0.0, which works with single precision.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, clippy::disallowed_macros, reason = "a test")]

use std::io::Read;

use flate2::read::GzDecoder;
use secundine_domain::photo::{Homography, Point, calipers, card, signed_area};

/// How far two numbers are apart, as a share of the second.
fn off(is: f64, wanted: f64) -> f64 {
    (is / wanted - 1.0).abs()
}

#[test]
fn ours_come_to_the_same_as_opencv() {
    let mut text = String::new();
    GzDecoder::new(&include_bytes!("photo/opencv.csv.gz")[..]).read_to_string(&mut text).unwrap();
    let (mut scenes, mut worst) = (0, [0.0_f64; 5]);
    for line in text.lines() {
        let numbers: Vec<f64> = line.split(',').map(|number| number.parse().unwrap()).collect();
        let (corners, rest) = numbers.split_at(8);
        let (outline, rest) = rest[1..].split_at(rest[0] as usize * 2);
        let points = |numbers: &[f64]| numbers.as_chunks::<2>().0.iter().map(|[x, y]| (*x, *y)).collect::<Vec<Point>>();
        let ours = Homography::fit(&card(), &points(corners)).unwrap();
        let back = ours.inverse();
        let outline: Vec<Point> = points(outline).into_iter().map(|point| back.apply(point)).collect();
        let theirs = |place: Point| {
            let [x, y, w] = [0, 3, 6].map(|row| rest[row] * place.0 + rest[row + 1] * place.1 + rest[row + 2]);
            (x / w, y / w)
        };
        // Half a metre round the card, in pixels.
        let places = [(0.0, 0.0), (85.6, 53.98), (300.0, 0.0), (-100.0, 200.0)];
        let apart = places.map(|place| (ours.apply(place).0 - theirs(place).0).hypot(ours.apply(place).1 - theirs(place).1));
        let (longest, width) = calipers(&outline);
        let found = [
            apart.into_iter().fold(0.0, f64::max),
            off(signed_area(&outline).abs(), rest[9]),
            off(longest, rest[10]),
            off(width, rest[11]),
            // No rectangle is narrower than the least width, or shorter than the outline is wide.
            f64::max(0.0, width * width / rest[12] - 1.0),
        ];
        worst.iter_mut().zip(found).for_each(|(worst, found)| *worst = worst.max(found));
        scenes += 1;
    }
    println!("{scenes} scenes: {worst:?}");
    assert_eq!(scenes, 1_000);
    let [pixels, area, longest, width, rectangle] = worst;
    assert!(pixels < 0.05 && area < 0.001 && longest < 0.000_5 && width < 0.000_5 && rectangle < 0.000_5, "{worst:?}");
}
