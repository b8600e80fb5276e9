//! Work on many things at once, each by itself: what comes out does not depend on how
//! many hands there are.

use std::num::NonZero;
use std::panic::resume_unwind;
use std::sync::{Mutex, PoisonError};
use std::thread;

/// More hands than this only wait for memory.
const MOST: usize = 4;

/// What `work` makes of each of `items`, in their order; each hand has a tool of its own,
/// and at least `least` things to do.
pub(crate) fn map<T: Send, Tool, Made: Send>(
    items: Vec<T>,
    least: usize,
    tool: impl Fn() -> Tool + Sync,
    work: impl Fn(&mut Tool, T) -> Made + Sync,
) -> Vec<Made> {
    let hands = thread::available_parallelism().map_or(1, NonZero::get).min(MOST);
    let hands = hands.min(items.len() / least.max(1)).max(1);
    let queue = Mutex::new(items.into_iter().enumerate());
    let next = || queue.lock().unwrap_or_else(PoisonError::into_inner).next();
    let toil = || {
        let mut tool = tool();
        let mut made = Vec::new();
        while let Some((place, item)) = next() {
            made.push((place, work(&mut tool, item)));
        }
        made
    };
    let mut made = thread::scope(|scope| {
        let others: Vec<_> = (1..hands).map(|_| scope.spawn(toil)).collect();
        let mut made = toil();
        for other in others {
            made.extend(other.join().unwrap_or_else(|panic| resume_unwind(panic)));
        }
        made
    });
    made.sort_unstable_by_key(|&(place, _)| place);
    made.into_iter().map(|(_, made)| made).collect()
}

#[cfg(test)]
mod tests {
    use super::map;

    #[test]
    fn everything_is_done_once_and_stays_in_order() {
        for count in [0_usize, 1, 2, 3, 100] {
            let made = map((0..count).collect(), 1, || 7, |seven, item| item * *seven);
            assert_eq!(made, (0..count).map(|item| item * 7).collect::<Vec<_>>());
        }
    }
}
