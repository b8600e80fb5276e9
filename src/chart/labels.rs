//! Labels that keep clear of each other.

use crate::ink::{Point, Rect};

/// Something along a line that would like to stand with its centre at some place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Wish {
    pub centre: f32,
    pub size: f32,
}

/// Centres near to what is wished for, with `gap` between neighbours and all between
/// `low` and `high`; none if they do not fit. Groups that would overlap move apart
/// around their common middle.
pub(super) fn spread(wishes: &[Wish], gap: f32, low: f32, high: f32) -> Option<Vec<f32>> {
    struct Group {
        members: Vec<usize>,
        /// Sum over members of the start that each wishes for the group.
        wished: f32,
        size: f32,
    }
    let room: f32 = wishes.iter().map(|wish| wish.size + gap).sum::<f32>() - gap;
    if room > high - low + 0.01 {
        return None;
    }
    let mut order: Vec<usize> = (0..wishes.len()).collect();
    let centre = |index: &usize| wishes.get(*index).map_or(0.0, |wish| wish.centre);
    order.sort_by(|a, b| centre(a).total_cmp(&centre(b)));
    let start = |group: &Group| {
        let wished = group.wished / group.members.len().max(1) as f32;
        wished.min(high - group.size).max(low)
    };
    let mut groups: Vec<Group> = Vec::new();
    for index in order {
        let Some(wish) = wishes.get(index) else { continue };
        let mut group =
            Group { members: vec![index], wished: wish.centre - wish.size / 2.0, size: wish.size };
        while let Some(before) = groups.pop_if(|b| start(b) + b.size + gap > start(&group)) {
            let shift = before.size + gap;
            group = Group {
                wished: before.wished + group.wished - shift * group.members.len() as f32,
                members: before.members.into_iter().chain(group.members).collect(),
                size: shift + group.size,
            };
        }
        groups.push(group);
    }
    let mut centres = vec![0.0; wishes.len()];
    for group in &groups {
        let mut at = start(group);
        for &member in &group.members {
            if let (Some(centre), Some(wish)) = (centres.get_mut(member), wishes.get(member)) {
                *centre = at + wish.size / 2.0;
                at += wish.size + gap;
            }
        }
    }
    Some(centres)
}

/// Finds room for labels beside points of a field.
pub(super) struct Field {
    pub area: Rect,
    /// Where no label may lie.
    pub taken: Vec<Rect>,
    /// What a label had better not cross, with how much it would hurt.
    pub lines: Vec<(Point, Point, f32)>,
}

impl Field {
    /// A place for a label of some size beside a point, and remembers it. The nearest
    /// place that crosses fewest lines is taken.
    pub fn place(&mut self, point: Point, width: f32, height: f32) -> Option<Rect> {
        let mut best: Option<(f32, Rect)> = None;
        for ring in 0..40 {
            let reach = 4.0 + 6.0 * ring as f32;
            for (index, (dx, dy)) in DIRECTIONS.into_iter().enumerate() {
                let middle = Point {
                    x: point.x + dx * (reach + width / 2.0),
                    y: point.y + dy * (reach + height / 2.0),
                };
                let rect =
                    Rect { x: middle.x - width / 2.0, y: middle.y - height / 2.0, width, height };
                if !within(rect, self.area) || self.taken.iter().any(|t| overlap(rect, *t)) {
                    continue;
                }
                let crossed = self.lines.iter().filter(|(a, b, _)| crosses(*a, *b, rect));
                let hurt: f32 = crossed.map(|(_, _, hurt)| hurt).sum();
                let cost = reach + hurt + index as f32 * 0.5;
                if best.is_none_or(|(least, _)| cost < least) {
                    best = Some((cost, rect));
                }
            }
        }
        let (_, rect) = best?;
        self.taken.push(rect);
        Some(rect)
    }
}

/// Sides of a point, the most pleasant first: above left is clear of a rising line.
const DIRECTIONS: [(f32, f32); 8] = [
    (-1.0, -1.0),
    (1.0, 1.0),
    (0.0, -1.0),
    (-1.0, 0.0),
    (1.0, 0.0),
    (0.0, 1.0),
    (1.0, -1.0),
    (-1.0, 1.0),
];

pub(super) fn overlap(a: Rect, b: Rect) -> bool {
    a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

fn within(a: Rect, b: Rect) -> bool {
    a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height
}

/// Whether a line from `a` to `b` touches a rectangle (Liang and Barsky 1984).
fn crosses(a: Point, b: Point, rect: Rect) -> bool {
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let mut from = 0.0_f32;
    let mut to = 1.0_f32;
    let edges = [
        (-dx, a.x - rect.x),
        (dx, rect.x + rect.width - a.x),
        (-dy, a.y - rect.y),
        (dy, rect.y + rect.height - a.y),
    ];
    for (slope, distance) in edges {
        if slope == 0.0 {
            if distance < 0.0 {
                return false;
            }
        } else if slope < 0.0 {
            from = from.max(distance / slope);
        } else {
            to = to.min(distance / slope);
        }
    }
    from <= to
}

#[cfg(test)]
mod tests {
    use super::{Wish, spread};

    fn wish(centre: f32) -> Wish {
        Wish { centre, size: 10.0 }
    }

    #[test]
    fn what_has_room_stays_where_it_is() {
        assert_eq!(spread(&[wish(50.0), wish(20.0)], 1.0, 0.0, 100.0), Some(vec![50.0, 20.0]));
    }

    #[test]
    fn neighbours_move_apart_around_their_middle() {
        let found = spread(&[wish(50.0), wish(50.0), wish(51.0)], 1.0, 0.0, 100.0);
        let middle = (50.0 + 50.0 + 51.0) / 3.0;
        assert_eq!(found, Some(vec![middle - 11.0, middle, middle + 11.0]));
    }

    #[test]
    fn the_ends_hold() {
        let found = spread(&[wish(2.0), wish(3.0), wish(99.0)], 1.0, 0.0, 100.0);
        assert_eq!(found, Some(vec![5.0, 16.0, 95.0]));
        assert_eq!(spread(&[wish(2.0), wish(3.0)], 1.0, 0.0, 20.0), None);
    }
}
