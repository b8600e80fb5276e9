//! A right lesson, and the slips that can be made in it.

/// A right lesson that has something in every section.
pub const LESSON: &str = r##"title: A class of everything
subtitle: An evening
teacher: Juniper Vale
date: 2026-03-14
language: en
units: us
paper: letter
print: standard
use: [data/studio.yaml]
class:
  students: [Ana, Bo, Cem]
  demonstrations: 1
  spares: 1
  youngest age: 16
  per table: 4
canvases:
  board:
    shape: rectangle
    width: 10 in
    height: 8 in
    depth: 1/2 in
    edge: painted
    each: 1
    technique: two coats
    consistency: {base: syrup, colour: medium}
    palette: coast
    finishes: [brushed varnish, last coat]
  disc:
    shape: round
    diameter: 9 in
    depth: 3/8 in
    technique: studio pour
    consistency: studio mix
    palette: reef
    finishes: [studio coat]
  tile:
    shape: polygon
    sides: 6
    across flats: 5 in
    depth: 1/4 in
    technique: straight pour
    consistency: thin
    palette: reef
  tray:
    shape: oval
    width: 300 mm
    height: 200 mm
    technique: two coats
    consistency: {base: thick, colour: thin}
    palette: dusk
palettes:
  coast:
    base: {white: 100 %}
    colour: {navy: 44 %, sand: 16 %, white: 40 %}
  reef:
    colour: {sand: 20 %, white: the rest}
  dusk:
    base: {ink: 100 %}
    colour: {ink: 30 %, white: 70 %}
practices: [torch, silicone]
timetable:
  start: 18:30
  booked until: 9:45 pm
  steps: {welcome: 15 min, pouring: 1 h 30 min, washing up: 40 min}
exercises: {count: 5, level: paint, seed: harbour}
room: {table: {length: 6 ft, width: 30 in}, level surface: 30 ft², gap: 2 in}
washing: {after each batch: 900 mL, each piece: {drip tray: 50 mL}, bucket: 2 gal}
colours:
  navy: {paint: navy paint, density: 1.3 g/mL, swatch: "#101840", pigments: [cobalt], caution: Keep off the skin.}
  ink: {paint: navy paint, density: 1.3 g/mL, swatch: "#101848"}
  white: {swatch: "#F4F2EC"}
materials:
  flow aid: {kind: additive, density: 1.01 g/mL, drop: 0.04 mL}
  hard varnish: {kind: varnish, density: 1.04 g/mL, caution: Open a window.}
mixes:
  syrup:
    consistency: thick
    by: weight
    parts: {paint: 2, flow aid: 1}
    drops: {flow aid: 2 per 100 mL}
techniques:
  two coats:
    summary: A coat under a pour.
    practices: [sanding]
    layers:
      base:
        thin: {low: 0.4 mm, typical: 0.5 mm, high: 0.6 mm}
        medium: {low: 0.5 mm, typical: 0.6 mm, high: 0.7 mm}
        thick: {low: 0.6 mm, typical: 0.7 mm, high: 0.8 mm}
        basis: weighed in class
      colour:
        thin: {low: 1.1 mm, typical: 1.2 mm, high: 1.3 mm}
        medium:
          low: 1.2 mm
          typical: 1.3 mm
          high: 1.4 mm
          weighed: {cups: 34, canvases: 17, classes: 3, mean: 1.28 mm, own weight: 83 %, instead of: {low: 1.3 mm, typical: 1.55 mm, high: 1.61 mm}}
        thick: {low: 1.3 mm, typical: 1.4 mm, high: 1.5 mm}
        basis: weighed twice
finishes:
  last coat:
    material: hard varnish
    film: {low: 0.07 mm, typical: 0.09 mm, high: 0.12 mm}
    coats: 3
    after: 10 days
    basis: the label
sizes: {us: [{width: 7 in, height: 9 in, depth: 7/16 in}]}
mixing: {cup loss: 4 mL, step us: 1/2 fl oz}
supplies:
  palette knife: {count: 2, per: table, life: washable}
shops:
  Corner shop (invented):
    currency: USD
    delivery: 5.50
    packs:
      - {item: navy paint, size: 8 fl oz, price: 6.49, from: 2}
      - {item: palette knife, size: 3 pieces, price: 4.20}
bought elsewhere: [palette knife]
stock:
  studio medium: 300 mL
  apron: 12 pieces
