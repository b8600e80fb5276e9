//! One ruler for an item: needs, stock and packs of it in the same unit.

use super::Impossible;
use crate::lesson::Amount;
use crate::quantity::MassDensity;
use crate::quantity::units::{in_ml, ml};

/// How an item is measured. A material is measured by volume; what is sold or kept by
/// weight is compared through its density. A supply is counted.
#[derive(Debug, Clone, Copy)]
pub(super) enum Measure {
    Volume { density: MassDensity },
    Pieces,
}

impl Measure {
    /// An amount of `item` on this ruler: millilitres or pieces.
    pub(super) fn read(self, item: &str, amount: Amount) -> Result<f64, Impossible> {
        match (self, amount) {
            (Self::Volume { .. }, Amount::Volume(volume)) => Ok(in_ml(volume)),
            (Self::Volume { density }, Amount::Mass(mass)) => Ok(in_ml(mass / density)),
            (Self::Pieces, Amount::Pieces(pieces)) => Ok(f64::from(pieces)),
            _ => Err(Impossible::CannotCompare { item: item.to_owned(), amount }),
        }
    }

    /// A reading of the ruler as an amount. Pieces that do not fit end at the largest count.
    pub(super) fn amount(self, reading: f64) -> Amount {
        match self {
            Self::Volume { .. } => Amount::Volume(ml(reading)),
            // A float-to-integer cast stops at the bounds.
            Self::Pieces => Amount::Pieces(reading.round() as u32),
        }
    }
}
