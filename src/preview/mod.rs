//! A lesson in the browser, as it will print, drawn again whenever a file of it is saved.
//!
//! In: the path of a lesson and how it is to be printed. Out: a page that is served to this
//! machine alone. The parts:
//!
//! ```text
//! files --(watch)--> workshop --> version --> shelf --(routes, behind the gate)--> page
//!                    inputs       fields, order   drawing
//! ```
//!
//! `workshop` makes a version of all handouts out of `inputs`, the files as they were read;
//! `shelf` keeps the last good version, what is wrong since, and what was tried; `drawing`
//! turns pages of the very PDF into pictures; `save` writes a change into the lesson. A page
//! asks for versions, handouts and pictures by numbers and words that are looked up: no path
//! of a request reaches the disk. This room knows no sums and sets no type.

mod drawing;
mod fields;
mod gate;
mod inputs;
mod order;
mod remark;
mod routes;
mod save;
mod serve;
mod shelf;
mod version;
mod watch;
mod workshop;

use crate::lesson::Print;
use crate::plan::Plan;
pub use remark::{Remark, Spot};
use serve::Server;
use shelf::Shelf;
use std::collections::BTreeMap;
use std::fmt;
use std::io::ErrorKind;
use std::net::SocketAddr;
use std::path::PathBuf;
use std::sync::Arc;
use watch::Watch;
use workshop::Workshop;

/// What the command line chooses instead of the lesson.
pub type Dress = Box<dyn Fn(&mut Print) + Send + Sync>;

/// Templates by file name, read anew each time; or what is wrong with them, in words.
pub type OwnTemplates = Box<dyn Fn() -> Result<BTreeMap<String, String>, String> + Send + Sync>;

/// What a good colleague would say of a plan.
pub type Advise = Box<dyn Fn(&Plan) -> Vec<Remark> + Send + Sync>;

/// What is to be shown, and where.
pub struct Preview {
    /// The lesson file.
    pub lesson: PathBuf,
    /// On which port of 127.0.0.1; 0 takes one that is free.
    pub port: u16,
    pub dress: Dress,
    pub templates: OwnTemplates,
    pub advise: Advise,
    /// The folder of these templates, to be watched.
    pub templates_folder: Option<PathBuf>,
}

/// Why there is nothing to show.
#[derive(Debug)]
pub enum NoPreview {
    /// The lesson file could not be read; the text says why, as on the terminal.
    Unread(String),
    /// No place to serve on, or no watch on the files.
    System(String),
}

/// A preview that is being served, until it is dropped.
#[derive(Debug)]
pub struct Serving {
    server: Server,
    watch: Watch,
}

impl Preview {
    /// Makes the first version and serves it. A lesson that is wrong is served as well: the page
    /// says what is wrong, and draws it once it is right.
    ///
    /// # Errors
    /// When the lesson file cannot be read, or the port is taken.
    pub fn start(self) -> Result<Serving, NoPreview> {
        let shelf = Arc::new(Shelf::new(Workshop::new(
            self.lesson,
            self.dress,
            self.templates,
            self.advise,
        )));
        shelf.refresh();
        if !shelf.has_lesson() {
            return Err(NoPreview::Unread(shelf.now().fault.unwrap_or_default()));
        }
        let watch = Watch::start(Arc::clone(&shelf), self.templates_folder)
            .map_err(|error| NoPreview::System(format!("could not watch the files: {error}")))?;
        let port = self.port;
        let server = Server::start(shelf, port, watch.caller()).map_err(|error| {
            NoPreview::System(match error.kind() {
                ErrorKind::AddrInUse => {
                    format!("port {port} is taken; name another, or none, and a free one is found")
                }
                _ => format!("could not serve on port {port} of this machine: {error}"),
            })
        })?;
        Ok(Serving { server, watch })
    }
}

impl Serving {
    /// Where it is served: on 127.0.0.1.
    pub fn address(&self) -> SocketAddr {
        self.server.address()
    }

    /// Serves until the process ends.
    pub fn wait(self) {
        self.server.wait();
        drop(self.watch);
    }
}

impl fmt::Display for NoPreview {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unread(what) | Self::System(what) => formatter.write_str(what),
        }
    }
}

impl std::error::Error for NoPreview {}