jars:
  - {colour: navy, mix: syrup, amount: 250 g, mixed: 2026-01-02, keeps: 90 days}
money: {fixed: {hall: 60}, for each student: {tea: 1.50}, fee: 48, budget: 900}
accepted: {no-price: The rest comes from home., unused: Kept for spring.}
reserve: {enough in: 9 of 10, class varies by: 7 %, weighed: {canvases: 22, classes: 3, instead of: {class varies by: 8 %, students vary by: 15 %}}}
cautions:
  lamp:
    sign: heat
    heading: Mind the lamp
    reason: It is hot.
    source: its label
    when: {younger than: 18}
"##;

/// What the lesson uses.
pub const STUDIO: &str = r##"colours:
  sand: {swatch: "#D9B98A"}
materials:
  studio medium: {kind: medium, density: 1.06 g/mL}
mixes:
  studio mix: {consistency: medium, parts: {paint: 1, studio medium: 2}}
techniques:
  studio pour:
    summary: Poured.
    layers:
      colour:
        thin: {low: 1.4 mm, typical: 1.5 mm, high: 1.6 mm}
        medium: {low: 1.5 mm, typical: 1.6 mm, high: 1.7 mm}
        thick: {low: 1.6 mm, typical: 1.7 mm, high: 1.8 mm}
        basis: weighed
finishes:
  studio coat:
    material: gloss varnish
    film: {low: 0.05 mm, typical: 0.06 mm, high: 0.08 mm}
    after: 8 days
    basis: the label
"##;

