//! Warnings that a lesson accepts, with a reason.

use super::cases::{CASES, QUIET};
use super::{open, plan_of, run, said, with};
use crate::lesson_tools::read_text;
use puddlebook::lesson::{Concern, ProblemKind};

fn accepting(lesson: &str, entries: &str) -> String {
    format!("{lesson}accepted:\n{entries}\n")
}

#[test]
fn each_warning_can_be_accepted() {
    for case in CASES {
        let plan = plan_of(&accepting(&with(case.due), &format!("  {}: So it is.", case.name)));
        let advice = plan.advice();
        assert!(advice.open.is_empty() && advice.idle.is_empty(), "{}", case.name);
        let [(warning, reason)] = advice.accepted.try_into().unwrap();
        assert_eq!(warning.matter.concern().word(), case.name);
        assert_eq!(reason.reason, "So it is.");
    }
}

#[test]
fn another_is_still_told() {
    let both = with(&[("fee: 10", "fee: 9"), ("budget: 40", "budget: 30")]);
    let text = accepting(&both, "  fee-too-low: The town pays the rest.");
    assert_eq!(open(&plan_of(&text)), ["over-budget"]);
    let output = run(&text, &["check", "my-class.yaml"]);
    let told = said(&output.stderr);
    assert!(told.contains("over-budget") && !told.contains("fee-too-low"), "{told}");
    assert!(said(&output.stdout).ends_with("1 lesson right, 1 warning, 1 accepted\n"));
}

#[test]
fn what_is_accepted_in_vain_is_told_gently() {
    for concern in Concern::ALL {
        let text = accepting(QUIET, &format!("  {}: Long ago.", concern.word()));
        let plan = plan_of(&text);
        let idle: Vec<_> = plan.advice().idle.iter().map(|accepted| accepted.concern).collect();
        // Only an order knows its days of delivery.
        let known = concern != Concern::LateDelivery;
        assert_eq!(idle, if known { vec![concern] } else { vec![] });
    }
    let text = accepting(QUIET, "  over-booking: The caretaker knows.");
    let output = run(&text, &["check", "my-class.yaml"]);
    assert_eq!(output.status.code(), Some(0));
    assert!(said(&output.stdout).ends_with("no warnings, 1 accepted in vain\n"));
    insta::with_settings!({
        snapshot_path => "snapshots",
        prepend_module_to_snapshot => false,
        omit_expression => true,
    }, {
        insta::assert_snapshot!("accepted-in-vain", said(&output.stderr));
    });
}

#[test]
fn a_late_delivery_can_be_accepted_in_an_order() {
    let text = accepting(QUIET, "  late-delivery: I carry this one home myself.");
    let order = ["order", "my-class.yaml", "--delivery", "2026-03-15", "--out", "."];
    assert_eq!(said(&run(&text, &order).stderr), "");
}

#[test]
fn a_name_that_nobody_knows_is_an_error_with_the_nearest() {
    let faults = read_text(&accepting(QUIET, "  over-bookin: Why not.")).unwrap_err();
    assert_eq!(faults.problems().len(), 1, "{faults}");
    assert!(faults.to_string().contains("did you mean \"over-booking\"?"), "{faults}");
    assert_eq!(faults.problems()[0].path, ["accepted", "over-bookin"]);
}

#[test]
fn a_reason_must_be_given() {
    for (nothing, kind) in [("\"\"", true), ("\"  \"", true), ("", false), ("~", false)] {
        let faults = read_text(&accepting(QUIET, &format!("  unused: {nothing}"))).unwrap_err();
        assert_eq!(faults.problems().len(), 1, "{faults}");
        let blank = faults.problems()[0].kind == ProblemKind::BlankText;
        assert_eq!(blank, kind, "{nothing:?}: {faults}");
    }
}

#[test]
fn a_data_file_accepts_nothing() {
    use crate::lesson_tools::read_files;
    let lesson = format!("use: [more.yaml]\n{QUIET}");
    let more = b"accepted: {unused: Always.}";
    let faults =
        read_files(&[("lesson.yaml", lesson.as_bytes()), ("more.yaml", more)]).unwrap_err();
    let kind = &faults.problems()[0].kind;
    assert_eq!(*kind, ProblemKind::LessonKeyInData { key: "accepted".to_owned() });
}
