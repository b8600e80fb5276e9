use super::{MM, everywhere, page_of, pictures};
use crate::chart_reader::bounds;
use puddlebook::handout::{PictureKind, Sheet};
use puddlebook::ink::{PathSegment, Shape};
use puddlebook::lesson::Consistency;
use puddlebook::plan::flow::{Fluid, SpreadTarget};
use puddlebook::quantity::UnitSystem;
use puddlebook::quantity::units::{in_gram, in_ml, in_mm, in_pascal_second, in_seconds};

/// Huppert, J. Fluid Mech. 121, 43 (1982): 30 mL of 1200 kg/m³ and 1 Pa s come to 84.47 mm in 60 s
/// (computed from the paper's formula); there R goes with V^(3/8), and with density and one over
/// viscosity to the eighth.
fn radius(volume_ml: f64, density: f64, viscosity: f64) -> f64 {
    84.47 * (volume_ml / 30.0).powf(0.375) * (density / 1200.0 / viscosity).powf(0.125)
}

#[test]
fn rings_are_those_of_the_paper_and_true_to_size() {
    for (plan, document, pages) in everywhere("boathouse-evening", Sheet::Tools) {
        let volume = match plan.lesson.print.units {
            UnitSystem::Us => 14.786_764_781,
            UnitSystem::Metric => 15.0,
        };
        let shown = pictures(&document);
        let data = shown.iter().find_map(|picture| match &picture.kind {
            PictureKind::SpreadRings(data) => Some((data, &picture.alt)),
            _ => None,
        });
        let (data, alt) = data.unwrap();
        let (_, shapes) = page_of(&pages, "Rings at true size");
        let circles = shapes.iter().filter_map(|shape| match shape {
            Shape::Path { segments, stroke: Some(_), .. }
                if matches!(segments[1], PathSegment::Cubic(..)) =>
            {
                Some(bounds(segments))
            }
            _ => None,
        });
        let circles: Vec<_> = circles.collect();
        for (ring, viscosity) in data.rings.iter().zip([5.0, 2.0, 1.0, 0.5, 0.2]) {
            let expected = radius(volume, 1150.0, viscosity);
            assert!((ring.radius - expected).abs() < 0.01, "{viscosity}: {}", ring.radius);
            assert_eq!(ring.label, format!("{viscosity}\u{202f}Pa·s"));
            let drawn = circles.iter().find(|circle| {
                (circle.width / 2.0 / MM - expected as f32).abs() < 0.02
                    && (circle.height - circle.width).abs() < 0.01
            });
            let drawn = drawn.expect("a ring");
            // All around one spot.
            let middle =
                |of: &puddlebook::ink::Rect| (of.x + of.width / 2.0, of.y + of.height / 2.0);
            let (spot, of_first) = (middle(drawn), middle(&circles[0]));
            assert!((spot.0 - of_first.0).abs() < 0.01 && (spot.1 - of_first.1).abs() < 0.01);
            assert!(alt.contains(&ring.label) && alt.contains(&ring.radius_label));
        }
        assert!(data.bands.iter().all(|band| alt.contains(&band.name)));
    }
}

#[test]
fn every_consistency_stops_in_its_own_band() {
    for units in [UnitSystem::Us, UnitSystem::Metric] {
        let target = SpreadTarget::of(units);
        assert_eq!(in_seconds(target.time), 60.0);
        let grams = in_ml(target.volume) * 1.15;
        assert!((in_gram(target.mass()) - grams).abs() < 1e-9);
        let bands = target.bands();
        for pair in bands.windows(2) {
            assert_eq!(pair[0].inner, pair[1].outer, "edge to edge");
        }
        for (band, consistency) in bands.iter().zip(Consistency::ALL) {
            assert_eq!(band.consistency, consistency);
            let viscosity = Fluid::standing_for(consistency).viscosity();
            let radius = in_mm(target.radius(viscosity));
            let (inner, outer) = (in_mm(band.inner), in_mm(band.outer));
            assert!(inner + 2.0 < radius && radius + 2.0 < outer, "{consistency:?}");
        }
        for ring in target.rings() {
            assert_eq!(target.radius(ring.viscosity), ring.radius);
            assert!(in_pascal_second(ring.viscosity) > 0.0);
            // Late and flat enough for the formula, and with room on either paper.
            let deep = 4.0 * in_ml(target.volume) * 1000.0
                / (3.0 * std::f64::consts::PI * in_mm(ring.radius).powi(2));
            assert!(in_mm(ring.radius) > 20.0 * deep && in_mm(ring.radius) < 80.0);
        }
    }
}

#[test]
fn the_sheet_says_what_rings_cannot_do() {
    for (_, _, pages) in everywhere("youth-hexagons", Sheet::Tools) {
        let all: String = pages
            .pages
            .iter()
            .flat_map(|page| &page.marks)
            .filter_map(|mark| match &mark.shape {
                Shape::Text(run) => Some(format!("{} ", run.text)),
                Shape::Path { .. } => None,
            })
            .collect();
        let all = all.split_whitespace().collect::<Vec<_>>().join(" ");
        for said in ["certify nothing", "thins under shear", "yield stress"] {
            assert!(all.contains(said), "{said}");
        }
    }
}
