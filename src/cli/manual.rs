//! `manual`: man pages, made from the help texts.

use super::args;
use super::disk::write_all;
use super::failure::Failure;
use super::say::{self, println};
use crate::lesson::shown;
use crate::quantity::nearest::nearest;
use clap_mangen::Man;
use std::path::PathBuf;

pub(super) fn manual(arguments: &args::Manual) -> Result<(), Failure> {
    let mut program = super::command().disable_help_subcommand(true);
    program.build();
    let commands: Vec<clap::Command> = program.get_subcommands().cloned().collect();
    if let Some(folder) = &arguments.out {
        let mut files = vec![page(program)?];
        for command in commands {
            files.push(page(command)?);
        }
        let files: Vec<_> =
            files.into_iter().map(|(name, page)| (folder.join(name), page)).collect();
        write_all(&files)?;
        for (path, _) in &files {
            println!("{}", shown(path));
        }
        return Ok(());
    }
    let about = match &arguments.about {
        None => program,
        Some(name) => {
            let names = commands.iter().map(clap::Command::get_name);
            let near = nearest(name, names.clone()).map(str::to_owned);
            let known = names.collect::<Vec<_>>().join(", ");
            let unknown = || {
                let help = match near {
                    Some(near) => format!("did you mean \"{near}\"?"),
                    None => format!("commands: {known}"),
                };
                Failure::Use(format!("error: there is no command called \"{name}\"\nhelp: {help}"))
            };
            let found = commands.iter().find(|command| command.get_name() == name);
            found.cloned().ok_or_else(unknown)?
        }
    };
    say::bytes(&page(about)?.1);
    Ok(())
}

/// The name of a page's file, and the page.
fn page(command: clap::Command) -> Result<(PathBuf, Vec<u8>), Failure> {
    let man = Man::new(command);
    let mut page = Vec::new();
    let written = man.render(&mut page);
    written.map_err(|error| Failure::disk(format!("no manual: {error}")))?;
    Ok((PathBuf::from(man.get_filename()), page))
}
