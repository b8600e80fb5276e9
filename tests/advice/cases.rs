//! A lesson of which there is nothing to say, and changes that give reason to say something.

/// On the good side of every threshold, on most of them with nothing to spare.
pub const QUIET: &str = r##"title: A quiet class (invented)
date: 2026-03-14
units: metric
class: {students: 4, youngest age: 16, per table: 4}
canvases:
  square:
    shape: rectangle
    width: 20 cm
    height: 20 cm
    depth: 17 mm
    technique: straight pour
    consistency: medium
    palette: plain
    finishes: [brushed varnish]
palettes:
  plain:
    colour: {blue: 40 %, white: the rest}
colours:
  blue: {swatch: "#1F5A7A", pigments: [ultramarine]}
  white: {swatch: "#F4F2EC"}
finishes:
  brushed varnish: {after: 3 days}
timetable:
  start: 18:00
  booked until: 20:00
  steps: {pouring: 1 h 40 min, washing up: 20 min}
room: {table: {length: 180 cm, width: 80 cm}, level surface: 0.25 m²}
mixing: {scale step: 1 g}
reserve: {enough in: 19 of 20}
jars:
  - {colour: blue, mix: medium, amount: 50 g, mixed: 2026-03-01, keeps: 13 days}
money: {fixed: {room: 40}, fee: 10, budget: 40}
"##;

/// A warning, a change that gives reason for it, and one next to it that does not.
pub struct Case {
    pub name: &'static str,
    pub due: &'static [(&'static str, &'static str)],
    pub near: &'static [(&'static str, &'static str)],
}

const fn case(
    name: &'static str,
    due: &'static [(&'static str, &'static str)],
    near: &'static [(&'static str, &'static str)],
) -> Case {
    Case { name, due, near }
}

const YOUNG: (&str, &str) = ("youngest age: 16", "youngest age: 15");
/// Room for seven canvases.
const MORE_ROOM: (&str, &str) = ("level surface: 0.25 m²", "level surface: 1 m²");

pub const CASES: &[Case] = &[
    case(
        "no-reserve",
        &[("enough in: 19 of 20", "enough in: 1 of 2")],
        &[("enough in: 19 of 20", "enough in: 3 of 5")],
    ),
    case(
        "no-reserve",
        &[("19 of 20", "19 of 20, class varies by: 0 %, students vary by: 0 %")],
        &[("19 of 20", "19 of 20, class varies by: 1 %, students vary by: 0 %")],
    ),
    case(
        "coarse-scale",
        &[("scale step: 1 g", "scale step: 5 g")],
        &[("scale step: 1 g", "scale step: 2 g")],
    ),
    case(
        "drying-room",
        &[("level surface: 0.25 m²", "level surface: 0.24 m²")],
        &[("level surface: 0.25 m²", "level surface: 2500 cm²")],
    ),
    case(
        "crowded-tables",
        &[MORE_ROOM, ("students: 4", "students: 7"), ("per table: 4", "per table: 7")],
        &[MORE_ROOM, ("students: 4", "students: 6"), ("per table: 4", "per table: 7")],
    ),
    case(
        "crowded-tables",
        &[("width: 80 cm", "width: 59 cm")],
        &[("width: 80 cm", "width: 60 cm")],
    ),
    case(
        "early-finish",
        &[("after: 3 days", "after: 2 days")],
        &[("after: 3 days", "after: 4 days")],
    ),
    case(
        "over-booking",
        &[("washing up: 20 min", "washing up: 21 min")],
        &[("washing up: 20 min", "washing up: 19 min")],
    ),
    case("over-budget", &[("budget: 40", "budget: 39.99")], &[("budget: 40", "budget: 40.00")]),
    case("fee-too-low", &[("fee: 10", "fee: 9.99")], &[("fee: 10", "fee: 10.00")]),
    case(
        "heat-with-children",
        &[YOUNG, ("mixing:", "practices: [torch]\nmixing:")],
        &[("mixing:", "practices: [torch]\nmixing:")],
    ),
    case(
        "heat-with-children",
        &[YOUNG, ("mixing:", "techniques: {straight pour: {practices: [heat gun]}}\nmixing:")],
        &[YOUNG, ("mixing:", "techniques: {straight pour: {practices: [hair dryer]}}\nmixing:")],
    ),
    case(
        "additives-with-children",
        &[YOUNG, ("mixing:", "mixes: {medium: {drops: {silicone oil: 2 per 100 mL}}}\nmixing:")],
        &[("mixing:", "mixes: {medium: {drops: {silicone oil: 2 per 100 mL}}}\nmixing:")],
    ),
    case(
        "flame-and-alcohol",
        &[("mixing:", "practices: [alcohol, torch]\nmixing:")],
        &[("mixing:", "practices: [silicone, torch]\nmixing:")],
    ),
    case(
        "colour-caution",
        &[("white: {", "white: {caution: Irritates the eyes., ")],
        &[("white: {", "white: {pigments: [zinc], ")],
    ),
    case(
        "colour-caution",
        &[YOUNG, ("[ultramarine]", "[cobalt]")],
        &[("[ultramarine]", "[cobalt]")],
    ),
    case(
        "colour-caution",
        &[("mixing:", "materials: {gloss varnish: {caution: Wear gloves.}}\nmixing:")],
        &[("mixing:", "materials: {satin varnish: {caution: Wear gloves.}}\nmixing:")],
    ),
    case(
        "old-jar",
        &[("keeps: 13 days", "keeps: 12 days")],
        &[("keeps: 13 days", "keeps: 14 days")],
    ),
    case("unused", &[("  plain:\n", "  spare: {colour: {white: 100 %}}\n  plain:\n")], &[]),
    case(
        "unused",
        &[("colours:\n", "colours:\n  sand: {swatch: \"#D9B98A\"}\n")],
        &[
            ("colours:\n", "colours:\n  sand: {swatch: \"#D9B98A\"}\n"),
            ("blue: 40 %", "blue: 40 %, sand: 10 %"),
        ],
    ),
    case(
        "unused",
        &[("mixing:", "mixes: {runny: {consistency: thin, parts: {paint: 1, water: 1}}}\nmixing:")],
        &[
            (
                "mixing:",
                "mixes: {runny: {consistency: thin, parts: {paint: 1, water: 1}}}\nmixing:",
            ),
            ("consistency: medium\n", "consistency: runny\n"),
        ],
    ),
    case(
        "unused",
        &[("mixing:", "techniques: {ring pour: {practices: []}}\nmixing:")],
        &[
            ("mixing:", "techniques: {ring pour: {practices: []}}\nmixing:"),
            ("technique: straight pour", "technique: ring pour"),
        ],
    ),
];
