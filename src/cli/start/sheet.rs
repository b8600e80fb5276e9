//! The lesson file as text: the answers, and notes that explain every key.

use super::answers::{Answers, CanvasAnswer, PaletteAnswer, Shares, Students};
use super::lines::noted;
use super::offers::Offers;
use crate::cli::quoted::quoted;
use crate::lesson::{Amount, Language, Paper};
use crate::plan::{Plan, Purchase};
use crate::quantity::UnitSystem;
use serde::Serialize;
use std::path::Path;
use tera::Tera;

/// What the template is filled with; every text is ready for YAML.
#[derive(Serialize)]
struct Sheet<'a> {
    file: String,
    stem: String,
    title: String,
    teacher: String,
    place: String,
    date: String,
    language: &'a str,
    units: &'a str,
    paper: &'a str,
    students: String,
    demonstrations: String,
    spares: String,
    youngest: String,
    canvases: Vec<CanvasText>,
    techniques: String,
    palettes: Vec<PaletteText>,
    colours: Vec<ColourText>,
    stock: Vec<Line>,
    jars: Vec<JarText>,
    currency: &'a str,
    to_buy: Vec<Line>,
}

#[derive(Serialize)]
struct CanvasText {
    name: String,
    shape: &'static str,
    sizes: Vec<Size>,
    depth: String,
    edge: &'static str,
    each: String,
    technique: String,
    consistency: String,
    palette: String,
}

#[derive(Serialize)]
struct Size {
    key: &'static str,
    says: String,
}

#[derive(Serialize)]
struct PaletteText {
    name: String,
    layers: Vec<LayerText>,
}

#[derive(Serialize)]
struct LayerText {
    name: String,
    parts: String,
    colours: Vec<Line>,
}

#[derive(Serialize)]
struct ColourText {
    name: String,
    swatch: String,
    density: String,
}

#[derive(Serialize)]
struct JarText {
    colour: String,
    mix: String,
    amount: String,
    mixed: String,
}

/// A name and what it says.
#[derive(Serialize)]
struct Line {
    name: String,
    says: String,
}

/// Writes the lesson file that is to stand at `path`. With its plan, the price list names what
/// it has to buy.
///
/// # Errors
/// What the template engine says; the templates come with the program.
pub(super) fn write(
    answers: &Answers,
    offers: &Offers,
    path: &Path,
    plan: Option<&Plan>,
) -> Result<String, tera::Error> {
    let template = match answers.sheets.language {
        Language::English => include_str!("../../../templates/start/en.yaml"),
        Language::Spanish => include_str!("../../../templates/start/es.yaml"),
    };
    let sheet = sheet(answers, offers, path, plan);
    let context = tera::Context::from_serialize(sheet)?;
    Tera::default().render_str(template, &context)
}

fn sheet<'a>(answers: &'a Answers, offers: &Offers, path: &Path, plan: Option<&Plan>) -> Sheet<'a> {
    let Answers { sheets, heading, people, .. } = answers;
    let palettes = palettes(&answers.canvases);
    let named = |canvas: &CanvasAnswer| {
        let stands = palettes.iter().find(|(_, palette)| **palette == canvas.palette);
        stands.map_or(String::new(), |(name, _)| quoted(name))
    };
    let canvases: Vec<CanvasText> =
        answers.canvases.iter().map(|canvas| canvas_text(canvas, named(canvas))).collect();
    let (units, currency) = match sheets.units {
        UnitSystem::Us => ("us", "USD"),
        UnitSystem::Metric => ("metric", "EUR"),
    };
    let techniques = offers.techniques.iter().map(|technique| technique.name.as_str());
    Sheet {
        file: argument(&path.display().to_string()),
        stem: argument(&path.file_stem().unwrap_or_default().to_string_lossy()),
        title: quoted(&heading.title),
        teacher: said(&heading.teacher),
        place: said(&heading.place),
        date: said(&heading.date),
        language: sheets.language.tag(),
        units,
        paper: match sheets.paper {
            Paper::A4 => "a4",
            Paper::Letter => "letter",
        },
        students: match &people.students {
            Students::Count(count) => quoted(count),
            Students::Named(names) => {
                let names: Vec<String> = names.iter().map(|name| quoted(name)).collect();
                format!("[{}]", names.join(", "))
            }
        },
        demonstrations: quoted(&people.demonstrations),
        spares: quoted(&people.spares),
        youngest: said(&people.youngest),
        canvases,
        techniques: noted(&techniques.collect::<Vec<_>>().join(", "), "    # "),
        palettes: palettes.iter().map(|(name, palette)| palette_text(name, palette)).collect(),
        colours: colours(answers, offers),
        stock: answers.stock.iter().map(|(item, amount)| text_line(item, amount)).collect(),
        jars: answers
            .jars
            .iter()
            .map(|jar| JarText {
                colour: quoted(&jar.colour),
                mix: quoted(&jar.mix),
                amount: quoted(&jar.amount),
                mixed: quoted(&jar.mixed),
            })
            .collect(),
        currency,
        to_buy: plan.map(|plan| to_buy(plan, sheets.units)).unwrap_or_default(),
    }
}

