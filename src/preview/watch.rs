//! Looks again whenever a file of the lesson may have changed.
//!
//! Editors save by writing a new file and giving it the name of the old one, so folders are
//! watched and not files. What is told of a folder only makes us look: whether anything is
//! different is seen from what the files say.

use super::shelf::Shelf;
use notify::event::{AccessKind, AccessMode};
use notify::{Config, Event, EventKind, PollWatcher, RecursiveMode, Watcher, recommended_watcher};
use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::{self, JoinHandle};
use std::time::Duration;

/// A save is over when nothing happened for so long.
const QUIET: Duration = Duration::from_millis(60);
/// After so many pauses that were none, we look anyway.
const PATIENCE: usize = 16;
/// How often files are compared where the system does not tell of changes.
const POLL: Duration = Duration::from_secs(1);

/// The thread that looks; it ends when this is dropped.
#[derive(Debug)]
pub(super) struct Watch {
    caller: Caller,
    thread: Option<JoinHandle<()>>,
}

/// Asks for another look.
#[derive(Debug, Clone)]
pub(super) struct Caller(Sender<Call>);

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Call {
    Look,
    Stop,
}

impl Caller {
    pub(super) fn look(&self) {
        // Nobody listens when the preview ends.
        let _ = self.0.send(Call::Look);
    }
}

impl Watch {
    /// Watches the files of the lesson, and the folder of templates.
    pub(super) fn start(shelf: Arc<Shelf>, templates: Option<PathBuf>) -> io::Result<Self> {
        let (sender, calls) = channel();
        let caller = Caller(sender);
        let watcher = watcher(&caller).map_err(io::Error::other)?;
        let eyes = Eyes { watcher, on: BTreeSet::new() };
        let thread = thread::Builder::new()
            .name("watch".to_owned())
            .spawn(move || look(&shelf, templates, eyes, &calls))?;
        Ok(Self { caller, thread: Some(thread) })
    }

    pub(super) fn caller(&self) -> Caller {
        self.caller.clone()
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        let _ = self.caller.0.send(Call::Stop);
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

fn look(shelf: &Shelf, templates: Option<PathBuf>, mut eyes: Eyes, calls: &Receiver<Call>) {
    loop {
        shelf.refresh();
        let mut folders: BTreeSet<PathBuf> =
            shelf.paths().iter().flat_map(|path| folders_of(path)).collect();
        folders.extend(templates.as_deref().and_then(existing));
        if eyes.turn_to(folders) {
            // What happened before we watched is seen by looking once more.
            continue;
        }
        match calls.recv() {
            Ok(Call::Look) => {
                for _ in 0..PATIENCE {
                    match calls.recv_timeout(QUIET) {
                        Ok(Call::Look) => {}
                        Ok(Call::Stop) => return,
                        Err(_) => break,
                    }
                }
            }
            Ok(Call::Stop) | Err(_) => return,
        }
    }
}

/// The folders that are watched.
struct Eyes {
    watcher: Box<dyn Watcher + Send>,
    on: BTreeSet<PathBuf>,
}

impl Eyes {
    /// Watches these folders and no others; whether there is a new one.
    fn turn_to(&mut self, folders: BTreeSet<PathBuf>) -> bool {
        for left in self.on.difference(&folders) {
            // It may be gone.
            let _ = self.watcher.unwatch(left);
        }
        let mut is_new = false;
        for folder in folders.difference(&self.on) {
            is_new |= self.watcher.watch(folder, RecursiveMode::NonRecursive).is_ok();
        }
        self.on = folders;
        is_new
    }
}

/// The folder of a file, and of the file that it may be a link to.
fn folders_of(path: &Path) -> impl Iterator<Item = PathBuf> {
    let real = fs::canonicalize(path).ok();
    let folders = [
        path.parent().and_then(existing),
        real.as_deref().and_then(Path::parent).and_then(existing),
    ];
    folders.into_iter().flatten()
}

/// A folder, or the nearest above it that is there, so that its coming is seen.
fn existing(folder: &Path) -> Option<PathBuf> {
    let here = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    let found = here.ancestors().find(|above| above.is_dir()).unwrap_or(Path::new("."));
    fs::canonicalize(found).ok()
}

/// Told by the system, or else by looking every second.
fn watcher(caller: &Caller) -> notify::Result<Box<dyn Watcher + Send>> {
    let told = || {
        let caller = caller.clone();
        move |event: notify::Result<Event>| {
            if event.map_or(true, |event| may_change(event.kind)) {
                caller.look();
            }
        }
    };
    match recommended_watcher(told()) {
        Ok(watcher) => Ok(Box::new(watcher)),
        Err(_) => {
            let every = Config::default().with_poll_interval(POLL);
            Ok(Box::new(PollWatcher::new(told(), every)?))
        }
    }
}

/// Reading is no change; we read ourselves.
fn may_change(kind: EventKind) -> bool {
    match kind {
        EventKind::Access(access) => access == AccessKind::Close(AccessMode::Write),
        _ => true,
    }
}
