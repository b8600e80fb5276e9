use super::super::desk::{Catalogue, Desk};
use super::super::field::Field;
use super::super::limits;
use super::super::model::{Colour, Material, MaterialKind};
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use crate::quantity::units::g_per_ml;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Density of an acrylic paint when none is given, g/mL (estimate: inside the
/// plausible band of mixed paint, 1.0 to 1.5).
const PAINT_G_PER_ML: f64 = 1.2;

/// What goes into a cup besides paint, or over a canvas.
pub(super) fn materials(desk: Desk<'_>, raw: &raw::Lesson) -> Catalogue<Arc<Material>> {
    Catalogue::of(Sort::Material, &raw.materials, |entry, raw| {
        let kind = desk.need(entry.node, "kind", &raw.kind).and_then(|at| {
            let paint = at.value == MaterialKind::Paint;
            if paint {
                desk.fault(at.node, ProblemKind::PaintIsAColour);
            }
            (!paint).then_some(at.value)
        });
        let density = desk.need_bounded(entry.node, "density", &raw.density, &limits::DENSITY);
        let drop = match &raw.drop {
            Field::Absent => Some(None),
            Field::Broken => None,
            Field::Present(written) => desk.bounded(written, &limits::DROP).map(Some),
        };
        let name = entry.name.clone();
        Some(Arc::new(Material { name, kind: kind?, density: density?, drop: drop? }))
    })
}

/// The colours, each with the paint it starts from; colours of one paint share it.
pub(super) fn colours(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Material>>,
) -> Catalogue<Arc<Colour>> {
    let mut paints = BTreeMap::new();
    Catalogue::of(Sort::Colour, &raw.colours, |entry, raw| {
        let bought = desk.optional(&raw.paint);
        let density = desk.bounded_or(&raw.density, &limits::DENSITY, g_per_ml(PAINT_G_PER_ML));
        let swatch =
            desk.need(entry.node, "swatch", &raw.swatch).and_then(|written| desk.read(written));
        let pigments = super::texts(desk, &raw.pigments);
        let name = bought?.unwrap_or_else(|| format!("{} acrylic", entry.name));
        let density = density?;
        if let Some((other, _)) = materials.get(&name) {
            desk.fault_of_name(entry.node, ProblemKind::NameTaken { name }, Some(other));
            return None;
        }
        let (first, paint) = paints.entry(name.clone()).or_insert_with(|| {
            let kind = MaterialKind::Paint;
            let paint = Material { name: name.clone(), kind, density, drop: None };
            (entry.node, Arc::new(paint))
        });
        if paint.density != density {
            let kind = ProblemKind::PaintDensities { paint: name };
            desk.fault_of_name(entry.node, kind, Some(*first));
        }
        let (paint, swatch) = (Arc::clone(paint), swatch?.0);
        let name = entry.name.clone();
        Some(Arc::new(Colour { name, paint, swatch, pigments: pigments? }))
    })
}
