/// How a step of a worked example gets its result from its figures, in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Formula {
    /// a x b x ...
    Product,
    /// a x b x ... / 2
    HalfProduct,
    /// 2 x (a + b)
    TwiceSum,
    /// a x (b + c) x d
    ProductAroundSum,
    /// a + b + ...
    Sum,
    /// a / b
    Quotient,
    /// a x b / 100
    PercentOf,
    /// (a + b) x c, rounded up to a whole number of d
    SumProductRoundedUp,
}

impl Formula {
    /// The result on a pocket calculator; `None` when the figures do not fit the formula.
    pub fn of(self, figures: &[f64]) -> Option<f64> {
        match (self, figures) {
            (Self::Product, all) => Some(all.iter().product()),
            (Self::HalfProduct, all) => Some(all.iter().product::<f64>() / 2.0),
            (Self::TwiceSum, [a, b]) => Some(2.0 * (a + b)),
            (Self::ProductAroundSum, [a, b, c, d]) => Some(a * (b + c) * d),
            (Self::Sum, all) => Some(all.iter().sum()),
            (Self::Quotient, [a, b]) => Some(a / b),
            (Self::PercentOf, [a, b]) => Some(a * b / 100.0),
            (Self::SumProductRoundedUp, [a, b, c, d]) if *d > 0.0 => {
                Some(rounded_up((a + b) * c, *d))
            }
            (Self::SumProductRoundedUp, [a, b, c, _]) => Some((a + b) * c),
            _ => None,
        }
    }
}

/// Decimal figures are not exact in binary: 1.1 x 10 must not ask for another step.
fn rounded_up(need: f64, step: f64) -> f64 {
    const NOISE: f64 = 1e-9;
    (need / step - NOISE).ceil() * step
}
