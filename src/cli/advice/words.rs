//! Warnings in the words of a colleague: what is the matter, its figures, what would help. The
//! one place where this is written; the terminal speaks English whatever the lesson does.

use crate::lesson::{Accepted, Amount, Practice, ServiceLevel, Sort, TableSize, Unused};
use crate::plan::{Cause, ELBOW_ROOM_MM, Matter, Needy, Product, Scales};
use crate::quantity::show::Show;
use crate::quantity::units::{in_gram, inch, mm};
use crate::quantity::{Date, Length, Mass, Time, UnitSystem, Volume};

/// What a warning says.
pub(super) struct Words {
    /// The heading: what is the matter.
    pub(super) matter: String,
    /// Beside the caret: the figures.
    pub(super) mark: String,
    /// What would help, one sentence a line.
    pub(super) help: Vec<String>,
}

impl Words {
    fn new(matter: impl Into<String>, mark: impl Into<String>) -> Self {
        Self { matter: matter.into(), mark: mark.into(), help: Vec::new() }
    }

    fn help(mut self, help: impl Into<String>) -> Self {
        self.help.push(help.into());
        self
    }
}

/// The label comes before whatever is said here.
const LABEL_FIRST: &str =
    "its label and its safety data sheet come first: read them, and have them at hand";

/// The words for a warning, amounts in the units of the lesson.
pub(super) fn of(matter: &Matter, show: &Show) -> Words {
    match matter {
        Matter::NoReserve { level, expected, usual } => no_reserve(*level, *expected, *usual, show),
        Matter::CoarseScale { step, least, what, error, better } => {
            coarse_scale((*step, *least, *better), what, *error, show)
        }
        Matter::DryingRoom { area, there, pieces, fit } => Words::new(
            "the level surface is too small for all canvases",
            format!("{pieces} canvases take {}", show.surface(*area)),
        )
        .help(format!("there is room for about {fit}, gaps included"))
        .help(format!("find {} more, or pour fewer", show.surface(*area - *there))),
        Matter::CrowdedTables { students, seats, table } => {
            crowded_tables(*students, *seats, *table, show)
        }
        Matter::EarlyFinish { finish, after_days, drying_days } => Words::new(
            format!("\"{finish}\" goes on before the canvas is dry to the touch"),
            format!("after {}, but it dries for {}", days(*after_days), days(*drying_days)),
        )
        .help("a finish over wet paint clouds and cracks: give its \"after\" more days"),
        Matter::OverBooking { minutes, end, until } => Words::new(
            format!("the steps take {} longer than the booking", time(*minutes)),
            format!("the last step ends at {}", clock(*end)),
        )
        .help(format!(
            "the room is booked until {}: book longer, start earlier, or shorten a step",
            clock(*until)
        )),
        Matter::LateDelivery { lesson, delivery } => Words::new(
            "the first delivery comes after this lesson",
            format!("the first is on {delivery}"),
        )
        .help(format!("what it needs is ordered apart, to be there by {lesson}"))
        .help("an earlier day of delivery would bring it with the rest"),
        Matter::OverBudget { budget, total, bought } => Words::new(
            format!("the class costs {} more than it may", show.money(*total - *budget)),
            format!("{} are paid in all", show.money(*total)),
        )
        .help(format!(
            "{} of it are paid in shops, the rest is under \"money\"",
            show.money(*bought)
        ))
        .help("\"puddlebook plan\" shows where it goes, and what a smaller class would pay"),
        Matter::FeeTooLow { fee: _, pays, loss } => Words::new(
            "the fee does not pay for the class",
            format!("{} are missing", show.money(*loss)),
        )
        .help(format!("with {} the class pays for itself", show.money(*pays))),
        Matter::NoPrice { items } => no_price(items),
        Matter::HeatWithChildren { tool, age, cause } => Words::new(
            format!("a {} where the youngest is {age}", tool.word()),
            brought(cause),
        )
        .help("cool air from a hair dryer chases bubbles too, and burns nobody")
        .help("where an adult alone works it, the young people a step back, that is the reason"),
        Matter::AdditivesWithChildren { practice, age, cause } => Words::new(
            format!("{} where the youngest is {age}", practice.word()),
            brought(cause),
        )
        .help("leave it out, or let an adult add it, the young people a step back")
        .help("its label and its safety data sheet come first, also in from which age it is meant"),
        Matter::FlameAndAlcohol { tool, cause } => flame_and_alcohol(*tool, cause),
        Matter::ColourCaution(product) => colour_caution(product),
        Matter::OldJar { colour, mix, amount, last_day, lesson } => {
            old_jar(format!("{colour}, {mix}"), *amount, (*last_day, *lesson), show)
        }
        Matter::Unused(unused) => not_used(unused),
    }
}

