//! How often the paint is to be enough, as people write it.

use super::legible::{Blame, Legible, blame};
use super::model::ServiceLevel;
use super::problem::ProblemKind;
use crate::quantity::read::percent;
use crate::quantity::{Decimal, MisreadKind};
use std::ops::Range;

impl Legible for ServiceLevel {
    /// `19 classes out of 20`, `19 of 20`, `95 %`.
    fn read(text: &str) -> Result<Self, Blame> {
        let whole = within(text);
        if text.split_whitespace().any(|word| word == "of") {
            let (classes, out_of) =
                in_words(text).ok_or((whole.clone(), ProblemKind::NotALevel))?;
            return level(classes, out_of, whole);
        }
        let percent = percent(text).map_err(|misread| match misread.kind {
            MisreadKind::Empty { .. }
            | MisreadKind::NotANumber { .. }
            | MisreadKind::UnknownUnit { .. }
            | MisreadKind::WrongDimension { .. } => (whole.clone(), ProblemKind::NotALevel),
            _ => blame(misread),
        })?;
        if percent > Decimal::ONE_HUNDRED {
            return Err((whole, ProblemKind::LevelTooHigh));
        }
        let (classes, out_of) =
            in_classes(percent).ok_or((whole.clone(), ProblemKind::LevelTooFine))?;
        level(classes, out_of, whole)
    }
}

/// The text without the space around it.
fn within(text: &str) -> Range<usize> {
    let start = text.len() - text.trim_start().len();
    start..start + text.trim().len()
}

fn level(classes: u32, out_of: u32, span: Range<usize>) -> Result<ServiceLevel, Blame> {
    ServiceLevel::new(classes, out_of).ok_or_else(|| {
        let low = u64::from(classes) * 2 < u64::from(out_of);
        (span, if low { ProblemKind::LevelTooLow } else { ProblemKind::LevelTooHigh })
    })
}

/// Two whole numbers with "of" or "out of" between them; "class" or "classes" may follow
/// either. Nothing is a part of no classes.
fn in_words(text: &str) -> Option<(u32, u32)> {
    let plain: Vec<&str> =
        text.split_whitespace().filter(|word| !["class", "classes"].contains(word)).collect();
    let (classes, out_of) = match plain.as_slice() {
        [classes, "of", out_of] | [classes, "out", "of", out_of] => (classes, out_of),
        _ => return None,
    };
    Some((classes.parse().ok()?, out_of.parse().ok().filter(|out_of| *out_of > 0)?))
}

/// A percentage as the smallest whole numbers of classes: 95 % is 19 out of 20. `None` when it
/// has more decimals than such numbers can say.
fn in_classes(percent: Decimal) -> Option<(u32, u32)> {
    let percent = percent.normalize();
    let classes = u32::try_from(percent.mantissa()).ok()?;
    let out_of = 10_u32.checked_pow(percent.scale().checked_add(2)?)?;
    let common = greatest_common_divisor(classes, out_of);
    Some((classes.checked_div(common)?, out_of.checked_div(common)?))
}

fn greatest_common_divisor(one: u32, other: u32) -> u32 {
    if other == 0 { one } else { greatest_common_divisor(other, one % other) }
}
