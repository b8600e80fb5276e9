use super::super::limits;
use super::super::problem::{ProblemKind, Sold};
use super::{Words, unexplained};
use crate::quantity::units::{in_inch, in_mm};
use crate::quantity::{Dimension, Length};

/// The words for values that do not go together.
pub(super) fn of(kind: &ProblemKind) -> Words {
    match kind {
        ProblemKind::NoCanvases => Words::new("a lesson needs a canvas", "none here"),
        ProblemKind::TooManyCanvases => Words::new("too many kinds of canvas", "here")
            .right(format!("up to {}", limits::CANVASES)),
        ProblemKind::NoStudents => Words::new("a class needs a student", "nobody here")
            .right("a number, or first names in brackets: [Ana, Bo, Cem]"),
        ProblemKind::StudentTwice { name } => {
            Words::new(format!("two students are called \"{name}\""), "again")
                .right("a letter more tells them apart, for example Ana B and Ana K")
        }
        ProblemKind::TooManyStudents => {
            Words::new("too many students", "here").right("up to 1000")
        }
        ProblemKind::TooManyCups { cups } => {
            Words::new(format!("this class would fill {cups} cups"), "so many in all").right(
                format!("up to {}; make it several lessons, each of fewer students", limits::CUPS),
            )
        }
        ProblemKind::TooManySheets { sheets } => {
            let wrong = format!("these names would make {sheets} worksheets");
            Words::new(wrong, "one for each name and kind of canvas").right(format!(
                "up to {}; give the number of students instead, and copy one sheet of each kind",
                limits::SHEETS
            ))
        }
        ProblemKind::NoColours => Words::new("this layer has no colours", "none here")
            .right("a colour and its share: white: 100 %"),
        ProblemKind::TooManyColours => Words::new("too many colours in one layer", "here")
            .right(format!("up to {}", limits::COLOURS)),
        ProblemKind::SharesNotWhole { percent } => {
            let wrong = format!("the shares of this layer add up to {percent} %, not 100 %");
            Words::new(wrong, format!("{percent} % in all"))
                .right("change the shares, or write \"the rest\" for one colour")
        }
        ProblemKind::RestLeavesNothing { percent } => {
            let wrong = format!("the other colours make {percent} % already: no rest is left");
            Words::new(wrong, "nothing left").right("lower the other shares, or take this one out")
        }
        ProblemKind::RestTwice => {
            Words::new("only one colour can take the rest", "the second").right("give a share in percent")
        }
        ProblemKind::LayerMissing { technique, layer } => {
            let wrong = format!("\"{technique}\" has a layer \"{layer}\" that is missing here");
            Words::new(wrong, format!("no layer \"{layer}\""))
                .right(format!("add \"{layer}:\" with its colours or its mix"))
                .also("this is the palette")
        }
        ProblemKind::LayerUnknown { technique, layer, nearest, known } => {
            let wrong = format!("\"{technique}\" has no layer called \"{layer}\"");
            Words::new(wrong, "not known").choice(
                nearest.as_deref(),
                known.iter().map(String::as_str),
                "its layers",
            )
        }
        ProblemKind::NotForShape { key, shape, wanted } => {
            Words::new(format!("\"{key}\" is no size of shape \"{shape}\""), "does not fit")
                .right(format!("what fits: {}", wanted.join(", ")))
        }
        ProblemKind::PolygonSize { given: 0 } => {
            Words::new("the size of this polygon is missing", "belongs in here")
                .right("one of side, across flats, across corners; for example across flats: 6 in")
        }
        ProblemKind::PolygonSize { given } => {
            Words::new(format!("this polygon has {given} sizes"), "too many")
                .right("keep one of side, across flats, across corners")
        }
        ProblemKind::OddAcross { key } => {
            Words::new(format!("a polygon with an odd number of sides has no \"{key}\""), "here")
                .right("give the length of one side: \"side: 4 in\"")
        }
        ProblemKind::EdgeTooDeep { depth, across } => {
            let wrong = "the edge is deeper than the canvas is wide";
            Words::new(wrong, format!("{} deep", length(*depth)))
                .right(format!("the canvas is {} wide; its edge is at most that", length(*across)))
        }
        ProblemKind::SpreadOrder => Words::new("low, typical and high are out of order", "here")
            .right("low is the smallest, high the largest: {low: 1.2 mm, typical: 1.5 mm, high: 1.8 mm}"),
        ProblemKind::FewerThan { part, whole } => {
            Words::new(format!("fewer {part} were weighed than {whole}"), "fewer")
                .right("let \"puddlebook learn\" write this, and change the weighings instead")
                .also("more")
        }
        ProblemKind::NoLayers => Words::new("a technique needs a layer", "none here"),
        ProblemKind::PaintIsAColour => Words::new("paints stand under \"colours\"", "not here")
            .right("other kinds: medium, water, additive, varnish"),
        ProblemKind::NoPaintInMix => Words::new("there is no paint in this mix", "paint is missing")
            .right("the paint of each colour is called \"paint\": {paint: 1, pouring medium: 2}"),
        ProblemKind::NotAnIngredient { name } => {
            Words::new(format!("\"{name}\" does not go into a mix"), "here")
                .right("what does: media, water and additives")
        }
        ProblemKind::NoDropSize { material } => {
            Words::new(format!("nobody says how large a drop of \"{material}\" is"), "counted in drops")
                .right("add it to the material: drop: 0.05 mL")
                .also("this is the material")
        }
        ProblemKind::NotAFinish { material } => {
            Words::new(format!("\"{material}\" does not go over a dry canvas"), "here")
                .right("what does: varnishes and media")
        }
        ProblemKind::PaintDensities { paint } => {
            Words::new(format!("two colours say different densities of \"{paint}\""), "here")
                .right("one paint has one density")
                .also("the other")
        }
        ProblemKind::TooManyShops => Words::new("too many shops", "one too many")
            .right(format!("up to {}; keep those you would walk to or order from", limits::SHOPS)),
        ProblemKind::TwoCurrencies => {
            Words::new("the shops of a lesson have one currency", "another one")
                .right("put the price lists of each currency into files of their own, and use one of them")
                .also("the first")
        }
        ProblemKind::JarFromTheFuture => {
            Words::new("this jar is mixed after the class", "later than the lesson's date")
                .right("the day it was mixed, as 2026-03-01")
        }
        ProblemKind::MoneyDecimals { currency, decimals } => {
            let (decimals, right) = match decimals {
                0 => ("no decimals".to_owned(), "write a whole number".to_owned()),
                1 => ("one decimal".to_owned(), "round it to one decimal".to_owned()),
                _ => (format!("{decimals} decimals"), format!("round it to {decimals} decimals")),
            };
            let wrong = format!("amounts in {currency} have {decimals}");
            Words::new(wrong, "more decimals").right(right)
        }
        ProblemKind::NotComparable { item, sold, found } => {
            let (how, right) = match sold {
                Sold::ByVolumeOrWeight => ("by volume or weight", "for example 8 fl oz, 250 mL or 1 kg"),
                Sold::ByThePiece => ("by the piece", "for example 100 pieces"),
            };
            let mark = match found {
                Dimension::Pieces => "pieces",
                Dimension::Mass => "a weight",
                _ => "a volume",
            };
            Words::new(format!("\"{item}\" is needed {how}"), mark).right(right)
        }
        ProblemKind::TooManySizes => Words::new("too many canvas sizes in this table", "here")
            .right(format!("up to {}", limits::SIZES)),
        ProblemKind::NoTimedSteps => Words::new("a timetable needs a step", "none here")
            .right("a name and how long it takes: pouring: 45 min"),
        ProblemKind::TooManyTimedSteps => Words::new("too many steps in this timetable", "here")
            .right(format!("up to {}", limits::TIMED_STEPS)),
        ProblemKind::PastMidnight => {
            Words::new("the timetable runs up to midnight or past it", "with this step")
                .right("start earlier, or make steps shorter; a lesson ends on its own day")
        }
        ProblemKind::BookedBeforeStart => {
            Words::new("the room is booked until before the lesson starts", "not after the start")
                .right("times run from 0:00 to 23:59; an evening is 18:30 or 6:30 pm")
                .also("the start")
        }
        ProblemKind::WhenNotOne => Words::new("this should say one occasion", "here").right(
            "always, {doing: [torch]}, {younger than: 16} or {pigments: [cobalt]}",
        ),
        _ => unexplained(),
    }
}

fn length(length: Length) -> String {
    let inches = (in_inch(length) * 100.0).round() / 100.0;
    let mm = (in_mm(length) * 10.0).round() / 10.0;
    format!("{inches} in ({mm} mm)")
}
