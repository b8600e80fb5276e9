use super::super::problem::{PartOfCanvas, ProblemKind};
use super::super::source::Unread;
use super::{Words, list, unread};
use crate::quantity::Mass;
use crate::quantity::show::by_size;
use crate::quantity::units::in_gram;

/// The words for what is wrong with weighings; `None` for other problems.
pub(super) fn of(kind: &ProblemKind) -> Option<Words> {
    Some(match kind {
        ProblemKind::WeighingsUnread { name, why } => unread(name, why),
        ProblemKind::LessonUnread { name, why } => {
            let words = unread(name, why);
            match why {
                Unread::NotFound => {
                    words.right("a lesson is named by its path from the folder of this file")
                }
                _ => words,
            }
        }
        ProblemKind::NoWeighings => Words::new("there are no weighings in this file", "here")
            .right("lesson: my-class.yaml, scale: 1 g, and cups: with a line for each")
            .right("- {student: Ana, canvas: square, colour: white, before: 91 g, after: 45 g}"),
        ProblemKind::SeveralClasses => {
            Words::new("a file of weighings holds one class", "a second one starts here")
                .right("make a file for each; a table (.csv) can hold several")
        }
        ProblemKind::ALesson => Words::new("this is a lesson, not weighings", "a lesson").right(
            "weighings are a file of their own that names the lesson: lesson: my-class.yaml",
        ),
        ProblemKind::NotSaid { key } => {
            Words::new(format!("these weighings do not say \"{key}\""), "anywhere in this file")
                .right(said(key))
        }
        ProblemKind::NotCommas => {
            Words::new("the columns of this table are not set apart by commas", "no comma here")
                .right("save it again as CSV with commas, and with decimal points")
        }
        ProblemKind::OpenCell => Words::new("a cell of this row does not end", "from here on")
            .right("a cell that starts with a quotation mark ends with one"),
        ProblemKind::CellCount { found, columns } => {
            let wrong = format!("this row has {found} cells, and the table {columns} columns");
            Words::new(wrong, "this row").right(match found > columns {
                true => "a text with a comma in it stands in quotes: \"spilled, wiped up\"",
                false => "a cell that is left empty has its comma all the same",
            })
        }
        ProblemKind::NoCups => Words::new("no cup is weighed here yet", "none")
            .right("a cup is weighed when its \"before\" and its \"after\" are filled in"),
        ProblemKind::NoScale => {
            Words::new("nobody says what the scale shows in steps of", "of which scale?").right(
                "scale: 1 g for a scale that shows whole grams, scale: 0.1 g for a finer one",
            )
        }
        ProblemKind::LayerNeeded { technique, known } => {
            let known: Vec<&str> = known.iter().map(String::as_str).collect();
            Words::new(format!("\"{technique}\" has several layers"), "which layer?")
                .right(format!("say the layer of this cup; its layers: {}", list(&known)))
        }
        ProblemKind::MixNeeded { technique } => Words::new(
            format!("the lesson has no consistency for this layer of \"{technique}\""),
            "poured how?",
        )
        .right("say the consistency of this cup: consistency: thin"),
        ProblemKind::NoSuchPiece { pieces } => match pieces {
            1 => Words::new("there is only one such canvas", "more than one"),
            _ => Words::new(format!("there are only {pieces} such canvases"), "more than that"),
        }
        .right("the lesson says how many each student paints: \"each\""),
        ProblemKind::HalfWeighed { missing } => {
            let wrong = match missing {
                ["before"] => "this cup is weighed after pouring, but not before",
                ["after"] => "this cup is weighed before pouring, but not after",
                _ => "what ran off is weighed here, but not the cup",
            };
            Words::new(wrong, "half of it")
                .right(format!("write \"{}\" as well", missing.join("\" and \"")))
                .right("or leave all weights empty: a cup that nobody weighed")
        }
        ProblemKind::NotOfCanvas { colour, part, nearest, known } => {
            let PartOfCanvas { canvas, layer } = part.as_ref();
            let place = match layer {
                Some(layer) => format!("the layer \"{layer}\" of \"{canvas}\""),
                None => format!("\"{canvas}\""),
            };
            Words::new(format!("\"{colour}\" is no colour of {place}"), "not poured there").choice(
                nearest.as_deref(),
                known.iter().map(String::as_str),
                "its colours",
            )
        }
        ProblemKind::AfterHeavier => {
            Words::new("this cup weighs more after pouring than before", "heavier")
                .right("look at the sheet: are the two the wrong way round, or is it another cup?")
                .also("before")
        }
        ProblemKind::CupTwice { colour } => {
            Words::new(format!("this cup of {colour} is weighed twice"), "again")
                .right("another canvas of the same kind is another piece: piece: 2")
                .right("another class is another day: give each its date")
        }
        ProblemKind::TrayTwice => Words::new("the tray of this canvas is weighed twice", "again")
            .right("what ran off stands in one row of each layer of a canvas"),
        ProblemKind::TrayHeavier { used } => Words::new(
            format!("more ran off than the {} out of the cups", grams(*used)),
            "more than that",
        )
        .right("the weight of what ran off, without the tray"),
        ProblemKind::PouredTwoWays => {
            Words::new("two cups of one canvas are poured in different ways", "this way")
                .right(
                    "say the same technique in all rows of a canvas, and the same consistency in \
                        all rows of a layer",
                )
                .also("and this way")
        }
        ProblemKind::OuncesAsGrams { weighed, planned } => doubt(*weighed, *planned, "light")
            .right("was the scale set to ounces? then write oz; this one says grams")
            .right("if it is right, say so in this row: checked: yes"),
        ProblemKind::GramsAsOunces { weighed, planned } => doubt(*weighed, *planned, "heavy")
            .right("was the scale set to grams? then write g; this one says ounces")
            .right("if it is right, say so in this row: checked: yes"),
        _ => return None,
    })
}

fn said(key: &str) -> &'static str {
    match key {
        "lesson" => {
            "the lesson that was given, by its path from the folder of this file: \
                     lesson: my-class.yaml"
        }
        "cups" => {
            "cups: with a line for each: - {student: Ana, canvas: square, colour: white, \
                   before: 91 g, after: 45 g}"
        }
        _ => {
            "the first row names the columns; these must be there: lesson, student, canvas, \
              colour, before, after"
        }
    }
}

fn doubt(weighed: Mass, planned: Mass, how: &str) -> Words {
    let wrong = format!(
        "this cup weighs {} where {} were planned: about 28 times too {how}",
        grams(weighed),
        grams(planned)
    );
    Words::new(wrong, "grams or ounces?")
}

fn grams(mass: Mass) -> String {
    format!("{} g", by_size(in_gram(mass), 2))
}
