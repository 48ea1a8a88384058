//! Where the camera was: how far above the plane, and how far tilted, from the plane's homography and the focal length.

use super::homography::{Homography, cross};

/// Where the camera was.
#[derive(Clone, Copy, Debug)]
pub struct Camera {
    /// Height of the lens above the plane, mm.
    pub height: f64,
    /// Angle between the lens's axis and the plumb line on the plane, radians.
    pub tilt: f64,
}

impl Camera {
    /// From the homography of a plane in mm into a picture whose coordinates are counted from its middle, and the focal
    /// length in pixels. The picture's middle is taken for the lens's, and its pixels for square.
    #[must_use]
    pub fn of(plane: &Homography, focal: f64) -> Self {
        let [first, second, place] = columns(plane).map(|[x, y, z]| [x / focal, y / focal, z]);
        let scale = 2.0 / (norm(first) + norm(second));
        let upright = cross(first.map(|x| x * scale), second.map(|x| x * scale));
        let size = norm(upright);
        let [x, y, z] = upright.map(|value| value / size);
        let [a, b, c] = place.map(|value| value * scale);
        Self { height: (x * a + y * b + z * c).abs(), tilt: z.abs().min(1.0).acos() }
    }
}

/// The focal length in pixels by which the plane's two axes stand at right angles and are of one length, as nearly as can
/// be; none where none does. A camera that looks straight down tells nothing of it.
#[must_use]
pub fn focal(plane: &Homography) -> Option<f64> {
    let [[a, b, c], [d, e, f], _] = columns(plane);
    // a d + b e + f² c f = 0 and a² + b² − d² − e² + f² (c² − f²) = 0, by least squares for f².
    let (right, right_deep) = (a * d + b * e, c * f);
    let (equal, equal_deep) = (a * a + b * b - d * d - e * e, c * c - f * f);
    let squared = -(right * right_deep * 4.0 + equal * equal_deep) / (4.0 * right_deep * right_deep + equal_deep * equal_deep);
    (squared.is_finite() && squared > 0.0).then(|| squared.sqrt())
}

fn columns(plane: &Homography) -> [[f64; 3]; 3] {
    let [[a, b, c], [d, e, f], [g, h, i]] = plane.0;
    [[a, d, g], [b, e, h], [c, f, i]]
}

fn norm(vector: [f64; 3]) -> f64 {
    vector.iter().map(|value| value * value).sum::<f64>().sqrt()
}
