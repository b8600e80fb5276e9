use super::Formula;
use crate::plan::{Figure, FigureUnit, Step, StepKind};
use crate::quantity::show::rounded;

/// No figure gets more decimals than this; a pocket calculator shows eight digits.
const MOST_DECIMALS: u8 = 9;

/// A sum in the making: figures at full precision with the digits wanted for each, and
/// the steps that join them. A figure that one step gives and another starts from is
/// one figure, so it is printed alike in both.
#[derive(Default)]
pub(super) struct Draft {
    figures: Vec<Exact>,
    steps: Vec<Joint>,
}

/// A figure of a draft.
#[derive(Clone, Copy)]
pub(super) struct FigureId(usize);

struct Exact {
    value: f64,
    unit: FigureUnit,
    decimals: u8,
}

struct Joint {
    what: StepKind,
    formula: Formula,
    from: Vec<FigureId>,
    gives: FigureId,
}

impl Draft {
    /// A figure with `decimals` digits after the point, fewer when the rest are zeros. The
    /// same quantity twice is the same figure, printed alike wherever it stands.
    pub(super) fn figure(&mut self, value: f64, unit: FigureUnit, decimals: u8) -> FigureId {
        let is_same = |exact: &Exact| {
            let noise = value.abs() * 1e-12;
            exact.unit == unit && exact.decimals == decimals && (exact.value - value).abs() <= noise
        };
        let at = self.figures.iter().position(is_same).unwrap_or_else(|| {
            self.figures.push(Exact { value, unit, decimals });
            self.figures.len() - 1
        });
        FigureId(at)
    }

    /// A step; what it gives is a figure of the plan, not computed again here.
    pub(super) fn step(
        &mut self,
        what: StepKind,
        formula: Formula,
        from: impl Into<Vec<FigureId>>,
        gives: FigureId,
    ) {
        self.steps.push(Joint { what, formula, from: from.into(), gives });
    }

    /// The steps as printed. Digits are added, one at a time and where they tell most,
    /// until each sum of printed figures comes to the printed result.
    pub(super) fn finish(mut self) -> Vec<Step> {
        // Every round adds a digit to one figure, so this ends.
        let wanted: Vec<u8> = self.figures.iter().map(|figure| figure.decimals).collect();
        while let Some(figure) = self.too_coarse() {
            figure.decimals += 1;
        }
        self.shorten(&wanted);
        self.steps
            .iter()
            .map(|step| Step {
                what: step.what.clone(),
                formula: step.formula,
                from: step.from.iter().filter_map(|id| self.shown(*id)).collect(),
                gives: self.shown(step.gives).unwrap_or(NOTHING),
            })
            .collect()
    }

    /// Takes digits back that later ones made needless, of the longest figures first.
    fn shorten(&mut self, wanted: &[u8]) {
        let mut longest: Vec<usize> = (0..self.figures.len()).collect();
        longest.sort_by_key(|at| std::cmp::Reverse(self.figures.get(*at).map(|it| it.decimals)));
        for at in longest {
            let least = wanted.get(at).copied().unwrap_or(MOST_DECIMALS);
            while self.figures.get(at).is_some_and(|figure| figure.decimals > least) {
                self.change(at, |decimals| decimals - 1);
                if self.too_coarse().is_some() {
                    self.change(at, |decimals| decimals + 1);
                    break;
                }
            }
        }
    }

    fn change(&mut self, at: usize, decimals: impl Fn(u8) -> u8) {
        if let Some(figure) = self.figures.get_mut(at) {
            figure.decimals = decimals(figure.decimals);
        }
    }

    /// The figure that spoils the first sum that does not come out. A result near the middle
    /// between two figures gets a digit itself, since operands would need many to settle
    /// it; otherwise it is the operand that printing changes most.
    fn too_coarse(&mut self) -> Option<&mut Exact> {
        let wrong = self.steps.iter().filter(|step| !self.comes_out(step));
        let FigureId(at) = wrong.into_iter().find_map(|step| {
            let result = self.figures.get(step.gives.0)?;
            let (own, operands) = (self.coarsest(&[step.gives]), self.coarsest(&step.from));
            if result.is_near_a_half() { own.or(operands) } else { operands.or(own) }
        })?;
        self.figures.get_mut(at)
    }

    fn comes_out(&self, step: &Joint) -> bool {
        let shown: Vec<f64> =
            step.from.iter().filter_map(|id| self.shown(*id)).map(|figure| figure.shown).collect();
        match (step.formula.of(&shown), self.figures.get(step.gives.0)) {
            (Some(result), Some(figure)) => figure.in_full().agrees_with(result),
            // A formula that does not fit cannot be mended by digits.
            _ => true,
        }
    }

    fn coarsest(&self, ids: &[FigureId]) -> Option<FigureId> {
        ids.iter()
            .copied()
            .filter_map(|id| Some((id, self.figures.get(id.0)?)))
            .filter(|(_, exact)| exact.decimals < MOST_DECIMALS)
            .map(|(id, exact)| (id, exact.change_by_printing()))
            .filter(|(_, change)| *change > 1e-12)
            .max_by(|(_, one), (_, other)| one.total_cmp(other))
            .map(|(id, _)| id)
    }

    fn shown(&self, FigureId(at): FigureId) -> Option<Figure> {
        self.figures.get(at).map(Exact::shown)
    }
}

const NOTHING: Figure = Figure { shown: 0.0, decimals: 0, unit: FigureUnit::None };

impl Exact {
    /// With all of its digits, zeros too.
    fn in_full(&self) -> Figure {
        let shown = rounded(self.value, usize::from(self.decimals));
        Figure { shown, decimals: self.decimals, unit: self.unit }
    }

    /// Without zeros at the end.
    fn shown(&self) -> Figure {
        let shown = rounded(self.value, usize::from(self.decimals));
        let decimals = (0..self.decimals)
            .find(|fewer| {
                (rounded(shown, usize::from(*fewer)) - shown).abs() < 1e-12 * shown.abs().max(1.0)
            })
            .unwrap_or(self.decimals);
        Figure { shown, decimals, unit: self.unit }
    }

    /// Whether the value lies within a five-hundredth of a unit of the middle between two figures.
    fn is_near_a_half(&self) -> bool {
        let scaled = self.value * 10_f64.powi(i32::from(self.decimals));
        (scaled - scaled.floor() - 0.5).abs() < 0.002
    }

    /// Relative to the figure.
    fn change_by_printing(&self) -> f64 {
        let change = (rounded(self.value, usize::from(self.decimals)) - self.value).abs();
        if self.value == 0.0 { change } else { change / self.value.abs() }
    }
}
