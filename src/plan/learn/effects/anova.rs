/// The table of a balanced one-way analysis of variance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Anova {
    pub mean: f64,
    pub df_between: f64,
    pub ss_between: f64,
    pub ms_between: f64,
    pub df_within: f64,
    pub ss_within: f64,
    pub ms_within: f64,
    /// (ms between - ms within) / values in a group; may be negative.
    pub raw_class: f64,
}

/// Splits the sum of squares of groups of one size; `None` unless there are two groups of two
/// values or more, all of one size.
///
/// The expected mean squares are error + n class between and error within (Davies and
/// Goldsmith, Statistical Methods in Research and Production, 4th ed. 1972, §6.4).
pub fn anova(groups: &[Vec<f64>]) -> Option<Anova> {
    let size = groups.first()?.len();
    if groups.len() < 2 || size < 2 || groups.iter().any(|group| group.len() != size) {
        return None;
    }
    let (number, size) = (groups.len() as f64, size as f64);
    let means: Vec<f64> = groups.iter().map(|group| group.iter().sum::<f64>() / size).collect();
    let mean = means.iter().sum::<f64>() / number;
    let ss_between: f64 = means.iter().map(|one| size * (one - mean).powi(2)).sum();
    let within = |(group, mean): (&Vec<f64>, &f64)| -> f64 {
        group.iter().map(|value| (value - mean).powi(2)).sum()
    };
    let ss_within: f64 = groups.iter().zip(&means).map(within).sum();
    let (df_between, df_within) = (number - 1.0, number * (size - 1.0));
    let (ms_between, ms_within) = (ss_between / df_between, ss_within / df_within);
    Some(Anova {
        mean,
        df_between,
        ss_between,
        ms_between,
        df_within,
        ss_within,
        ms_within,
        raw_class: (ms_between - ms_within) / size,
    })
}
