//! A small invented studio to plan lessons in.

use puddlebook::lesson::*;
use puddlebook::plan::{Plan, plan};
use puddlebook::quantity::units::{g_per_ml, gram, inch, ml, mm, us_fl_oz};
use puddlebook::quantity::{Currency, Decimal, Length, Money, Share, Spread, UnitSystem, Volume};
use std::num::NonZeroU32;
use std::sync::Arc;

pub fn planned(lesson: Lesson) -> Plan {
    plan(lesson).unwrap()
}

/// One student, one 10 x 10 in canvas with a painted half-inch edge, a straight pour of
/// medium consistency in three colours, US units, nothing in the cupboard, no shop, no reserve.
pub fn lesson() -> Lesson {
    let technique = straight_pour();
    Lesson {
        heading: Heading { title: "A first evening (invented)".into(), ..Heading::default() },
        print: Print {
            language: Language::English,
            units: UnitSystem::Us,
            paper: Paper::Letter,
            edition: Edition::Standard,
            currency: Currency::USD,
        },
        class: Class {
            students: students(1),
            demonstrations: 0,
            spares: 0,
            youngest_age: None,
            per_table: some(4),
        },
        canvases: vec![Canvas {
            name: "square".into(),
            shape: Shape::Rectangle { width: inch(10.0), height: inch(10.0) },
            depth: inch(0.5),
            edge: Edge::Painted,
            each: some(1),
            technique: Arc::clone(&technique),
            layers: vec![CanvasLayer { mix: medium(), colours: shoreline() }],
            finishes: vec![],
        }],
        mixing: Mixing {
            cup_loss: ml(3.0),
            step_us: us_fl_oz(0.25),
            step_metric: ml(5.0),
            scale_step: gram(1.0),
            keeps: 21,
        },
        timetable: None,
        exercises: None,
        room: Room { table: None, level_surface: None, gap: mm(50.0), drying_days: 3 },
        washing: Washing {
            after_each_batch: ml(1000.0),
            each_piece: Vec::new(),
            bucket: ml(8000.0),
        },
        reserve: no_reserve(),
        supplies: vec![],
        sizes: StockSizes { us: Vec::new(), metric: Vec::new() },
        shops: Vec::new(),
        charges: Charges::default(),
        elsewhere: Vec::new(),
        jars: Vec::new(),
        stock: vec![],
        practices: vec![],
        cautions: vec![],
        techniques: vec![technique],
        mixes: vec![thin(), medium()],
        accepted: vec![],
        unused: vec![],
        origins: Origins::default(),
    }
}

/// Enough in every second class: what is expected, and nothing on top.
pub fn no_reserve() -> ReserveRule {
    reserve((1, 2), 8, 15)
}

/// A reserve at a level, with what the class and the students vary by in percent.
pub fn reserve(level: (u32, u32), class: i64, students: i64) -> ReserveRule {
    ReserveRule {
        level: ServiceLevel::new(level.0, level.1).unwrap(),
        class_varies: percent(class),
        students_vary: percent(students),
        habit: percent(15),
        weighed: None,
    }
}

pub fn some(count: u32) -> NonZeroU32 {
    NonZeroU32::new(count).unwrap()
}

pub fn students(count: u32) -> Students {
    Students::Count(some(count))
}

pub fn shoreline() -> Vec<(Arc<Colour>, Share)> {
    vec![
        (colour("harbour blue"), percent(40)),
        (colour("sand"), percent(25)),
        (colour("white"), percent(35)),
    ]
}

pub fn percent(percent: i64) -> Share {
    Share::new(Decimal::new(percent, 2)).unwrap()
}

/// Paint of 1.2 g/mL.
pub fn colour(name: &str) -> Arc<Colour> {
    Arc::new(Colour {
        name: name.into(),
        paint: material(&format!("{name} acrylic"), MaterialKind::Paint, 1.2),
        swatch: Rgb(30, 90, 120),
        pigments: vec![],
        caution: None,
    })
}

