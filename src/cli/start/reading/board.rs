//! `square 10 x 10 in, 1/2 in deep, 2 each`: a canvas in one line.

use super::super::answers::Board;
use super::super::ask::Complaint;
use super::super::offers::OutlineName;
use super::{line, name, pieces, starts_with_number};

/// The outlines of a canvas: the word for it, other words, its shape in lesson files and how
/// many sides it has.
const OUTLINES: [(&str, &[&str], &str, u32); 9] = [
    ("square", &["squares"], "rectangle", 4),
    ("rectangle", &["rectangles", "rectangular"], "rectangle", 4),
    ("round", &["circle", "circles", "circular"], "round", 0),
    ("oval", &["ovals", "ellipse"], "oval", 0),
    ("triangle", &["triangles"], "polygon", 3),
    ("pentagon", &["pentagons"], "polygon", 5),
    ("hexagon", &["hexagons"], "polygon", 6),
    ("octagon", &["octagons"], "polygon", 8),
    ("polygon", &["polygons"], "polygon", 0),
];

/// Words around a canvas that say nothing of it.
const FILLERS: [&str; 8] = ["a", "of", "canvas", "canvases", "panel", "panels", "diameter", "wide"];

/// What the pieces of the line say.
#[derive(Default)]
struct Said<'o> {
    outline: Option<(&'o str, &'static str, u32)>,
    sides: Option<String>,
    /// `side`, `across flats` or `across corners`.
    across: Option<&'static str>,
    sizes: Vec<String>,
    depth: Option<String>,
    each: Option<String>,
    bare: bool,
}

/// The face of a canvas.
struct Face<'o> {
    /// By its word.
    outline: &'o str,
    shape: &'static str,
    sizes: Vec<(&'static str, String)>,
}

/// Reads the line; `names` are the names of outlines in the language of the lesson.
pub(in super::super) fn board(text: &str, names: &[OutlineName]) -> Result<Board, Complaint> {
    let (named, rest) = match text.split_once(':') {
        Some((before, rest)) => (Some(name(before)?), rest),
        None => (None, text),
    };
    let mut said = Said::default();
    for piece in pieces(rest) {
        said.hear(&piece, names)?;
    }
    let unit = said.sizes.iter().map(|size| unit_of(size)).find(|unit| !unit.is_empty());
    for size in &mut said.sizes {
        if let (true, Some(unit)) = (unit_of(size).is_empty(), &unit) {
            *size = format!("{size} {unit}");
        }
    }
    if let (3, None) = (said.sizes.len(), &said.depth) {
        said.depth = said.sizes.pop();
    }
    let Face { outline, shape, sizes } = said.face()?;
    let called = || names.iter().find(|known| known.outline == outline);
    let called = || called().map_or(outline, |known| known.name.as_str()).to_owned();
    Ok(Board {
        name: named.unwrap_or_else(called),
        shape,
        sizes,
        depth: said.depth.unwrap_or_else(|| "0".to_owned()),
        edge: if said.bare { "bare" } else { "painted" },
        each: said.each.unwrap_or_else(|| "1".to_owned()),
    })
}

impl<'o> Said<'o> {
    /// Takes in one piece.
    fn hear(&mut self, piece: &str, names: &'o [OutlineName]) -> Result<(), Complaint> {
        let words: Vec<&str> = piece.split(' ').collect();
        let without = |taken: &[&str]| {
            let left = words.iter().filter(|word| !taken.contains(&word.to_lowercase().as_str()));
            left.copied().collect::<Vec<_>>().join(" ")
        };
        let has = |word: &str| words.iter().any(|said| said.to_lowercase() == word);
        if has("each") || has("apiece") {
            self.each = Some(without(&["each", "apiece", "for"]));
        } else if has("edge") || has("edges") {
            self.bare = has("bare") || has("unpainted");
            let depth = without(&["edge", "edges", "bare", "unpainted", "painted", "of", "a"]);
            if has("no") || has("without") {
                self.depth = Some("0".to_owned());
            } else if starts_with_number(&depth) {
                self.depth = Some(depth);
            }
        } else if has("deep") || has("depth") || has("thick") {
            self.depth = Some(without(&["deep", "depth", "thick", "of"]));
        } else if piece.to_lowercase() == "flat" {
            self.depth = Some("0".to_owned());
        } else if self.sizes.is_empty() {
            self.hear_face(&words, names);
        } else {
            let wrong = format!("\"{piece}\" is not understood here");
            return Err(Complaint::new(
                wrong,
                "say how deep it is and how many each: 1/2 in deep, 2 each",
            ));
        }
        Ok(())
    }

