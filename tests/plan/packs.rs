use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Amount, Lesson, Life, Per};
use puddlebook::plan::{Purchase, plan};
use puddlebook::quantity::units::ml;
use puddlebook::quantity::{Decimal, Money};

/// A class that needs so many beads, and a shop that sells them in packs (size, cents).
fn beads(need: u32, packs: &[(u32, i64)]) -> Lesson {
    let mut lesson = lesson();
    lesson.supplies = vec![supply("beads", f64::from(need), Per::Class, Life::UsedUp)];
    lesson.shops = shop(
        packs.iter().map(|(size, cents)| pack("beads", Amount::Pieces(*size), *cents)).collect(),
    );
    lesson
}

/// What they cost, how many are left over, and the packs as (size, count).
fn bought(lesson: Lesson) -> (Money, u32, Vec<(u32, u32)>) {
    let plan = planned(lesson);
    assert!(plan.order.within.is_none());
    let line = plan.order.lines.iter().find(|line| line.item == "beads").unwrap();
    let Purchase::Packs { packs, cost, left_over: Amount::Pieces(left_over) } = &line.purchase
    else {
        panic!("nothing bought: {line:?}");
    };
    let packs = packs
        .iter()
        .map(|pack| match pack.size {
            Amount::Pieces(size) => (size, pack.count),
            other => panic!("not pieces: {other:?}"),
        })
        .collect();
    (*cost, *left_over, packs)
}

/// Coins of 1, 3 and 4 at equal worth make 6 with two coins (greedy takes three).
#[test]
fn greedy_is_not_good_enough() {
    let (cost, left_over, packs) = bought(beads(6, &[(1, 1), (3, 1), (4, 1)]));
    assert_eq!(cost, money(2));
    assert_eq!((left_over, packs), (0, vec![(3, 2)]));
}

/// With packs of 6, 9 and 20 every number above 43 can be made, and 43 cannot.
#[test]
fn forty_three_cannot_be_made_of_six_nine_and_twenty() {
    let packs = [(6, 600), (9, 900), (20, 2000)];
    assert_eq!(bought(beads(43, &packs)).1, 1);
    for need in 44..=64 {
        let (cost, left_over, _) = bought(beads(need, &packs));
        assert_eq!((cost, left_over), (money(i64::from(need) * 100), 0), "{need}");
    }
}

/// Invented packs; the optima were found by dynamic programming and by HiGHS.
#[test]
fn invented_bottles() {
    let bottles = [(59, 499), (118, 849), (236, 1499), (473, 2499), (946, 4299)];
    for (need, cents) in [(600, 3847), (1000, 4798), (1500, 7647), (2750, 12897)] {
        assert_eq!(bought(beads(need, &bottles)).0, money(cents), "{need}");
    }
}

#[test]
fn of_equal_costs_the_one_that_leaves_less() {
    // Ten beads for 3.00 as ten or as six and six.
    assert_eq!(bought(beads(10, &[(12, 300), (10, 300)])), (money(300), 0, vec![(10, 1)]));
    assert_eq!(bought(beads(11, &[(6, 150), (14, 300)])), (money(300), 1, vec![(6, 2)]),);
}

#[test]
fn exact_fits_in_mixed_units_are_fits() {
    let mut lesson = lesson();
    lesson.canvases[0].layers[0].colours = vec![(colour("white"), percent(100))];
    let needed = match planned(lesson.clone()).order.lines[0].needed {
        Amount::Volume(volume) => volume,
        other => panic!("not a volume: {other:?}"),
    };
    let mass = needed * colour("white").paint.density;
    lesson.shops = shop(vec![
        pack("white acrylic", Amount::Mass(mass), 700),
        pack("white acrylic", Amount::Volume(ml(1000.0)), 800),
    ]);
    let plan = planned(lesson);
    let Purchase::Packs { packs, cost, .. } = &plan.order.lines[0].purchase else {
        panic!("nothing bought");
    };
    assert_eq!((packs.len(), packs[0].count, *cost), (1, 1, money(700)));
}

