//! Figures: each has words, and those of charts carry the data.

use puddlebook::handout::{
    Bars, Coverage, Document, FeeCurve, FilmLeft, Nomogram, Picture, PictureKind, Shares,
    WeighedChart, Weight,
};

use super::handouts::Handout;
use super::said::{Kind, leaves, plain};
use super::wished::pictures;
use super::{all_keep, ensure};
use crate::chart_data::written_in;
use crate::pdf_file::ReadFile;
use crate::pdf_tree::Element;

#[test]
fn every_figure_is_drawn_and_has_words() {
    all_keep(described);
}

#[test]
fn the_words_of_a_figure_have_every_number_that_is_written_in_it() {
    all_keep(numbers_written);
}

#[test]
fn the_words_of_a_chart_have_its_data() {
    all_keep(|handout| data(&handout.document));
}

pub fn described(Handout { document, file, .. }: &Handout) -> Result<(), String> {
    for figure in file.tree.of_kind("Figure") {
        let alt = figure.alt.as_deref().unwrap_or_default();
        ensure(!alt.trim().is_empty(), || "a figure without words".to_owned())?;
        let mut drawn = figure.sequences().filter_map(|(page, mcid)| file.sequence(page, mcid));
        ensure(drawn.any(|sequence| !sequence.paints.is_empty()), || {
            format!("nothing is drawn of {alt:?}")
        })?;
    }
    let speechless = file.touched.values().find(|touched| touched.text.trim().is_empty());
    ensure(speechless.is_none(), || "a link or a field without words".to_owned())?;
    let wished: Vec<&str> = pictures(&document.blocks).iter().map(|it| it.alt.as_str()).collect();
    let found: Vec<&str> = blocks(file).iter().filter_map(|it| it.alt.as_deref()).collect();
    ensure(found == wished, || format!("the figures are {found:?}, not {wished:?}"))
}

/// Figures in the order of the tree.
fn blocks(file: &ReadFile) -> Vec<&Element> {
    let leaves = leaves(&file.tree).into_iter();
    leaves.filter(|(kind, _)| *kind == Kind::Figure).map(|(_, element)| element).collect()
}

/// Numbers on axes are no data: they stand alone.
pub fn numbers_written(Handout { file, .. }: &Handout) -> Result<(), String> {
    for figure in blocks(file) {
        let alt = figure.alt.as_deref().unwrap_or_default();
        let said = numbers(alt);
        for label in labels(file, figure) {
            let written = numbers(&label);
            let is_tick = written.concat() == label;
            let missing = written.iter().find(|number| !said.contains(number));
            ensure(is_tick || missing.is_none(), || {
                format!("{missing:?} of the label {label:?} is not in {alt:?}")
            })?;
        }
    }
    Ok(())
}

/// A gap wider than this, in em, parts two labels on one line.
const APART: f32 = 0.6;

/// What is written in a figure.
fn labels(file: &ReadFile, figure: &Element) -> Vec<String> {
    let mut labels: Vec<String> = Vec::new();
    let mut end = None;
    for (page, mcid) in figure.sequences() {
        for glyph in file.sequence(page, mcid).into_iter().flat_map(|sequence| &sequence.glyphs) {
            let goes_on = end.is_some_and(|(x, y): (f32, f32)| {
                y == glyph.y && (-0.3..APART).contains(&((glyph.x - x) / glyph.size))
            });
            match labels.last_mut() {
                Some(label) if goes_on => label.push_str(&glyph.text),
                _ => labels.push(glyph.text.clone()),
            }
            end = Some((glyph.end, glyph.y));
        }
    }
    labels.iter().map(|label| plain(label)).collect()
}

/// The numbers of a text as they are written, fractions too.
fn numbers(text: &str) -> Vec<&str> {
    let is_part = |c: char| c.is_numeric() && !"²³".contains(c) || matches!(c, '.' | ',');
    let split = text.split(|c: char| !is_part(c)).map(|part| part.trim_matches(['.', ',']));
    split.filter(|part| !part.is_empty()).collect()
}

