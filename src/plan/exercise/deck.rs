use super::chance::Chance;
use super::{Exercise, FriendlyCanvas};
use crate::quantity::UnitSystem;
use std::collections::VecDeque;

/// All friendly canvases, shuffled. What is dealt goes to the bottom, and the cards at the
/// bottom are not dealt: so nobody finds a canvas of a neighbour, and one comes back only when
/// all that would do have been dealt before it.
pub(super) struct Deck {
    cards: VecDeque<FriendlyCanvas>,
    /// Cards at the bottom that rest.
    resting: usize,
}

impl Deck {
    /// For sheets of so many exercises: no canvas is twice on a sheet and the one before it.
    pub(super) fn shuffled(units: UnitSystem, exercises: usize, chance: &mut Chance) -> Self {
        let mut cards = super::canvas::all(units);
        chance.shuffle(&mut cards);
        Self { cards: cards.into(), resting: (2 * exercises).saturating_sub(1) }
    }

    /// The exercise on the first card that makes one.
    pub(super) fn deal(
        &mut self,
        exercise: impl Fn(FriendlyCanvas) -> Option<Exercise>,
    ) -> Option<Exercise> {
        let rested = self.cards.len().saturating_sub(self.resting);
        let mut cards = self.cards.iter().take(rested).enumerate();
        let (at, dealt) = cards.find_map(|(at, card)| Some((at, exercise(*card)?)))?;
        let card = self.cards.remove(at)?;
        self.cards.push_back(card);
        Some(dealt)
    }
}
