use super::{DEMOS, everywhere, figures, lines, page_of, pictures};
use crate::chart_data::{large, picture, room};
use crate::chart_reader::check;
use proptest::prelude::*;
use puddlebook::chart::draw;
use puddlebook::handout::{Division, FilmMark, Nomogram, PictureKind, Scale, Sheet, Weight};
use puddlebook::ink::{Faces, Shape, TextRun};
use puddlebook::lesson::Edition;
use puddlebook::page::Pages;
use puddlebook::quantity::UnitSystem;

const ALT: &str = "Nomogram";

/// One side of a scale, as a reader with a ruler finds it.
struct Read {
    x: f32,
    /// Value and place of the numbered divisions.
    numbered: Vec<(f64, f32)>,
    /// Places of all divisions, from above.
    ticks: Vec<f32>,
}

impl Read {
    /// Place of a value: the line through the outermost numbers.
    fn place(&self, value: f64) -> f32 {
        let (first, last) = (self.numbered[0], self.numbered[self.numbered.len() - 1]);
        let share = (value / first.0).ln() / (last.0 / first.0).ln();
        first.1 + (last.1 - first.1) * share as f32
    }

    fn value(&self, place: f32) -> f64 {
        let (first, last) = (self.numbered[0], self.numbered[self.numbered.len() - 1]);
        let share = f64::from((place - first.1) / (last.1 - first.1));
        first.0 * (last.0 / first.0).powf(share)
    }

    fn ends(&self) -> (f64, f64) {
        let ends = [self.ticks[0], self.ticks[self.ticks.len() - 1]].map(|y| self.value(y));
        (ends[0].min(ends[1]), ends[0].max(ends[1]))
    }
}

/// Left and right sides of the scales that stand on a page, from left to right.
fn sides(shapes: &[&Shape], faces: &Faces) -> Vec<Read> {
    let lines = lines(shapes);
    let upright = lines.iter().filter(|(a, b, _)| a.x == b.x && (a.y - b.y).abs() > 200.0);
    let mut scales: Vec<f32> = upright.map(|(a, ..)| a.x).collect();
    scales.sort_by(f32::total_cmp);
    assert_eq!(scales.len(), 3);
    let numbers: Vec<(&TextRun, f64)> = shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Text(run) => Some((run, run.text.parse().ok()?)),
            Shape::Path { .. } => None,
        })
        .collect();
    let mut all = Vec::new();
    for x in scales {
        for outwards in [-1.0_f32, 1.0] {
            let ticks = lines.iter().filter(|(from, to, stroke)| {
                from.x == x && to.y == from.y && (to.x - x) * outwards > 1.0 && stroke.width < 0.4
            });
            let mut ticks: Vec<f32> = ticks.map(|(from, ..)| from.y).collect();
            ticks.sort_by(f32::total_cmp);
            let beside = |run: &TextRun| {
                let near = if outwards < 0.0 { run.origin.x + run.width() } else { run.origin.x };
                (near - x) * outwards > 8.0 && (near - x) * outwards < 14.0
            };
            let mut numbered: Vec<(f64, f32)> = numbers
                .iter()
                .filter(|(run, _)| beside(run))
                .map(|(run, value)| {
                    let middle = run.origin.y - faces.metrics(run.face).cap_height * run.size / 2.0;
                    let nearest = ticks
                        .iter()
                        .copied()
                        .min_by(|a, b| (a - middle).abs().total_cmp(&(b - middle).abs()));
                    let tick = nearest.expect("a division");
                    assert!((tick - middle).abs() < 0.02, "{} has no division", run.text);
                    (*value, tick)
                })
                .collect();
            numbered.sort_by(|a, b| a.0.total_cmp(&b.0));
            if !numbered.is_empty() {
                all.push(Read { x, numbered, ticks });
            }
        }
    }
    all
}

/// Area, volume and film by the units of the left side, then area and volume by the other.
fn read(pages: &Pages, faces: &Faces) -> [Read; 5] {
    let (_, shapes) = page_of(pages, ALT);
    let [area, area_right, volume, volume_right, film] =
        <[Read; 5]>::try_from(sides(&shapes, faces)).ok().expect("five divided sides");
    [area, volume, film, area_right, volume_right]
}

fn spaced((low, high): (f64, f64), count: i32) -> impl Iterator<Item = f64> {
    (0..count).map(move |at| low * (high / low).powf(f64::from(at) / f64::from(count - 1)))
}

/// 1 US fl oz on 25 in² is the rule of thumb, 1.8336 mm (common practice); units by NIST SP 811:
/// 1 in² = 645.16 mm², 1 US fl oz = 29.5735295625 mL.
#[test]
fn a_straight_line_hits_the_paint_of_the_formula() {
    let faces = Faces::new();
    for file in DEMOS {
        for (plan, _, pages) in everywhere(file, Sheet::Tools) {
            let [left, volume_left, film, right, volume_right] = read(&pages, &faces);
            let us = |area: f64, film: f64| area * 645.16 * film / 1000.0 / 29.573_529_562_5;
            let metric = |area: f64, film: f64| area * 100.0 * film / 1000.0;
            let formulas: [fn(f64, f64) -> f64; 2] = match plan.lesson.print.units {
                UnitSystem::Us => [us, metric],
                UnitSystem::Metric => [metric, us],
            };
            let mut worst = 0.0_f64;
            for ((area, volume), formula) in
                [(&left, &volume_left), (&right, &volume_right)].into_iter().zip(formulas)
            {
                for of_area in spaced(area.ends(), 40) {
                    for of_film in spaced(film.ends(), 40) {
                        let (a, f) = (area.place(of_area), film.place(of_film));
                        let share = (volume.x - area.x) / (film.x - area.x);
                        let hit = volume.value(a + (f - a) * share);
                        worst = worst.max((hit / formula(of_area, of_film) - 1.0).abs());
                    }
                }
            }
            assert!(worst < 0.002, "{file}: {worst}");
        }
    }
}

