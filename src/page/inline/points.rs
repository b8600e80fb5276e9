use super::dictionary::Dictionary;
use super::piece::{Give, Paragraph, Piece};

/// How far a space of justified text gives at a ratio of one: half its width wider,
/// a third narrower. At Lato's space of 0.256 em that is 0.17 to 0.38 em; a gap of
/// half an em is reached at a ratio of 1.9.
const STRETCH: f32 = 0.5;
const SHRINK: f32 = 1.0 / 3.0;

/// Dividing a word by the patterns, and where its writer allowed it.
/// It weighs like a badness of 290, a ratio of 1.4: a fifth of the lines that would
/// end in a hyphen at the 50 of the paper do so then, and no gap is wider for it.
const DIVIDE: f32 = 300.0;
const DIVIDE_AT_HINGE: f32 = 150.0;

/// Breaking a word anywhere, for want of any other place.
const TEAR: f32 = 3000.0;

/// Which breaks are tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Breaks {
    /// At spaces and marked places.
    Whole,
    /// Also within words, by the patterns.
    Divided,
    /// Also between any letters of a word that is wider than the measure.
    Anywhere,
    /// Within words that are wider than the measure only: by the patterns, and
    /// between any letters.
    Sparing,
    /// The same without the patterns.
    Torn,
}

impl Breaks {
    /// Whether every other place has been tried.
    pub(super) fn is_last(self) -> bool {
        matches!(self, Self::Anywhere | Self::Sparing | Self::Torn)
    }

    fn divides(self, wide: bool) -> bool {
        match self {
            Self::Whole | Self::Torn => false,
            Self::Sparing => wide,
            Self::Divided | Self::Anywhere => true,
        }
    }
}

/// A place in a paragraph: before a glyph of a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Place {
    pub piece: usize,
    pub glyph: usize,
}

/// Sums from the start of the paragraph, in points.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Totals {
    pub width: f32,
    pub stretch: f32,
    pub shrink: f32,
}

/// A place where a line may end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Point {
    /// The line's matter ends before this.
    pub until: Place,
    /// The next line's matter starts here.
    pub from: Place,
    pub end: Totals,
    pub start: Totals,
    /// Width of the hyphen that the break adds.
    pub hyphen: f32,
    pub kind: PointKind,
}

/// What ends a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum PointKind {
    /// A space or seam, with its penalty.
    Open(f32),
    /// The division of a word, with its penalty.
    Divided(f32),
    /// The line must end.
    Forced,
}

impl Point {
    pub(super) fn is_forced(&self) -> bool {
        self.kind == PointKind::Forced
    }
}

/// All places where a line may end, the paragraph's start first and its end last.
/// Spaces give only in `elastic` text.
pub(super) fn find(
    paragraph: &Paragraph<'_>,
    breaks: Breaks,
    measure: f32,
    elastic: bool,
    dictionary: &Dictionary,
) -> Vec<Point> {
    let mut finder = Finder {
        points: Vec::with_capacity(paragraph.pieces.len() / 2 + 2),
        at: Totals::default(),
        elastic,
    };
    let first = Place { piece: 0, glyph: 0 };
    finder.close(first, first, 0.0, PointKind::Forced);
    for (index, piece) in paragraph.pieces.iter().enumerate() {
        let here = Place { piece: index, glyph: 0 };
        let after = Place { piece: index + 1, glyph: 0 };
        match piece {
            Piece::Word { text, shaped, look } => {
                let size = paragraph.look(*look).size;
                let wide = shaped.width * size > measure;
                let known = breaks.divides(wide).then(|| dictionary.divisions(text));
                let offsets = known.as_deref().unwrap_or_default().iter().copied();
                let hyphen = paragraph.hyphens.get(*look).map_or(0.0, |h| h.width * size);
                let tear = wide && breaks.is_last();
                let mut offsets = offsets.peekable();
                if offsets.peek().is_some() || tear {
                    let start = finder.at;
                    for (glyph, shape) in shaped.glyphs.iter().enumerate() {
                        let place = Place { piece: index, glyph };
                        while offsets.next_if(|&o| o < shape.start()).is_some() {}
                        if offsets.next_if_eq(&shape.start()).is_some() {
                            finder.close(place, place, hyphen, PointKind::Divided(DIVIDE));
                        } else if tear && glyph > 0 && !shape.text.is_empty() {
                            finder.close(place, place, 0.0, PointKind::Open(TEAR));
                        }
                        finder.at.width += shape.advance * size;
                    }
                    finder.at = start;
                }
                finder.at.width += shaped.width * size;
            }
            Piece::Space { width, .. } => {
                let end = finder.at;
                finder.space(*width, Give::Elastic);
                let kind = PointKind::Open(0.0);
                let start = finder.at;
                finder.points.push(Point {
                    until: here,
                    from: after,
                    end,
                    start,
                    hyphen: 0.0,
                    kind,
                });
            }
            Piece::Tie { width, give, .. } => finder.space(*width, *give),
            Piece::Hinge { look } => {
                let size = paragraph.look(*look).size;
                let hyphen = paragraph.hyphens.get(*look).map_or(0.0, |h| h.width * size);
                finder.close(after, after, hyphen, PointKind::Divided(DIVIDE_AT_HINGE));
            }
            Piece::Anchor(_) => {}
            Piece::Seam { cost } => finder.close(after, after, 0.0, PointKind::Open(*cost)),
            Piece::Object { width, .. } => finder.at.width += width.min(measure),
            Piece::Break => finder.close(here, after, 0.0, PointKind::Forced),
        }
    }
    let last = Place { piece: paragraph.pieces.len(), glyph: 0 };
    finder.close(last, last, 0.0, PointKind::Forced);
    finder.points
}

struct Finder {
    points: Vec<Point>,
    at: Totals,
    elastic: bool,
}

impl Finder {
    fn close(&mut self, until: Place, from: Place, hyphen: f32, kind: PointKind) {
        self.points.push(Point { until, from, end: self.at, start: self.at, hyphen, kind });
    }

    fn space(&mut self, width: f32, give: Give) {
        self.at.width += width;
        if self.elastic && give == Give::Elastic {
            self.at.stretch += width * STRETCH;
            self.at.shrink += width * SHRINK;
        }
    }
}

/// How much a space of a width gives at a ratio.
pub(super) fn given(width: f32, ratio: f32) -> f32 {
    width * ratio * if ratio < 0.0 { SHRINK } else { STRETCH }
}
