//! The engine: lessons in, plans out.

mod anchors;
mod areas;
mod batches;
mod buy;
mod cautions;
mod class;
mod costs;
mod films;
mod generated;
mod orders;
mod packs;
mod properties;
mod reserve;
mod snapshot;
mod studio;
mod worked;
