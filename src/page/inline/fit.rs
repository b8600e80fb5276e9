//! Total fit: D. E. Knuth and M. F. Plass, "Breaking paragraphs into lines",
//! Software: Practice and Experience 11, 1119-1184 (1981). The breaks of a whole
//! paragraph are chosen so that the sum of the demerits of its lines is least.

use super::Alignment;
use super::points::{Breaks, Point, PointKind};

/// Each line costs this before its badness, so that fewer lines win a tie (as in
/// the paper).
const LINE: f64 = 10.0;

/// Two divided words in a row; half of it for one at the last line but one.
const TWO_DIVIDED: f64 = 50_000.0;

/// A loose line beside a tight one: a difference of more than one class.
const UNEVEN: f64 = 5_000.0;

/// A last line of less than this part of the measure looks like an accident.
const SHORT_LAST: f32 = 0.16;
const SHORT_LAST_COST: f64 = 6_000.0;

/// The largest ratio of a justified line while no word is divided: gaps up to
/// 0.47 em.
const TOLERANCE_WHOLE: f32 = 1.7;

/// And while words are: gaps up to half an em.
const TOLERANCE_DIVIDED: f32 = 1.9;

/// The largest ratio of a ragged line while no word is divided.
const TOLERANCE_RAGGED: f32 = 2.2;

/// How far from the edge a ragged line may end at a ratio of one: part of the
/// measure, and at least and at most so many em.
const RAG: (f32, f32, f32) = (0.15, 2.0, 4.0);

/// Rounding of sums of widths.
const EPSILON: f32 = 0.01;

/// Badness of a line: 100 |r|^3, rounded (Knuth and Plass 1981, p. 1128).
pub(super) fn badness(ratio: f32) -> f64 {
    (100.0 * f64::from(ratio.abs()).powi(3)).round().min(1e6)
}

/// A line of the solution: between two points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fitted {
    pub from: usize,
    pub to: usize,
    /// How far its spaces give.
    pub ratio: f32,
}

/// What lines are fitted to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fitting {
    measure: f32,
    alignment: Alignment,
    rag: f32,
}

#[derive(Debug, Clone, Copy)]
struct Node {
    point: usize,
    class: usize,
    demerits: f64,
    line: Option<Fitted>,
    previous: usize,
}

impl Fitting {
    pub(super) fn new(measure: f32, alignment: Alignment, size: f32) -> Self {
        let (part, least, most) = RAG;
        Self { measure, alignment, rag: (measure * part).clamp(least * size, most * size) }
    }

    pub(super) fn elastic(&self) -> bool {
        self.alignment == Alignment::Justified
    }

    /// The lines of least demerits, or none when some line would be too long, or
    /// looser than the breaks that were tried allow.
    pub(super) fn solve(&self, points: &[Point], breaks: Breaks) -> Option<Vec<Fitted>> {
        let tolerance = match (breaks, self.alignment) {
            (Breaks::Anywhere | Breaks::Sparing | Breaks::Torn, _) => f32::INFINITY,
            (Breaks::Whole, Alignment::Justified) => TOLERANCE_WHOLE,
            (Breaks::Divided, Alignment::Justified) => TOLERANCE_DIVIDED,
            (Breaks::Whole, _) => TOLERANCE_RAGGED,
            (Breaks::Divided, _) => f32::INFINITY,
        };
        let start = Node { point: 0, class: 1, demerits: 0.0, line: None, previous: 0 };
        let mut nodes = vec![start];
        let mut active = vec![0];
        for (index, point) in points.iter().enumerate().skip(1) {
            let mut best: [Option<Node>; 4] = [None; 4];
            let mut overlong: Option<Node> = None;
            active.retain(|&previous| {
                let node: &Node = &nodes[previous];
                let ratio = self.ratio(&points[node.point], point);
                let line = Some(Fitted { from: node.point, to: index, ratio: ratio.max(-1.0) });
                if ratio < -1.0 {
                    let demerits = node.demerits + 1e9;
                    let made = Node { point: index, class: 0, demerits, line, previous };
                    keep(&mut overlong, made);
                    return false;
                }
                if ratio <= tolerance {
                    let class = class(ratio);
                    let demerits = node.demerits + self.demerits(node, points, index, ratio);
                    let made = Node { point: index, class, demerits, line, previous };
                    if let Some(slot) = best.get_mut(class) {
                        keep(slot, made);
                    }
                }
                !point.is_forced()
            });
            if active.is_empty() && best.iter().all(Option::is_none) {
                if !breaks.is_last() {
                    return None;
                }
                best = [overlong, None, None, None];
            }
            for node in best.into_iter().flatten() {
                nodes.push(node);
                active.push(nodes.len() - 1);
            }
        }
        let mut at = active.into_iter().min_by(|&a, &b| {
            let (a, b): (&Node, &Node) = (&nodes[a], &nodes[b]);
            a.demerits.total_cmp(&b.demerits)
        })?;
        let mut lines = Vec::new();
        while let Some(line) = nodes[at].line {
            lines.push(line);
            at = nodes[at].previous;
        }
        lines.reverse();
        Some(lines)
    }