fn no_reserve(
    level: ServiceLevel,
    expected: Volume,
    usual: Option<(ServiceLevel, Volume)>,
    show: &Show,
) -> Words {
    let mark = format!("{} are expected, and no more", show.volume_both(expected));
    let Some((usual, kept)) = usual else {
        return Words::new("nothing is kept in reserve, as if all canvases took the same", mark)
            .help("say how much use varies, class varies by: 8 % and students vary by: 15 %");
    };
    Words::new("nothing is kept in reserve", mark)
        .help(format!(
            "each colour is enough in {} of {} classes, and runs short in the others",
            level.classes(),
            level.out_of()
        ))
        .help(format!(
            "\"enough in: {} classes out of {}\" keeps {} on top",
            usual.classes(),
            usual.out_of(),
            show.volume_both(kept)
        ))
}

fn coarse_scale(
    (step, least, better): (Mass, Mass, Mass),
    what: &Scales,
    error: f64,
    show: &Show,
) -> Words {
    let what = match what {
        Scales::Ingredient { material, colour, mix } => {
            format!("the {material} in a batch of {colour}, {mix}")
        }
        Scales::Cup { colour, canvas } => format!("the {colour} in a cup for \"{canvas}\""),
    };
    Words::new(
        format!("the scale is too coarse for {what}"),
        format!("{} in steps of {}", show.mass(least), show.mass(step)),
    )
    .help(format!("half a step is {} of it, too much or too little", show.percent(error)))
    .help(format!(
        "a scale that shows {} would do; say so with mixing: {{scale step: {} g}}",
        show.mass(better),
        in_gram(better)
    ))
}

fn crowded_tables(students: u32, seats: u32, table: TableSize, show: &Show) -> Words {
    Words::new(
        format!("{students} students at a table with room for {seats}"),
        format!("a table is {} × {}", show.length(table.length), show.length(table.width)),
    )
    .help(format!(
        "whoever pours wants about {} of a long side; the ends are for passing cups",
        show.length(elbow_room(show))
    ))
    .help(match seats {
        0 => "take larger tables".to_owned(),
        _ => format!("per table: {seats}, and more tables"),
    })
}

/// As people say it in the units of the lesson.
fn elbow_room(show: &Show) -> Length {
    match show.units() {
        UnitSystem::Us => inch(24.0),
        UnitSystem::Metric => mm(ELBOW_ROOM_MM),
    }
}

fn no_price(items: &[String]) -> Words {
    let named: Vec<String> = items.iter().map(|item| format!("\"{item}\"")).collect();
    Words::new(format!("no shop sells {}", named.join(", ")), "in none of these price lists")
        .help("until then it is missing in all sums, and \"puddlebook order\" refuses to order")
        .help(
            "give it a line in a price list, count it in the stock, or name it under \"bought \
             elsewhere\"",
        )
}

/// What brings a practice into a lesson.
fn brought(cause: &Cause) -> String {
    match cause {
        Cause::Lesson => "the lesson names it".to_owned(),
        Cause::Technique(name) => format!("\"{name}\" is done with it"),
        Cause::Material(name) => format!("with \"{name}\""),
    }
}

