//! The galley: strips in order, as blocks deliver them.

use super::strip::{Give, Header, Joint, Reach, Strip, height_of};

/// Strips with what the next one has to heed.
#[derive(Default)]
pub(super) struct Galley<'a> {
    strips: Vec<Strip<'a>>,
    /// Room that the last strip wants after it.
    after: f32,
    /// Height of the heading that stands over the next strip.
    under: Option<Under>,
    next: Next,
    /// Notes for the side column beside the next strip.
    beside: Vec<Strip<'a>>,
    /// A section that starts with the next strip.
    section: Option<Header<'a>>,
}

/// A heading that is a number of lines on the grid high, with the gap under it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Under {
    height: f32,
    grid: f32,
}

impl Under {
    /// About so much room, to a line of the grid.
    fn gap(self, room: f32) -> f32 {
        let room = room * ENOUGH;
        ((self.height + room - 0.05) / self.grid).ceil() * self.grid - self.height
    }
}

/// Part of the wished room under a heading that is enough of it.
const ENOUGH: f32 = 0.7;

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
        if let Some(under) = self.under.take() {
            strip.give = Give::Firm;
            strip.gap = under.gap(strip.gap);
        }
        match (self.next, strip.joint) {
            (Next::Page, _) => strip.joint = Joint::Page,
            (Next::Glued, Joint::Open(_)) => strip.joint = Joint::Glued,
            (Next::Glued | Next::AsItWishes, _) => {}
        }
        self.next = Next::AsItWishes;
        strip.section = strip.section.or(self.section.take());
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

    /// Adds a heading that stays with the next strip. The gap between them gives in to
    /// nothing, and is such that what follows stands on the grid if the heading does; what
    /// that adds to `room` is taken from the gap over the heading.
    pub(super) fn head(&mut self, mut heading: Vec<Strip<'a>>, room: f32, grid: f32) {
        let under = Under { height: height_of(&heading), grid };
        if let Some(first) = heading.first_mut() {
            first.gap -= (under.gap(room) - room).clamp(0.0, first.gap / 2.0);
        }
        self.extend(heading);
        self.leave(room);
        self.under = Some(under);
        self.glue();
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

    /// Starts a section with the next strip, on a page of its own.
    pub(super) fn section(&mut self, header: Header<'a>) {
        self.page();
        self.section = Some(header);
    }

    /// Sets a note beside the next strip.
    pub(super) fn set_beside(&mut self, note: Strip<'a>) {
        self.beside.push(note);
    }

    /// Height of what stands on the page that is begun, if it is one page, with the room
    /// that the next strip finds above it.
    pub(super) fn filled(&self) -> f32 {
        let starts = self.strips.iter().rposition(|strip| strip.joint == Joint::Page);
        let strips = self.strips.get(starts.unwrap_or(0)..).unwrap_or_default();
        let gaps: f32 = strips.iter().skip(1).map(|strip| strip.gap).sum();
        let heights: f32 = strips.iter().map(|strip| strip.height).sum();
        heights + gaps + self.after
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