    /// Takes in outline and size.
    fn hear_face(&mut self, words: &[&str], names: &'o [OutlineName]) {
        let mut size = String::new();
        for (at, word) in words.iter().enumerate() {
            let lower = word.to_lowercase();
            let known = |(name, others, ..): &&(&str, &[&str], &str, u32)| {
                let here = names.iter().any(|known| known.outline == *name && known.name == lower);
                *name == lower || others.contains(&lower.as_str()) || here
            };
            match lower.as_str() {
                "sides" | "sided" => self.sides = Some(std::mem::take(&mut size)),
                "side" => self.across = Some("side"),
                "flats" => self.across = Some("across flats"),
                "corners" => self.across = Some("across corners"),
                "across" => {}
                "x" | "by" | "×" | "*" => {
                    self.sizes.push(std::mem::take(&mut size));
                }
                _ if FILLERS.contains(&lower.as_str()) => {}
                _ => match OUTLINES.iter().find(known) {
                    Some((name, _, shape, sides)) => self.outline = Some((name, shape, *sides)),
                    None => {
                        let mut parts = crossed(word).into_iter();
                        let first = parts.next().unwrap_or_default();
                        size = line(&format!("{size} {first}"));
                        for part in parts {
                            self.sizes.push(std::mem::replace(&mut size, part));
                        }
                    }
                },
            }
            let last = at + 1 == words.len();
            if last && !size.is_empty() {
                self.sizes.push(std::mem::take(&mut size));
            }
        }
    }

    /// What is painted on, and its sizes under their keys.
    fn face(&self) -> Result<Face<'o>, Complaint> {
        let sizes = self.sizes.as_slice();
        let (outline, shape, sides) = match (self.outline, sizes) {
            (Some(outline), _) => outline,
            (None, [_, _]) => ("rectangle", "rectangle", 4),
            (None, [size]) if starts_with_number(size) => {
                let right = format!("write square {size} or round {size}");
                return Err(Complaint::new("this may be square or round", right));
            }
            (None, _) => return Err(not_a_canvas()),
        };
        let keyed = match (shape, sizes) {
            ("rectangle", [side]) if outline == "square" => {
                vec![("width", side.clone()), ("height", side.clone())]
            }
            ("rectangle", [width, height]) if outline == "square" && width != height => {
                let right = format!("write rectangle {width} x {height}");
                return Err(Complaint::new("a square is as wide as it is high", right));
            }
            ("rectangle" | "oval", [width, height]) => {
                vec![("width", width.clone()), ("height", height.clone())]
            }
            ("rectangle" | "oval", [one]) => {
                let right = format!("width and height, as {outline} {one} x 12 in");
                return Err(Complaint::new("one of its two sizes is missing", right));
            }
            ("round", [diameter]) => vec![("diameter", diameter.clone())],
            ("round", [width, height]) if width == height => vec![("diameter", width.clone())],
            ("polygon", [size]) => {
                let sides = match &self.sides {
                    Some(sides) => sides.clone(),
                    None if sides > 0 => sides.to_string(),
                    None => {
                        let right = format!("for example polygon 7 sides, side {size}");
                        return Err(Complaint::new("how many sides has it?", right));
                    }
                };
                let odd = sides.trim().parse::<u32>().is_ok_and(|sides| sides % 2 == 1);
                let usual = if odd { "side" } else { "across flats" };
                vec![("sides", sides), (self.across.unwrap_or(usual), size.clone())]
            }
            _ => return Err(not_a_canvas()),
        };
        Ok(Face { outline, shape, sizes: keyed })
    }
}

fn not_a_canvas() -> Complaint {
    Complaint::new(
        "this is not understood as a canvas",
        "outline and size, then how deep and how many: square 10 x 10 in, 1/2 in deep, 2 each",
    )
}

/// `10x12` in its two parts; any other word as it is.
fn crossed(word: &str) -> Vec<String> {
    let number = |c: char| c.is_numeric() || matches!(c, '"' | '″' | '”');
    let parts: Vec<&str> = word.split(['x', 'X', '×', '*']).collect();
    let whole = parts.iter().all(|part| part.starts_with(char::is_numeric));
    let ends = parts.iter().rev().skip(1).all(|part| part.ends_with(number));
    if whole && ends {
        parts.into_iter().map(str::to_owned).collect()
    } else {
        vec![word.to_owned()]
    }
}

/// What stands after the number of a size.
fn unit_of(size: &str) -> String {
    let number = |c: char| c.is_numeric() || matches!(c, ' ' | '.' | ',' | '/' | '-' | '\u{2044}');
    size.trim_start_matches(number).to_owned()
}
