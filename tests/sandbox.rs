//! Templates of a user's own in their box: each attack is answered with its file and line.

use crate::handouts::built_in;
use crate::lesson_tools::{SMALL, files_in, read_text};
use puddlebook::handout::{Desk, Document, Sheet, TemplateFault, Templates};
use puddlebook::lesson::Language;
use puddlebook::plan::plan;
use std::collections::BTreeMap;

/// The order of a small lesson, written with templates of these names and texts.
fn written(own: &[(&str, &str)]) -> Result<Document, TemplateFault> {
    let own: BTreeMap<String, String> =
        own.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    let templates = Templates::new(Language::English, &own)?;
    let plan = plan(read_text(SMALL).unwrap()).unwrap();
    let desk = Desk::new(&plan, &templates)?;
    desk.write(Sheet::Order)
}

/// Asserts that an order template is refused at this line, with these words.
fn refused(template: &str, line: usize, words: &str) {
    let fault = match written(&[("order.md", template)]) {
        Ok(_) => panic!("taken: {template}"),
        Err(fault) => fault,
    };
    let said = fault.render();
    assert!(said.contains(words), "{template} gave\n{said}");
    let at = fault.excerpt.as_ref().map(|excerpt| excerpt.line);
    assert_eq!((fault.template.as_str(), at), ("order.md", Some(line)), "{said}");
    assert!(said.contains("order.md"), "{said}");
}

#[test]
fn what_sees_the_machine_is_not_there() {
    refused("\n{{ get_env(name=\"HOME\") }}", 2, "cannot call \"get_env\"");
    refused("a\nb\n{{ now() }}", 3, "cannot call \"now\"");
    refused("{{ get_random(start=0, end=9) }}", 1, "cannot call \"get_random\"");
    refused("{% set home = get_env(name='HOME', default='') %}", 1, "cannot call \"get_env\"");
    refused("{% for a in get_env(name='HOME') %}{% endfor %}", 1, "cannot call \"get_env\"");
    refused("{{ __tera_context }}", 1, "no value \"__tera_context\"");
    refused("{{ title | date }}", 1, "no filter \"date\"");
}

#[test]
fn only_templates_of_the_folder_and_built_in_ones_are_included() {
    for name in ["/etc/passwd", "../order.md", "order.md\\0", "file:///etc/passwd", "C:\\x.md"] {
        refused(&format!("x\n{{% include \"{name}\" %}}"), 2, "no template of this name");
    }
    refused("{% include [\"guide-index.md\", \"/etc/passwd\"] %}", 1, "no template of this name");
    refused("{% include \"/etc/passwd\" ignore missing %}", 1, "no template of this name");
    refused("{% include \"lessn.md\" %}", 1, "did you mean \"lesson.md\"?");
    refused("{% extends \"/etc/passwd\" %}", 1, "no tag \"extends\"");
    refused("{% import \"/etc/passwd\" as m %}", 1, "no tag \"import\"");
    let own = [("order.md", "{% include \"own.md\" %}"), ("own.md", "*{{ title }}*")];
    assert!(written(&own).is_ok());
}

#[test]
fn no_file_stands_in_itself() {
    refused("a\n{% include \"order.md\" %}", 2, "stands in itself");
    let around = [("order.md", "{% include \"a.md\" %}"), ("a.md", "{% include \"order.md\" %}")];
    let fault = written(&around).unwrap_err();
    assert!(fault.render().contains("without an end"), "{}", fault.render());
    let chain = |length: usize| {
        let name = |at: usize| if at == 0 { "order.md".to_owned() } else { format!("p{at}.md") };
        let text = |at: usize| match at + 1 == length {
            true => "end".to_owned(),
            false => format!("{{% include \"{}\" %}}", name(at + 1)),
        };
        let files: Vec<_> = (0..length).map(|at| (name(at), text(at))).collect();
        let files: Vec<_> = files.iter().map(|(n, t)| (n.as_str(), t.as_str())).collect();
        written(&files)
    };
    assert!(chain(7).is_ok(), "six in each other");
    assert!(chain(8).unwrap_err().render().contains("more than 6 deep"));
    assert!(chain(500).unwrap_err().render().contains("more than 6 deep"));
}

#[test]
fn files_that_stand_in_each_other_many_times_are_stopped() {
    // Ten times ten times ten … without any loop.
    let mut files = vec![("order.md".to_owned(), "{% include \"p1.md\" %}".repeat(20))];
    for at in 1..6 {
        let next = format!("{{% include \"p{}.md\" %}}", at + 1).repeat(20);
        files.push((format!("p{at}.md"), next));
    }
    files.push(("p6.md".to_owned(), "{% if title %}{% endif %}".to_owned()));
    let files: Vec<_> = files.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let fault = written(&files).unwrap_err();
    assert!(fault.render().contains("go round too often"), "{}", fault.render());
    assert_eq!(fault.template, "p6.md");
}

#[test]
fn loops_without_end_are_stopped_where_they_stand() {
    refused("{% for a in range(end=100000000) %}{% endfor %}", 1, "up to 1000 numbers");
    let ranges = "{% for a in range(end=1000) %}\n{% for b in range(end=1000) %}\n\
                  {% for c in range(end=1000) %}{% for d in range(end=1000) %}{% endfor %}\
                  {% endfor %}{% endfor %}{% endfor %}";
    refused(ranges, 3, "go round too often");
    let plans =
        format!("{}{}", "{% for a in all_cautions %}\n".repeat(12), "{% endfor %}".repeat(12));
    refused(&plans, 12, "go round too often");
    let letters = "{% set text = all_cautions | map(attribute='reason') | join(sep='') %}\n\
                   {% for a in text %}{% for b in text %}{% endfor %}{% endfor %}";
    refused(letters, 2, "go round too often");
    assert!(
        written(&[("order.md", "{% for a in range(start=1, end=1001) %}{{ a }}\n{% endfor %}")])
            .is_ok()
    );
}

