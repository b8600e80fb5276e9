//! Weighing cups on paper: the sheet, its table, the comparison, and what was measured.

mod compare;
mod measured;
mod sample;
mod sheet;
mod table;
