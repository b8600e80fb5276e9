//! What weighed cups teach.

mod cups;
mod doubts;
mod effects;
mod films;
mod means;
mod properties;
mod readings;
mod recorded;
mod shrinking;
mod simulated;
mod spreads;
mod studio;
