//! Questions, answers, and what is said of them.

use super::script::{Script, begun};
use crate::lesson_tools::read_text;
use puddlebook::cli::start::{Given, Stop, interview};
use puddlebook::lesson::{Amount, Edge, Language, Lesson, Paper, Shape, Students};
use puddlebook::plan::{self, Purchase};
use puddlebook::quantity::UnitSystem;
use puddlebook::quantity::units::{in_inch, in_ml, in_mm};

fn lesson(answers: &[(&'static str, &str)]) -> Lesson {
    let (_, text, script) = begun(answers);
    assert_eq!(script.wrong, []);
    read_text(&text).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

#[test]
fn who_only_presses_enter_gets_a_right_lesson_in_few_questions() {
    let (begun, text, script) = begun(&[]);
    let lesson = read_text(&text).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.heading.title, "A First Evening of Pouring");
    assert_eq!(lesson.canvases.len(), 1);
    assert!(lesson.shops.is_empty() && lesson.stock.is_empty());
    assert!(script.asked.len() < 15, "{:?}", script.asked);
    assert_eq!(script.wrong, []);
    assert_eq!(begun.file_name(), "a-first-evening-of-pouring.yaml");
}

#[test]
fn every_answer_stands_in_the_lesson() {
    let lesson = lesson(&[
        ("language", "English, centimetres and millilitres, Letter"),
        ("title", "Waves: an \"evening\" # for two"),
        ("teacher", "Juniper Vale"),
        ("place", "The Old Boathouse"),
        ("date", "2026-03-14"),
        ("people", "Ana, Bo, Cem"),
        ("youngest", "11"),
        ("canvas", "wave: rectangle 8 x 10 in, 1/2 in deep, 2 each"),
        ("canvas", "hexagon 15 cm, flat, bare edge"),
        ("canvas", ""),
        ("technique", "flip cup"),
        ("technique", "spun pour"),
        ("consistency", "thin"),
        ("consistency", "thick"),
        ("colours", "my own"),
        ("colours", "deep blue 2, sand 1, white 1"),
        ("colours", "ember"),
        ("cupboard", "White 100 mL, pouring medium 1/2 L, apron 12"),
        ("jar", "thin, white, 300 g, 2026-03-01; sand, thin, 80 mL, mixed 2026-03-02"),
    ]);
    let heading = &lesson.heading;
    assert_eq!(heading.title, "Waves: an \"evening\" # for two");
    assert_eq!(heading.teacher.as_deref(), Some("Juniper Vale"));
    assert_eq!(heading.place.as_deref(), Some("The Old Boathouse"));
    assert_eq!(heading.date.map(|date| date.to_string()).as_deref(), Some("2026-03-14"));
    let print = lesson.print;
    assert_eq!((print.language, print.units), (Language::English, UnitSystem::Metric));
    assert_eq!(print.paper, Paper::Letter);
    let Students::Named(names) = &lesson.class.students else { panic!("names") };
    assert_eq!(names, &["Ana", "Bo", "Cem"]);
    assert_eq!(lesson.class.youngest_age, Some(11));
    let [wave, hexagon] = lesson.canvases.as_slice() else { panic!("two canvases") };
    let Shape::Rectangle { width, height } = wave.shape else { panic!("{:?}", wave.shape) };
    assert_eq!((in_inch(width).round(), in_inch(height).round()), (8.0, 10.0));
    assert_eq!((wave.name.as_str(), wave.each.get()), ("wave", 2));
    assert!((in_inch(wave.depth) - 0.5).abs() < 1e-9);
    assert!(matches!(hexagon.shape, Shape::Polygon { sides: 6, .. }));
    assert_eq!((hexagon.edge, in_mm(hexagon.depth)), (Edge::Bare, 0.0));
    let poured: Vec<_> =
        [wave, hexagon].map(|c| (c.technique.name.as_str(), c.layers[0].mix.name.as_str())).into();
    assert_eq!(poured, [("flip cup", "thin"), ("spun pour", "thick")]);
    let shares = |canvas: &puddlebook::lesson::Canvas| {
        let colours = canvas.layers[0].colours.iter();
        colours.map(|(c, share)| format!("{} {}", c.name, share.percent())).collect::<Vec<_>>()
    };
    assert_eq!(shares(wave), ["deep blue 50", "sand 25", "white 25"]);
    assert_eq!(shares(hexagon).len(), 4);
    let stock: Vec<_> = lesson.stock.iter().map(|line| line.item.as_str()).collect();
    assert_eq!(stock, ["white acrylic", "pouring medium", "apron"]);
    assert!(matches!(lesson.stock[1].amount, Amount::Volume(v) if (in_ml(v) - 500.0).abs() < 1e-9));
    assert_eq!(lesson.stock[2].amount, Amount::Pieces(12));
    assert_eq!((lesson.jars[0].colour.as_str(), lesson.jars[0].mix.as_str()), ("white", "thin"));
    assert_eq!(lesson.jars[1].mixed.to_string(), "2026-03-02");
}

#[test]
fn a_wrong_answer_is_told_in_the_words_of_a_wrong_file_and_asked_again() {
    let (_, text, script) = begun(&[
        ("title", " "),
        ("title", "Right"),
        ("date", "14.3.2026"),
        ("date", "2026-03-14"),
        ("people", "eight"),
        ("people", "0"),
        ("people", "9"),
        ("canvas", "square 10,5 x 10,5 in, 1/2 in deep"),
        ("canvas", "square 10 oz"),
        ("canvas", "round 12 in"),
        ("colours", "my own"),
        ("colours", "blue 60 %, sand 44 %"),
        ("colours", "blue 60 %, sand 40 %"),
        ("cupboard", "puring medium 5 fl oz"),
        ("cupboard", "pouring medium 5 oz"),
        ("cupboard", "pouring medium 5 fl oz"),
        ("jar", "white, medium, 300 g, 2027-01-01"),
        ("jar", ""),
    ]);
    let told: Vec<String> =
        script.wrong.iter().map(|(option, why)| format!("{option}: {why}")).collect();
    let said = [
        ("title", "nothing is written here"),
        ("date", "2026-03-14"),
        ("people", "is no number of people"),
        ("people", "1 to 1000"),
        ("canvas", "decimals are written with a point here: 10,5\nwrite 10.5 in"),
        ("canvas", "this should be a length, not a weight"),
        ("colours", "the shares of this layer add up to 104 %, not 100 %"),
        ("cupboard", "did you mean \"pouring medium\"?"),
        ("cupboard", "an ounce may be fluid or weight"),
        ("jar", "this jar is mixed after the class"),
    ];
    assert_eq!(told.len(), said.len(), "{told:#?}");
    for (told, (option, part)) in told.iter().zip(said) {
        assert!(told.starts_with(option) && told.contains(part), "{part} in {told}");
    }
    let lesson = read_text(&text).unwrap();
    assert_eq!(lesson.heading.title, "Right");
    assert!(matches!(lesson.canvases[0].shape, Shape::Round { .. }));
}

#[test]
fn a_technique_with_a_base_asks_for_its_colour() {
    let lesson = lesson(&[
        ("technique", "blown pour"),
        ("colours", "shoreline"),
        ("base", "black 3, white 1"),
    ]);
    let layers: Vec<Vec<&str>> = lesson.canvases[0]
        .layers
        .iter()
        .map(|layer| layer.colours.iter().map(|(colour, _)| colour.name.as_str()).collect())
        .collect();
    assert_eq!(layers, [vec!["black", "white"], vec!["harbour blue", "sand", "white"]]);
}

#[test]
fn consequences_are_those_of_the_plan() {
    let (begun, text, script) = begun(&[("people", "12"), ("canvas", "square 12 in, 3/4 in deep")]);
    let plan = plan::plan(read_text(&text).unwrap()).unwrap();
    assert_eq!(in_ml(plan.to_mix()), in_ml(begun.plan().to_mix()));
    // 14 sets of a 12 in square with a 3/4 in edge, 180 in², by the rule of thumb 7.2 fl oz each.
    let paint = script.heard.iter().rfind(|said| said.starts_with("That is about")).unwrap();
    assert!(paint.contains("a canvas; for 12 people, 1 set that you pour to show and 1 spare set"));
    let litres = in_ml(plan.to_mix()) / 1000.0;
    assert!(paint.contains(&format!("({litres:.1}\u{A0}L)")), "{paint}: {litres}");
    let order = script.heard.last().unwrap();
    for line in plan.order.lines.iter().filter(|l| !matches!(l.purchase, Purchase::Nothing)).take(4)
    {
        assert!(order.contains(&line.item), "{} in {order}", line.item);
    }
}

#[test]
fn a_spanish_lesson_is_begun_in_spanish_names_and_english_questions() {
    let (_, text, script) = begun(&[("language", "Spanish"), ("technique", "barrido")]);
    let lesson = read_text(&text).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(lesson.print.language, Language::Spanish);
    assert_eq!(lesson.canvases[0].technique.name, "barrido");
    assert!(text.contains("# Cómo se llama la clase."));
    assert!(script.heard.iter().any(|said| said.starts_with("That is about")));
}

#[test]
fn who_leaves_gets_nothing() {
    for option in ["language", "title", "canvas", "technique", "colours", "cupboard"] {
        let mut script = Script::default().leaving_at(option);
        let left = interview(&mut script, &Given::default(), "");
        assert!(matches!(left, Err(Stop::Left)), "{option}");
    }
}

#[test]
fn the_session_of_the_readme_is_what_is_said() {
    let plain = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let readme = plain(include_str!("../../README.md"));
    let (.., script) = begun(&[
        ("title", "Two Ways to Pour"),
        ("teacher", "Juniper Vale"),
        ("date", "2026-03-14"),
        ("canvas", "square 10,5 x 10,5 in, 1/2 in deep"),
        ("canvas", "square 10 x 10 in, 1/2 in deep, 2 each"),
        ("technique", "flip cup"),
        ("cupboard", "pouring medium 16 fl oz, 12 apron"),
    ]);
    let wrong = script.wrong.iter().map(|(_, why)| why);
    for said in script.heard.iter().chain(wrong) {
        assert!(readme.contains(&plain(said)), "{said}");
    }
    assert!(script.heard.len() >= 5);
}
