//! Work on many things at once, each by itself: what comes out does not depend on how
//! many hands there are.

use std::num::NonZero;
use std::sync::{Mutex, PoisonError};
use std::thread;

use super::PdfError;

/// With fewer things a thread costs more than it saves: a handout of a page or two is
/// often one of many that are written side by side.
const WORTH: usize = 8;

/// More hands than this only wait for memory.
const HANDS: usize = 4;

/// Does `work` on each of `items`; of several faults it reports one.
pub(super) fn each<T: Send>(
    items: &mut [T],
    work: impl Fn(&mut T) -> Result<(), PdfError> + Sync,
) -> Result<(), PdfError> {
    let hands = thread::available_parallelism().map_or(1, NonZero::get).min(HANDS);
    if items.len() < WORTH || hands < 2 {
        return items.iter_mut().try_for_each(work);
    }
    let queue = Mutex::new(items.iter_mut());
    let next = || queue.lock().unwrap_or_else(PoisonError::into_inner).next();
    let toil = || {
        while let Some(item) = next() {
            work(item)?;
        }
        Ok(())
    };
    thread::scope(|scope| {
        let others: Vec<_> = (1..hands).map(|_| scope.spawn(toil)).collect();
        let mut result = toil();
        for other in others {
            let lost = || Err(PdfError::Bytes("a thread was lost".to_owned()));
            result = result.and(other.join().unwrap_or_else(|_| lost()));
        }
        result
    })
}
