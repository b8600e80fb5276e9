//! Header and footer: artifacts on every page that is not a title page.

use super::inline::Findings;
use super::paginate::Placed;
use super::strip::{Header, Strip};
use super::style::{Size, Style};
use super::tree::Tree;
use super::{Mark, Page, Role, TagKind, draw};
use crate::handout::{Block, Document};
use crate::ink::{Colour, Face, Faces, Figures, Point, Shape};

/// The sections of a document: page of the first, from 0, and what stands at the top of
/// the others.
pub(super) struct Sections<'a>(Vec<(usize, Header<'a>)>);

impl<'a> Sections<'a> {
    /// From placed strips; what comes before the first section carries `header`.
    pub(super) fn of(strips: &[Strip<'a>], placed: &[Placed], header: Header<'a>) -> Self {
        let mut sections = vec![(0, header)];
        for (strip, at) in strips.iter().zip(placed) {
            if let Some(header) = strip.section {
                sections.retain(|(page, _)| *page < at.page);
                sections.push((at.page, header));
            }
        }
        Self(sections)
    }

    /// For every page of a document of so many: its number in its section, from 0, the
    /// number of pages there, and the header.
    fn pages(&self, count: usize) -> impl Iterator<Item = (usize, usize, Header<'a>)> {
        let ends = self.0.iter().skip(1).map(|&(page, _)| page).chain([count]);
        self.0.iter().zip(ends).flat_map(|(&(from, header), end)| {
            let pages = end.saturating_sub(from);
            (0..pages).map(move |page| (page, pages, header))
        })
    }
}

/// From the capitals of the footer to the rule over it, in points.
const OVER_FOOTER: f32 = 5.8;

/// A footer takes no more lines than this; what has no room there is cut short.
const MOST_LINES: usize = 3;

/// The lines of the footer, beside the number of the page; each but the last ends with the
/// space that parts its words from the next.
pub(super) struct Footer {
    lines: Vec<String>,
    leading: f32,
}

impl Footer {
    /// Breaks the footer of a document into lines.
    pub(super) fn of(document: &Document, style: &Style, faces: &Faces) -> Self {
        let Size { size, leading } = style.scale.small;
        let measure = |text: &str| faces.measure(Face::Regular, Figures::Proportional, size, text);
        let folio = document.folio.replace("{pages}", "000").replace("{page}", "000");
        let room = style.frame.full_width - measure(&folio) - 2.0 * size;
        let mut lines: Vec<String> = Vec::new();
        for word in document.footer.split_whitespace() {
            let full = lines.len() == MOST_LINES;
            match lines.last_mut() {
                Some(line) if full || measure(&format!("{line} {word}")) <= room => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.push(word.to_owned()),
            }
        }
        if let Some((_, others)) = lines.split_last_mut() {
            others.iter_mut().for_each(|line| line.push(' '));
        }
        Self { lines, leading }
    }

    /// Room that its lines take above the last, in points.
    pub(super) fn above(&self) -> f32 {
        self.lines.len().saturating_sub(1) as f32 * self.leading
    }
}

/// What stands at the head and the foot of pages, and the tree for what of it is read.
pub(super) struct Lines<'a, 'd> {
    pub sections: &'d Sections<'a>,
    pub footer: &'d Footer,
    pub tree: &'d mut Tree,
}

/// Adds header and footer to the pages of a document. All of it is decoration but the words of
/// the footer, which are read once: on the last page.
pub(super) fn add(
    pages: &mut [Page],
    document: &Document,
    Lines { sections, footer, tree }: Lines<'_, '_>,
    style: &Style,
    faces: &Faces,
    findings: &mut Findings,
) {
    let headers = sections.0.iter().flat_map(|(_, (left, right))| [left, right]);
    for text in headers.chain([&document.footer, &document.folio]) {
        findings.miss(&faces.shape(Face::Regular, Figures::Proportional, text).missing);
    }
    let count = pages.len();
    let note = (!footer.lines.is_empty()).then(|| tree.add(TagKind::Paragraph, Tree::ROOT));
    let bare = matches!(document.blocks.first(), Some(Block::TitlePage { .. }));
    let numbered = pages.iter_mut().zip(sections.pages(count)).skip(usize::from(bare));
    for (at, (page, (number, of, (left_text, right_text)))) in numbered.enumerate() {
        let frame = &style.frame;
        let (left, right) = (frame.left, frame.left + frame.full_width);
        let writer = Writer { style, faces, colour: style.palette.quiet };
        if number > 0 {
            let mut header = Vec::new();
            writer.write(
                &mut header,
                (left, frame.header),
                (left_text, Role::Artifact),
                right_text,
            );
            page.marks.splice(0..0, header);
        }
        let folio = document
            .folio
            .replace("{pages}", &of.to_string())
            .replace("{page}", &(number + 1).to_string());
        let top = frame.footer - footer.above();
        let rule_y = top - style.scale.small.size * 0.72 - OVER_FOOTER;
        let rule = draw::line((left, rule_y), (right, rule_y), style.palette.rule, 0.5);
        page.marks.push(Mark { shape: rule, role: Role::Artifact });
        let first = footer.lines.first().map_or("", String::as_str);
        let is_last = at + 1 + usize::from(bare) == count;
        let role = note.filter(|_| is_last).map_or(Role::Artifact, Role::Content);
        writer.write(&mut page.marks, (left, top), (first, role), &folio);
        for (index, line) in footer.lines.iter().enumerate().skip(1) {
            let y = top + footer.leading * index as f32;
            writer.write(&mut page.marks, (left, y), (line, role), "");
        }
    }
}

struct Writer<'d> {
    style: &'d Style,
    faces: &'d Faces,
    colour: Colour,
}

impl Writer<'_> {
    /// Two texts at both ends of a line; the left one is cut short where they
    /// would meet.
    fn write(
        &self,
        marks: &mut Vec<Mark>,
        (x, y): (f32, f32),
        (left, role): (&str, Role),
        right: &str,
    ) {
        let (size, width) = (self.style.scale.small.size, self.style.frame.full_width);
        let measure =
            |text: &str| self.faces.measure(Face::Regular, Figures::Proportional, size, text);
        let right = shortened(right, width, &measure);
        let right_width = measure(&right);
        let room = width - right_width - if right.is_empty() { 0.0 } else { 2.0 * size };
        let end = if left.ends_with(' ') { " " } else { "" };
        let left = shortened(left, room, &measure) + end;
        let ends = [(left, x, role), (right, x + width - right_width, Role::Artifact)];
        for (text, at, role) in ends {
            if !text.is_empty() {
                let origin = Point { x: at, y };
                let run = self.faces.run(Face::Regular, size, self.colour, origin, &text);
                marks.push(Mark { shape: Shape::Text(run), role });
            }
        }
    }
}

/// As many words of a text as fit, with an ellipsis where some do not.
fn shortened(text: &str, room: f32, measure: &impl Fn(&str) -> f32) -> String {
    let mut text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    if measure(&text) <= room {
        return text;
    }
    while let Some((at, _)) = text.char_indices().next_back() {
        text.truncate(at);
        let short = format!("{}…", text.trim_end());
        if measure(&short) <= room {
            return short;
        }
    }
    String::new()
}
