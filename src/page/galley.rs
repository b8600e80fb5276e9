//! The galley: strips in order, as blocks deliver them.

use super::strip::{Joint, Reach, Strip};

/// Strips with what the next one has to heed.
#[derive(Default)]
pub(super) struct Galley<'a> {
    strips: Vec<Strip<'a>>,
    /// Room that the last strip wants after it.
    after: f32,
    next: Next,
    /// Notes for the side column beside the next strip.
    beside: Vec<Strip<'a>>,
}

/// How the next strip joins.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Next {
    #[default]
    AsItWishes,
    Glued,
    Page,
}

impl<'a> Galley<'a> {
    /// Adds a strip below all others.
    pub(super) fn push(&mut self, mut strip: Strip<'a>) {
        strip.gap = strip.gap.max(self.after);
        self.after = 0.0;
        match (self.next, strip.joint) {
            (Next::Page, _) => strip.joint = Joint::Page,
            (Next::Glued, Joint::Open(_)) => strip.joint = Joint::Glued,
            (Next::Glued | Next::AsItWishes, _) => {}
        }
        self.next = Next::AsItWishes;
        // A note waits for something that leaves the side column free.
        if strip.reach == Reach::Column {
            strip.beside.append(&mut self.beside);
        }
        self.strips.push(strip);
    }

    /// Adds strips in order.
    pub(super) fn extend(&mut self, strips: impl IntoIterator<Item = Strip<'a>>) {
        for strip in strips {
            self.push(strip);
        }
    }

    /// Asks for room after the last strip.
    pub(super) fn leave(&mut self, room: f32) {
        self.after = self.after.max(room);
    }

    /// Keeps the last strip with the next.
    pub(super) fn glue(&mut self) {
        if self.next == Next::AsItWishes {
            self.next = Next::Glued;
        }
    }

    /// Starts a page with the next strip.
    pub(super) fn page(&mut self) {
        if !self.strips.is_empty() {
            self.next = Next::Page;
        }
    }

    /// Sets a note beside the next strip.
    pub(super) fn set_beside(&mut self, note: Strip<'a>) {
        self.beside.push(note);
    }

    /// Height of the notes that wait for the next strip.
    pub(super) fn height_beside(&self) -> f32 {
        self.beside.iter().map(|note| note.height + note.gap).sum()
    }

    pub(super) fn finish(mut self) -> Vec<Strip<'a>> {
        if !self.beside.is_empty() {
            self.push(Strip::default());
        }
        self.strips
    }
}
