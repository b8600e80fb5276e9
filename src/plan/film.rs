//! Wet film equivalents: how much mixed paint an area takes.
//!
//! A film equivalent is volume over painted area, run-off included. The trade talks of
//! area per fluid ounce, which is the same figure upside down.
//!
//! # Where the built-in films come from
//!
//! The table is `lessons/defaults/techniques.yaml`. It hangs on these anchors, all of them
//! common practice without a source:
//!
//! * **Straight pour**: 1 US fl oz of mixed paint for 25 in² of painted area, sides
//!   counted. 29.5735 mL / (25 x 6.4516 cm²) = 1.8336 mm, called R below; the typical film
//!   of the medium consistency.
//! * **Spun, thin**: about 4 fl oz where the rule gives 5 (0.75 to 0.90 of it), so low
//!   0.75 R = 1.38 mm, typical 4 / 4.8 R = 1.53 mm, high 0.90 R = 1.65 mm.
//! * **Brushed base with spun colour, thin**: 40 g of base and 15 g of colour on 120 in²
//!   (774.2 cm²). The thin mix of common paints weighs 1.10 g/mL, so 40 g / 1.10 / 774.2
//!   gives 0.470 mm and 15 g gives 0.176 mm; together 0.35 R. Low and high add up to
//!   0.30 R and 0.42 R.
//! * **Blown** pours take less than tilted ones: base and colour together 0.8 R.
//!
//! What the anchors leave open is estimated from memory: the other pours against the
//! straight one (dirty pour 1.05, ring pour 1.05, flip cup 1.1, swipe 1.1), thin against
//! medium (about 0.87 when tilted) and thick against medium (1.2).

use super::Areas;
use crate::lesson::{Consistency, Technique};
use crate::quantity::units::{square_inch, us_fl_oz};
use crate::quantity::{Area, Length, Spread, Volume};

/// The trade's rule of thumb as area and paint: 1 US fl oz covers 25 in².
/// Common practice, no source.
pub fn rule_of_thumb() -> (Area, Volume) {
    (square_inch(25.0), us_fl_oz(1.0))
}

/// The rule of thumb as a wet film: 1.8336 mm.
pub fn rule_film() -> Length {
    let (area, paint) = rule_of_thumb();
    paint / area
}

/// Mixed paint for one layer of one canvas: painted area x film.
pub(super) fn layer_paint(areas: &Areas, film: Spread<Length>) -> Spread<Volume> {
    film.map_rising(|film| areas.painted * film)
}

/// All layers of a technique together in one consistency.
pub fn technique_film(technique: &Technique, consistency: Consistency) -> Spread<Length> {
    technique
        .layers
        .iter()
        .map(|layer| layer.films.of(consistency))
        .fold(Spread::exactly(Length::default()), |sum, film| sum + film)
}
