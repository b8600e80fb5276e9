//! Where a lesson stops being one: bounds of judgement (common practice, no source),
//! wide enough for every class that is meant and narrow enough to catch a slip of
//! the unit, and bounds that keep reading quick whatever the file holds.

use super::desk::Bounds;

/// Largest lesson or data file, in bytes.
pub const FILE_BYTES: u64 = 1024 * 1024;
/// Largest table of weighings, in bytes: a row for each of [`CUPS`], with long names.
pub const TABLE_BYTES: u64 = 8 * 1024 * 1024;
/// Most data files that one lesson may use.
pub const USED_FILES: usize = 50;
/// Deepest nesting of a file; ours need seven.
pub const NESTING: usize = 32;
/// Most values of one run, copies made by aliases counted.
pub const VALUES: usize = 200_000;
/// Most values of a table of weighings: sixteen for each of [`CUPS`], of two classes.
pub const TABLE_VALUES: usize = 400_000;
/// Most problems that are reported in one go.
pub const PROBLEMS: usize = 100;
/// Longest key and name, in characters.
pub const NAME_LETTERS: usize = 80;
/// Longest text, in characters.
pub const TEXT_LETTERS: usize = 1_000;

/// As many as [`super::MOST_STUDENTS`].
pub const STUDENTS: Bounds = Bounds::new(1.0, super::MOST_STUDENTS as f64, "1 to 1000");
pub const EXTRA_SETS: Bounds = Bounds::new(0.0, 100.0, "0 to 100");
pub const AGE: Bounds = Bounds::new(3.0, 120.0, "3 to 120");
pub const PER_TABLE: Bounds = Bounds::new(1.0, 100.0, "1 to 100");
pub const EACH: Bounds = Bounds::new(1.0, 100.0, "1 to 100");
/// Kinds of canvas in one lesson.
pub const CANVASES: usize = 40;
/// Cups of a class: as many rows as a table of weighings can hold.
pub const CUPS: u64 = 10_000;
/// Worksheets with a name on them.
pub const SHEETS: usize = 3_000;
/// Colours in one layer.
pub const COLOURS: usize = 40;
pub const SIDES: Bounds = Bounds::new(3.0, 24.0, "3 to 24");
pub const CANVAS_SIZE: Bounds = Bounds::new(0.01, 5.0, "10 mm to 5 m (3/8 in to 16 ft)");
pub const DEPTH: Bounds = Bounds::new(0.0, 0.3, "0 to 300 mm (0 to 12 in)");
/// Canvas sizes in one table of paint.
pub const SIZES: usize = 40;
pub const FILM: Bounds = Bounds::new(1e-6, 0.02, "0.001 mm to 20 mm");
/// Which of alike canvases.
pub const PIECE: Bounds = Bounds::new(1.0, 10_000.0, "1 to 10000");
/// A cup with its stick and its paint.
pub const FULL_CUP: Bounds = Bounds::new(1e-4, 50.0, "0.1 g to 50 kg");
/// What is left of it, or what ran off; nothing on a scale that was tared.
pub const EMPTIED: Bounds = Bounds::new(0.0, 50.0, "0 to 50 kg");
/// Cups, canvases or classes that were weighed.
pub const WEIGHED: Bounds = Bounds::new(1.0, 1e6, "1 to 1000000");
pub const DENSITY: Bounds = Bounds::new(300.0, 6_000.0, "0.3 g/mL to 6 g/mL");
pub const DROP: Bounds = Bounds::new(1e-9, 1e-6, "0.001 mL to 1 mL");
pub const PARTS: Bounds = Bounds::new(1e-3, 1_000.0, "0.001 to 1000");
pub const DROPS: Bounds = Bounds::new(1e-2, 1_000.0, "0.01 to 1000");
pub const DROPS_PER: Bounds = Bounds::new(1e-6, 1e-2, "1 mL to 10 L");
pub const COATS: Bounds = Bounds::new(1.0, 50.0, "1 to 50");
pub const DAYS: Bounds = Bounds::new(0.0, 1_000.0, "0 to 1000 days");
pub const CUP_LOSS: Bounds = Bounds::new(0.0, 1e-4, "0 to 100 mL");
pub const MEASURE_STEP: Bounds = Bounds::new(1e-7, 1e-3, "0.1 mL to 1 L");
pub const SCALE_STEP: Bounds = Bounds::new(1e-5, 0.1, "0.01 g to 100 g");
/// A spread of use, in percent. Above it the bell curve would give canvases that take less
/// than nothing more often than once in forty.
pub const VARIATION: Bounds = Bounds::new(0.0, 50.0, "0 % to 50 %");
/// What is added out of habit, in percent.
pub const HABIT: Bounds = Bounds::new(0.0, 100.0, "0 % to 100 %");
pub const SUPPLY_COUNT: Bounds = Bounds::new(0.0, 10_000.0, "0 to 10000");
pub const PACK_VOLUME: Bounds = Bounds::new(1e-7, 1.0, "0.1 mL to 1000 L");
pub const PACK_MASS: Bounds = Bounds::new(1e-4, 1_000.0, "0.1 g to 1000 kg");
pub const PACK_PIECES: Bounds = Bounds::new(1.0, 1e6, "1 to 1000000 pieces");
pub const SHOPS: usize = 12;
pub const PACKS: Bounds = Bounds::new(1.0, 10_000.0, "1 to 10000 packs");
pub const PRICE: Bounds = Bounds::new(0.0, 1e9, "0 to 1000000000");
/// Steps of a timetable.
pub const TIMED_STEPS: usize = 40;
pub const STEP_MINUTES: Bounds = Bounds::new(1.0, 720.0, "1 min to 12 h");
/// Sums of one student; as many as [`super::MOST_EXERCISES`].
pub const EXERCISES: Bounds = Bounds::new(1.0, super::MOST_EXERCISES as f64, "1 to 12");
pub const TABLE_SIZE: Bounds = Bounds::new(0.2, 20.0, "20 cm to 20 m (8 in to 65 ft)");
pub const LEVEL_SURFACE: Bounds = Bounds::new(0.01, 10_000.0, "0.01 m² to 10000 m²");
pub const DRYING_GAP: Bounds = Bounds::new(0.0, 1.0, "0 to 1 m (0 to 3 ft)");
pub const WASH_WATER: Bounds = Bounds::new(0.0, 0.1, "0 to 100 L (0 to 26 gal)");
pub const BUCKET: Bounds = Bounds::new(5e-4, 0.2, "0.5 L to 200 L (1 pt to 52 gal)");
