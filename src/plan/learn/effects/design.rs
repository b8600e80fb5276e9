use super::Observation;

/// Which classes and cells there are, and how often each pair of them.
#[derive(Debug)]
pub(super) struct Design {
    /// Numbers of the classes, each once.
    classes: Vec<usize>,
    cells: Vec<usize>,
    /// For each class, how many values in each cell.
    counts: Vec<Vec<f64>>,
    values: usize,
}

impl Design {
    pub(super) fn new(values: &[Observation]) -> Self {
        let classes = distinct(values.iter().map(|value| value.class));
        let cells = distinct(values.iter().map(|value| value.cell));
        let mut design = Self { classes, cells, counts: Vec::new(), values: values.len() };
        design.counts = design.sums(values, |_| 1.0);
        design
    }

    /// For each class and cell the sum of `what` over its values.
    pub(super) fn sums(
        &self,
        values: &[Observation],
        what: impl Fn(&Observation) -> f64,
    ) -> Vec<Vec<f64>> {
        let mut sums = vec![vec![0.0; self.cells.len()]; self.classes.len()];
        for value in values {
            let class = self.classes.binary_search(&value.class);
            let cell = self.cells.binary_search(&value.cell);
            if let (Ok(class), Ok(cell)) = (class, cell)
                && let Some(sum) = sums.get_mut(class).and_then(|row| row.get_mut(cell))
            {
                *sum += what(value);
            }
        }
        sums
    }

    /// Numbers of the cells, in rising order.
    pub(super) fn cells(&self) -> &[usize] {
        &self.cells
    }

    pub(super) fn counts(&self) -> &[Vec<f64>] {
        &self.counts
    }

    /// Values less cells: what is left to tell variances from.
    pub(super) fn df(&self) -> f64 {
        self.values.saturating_sub(self.cells.len()) as f64
    }

    /// The values of each class when there is one cell and all classes are alike in number.
    pub(super) fn balanced(&self, values: &[Observation]) -> Option<Vec<Vec<f64>>> {
        let [_] = self.cells.as_slice() else { return None };
        let mut groups: Vec<Vec<f64>> = vec![Vec::new(); self.classes.len()];
        for value in values {
            let class = self.classes.binary_search(&value.class).ok();
            if let Some(group) = class.and_then(|class| groups.get_mut(class)) {
                group.push(value.value);
            }
        }
        let size = groups.first()?.len();
        groups.iter().all(|group| group.len() == size).then_some(groups)
    }

    /// Whether class and rest can be told apart. Classes that share cells, directly or by
    /// others between them, form a patch; in each patch one mean is free. So the classes have
    /// (classes - patches) degrees of freedom, and values - classes - cells + patches are
    /// left for the rest.
    pub(super) fn tells_apart(&self) -> bool {
        let patches = self.patches();
        let taken = self.classes.len() + self.cells.len();
        self.classes.len() > patches && self.values + patches > taken
    }

    fn patches(&self) -> usize {
        // Each class starts as a patch of its own and takes the lowest number among its cells
        // until nothing changes.
        let mut patch: Vec<usize> = (0..self.classes.len()).collect();
        loop {
            let before = patch.clone();
            for cell in 0..self.cells.len() {
                let is_in = |row: &Vec<f64>| row.get(cell).is_some_and(|count| *count > 0.0);
                let lowest = self.counts.iter().zip(&patch).filter(|(row, _)| is_in(row));
                let Some(lowest) = lowest.map(|(_, patch)| *patch).min() else { continue };
                for (row, patch) in self.counts.iter().zip(&mut patch) {
                    if is_in(row) {
                        *patch = lowest;
                    }
                }
            }
            if patch == before {
                return distinct(patch.into_iter()).len();
            }
        }
    }
}

/// Each once, in rising order.
fn distinct(of: impl Iterator<Item = usize>) -> Vec<usize> {
    let mut all: Vec<usize> = of.collect();
    all.sort_unstable();
    all.dedup();
    all
}