    /// How far the spaces between two points must give, in parts of their stretch
    /// or shrink; below -1 when the line is too long.
    fn ratio(&self, from: &Point, to: &Point) -> f32 {
        let width = to.end.width - from.start.width + to.hyphen;
        let spare = self.measure - width;
        if spare < -EPSILON {
            let shrink = to.end.shrink - from.start.shrink;
            return if shrink > 0.0 { spare / shrink } else { f32::NEG_INFINITY };
        }
        if to.is_forced() {
            return 0.0;
        }
        let stretch = match self.alignment {
            Alignment::Justified => to.end.stretch - from.start.stretch,
            Alignment::Left | Alignment::Centre | Alignment::Right => self.rag,
        };
        if stretch > 0.0 { spare.max(0.0) / stretch } else { 1e3 }
    }

    fn demerits(&self, node: &Node, points: &[Point], index: usize, ratio: f32) -> f64 {
        let point = &points[index];
        let before = &points[node.point];
        let divided_before = matches!(before.kind, PointKind::Divided(_));
        let penalty = match point.kind {
            PointKind::Open(cost) | PointKind::Divided(cost) => f64::from(cost),
            PointKind::Forced => 0.0,
        };
        let mut demerits = (LINE + badness(ratio)).powi(2) + penalty.powi(2);
        if divided_before && matches!(point.kind, PointKind::Divided(_)) {
            demerits += TWO_DIVIDED;
        }
        if class(ratio).abs_diff(node.class) > 1 && node.line.is_some() {
            demerits += UNEVEN;
        }
        if point.is_forced() && node.line.is_some() {
            let width = point.end.width - before.start.width;
            if width < SHORT_LAST * self.measure {
                demerits += SHORT_LAST_COST;
            }
            if divided_before {
                demerits += TWO_DIVIDED / 2.0;
            }
        }
        demerits
    }
}

/// Tight, decent, loose, very loose (Knuth and Plass 1981, p. 1155).
fn class(ratio: f32) -> usize {
    match ratio {
        r if r < -0.5 => 0,
        r if r <= 0.5 => 1,
        r if r <= 1.0 => 2,
        _ => 3,
    }
}

fn keep(slot: &mut Option<Node>, node: Node) {
    if slot.is_none_or(|kept| node.demerits < kept.demerits) {
        *slot = Some(node);
    }
}

#[cfg(test)]
mod tests {
    use super::super::points::{Place, Totals};
    use super::*;

    #[test]
    fn badness_is_that_of_the_paper() {
        // Knuth and Plass (1981): 100 |r|^3, rounded.
        for (ratio, expected) in
            [(0.5, 13.0), (1.0, 100.0), (1.5, 338.0), (2.0, 800.0), (-1.0, 100.0)]
        {
            assert_eq!(badness(ratio), expected);
        }
    }

    /// Points after words of some widths, spaces of 10 that give 5 and 3.
    fn points(words: &[f32]) -> Vec<Point> {
        let mut at = Totals::default();
        let place = |piece| Place { piece, glyph: 0 };
        let point = |piece, end, start, kind| {
            let (until, from) = (place(piece), place(piece));
            Point { until, from, end, start, hyphen: 0.0, kind }
        };
        let mut points = vec![point(0, at, at, PointKind::Forced)];
        for (index, width) in words.iter().enumerate() {
            at.width += width;
            let end = at;
            let last = index + 1 == words.len();
            if !last {
                at.width += 10.0;
                at.stretch += 5.0;
                at.shrink += 3.0;
            }
            let kind = if last { PointKind::Forced } else { PointKind::Open(0.0) };
            points.push(point(index + 1, end, at, kind));
        }
        points
    }

    /// Sum of the demerits of lines that end at some points.
    fn cost(fitting: &Fitting, points: &[Point], ends: &[usize]) -> f64 {
        let (mut from, mut class_before, mut line) = (0, 1, None);
        let mut sum = 0.0;
        for &end in ends {
            let node = Node { point: from, class: class_before, demerits: 0.0, line, previous: 0 };
            let ratio = fitting.ratio(&points[from], &points[end]);
            assert!(ratio >= -1.0, "too long a line");
            sum += fitting.demerits(&node, points, end, ratio);
            line = Some(Fitted { from, to: end, ratio });
            class_before = class(ratio);
            from = end;
        }
        sum
    }

    /// Ends of lines that each take all words that fit at their natural width.
    fn first_fit(points: &[Point], measure: f32) -> Vec<usize> {
        let (mut from, mut ends) = (0, Vec::new());
        for index in 1..points.len() {
            if points[index].end.width - points[from].start.width > measure {
                from = index - 1;
                ends.push(from);
            }
        }
        ends.push(points.len() - 1);
        ends
    }

    #[test]
    fn no_way_to_break_costs_less_than_the_one_found() {
        let words: Vec<f32> = (0_u32..14).map(|i| 18.0 + ((i * 29) % 47) as f32).collect();
        let points = points(&words);
        let fitting = Fitting::new(150.0, Alignment::Justified, 10.0);
        let lines = fitting.solve(&points, Breaks::Anywhere).unwrap_or_default();
        let ends: Vec<usize> = lines.iter().map(|line| line.to).collect();
        let found = cost(&fitting, &points, &ends);
        assert!(found <= cost(&fitting, &points, &first_fit(&points, 150.0)));
        // Every way there is: 13 places, each a line's end or not.
        for ways in 0_u32..1 << 13 {
            let mut ends: Vec<usize> = (1..14).filter(|i| ways >> (i - 1) & 1 == 1).collect();
            ends.push(14);
            let mut from = 0;
            let short = ends.iter().all(|&end| {
                let fits = fitting.ratio(&points[from], &points[end]) >= -1.0;
                from = end;
                fits
            });
            if short {
                assert!(found <= cost(&fitting, &points, &ends) + 1e-6, "{ends:?}");
            }
        }
    }
}
