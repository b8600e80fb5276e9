use super::weighing::WeighedSpread;
use crate::quantity::Share;

/// How much more than expected is mixed and bought.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReserveRule {
    /// How often each colour is to be enough.
    pub level: ServiceLevel,
    /// Standard deviation from class to class, all canvases of a class together.
    pub class_varies: Share,
    /// Standard deviation from canvas to canvas within a class.
    pub students_vary: Share,
    /// What people usually add for each student; only compared with the reserve.
    pub habit: Share,
    /// Where the two spreads come from, if they have been weighed.
    pub weighed: Option<WeighedSpread>,
}

/// So many classes out of so many; from 50 % to 99.9 %, both included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ServiceLevel {
    classes: u32,
    out_of: u32,
}

impl ServiceLevel {
    /// `None` outside 50 % to 99.9 %: below, less than the expected amount would do; above,
    /// the bell curve says more than anyone knows of such rare evenings.
    pub fn new(classes: u32, out_of: u32) -> Option<Self> {
        let (some, all) = (u64::from(classes), u64::from(out_of));
        (out_of > 0 && 2 * some >= all && 1_000 * some <= 999 * all)
            .then_some(Self { classes, out_of })
    }

    /// Classes that have enough.
    pub fn classes(self) -> u32 {
        self.classes
    }

    /// Of so many classes.
    pub fn out_of(self) -> u32 {
        self.out_of
    }

    /// As a fraction of one.
    pub fn as_f64(self) -> f64 {
        f64::from(self.classes) / f64::from(self.out_of)
    }
}
