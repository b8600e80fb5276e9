//! The engine: lessons in, plans out.

mod anchors;
mod areas;
mod batches;
mod buy;
mod cautions;
mod class;
mod costs;
mod courses;
mod draws;
mod exercises;
mod films;
mod flow;
mod generated;
mod jars;
mod learn;
mod money;
mod orders;
mod packs;
mod properties;
mod reserve;
mod room;
mod shops;
mod snapshot;
pub mod studio;
mod timetable;
mod washing;
mod worked;
