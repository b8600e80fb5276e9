//! Money as whole coins: the largest unit of which every price is a multiple.

use crate::quantity::{Decimal, Money};

/// A number of coins.
pub(super) type Coins = i64;

/// More than this is not counted. Far below what `i64` holds, so that sums of sums and
/// weights of [`super::threshold`] fit too.
pub(super) const MOST: Coins = 100_000_000_000;

/// What one coin is worth.
#[derive(Debug, Clone, Copy)]
pub(super) struct Coinage {
    /// Decimals of the finest amount.
    scale: u32,
    /// Of 10^-scale.
    unit: i128,
}

impl Coinage {
    /// The coinage of some prices; `sums` may be any amounts that prices are compared with.
    pub(super) fn of(prices: &[Money], sums: &[Money]) -> Self {
        let finest = |money: &Money| money.amount().normalize().scale();
        let scale = prices.iter().chain(sums).map(finest).max().unwrap_or(0);
        let fine = prices.iter().map(|price| ticks(*price, scale).unwrap_or(1));
        Self { scale, unit: fine.fold(0, common_divisor).max(1) }
    }

    /// An amount of which the coin is a divisor; `None` when it is too much.
    pub(super) fn coins(&self, money: Money) -> Option<Coins> {
        self.coins_up(money)
    }

    /// The least number of coins that is worth the amount; `None` when it is too much.
    pub(super) fn coins_up(&self, money: Money) -> Option<Coins> {
        let ticks = ticks(money, self.scale)?;
        let coins = ticks.div_euclid(self.unit) + i128::from(ticks.rem_euclid(self.unit) > 0);
        Coins::try_from(coins).ok().filter(|coins| *coins <= MOST)
    }

    /// Like all of [`Money`], as much as a decimal holds where it runs over.
    pub(super) fn money(&self, coins: Coins) -> Money {
        let ticks = i128::from(coins).checked_mul(self.unit);
        let decimal = ticks.and_then(|it| Decimal::try_from_i128_with_scale(it, self.scale).ok());
        Money::new(decimal.map_or(Decimal::MAX, |amount| amount.normalize()))
    }
}

/// In units of 10^-scale, exactly.
fn ticks(money: Money, scale: u32) -> Option<i128> {
    let amount = money.amount().normalize();
    let finer = 10_i128.checked_pow(scale.checked_sub(amount.scale())?)?;
    amount.mantissa().checked_mul(finer)
}

fn common_divisor(one: i128, other: i128) -> i128 {
    let (mut one, mut other) = (one.abs(), other.abs());
    while other != 0 {
        (one, other) = (other, one % other);
    }
    one
}
