//! Codes read as a camera reads them.

#![allow(clippy::indexing_slicing, reason = "what lies outside of a code is no code")]

use secundine_session::api::QrView;

/// The dark modules, read off the path as a browser does, and nothing but.
pub fn modules(code: &QrView) -> Vec<Vec<bool>> {
    let side = usize::try_from(code.side).unwrap();
    let mut dark = vec![vec![false; side]; side];
    for run in code.path.split_terminator('z') {
        let (corner, shape) = run.strip_prefix('M').unwrap().split_once('h').unwrap();
        let (x, y) = corner.split_once(' ').unwrap();
        let (length, rest) = shape.split_once('v').unwrap();
        assert_eq!(rest, format!("1h-{length}"), "a rectangle one high");
        let (x, y, length): (usize, usize, usize) = (x.parse().unwrap(), y.parse().unwrap(), length.parse().unwrap());
        assert!(x == 0 || !dark[y][x - 1], "runs are merged");
        for module in &mut dark[y][x..x + length] {
            assert!(!*module, "drawn twice");
            *module = true;
        }
    }
    dark
}

/// What a decoder of another hand reads, with a quiet zone of four modules around.
pub fn decoded(dark: &[Vec<bool>]) -> String {
    let (scale, quiet, side) = (6, 4, dark.len());
    let pixels = (side + 2 * quiet) * scale;
    let module = |at: usize| (at / scale).checked_sub(quiet).filter(|at| *at < side);
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(pixels, pixels, |x, y| match (module(x), module(y)) {
        (Some(x), Some(y)) if dark[y][x] => 0,
        _ => 255,
    });
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1);
    grids[0].decode().unwrap().1
}
