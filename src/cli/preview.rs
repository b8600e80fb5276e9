//! `preview`: the handouts in the browser, while the lesson is written.

use super::disk::read_templates;
use super::failure::Failure;
use super::say::{eprintln, println};
use super::{advice, args};
use crate::lesson::{Print, shown};
use crate::preview::{NoPreview, Preview};
use std::collections::BTreeMap;

pub(super) fn preview(arguments: args::Preview) -> Result<(), Failure> {
    let args::Preview { lesson, port, no_browser, print, templates } = arguments;
    // A folder that cannot be read at the start is no slip of writing.
    templates.as_deref().map(read_templates).transpose()?;
    let folder = templates.clone();
    let preview = Preview {
        lesson: lesson.clone(),
        port,
        dress: Box::new(move |lesson: &mut Print| print.choose(lesson)),
        templates: Box::new(move || match &folder {
            Some(folder) => read_templates(folder).map_err(|failure| failure.text().to_owned()),
            None => Ok(BTreeMap::new()),
        }),
        advise: Box::new(advice::remarks),
        templates_folder: templates,
    };
    let serving = preview.start().map_err(|why| match why {
        NoPreview::Unread(text) => Failure::Disk(format!("{text}\n\n")),
        NoPreview::System(what) => Failure::disk(what),
    })?;
    let address = format!("http://{}/", serving.address());
    println!("{} as it will print: {address}", shown(&lesson));
    println!("Save the file, and the page follows. Ctrl+C ends the preview.");
    if !no_browser && let Err(error) = open::that_detached(&address) {
        eprintln!("warning: no browser could be opened ({error}); open the address yourself");
    }
    serving.wait();
    Ok(())
}
