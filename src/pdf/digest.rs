//! A fingerprint of bytes: the same on every machine and in every release.

/// FNV-1a over 128 bits (Fowler, Noll, Vo; constants from IETF draft
/// draft-eastlake-fnv, section 5). Not a guard against forgery, only against chance.
pub(crate) fn digest(bytes: impl IntoIterator<Item = u8>) -> u128 {
    const BASIS: u128 = 0x6C62_272E_07BB_0142_62B8_2175_6295_C58D;
    const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013B;
    bytes.into_iter().fold(BASIS, |hash, byte| (hash ^ u128::from(byte)).wrapping_mul(PRIME))
}

#[cfg(test)]
mod tests {
    use super::digest;

    /// Test vectors of FNV-1a 128: the draft's for the empty text and for "a".
    #[test]
    fn the_published_test_vectors_come_out() {
        assert_eq!(digest(*b""), 0x6C62_272E_07BB_0142_62B8_2175_6295_C58D);
        assert_eq!(digest(*b"a"), 0xD228_CB69_6F1A_8CAF_7891_2B70_4E4A_8964);
    }
}