fn flame_and_alcohol(tool: Practice, cause: &Cause) -> Words {
    let alcohol = match cause {
        Cause::Lesson => "alcohol".to_owned(),
        Cause::Technique(name) | Cause::Material(name) => format!("alcohol (\"{name}\")"),
    };
    Words::new(
        format!("a {} in a lesson with {alcohol}", tool.word()),
        "its vapour burns from about 12 °C (53 °F) on",
    )
    .help("do without one of them: nothing that holds alcohol comes near a flame or a hot tool")
}

fn colour_caution(product: &Product) -> Words {
    let name = &product.name;
    match &product.why {
        Needy::Label(caution) => {
            Words::new(format!("\"{name}\" carries a caution"), beginning(caution))
                .help("it is printed on the mixing cards and in the guide")
                .help(LABEL_FIRST)
        }
        Needy::Pigments { pigments, age } => Words::new(
            format!("\"{name}\" holds {}, and the youngest is {age}", pigments.join(", ")),
            "for children another colour is chosen",
        )
        .help("take a colour without it")
        .help(LABEL_FIRST),
    }
}

/// As much of a text as has room beside a caret.
fn beginning(text: &str) -> String {
    const ROOM: usize = 60;
    if text.chars().count() <= ROOM {
        return text.to_owned();
    }
    let beginning: String = text.chars().take(ROOM).collect();
    let words = beginning.rsplit_once(' ').map_or(beginning.as_str(), |(words, _)| words);
    format!("{words} …")
}

fn old_jar(what: String, amount: Amount, (last_day, lesson): (Date, Date), show: &Show) -> Words {
    let amount = match amount {
        Amount::Volume(volume) => show.volume(volume),
        Amount::Mass(mass) => show.mass(mass),
        Amount::Pieces(pieces) => pieces.to_string(),
    };
    let before = last_day.until(lesson).map(|span| span.get_days()).unwrap_or_default();
    let before = u32::try_from(before).unwrap_or_default();
    Words::new(
        format!("the jar of {what} is past its day"),
        format!("kept until {last_day}, {} before the class", days(before)),
    )
    .help(format!("its {amount} are not counted; take the jar off the list"))
    .help("if it is still good, say how long it keeps, for example keeps: 60 days")
}

fn not_used(unused: &Unused) -> Words {
    let (what, how) = match unused.sort {
        Sort::Palette => ("palette", "name it under a canvas"),
        Sort::Colour => ("colour", "give it a share in a palette"),
        Sort::Mix => ("mix", "name it under a canvas"),
        Sort::Technique => ("technique", "name it under a canvas"),
        _ => ("finish", "name it under a canvas"),
    };
    let words = Words::new(format!("nothing uses the {what} \"{}\"", unused.name), "not used")
        .help(format!("{how}, or take it out"));
    match unused.sort {
        Sort::Mix | Sort::Technique => words.help("the guide has it in its tables all the same"),
        _ => words,
    }
}

fn days(days: u32) -> String {
    if days == 1 { "1 day".to_owned() } else { format!("{days} days") }
}

fn time(minutes: u32) -> String {
    match (minutes / 60, minutes % 60) {
        (0, 1) => "1 minute".to_owned(),
        (0, minutes) => format!("{minutes} minutes"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}

fn clock(time: Time) -> String {
    format!("{}:{:02}", time.hour(), time.minute())
}

/// What is said of something that is accepted and does not occur.
pub(super) fn of_idle(accepted: &Accepted) -> Words {
    let name = accepted.concern.word();
    Words::new(format!("\"{name}\" is accepted, and nothing here is the matter"), "not needed")
        .help("take it out, so that the file stays true")
}

/// How a warning is accepted.
pub(super) fn how_to_accept(name: &str) -> String {
    format!("if it is right all the same, say why: accepted: {{{name}: the reason}}")
}
