//! Which items are asked of a placenta, and in which order.

use std::collections::BTreeSet;

use super::{Asked, Examination, Examined, Item};
use crate::fact::BabyNo;

/// The items to ask of a placenta that fed these babies, in the practice's order: what follows from an answer once it is given,
/// what is about a cord once for each, and whatever was answered.
#[must_use]
pub fn asked(examined: &Examined, babies: &[BabyNo], order: &[String]) -> Vec<(&'static Item, Option<BabyNo>)> {
    let mut cords = BTreeSet::from_iter(cords(babies));
    // Answers of another time, when the placenta was thought to feed other babies, stay in sight.
    cords.extend(examined.given.keys().filter(|asked| is_of_a_cord(&asked.item)).map(|asked| asked.cord));
    let cords = Vec::from_iter(cords);
    let items = in_order_of(order);
    let mut asked = Vec::new();
    for run in items.chunk_by(|one, next| one.cord && next.cord && one.part == next.part) {
        // All items of one cord, then all of the next, as they lie in the hand.
        let each: &[Option<BabyNo>] = if run.iter().any(|item| item.cord) { &cords } else { &[None] };
        for cord in each {
            let expected = cord.is_none_or(|cord| babies.contains(&cord)) && (cord.is_some() || each.len() < 2);
            let here = run.iter().filter(|item| {
                (expected && applies(item, examined, babies)) || examined.given.contains_key(&Asked::cord(&item.id, *cord))
            });
            asked.extend(here.map(|item| (*item, *cord)));
        }
    }
    asked
}

/// The cords of a placenta that fed these babies, each by its baby; one alone needs no name.
pub(crate) fn cords(babies: &[BabyNo]) -> Vec<Option<BabyNo>> {
    match babies {
        [] | [_] => vec![None],
        several => several.iter().copied().map(Some).collect(),
    }
}

fn is_of_a_cord(item: &str) -> bool {
    Examination::standard().item(item).is_some_and(|item| item.cord)
}

fn applies(item: &Item, examined: &Examined, babies: &[BabyNo]) -> bool {
    let follows = |only: &super::Only| only.options.iter().any(|option| examined.says(&only.item, None, option));
    (!item.several || babies.len() > 1) && item.only.as_ref().is_none_or(follows)
}

/// All items in the practice's order: what it does not name stands after what it follows in the usual one.
#[must_use]
pub fn in_order_of(order: &[String]) -> Vec<&'static Item> {
    let standard = &Examination::standard().items;
    let named: Vec<&Item> = order.iter().filter_map(|id| Examination::standard().item(id)).collect();
    let mut items: Vec<&Item> = Vec::new();
    for item in named {
        if !items.iter().any(|one| one.id == item.id) {
            items.push(item);
        }
    }
    for (n, item) in standard.iter().enumerate() {
        if items.iter().any(|one| one.id == item.id) {
            continue;
        }
        let before = n.checked_sub(1).and_then(|n| standard.get(n));
        let place = before.and_then(|before| items.iter().position(|one| one.id == before.id)).map_or(0, |at| at + 1);
        items.insert(place, item);
    }
    items
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ids(items: &[&Item]) -> Vec<String> {
        items.iter().map(|item| item.id.clone()).collect()
    }

    #[test]
    fn any_order_keeps_every_item_once_and_the_named_ones_as_named() {
        let usual = ids(&in_order_of(&[]));
        assert_eq!(usual.len(), Examination::standard().items.len());
        let order = ["lobes", "lobes", "no such item", "amnion", "ready"].map(str::to_owned);
        let own = ids(&in_order_of(&order));
        assert_eq!(own.iter().collect::<BTreeSet<_>>(), usual.iter().collect::<BTreeSet<_>>());
        assert_eq!(own.len(), usual.len());
        let at = |id: &str| own.iter().position(|one| one == id).unwrap();
        assert!(at("lobes") < at("amnion") && at("amnion") < at("ready"));
        assert_eq!(at("gap-place"), at("lobes") + 1, "what is not named stays behind what it follows");
    }

    #[test]
    fn the_items_of_a_cord_are_asked_of_each_cord_of_a_fused_disc() {
        let count = |babies: &[BabyNo], cord| {
            asked(&Examined::default(), babies, &[]).iter().filter(|(item, at)| item.id == "vessels" && *at == cord).count()
        };
        assert_eq!((count(&[1], None), count(&[1], Some(1))), (1, 0));
        assert_eq!((count(&[1, 2], None), count(&[1, 2], Some(1)), count(&[1, 2], Some(2))), (0, 1, 1));
    }

    #[test]
    fn the_dividing_membrane_is_asked_only_of_a_disc_that_fed_several() {
        let has = |babies: &[BabyNo]| asked(&Examined::default(), babies, &[]).iter().any(|(item, _)| item.several);
        assert!(!has(&[2]));
        assert!(has(&[1, 2]));
    }
}
