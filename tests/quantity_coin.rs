//! Money in whole coins.

use proptest::prelude::*;
use puddlebook::quantity::{Coin, Currency, Decimal, Money};
use std::num::NonZeroU32;

fn money(units: i64, decimals: u32) -> Money {
    Money::new(Decimal::new(units, decimals))
}

fn heads(count: u32) -> NonZeroU32 {
    NonZeroU32::new(count).unwrap()
}

/// ISO 4217 gives the yen no decimals, the dollar two and the Kuwaiti dinar three.
#[test]
fn ten_are_shared_by_three_in_the_coins_of_the_currency() {
    let cases = [
        (Currency::JPY, money(10, 0), [4, 3, 3], 0),
        (Currency::USD, money(1000, 2), [334, 333, 333], 2),
        (Currency::KWD, money(10_000, 3), [3334, 3333, 3333], 3),
    ];
    for (currency, ten, parts, decimals) in cases {
        let coin = Coin::of(currency);
        let expected: Vec<Money> = parts.iter().map(|part| money(*part, decimals)).collect();
        assert_eq!(coin.split(ten, &[1, 1, 1]), expected);
        // 10 / 3 is 3.33..., and a coin more.
        assert_eq!(coin.to_cover(ten, heads(3)), expected[0]);
        assert_eq!(coin.to_cover(ten, heads(1)), ten);
    }
}

/// 7 cents by 8 : 5 : 7 are 2.8, 1.75 and 2.45 cents: 2 + 1 + 2, and the two that are
/// missing go to the remainders .8 and .75.
#[test]
fn the_largest_remainders_get_the_coins_that_are_left() {
    let parts = Coin::of(Currency::EUR).split(money(7, 2), &[8, 5, 7]);
    assert_eq!(parts, [money(3, 2), money(2, 2), money(2, 2)]);
}

#[test]
fn shares_of_no_weight_are_equal_and_nobody_shares_nothing() {
    let coin = Coin::of(Currency::EUR);
    assert_eq!(coin.split(money(3, 2), &[0, 0]), [money(2, 2), money(1, 2)]);
    assert_eq!(coin.split(money(3, 2), &[0, 5]), [money(0, 2), money(3, 2)]);
    assert!(coin.split(money(3, 2), &[]).is_empty());
}

#[test]
fn an_amount_finer_than_a_coin_loses_nothing() {
    let parts = Coin::of(Currency::JPY).split(money(105, 1), &[1, 1]);
    assert_eq!(parts.into_iter().sum::<Money>(), money(105, 1));
}

#[test]
fn halves_of_a_coin_round_away_from_zero() {
    let coin = Coin::of(Currency::USD);
    assert_eq!(coin.nearest(money(1_005, 3)), money(101, 2));
    assert_eq!(coin.nearest(money(-1_005, 3)), money(-101, 2));
}

proptest! {
    /// Every share is its exact part rounded down or up, so the largest remainder misses no
    /// share by a coin.
    #[test]
    fn shares_add_up_and_none_is_off_by_a_coin(
        cents in 0_i64..100_000_000,
        weights in prop::collection::vec(0_u64..1_000_000_000_000, 1..30),
    ) {
        prop_assume!(weights.iter().any(|weight| *weight > 0));
        let parts = Coin::of(Currency::USD).split(money(cents, 2), &weights);
        prop_assert_eq!(parts.iter().copied().sum::<Money>(), money(cents, 2));
        let all: i128 = weights.iter().copied().map(i128::from).sum();
        for (part, weight) in parts.iter().zip(&weights) {
            let mut coins = part.amount();
            coins.rescale(2);
            let coins = coins.mantissa();
            prop_assert!((coins * all - i128::from(cents) * i128::from(*weight)).abs() < all);
        }
    }

    #[test]
    fn a_fee_covers_and_a_coin_less_does_not(cents in 1_i64..1_000_000_000_000, count in 1_u32..1000) {
        let fee = Coin::of(Currency::USD).to_cover(money(cents, 2), heads(count));
        prop_assert!(fee * count >= money(cents, 2));
        prop_assert!((fee - money(1, 2)) * count < money(cents, 2));
    }

    /// 1 / 3 of a dinar and the like have no end; what is cut off must not hide a coin.
    #[test]
    fn amounts_finer_than_a_coin_are_covered_too(tiny in 1_i64..i64::MAX, count in 1_u32..1000) {
        let amount = money(tiny, 20);
        let fee = Coin::of(Currency::KWD).to_cover(amount, heads(count));
        prop_assert!(fee * count >= amount);
        prop_assert!((fee - money(1, 3)) * count < amount);
    }
}