/// Empty where nothing is said, so that the template leaves the key out.
fn said(text: &str) -> String {
    if text.is_empty() { String::new() } else { quoted(text) }
}

fn text_line(name: &str, says: &str) -> Line {
    Line { name: quoted(name), says: quoted(says) }
}

fn canvas_text(canvas: &CanvasAnswer, palette: String) -> CanvasText {
    let board = &canvas.board;
    let size = |(key, says): &(&'static str, String)| Size { key, says: quoted(says) };
    CanvasText {
        name: quoted(&board.name),
        shape: board.shape,
        sizes: board.sizes.iter().map(size).collect(),
        depth: quoted(&board.depth),
        edge: board.edge,
        each: quoted(&board.each),
        technique: quoted(&canvas.technique),
        consistency: quoted(&canvas.consistency),
        palette,
    }
}

/// Each palette once, under a name of its own.
fn palettes(canvases: &[CanvasAnswer]) -> Vec<(String, &PaletteAnswer)> {
    let mut palettes: Vec<(String, &PaletteAnswer)> = Vec::new();
    for canvas in canvases {
        let palette = &canvas.palette;
        if palettes.iter().any(|(_, known)| *known == palette) {
            continue;
        }
        let taken = |name: &str| palettes.iter().any(|(known, _)| known == name);
        let numbered = (2..).map(|nth: usize| format!("{} {nth}", palette.name));
        let mut names = std::iter::once(palette.name.clone()).chain(numbered);
        if let Some(name) = names.find(|name| !taken(name)) {
            palettes.push((name, palette));
        }
    }
    palettes
}

fn palette_text(name: &str, palette: &PaletteAnswer) -> PaletteText {
    let layers = palette.layers.iter().map(|layer| {
        let Shares { colours, parts } = &layer.shares;
        LayerText {
            name: quoted(&layer.name),
            parts: parts.clone(),
            colours: colours.iter().map(|(colour, share)| text_line(colour, share)).collect(),
        }
    });
    PaletteText { name: quoted(name), layers: layers.collect() }
}

/// Every colour of the palettes, and of the jars, once.
fn colours(answers: &Answers, offers: &Offers) -> Vec<ColourText> {
    let layers = answers.canvases.iter().flat_map(|canvas| &canvas.palette.layers);
    let poured = layers.flat_map(|layer| layer.shares.colours.iter().map(|(colour, _)| colour));
    let mut names: Vec<&str> = Vec::new();
    for name in poured {
        if !names.contains(&name.as_str()) {
            names.push(name);
        }
    }
    let colour = |(nth, name): (usize, &&str)| {
        let known = offers.colour(name, nth);
        let density = known.density.unwrap_or_default();
        ColourText { name: quoted(name), swatch: quoted(&known.swatch), density }
    };
    names.iter().enumerate().map(colour).collect()
}

/// What has to be bought, each in a pack of a usual size.
fn to_buy(plan: &Plan, units: UnitSystem) -> Vec<Line> {
    let wanted = plan.order.lines.iter();
    let wanted = wanted.filter(|line| !matches!(line.purchase, Purchase::Nothing));
    wanted
        .map(|line| {
            let size = match (line.to_buy, units) {
                (Amount::Pieces(few), _) if few < 5 => "1 piece",
                (Amount::Pieces(_), _) => "10 pieces",
                (_, UnitSystem::Us) => "8 fl oz",
                (_, UnitSystem::Metric) => "250 mL",
            };
            Line { name: quoted(&line.item), says: size.to_owned() }
        })
        .collect()
}

/// A path as one types it after a command; what would end the line is a question mark.
pub(super) fn argument(path: &str) -> String {
    let path: String = path.chars().map(|c| if c.is_control() { '?' } else { c }).collect();
    let plain = |c: char| c.is_alphanumeric() || "-_./\\:~".contains(c);
    if path.chars().all(plain) { path } else { format!("\"{path}\"") }
}

/// Longest name of a file that is made of a title, in characters.
const FILE_LETTERS: usize = 40;

/// A name for the file of a lesson, in letters that every disk takes.
pub(super) fn file_name(title: &str) -> String {
    let mut name = String::new();
    for c in title.to_lowercase().chars().take(FILE_LETTERS) {
        if c.is_alphanumeric() {
            name.push(c);
        } else if !name.ends_with('-') && !name.is_empty() {
            name.push('-');
        }
    }
    // Of one letter or none, or a device of some systems.
    let name = name.trim_end_matches('-');
    if name.chars().count() < 5 { "lesson.yaml".to_owned() } else { format!("{name}.yaml") }
}
