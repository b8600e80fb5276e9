use super::drawing::{self, Gallery};
use super::fields::Wish;
use super::inputs::Inputs;
use super::order::Compared;
use super::save::{self, Unsaved};
use super::version::{Look, Version};
use super::workshop::Workshop;
use std::collections::VecDeque;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use tokio::sync::watch;

/// So many earlier and tried versions are kept, for pages that still show them.
const KEPT: usize = 4;

/// The versions of a lesson that pages may ask for, and the workshop that makes them.
pub(super) struct Shelf {
    workshop: Workshop,
    state: Mutex<State>,
    gallery: Mutex<Gallery>,
    /// One version is made at a time.
    bench: Mutex<()>,
    news: watch::Sender<u64>,
}

#[derive(Default)]
struct State {
    /// The last number given.
    numbers: u64,
    /// As they were read last, whether right or wrong.
    inputs: Option<Arc<Inputs>>,
    now: Now,
    kept: VecDeque<Shown>,
}

/// The last good version, and what is wrong since then.
#[derive(Clone, Default)]
pub(super) struct Now {
    pub(super) shown: Option<Shown>,
    pub(super) fault: Option<String>,
}

/// A version with its number.
#[derive(Clone)]
pub(super) struct Shown {
    pub(super) number: u64,
    pub(super) version: Arc<Version>,
}

/// A version with a wish, beside the one without.
pub(super) struct TriedOut {
    pub(super) shown: Shown,
    pub(super) compared: Compared,
    pub(super) unwritable: Option<String>,
}

/// Why a request of a page came to nothing, in words.
pub(super) enum Refused {
    /// The page shows a version that is not kept any more.
    Outdated,
    /// The wish cannot be met.
    Wrong(String),
    /// Somebody else changed the file.
    Changed(String),
}

impl Shelf {
    /// An empty shelf.
    pub(super) fn new(workshop: Workshop) -> Self {
        let (news, _) = watch::channel(0);
        Self {
            workshop,
            state: Mutex::default(),
            gallery: Mutex::default(),
            bench: Mutex::default(),
            news,
        }
    }

    /// Reads the files, and makes a version of them if they are not what they were.
    pub(super) fn refresh(&self) {
        let _bench = lock(&self.bench);
        let (inputs, lesson) = self.workshop.gather();
        if lock(&self.state).inputs.as_deref() == Some(&inputs) {
            return;
        }
        let inputs = Arc::new(inputs);
        let made = self.workshop.make(&inputs, lesson);
        let mut state = lock(&self.state);
        state.inputs = Some(inputs);
        match made {
            Ok(version) => {
                let shown = state.number(version);
                let before = state.now.shown.replace(shown);
                state.now.fault = None;
                state.keep(before);
            }
            Err(fault) => state.now.fault = Some(fault),
        }
        drop(state);
        self.news.send_modify(|news| *news += 1);
    }

    /// Whether the lesson file could be read at all when it was read last.
    pub(super) fn has_lesson(&self) -> bool {
        lock(&self.state).inputs.as_ref().is_some_and(|inputs| inputs.lesson().is_some())
    }

    pub(super) fn now(&self) -> Now {
        lock(&self.state).now.clone()
    }

    /// The file name of the lesson.
    pub(super) fn file_name(&self) -> String {
        self.workshop.lesson().file_name().unwrap_or_default().to_string_lossy().into_owned()
    }

    /// A number that grows whenever [`Self::now`] is another.
    pub(super) fn news(&self) -> watch::Receiver<u64> {
        self.news.subscribe()
    }

    /// The files that the last version was made of, or would have been.
    pub(super) fn paths(&self) -> Vec<PathBuf> {
        let inputs = lock(&self.state).inputs.clone();
        inputs.iter().flat_map(|inputs| inputs.paths()).map(PathBuf::from).collect()
    }

    /// A version that is kept.
    pub(super) fn version(&self, number: u64) -> Option<Arc<Version>> {
        lock(&self.state)
            .all()
            .find(|shown| shown.number == number)
            .map(|shown| Arc::clone(&shown.version))
    }

    /// The picture of a page of a version that is kept.
    pub(super) fn picture(&self, look: Look) -> Option<Arc<str>> {
        if let Some(picture) = lock(&self.gallery).get(look) {
            return Some(picture);
        }
        let (pdf, page) = lock(&self.state).all().find_map(|shown| {
            shown.version.handouts.iter().find_map(|handout| {
                let page = handout.looks.iter().position(|other| *other == look)?;
                Some((Arc::clone(&handout.pdf), page))
            })
        })?;
        let picture: Arc<str> = drawing::draw(&pdf, page)?.into();
        lock(&self.gallery).keep(look, Arc::clone(&picture));
        Some(picture)
    }

    /// Makes a version with a wish; no file is touched.
    pub(super) fn try_out(&self, number: u64, wish: &Wish) -> Result<TriedOut, Refused> {
        let _bench = lock(&self.bench);
        let base = self.version(number).ok_or(Refused::Outdated)?;
        let tried = self.workshop.try_out(&base.inputs, wish).map_err(Refused::Wrong)?;
        let compared = base.order.beside(&tried.version.order);
        let mut state = lock(&self.state);
        let shown = state.number(tried.version);
        state.keep(Some(shown.clone()));
        Ok(TriedOut { shown, compared, unwritable: tried.unwritable })
    }

    /// Writes a wish into the lesson file, if that is still what the version was made of.
    pub(super) fn write(&self, number: u64, wish: &Wish) -> Result<(), Refused> {
        {
            let _bench = lock(&self.bench);
            let base = self.version(number).ok_or(Refused::Outdated)?;
            let text = wish.write_into(base.inputs.text()).map_err(Refused::Wrong)?;
            base.inputs
                .read_with(&text)
                .map_err(|faults| Refused::Wrong(super::workshop::told(&faults)))?;
            let before = base.inputs.lesson().unwrap_or_default();
            save::replace(self.workshop.lesson(), before, text.as_bytes()).map_err(|unsaved| {
                match unsaved {
                    Unsaved::Changed => Refused::Changed(unsaved.to_string()),
                    other => Refused::Wrong(other.to_string()),
                }
            })?;
        }
        self.refresh();
        Ok(())
    }
}

impl State {
    fn number(&mut self, version: Version) -> Shown {
        self.numbers += 1;
        Shown { number: self.numbers, version: Arc::new(version) }
    }

    fn keep(&mut self, shown: Option<Shown>) {
        self.kept.extend(shown);
        while self.kept.len() > KEPT {
            self.kept.pop_front();
        }
    }

    fn all(&self) -> impl Iterator<Item = &Shown> {
        self.now.shown.iter().chain(self.kept.iter().rev())
    }
}

/// A version that was half kept by a thread that fell is whole all the same.
fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}
