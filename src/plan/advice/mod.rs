//! What a good colleague would say of a plan: that it can be done, but may not go well.
//!
//! In: a plan. Out: [`Warning`]s, each with its figures and the keys of the value that it is
//! about. A lesson may accept one by its name, with a reason. Nothing here changes a plan, and
//! nothing is said that the teacher could not do something about.

mod hazards;
mod jars;
mod money;
mod reserve;
mod room;
mod scale;

pub use scale::Scales;

use super::{Course, Plan};
use crate::lesson::{Accepted, Amount, Concern, Lesson, Practice, ServiceLevel, TableSize, Unused};
use crate::quantity::{Area, Date, Mass, Money, Time, Volume};

/// Half a step of the scale should be at most this part of what is weighed (common practice,
/// no source).
pub const LIMIT_OF_ERROR: f64 = 0.1;
/// Of the long sides of a table, for each who pours, in millimetres (common practice, no
/// source).
pub const ELBOW_ROOM_MM: f64 = 600.0;
/// Younger people than this leave heat, alcohol and silicone to an adult, as in the safety
/// note for young people (common practice, no source).
pub const YOUNG: u8 = 16;

/// Something to say of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Warning {
    pub matter: Matter,
    /// Keys of the value that it is about, from the top of the lesson down.
    pub path: Vec<String>,
}

/// What is the matter, with its figures.
#[derive(Debug, Clone, PartialEq)]
pub enum Matter {
    /// As good as nothing is kept on top of `expected`; `usual` is what the level of the
    /// built-in rule would keep, `None` where nothing is said to vary.
    NoReserve {
        level: ServiceLevel,
        expected: Volume,
        usual: Option<(ServiceLevel, Volume)>,
    },
    /// Half a `step` of the scale is `error` (a fraction) of the `least` that is weighed;
    /// `better` is a step that would do.
    CoarseScale {
        step: Mass,
        least: Mass,
        what: Scales,
        error: f64,
        better: Mass,
    },
    /// `pieces` wet canvases take `area`; about `fit` of them have room.
    DryingRoom {
        area: Area,
        there: Area,
        pieces: u32,
        fit: u32,
    },
    /// `students` sit at a table with room for `seats`.
    CrowdedTables {
        students: u32,
        seats: u32,
        table: TableSize,
    },
    /// A finish goes on after so many days, when canvases dry for more.
    EarlyFinish {
        finish: String,
        after_days: u32,
        drying_days: u32,
    },
    /// The last step ends `minutes` after the booking.
    OverBooking {
        minutes: u32,
        end: Time,
        until: Time,
    },
    /// The lesson is before the first delivery.
    LateDelivery {
        lesson: Date,
        delivery: Date,
    },
    /// `total` is paid, of it `bought` for the order.
    OverBudget {
        budget: Money,
        total: Money,
        bought: Money,
    },
    /// With `pays` the class would pay for itself; with `fee` it loses `loss`.
    FeeTooLow {
        fee: Money,
        pays: Money,
        loss: Money,
    },
    /// No shop of the lesson sells these.
    NoPrice {
        items: Vec<String>,
    },
    HeatWithChildren {
        tool: Practice,
        age: u8,
        cause: Cause,
    },
    AdditivesWithChildren {
        practice: Practice,
        age: u8,
        cause: Cause,
    },
    FlameAndAlcohol {
        tool: Practice,
        cause: Cause,
    },
    ColourCaution(Product),
    /// `amount` is left out of the plan, since it kept until `last_day`.
    OldJar {
        colour: String,
        mix: String,
        amount: Amount,
        last_day: Date,
        lesson: Date,
    },
    Unused(Unused),
}

/// What brings something into a lesson that needs care.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cause {
    /// The lesson says that it is done.
    Lesson,
    Technique(String),
    Material(String),
}

/// A product that calls for care.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Product {
    pub name: String,
    pub why: Needy,
}

/// Why a product calls for care.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Needy {
    /// Its label warns of this, the lesson says.
    Label(String),
    /// It holds pigments that a safety note names, among young people.
    Pigments { pigments: Vec<String>, age: u8 },
}

