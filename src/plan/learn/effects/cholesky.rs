/// The lower triangle L of a symmetric positive definite matrix A = L L', row by row.
#[derive(Debug)]
pub(super) struct Cholesky(Vec<Vec<f64>>);

impl Cholesky {
    /// `None` when the matrix is not positive definite.
    pub(super) fn of(matrix: &[Vec<f64>]) -> Option<Self> {
        let mut lower: Vec<Vec<f64>> = Vec::new();
        for (at, wanted) in matrix.iter().enumerate() {
            let mut row: Vec<f64> = Vec::new();
            for (above, value) in lower.iter().zip(wanted) {
                let diagonal = above.last()?;
                row.push((value - dot(&row, above)) / diagonal);
            }
            let rest = wanted.get(at)? - dot(&row, &row);
            if rest.is_nan() || rest <= 0.0 {
                return None;
            }
            row.push(rest.sqrt());
            lower.push(row);
        }
        Some(Self(lower))
    }

    /// Logarithm of the determinant of A.
    pub(super) fn log_determinant(&self) -> f64 {
        2.0 * self.0.iter().filter_map(|row| row.last()).map(|diagonal| diagonal.ln()).sum::<f64>()
    }

    /// x with A x = `right`.
    pub(super) fn solve(&self, right: &[f64]) -> Vec<f64> {
        let mut down: Vec<f64> = Vec::new();
        for (row, value) in self.0.iter().zip(right) {
            let diagonal = row.last().copied().unwrap_or(1.0);
            down.push((value - dot(&down, row)) / diagonal);
        }
        // From the last row up: once x of a row is known, it leaves the rows above.
        let mut up: Vec<f64> = Vec::new();
        for row in self.0.iter().rev() {
            let (Some((diagonal, others)), Some(value)) = (row.split_last(), down.pop()) else {
                break;
            };
            let x = value / diagonal;
            for (below, factor) in down.iter_mut().zip(others) {
                *below -= factor * x;
            }
            up.push(x);
        }
        up.reverse();
        up
    }
}

/// Over the shorter of the two.
fn dot(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}
