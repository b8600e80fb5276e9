//! Lessons out of a hat: every shape, several canvases, layers, mixes and finishes.

use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::*;
use puddlebook::quantity::units::{gram, inch, ml, mm, us_fl_oz};
use puddlebook::quantity::{Length, Share, UnitSystem};
use std::sync::Arc;

const COLOURS: [&str; 5] = ["harbour blue", "sand", "white", "slate", "coral"];

pub fn lessons() -> impl Strategy<Value = Lesson> {
    let canvases = prop::collection::vec(canvas(), 1..4);
    let class = (1_u32..40, 0_u32..3, 0_u32..3);
    let mixing = (0.0..8.0_f64, prop::sample::select(vec![0.1, 0.5, 1.0, 5.0]));
    let units = prop_oneof![Just(UnitSystem::Us), Just(UnitSystem::Metric)];
    let parts = (canvases, class, mixing, units, stock(), rules());
    parts.prop_map(|(canvases, class, mixing, units, stock, rule)| {
        let mut lesson = lesson();
        lesson.reserve = rule;
        lesson.print.units = units;
        lesson.class.students = students(class.0);
        (lesson.class.demonstrations, lesson.class.spares) = (class.1, class.2);
        lesson.mixing.cup_loss = ml(mixing.0);
        lesson.mixing.scale_step = gram(mixing.1);
        lesson.canvases = canvases;
        for (number, canvas) in lesson.canvases.iter_mut().enumerate() {
            canvas.name = format!("canvas {number}");
        }
        lesson.supplies = vec![
            supply("gloves", 1.0, Per::Student, Life::UsedUp),
            supply("stir sticks", 1.0, Per::ColourCup, Life::UsedUp),
            supply("push pins", 4.0, Per::Canvas, Life::Washable),
            supply("drop cloth", 1.5, Per::Table, Life::Washable),
        ];
        lesson.stock = stock;
        lesson.shops = shop(price_list());
        lesson
    })
}

/// From no reserve to a very careful one.
fn rules() -> impl Strategy<Value = ReserveRule> {
    let levels = prop::sample::select(vec![(1, 2), (4, 5), (19, 20), (999, 1000)]);
    (levels, 0_i64..30, 0_i64..40)
        .prop_map(|(level, class, students)| reserve(level, class, students))
}

/// Everything that a generated lesson may need, in volumes and weights.
fn price_list() -> Vec<Pack> {
    let mut packs = vec![
        pack("pouring medium", Amount::Volume(us_fl_oz(8.0)), 849),
        pack("pouring medium", Amount::Volume(us_fl_oz(32.0)), 2399),
        pack("pouring medium", Amount::Mass(gram(1000.0)), 2150),
        pack("silicone oil", Amount::Volume(ml(50.0)), 620),
        pack("gloss varnish", Amount::Volume(ml(250.0)), 1290),
        pack("gloves", Amount::Pieces(20), 499),
        pack("stir sticks", Amount::Pieces(100), 320),
        pack("stir sticks", Amount::Pieces(30), 130),
        pack("push pins", Amount::Pieces(60), 250),
        pack("drop cloth", Amount::Pieces(1), 310),
    ];
    for colour in COLOURS {
        let paint = format!("{colour} acrylic");
        packs.push(pack(&paint, Amount::Volume(us_fl_oz(2.0)), 349));
        packs.push(pack(&paint, Amount::Volume(us_fl_oz(8.0)), 899));
        packs.push(pack(&paint, Amount::Mass(gram(500.0)), 1650));
    }
    packs
}

fn stock() -> impl Strategy<Value = Vec<Stocked>> {
    (0.0..900.0_f64, 0.0..300.0_f64, 0_u32..50).prop_map(|(medium, white, gloves)| {
        vec![
            stocked("pouring medium", Amount::Volume(ml(medium))),
            stocked("white acrylic", Amount::Mass(gram(white))),
            stocked("gloves", Amount::Pieces(gloves)),
        ]
    })
}

fn canvas() -> impl Strategy<Value = Canvas> {
    let layers = prop::collection::vec((film(), mixes(), palette()), 1..3);
    let finishes = prop::collection::vec(Just(varnish()), 0..2);
    let edge = prop_oneof![4 => Just(Edge::Painted), 1 => Just(Edge::Bare)];
    (shape(), depth(), edge, 1_u32..3, layers, finishes).prop_map(
        |(shape, depth, edge, each, layers, finishes)| {
            let technique = Technique {
                name: "invented pour".into(),
                summary: "Invented.".into(),
                layers: layers
                    .iter()
                    .enumerate()
                    .map(|(number, (film, _, _))| layer(&format!("layer {number}"), *film))
                    .collect(),
                practices: vec![],
            };
            Canvas {
                name: String::new(),
                shape,
                depth,
                edge,
                each: some(each),
                technique: Arc::new(technique),
                layers: layers
                    .into_iter()
                    .map(|(_, mix, colours)| CanvasLayer { mix, colours })
                    .collect(),
                finishes,
            }
        },
    )
}

/// In quarters of an inch or in millimetres, as canvases are sold.
fn size() -> impl Strategy<Value = Length> {
    prop_oneof![
        (12_u32..100).prop_map(|quarters| inch(f64::from(quarters) / 4.0)),
        (80_u32..600).prop_map(|millimetres| mm(f64::from(millimetres))),
    ]
}

fn depth() -> impl Strategy<Value = Length> {
    prop_oneof![
        (0_u32..24).prop_map(|sixteenths| inch(f64::from(sixteenths) / 16.0)),
        (0_u32..40).prop_map(|millimetres| mm(f64::from(millimetres))),
    ]
}

fn shape() -> impl Strategy<Value = Shape> {
    prop_oneof![
        (size(), size()).prop_map(|(width, height)| Shape::Rectangle { width, height }),
        size().prop_map(|diameter| Shape::Round { diameter }),
        (size(), size()).prop_map(|(width, height)| Shape::Oval { width, height }),
        (3_u32..=24, size()).prop_map(|(sides, side)| Shape::Polygon {
            sides,
            side: side / 3.0,
            given: PolygonSize::Side
        }),
    ]
}

fn film() -> impl Strategy<Value = Length> {
    prop_oneof![Just(rule()), (0.1..3.0_f64).prop_map(mm)]
}

fn mixes() -> impl Strategy<Value = Arc<Mix>> {
    let drops = Mix {
        drops: vec![Drops { material: silicone_oil(), count: 3.0, per: ml(100.0) }],
        ..mix("with drops", Consistency::Medium, PartsBy::Volume, 0.25)
    };
    let by_weight = mix("by weight", Consistency::Thick, PartsBy::Weight, 0.1);
    prop::sample::select(vec![medium(), thin(), Arc::new(by_weight), Arc::new(drops)])
}

/// One to five colours with whole percents that add up to a hundred.
fn palette() -> impl Strategy<Value = Vec<(Arc<Colour>, Share)>> {
    prop::collection::btree_set(1_i64..100, 0..5).prop_map(|cuts| {
        let ends = cuts.iter().copied().chain([100]);
        let starts = [0].into_iter().chain(cuts.iter().copied());
        starts
            .zip(ends)
            .zip(COLOURS)
            .map(|((start, end), name)| (colour(name), percent(end - start)))
            .collect()
    })
}
