//! What one canvas takes, layer by layer and cup by cup.

use super::area::areas;
use super::batch::cupful;
use super::film::layer_paint;
use super::{Areas, CanvasPlan, CupPlan, FinishPlan, Impossible, LayerPlan};
use crate::lesson::{Canvas, CanvasLayer, Finish, Lesson, TechniqueLayer};
use crate::quantity::{Spread, Volume};
use std::sync::Arc;

/// Plans one canvas of a lesson.
pub(super) fn canvas_plan(canvas: &Canvas, lesson: &Lesson) -> Result<CanvasPlan, Impossible> {
    let areas = areas(canvas);
    let layers = canvas
        .technique
        .layers
        .iter()
        .zip(&canvas.layers)
        .map(|(technique, layer)| layer_plan(technique, layer, &areas, lesson))
        .collect::<Result<Vec<_>, _>>()?;
    let paint = layers
        .iter()
        .map(|layer| layer.paint)
        .fold(Spread::exactly(Volume::default()), |sum, paint| sum + paint);
    let to_mix = layers.iter().flat_map(|layer| &layer.cups).map(|cup| cup.batch.expected).sum();
    let finishes = canvas.finishes.iter().map(|finish| finish_plan(finish, &areas)).collect();
    Ok(CanvasPlan { name: canvas.name.clone(), areas, layers, finishes, paint, to_mix })
}

fn layer_plan(
    technique: &TechniqueLayer,
    layer: &CanvasLayer,
    areas: &Areas,
    lesson: &Lesson,
) -> Result<LayerPlan, Impossible> {
    let film = technique.films.of(layer.mix.consistency);
    let paint = layer_paint(areas, film);
    let cups = layer
        .colours
        .iter()
        .map(|(colour, share)| {
            let paint = paint.typical() * share.as_f64();
            let need = paint + lesson.mixing.cup_loss;
            let (fill, batch) = cupful(colour, &layer.mix, need, lesson.mixing.scale_step)?;
            Ok(CupPlan { colour: Arc::clone(colour), share: *share, paint, fill, batch })
        })
        .collect::<Result<Vec<_>, Impossible>>()?;
    Ok(LayerPlan { name: technique.name.clone(), film, paint, layer: layer.clone(), cups })
}

/// All coats of a finish; it goes wherever the paint went.
fn finish_plan(finish: &Arc<Finish>, areas: &Areas) -> FinishPlan {
    let coats = f64::from(finish.coats.get());
    let paint = layer_paint(areas, finish.film).map_rising(|coat| coat * coats);
    FinishPlan { finish: Arc::clone(finish), paint }
}
