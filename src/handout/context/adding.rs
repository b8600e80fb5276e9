//! Amounts that add up as printed: colours to their layer, layers to their canvas,
//! ingredients to their cup.

use crate::plan::{Batch, CanvasPlan};
use crate::quantity::show::{Show, fewer_digits, rounded, with_unit};
use crate::quantity::units::{gram, in_gram};
use crate::quantity::{Mass, Volume, whole_parts};

/// An amount in words, and its parts.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::handout) struct Amounts {
    pub whole: String,
    pub parts: Vec<Amounts>,
}

/// The paint of a canvas, of its layers and of their cups.
pub(in crate::handout) fn canvas_paint(plan: &CanvasPlan, show: &Show) -> Amounts {
    let layers = plan.layers.iter().map(|layer| Sum {
        whole: show.volume_number(layer.paint.typical()),
        parts: layer.cups.iter().map(|cup| Sum::single(cup.paint, show)).collect(),
    });
    let whole = show.volume_number(plan.paint.typical());
    Sum { whole, parts: layers.collect() }.added_up(show)
}

/// A batch and its ingredients.
pub(super) fn ingredients(batch: &Batch, show: &Show) -> Amounts {
    let parts = batch.ingredients.iter().map(|poured| Sum::single(poured.volume, show));
    Sum { whole: show.volume_number(batch.volume), parts: parts.collect() }.added_up(show)
}

/// What several cups weigh altogether, and each: whole grams that add up.
pub(super) fn grams(masses: &[Mass], show: &Show) -> (String, Vec<String>) {
    let exact: Vec<f64> = masses.iter().map(|mass| in_gram(*mass)).collect();
    let parts = whole_parts(&exact);
    let text = |grams: f64| show.mass(gram(grams));
    (text(parts.iter().sum()), parts.iter().map(|part| text(*part)).collect())
}

/// A number that its parts add up to.
struct Sum {
    whole: f64,
    parts: Vec<Sum>,
}

impl Sum {
    fn single(volume: Volume, show: &Show) -> Self {
        Self { whole: show.volume_number(volume), parts: Vec::new() }
    }

    /// With the digits that any volume gets by its size, or those of worked sums where the
    /// number is too small for these.
    fn added_up(&self, show: &Show) -> Amounts {
        let most = show.volume_digits();
        let decimals = most.saturating_sub(fewer_digits(self.whole));
        let finer = digits(self.whole, &self.wholes(), decimals, most, Comes::Rounded);
        self.in_words(decimals, finer, most, show)
    }

    /// A part in turn. It has the digits of its own parts, so that these come to it as it is
    /// printed; a sum of several parts is printed once, and nowhere else to be compared with.
    fn as_part(&self, decimals: usize, most: usize, show: &Show) -> Amounts {
        let finer = digits(self.whole, &self.wholes(), decimals, most, Comes::Exactly);
        self.in_words(finer, finer, most, show)
    }

    fn in_words(&self, decimals: usize, finer: usize, most: usize, show: &Show) -> Amounts {
        let unit = show.volume_unit().replace(' ', "\u{a0}");
        Amounts {
            whole: with_unit(&show.trimmed(self.whole, decimals), &unit),
            parts: self.parts.iter().map(|part| part.as_part(finer, most, show)).collect(),
        }
    }

    fn wholes(&self) -> Vec<f64> {
        self.parts.iter().map(|part| part.whole).collect()
    }
}

/// How printed parts come to a printed whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Comes {
    /// The whole has the decimals that are asked for; a sum with more rounds to it.
    Rounded,
    /// The whole has the decimals of its parts.
    Exactly,
}

/// The fewest decimals, no fewer than are asked for, with which the printed parts come to the
/// printed whole. Two more than those of worked sums are enough for any but freak lists.
fn digits(whole: f64, parts: &[f64], decimals: usize, most: usize, comes: Comes) -> usize {
    if parts.is_empty() {
        return decimals;
    }
    let comes_out = |finer: &usize| {
        let sum: f64 = parts.iter().map(|part| rounded(*part, *finer)).sum();
        let of_whole = match comes {
            Comes::Rounded => decimals,
            Comes::Exactly => *finer,
        };
        (rounded(sum, of_whole) - rounded(whole, of_whole)).abs() < 1e-9
    };
    let finest = most.max(decimals) + 2;
    (decimals..=finest).find(comes_out).unwrap_or(finest)
}

#[cfg(test)]
mod tests {
    use super::{Comes, digits};

    #[test]
    fn parts_get_digits_until_they_come_to_the_whole() {
        assert_eq!(digits(10.0, &[4.0, 6.0], 0, 1, Comes::Rounded), 0);
        // 40 + 13 is not 52; 39.5 + 12.6 is 52.1, about 52.
        assert_eq!(digits(52.17, &[39.52, 12.65], 0, 1, Comes::Rounded), 1);
        // 7.6 + 5.1 is not 12.6, nor does 7.59 + 5.06 round to it; but that is 12.65.
        assert_eq!(digits(12.647, &[7.588, 5.059], 1, 1, Comes::Rounded), 3);
        assert_eq!(digits(12.647, &[7.588, 5.059], 1, 1, Comes::Exactly), 2);
        assert_eq!(digits(1.0, &[0.4], 0, 1, Comes::Rounded), 2 + 1, "nothing comes to one");
        assert_eq!(digits(1.0, &[], 0, 1, Comes::Exactly), 0, "nothing to add");
    }
}
