//! Tables, drying and washing-up.

use super::spelled;
use crate::handout::words::{Words, fill};
use crate::lesson::Life;
use crate::plan::{DryingPlan, Plan, Stands, WashingPlan};
use crate::quantity::show::Show;
use crate::quantity::{Area, Date, Length, Volume, whole_parts};
use serde::Serialize;

/// The room.
#[derive(Debug, Clone, Serialize)]
pub struct RoomText {
    /// Kinds of tables to work at, the fuller ones first.
    pub tables: Vec<TableText>,
    pub setting: Vec<SettingText>,
    pub drying: DryingText,
    pub washing: WashingText,
}

/// Tables at which so many students sit.
#[derive(Debug, Clone, Serialize)]
pub struct TableText {
    pub students: String,
    pub tables: String,
}

/// One item and where it stands; what is nothing is empty.
#[derive(Debug, Clone, Serialize)]
pub struct SettingText {
    pub item: String,
    /// `canvas`, `used up` or `washable`.
    pub kind: &'static str,
    /// One for each kind of table.
    pub each: Vec<String>,
    pub teacher: String,
    pub pieces: String,
}

/// Where the canvases dry.
#[derive(Debug, Clone, Serialize)]
pub struct DryingText {
    pub places: Vec<DryingPlaceText>,
    pub canvases: String,
    pub gap: String,
    pub area: String,
    /// Empty when the lesson does not say what there is.
    pub level_surface: String,
    /// What is left of the level surface; empty when it is too small or not known.
    pub spare: String,
    /// What it lacks; empty when it is large enough or not known.
    pub short: String,
    /// Size of a table; empty when the lesson gives none.
    pub table: String,
    /// How many of it hold all canvases; empty when one is larger than the table.
    pub tables: String,
    pub days: String,
    /// Empty without a date.
    pub from: String,
    pub until: String,
    pub finishes: Vec<FinishDayText>,
}

/// The place of one kind of canvas.
#[derive(Debug, Clone, Serialize)]
pub struct DryingPlaceText {
    pub canvas: String,
    /// The rectangle around it.
    pub size: String,
    pub pieces: String,
    pub area: String,
}

/// A finish that follows.
#[derive(Debug, Clone, Serialize)]
pub struct FinishDayText {
    pub canvas: String,
    pub finish: String,
    pub coats: String,
    pub days: String,
    /// Empty without a date.
    pub date: String,
}

/// The washing-up.
#[derive(Debug, Clone, Serialize)]
pub struct WashingText {
    pub washed: Vec<WashedText>,
    pub batches: String,
    pub jug_water: String,
    pub water: String,
    pub bucket: String,
    pub buckets: String,
    pub cups: String,
    /// Empty when nothing stays.
    pub left_in_cups: String,
    pub left_in_jugs: String,
}

/// Pieces of one supply that are washed.
#[derive(Debug, Clone, Serialize)]
pub struct WashedText {
    pub item: String,
    pub pieces: String,
    pub water: String,
}

pub(super) fn room(plan: &Plan, words: &Words, show: &Show) -> RoomText {
    let room = &plan.room;
    RoomText {
        tables: room
            .tables
            .iter()
            .map(|kind| TableText {
                students: kind.students.to_string(),
                tables: kind.tables.to_string(),
            })
            .collect(),
        setting: room
            .setting
            .iter()
            .map(|setting| SettingText {
                item: setting.item.clone(),
                kind: match setting.what {
                    Stands::Canvas => "canvas",
                    Stands::Supply(Life::UsedUp) => "used up",
                    Stands::Supply(Life::Washable) => "washable",
                },
                each: setting.each_table.iter().map(|pieces| some(*pieces)).collect(),
                teacher: some(setting.teacher),
                pieces: setting.pieces.to_string(),
            })
            .collect(),
        drying: drying(&room.drying, words, show),
        washing: washing(&room.washing, show),
    }
}

/// A count, empty when it is nothing.
fn some(count: u32) -> String {
    if count == 0 { String::new() } else { count.to_string() }
}

fn drying(plan: &DryingPlan, words: &Words, show: &Show) -> DryingText {
    let size = |width: Length, height: Length| {
        let values = [("width", show.length_figure(width)), ("height", show.length(height))];
        fill(&words.sizes.rectangle, &values.each_ref().map(|(name, text)| (*name, text.as_str())))
    };
    let date = |date: Option<Date>| date.map(|date| spelled(date, words)).unwrap_or_default();
    let difference = |holds: bool| {
        let there = plan.level_surface.filter(|_| plan.fits() == Some(holds));
        let over = there.map(|there| if holds { there - plan.area } else { plan.area - there });
        over.map(|over| show.surface(over.max(Area::default()))).unwrap_or_default()
    };
    let pieces: u64 = plan.places.iter().map(|place| u64::from(place.pieces)).sum();
    DryingText {
        places: plan
            .places
            .iter()
            .map(|place| DryingPlaceText {
                canvas: place.canvas.clone(),
                size: size(place.extent.width, place.extent.height),
                pieces: place.pieces.to_string(),
                area: show.surface(place.area),
            })
            .collect(),
        canvases: pieces.to_string(),
        gap: show.distance(plan.gap),
        area: show.surface(plan.area),
        level_surface: plan.level_surface.map(|area| show.surface(area)).unwrap_or_default(),
        spare: difference(true),
        short: difference(false),
        table: plan
            .on_tables
            .map(|lying| size(lying.table.length, lying.table.width))
            .unwrap_or_default(),
        tables: plan
            .on_tables
            .and_then(|lying| lying.tables)
            .map(|tables| tables.to_string())
            .unwrap_or_default(),
        days: plan.days.to_string(),
        from: date(plan.from),
        until: date(plan.until),
        finishes: plan
            .finishes
            .iter()
            .map(|finish| FinishDayText {
                canvas: finish.canvas.clone(),
                finish: finish.finish.clone(),
                coats: finish.coats.to_string(),
                days: finish.after_days.to_string(),
                date: date(finish.date),
            })
            .collect(),
    }
}

/// The jug's water, then that of each piece, then all of it: as printed they add up.
fn waters(plan: &WashingPlan, show: &Show) -> (String, Vec<String>, String) {
    let parts: Vec<Volume> =
        [plan.jug_water].into_iter().chain(plan.washed.iter().map(|it| it.water)).collect();
    let step = show.water_step();
    let tenths: Vec<f64> = parts.iter().map(|water| (*water / step).value).collect();
    let tenths = whole_parts(&tenths);
    let text = |tenths: f64| show.water(step * tenths);
    let mut texts = tenths.iter().map(|tenths| text(*tenths));
    (texts.next().unwrap_or_default(), texts.collect(), text(tenths.iter().sum()))
}

fn washing(plan: &WashingPlan, show: &Show) -> WashingText {
    let (jug_water, each, water) = waters(plan, show);
    let left = |volume: Volume| {
        if volume > Volume::default() { show.volume_both(volume) } else { String::new() }
    };
    WashingText {
        washed: plan
            .washed
            .iter()
            .zip(each)
            .map(|(washed, water)| WashedText {
                item: washed.item.clone(),
                pieces: washed.pieces.to_string(),
                water,
            })
            .collect(),
        batches: plan.batches.to_string(),
        jug_water,
        water,
        bucket: show.water(plan.bucket),
        buckets: plan.buckets.to_string(),
        cups: plan.cups.to_string(),
        left_in_cups: left(plan.left_in_cups),
        left_in_jugs: left(plan.left_in_jugs),
    }
}
