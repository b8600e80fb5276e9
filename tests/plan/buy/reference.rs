//! Against HiGHS: markets from seeds, solved by `tests/reference/least_cost_baskets.py`.

use super::invented::{Recipe, market};
use super::*;

fn number<T: std::str::FromStr<Err: std::fmt::Debug>>(field: Option<&str>) -> T {
    field.unwrap().parse().unwrap()
}

#[test]
fn larger_markets_cost_what_highs_says() {
    let recorded = include_str!("../../reference/least_cost_baskets.csv");
    let mut compared = 0;
    for line in recorded.lines().filter(|line| line.starts_with(|c: char| c.is_ascii_digit())) {
        let mut fields = line.split(',');
        let recipe = Recipe {
            items: number(fields.next()),
            shops: number(fields.next()),
            sums: number(fields.next()),
            seed: number(fields.next()),
        };
        let market = market(recipe);
        // The same market as there?
        let (count, sum): (usize, i64) = (number(fields.next()), number(fields.next()));
        let prices = market.items.iter().flat_map(|item| &item.offers);
        let prices: Vec<i64> = prices.map(|offer| in_cents(offer.price)).collect();
        assert_eq!((prices.len(), prices.iter().sum::<i64>()), (count, sum), "{recipe:?}");
        let cents: i64 = number(fields.next());
        let basket = checked(&market);
        assert_eq!((in_cents(basket.total), basket.proof), (cents, Proof::LeastCost), "{recipe:?}");
        compared += 1;
    }
    assert!(compared >= 30, "{compared} recorded");
}
