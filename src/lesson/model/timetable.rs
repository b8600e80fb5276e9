use crate::quantity::Time;

/// What happens when; ends on the day on which it starts.
#[derive(Debug, Clone, PartialEq)]
pub struct Timetable {
    pub start: Time,
    /// The room must be left by then; later than `start`.
    pub booked_until: Option<Time>,
    /// In their order; never empty, names are unique.
    pub steps: Vec<TimedStep>,
}

/// One step of a timetable.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TimedStep {
    pub name: String,
    /// At least one.
    pub minutes: u32,
}