pub fn material(name: &str, kind: MaterialKind, grams_per_ml: f64) -> Arc<Material> {
    Arc::new(Material {
        name: name.into(),
        kind,
        density: g_per_ml(grams_per_ml),
        drop: None,
        caution: None,
    })
}

pub fn pouring_medium() -> Arc<Material> {
    material("pouring medium", MaterialKind::Medium, 1.05)
}

pub fn water() -> Arc<Material> {
    material("water", MaterialKind::Water, 0.998)
}

pub fn silicone_oil() -> Arc<Material> {
    Arc::new(Material {
        name: "silicone oil".into(),
        kind: MaterialKind::Additive,
        density: g_per_ml(0.97),
        drop: Some(ml(0.05)),
        caution: None,
    })
}

/// 1 part paint, 1 part pouring medium, `water` parts water.
pub fn mix(name: &str, consistency: Consistency, by: PartsBy, water_parts: f64) -> Mix {
    let part = |what, parts| Part { what, parts };
    Mix {
        name: name.into(),
        consistency,
        by,
        parts: vec![
            part(Ingredient::ThePaint, 1.0),
            part(Ingredient::Other(pouring_medium()), 1.0),
            part(Ingredient::Other(water()), water_parts),
        ],
        drops: vec![],
    }
}

pub fn medium() -> Arc<Mix> {
    Arc::new(mix("medium", Consistency::Medium, PartsBy::Volume, 0.25))
}

pub fn thin() -> Arc<Mix> {
    Arc::new(mix("thin", Consistency::Thin, PartsBy::Volume, 0.5))
}

/// 25 in² a fluid ounce.
pub fn straight_pour() -> Arc<Technique> {
    one_film("straight pour", rule())
}

/// One fluid ounce on 25 in², worked out here and not by the engine.
pub fn rule() -> Length {
    mm(29.573_529_562_5 / 161.29 * 10.0)
}

/// A technique of one layer with the same film for every consistency.
pub fn one_film(name: &str, film: Length) -> Arc<Technique> {
    Arc::new(Technique {
        name: name.into(),
        summary: "Invented for a check.".into(),
        layers: vec![layer("colour", film)],
        practices: vec![],
    })
}

/// A layer of one typical film, a fifth less when low and a fifth more when high.
pub fn layer(name: &str, film: Length) -> TechniqueLayer {
    let film = Spread::new(film * 0.8, film, film * 1.2).unwrap();
    TechniqueLayer {
        name: name.into(),
        films: Films { thin: film, medium: film, thick: film },
        basis: "invented".into(),
        weighed: Vec::new(),
    }
}

pub fn varnish() -> Arc<Finish> {
    Arc::new(Finish {
        name: "brushed varnish".into(),
        material: material("gloss varnish", MaterialKind::Varnish, 1.03),
        film: Spread::new(mm(0.08), mm(0.1), mm(0.13)).unwrap(),
        coats: some(2),
        after_days: 14,
        basis: "invented".into(),
    })
}

pub fn supply(item: &str, count: f64, per: Per, life: Life) -> SupplyRule {
    SupplyRule { item: item.into(), count, per, life }
}

pub fn shop(packs: Vec<Pack>) -> Vec<Shop> {
    vec![Shop {
        name: "Corner supply shop (invented)".into(),
        delivery: Money::ZERO,
        free_from: None,
        least_order: None,
        packs,
    }]
}

pub fn pack(item: &str, size: Amount, cents: i64) -> Pack {
    let one = NonZeroU32::MIN;
    Pack { item: item.into(), size, price: money(cents), from: one, only_by: one }
}

pub fn money(cents: i64) -> Money {
    Money::new(Decimal::new(cents, 2))
}

pub fn stocked(item: &str, amount: Amount) -> Stocked {
    Stocked { item: item.into(), amount }
}

/// Volumes that ought to be the same.
#[track_caller]
pub fn assert_same(one: Volume, other: Volume) {
    assert!((one - other).abs() <= one.abs() * 1e-9, "{one:?} is not {other:?}");
}

#[track_caller]
pub fn assert_near(value: f64, expected: f64, within: f64) {
    assert!((value - expected).abs() <= within, "{value} is not {expected} within {within}");
}
