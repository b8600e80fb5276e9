//! Tools to print: paint for canvases of the shops, the blob to pour, labels for cups.

use super::batch::hex;
use super::weigh::{named, who};
use crate::handout::cups::{cups, sitters};
use crate::handout::words::{Words, fill};
use crate::lesson::{Consistency, Edition, StockSize};
use crate::plan::flow::SpreadTarget;
use crate::plan::{Plan, stock_area};
use crate::quantity::show::Show;
use crate::quantity::units::{in_gram, in_ml, in_us_fl_oz};
use crate::quantity::{Length, UnitSystem, Volume};
use serde::Serialize;

/// Sizes side by side in one table.
const SIZES: usize = 8;
const SIZES_LARGE_PRINT: usize = 4;

/// What the sheet of tools says besides its pictures.
#[derive(Debug, Clone, Serialize)]
pub struct ToolsText {
    /// Whether some canvas has an edge whose depth is marked on the gauge.
    pub marked: bool,
    pub reading: ReadingText,
    pub target: TargetText,
    /// How deep the edges of the sizes in the tables are.
    pub depths: String,
    /// What one unit of mixed paint weighs, in the mean of the lesson.
    pub mean_weight: String,
    pub tables: Vec<PaintTable>,
    pub labels: Vec<LabelText>,
}

/// The reading that the nomogram shows: a layer of the first canvas.
#[derive(Debug, Clone, Serialize)]
pub struct ReadingText {
    pub canvas: String,
    pub area: String,
    pub film: String,
    pub paint: String,
}

/// The blob that is poured on the rings.
#[derive(Debug, Clone, Serialize)]
pub struct TargetText {
    pub volume: String,
    pub mass: String,
    pub density: String,
    pub time: String,
}

/// Paint for some sizes, all techniques.
#[derive(Debug, Clone, Serialize)]
pub struct PaintTable {
    /// Of the sizes, without their unit.
    pub sizes: Vec<String>,
    pub length_unit: &'static str,
    pub areas: Vec<String>,
    pub area_unit: &'static str,
    /// By unit.
    pub groups: Vec<PaintGroup>,
}

/// Amounts in `fl oz`, `mL` or `g`.
#[derive(Debug, Clone, Serialize)]
pub struct PaintGroup {
    pub unit: &'static str,
    pub rows: Vec<PaintRow>,
}

/// Techniques that take the same.
#[derive(Debug, Clone, Serialize)]
pub struct PaintRow {
    pub technique: String,
    pub amounts: Vec<String>,
}

/// One cup of the class.
#[derive(Debug, Clone, Serialize)]
pub struct LabelText {
    pub colour: String,
    /// `#RRGGBB`.
    pub swatch: String,
    pub who: String,
    pub canvas: String,
    /// What is filled in.
    pub full: String,
}

/// All of it as text.
pub(in crate::handout) fn tools(plan: &Plan, words: &Words, show: &Show) -> ToolsText {
    ToolsText {
        marked: plan.lesson.canvases.iter().any(|canvas| canvas.depth > Length::default()),
        reading: reading(plan, show),
        target: target(show),
        depths: depths(plan, words, show),
        mean_weight: show.density(plan.mean_density()),
        tables: tables(plan, words, show),
        labels: labels(plan, words, show),
    }
}

fn reading(plan: &Plan, show: &Show) -> ReadingText {
    let canvas = plan.canvases.first();
    let layer = canvas.and_then(|canvas| canvas.layers.first());
    let text = |value: Option<String>| value.unwrap_or_default();
    ReadingText {
        canvas: text(canvas.map(|canvas| canvas.name.clone())),
        area: text(canvas.map(|canvas| show.area(canvas.areas.painted))),
        film: text(layer.map(|layer| show.film(layer.film.typical()))),
        paint: text(layer.map(|layer| show.volume_both(layer.paint.typical()))),
    }
}

fn target(show: &Show) -> TargetText {
    let target = SpreadTarget::of(show.units());
    TargetText {
        volume: show.volume(target.volume),
        mass: show.mass(target.mass()),
        density: show.density(target.mass() / target.volume),
        time: show.seconds(target.time),
    }
}

/// The depths of the sizes, each once, in the order of the list.
fn depths(plan: &Plan, words: &Words, show: &Show) -> String {
    let mut depths: Vec<String> = Vec::new();
    for size in plan.lesson.sizes.of(show.units()) {
        let depth = show.length(size.depth);
        if !depths.contains(&depth) {
            depths.push(depth);
        }
    }
    depths.join(&words.order.or)
}

fn tables(plan: &Plan, words: &Words, show: &Show) -> Vec<PaintTable> {
    let units = show.units();
    let sizes = plan.lesson.sizes.of(units);
    let most = match plan.lesson.print.edition {
        Edition::Standard => SIZES,
        Edition::LargePrint => SIZES_LARGE_PRINT,
    };
    let paint = plan.stock_paint(units, Consistency::Medium);
    let density = plan.mean_density();
    let fl_oz = |paint: Volume| show.by_size(in_us_fl_oz(paint), 2);
    let ml = |paint: Volume| show.by_size(in_ml(paint), 1);
    let grams = |paint: Volume| show.by_size(in_gram(paint * density), 1);
    let mut tables = Vec::new();
    for (at, sizes) in sizes.chunks(most).enumerate() {
        let group = |unit, amount: &dyn Fn(Volume) -> String| PaintGroup {
            unit,
            rows: paint
                .iter()
                .map(|row| PaintRow {
                    technique: row.techniques.join(&words.pictures.nomogram.between),
                    amounts: row
                        .paint
                        .iter()
                        .skip(at * most)
                        .take(sizes.len())
                        .map(|&paint| amount(paint))
                        .collect(),
                })
                .collect(),
        };
        let (us, metric) = (group("fl\u{A0}oz", &fl_oz), group("mL", &ml));
        let mut groups = match units {
            UnitSystem::Us => vec![us, metric],
            UnitSystem::Metric => vec![metric, us],
        };
        groups.push(group("g", &grams));
        tables.push(PaintTable {
            sizes: sizes.iter().map(|size| size_text(size, words, show)).collect(),
            length_unit: show.length_unit(),
            areas: sizes.iter().map(|size| area_text(size, show)).collect(),
            area_unit: show.area_unit(),
            groups,
        });
    }
    tables
}

fn size_text(size: &StockSize, words: &Words, show: &Show) -> String {
    let figure = |length| show.length_figure(length);
    fill(
        &words.sizes.rectangle,
        &[("width", &figure(size.width)), ("height", &figure(size.height))],
    )
}

fn area_text(size: &StockSize, show: &Show) -> String {
    show.by_size(show.area_number(stock_area(size)), 2)
}

fn labels(plan: &Plan, words: &Words, show: &Show) -> Vec<LabelText> {
    let mut labels = Vec::new();
    for sitter in sitters(plan) {
        let who = who(sitter.painter, words);
        labels.extend(cups(plan, sitter).map(|weighing| LabelText {
            colour: weighing.cup.colour.name.clone(),
            swatch: hex(weighing.cup.colour.swatch),
            who: who.clone(),
            canvas: named(&weighing, words),
            full: show.mass(weighing.cup.fill),
        }));
    }
    labels
}
