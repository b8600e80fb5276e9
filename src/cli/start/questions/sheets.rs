use super::super::answers::Sheets;
use super::super::ask::{Ask, Choice, Question, Stop};
use super::super::given::GivenSheets;
use crate::lesson::{Language, Paper};
use crate::quantity::UnitSystem;

/// All ways to write the handouts, the usual ones first.
const WAYS: [(Language, UnitSystem, Paper); 8] = [
    (Language::English, UnitSystem::Us, Paper::Letter),
    (Language::English, UnitSystem::Metric, Paper::A4),
    (Language::Spanish, UnitSystem::Metric, Paper::A4),
    (Language::Spanish, UnitSystem::Us, Paper::Letter),
    (Language::Spanish, UnitSystem::Metric, Paper::Letter),
    (Language::English, UnitSystem::Metric, Paper::Letter),
    (Language::English, UnitSystem::Us, Paper::A4),
    (Language::Spanish, UnitSystem::Us, Paper::A4),
];

/// Countries that print on Letter paper.
const LETTER: [&str; 12] = ["US", "CA", "MX", "PH", "CL", "CO", "CR", "GT", "PA", "SV", "VE", "PR"];

/// Language, units and paper, in one question.
pub(in super::super) fn sheets(
    ask: &mut dyn Ask,
    given: &GivenSheets,
    locale: &str,
) -> Result<Sheets, Stop> {
    let fits = |(language, units, paper): &(Language, UnitSystem, Paper)| {
        given.language.is_none_or(|it| it == *language)
            && given.units.is_none_or(|it| it == *units)
            && given.paper.is_none_or(|it| it == *paper)
    };
    let ways: Vec<_> = WAYS.into_iter().filter(fits).collect();
    let usual = usual(locale, given.language);
    let alike = |way: &(Language, UnitSystem, Paper)| {
        let here = [way.0 == usual.0, way.1 == usual.1, way.2 == usual.2];
        here.into_iter().filter(|same| *same).count()
    };
    // The first of those that are most like the usual one.
    let best = ways.iter().map(alike).max();
    let offered = ways.iter().position(|way| Some(alike(way)) == best).unwrap_or_default();
    let question = Question {
        option: "language",
        words: "How are your handouts printed?".to_owned(),
        help: "arrow keys, then Enter; Esc leaves, and nothing is written".to_owned(),
        ..Question::default()
    };
    let choices: Vec<Choice> = ways.iter().map(|way| choice(*way)).collect();
    let at = if ways.len() > 1 { ask.choose(&question, &choices, offered)? } else { 0 };
    let (language, units, paper) = ways.get(at).copied().unwrap_or(usual);
    Ok(Sheets { language, units, paper })
}

fn choice((language, units, paper): (Language, UnitSystem, Paper)) -> Choice {
    let language = match language {
        Language::English => "English",
        Language::Spanish => "Spanish",
    };
    let units = match units {
        UnitSystem::Us => "inches and fluid ounces",
        UnitSystem::Metric => "centimetres and millilitres",
    };
    let paper = match paper {
        Paper::A4 => "A4 paper",
        Paper::Letter => "Letter paper",
    };
    Choice { name: format!("{language}, {units}, {paper}"), meaning: String::new() }
}

/// What is usual where `locale` is spoken; inches where neither it nor the language says more.
fn usual(locale: &str, wanted: Option<Language>) -> (Language, UnitSystem, Paper) {
    let plain = locale.split(['.', '@']).next().unwrap_or_default();
    let (language, country) = plain.split_once(['_', '-']).unwrap_or((plain, ""));
    let spanish = wanted.map_or(language == "es", |wanted| wanted == Language::Spanish);
    let nowhere = country.is_empty() && !spanish;
    let units = match country {
        "US" | "LR" | "MM" => UnitSystem::Us,
        _ if nowhere => UnitSystem::Us,
        _ => UnitSystem::Metric,
    };
    let paper = if nowhere || LETTER.contains(&country) { Paper::Letter } else { Paper::A4 };
    (if spanish { Language::Spanish } else { Language::English }, units, paper)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_and_paper_follow_the_country() {
        let (en, es) = (Language::English, Language::Spanish);
        let (us, metric) = (UnitSystem::Us, UnitSystem::Metric);
        assert_eq!(usual("en_US.UTF-8", None), (en, us, Paper::Letter));
        assert_eq!(usual("en_GB.UTF-8", None), (en, metric, Paper::A4));
        assert_eq!(usual("es_MX", None), (es, metric, Paper::Letter));
        assert_eq!(usual("es", None), (es, metric, Paper::A4));
        assert_eq!(usual("C.UTF-8", None), (en, us, Paper::Letter));
        assert_eq!(usual("", Some(es)), (es, metric, Paper::A4));
        assert_eq!(usual("en_US", Some(es)), (es, us, Paper::Letter));
    }
}
