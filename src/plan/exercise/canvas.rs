use super::Hundredths;
use crate::quantity::UnitSystem;

/// A canvas of an exercise, in inches or centimetres. Its sizes are friendly, and each of its
/// measures is exact in the decimals that a worksheet asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct FriendlyCanvas {
    outline: FriendlyOutline,
    depth: Hundredths,
    face: Hundredths,
    way_round: Hundredths,
    edge: Hundredths,
    painted: Hundredths,
}

/// Outlines of exercises, in inches or centimetres.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FriendlyOutline {
    Rectangle {
        width: Hundredths,
        height: Hundredths,
    },
    Round {
        across: Hundredths,
    },
    /// `middle` is from the middle to a side, to a thousandth.
    Hexagon {
        side: Hundredths,
        middle: Hundredths,
    },
}

/// Kinds of outlines.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OutlineKind {
    Rectangle,
    Round,
    Hexagon,
}

/// Pi as it is taken in exercises; the sheets say so.
pub const FRIENDLY_PI: Hundredths = Hundredths::new(314);

/// From the middle of a hexagon to a side is 13/15 of a side: 0.86667, where the root of
/// three over two is 0.86603, nearer than a ruler reads.
const MIDDLE: (i64, i64) = (13, 15);

/// What friendly sizes are, in hundredths of the unit.
struct Sizes {
    decimals: u32,
    lengths: fn(i64) -> bool,
    longest: i64,
    depths: &'static [i64],
    diameters: fn(i64) -> bool,
    /// Steps of the side of a hexagon.
    side: i64,
    shortest_side: i64,
    longest_side: i64,
    shortest: i64,
}

/// Whole inches from 4 to 20, edges as canvases are sold (common practice, no source).
const US: Sizes = Sizes {
    decimals: 2,
    lengths: |inches| inches % 100 == 0,
    shortest: 400,
    longest: 2000,
    depths: &[0, 50, 75, 100, 150],
    diameters: |inches| inches % 200 == 0,
    side: 150,
    shortest_side: 300,
    longest_side: 1200,
};

/// Even centimetres and fives from 10 to 50.
const METRIC: Sizes = Sizes {
    decimals: 1,
    lengths: |cm| cm % 200 == 0 || cm % 500 == 0,
    shortest: 1000,
    longest: 5000,
    depths: &[0, 100, 150, 200, 300, 400],
    diameters: |cm| cm % 1000 == 0,
    side: 300,
    shortest_side: 600,
    longest_side: 3000,
};

/// Decimals that sums are asked to in these units, as on the worksheet.
pub fn decimals(units: UnitSystem) -> u32 {
    sizes(units).decimals
}

fn sizes(units: UnitSystem) -> &'static Sizes {
    match units {
        UnitSystem::Us => &US,
        UnitSystem::Metric => &METRIC,
    }
}

/// All friendly canvases.
pub(super) fn all(units: UnitSystem) -> Vec<FriendlyCanvas> {
    let sizes = sizes(units);
    let lengths = || (sizes.shortest..=sizes.longest).filter(|length| (sizes.lengths)(*length));
    // Wider ones look like rulers.
    let rectangles = lengths().flat_map(|width| {
        let heights = lengths().filter(move |height| (width..=2 * width).contains(height));
        heights.map(move |height| FriendlyOutline::Rectangle {
            width: Hundredths::new(width),
            height: Hundredths::new(height),
        })
    });
    let across = (sizes.shortest..=sizes.longest).filter(|across| (sizes.diameters)(*across));
    let rounds = across.map(|across| FriendlyOutline::Round { across: Hundredths::new(across) });
    let sides = (sizes.shortest_side..=sizes.longest_side).filter(|side| side % sizes.side == 0);
    let hexagons = sides.map(|side| FriendlyOutline::Hexagon {
        side: Hundredths::new(side),
        middle: Hundredths::new(side * MIDDLE.0 / MIDDLE.1),
    });
    rectangles
        .chain(rounds)
        .chain(hexagons)
        .flat_map(|outline| sizes.depths.iter().map(move |depth| (outline, *depth)))
        .filter_map(|(outline, depth)| {
            FriendlyCanvas::new(outline, Hundredths::new(depth), sizes.decimals)
        })
        .collect()
}

impl FriendlyCanvas {
    fn new(outline: FriendlyOutline, depth: Hundredths, decimals: u32) -> Option<Self> {
        let (face, way_round) = outline.measures()?;
        let edge = way_round.times(depth)?;
        let painted = face.plus(edge)?;
        let friendly =
            [face, way_round, edge, painted].iter().all(|figure| figure.has_at_most(decimals));
        friendly.then_some(Self { outline, depth, face, way_round, edge, painted })
    }

    pub fn outline(&self) -> FriendlyOutline {
        self.outline
    }

    /// Of the painted edge; zero for a flat panel.
    pub fn depth(&self) -> Hundredths {
        self.depth
    }

    pub fn face(&self) -> Hundredths {
        self.face
    }

    pub fn way_round(&self) -> Hundredths {
        self.way_round
    }

    /// Way round x depth.
    pub fn edge(&self) -> Hundredths {
        self.edge
    }

    /// Face + edge.
    pub fn painted(&self) -> Hundredths {
        self.painted
    }
}

impl FriendlyOutline {
    pub fn kind(&self) -> OutlineKind {
        match self {
            Self::Rectangle { .. } => OutlineKind::Rectangle,
            Self::Round { .. } => OutlineKind::Round,
            Self::Hexagon { .. } => OutlineKind::Hexagon,
        }
    }

    /// Face and way round, by the formulas of the worksheet.
    fn measures(&self) -> Option<(Hundredths, Hundredths)> {
        let two = Hundredths::whole(2);
        match *self {
            Self::Rectangle { width, height } => {
                Some((width.times(height)?, two.times(width.plus(height)?)?))
            }
            Self::Round { across } => {
                let half = across.over(two)?;
                let face = FRIENDLY_PI.times(half)?.times(half)?;
                Some((face, FRIENDLY_PI.times(across)?))
            }
            Self::Hexagon { side, middle } => {
                let way_round = Hundredths::whole(6).times(side)?;
                Some((way_round.times(middle)?.over(two)?, way_round))
            }
        }
    }
}
