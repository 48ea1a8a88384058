//! The kinds of items that were weighed before, so that a dry weight is typed once.

use secundine_domain::fact::Loss;

use crate::api::{ApiError, WeighedItem};
use crate::practice::OpenPractice;

/// Most kinds that are offered.
const KINDS: usize = 6;
/// Most births that are looked through, from the newest on.
const BIRTHS: usize = 20;

/// The kinds that were weighed, latest first; of each the dry weight that was written last.
pub(crate) fn weighed_items(open: &mut OpenPractice) -> Result<Vec<WeighedItem>, ApiError> {
    let mut items: Vec<WeighedItem> = Vec::new();
    for birth in open.births()?.into_iter().take(BIRTHS) {
        for loss in open.chart(birth.id)?.losses.into_iter().rev() {
            let Loss::Weighed { item, dry, .. } = loss.what else { continue };
            let item = item.trim();
            if !item.is_empty() && items.iter().all(|known| known.item != item) {
                items.push(WeighedItem { item: item.to_owned(), dry });
            }
        }
        if items.len() >= KINDS {
            break;
        }
    }
    items.truncate(KINDS);
    Ok(items)
}
