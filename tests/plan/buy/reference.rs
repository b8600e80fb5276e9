//! Against HiGHS: markets from seeds, solved by `tests/reference/least_cost_baskets.py`.

use super::invented::{Recipe, market};
use super::*;

fn number<T: std::str::FromStr<Err: std::fmt::Debug>>(field: Option<&str>) -> T {
    field.unwrap().parse().unwrap()
}

/// The markets, each with its least total in cents.
pub fn recorded() -> Vec<(Market, i64)> {
    let recorded = include_str!("../../reference/least_cost_baskets.csv");
    let lines = recorded.lines().filter(|line| line.starts_with(|c: char| c.is_ascii_digit()));
    lines.map(read).collect()
}

fn read(line: &str) -> (Market, i64) {
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
    (market, number(fields.next()))
}

#[test]
fn larger_markets_cost_what_highs_says() {
    let recorded = recorded();
    assert!(recorded.len() >= 30, "{} recorded", recorded.len());
    for (at, (market, cents)) in recorded.iter().enumerate() {
        let basket = checked(market);
        assert_eq!((in_cents(basket.total), basket.proof), (*cents, Proof::LeastCost), "no. {at}");
    }
}
