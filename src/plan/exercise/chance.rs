//! Chance that can be made again: one text, one row of numbers, on every machine.

/// A row of numbers that look thrown and are not: SplitMix64 (Steele, Lea and Flood, "Fast
/// splittable pseudorandom number generators", OOPSLA 2014), with the constants of its authors.
pub(super) struct Chance(u64);

impl Chance {
    /// The row of a text, its bytes hashed to where the row begins.
    pub(super) fn from_seed(seed: &str) -> Self {
        Self(hash(seed.bytes()))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number below `count`, or 0 where that is 0: the high half of a product. Some come up
    /// more often by `count` in 2^64, which nobody will see.
    pub(super) fn below(&mut self, count: usize) -> usize {
        let high = (u128::from(self.next()) * count as u128) >> 64;
        usize::try_from(high).unwrap_or(0)
    }

    /// Fisher and Yates: every order is as likely as the next.
    pub(super) fn shuffle<T>(&mut self, items: &mut [T]) {
        for last in (1..items.len()).rev() {
            items.swap(last, self.below(last + 1));
        }
    }
}

/// FNV-1a over 64 bits (Fowler, Noll, Vo; constants from IETF draft-eastlake-fnv, section 5).
fn hash(bytes: impl IntoIterator<Item = u8>) -> u64 {
    const BASIS: u64 = 0xCBF2_9CE4_8422_2325;
    const PRIME: u64 = 0x0000_0100_0000_01B3;
    bytes.into_iter().fold(BASIS, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(PRIME))
}

#[cfg(test)]
mod tests {
    use super::{Chance, hash};

    /// First five outputs from 1234567, as listed on Rosetta Code, "Pseudo-random
    /// numbers/Splitmix64", made there with the published C code.
    #[test]
    fn the_published_row_comes_out() {
        let mut chance = Chance(1_234_567);
        let row = [(); 5].map(|()| chance.next());
        let published = [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
            4_593_380_528_125_082_431,
            16_408_922_859_458_223_821,
        ];
        assert_eq!(row, published);
    }

    /// Test vectors of FNV-1a 64: the draft's for the empty text, "a" and "foobar".
    #[test]
    fn the_published_hashes_come_out() {
        assert_eq!(hash(*b""), 0xCBF2_9CE4_8422_2325);
        assert_eq!(hash(*b"a"), 0xAF63_DC4C_8601_EC8C);
        assert_eq!(hash(*b"foobar"), 0x8594_4171_F739_67E8);
    }

    #[test]
    fn every_order_of_four_comes_up_about_as_often() {
        let mut chance = Chance::from_seed("orders");
        let mut counts = std::collections::BTreeMap::new();
        for _ in 0..24_000 {
            let mut cards = [0, 1, 2, 3];
            chance.shuffle(&mut cards);
            *counts.entry(cards).or_insert(0_i32) += 1;
        }
        assert_eq!(counts.len(), 24);
        // Chi-squared with 23 degrees of freedom passes 49.7 once in a thousand.
        let chi: f64 = counts.values().map(|n| f64::from((n - 1000).pow(2)) / 1000.0).sum();
        assert!(chi < 49.7, "{chi}");
    }
}