pub fn data(document: &Document) -> Result<(), String> {
    for Picture { alt, kind } in pictures(&document.blocks) {
        let alt = plain(alt);
        let fault = match kind {
            PictureKind::Bars(Bars { bars, .. }) => {
                let parts = bars.iter().flat_map(|bar| bar.parts.iter().map(|part| &part.label));
                let mut wanted = bars.iter().map(|bar| &bar.label).chain(parts);
                wanted.find(|wanted| !alt.contains(&plain(wanted))).cloned()
            }
            PictureKind::Fees(curve) => fee_without_words(curve, &alt),
            PictureKind::Shares(shares) => share_without_words(shares, &alt),
            PictureKind::Weighed(chart) => class_without_words(chart, &alt),
            PictureKind::Coverage(chart) => line_without_words(chart, &alt),
            PictureKind::FilmLeft(chart) => film_without_words(chart, &alt),
            PictureKind::Nomogram(data) => mark_without_words(data, &alt),
            PictureKind::SpreadRings(data) => {
                let rings = data.rings.iter().flat_map(|ring| [&ring.label, &ring.radius_label]);
                let mut wanted = rings.chain(data.bands.iter().map(|band| &band.name));
                wanted.find(|wanted| !alt.contains(&plain(wanted))).cloned()
            }
            PictureKind::EdgeGauge(data) => {
                let reach = [data.depth, data.ruler].map(|reach| format!("{reach} mm"));
                let mut wanted = data.marks.iter().map(|mark| &mark.label).chain(&reach);
                wanted.find(|wanted| !alt.contains(&plain(wanted))).cloned()
            }
            PictureKind::CheckLength(data) => {
                let mut wanted = data.bars.iter().map(|bar| &bar.label);
                wanted.find(|wanted| !alt.contains(&plain(wanted))).cloned()
            }
            PictureKind::Sketch(sketch) => {
                written_in(sketch).into_iter().find(|words| !alt.contains(&plain(words)))
            }
            PictureKind::Unfolded(_) | PictureKind::Rings { .. } => None,
        };
        ensure(fault.is_none(), || format!("{fault:?} is not in {alt:?}"))?;
    }
    Ok(())
}

/// The first numbers behind some words.
fn values(alt: &str, words: &str) -> Vec<f64> {
    let behind = alt.split(&plain(words)).nth(1).unwrap_or_default();
    numbers(behind).into_iter().filter_map(value).collect()
}

fn value(number: &str) -> Option<f64> {
    // No number has groups; a comma is a decimal one.
    number.replace(',', ".").parse().ok()
}

/// Whether numbers as they are shown stand for values, to a hundredth.
fn near(shown: &[f64], values: &[f64]) -> bool {
    let near = |(shown, value): (&f64, &f64)| (shown - value).abs() <= 0.01 * value;
    shown.len() >= values.len() && shown.iter().zip(values).all(near)
}

/// Each canvas with its area and paint; each line with the paint of the largest canvas, and
/// with the range of its band if it has one.
fn line_without_words(chart: &Coverage, alt: &str) -> Option<String> {
    let mark = chart
        .marks
        .iter()
        .find(|mark| !near(&values(alt, &format!("{}:", mark.label)), &[mark.x, mark.y]));
    let area = chart.marks.iter().map(|mark| mark.x).fold(0.0, f64::max);
    let line = chart.lines.iter().find(|line| {
        let [low, typical, high] = line.slope.map(|slope| slope * area);
        let wanted = match line.emphasis {
            Weight::Strong => vec![typical, low, high],
            Weight::Quiet => vec![typical],
        };
        !near(&values(alt, &line.label), &wanted)
    });
    mark.map(|mark| mark.label.clone()).or(line.map(|line| line.label.clone()))
}

