use super::{Coverage, FriendlyCanvas, FriendlyOutline, Hundredths};

/// A sum for one student. Each of its results is exact in the decimals that a worksheet asks
/// for; grams are whole, rounded up as on the scale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Exercise {
    canvas: FriendlyCanvas,
    task: Task,
}

/// What is asked of a canvas.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Task {
    /// Face, edge, painted area.
    Area,
    /// Painted area, and the paint for it.
    Paint { coverage: Coverage, paint: Hundredths },
    /// Painted area, paint, one colour of it, and what that weighs.
    Colour { coverage: Coverage, paint: Hundredths, colour: ColourTask },
    /// Back from paint to the area that it covers, and to the height of a flat panel of a
    /// given width: the exercise's canvas.
    Panel { coverage: Coverage, paint: Hundredths, width: Hundredths, height: Hundredths },
}

/// One colour of a canvas.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColourTask {
    pub colour: String,
    /// In percent.
    pub share: Hundredths,
    /// What a fluid ounce or a millilitre weighs, in grams.
    pub weight: Hundredths,
    /// Fluid ounces or millilitres: paint x share.
    pub paint: Hundredths,
    /// Whole grams: paint of the colour x weight, rounded up.
    pub grams: Hundredths,
}

/// A colour takes so much at least: less cannot be weighed well. Fluid ounces, and
/// millilitres where a hundred of them are counted together.
const LEAST_OF_COLOUR: (Hundredths, Hundredths) = (Hundredths::new(20), Hundredths::whole(5));

impl Exercise {
    pub(super) fn area(canvas: FriendlyCanvas) -> Self {
        Self { canvas, task: Task::Area }
    }

    /// None where the paint is no friendly figure.
    pub(super) fn paint(
        canvas: FriendlyCanvas,
        coverage: &Coverage,
        decimals: u32,
    ) -> Option<Self> {
        let paint = paint(&canvas, coverage, decimals)?;
        Some(Self { canvas, task: Task::Paint { coverage: coverage.clone(), paint } })
    }

    /// None where the paint or the colour's part of it is no friendly figure, or too little.
    pub(super) fn colour(
        canvas: FriendlyCanvas,
        coverage: &Coverage,
        (colour, share, weight): (&str, Hundredths, Hundredths),
        decimals: u32,
    ) -> Option<Self> {
        let whole = paint(&canvas, coverage, decimals)?;
        let percent = whole.times(share)?;
        let part = percent.over(Hundredths::whole(100)).filter(|it| it.has_at_most(decimals))?;
        let one = Hundredths::whole(1);
        let least = if coverage.paint > one { LEAST_OF_COLOUR.1 } else { LEAST_OF_COLOUR.0 };
        if part < least {
            return None;
        }
        let grams = part.times(weight)?.rounded_up();
        let colour = ColourTask { colour: colour.to_owned(), share, weight, paint: part, grams };
        let coverage = coverage.clone();
        Some(Self { canvas, task: Task::Colour { coverage, paint: whole, colour } })
    }

    /// None where the canvas is no flat panel with corners, or its paint no friendly figure.
    pub(super) fn panel(
        canvas: FriendlyCanvas,
        coverage: &Coverage,
        decimals: u32,
    ) -> Option<Self> {
        let FriendlyOutline::Rectangle { width, height } = canvas.outline() else { return None };
        if canvas.depth() > Hundredths::ZERO {
            return None;
        }
        let paint = paint(&canvas, coverage, decimals)?;
        let coverage = coverage.clone();
        Some(Self { canvas, task: Task::Panel { coverage, paint, width, height } })
    }

    pub fn canvas(&self) -> &FriendlyCanvas {
        &self.canvas
    }

    pub fn task(&self) -> &Task {
        &self.task
    }

    /// The figure that the sum ends with.
    pub fn result(&self) -> Hundredths {
        match &self.task {
            Task::Area => self.canvas.painted(),
            Task::Paint { paint, .. } => *paint,
            Task::Colour { colour, .. } => colour.grams,
            Task::Panel { height, .. } => *height,
        }
    }
}

/// Painted area / area of the coverage x its paint.
fn paint(canvas: &FriendlyCanvas, coverage: &Coverage, decimals: u32) -> Option<Hundredths> {
    let paint = canvas.painted().times(coverage.paint)?.over(coverage.area)?;
    Some(paint).filter(|paint| paint.has_at_most(decimals))
}
