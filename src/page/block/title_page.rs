use crate::handout::Picture;
use crate::ink::Face;
use crate::page::desk::{Column, Desk, Setting};
use crate::page::galley::Galley;
use crate::page::inline::Look;
use crate::page::strip::{Joint, Snap, Strip, height_of};
use crate::page::style::Size;
use crate::page::{Mark, Role, TagKind, draw};

use super::{Joints, figure, text_strips};

/// Part of the page's height that the picture may take.
const PICTURE: f32 = 0.52;

/// And this it has, also where the words would leave less.
const LEAST_PICTURE: f32 = 0.2;

/// Between the title and the lines at the foot at least, in grid steps.
const LEAST_ROOM: f32 = 3.5;

/// What stands on a title page.
pub(super) struct TitlePage<'a> {
    pub title: &'a str,
    pub subtitle: &'a str,
    pub lines: &'a [String],
    pub picture: Option<&'a Picture>,
}

/// A page of its own: picture, title, subtitle, and at its foot the other lines.
pub(super) fn set<'a>(
    desk: &mut Desk<'a, '_>,
    page: &TitlePage<'a>,
    column: Column,
    galley: &mut Galley<'a>,
) {
    let (scale, palette) = (desk.style.scale.clone(), desk.style.palette);
    let (grid, height) = (desk.style.grid(), desk.style.frame.height);
    let column = Column { width: desk.style.frame.full_width, ..column };
    let mut strips = Vec::new();
    let figure = page.picture.map(|picture| (picture, desk.tree.figure(&picture.alt, column.tag)));
    let rule = draw::rectangle(column.x, 0.0, 60.0, 4.0, Some(palette.accent), None);
    let marks = vec![Mark { shape: rule, role: Role::Artifact }];
    strips.push(Strip { height: 4.0, gap: 5.0 * grid, marks, ..Strip::default() });
    let mut words = |desk: &mut Desk<'a, '_>, text: &'a str, size: Size, face, colour, gap| {
        let tag = desk.tag(TagKind::Paragraph, column.tag);
        let look = Look::new(face, size.size, colour, tag);
        let lines = desk.words(text, look, Setting::ragged(column.width));
        strips.extend(text_strips(lines, column.x, size, gap, Joints::Whole));
    };
    words(desk, page.title, scale.display, Face::Bold, palette.ink, 2.0 * grid);
    words(desk, page.subtitle, scale.title, Face::Regular, palette.accent, grid);
    let upper = strips.len();
    for line in page.lines {
        let mut words = |text: &'a str| {
            let tag = desk.tag(TagKind::Paragraph, column.tag);
            let look = Look::new(Face::Regular, scale.body.size, palette.quiet, tag);
            let lines = desk.words(text, look, Setting::ragged(column.width));
            strips.extend(text_strips(lines, column.x, scale.body, 0.0, Joints::Whole));
        };
        words(line);
    }
    let mut spare = height - height_of(&strips) - 0.5;
    if let Some((picture, tag)) = figure {
        spare -= strips.first().map_or(0.0, |under| under.gap);
        // The picture takes what the words leave; they stand on the same page.
        let most = (height * PICTURE).min(spare - LEAST_ROOM * grid).max(height * LEAST_PICTURE);
        let picture = figure::picture(desk, picture, column, most, tag);
        spare -= picture.height;
        strips.insert(0, picture);
    }
    let at = upper + usize::from(figure.is_some());
    if let Some(first) = strips.get_mut(at) {
        first.gap += (spare - grid).max(2.0 * grid);
    }
    galley.page();
    for mut strip in strips {
        strip.snap = Snap::Free;
        if strip.joint == Joint::Glued {
            strip.joint = Joint::Open(500.0);
        }
        galley.push(strip);
    }
    galley.page();
}
