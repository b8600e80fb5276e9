//! Help texts, completions, the manual and the version: made from the arguments, so held against
//! them whatever commands there are.

use super::{printed, run};
use puddlebook::cli::command;
use std::fs;
use std::process::Command;

/// The commands, without the one that clap adds.
fn commands() -> Vec<clap::Command> {
    command().get_subcommands().cloned().collect()
}

/// The lines of a help text that begin with the name of the program.
fn examples(help: &str) -> Vec<Vec<String>> {
    let lines = help.lines().map(str::trim).filter(|line| line.starts_with("puddlebook "));
    // What follows after several spaces is said about the example.
    let lines = lines.map(|line| line.split("   ").next().unwrap());
    lines.map(|line| line.split_whitespace().map(str::to_owned).collect()).collect()
}

#[test]
fn every_command_has_an_example_that_the_program_takes() {
    let commands = commands();
    assert!(commands.len() >= 9);
    for known in commands {
        let name = known.get_name();
        let help = printed(&[name, "--help"]);
        assert!(help.contains("Exit codes: 0 done"), "{name}");
        let own: Vec<_> = examples(&help)
            .into_iter()
            .filter(|words| words.get(1).is_some_and(|word| word == name))
            .collect();
        assert!(!own.is_empty(), "{name} has no example");
        for words in own {
            let taken = command().try_get_matches_from(&words);
            let taken = taken.unwrap_or_else(|error| panic!("{words:?}: {error}"));
            assert_eq!(taken.subcommand_name(), Some(name), "{words:?}");
        }
    }
}

#[test]
fn the_help_of_the_program_shows_where_to_begin() {
    let help = printed(&["--help"]);
    let examples = examples(&help);
    assert!(examples.len() >= 3);
    for words in examples {
        match command().try_get_matches_from(&words) {
            Ok(_) => {}
            Err(error) => {
                assert_eq!(error.kind(), clap::error::ErrorKind::DisplayHelp, "{words:?}")
            }
        }
    }
    assert!(commands().iter().all(|known| help.contains(known.get_name())));
}

#[test]
fn help_fits_a_terminal_of_80_columns() {
    let mut texts = vec![printed(&["--help"]), printed(&["explain"]), printed(&["schema"])];
    texts.extend(commands().iter().map(|known| printed(&[known.get_name(), "--help"])));
    for text in texts {
        for line in text.lines() {
            assert!(line.chars().count() <= 80, "{line}");
            assert_eq!(line, line.trim_end());
        }
    }
}

#[test]
fn every_argument_says_what_it_is() {
    for known in commands() {
        for argument in known.get_arguments() {
            let said = argument.get_help().map(ToString::to_string).unwrap_or_default();
            assert!(said.len() > 5, "{} {}", known.get_name(), argument.get_id());
        }
    }
}

#[test]
fn every_shell_completes_every_command() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let script = printed(&["completions", shell]);
        for known in commands() {
            assert!(script.contains(known.get_name()), "{shell}: {}", known.get_name());
        }
        assert!(script.contains("large-print"), "{shell}: options too");
    }
    assert_eq!(run(&["completions", "cmd"]).status.code(), Some(2));
}

#[test]
#[cfg(unix)]
fn bash_takes_its_completions() {
    let folder = tempfile::tempdir().unwrap();
    let script = folder.path().join("puddlebook");
    fs::write(&script, printed(&["completions", "bash"])).unwrap();
    let syntax = Command::new("bash").arg("-n").arg(&script).status().unwrap();
    assert!(syntax.success());
    // Sourced, it offers the commands that begin with what is typed.
    let ask = format!(
        "source '{}'; COMP_WORDS=(puddlebook expl); COMP_CWORD=1; COMP_LINE='puddlebook expl'; \
         _puddlebook puddlebook expl puddlebook; echo \"${{COMPREPLY[@]}}\"",
        script.display()
    );
    let offered = Command::new("bash").args(["-c", &ask]).output().unwrap();
    assert_eq!(String::from_utf8(offered.stdout).unwrap().trim(), "explain");
}

#[test]
fn the_manual_has_a_page_for_every_command() {
    let folder = tempfile::tempdir().unwrap();
    printed(&["manual", "--out", folder.path().to_str().unwrap()]);
    let whole = fs::read_to_string(folder.path().join("puddlebook.1")).unwrap();
    assert!(whole.contains(".TH puddlebook 1") && whole.contains("workbooks"));
    assert_eq!(whole, printed(&["manual"]));
    for known in commands() {
        let name = known.get_name();
        let page = fs::read_to_string(folder.path().join(format!("puddlebook-{name}.1"))).unwrap();
        assert_eq!(page, printed(&["manual", name]));
        let said = known.get_about().unwrap().to_string();
        assert!(page.contains(&said.replace('-', "\\-")), "{name}: {said}");
        assert!(page.contains("Examples:") && page.contains("Exit codes"), "{name}");
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), commands().len() + 1);
    let output = run(&["manual", "mkae"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8(output.stderr).unwrap().contains("did you mean \"make\"?"));
}

#[test]
fn the_version_says_what_was_built() {
    let said = printed(&["--version"]);
    let (version, build) = said.trim().split_once(" (").unwrap();
    assert_eq!(version, concat!("puddlebook ", env!("CARGO_PKG_VERSION")));
    let build: Vec<&str> = build.strip_suffix(')').unwrap().split(", ").collect();
    let [.., target, profile] = build.as_slice() else { panic!("{said}") };
    assert!(target.contains(std::env::consts::ARCH), "{said}");
    assert!(["debug", "release"].contains(profile), "{said}");
    assert_eq!(printed(&["-V"]).trim(), version);
    let head = Command::new("git")
        .args(["rev-parse", "HEAD"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output();
    let in_git = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(".git").exists();
    match head {
        Ok(head) if in_git && head.status.success() => {
            let commit = build[0].strip_prefix("commit ").unwrap();
            assert!(String::from_utf8(head.stdout).unwrap().starts_with(commit), "{said}");
            assert_eq!(commit.len(), 12);
        }
        _ => {}
    }
}
