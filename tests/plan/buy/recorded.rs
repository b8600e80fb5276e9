//! Larger instances against the optima of SciPy's HiGHS (`milp`, gap 0), recorded by
//! tests/reference/least_cost.py with its versions and seeds in the file.

use super::{checked, in_cents, offer_of, terms};
use puddlebook::plan::buy::{Market, Need, Proof};
use serde_json::Value;

const RECORDED: &str = include_str!("../../reference/least_cost.json");

fn whole(value: &Value) -> i64 {
    value.as_i64().unwrap()
}

fn market(instance: &Value) -> Market {
    let list = |key: &str| instance[key].as_array().unwrap().iter();
    let shops =
        list("shops").map(|shop| terms(whole(&shop[0]), shop[1].as_i64(), shop[2].as_i64()));
    let items = list("amounts").zip(list("offers")).map(|(amount, offers)| Need {
        amount: amount.as_f64().unwrap(),
        offers: offers
            .as_array()
            .unwrap()
            .iter()
            .map(|offer| offer_of([0, 1, 2, 3, 4].map(|at| whole(&offer[at]))))
            .collect(),
    });
    Market { shops: shops.collect(), items: items.collect() }
}

#[test]
fn the_optima_of_another_solver_are_found() {
    let recorded: Value = serde_json::from_str(RECORDED).unwrap();
    let instances = recorded["instances"].as_array().unwrap();
    assert!(instances.len() >= 30);
    let mut proven = 0;
    for instance in instances {
        let basket = checked(&market(instance));
        let (total, optimum) = (in_cents(basket.total), whole(&instance["optimum"]));
        match basket.proof {
            Proof::LeastCost => {
                assert_eq!(total, optimum, "seed {}", instance["seed"]);
                proven += 1;
            }
            // What is said of the gap holds.
            Proof::Within(gap) => {
                assert!(total >= optimum && total - in_cents(gap) <= optimum);
                eprintln!(
                    "seed {}: {total} within {}, optimum {optimum}",
                    instance["seed"],
                    in_cents(gap)
                );
            }
        }
    }
    assert!(proven >= 30, "{proven} of {} proven", instances.len());
}