impl Matter {
    /// The name under which it can be accepted.
    pub fn concern(&self) -> Concern {
        match self {
            Self::NoReserve { .. } => Concern::NoReserve,
            Self::CoarseScale { .. } => Concern::CoarseScale,
            Self::DryingRoom { .. } => Concern::DryingRoom,
            Self::CrowdedTables { .. } => Concern::CrowdedTables,
            Self::EarlyFinish { .. } => Concern::EarlyFinish,
            Self::OverBooking { .. } => Concern::OverBooking,
            Self::LateDelivery { .. } => Concern::LateDelivery,
            Self::OverBudget { .. } => Concern::OverBudget,
            Self::FeeTooLow { .. } => Concern::FeeTooLow,
            Self::NoPrice { .. } => Concern::NoPrice,
            Self::HeatWithChildren { .. } => Concern::HeatWithChildren,
            Self::AdditivesWithChildren { .. } => Concern::AdditivesWithChildren,
            Self::FlameAndAlcohol { .. } => Concern::FlameAndAlcohol,
            Self::ColourCaution(_) => Concern::ColourCaution,
            Self::OldJar { .. } => Concern::OldJar,
            Self::Unused(_) => Concern::Unused,
        }
    }
}

/// What there is to say of a lesson.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice<'a> {
    /// What the lesson does not accept, in the order of [`Concern::ALL`].
    pub open: Vec<Warning>,
    /// What it accepts, in the same order.
    pub accepted: Vec<(Warning, &'a Accepted)>,
    /// What it accepts although there is nothing of the kind.
    pub idle: Vec<&'a Accepted>,
}

impl<'a> Advice<'a> {
    fn of(lesson: &'a Lesson, mut warnings: Vec<Warning>) -> Self {
        // Stable, so that warnings of one name stay in the order of the lesson.
        warnings.sort_by_key(|warning| warning.matter.concern());
        let (mut open, mut accepted) = (Vec::new(), Vec::new());
        for warning in warnings {
            let concern = warning.matter.concern();
            match lesson.accepted.iter().find(|accepted| accepted.concern == concern) {
                Some(reason) => accepted.push((warning, reason)),
                None => open.push(warning),
            }
        }
        let occurs =
            |concern: Concern| accepted.iter().any(|(_, reason)| reason.concern == concern);
        // Only an order knows its days of delivery.
        let idle = lesson
            .accepted
            .iter()
            .filter(|reason| !occurs(reason.concern) && reason.concern != Concern::LateDelivery);
        let idle = idle.collect();
        Self { open, accepted, idle }
    }

    /// Nothing to say at all.
    pub fn is_silent(&self) -> bool {
        self.open.is_empty() && self.accepted.is_empty() && self.idle.is_empty()
    }
}

impl Plan {
    /// What a good colleague would say of it.
    pub fn advice(&self) -> Advice<'_> {
        let mut warnings = self.warnings();
        warnings.extend(jars::old(self));
        Advice::of(&self.lesson, warnings)
    }

    /// All but what is said of jars.
    fn warnings(&self) -> Vec<Warning> {
        let unused = self.lesson.unused.iter().map(|unused| Warning {
            path: path([unused.section, &unused.name]),
            matter: Matter::Unused(unused.clone()),
        });
        let mut warnings = Vec::new();
        warnings.extend(reserve::none(self));
        warnings.extend(scale::coarse(self));
        warnings.extend(room::warnings(self));
        warnings.extend(money::warnings(self));
        warnings.extend(hazards::warnings(&self.lesson));
        warnings.extend(unused);
        warnings
    }
}

impl Course {
    /// What a good colleague would say of each lesson, in their order, when something is
    /// delivered on these days.
    pub fn advice(&self, deliveries: &[Date]) -> Vec<Advice<'_>> {
        let first = deliveries.iter().min().copied();
        let lessons = self.lessons.iter().enumerate();
        let advice = lessons.map(|(at, plan)| {
            let mut warnings = plan.warnings();
            if at == 0 {
                // The others take over the jars of the lesson before, which stand in no file.
                warnings.extend(jars::old(plan));
            }
            if let (Some(lesson), Some(delivery)) = (plan.lesson.heading.date, first)
                && lesson < delivery
            {
                let matter = Matter::LateDelivery { lesson, delivery };
                warnings.push(Warning { matter, path: path(["date"]) });
            }
            Advice::of(&plan.lesson, warnings)
        });
        advice.collect()
    }
}

/// Keys from the top down.
fn path<const N: usize>(keys: [&str; N]) -> Vec<String> {
    keys.map(str::to_owned).to_vec()
}

/// The first of these that somebody wrote, the last when nobody did.
fn written<const N: usize>(lesson: &Lesson, paths: [Vec<String>; N]) -> Vec<String> {
    let last = paths.last().cloned().unwrap_or_default();
    paths.into_iter().find(|path| lesson.origins.place(path).is_some()).unwrap_or(last)
}
