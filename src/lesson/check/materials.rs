use super::super::catalogue::Catalogue;
use super::super::desk::Desk;
use super::super::field::Field;
use super::super::limits;
use super::super::model::{Colour, Material, MaterialKind, paint_of};
use super::super::problem::{ProblemKind, Sort};
use super::super::raw;
use super::super::tree::NodeId;
use super::heading;
use crate::quantity::Volume;
use crate::quantity::units::g_per_ml;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Density of an acrylic paint when none is given, g/mL (estimate: inside the
/// plausible band of mixed paint, 1.0 to 1.5).
const PAINT_G_PER_ML: f64 = 1.2;

/// A material as far as it is right.
#[derive(Debug)]
pub(super) struct Stuff {
    pub(super) name: String,
    pub(super) kind: Option<MaterialKind>,
    /// `Some(None)` when nothing is said of drops.
    pub(super) drop: Option<Option<Volume>>,
    pub(super) material: Option<Arc<Material>>,
}

/// What goes into a cup besides paint, or over a canvas.
pub(super) fn materials(desk: Desk<'_>, raw: &raw::Lesson) -> Catalogue<Arc<Stuff>> {
    let section = ("materials", &raw.materials);
    Catalogue::of(desk, Sort::Material, section, |entry, raw| {
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
        let drop = drop.filter(|_| !desk.is_misspelt(entry.node, "drop"));
        let caution = desk.optional(&raw.caution);
        let name = entry.name.clone();
        let material = || {
            let (name, caution) = (name.clone(), caution.clone()?);
            Some(Arc::new(Material { name, kind: kind?, density: density?, drop: drop?, caution }))
        };
        let material = material();
        Some(Arc::new(Stuff { name, kind, drop, material }))
    })
}

/// The colours, each with the paint it starts from; colours of one paint share it.
pub(super) fn colours(
    desk: Desk<'_>,
    raw: &raw::Lesson,
    materials: &Catalogue<Arc<Stuff>>,
) -> Catalogue<Arc<Colour>> {
    let language = heading::language(raw);
    let mut paints = BTreeMap::new();
    Catalogue::of(desk, Sort::Colour, ("colours", &raw.colours), |entry, raw| {
        let bought = desk.optional(&raw.paint);
        let density = desk.bounded_or(&raw.density, &limits::DENSITY, g_per_ml(PAINT_G_PER_ML));
        let swatch =
            desk.need(entry.node, "swatch", &raw.swatch).and_then(|written| desk.read(written));
        let pigments = super::texts(desk, &raw.pigments);
        let caution = desk.optional(&raw.caution);
        let name = match bought? {
            Some(name) => name,
            None => paint_of(&entry.name, language?),
        };
        if let Some((other, _)) = materials.get(&name) {
            desk.fault_of_name(entry.node, ProblemKind::NameTaken { name }, Some(other));
            return None;
        }
        let density = density?;
        let (first, paint) = paints.entry(name.clone()).or_insert_with(|| {
            let kind = MaterialKind::Paint;
            let name = name.clone();
            let paint = Material { name, kind, density, drop: None, caution: None };
            (entry.node, Arc::new(paint))
        });
        let twice = desk.tree.key(*first) == Some(entry.name.as_str());
        let sure = [*first, entry.node].into_iter().all(|node| is_density_sure(desk, node));
        if paint.density != density && sure && !twice {
            let kind = ProblemKind::PaintDensities { paint: name };
            desk.fault_of_name(entry.node, kind, Some(*first));
        }
        let (paint, swatch) = (Arc::clone(paint), swatch?.0);
        let name = entry.name.clone();
        let (pigments, caution) = (pigments?, caution?);
        Some(Arc::new(Colour { name, paint, swatch, pigments, caution }))
    })
}

/// Whether the density of a colour is the one that it will have when all is right.
fn is_density_sure(desk: Desk<'_>, colour: NodeId) -> bool {
    let said = desk.tree.under(colour, "density").is_some();
    said || !(desk.may_say_more(colour) || desk.is_misspelt(colour, "density"))
}
