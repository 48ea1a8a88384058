//! Systems of a few linear equations.

#![allow(clippy::indexing_slicing, clippy::needless_range_loop, reason = "each loop runs over the fixed size of the arrays")]

/// Solves `a x = b` by elimination with pivots; none where the rows do not settle it.
pub(super) fn solve<const N: usize>(mut a: [[f64; N]; N], mut b: [f64; N]) -> Option<[f64; N]> {
    for column in 0..N {
        let pivot = (column..N).max_by(|one, other| a[*one][column].abs().total_cmp(&a[*other][column].abs()))?;
        a.swap(column, pivot);
        b.swap(column, pivot);
        let lead = a[column][column];
        if lead.abs() < 1e-14 {
            return None;
        }
        for row in column + 1..N {
            let factor = a[row][column] / lead;
            for further in column..N {
                a[row][further] -= factor * a[column][further];
            }
            b[row] -= factor * b[column];
        }
    }
    for row in (0..N).rev() {
        let known: f64 = (row + 1..N).map(|column| a[row][column] * b[column]).sum();
        b[row] = (b[row] - known) / a[row][row];
    }
    b.iter().all(|value| value.is_finite()).then_some(b)
}

/// Least squares: gathers equations `row · x = value` and solves their normal equations.
pub(super) struct Normal<const N: usize> {
    a: [[f64; N]; N],
    b: [f64; N],
}

impl<const N: usize> Normal<N> {
    pub(super) fn new() -> Self {
        Self { a: [[0.0; N]; N], b: [0.0; N] }
    }

    pub(super) fn add(&mut self, row: &[f64; N], value: f64) {
        for one in 0..N {
            for other in 0..N {
                self.a[one][other] += row[one] * row[other];
            }
            self.b[one] += row[one] * value;
        }
    }

    /// Keeps the answer near 0.
    pub(super) fn damp(&mut self, by: f64) {
        for at in 0..N {
            self.a[at][at] *= 1.0 + by;
        }
    }

    pub(super) fn solve(self) -> Option<[f64; N]> {
        solve(self.a, self.b)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_solves_what_has_one_answer_and_nothing_else() {
        // The first pivot is zero, so that rows have to change places.
        let found = solve([[0.0, 2.0, 1.0], [1.0, 1.0, 1.0], [2.0, 0.0, -3.0]], [7.0, 6.0, -7.0]).unwrap();
        for (is, wanted) in found.iter().zip([1.0, 2.0, 3.0]) {
            assert!((is - wanted).abs() < 1e-12, "{found:?}");
        }
        assert!(solve([[1.0, 2.0], [2.0, 4.0]], [1.0, 2.0]).is_none());
    }
}
