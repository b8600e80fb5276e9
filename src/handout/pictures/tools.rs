//! What is drawn on the sheet of tools.

use super::nomogram::nomogram;
use crate::handout::context::consistency as word;
use crate::handout::document::{Picture, PictureKind};
use crate::handout::markdown::Pictures;
use crate::handout::paper_tools::{
    CheckBar, CheckLength, DepthMark, EdgeGauge, SpreadBand, SpreadRing, SpreadRings,
};
use crate::handout::words::{Words, fill};
use crate::plan::Plan;
use crate::plan::flow::SpreadTarget;
use crate::quantity::Length;
use crate::quantity::show::{Show, fixed, with_unit};
use crate::quantity::units::{in_mm, inch, mm};

/// How far the scale of the gauge and the ruler reach, in millimetres: deeper than canvases are,
/// and as long as the narrower paper has room for.
const GAUGE: u32 = 60;
const RULER: u32 = 160;

/// Every picture of the sheet, by the name that templates use.
pub(in crate::handout) fn tools(plan: &Plan, words: &Words, show: &Show) -> Pictures {
    let all = [
        ("nomogram", nomogram(plan, words, show)),
        ("edge-gauge", edge_gauge(plan, words, show)),
        ("spread-rings", spread_rings(words, show)),
        ("check-length", check_length(words)),
    ];
    all.into_iter().map(|(name, picture)| (name.to_owned(), picture)).collect()
}

fn check_length(words: &Words) -> Picture {
    let bar = |length: Length, parts, label: &str| CheckBar {
        length: in_mm(length),
        parts,
        label: label.to_owned(),
    };
    let bars =
        vec![bar(mm(100.0), 10, &with_unit("100", "mm")), bar(inch(4.0), 4, &with_unit("4", "in"))];
    Picture {
        alt: words.pictures.check_length.alt.clone(),
        kind: PictureKind::CheckLength(CheckLength { bars }),
    }
}

/// A length to the millimetre.
fn millimetres(length: Length) -> String {
    with_unit(&fixed(in_mm(length), 0), "mm")
}

fn edge_gauge(plan: &Plan, words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.edge_gauge;
    let marks = depths(plan, words, show);
    let told: Vec<String> = marks.iter().map(|mark| format!("{}.", mark.label)).collect();
    let alt = fill(
        &texts.alt,
        &[
            ("depth", &millimetres(mm(f64::from(GAUGE)))),
            ("ruler", &millimetres(mm(f64::from(RULER)))),
            ("marks", &told.join(" ")),
        ],
    );
    let gauge = EdgeGauge {
        fold_label: texts.fold.clone(),
        ruler_label: texts.ruler.clone(),
        mm_label: "mm".to_owned(),
        inch_label: "in".to_owned(),
        depth: GAUGE,
        ruler: RULER,
        marks,
    };
    Picture { alt: alt.trim_end().to_owned(), kind: PictureKind::EdgeGauge(gauge) }
}

/// The depths of the lesson's canvases, those of one depth together.
fn depths(plan: &Plan, words: &Words, show: &Show) -> Vec<DepthMark> {
    let texts = &words.pictures.edge_gauge;
    let mut groups: Vec<(Length, Vec<&str>)> = Vec::new();
    for canvas in plan.lesson.canvases.iter().filter(|canvas| canvas.depth > Length::default()) {
        match groups.iter_mut().find(|(depth, _)| show.length(*depth) == show.length(canvas.depth))
        {
            Some((_, names)) => names.push(&canvas.name),
            None => groups.push((canvas.depth, vec![&canvas.name])),
        }
    }
    let mark = |(depth, names): (Length, Vec<&str>)| DepthMark {
        label: fill(
            &texts.mark,
            &[("canvas", &names.join(&texts.between)), ("depth", &show.length(depth))],
        ),
        depth: in_mm(depth),
    };
    groups.into_iter().map(mark).collect()
}

fn spread_rings(words: &Words, show: &Show) -> Picture {
    let texts = &words.pictures.spread_rings;
    let target = SpreadTarget::of(show.units());
    let rings = target.rings().map(|ring| SpreadRing {
        radius: in_mm(ring.radius),
        label: show.viscosity(ring.viscosity),
        radius_label: millimetres(ring.radius),
    });
    let bands = target.bands().map(|band| SpreadBand {
        name: word(band.consistency, words),
        inner: in_mm(band.inner),
        outer: in_mm(band.outer),
    });
    let volume = show.volume(target.volume);
    let told = rings.each_ref().map(|ring| {
        fill(&texts.ring, &[("viscosity", &ring.label), ("radius", &ring.radius_label)])
    });
    let banded = bands.each_ref().map(|band| {
        let (inner, outer) = (millimetres(mm(band.inner)), millimetres(mm(band.outer)));
        fill(&texts.band, &[("consistency", &band.name), ("inner", &inner), ("outer", &outer)])
    });
    let alt = fill(
        &texts.alt,
        &[
            ("volume", &volume),
            ("time", &show.seconds(target.time)),
            ("rings", &told.join("; ")),
            ("bands", &banded.join("; ")),
        ],
    );
    let centre_label = fill(&texts.centre, &[("volume", &volume)]);
    let kind = PictureKind::SpreadRings(SpreadRings {
        centre_label,
        rings: rings.to_vec(),
        bands: bands.to_vec(),
    });
    Picture { alt, kind }
}
