//! The schematic drawings of the guide; only the days of drying know the lesson.

use crate::handout::document::{Picture, PictureKind};
use crate::handout::sketch::{FilmSketch, Part, SetUpBefore, SetUpDrying, SetUpSketch, Sketch};
use crate::handout::words::{PartWords, Words, fill};

/// Each drawing by the name that templates use.
pub(super) fn sketches(words: &Words) -> [(&'static str, Picture); 6] {
    [
        ("film-dries", film(words)),
        ("set-up", set_up(words)),
        ("ribbons", ribbons(words)),
        ("pours", pours(words)),
        ("wash-water", wash_water(words)),
        ("faults", faults(words)),
    ]
}

fn part(PartWords { name, words }: &PartWords) -> Part {
    Part { name: name.clone(), words: words.clone() }
}

/// Each part with its words, one sentence a part.
pub(super) fn told(parts: &[Part], words: &Words) -> String {
    let pattern = &words.pictures.sketches.part;
    let sentence = |part: &Part| fill(pattern, &[("name", &part.name), ("words", &part.words)]);
    parts.iter().map(sentence).collect::<Vec<_>>().join(" ")
}

fn picture(alt: &str, parts: &[Part], words: &Words, sketch: Sketch) -> Picture {
    Picture { alt: fill(alt, &[("parts", &told(parts, words))]), kind: PictureKind::Sketch(sketch) }
}

fn film(words: &Words) -> Picture {
    let texts = &words.pictures.sketches.film;
    let stages = [&texts.wet, &texts.skin, &texts.dry].map(part);
    let alt = fill(&texts.alt, &[("water", &texts.water)]);
    let sketch = FilmSketch { stages: stages.clone(), water: texts.water.clone() };
    picture(&alt, &stages, words, Sketch::Film(sketch))
}

fn set_up(words: &Words) -> Picture {
    let texts = &words.pictures.sketches.set_up;
    let joined = |name: &str, parts: &[&String]| {
        let parts: Vec<&str> = parts.iter().map(|part| part.as_str()).collect();
        Part { name: name.to_owned(), words: parts.join(&texts.between) }
    };
    let parts = [
        joined(&texts.before, &[&texts.level, &texts.canvas, &texts.feet, &texts.tray]),
        joined(&texts.drying, &[&texts.cover, &texts.film, &texts.drip, &texts.gap]),
    ];
    let sketch = SetUpSketch {
        before: SetUpBefore {
            name: texts.before.clone(),
            level: texts.level.clone(),
            canvas: texts.canvas.clone(),
            feet: texts.feet.clone(),
            tray: texts.tray.clone(),
        },
        drying: SetUpDrying {
            name: texts.drying.clone(),
            cover: texts.cover.clone(),
            film: texts.film.clone(),
            drip: texts.drip.clone(),
            gap: texts.gap.clone(),
        },
    };
    picture(&texts.alt, &parts, words, Sketch::SetUp(sketch))
}

fn ribbons(words: &Words) -> Picture {
    let texts = &words.pictures.sketches.ribbons;
    let names = &words.consistency;
    let parts =
        [(&names.thin, &texts.thin), (&names.medium, &texts.medium), (&names.thick, &texts.thick)];
    let parts = parts.map(|(name, words)| Part { name: name.clone(), words: words.clone() });
    picture(&texts.alt, &parts, words, Sketch::Ribbons(parts.clone()))
}

/// The techniques are seen, so only their names are written.
fn pours(words: &Words) -> Picture {
    let texts = &words.pictures.sketches.pours;
    let seen =
        [&texts.straight, &texts.flip_cup, &texts.ring, &texts.swipe, &texts.blown, &texts.spun]
            .map(part);
    let named = seen.clone().map(|part| Part { words: String::new(), ..part });
    picture(&texts.alt, &seen, words, Sketch::Pours(named))
}

fn wash_water(words: &Words) -> Picture {
    let texts = &words.pictures.sketches.wash_water;
    let parts = [&texts.evening, &texts.morning, &texts.water, &texts.sludge].map(part);
    picture(&texts.alt, &parts, words, Sketch::WashWater(parts.clone()))
}

fn faults(words: &Words) -> Picture {
    let texts = &words.pictures.sketches.faults;
    let parts = [
        &texts.crazing,
        &texts.pinholes,
        &texts.craters,
        &texts.puddle,
        &texts.drips,
        &texts.bare_rim,
    ]
    .map(part);
    picture(&texts.alt, &parts, words, Sketch::Faults(parts.clone()))
}