/// Each class with its fee, which money rounds to two decimals, and the fee that is asked.
fn fee_without_words(curve: &FeeCurve, alt: &str) -> Option<String> {
    let said: Vec<f64> = numbers(alt).into_iter().filter_map(value).collect();
    let missing = curve.dots.iter().find(|dot| {
        let is_dot = |pair: &[f64]| {
            pair[0] == f64::from(dot.students) && (pair[1] - dot.fee).abs() <= 0.005 + 1e-9
        };
        !said.windows(2).any(is_dot)
    });
    let asked =
        curve.asked.iter().find(|(fee, _)| !said.iter().any(|said| near(&[*said], &[*fee])));
    missing.map(|dot| format!("{dot:?}")).or(asked.map(|(_, label)| label.clone()))
}

/// Each whole with its parts, as large to one another as they are drawn.
fn share_without_words(shares: &Shares, alt: &str) -> Option<String> {
    let missing = shares.rows.iter().find(|row| {
        let whole: f64 = row.sizes.iter().sum();
        let parts = [whole, row.sizes[0] + row.sizes[1], row.sizes[1], row.sizes[2]];
        let said = values(alt, &format!("{},", row.name));
        let unit = said.first().map_or(0.0, |said| said / whole);
        // Without a reserve there is no word of it.
        let parts = parts.into_iter().filter(|part| *part > 0.0).map(|part| part * unit);
        let close = |(said, part): (&f64, f64)| (said - part).abs() <= 0.01 * whole * unit;
        said.is_empty() || !said.iter().zip(parts).all(close)
    });
    missing.map(|row| row.name.clone())
}

/// Each class with its canvases, the paint that was planned and that was used; each rule with
/// its share of the plan in percent.
fn class_without_words(chart: &WeighedChart, alt: &str) -> Option<String> {
    let missing = chart.groups.iter().enumerate().find(|(class, name)| {
        let own = || chart.points.iter().filter(move |point| point.group == *class);
        let (planned, used) = (own().map(|point| point.x), own().map(|point| point.y[1]));
        let sums = [own().count() as f64, planned.sum(), used.sum()];
        !near(&values(alt, &format!("{name}:")), &sums)
    });
    let rule = chart.rules.iter().find(|rule| {
        let said = values(alt, &format!("{}”", rule.label));
        said.first().is_none_or(|said| (said - 100.0 * rule.slope).abs() > 0.5)
    });
    missing.map(|(_, name)| name.clone()).or(rule.map(|rule| rule.label.clone()))
}

/// What leaves each film, with the film.
fn mark_without_words(chart: &Nomogram, alt: &str) -> Option<String> {
    let mut marks = chart.marks.iter();
    let missing = marks.find(|mark| !near(&values(alt, &mark.label), &[mark.film]));
    missing.map(|mark| mark.label.clone())
}

/// Each paint with some of the points of its curve, the last among them; films are shown with
/// two digits.
fn film_without_words(chart: &FilmLeft, alt: &str) -> Option<String> {
    let missing = chart.lines.iter().find(|line| {
        let paint = line.label.split(',').next().unwrap_or_default();
        let sentence = alt.rsplit(paint).next().unwrap_or_default();
        let sentence = sentence.split(". ").next().unwrap_or_default();
        let said: Vec<f64> = numbers(sentence).into_iter().filter_map(value).collect();
        let told = |film: f64, time: f64| {
            let close = |point: &(f64, f64)| {
                (point.0 - time).abs() < 0.5 && (point.1 - film).abs() < 0.03 * film
            };
            line.points.iter().any(close)
        };
        let ends = line.points.last().zip(said.last());
        let ends = ends.is_some_and(|((end, _), said)| (end - said).abs() < 0.5);
        !ends || !said.chunks(2).all(|pair| pair.len() == 2 && told(pair[0], pair[1]))
    });
    missing.map(|line| line.label.clone())
}