#[test]
fn prices_finer_than_a_cent_count() {
    let mut lesson = beads(3, &[(1, 0), (3, 0)]);
    let shop = lesson.shops.first_mut().unwrap();
    shop.packs[0].price = Money::new(Decimal::new(1333, 3));
    shop.packs[1].price = Money::new(Decimal::new(4, 0));
    assert_eq!(bought(lesson).0, Money::new(Decimal::new(3999, 3)));
}

#[test]
fn free_packs_are_taken_once_enough() {
    assert_eq!(bought(beads(7, &[(5, 0), (7, 1)])), (money(0), 3, vec![(5, 2)]));
}

#[test]
fn a_million_packs_are_too_many() {
    let refused = plan(beads(2_000_000, &[(1, 5)])).unwrap_err();
    assert_eq!(refused.to_string(), "there are too many packs of \"beads\" to plan for");
}

/// Four sizes that differ by a hair, thousands of packs: the search may be cut off after a
/// second. Enough is bought even then, no dearer than packs of one size, and it is said.
#[test]
fn a_freak_price_list_still_gets_an_answer() {
    let need = 999_983;
    let packs = [(12_345, 123_450), (12_347, 123_471), (12_353, 123_533), (12_373, 123_729)];
    let plan = planned(beads(need, &packs));
    let line = plan.order.lines.iter().find(|line| line.item == "beads").unwrap();
    let Purchase::Packs { packs: bags, cost, .. } = &line.purchase else {
        panic!("nothing bought");
    };
    let bought: u32 = bags
        .iter()
        .map(|bag| match bag.size {
            Amount::Pieces(size) => size * bag.count,
            other => panic!("not pieces: {other:?}"),
        })
        .sum();
    assert!(bought >= need);
    let one_size = packs.iter().map(|(size, cents)| i64::from(need.div_ceil(*size)) * cents).min();
    assert!(*cost <= money(one_size.unwrap()));
    let (least, _) = by_table(need as usize, &packs);
    assert!(*cost == money(least) || plan.order.within.is_some());
}

/// The least cost, and for it the least number bought, by trying every total.
fn by_table(need: usize, packs: &[(u32, i64)]) -> (i64, usize) {
    let most = need + packs.iter().map(|(size, _)| *size as usize).max().unwrap_or(0);
    let mut cheapest = vec![None; most + 1];
    cheapest[0] = Some(0);
    for total in 1..=most {
        cheapest[total] = packs
            .iter()
            .filter_map(|(size, cents)| Some(cheapest[total.checked_sub(*size as usize)?]? + cents))
            .min();
    }
    (need..=most).filter_map(|total| Some((cheapest[total]?, total))).min().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn no_other_packs_are_cheaper_or_leave_less(
        need in 1_u32..400,
        packs in prop::collection::vec((1_u32..120, 1_i64..3000), 1..6),
    ) {
        let (cents, total) = by_table(need as usize, &packs);
        let (cost, left_over, _) = bought(beads(need, &packs));
        prop_assert_eq!(cost, money(cents));
        prop_assert_eq!(left_over as usize, total - need as usize);
    }

    /// Prices in proportion to size: nothing to choose by but what is left over, the
    /// hardest case for a search that prunes by cost.
    #[test]
    fn packs_at_one_price_a_piece(
        need in 1_u32..3000,
        sizes in prop::collection::vec(1_u32..200, 1..5),
    ) {
        let packs: Vec<(u32, i64)> = sizes.iter().map(|size| (*size, i64::from(*size) * 7)).collect();
        let (cents, total) = by_table(need as usize, &packs);
        let (cost, left_over, _) = bought(beads(need, &packs));
        prop_assert_eq!(cost, money(cents));
        prop_assert_eq!(left_over as usize, total - need as usize);
    }
}