#[test]
fn numbers_of_a_scale_stand_where_their_ratios_say() {
    let faces = Faces::new();
    for (_, _, pages) in everywhere("boathouse-evening", Sheet::Tools) {
        for side in read(&pages, &faces) {
            assert!(side.numbered.len() >= 8);
            for (value, place) in &side.numbered {
                assert!((side.place(*value) - place).abs() < 0.02, "{value}");
            }
        }
    }
}

/// Half a division, or half a millimetre of a ruler laid badly, is less than 3 % of the reading.
#[test]
fn readings_are_better_than_three_percent() {
    let faces = Faces::new();
    for file in DEMOS {
        for (_, _, pages) in everywhere(file, Sheet::Tools) {
            for side in read(&pages, &faces) {
                for pair in side.ticks.windows(2) {
                    let half = (side.value(pair[0]) / side.value(pair[1])).sqrt() - 1.0;
                    assert!(half.abs() < 0.03, "{file}: {half}");
                }
                let beside = side.value(side.ticks[0] + 0.5 * super::MM);
                let off = (side.value(side.ticks[0]) / beside - 1.0).abs();
                assert!(off < 0.03, "{file}: half a millimetre is {off}");
            }
        }
    }
}

#[test]
fn techniques_are_marked_at_their_films() {
    let faces = Faces::new();
    for (plan, document, pages) in everywhere("kiln-yard-rounds", Sheet::Tools) {
        let [_, _, film, ..] = read(&pages, &faces);
        let shown = pictures(&document);
        let data = shown.iter().find_map(|picture| match &picture.kind {
            PictureKind::Nomogram(data) => Some((data, &picture.alt)),
            _ => None,
        });
        let (data, alt) = data.unwrap();
        let page = page_of(&pages, ALT).0;
        let shapes = figures(&pages, &pages.pages[page], ALT);
        // Leaders begin on the scale.
        let leaders = lines(&shapes);
        let leaders = leaders.iter().filter(|(from, to, stroke)| {
            from.x == film.x && to.x > from.x && to.y == from.y && stroke.width > 0.4
        });
        let mut found: Vec<f64> = leaders.map(|(from, ..)| film.value(from.y)).collect();
        found.sort_by(f64::total_cmp);
        for at in &found {
            let near = |mark: &&FilmMark| (at / mark.film - 1.0).abs() < 0.002;
            assert!(data.marks.iter().any(|mark| near(&mark)), "nothing leaves {at} mm");
        }
        // In large print some names may have no room, but none of the lesson.
        let (all, must) = match plan.lesson.print.edition {
            Edition::Standard => (data.marks.len(), Weight::Quiet),
            Edition::LargePrint => (found.len(), Weight::Strong),
        };
        assert_eq!(found.len(), all);
        for mark in data.marks.iter().filter(|mark| mark.weight == must) {
            assert!(found.iter().any(|at| (at / mark.film - 1.0).abs() < 0.002), "{}", mark.label);
        }
        for technique in &plan.lesson.techniques {
            assert!(data.marks.iter().any(|mark| mark.label.contains(&technique.name)));
        }
        assert!(data.marks.iter().all(|mark| alt.contains(&mark.label)));
        let strong = data.marks.iter().filter(|mark| mark.weight == Weight::Strong).count();
        assert_eq!(strong, 3, "one layer of the discs, two of the cameos");
    }
}

fn nomogram(marks: Vec<FilmMark>, area_ends: (f64, f64), film_ends: (f64, f64)) -> PictureKind {
    let scale = |title: &str, left: (&str, f64), right: Option<(&str, f64)>| {
        let division = |(unit, size): (&str, f64)| Division { unit: unit.to_owned(), size };
        Scale { title: title.to_owned(), left: division(left), right: right.map(division) }
    };
    PictureKind::Nomogram(Nomogram {
        area: scale("Painted area", ("in²", 6.4516), Some(("cm²", 1.0))),
        volume: scale("Mixed paint", ("fl oz", 295.735), Some(("mL", 10.0))),
        film: scale("Wet film", ("mm", 1.0), None),
        area_ends,
        film_ends,
        marks_title: "What leaves such a film".to_owned(),
        marks,
        example: Some((area_ends.0 * 2.0, film_ends.0 * 2.0)),
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn marks_and_numbers_keep_apart(
        films in prop::collection::vec((0.02_f64..12.0, 3_usize..60, any::<bool>()), 0..70),
        area in (30.0_f64..100.0, 6_500.0_f64..20_000.0),
        film in (0.05_f64..0.15, 3.0_f64..8.0),
    ) {
        let faces = Faces::new();
        let mark = |(film, letters, strong): (f64, usize, bool)| FilmMark {
            label: "pour it so ".chars().cycle().take(letters).collect::<String>().trim().to_owned(),
            film,
            weight: if strong { Weight::Strong } else { Weight::Quiet },
        };
        let kind = nomogram(films.into_iter().map(mark).collect(), area, film);
        for room in [room(440.0), room(497.0), large(480.0)] {
            let drawing = draw(&picture(kind.clone()), room, &faces);
            prop_assert!(check(&drawing, &faces).is_ok(), "{:?}", check(&drawing, &faces));
        }
    }
}