/// What is right, and the slip in its place. Each makes one message.
pub const SLIPS: &[(&str, &str)] = &[
    ("title: A class of everything\n", ""),
    ("start: 18:30", "start: 18.30"),
    ("until: 9:45 pm", "until: 9:45 am"),
    ("welcome: 15 min", "welcome: 15"),
    ("pouring: 1 h 30 min", "pouring: 5 h 30 min"),
    ("washing up: 40 min", "washing up: 40 mL"),
    ("\nexercises:", "\nexcercises:"),
    ("count: 5", "count: 50"),
    ("level: paint", "level: paints"),
    ("seed: harbour", "seed: \"\""),
    ("length: 6 ft", "length: 600 ft"),
    ("width: 30 in}", "wdth: 30 in}"),
    ("surface: 30 ft²", "surface: 30 ft"),
    ("gap: 2 in", "gap: 2"),
    ("\nwashing:", "\nwashin:"),
    ("batch: 900 mL", "batch: 900 g"),
    ("drip tray: 50 mL", "dripp tray: 50 mL"),
    ("bucket: 2 gal", "bucket: 0 gal"),
    ("\nsizes:", "\nsize:"),
    ("width: 7 in", "width: 7"),
    ("depth: 7/16 in", "depth: 10 in"),
    ("An evening", "\"An \\x07 evening\""),
    ("Juniper Vale", "[Juniper, Vale]"),
    ("2026-03-14", "14 March"),
    ("language: en", "language: english"),
    ("units: us", "units: metrc"),
    ("paper: letter", "paper: a5"),
    ("print: standard", "printt: standard"),
    ("\nclass:", "\nclas:"),
    ("[Ana, Bo, Cem]", "[Ana, Bo, Ana]"),
    ("demonstrations: 1", "demonstrations: one"),
    ("spares: 1", "spares: 2.5"),
    ("youngest age: 16", "youngest age: 1"),
    ("per table: 4", "per table: 0"),
    ("\ncanvases:", "\ncanvasses:"),
    ("shape: rectangle", "shape: rectangel"),
    ("width: 10 in", "width: 10"),
    ("height: 8 in", "height: -8 in"),
    ("depth: 1/2 in", "depth: 11 in"),
    ("edge: painted", "edge: gilded"),
    ("each: 1\n", "each: 0\n"),
    (
        "technique: two coats\n    consistency: {base: syrup",
        "technique: two goats\n    consistency: {base: syrup",
    ),
    ("{base: syrup", "{base: sirup"),
    ("colour: medium}", "colour: mediun}"),
    ("palette: coast", "palette: cost"),
    ("[brushed varnish,", "[brushed polish,"),
    ("last coat]", "last coat, last coat]"),
    ("shape: round", "shape: !round"),
    ("diameter: 9 in", "diameter: 0 in"),
    ("depth: 3/8 in", "depth: 3/8 g"),
    ("consistency: studio mix", "consistency: []"),
    ("palette: reef\n    finishes", "palete: reef\n    finishes"),
    ("sides: 6", "sides: 40"),
    ("across flats: 5 in", "accross flats: 5 in"),
    ("depth: 1/4 in", "depth: 9 in"),
    ("technique: straight pour", "technique: strait pour"),
    ("consistency: thin\n", "consistency: thing\n"),
    (
        "  tray:\n",
        "  disc:\n    shape: oval\n    width: 3 in\n    height: 4 in\n    technique: straight pour\n    consistency: thin\n    palette: reef\n  tray:\n",
    ),
    ("shape: oval", "shape: oval\n    diameter: 3 in"),
    ("    width: 300 mm\n", ""),
    ("colour: thin}", "color: thin}"),
    ("\npalettes:", "\npalletes:"),
    ("base: {white: 100 %}", "base: {white: 90 %}"),
    ("navy: 44 %", "navy: 48 %"),
    ("sand: 16 %", "sant: 16 %"),
    ("white: the rest", "white: the lot"),
    ("sand: 20 %", "sand: 120 %"),
    ("  dusk:\n", "  dusk:\n    veil: {ink: 100 %}\n"),
    ("    colour: {ink: 30 %, white: 70 %}\n", ""),
    ("[torch, silicone]", "[torch, silicon]"),
    ("\ncolours:", "\ncolors:"),
    (
        "{paint: navy paint, density: 1.3 g/mL, swatch: \"#101840\"",
        "{paint: navy paint, density: \"1,3 g/mL\", swatch: \"#101840\"",
    ),
    ("ink: {paint: navy paint, density: 1.3 g/mL", "ink: {paint: navy paint, density: 1.4 g/mL"),
    ("ink: {paint: navy paint, density: 1.3", "ink: {paint: navy paint, densty: 1.3"),
    ("navy: {paint: navy", "navy: {pain: navy"),
    ("\"#101840\"", "navy"),
    ("[cobalt]", "[cobalt, cobalt]"),
    ("white: {swatch: \"#F4F2EC\"}", "white: {swatch: \"#F4F2EC\", finish: matt}"),
    ("  white: {sw", "  ink: {swatch: \"#000000\"}\n  white: {sw"),
    ("  ink: {", "  unused: &ink {paint: *ink, swatch: \"#000000\"}\n  ink: {"),
    ("\nmaterials:", "\nmaterial:"),
    ("kind: additive", "kind: paint"),
    ("1.01 g/mL", "1.01"),
    (", drop: 0.04 mL", ""),
    ("drop: 0.04 mL", "drops: 0.04 mL"),
    ("kind: varnish", "kind: water"),
    ("1.04 g/mL", "104 g/mL"),
    ("\nmixes:", "\nmixs:"),
    ("consistency: thick", "consistency: thik"),
    ("by: weight", "by: wait"),
    ("paint: 2, ", ""),
    ("paint: 2", "pant: 2"),
    ("flow aid: 1}", "flow ade: 1}"),
    ("2 per 100 mL", "2 drops"),
    ("\ntechniques:", "\ntecniques:"),
    ("summary: A coat under a pour.\n", "summary: \"\"\n"),
    ("[sanding]", "sanding"),
    ("thin: {low: 0.4 mm", "thin: {low: 0.55 mm"),
    ("0.5 mm, high: 0.6 mm", "0.5 mm, high: 0.6 mn"),
    ("medium: {low: 0.5 mm, typical: 0.6 mm", "medium: {low: 0.5 mm, typicl: 0.6 mm"),
    ("        basis: weighed in class\n", ""),
    ("thin: {low: 1.1 mm, typical: 1.2 mm, high: 1.3 mm}", "thin: 1.2 mm"),
    ("cups: 34", "cups: many"),
    ("canvases: 17", "canvases: 40"),
    ("classes: 3, mean", "clases: 3, mean"),
    ("1.28 mm", "1.28"),
    ("83 %", "183 %"),
    ("typical: 1.55 mm", "typical: 1.75 mm"),
    ("\nfinishes:", "\nfinish:"),
    ("material: hard varnish", "material: water"),
    ("film: {low: 0.07 mm, typical: 0.09 mm", "film: {low: 0.09 mm, typical: 0.07 mm"),
    ("coats: 3", "coats: 99"),
    ("10 days", "10 mm"),
    ("\nmixing:", "\nmixng:"),
    ("cup loss: 4 mL", "cup loss: 4 L"),
    ("step us: 1/2 fl oz", "step us: 1/2 oz"),
    ("\nsupplies:", "\nsuplies:"),
    ("count: 2", "count: two"),
    ("per: table", "per: tabel"),
    ("life: washable", "live: washable"),
    ("\nshops:", "\nshopps:"),
    ("delivery: 5.50", "delivery: -5.50"),
    ("from: 2}", "from: 0}"),
    ("elsewhere: [palette knife]", "elsewhere: [palete knife]"),
    ("colour: navy, mix", "colour: navi, mix"),
    ("mix: syrup, amount", "mix: sirop, amount"),
    ("amount: 250 g", "amount: 250 pieces"),
    ("mixed: 2026-01-02", "mixed: 2 January"),
    ("keeps: 90 days", "keeps: 3 moons"),
    ("9 of 10", "4 of 10"),
    ("class varies by: 7 %", "class varys by: 7 %"),
    ("canvases: 22", "canvases: 2"),
    ("students vary by: 15 %", "students vary by: 150 %"),
    ("currency: USD", "currency: dollars"),
    ("item: navy paint", "item: gravy paint"),
    ("size: 8 fl oz", "size: 8 oz"),
    ("price: 6.49", "price: 6.495"),
    ("size: 3 pieces", "size: 3 L"),
    ("4.20}", "-4.20}"),
    ("\nstock:", "\nstok:"),
    ("300 mL\n  apron", "300 pieces\n  apron"),
    ("  apron: 12", "  aprons: 12"),
    ("\nmoney:", "\nmony:"),
    ("fixed: {hall", "fixd: {hall"),
    ("hall: 60}", "hall: -60}"),
    ("tea: 1.50", "tea: a little"),
    ("fee: 48", "fee: 48 dollars"),
    ("budget: 900", "budget: -900"),
    ("Keep off the skin.", "\"\""),
    ("caution: Open a window.", "cautions: Open a window."),
    ("\naccepted:", "\nacepted:"),
    ("no-price: The", "no-prize: The"),
    ("Kept for spring.", "[Kept, for, spring]"),
    ("\ncautions:", "\ncaution:"),
    ("sign: heat", "sign: hot"),
    ("    source: its label\n", ""),
    ("when: {younger than", "when: {younger then"),
    ("younger than: 18", "younger than: 180"),
    ("18}", "18, doing: [torch]}"),
];
/// Slips that cannot be judged beside others: all who hide, and what is hidden.
pub const HIDDEN: &[(&[&str], &str)] = &[
    // Who does not say which palette is meant may mean any.
    (&["palette: cost"], "veil: {ink"),
    (&["palete: reef"], "veil: {ink"),
    // A value that is not known cannot be held against others.
    (&["width: 10", "height: -8"], "depth: 11 in"),
    (&["accross flats"], "depth: 9 in"),
    (&["density: \"1,3 g/mL\""], "density: 1.4 g/mL"),
    (&["navy: {pain:"], "density: 1.4 g/mL"),
    (&["cups: many"], "canvases: 40"),
    // In which language a paint is called is not known.
    (&["language: english"], "gravy paint"),
    (&["language: english"], "palete knife"),
    (&["language: english"], "aprons"),
    (&["paint: *ink"], "gravy paint"),
    (&["paint: *ink"], "palete knife"),
    (&["paint: *ink"], "aprons"),
    (&["currency: dollars"], "price: 6.495"),
    (&["start: 18.30"], "until: 9:45 am"),
    (&["start: 18.30"], "pouring: 5 h"),
    (&["younger then"], "doing: [torch]"),
];

/// What is right in slips that are not told while a data file is lost: it may hold the
/// name that is not known, or the entry that is missing.
pub const OPEN: &[&str] = &[
    "technique: two coats\n    consistency: {base",
    "{base: syrup",
    "colour: medium}",
    "[brushed varnish,",
    "technique: straight pour",
    "consistency: thin\n",
    "colour: thin}",
    "sand: 16 %",
    "  dusk:\n",
    ", drop: 0.04 mL",
    "paint: 2",
    "flow aid: 1}",
    "basis: weighed in class",
    "item: navy paint",
    "elsewhere: [palette knife]",
    "colour: navy, mix",
    "mix: syrup, amount",
    "300 mL",
    "  apron: 12",
    "source: its label",
    "drip tray: 50 mL",
];