#[test]
fn what_is_written_has_an_end() {
    let much = format!(
        "{{% for a in range(end=1000) %}}\n{}{{% endfor %}}",
        "all work and no play makes a dull handout. ".repeat(1_000)
    );
    refused(&much, 1, "longer than 32 MB");
}

#[test]
fn texts_cannot_be_grown() {
    refused("{% set a = title ~ title %}", 1, "do not join texts with ~");
    refused("{% set a = [title, title] %}", 1, "holds texts and numbers only");
    refused("{% set a = canvases | concat(with=canvases) %}", 1, "no filter \"concat\"");
    refused("{{ title | replace(from=\"\", to=title) }}", 1, "no filter \"replace\"");
    refused("{{ title | indent(prefix=title) }}", 1, "no filter \"indent\"");
    refused("{% filter upper %}a{% endfilter %}", 1, "no tag \"filter\"");
    refused("{{ 9 * 9 }}", 1, "do not compute");
    refused("{{ 1 + 1 }}", 1, "do not compute");
    refused("{{ 99999999999999999999 }}", 1, "too long");
    let join = format!(
        "{{% set long = all_cautions | map(attribute='reason') | join(sep='') %}}\n{}",
        "{% set long = all_cautions | map(attribute='reason') | join(sep=long) %}\n".repeat(40)
    );
    let fault = written(&[("order.md", &join)]).unwrap_err();
    assert!(fault.render().contains("go round too often"), "{}", fault.render());
}

#[test]
fn macros_and_deep_brackets_do_not_reach_the_engine() {
    let endless = "\n{% macro m() %}{{ self::m() }}{% endmacro m %}{{ self::m() }}";
    refused(endless, 2, "no tag \"macro\"");
    refused("{{ self::m() }}", 1, "no macros");
    refused(&format!("{{{{ {}a{} }}}}", "(".repeat(400), ")".repeat(400)), 1, "too many brackets");
    refused(&format!("{{{{ {}a{} }}}}", "a[".repeat(300), "]".repeat(300)), 1, "too many brackets");
    refused(
        &format!("{{% if {}a %}}{{% endif %}}", "not ".repeat(100)),
        1,
        "too much is connected",
    );
    refused(&format!("{{{{ a{} }}}}", " and a".repeat(100)), 1, "too much is connected");
    refused(&format!("{{{{ {}a }}}}", " ".repeat(2_000)), 1, "longer than 1000 characters");
    let deep = format!("{}{}", "{% if title %}\n".repeat(17), "{% endif %}".repeat(17));
    refused(&deep, 17, "more than 16 loops and conditions");
    let deep = format!("{}x{}", "{% if title %}\n".repeat(16), "{% endif %}".repeat(16));
    assert!(written(&[("order.md", &deep)]).is_ok());
    refused(&"{% if a %}".repeat(50_000), 1, "more than 16 loops and conditions");
    refused("{% blok a %}", 1, "no tag \"blok\"");
    refused("{% fro a in b %}", 1, "did you mean \"for\"?");
    refused("{{ title | uper }}", 1, "did you mean \"upper\"?");
    refused("a\n{% if title %}", 2, "this \"if\" has no end");
    refused("{% for a in canvases %}\n{% endif %}", 2, "the last to begin was \"for\"");
    refused("\n{% endfor %}", 2, "none is open here");
    refused("\n{{ title title }}", 2, "cannot be read");
    refused("{% else %}", 1, "cannot be read");
    refused("{{ a", 1, "this tag has no end");
    refused("{# a", 1, "this comment has no end");
    refused("{% raw %} a", 1, "this raw has no end");
}

#[test]
fn what_stands_in_comments_and_raw_text_is_no_tag() {
    let text = "{# {{ now() }} #}{% raw %}{% macro m() %}{{ now() }}{%- endraw -%} {{ title }}";
    assert!(written(&[("order.md", text)]).is_ok());
    refused("{% raw %}{% endraw %}\n{{ now() }}", 2, "cannot call");
    refused("{# a #}\n{{ now() }}", 2, "cannot call");
    refused("{{ \"}}\" }}\n{{ now() }}", 2, "cannot call");
}

#[test]
fn a_name_that_the_plan_does_not_have_is_found_in_its_file() {
    refused("# A\n\nfor {{ studnets }}", 3, "studnets");
    refused("# A\n{% for a in canvases %}\n{{ a.nmae }}{% endfor %}", 3, "a.nmae");
}

/// The built-in templates keep to the rules that they set, and the counters change no letter.
#[test]
fn white_space_is_as_without_counters() {
    let words = |template: &str| {
        let document = written(&[("order.md", template)]).unwrap();
        format!("{:?}", document.blocks)
    };
    let trimmed = "a\n{%- for i in range(end=2) -%}\n  b\n{%- set c = \"d\" -%}\n {{ c }}\n\
                   {%- endfor -%}\n e";
    assert!(words(trimmed).contains("\"abdbde\""), "{}", words(trimmed));
    let open = "a{% for i in range(end=2) %} b{% set_global c = \"d\" %} {% endfor %}{{ c }}";
    assert!(words(open).contains("\"a b  b d\""), "{}", words(open));
    built_in();
    assert!(files_in("templates/en", "md").len() >= 30);
}
