//! What stands on each table before the class comes in.

use crate::lesson::{Lesson, Life, Per};
use crate::plan::class::canvases_in_class;
use crate::plan::{Heads, Impossible, SupplyNeed};

/// Tables at which so many students sit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TableKind {
    pub students: u32,
    pub tables: u32,
}

/// One item, and where its pieces stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Setting {
    pub item: String,
    pub what: Stands,
    /// On one table of each kind, in the order of the kinds.
    pub each_table: Vec<u32>,
    /// At the teacher's table: for demonstrations and spares, for mixing, and what is left of
    /// pieces that cannot be shared out.
    pub teacher: u32,
    /// Everywhere.
    pub pieces: u32,
}

/// What stands there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stands {
    Canvas,
    Supply(Life),
}

/// Students share the tables as evenly as they can; the fuller tables come first.
pub(super) fn tables(heads: Heads) -> Vec<TableKind> {
    let tables = heads.tables.max(1);
    let (few, fuller) = (heads.students / tables, heads.students % tables);
    let kinds = [
        TableKind { students: few + 1, tables: fuller },
        TableKind { students: few, tables: tables - fuller },
    ];
    kinds.into_iter().filter(|kind| kind.tables > 0 && kind.students > 0).collect()
}

/// Canvases in the order of the lesson, then supplies in theirs.
pub(super) fn setting(
    lesson: &Lesson,
    heads: Heads,
    tables: &[TableKind],
    supplies: &[SupplyNeed],
) -> Result<Vec<Setting>, Impossible> {
    let mut settings = Vec::with_capacity(lesson.canvases.len() + supplies.len());
    for canvas in &lesson.canvases {
        let pieces = canvases_in_class(canvas, heads)?;
        let each = |kind: &TableKind| f64::from(kind.students) * f64::from(canvas.each.get());
        settings.push(shared_out(canvas.name.clone(), Stands::Canvas, pieces, tables, each));
    }
    let painted: f64 = lesson.canvases.iter().map(|canvas| f64::from(canvas.each.get())).sum();
    let cups: f64 = lesson
        .canvases
        .iter()
        .map(|canvas| {
            let colours = canvas.layers.iter().map(|layer| layer.colours.len() as f64);
            f64::from(canvas.each.get()) * colours.sum::<f64>()
        })
        .sum();
    for need in supplies {
        let each = |kind: &TableKind| {
            let students = f64::from(kind.students);
            let rules = lesson.supplies.iter().filter(|rule| rule.item == need.item);
            rules
                .map(|rule| {
                    each_one(rule.count)
                        * match rule.per {
                            Per::Student => students,
                            Per::Canvas => students * painted,
                            Per::ColourCup => students * cups,
                            Per::Table => 1.0,
                            Per::Class => 0.0,
                        }
                })
                .sum()
        };
        let what = Stands::Supply(need.life);
        settings.push(shared_out(need.item.clone(), what, need.pieces, tables, each));
    }
    Ok(settings)
}

/// What stands there for one student, canvas or cup. A count such as 1.25 is one for each and
/// a quarter more for who stirs the batches or needs a spare: that is the teacher's. A count
/// below one is shared by several.
fn each_one(count: f64) -> f64 {
    if count >= 1.0 { count.floor() } else { count }
}

/// Whole pieces go to the tables, all others to the teacher. As no table gets more than its
/// share, the tables together never get more than there is.
fn shared_out(
    item: String,
    what: Stands,
    pieces: u32,
    tables: &[TableKind],
    share: impl Fn(&TableKind) -> f64,
) -> Setting {
    // A hair under a whole number is noise; a cast of floats stops at the ends of the range.
    let whole = |share: f64| (share * (1.0 + 1e-12) + 1e-9).floor() as u32;
    let each_table: Vec<u32> = tables.iter().map(|kind| whole(share(kind))).collect();
    let on_tables = tables
        .iter()
        .zip(&each_table)
        .map(|(kind, each)| kind.tables.saturating_mul(*each))
        .fold(0_u32, u32::saturating_add);
    Setting { item, what, each_table, teacher: pieces.saturating_sub(on_tables), pieces }
}
